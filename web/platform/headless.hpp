// A browser that is not there: what platform.hpp asks of it is kept for a test to look at, or answered as the test says. Natively
// the screens stand on this one.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "web/platform/platform.hpp"

namespace torchside::web {

/// What the browser lends. A new one forgets everything.
struct HeadlessBrowser {
    std::map<int, std::string> kept; // slot -> record
    bool refuses_to_keep = false;
    double now_ms = 1000;
    int writes = 0;
    std::optional<double> keep_at; // by that clock: platform::keep_in()
    struct Left {
        std::string record, typed;
    };
    Left left; // platform::leave()
    /// In the place of `kept`, where a test plays the browser's storage itself.
    std::function<platform::Saved(int slot, std::string_view record)> saves;
    std::function<std::string(int slot)> loads;
    std::string address = "https://shop.example/torchside/";
    std::string fragment;
    std::vector<std::string> copied;
    struct File {
        std::string name, type, text;
    };
    std::vector<File> downloaded;
    std::vector<std::string> opened, shared;
    int printed = 0, pastes = 0, installs = 0;
    bool can_share = false;
    std::vector<std::string> shared_texts, shared_files;
    std::vector<int> vibrated;                 // ms
    std::map<std::string, std::string> device; // platform::remember()
    std::string language = "en";               // the browser's own
    std::string locale = "en-US";
    std::map<std::string, std::string> words; // code -> the file of its words
    bool fine_pointer = false;
    bool reduced_motion = true;
    bool awake = false;                // platform::keep_awake()
    std::vector<platform::Bell> bells; // all that were rung, taken back or not
    int wake_ms = -1;                  // platform::wake()
    bool can_seal = false;
    platform::Wishes wishes{};
};
[[nodiscard]] HeadlessBrowser& browser();

} // namespace torchside::web
