#include "widget_qr.h"

#include <algorithm>
#include <cmath>

#include "mirror.h"
#include "widget_press.h"

namespace widget {

void qr_code(kit::Kit& kit, std::string_view key, const qr::Code& code, std::string_view name, float most) {
    const float device = std::max(0.1f, ImGui::GetIO().DisplayFramebufferScale.x);
    const auto across = static_cast<float>(code.side + 2 * qr::kQuiet);
    const float room = std::min(kit.width, most);
    const float module = std::max(1.0f, std::floor(room * device / across)) / device;
    const float size = module * across;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 start{std::round((at.x + std::max(0.0f, (kit.width - size) / 2)) * device) / device,
                       std::round(at.y * device) / device};
    const ImRect box(start, {start.x + size, start.y + size});
    mirror::Node node;
    node.id = id_of(key);
    node.role = mirror::Role::text;
    node.name = name;
    fill_place(node, box);
    mirror::add(node);
    ImGui::Dummy({kit.width, size});
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(box.Min, box.Max, IM_COL32_WHITE);
    const float quiet = module * static_cast<float>(qr::kQuiet);
    const ImVec2 first{start.x + quiet, start.y + quiet};
    for (const qr::Run& run : qr::runs(code)) {
        const ImVec2 low{first.x + static_cast<float>(run.x) * module,
                         first.y + static_cast<float>(run.y) * module};
        list.AddRectFilled(low, {low.x + static_cast<float>(run.length) * module, low.y + module},
                           IM_COL32_BLACK);
    }
}

}  // namespace widget
