// Pasted text: whatever the bytes are, every entry has a place and valid words, a recipe made of it is one
// that can be kept, and reading is the same twice.
#include <cstdint>
#include <cstdlib>
#include <string>

#include "engine/pasted.h"
#include "engine/store.h"
#include "engine/utf8.h"
#include "presets_data.h"

namespace {

const catalogue::Catalogue& shipped() {
    static const catalogue::Catalogue read = [] {
        auto presets = store::unpack_presets(presets_data::kPacked);
        return presets ? presets.value().catalogue : catalogue::Catalogue{};
    }();
    return read;
}

void must(bool holds) {
    if (!holds) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(data), size);
    const pasted::List list = pasted::read(text, shipped());
    must(list == pasted::read(text, shipped()));
    must(list.entries.size() <= pasted::kMostEntries + text.size());
    for (const pasted::Entry& entry : list.entries) {
        must(entry.line > 0 && entry.column > 0);
        must(utf8::valid(entry.text) && utf8::valid(entry.name) && utf8::valid(entry.aside));
        must(!entry.percent || (entry.percent->grid >= 0 && *entry.percent <= quantity::kHundred));
        must(!entry.grams || (entry.grams->low >= 0 && entry.grams->low <= entry.grams->usual &&
                              entry.grams->usual <= entry.grams->high));
    }
    const auto recipe = pasted::recipe_of(list);
    must(recipe.ok() == (pasted::ingredients(list) > 0));
    if (recipe) must(store::read_recipe(store::write_recipe(*recipe)).ok());
    return 0;
}
