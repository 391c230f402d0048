// See keeping.h. Knows key names and save counters; the form of a record is the store's.
#include "keeping.h"

#include <algorithm>
#include <utility>

#include "engine/checksum.h"

namespace keeping {
namespace {

const std::string kRecipe = std::string(kPrefix) + "recipe:";
const std::string kSettings = std::string(kPrefix) + "settings";
const std::string kAside = std::string(kPrefix) + "aside:";

// "tarebench:recipe:x.a" -> base "tarebench:recipe:x", slot 'a'; nothing for keys that are not ours.
bool split_key(const std::string& key, std::string& base, char& slot) {
    if (key.size() < 3 || key[key.size() - 2] != '.') return false;
    slot = key.back();
    if (slot != 'a' && slot != 'b') return false;
    base = key.substr(0, key.size() - 2);
    return base == kSettings ||
           (base.compare(0, kRecipe.size(), kRecipe) == 0 && base.size() > kRecipe.size());
}

bool same_content(const workspace::Kept& a, const workspace::Kept& b) {
    return a.recipe == b.recipe && a.binned == b.binned && a.tags == b.tags;
}

}  // namespace

void Keeping::start() {
    platform::load_stored(kPrefix);
}

void Keeping::receive(const platform::Event& event) {
    std::string base;
    char slot = 'a';
    switch (event.kind) {
        case platform::Kind::stored:
            if (split_key(event.key, base, slot))
                (slot == 'a' ? found_[base].a : found_[base].b) = event.text;
            else if (event.key.compare(0, kAside.size(), kAside) == 0)
                asides_[event.key] = event.text;
            break;
        case platform::Kind::stored_all:
            loaded_ = true;
            break;
        case platform::Kind::saved:
            if (split_key(event.key, base, slot)) unsaved_.erase(base);
            if (trouble_ == Trouble::full && unsaved_.empty()) trouble_ = Trouble::none;
            break;
        case platform::Kind::save_failed:
            if (event.text == "changed") {
                if (!split_key(event.key, base, slot)) break;
                contested_.insert(base);
                places_[base].next = slot;
                places_[base].saves -= 1;  // of what was not written
                break;
            }
            trouble_ = event.text == "full" ? Trouble::full : Trouble::refused;
            if (split_key(event.key, base, slot)) {
                unsaved_.insert(base);
                places_[base].next = slot;  // not written: the other one is still the newest
            }
            break;
        case platform::Kind::hidden:
            try_again_ = true;
            break;
        case platform::Kind::storage_refused:
            trouble_ = Trouble::refused;
            loaded_ = true;
            break;
        case platform::Kind::other_tab:
            if (split_key(event.key, base, slot) && !event.text.empty())
                take_foreign_record(base, slot, event.text);
            break;
        default:
            break;
    }
}

// A counter tells who knew of whom. Higher than ours: they had ours before them, unless ours was refused just
// now. Equal: both began from the same, and theirs went over ours. Lower, but where our newest stood: they
// did not know of it.
void Keeping::take_foreign_record(const std::string& base, char slot, const std::string& text) {
    const auto record = store::read_record(text);
    if (!record) return;
    Place& place = places_[base];
    const char after = slot == 'a' ? 'b' : 'a';
    if (base == kSettings) {  // each tab goes on with its own; only the turn is taken over
        if (record->saves > place.saves) place = {after, record->saves};
        return;
    }
    auto theirs = store::read_kept(record->json);
    if (!theirs) {
        if (record->saves > place.saves) place = {after, record->saves};
        return;
    }
    const auto ours = std::find_if(written_.begin(), written_.end(),
                                   [&](const workspace::Kept& one) { return one.id == theirs->id; });
    const bool differs = ours != written_.end() && !same_content(*ours, *theirs);
    if (record->saves < place.saves) {
        if (slot == place.next) return;  // an old one
        if (differs) losers_.push_back({std::move(theirs).value(), false});
        unsaved_.insert(base);
        try_again_ = true;
        return;
    }
    const bool unknown_to_them =
        record->saves == place.saves || contested_.count(base) > 0 || unsaved_.count(base) > 0;
    if (unknown_to_them && differs) losers_.push_back({*ours, true});
    contested_.erase(base);
    unsaved_.erase(base);
    place = {after, record->saves};
    if (differs || ours == written_.end()) foreign_.push_back(std::move(theirs).value());
}

workspace::Workspace Keeping::take_loaded() {
    workspace::Workspace work;
    for (const auto& [base, slots] : found_) {
        const store::Chosen chosen = store::choose(slots);
        for (const std::string& text : chosen.damaged)
            set_aside(base, slots.a == text ? 'a' : 'b', text);
        places_[base] = {chosen.next_slot, chosen.record ? chosen.record->saves : 0};
        if (!chosen.record) continue;
        const char from = chosen.next_slot == 'a' ? 'b' : 'a';
        if (base == kSettings) {
            if (auto settings = store::read_settings(chosen.record->json)) {
                work.settings = std::move(settings.value().settings);
                work.open = settings->open;
                work.place = settings->place;
            } else {
                set_aside(base, from, chosen.record->json);
            }
        } else if (auto kept = store::read_kept(chosen.record->json)) {
            kept->saves = chosen.record->saves;
            work.recipes.push_back(std::move(kept.value()));
        } else {
            set_aside(base, from, chosen.record->json);
        }
    }
    for (const auto& aside : asides_)  // what earlier visits found
        if (std::none_of(damaged_.begin(), damaged_.end(),
                         [&](const Damaged& one) { return one.aside == aside.first; }))
            damaged_.push_back({aside.first, aside.second, aside.first, ""});
    found_.clear();
    asides_.clear();
    std::stable_sort(
        work.recipes.begin(), work.recipes.end(),
        [](const workspace::Kept& a, const workspace::Kept& b) { return a.changed > b.changed; });
    const workspace::Kept* opened = workspace::find(work, work.open);
    if (!opened || !opened->binned.empty()) work.open.clear();
    written_ = work.recipes;
    written_settings_ = work.settings;
    written_open_ = work.open;
    written_place_ = work.place;
    return work;
}

// The key tells texts apart, so that the same one is set aside once.
void Keeping::set_aside(const std::string& base, char slot, const std::string& text) {
    const std::string key =
        kAside + base.substr(kPrefix.size()) + ":" + std::to_string(checksum::crc32(text));
    damaged_.push_back({base, text, key, base + "." + slot});
    if (asides_.count(key) == 0) platform::save(key, text);
}

void Keeping::keep_aside(const std::string& text) {
    for (const Damaged& one : damaged_)
        if (one.text == text) return;
    const std::string key = kAside + "file:" + std::to_string(checksum::crc32(text));
    damaged_.push_back({key, text, key, ""});
    platform::save(key, text);
}

void Keeping::forget_damaged() {
    for (const Damaged& one : damaged_) {
        platform::remove(one.aside);
        if (!one.slot.empty()) platform::remove(one.slot);
    }
    damaged_.clear();
}

void Keeping::write(const std::string& base, std::uint64_t saves, const std::string& json) {
    Place& place = places_[base];
    const std::string key = base + "." + place.next;
    for (Damaged& one : damaged_)
        if (one.slot == key) one.slot.clear();
    platform::save(key, store::write_record({saves, json}));
    place = {place.next == 'a' ? 'b' : 'a', saves};
}

void Keeping::save_changes(workspace::Workspace& work, std::string_view now) {
    if (!loaded_) return;
    // First what goes, which makes room for what comes.
    const std::size_t gone = std::erase_if(written_, [&](const workspace::Kept& one) {
        if (workspace::find(work, one.id)) return false;
        platform::remove(kRecipe + one.id + ".a");
        platform::remove(kRecipe + one.id + ".b");
        places_.erase(kRecipe + one.id);
        unsaved_.erase(kRecipe + one.id);
        return true;
    });
    std::vector<workspace::Kept*> changed;
    for (workspace::Kept& kept : work.recipes) {
        const auto before = std::find_if(written_.begin(), written_.end(),
                                         [&](const workspace::Kept& one) { return one.id == kept.id; });
        if (before != written_.end() && same_content(*before, kept)) continue;
        // Its instant, unless whoever changed it knows better (a recipe out of a backup).
        if (before != written_.end() ? kept.changed == before->changed : kept.changed.empty())
            kept.changed = std::string(now);
        if (before != written_.end())
            *before = kept;
        else
            written_.push_back(kept);
        changed.push_back(&kept);
    }
    bool settings =
        work.settings != written_settings_ || work.open != written_open_ || work.place != written_place_;
    for (const std::string& base : std::exchange(contested_, {})) {  // settings, or taken away meanwhile
        unsaved_.insert(base);
        try_again_ = true;
    }
    // A store that is full stays so until something happens: trying at every frame would keep the page awake
    // for nothing.
    if (std::exchange(try_again_, false) || gone > 0 || !changed.empty() || settings) {
        for (workspace::Kept& kept : work.recipes)
            if (unsaved_.count(kRecipe + kept.id) &&
                std::find(changed.begin(), changed.end(), &kept) == changed.end())
                changed.push_back(&kept);
        settings = settings || unsaved_.count(kSettings);
    }
    for (workspace::Kept* kept : changed) {
        kept->saves = std::max(kept->saves, places_[kRecipe + kept->id].saves) + 1;
        write(kRecipe + kept->id, kept->saves, store::write_kept(*kept));
    }
    if (settings) {
        written_settings_ = work.settings;
        written_open_ = work.open;
        written_place_ = work.place;
        write(kSettings, places_[kSettings].saves + 1,
              store::write_settings(work.settings, work.open, work.place));
    }
}

std::vector<workspace::Kept> Keeping::take_foreign() {
    return std::exchange(foreign_, {});
}

std::vector<Loser> Keeping::take_losers() {
    return std::exchange(losers_, {});
}

void Keeping::adopt(const workspace::Kept& kept) {
    std::erase_if(written_, [&](const workspace::Kept& one) { return one.id == kept.id; });
    written_.push_back(kept);
}

}  // namespace keeping
