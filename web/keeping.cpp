// See keeping.h. Knows key names and save counters; the form of a record is the store's.
#include "keeping.h"

#include <algorithm>

namespace keeping {
namespace {

const std::string kRecipe = std::string(kPrefix) + "recipe:";
const std::string kSettings = std::string(kPrefix) + "settings";

// "tarebench:recipe:x.a" -> base "tarebench:recipe:x", slot 'a'; nothing for keys that are not ours.
bool split_key(const std::string& key, std::string& base, char& slot) {
    if (key.size() < 3 || key[key.size() - 2] != '.') return false;
    slot = key.back();
    if (slot != 'a' && slot != 'b') return false;
    base = key.substr(0, key.size() - 2);
    return base == kSettings || (base.compare(0, kRecipe.size(), kRecipe) == 0 && base.size() > kRecipe.size());
}

bool same_content(const workspace::Kept& a, const workspace::Kept& b) {
    return a.recipe == b.recipe && a.binned == b.binned;
}

}  // namespace

void Keeping::start() { platform::load_stored(kPrefix); }

void Keeping::receive(const platform::Event& event) {
    std::string base;
    char slot = 'a';
    switch (event.kind) {
        case platform::Kind::stored:
            if (split_key(event.key, base, slot)) (slot == 'a' ? found_[base].a : found_[base].b) = event.text;
            break;
        case platform::Kind::stored_all: loaded_ = true; break;
        case platform::Kind::saved:
            if (trouble_ == Trouble::full) trouble_ = Trouble::none;
            break;
        case platform::Kind::save_failed:
            trouble_ = event.text == "full" ? Trouble::full : Trouble::refused;
            // Not written: forget that it was, so that the next change tries again.
            if (split_key(event.key, base, slot)) {
                const std::string id = base.substr(std::min(base.size(), kRecipe.size()));
                std::erase_if(written_, [&](const workspace::Kept& kept) { return kept.id == id; });
            }
            break;
        case platform::Kind::storage_refused:
            trouble_ = Trouble::refused;
            loaded_ = true;
            break;
        case platform::Kind::other_tab:
            if (split_key(event.key, base, slot) && base != kSettings && !event.text.empty()) {
                const auto record = store::read_record(event.text);
                if (!record) break;
                Place& place = places_[base];
                if (record->saves <= place.saves) break;
                place = {slot == 'a' ? 'b' : 'a', record->saves};
                if (auto kept = store::read_kept(record->json)) foreign_.push_back(*std::move(kept));
            }
            break;
        default: break;
    }
}

workspace::Workspace Keeping::take_loaded() {
    workspace::Workspace work;
    for (const auto& [base, slots] : found_) {
        const store::Chosen chosen = store::choose(slots);
        for (const std::string& text : chosen.damaged) damaged_.push_back({base, text});
        places_[base] = {chosen.next_slot, chosen.record ? chosen.record->saves : 0};
        if (!chosen.record) continue;
        if (base == kSettings) {
            if (auto settings = store::read_settings(chosen.record->json)) {
                work.settings = settings->first;
                work.open = settings->second;
            } else {
                damaged_.push_back({base, chosen.record->json});
            }
        } else if (auto kept = store::read_kept(chosen.record->json)) {
            kept->saves = chosen.record->saves;
            work.recipes.push_back(std::move(kept.value()));
        } else {
            damaged_.push_back({base, chosen.record->json});
        }
    }
    found_.clear();
    std::stable_sort(work.recipes.begin(), work.recipes.end(),
                     [](const workspace::Kept& a, const workspace::Kept& b) { return a.changed > b.changed; });
    if (!workspace::find(work, work.open)) work.open.clear();
    written_ = work.recipes;
    written_settings_ = work.settings;
    written_open_ = work.open;
    return work;
}

void Keeping::write(const std::string& base, std::uint64_t saves, const std::string& json) {
    Place& place = places_[base];
    platform::save(base + "." + place.next, store::write_record({saves, json}));
    place = {place.next == 'a' ? 'b' : 'a', saves};
}

void Keeping::save_changes(workspace::Workspace& work, std::string_view now) {
    if (!loaded_) return;
    for (workspace::Kept& kept : work.recipes) {
        const auto before = std::find_if(written_.begin(), written_.end(),
                                         [&](const workspace::Kept& one) { return one.id == kept.id; });
        if (before != written_.end() && same_content(*before, kept)) continue;
        kept.changed = std::string(now);
        kept.saves = std::max(kept.saves, places_[kRecipe + kept.id].saves) + 1;
        if (before != written_.end())
            *before = kept;
        else
            written_.push_back(kept);
        write(kRecipe + kept.id, kept.saves, store::write_kept(kept));
    }
    std::erase_if(written_, [&](const workspace::Kept& one) {
        if (workspace::find(work, one.id)) return false;
        platform::remove(kRecipe + one.id + ".a");
        platform::remove(kRecipe + one.id + ".b");
        places_.erase(kRecipe + one.id);
        return true;
    });
    if (work.settings != written_settings_ || work.open != written_open_) {
        written_settings_ = work.settings;
        written_open_ = work.open;
        write(kSettings, places_[kSettings].saves + 1, store::write_settings(work.settings, work.open));
    }
}

std::vector<workspace::Kept> Keeping::take_foreign() { return std::exchange(foreign_, {}); }

void Keeping::adopt(const workspace::Kept& kept) {
    std::erase_if(written_, [&](const workspace::Kept& one) { return one.id == kept.id; });
    written_.push_back(kept);
}

}  // namespace keeping
