// The library's own example window on our platform: the same loop (frames only when something happened), the
// same shell, the same packer; nothing of Tarebench's engine, presets, fonts or screens. The page's title
// says where its first header stands and whether it is open ("demo 180 95 0"), for the benchmark to tap it.
#include <cstdio>
#include <string>

#include "imgui.h"
#include "imgui_internal.h"
#include "web/platform.h"

namespace {

const char* kWindow = "Dear ImGui Demo";
ImRect header;

// (Not by the window's own GetID: the hook below is called while its stack of ids is put away.)
ImGuiID header_id() {
    const ImGuiWindow* window = ImGui::FindWindowByName(kWindow);
    return window ? ImHashStr("Help", 0, window->ID) : 0;
}

void step(bool draw) {
    using platform::Kind;
    ImGuiIO& io = ImGui::GetIO();
    for (const platform::Event& event : platform::take_events()) {
        const bool down = event.kind == Kind::pointer_down, up = event.kind == Kind::pointer_up;
        if (down || up || event.kind == Kind::pointer_move)
            io.AddMousePosEvent(static_cast<float>(event.x), static_cast<float>(event.y));
        if (down || up) io.AddMouseButtonEvent(0, down);
    }
    const platform::Window& page = platform::window();
    if (page.width <= 0) return;
    io.DisplaySize = {page.width, page.height};
    io.DisplayFramebufferScale = {page.pixel_ratio, page.pixel_ratio};
    io.DeltaTime = 1.0f / 60.0f;
    static bool placed = false;  // its window has the place and size that it is given after its first frame
    int frames = placed ? 2 : 0;
    placed = true;
    do {
        ImGui::NewFrame();
        ImGui::SetWindowPos(kWindow, {0, 0});
        ImGui::SetWindowSize(kWindow, io.DisplaySize);
        ImGui::ShowDemoWindow();
        ImGui::Render();
    } while (++frames < 3 || (frames < 12 && !GImGui->InputEventsQueue.empty()));
    if (ImGuiWindow* window = ImGui::FindWindowByName(kWindow)) {
        char title[80];
        std::snprintf(title, sizeof title, "demo %d %d %d", static_cast<int>(header.GetCenter().x),
                      static_cast<int>(header.GetCenter().y), window->StateStorage.GetInt(header_id(), 0));
        platform::set_page_language("en", title);
    }
    if (draw) platform::draw(ImGui::GetDrawData());
}

}  // namespace

void ImGuiTestEngineHook_ItemAdd(ImGuiContext*, ImGuiID id, const ImRect& box, const ImGuiLastItemData*) {
    if (id == header_id()) header = box;
}
void ImGuiTestEngineHook_ItemInfo(ImGuiContext*, ImGuiID, const char*, ImGuiItemStatusFlags) {}
void ImGuiTestEngineHook_Log(ImGuiContext*, const char*, ...) {}
const char* ImGuiTestEngine_FindItemDebugLabel(ImGuiContext*, ImGuiID) {
    return nullptr;
}

int main() {
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    GImGui->TestEngineHookItems = true;
    io.Fonts->AddFontDefault();
    io.Fonts->Build();
    platform::run(step);
    return 0;
}
