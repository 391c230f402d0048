// See drawn_items.h. Defines the four functions that IMGUI_ENABLE_TEST_ENGINE asks for; the test engine
// itself is not used.
#include "drawn_items.h"

#include "imgui.h"
#include "imgui_internal.h"

namespace drawn_items {
namespace {
std::vector<std::uint32_t> seen;
std::vector<std::string> too_long;
}  // namespace
void begin_frame() {
    seen.clear();
    too_long.clear();
}
const std::vector<std::uint32_t>& ids() {
    return seen;
}
void repeat(const std::vector<std::uint32_t>& some) {
    seen.insert(seen.end(), some.begin(), some.end());
}
void cut(std::string_view words) {
    too_long.emplace_back(words);
}
const std::vector<std::string>& cut_words() {
    return too_long;
}
}  // namespace drawn_items

void ImGuiTestEngineHook_ItemAdd(ImGuiContext* context, ImGuiID id, const ImRect&, const ImGuiLastItemData*) {
    // A child window counts as an item of its parent; it can't be pressed.
    for (const ImGuiWindow* window : context->Windows)
        if (window->ChildId == id || window->ID == id || window->MoveId == id) return;
    drawn_items::seen.push_back(id);
}
void ImGuiTestEngineHook_ItemInfo(ImGuiContext*, ImGuiID, const char*, ImGuiItemStatusFlags) {}
void ImGuiTestEngineHook_Log(ImGuiContext*, const char*, ...) {}
const char* ImGuiTestEngine_FindItemDebugLabel(ImGuiContext*, ImGuiID) {
    return nullptr;
}
