// See widget_keypad.h. Signs of arithmetic are typed as they are read; decimal::calculate gives them meaning.
#include "widget_keypad.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "theme.h"
#include "widget_button.h"
#include "widget_press.h"
#include "widget_text.h"

namespace widget {
namespace {

constexpr float kGapPx = 6;

float key_height() {
    return std::max(50.0f, theme::line_height(theme::Type::title) + 8);
}
float head_height() {  // whose number it is
    return std::ceil(theme::line_height(theme::Type::label)) + 11;
}

struct Key {
    std::string_view label, typed, name;  // name: key in the table of words; "" when the label reads well
};

void type(kit::Keypad& pad, std::string_view typed) {
    const bool sign = typed == "+" || typed == "-" || typed == "*" || typed == "/";
    if (pad.fresh && !sign) pad.text.clear();
    if (pad.text.size() > 40) return;
    pad.fresh = false;
    pad.text += typed;
    pad.changed = true;
}

void rub_out(kit::Keypad& pad) {
    if (pad.fresh)
        pad.text.clear();
    else if (!pad.text.empty()) {
        while (!pad.text.empty() && (static_cast<unsigned char>(pad.text.back()) & 0xC0) == 0x80)
            pad.text.pop_back();
        if (!pad.text.empty()) pad.text.pop_back();
    }
    pad.fresh = false;
    pad.changed = true;
}

void step(kit::Kit& kit, bool back) {
    kit.step_from = kit.keypad.target;
    kit.step_back = back;
}

bool key_button(kit::Kit& kit, std::string_view label, std::string_view name, ImVec2 size, bool strong) {
    mirror::Node node;
    node.role = mirror::Role::button;
    node.name = std::string(name);
    const Press press = press_area(kit, label, size, node);
    const theme::Colours& c = theme::colours();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(press.box.Min, press.box.Max, theme::paint(strong ? c.accent : c.button),
                       theme::kRound);
    if (press.down || press.hovered)
        list.AddRectFilled(press.box.Min, press.box.Max, theme::paint(c.ink, press.down ? 0.2f : 0.06f),
                           theme::kRound);
    if (!strong) list.AddRect(press.box.Min, press.box.Max, theme::paint(c.edge), theme::kRound, 0, 1);
    const float room = size.x - 8;
    theme::Type type = label.size() <= 3 ? theme::Type::title : theme::Type::strong;
    for (const theme::Type smaller : {theme::Type::small, theme::Type::label})
        if (measure(label, type).x > room) type = smaller;
    const ImVec2 words = measure(label, type);
    draw_cut({press.box.GetCenter().x - std::min(words.x, room) / 2, press.box.GetCenter().y - words.y / 2},
             label, type, theme::paint(strong ? c.on_accent : c.on_button), room);
    focus_ring(press.box, theme::kRound, press.id);
    return press.clicked;
}

}  // namespace

float keypad_height() {
    return 5 * key_height() + 5 * kGapPx + head_height() + 6;
}

void keypad(kit::Kit& kit) {
    kit::Keypad& pad = kit.keypad;
    mirror::Node group;
    group.id = id_of("keypad");
    group.role = mirror::Role::region;
    group.name = kit.say("keypad.name", {{"field", pad.name}});
    mirror::open(group);
    const ImVec2 start = ImGui::GetCursorScreenPos();
    draw_cut({start.x + 2, start.y + 3}, group.name, theme::Type::label,
             theme::paint(theme::colours().ink_soft), kit.width);
    const float wide = (kit.width - 4 * kGapPx) / 5;
    const float high = key_height(), top = start.y + head_height();
    auto at = [&](int column, int row) {
        ImGui::SetCursorScreenPos({start.x + static_cast<float>(column) * (wide + kGapPx),
                                   top + static_cast<float>(row) * (high + kGapPx)});
    };
    const std::string sign = kit.words->sign == decimal::Sign::comma ? "," : ".";
    const Key keys[4][4] = {
        {{"7", "7", ""}, {"8", "8", ""}, {"9", "9", ""}, {"\xC3\xB7", "/", "keypad.divide"}},
        {{"4", "4", ""}, {"5", "5", ""}, {"6", "6", ""}, {"\xC3\x97", "*", "keypad.times"}},
        {{"1", "1", ""}, {"2", "2", ""}, {"3", "3", ""}, {"\xE2\x88\x92", "-", "keypad.minus"}},
        {{"0", "0", ""}, {"00", "00", ""}, {sign, sign, "keypad.decimal"}, {"+", "+", "keypad.plus"}}};
    for (int row = 0; row < 4; ++row) {
        for (int column = 0; column < 4; ++column) {
            const Key& key = keys[row][column];
            at(column, row);
            const std::string name = key.name.empty() ? std::string(key.label) : kit.say(key.name);
            if (key_button(kit, key.label, name, {wide, high}, false)) type(pad, key.typed);
        }
    }
    at(4, 0);
    const ImVec2 rub = ImGui::GetCursorScreenPos();
    if (key_button(kit, " ", kit.say("keypad.rub_out"), {wide, 2 * high + kGapPx}, false)) rub_out(pad);
    draw_mark(Mark::rub_out, {rub.x + wide / 2, rub.y + high + kGapPx / 2}, theme::mark(22),
              theme::paint(theme::colours().on_button));
    at(4, 2);
    if (key_button(kit, kit.say("keypad.next"), kit.say("keypad.next_line"), {wide, 2 * high + kGapPx}, true))
        step(kit, false);
    at(0, 4);
    const ImVec2 back = ImGui::GetCursorScreenPos();
    if (key_button(kit, "  ", kit.say("keypad.previous_line"), {wide, high - 6}, false)) step(kit, true);
    draw_mark(Mark::back, {back.x + wide / 2, back.y + (high - 6) / 2}, theme::mark(16),
              theme::paint(theme::colours().on_button));
    at(1, 4);
    if (key_button(kit, kit.say("keypad.done"), kit.say("keypad.done"), {kit.width - wide - kGapPx, high - 6},
                   false))
        pad.target = 0;
    mirror::close();
}

bool keypad_key(kit::Kit& kit, std::string_view key, bool shift) {
    kit::Keypad& pad = kit.keypad;
    if (!pad.open()) return false;
    if (key.size() == 1 && std::string_view("0123456789.,+-*/()").find(key[0]) != std::string_view::npos)
        type(pad, key);
    else if (key == "Backspace")
        rub_out(pad);
    else if (key == "Enter" || key == "Tab")
        step(kit, shift);
    else if (key == "Escape")
        pad.target = 0;
    else
        return false;
    return true;
}

void keypad_go_on(kit::Kit& kit) {
    const bool gone = std::find(kit.order.begin(), kit.order.end(), kit.keypad.target) == kit.order.end();
    if (gone) kit.keypad.target = 0;  // its field was removed, or its screen left
    if (kit.step_from == 0) return;
    const auto here = std::find(kit.order.begin(), kit.order.end(), kit.step_from);
    const bool on_keypad = kit.keypad.target == kit.step_from;
    kit.step_from = 0;
    const bool last =
        here == kit.order.end() || (kit.step_back ? here == kit.order.begin() : here + 1 == kit.order.end());
    const std::uint32_t there = last ? 0 : kit.step_back ? *(here - 1) : *(here + 1);
    if (on_keypad) {
        kit.keypad.target = there;
        kit.keypad.arriving = !last;
    } else if (!last) {
        kit.wish_focus = there;
        kit.wish_all = true;
    }
}

}  // namespace widget
