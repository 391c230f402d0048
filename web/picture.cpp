#include "picture.h"

#include <cstring>

#include "imgui.h"

namespace picture {
namespace {

void append(Picture& picture, const void* from, std::size_t bytes) {
    if (bytes == 0) return;
    const std::size_t at = picture.size();
    picture.resize(at + (bytes + 3) / 4);
    std::memcpy(picture.data() + at, from, bytes);
}

template <class T>
void append(Picture& picture, const ImVector<T>& values) {
    picture.push_back(static_cast<std::uint32_t>(values.Size));
    append(picture, values.Data, static_cast<std::size_t>(values.size_in_bytes()));
}

}  // namespace

Picture of(const ImDrawData& data) {
    Picture made;
    made.reserve(static_cast<std::size_t>(data.TotalVtxCount) * sizeof(ImDrawVert) / 4 +
                 static_cast<std::size_t>(data.TotalIdxCount) * sizeof(ImDrawIdx) / 4 + 256);
    append(made, &data.DisplaySize, sizeof data.DisplaySize);
    for (const ImDrawList* list : data.CmdLists) {
        append(made, list->CmdBuffer);
        append(made, list->VtxBuffer);
        append(made, list->IdxBuffer);
    }
    return made;
}

}  // namespace picture
