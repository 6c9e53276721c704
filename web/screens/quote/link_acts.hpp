// What can be done with a link: copied, shared, shown as a QR code; and how sure it is that whoever gets it can open it.
#pragma once

#include "web/screens/app.hpp"

namespace torchside::web {

/// Caution when the link stands on an address that nobody outside can open, and the field for the public one.
float address_rows(App& app, Rect place, std::string_view caution);

/// A full-width button at `y`, which moves on.
bool act(App& app, Rect place, float& y, const char* id, const char* label, bool main = false);

/// Copy and share. `quote`: the quote's link, when it is one, for the list of those handed out.
void copy_acts(App& app, Rect place, float& y, const std::string& address, std::string_view quote = {});
/// The QR code, behind a button.
void qr_acts(App& app, Rect place, float& y, const std::string& address, std::string_view quote = {});

/// The section "My other devices" of the shop: the whole workbook as a link.
float own_devices(App& app, Rect place);

} // namespace torchside::web
