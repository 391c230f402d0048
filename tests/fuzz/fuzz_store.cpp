// Stored texts: what is read as a recipe, kept recipe, settings, backup or record is written to something
// that reads the same.
#include <cstdint>
#include <cstdlib>
#include <string>

#include "engine/store.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(data), size);
    if (const auto recipe = store::read_recipe(text)) {
        const auto again = store::read_recipe(store::write_recipe(*recipe));
        if (!again || !(*again == *recipe)) std::abort();
    }
    if (const auto kept = store::read_kept(text)) {
        const auto again = store::read_kept(store::write_kept(*kept));
        if (!again || !(*again == *kept)) std::abort();
    }
    if (const auto settings = store::read_settings(text)) {
        const auto again =
            store::read_settings(store::write_settings(settings->settings, settings->open, settings->place));
        if (!again || !(*again == *settings)) std::abort();
    }
    if (const auto record = store::read_record(text)) {
        if (store::write_record(*record) != text) std::abort();
    }
    if (const auto content = store::read_backup(text)) {
        workspace::Workspace work;
        work.recipes = content->recipes;
        const auto again = store::read_backup(store::write_backup(work, content->damaged, content->made));
        if (!again || !(again->recipes == content->recipes) ||
            again->damaged.size() < content->damaged.size())
            std::abort();
    }
    const store::Chosen chosen = store::choose({text, store::write_record({1, "{}"})});
    if (!chosen.record) std::abort();
    return 0;
}
