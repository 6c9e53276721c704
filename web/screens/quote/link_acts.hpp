// What can be done with a link: copied, shared, shown as a QR code; and how sure it is that whoever gets it can open it.
#pragma once

#include "web/screens/body.hpp"

namespace torchside::web {

/// The links stand on an address that nobody outside can open.
[[nodiscard]] bool opens_only_here(const App& app);
/// Caution when the link stands on an address that nobody outside can open, and the field for the public one.
void address_rows(Body& body, Label caution);

/// Copy and share. `quote`: the quote's link, when it is one, for the list of those handed out.
void copy_acts(Body& body, const std::string& address, std::string_view quote = {});
/// The QR code, behind a button.
void qr_acts(Body& body, const std::string& address, std::string_view quote = {});

/// The section "My other devices" of the shop: the whole workbook as a link.
void own_devices(Body& body);

} // namespace torchside::web
