// Every widget in every state it has, on one page, for contributors: whether all of them speak one visual
// language is seen at a glance. A new widget, and a new state of an old one, is added here. Opened by the
// fragment #gallery; no screen leads there.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace app {
struct App;
}

namespace widget {

// What was tried out there; concerns no recipe and is not kept.
struct Tried {
    bool ticked = true;
    int chosen = 0;
    std::string text;
    std::optional<std::int64_t> number, misread;
};

void gallery(app::App& app);

}  // namespace widget
