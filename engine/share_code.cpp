#include "share_code.h"

namespace share_code {

std::optional<Coded> of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                        const std::string& before) {
    for (const share::Extent extent :
         {share::Extent::all, share::Extent::without_notes, share::Extent::without_notes_and_steps}) {
        const auto link = share::write(share::cut_to(extent, recipe), shipped, share::Form::shortest);
        if (!link) continue;
        const std::string address = before + *link;
        if (auto code = qr::of(address)) return Coded{extent, address, std::move(*code)};
    }
    return std::nullopt;
}

}  // namespace share_code
