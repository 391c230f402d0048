#include "picture.h"

#include <cstring>

#include "imgui.h"

namespace picture {
namespace {

template <class Take>
void each_part(const ImDrawData& data, Take take) {
    const auto all = [&](const auto& values) {
        take(&values.Size, sizeof values.Size);
        take(values.Data, static_cast<std::size_t>(values.size_in_bytes()));
    };
    take(&data.DisplaySize, sizeof data.DisplaySize);
    for (const ImDrawList* list : data.CmdLists) {
        all(list->CmdBuffer);
        all(list->VtxBuffer);
        all(list->IdxBuffer);
    }
}

}  // namespace

bool follow(Picture& picture, const ImDrawData& data) {
    std::size_t at = 0;
    bool same = true;
    each_part(data, [&](const void* from, std::size_t bytes) {
        same = same && at + bytes <= picture.size() &&
               (bytes == 0 || std::memcmp(picture.data() + at, from, bytes) == 0);
        at += bytes;
    });
    if (same && at == picture.size()) return false;
    picture.clear();
    picture.reserve(at);
    each_part(data, [&](const void* from, std::size_t bytes) {
        const char* first = static_cast<const char*>(from);
        picture.insert(picture.end(), first, first + bytes);
    });
    return true;
}

}  // namespace picture
