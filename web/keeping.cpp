// See keeping.h. Knows key names and save counters; the form of a record is the store's.
#include "keeping.h"

#include <algorithm>
#include <utility>

#include "engine/checksum.h"
#include "engine/sorting.h"
#include "engine/workspace_records.h"

namespace keeping {
namespace {

const std::string kRecipe = std::string(kPrefix) + "recipe:";
const std::string kOwn = std::string(kPrefix) + "ingredient:";
const std::string kFiled[] = {std::string(kPrefix) + "record:", std::string(kPrefix) + "lot:",
                              std::string(kPrefix) + "version:"};  // as the variant has them
const std::string kWeighing = std::string(kPrefix) + "weighing:";
const std::string kSettings = std::string(kPrefix) + "settings";
const std::string kAside = std::string(kPrefix) + "aside:";

bool is_in(const std::string& base, const std::string& list) {
    return base.compare(0, list.size(), list) == 0 && base.size() > list.size();
}

bool is_filed(const std::string& base) {
    return is_in(base, kFiled[0]) || is_in(base, kFiled[1]) || is_in(base, kFiled[2]);
}

// "tarebench:recipe:x.a" -> base "tarebench:recipe:x", slot 'a'; nothing for keys that are not ours.
bool split_key(const std::string& key, std::string& base, char& slot) {
    if (key.size() < 3 || key[key.size() - 2] != '.') return false;
    slot = key.back();
    if (slot != 'a' && slot != 'b') return false;
    base = key.substr(0, key.size() - 2);
    return base == kSettings || is_in(base, kRecipe) || is_in(base, kOwn) || is_filed(base) ||
           is_in(base, kWeighing);
}

// Bases of what there is a list of: told apart by kind, because one call serves them all.
std::string base_of(const workspace::Kept& kept) {
    return kRecipe + kept.id;
}
std::string base_of(const workspace::KeptOwn& kept) {
    return kOwn + kept.ingredient.id;
}
std::string base_of(const workspace::Filed& filed) {
    return kFiled[filed.what.index()] + filed.id;
}
std::string base_of(const workspace::KeptWeighOut& kept) {
    return kWeighing + kept.id;
}
std::string json_of(const workspace::Kept& kept) {
    return store::write_kept(kept);
}
std::string json_of(const workspace::KeptOwn& kept) {
    return store::write_kept_own(kept);
}
std::string json_of(const workspace::Filed& filed) {
    return store::write_filed(filed);
}
std::string json_of(const workspace::KeptWeighOut& kept) {
    return store::write_weigh_out(kept);
}

bool same_content(const workspace::Kept& a, const workspace::Kept& b) {
    return a.recipe == b.recipe && a.binned == b.binned && a.tags == b.tags;
}
bool same_content(const workspace::KeptOwn& a, const workspace::KeptOwn& b) {
    return a.ingredient == b.ingredient && a.binned == b.binned;
}
bool same_content(const workspace::KeptWeighOut& a, const workspace::KeptWeighOut& b) {
    return a.weighing == b.weighing && a.of == b.of;
}
bool same_content(const workspace::Filed& a, const workspace::Filed& b) {
    return a.what == b.what;
}

template <class Entry>
Entry* find_base(std::vector<Entry>& list, const std::string& base) {
    for (Entry& entry : list)
        if (base_of(entry) == base) return &entry;
    return nullptr;
}

// The entries of `list` that differ from what was written last, dated; `written` then holds them as they are.
template <class Entry>
std::vector<Entry*> changed_in(std::vector<Entry>& list, std::vector<Entry>& written, std::string_view now) {
    std::vector<Entry*> changed;
    for (Entry& entry : list) {
        Entry* before = find_base(written, base_of(entry));
        if (before && same_content(*before, entry)) continue;
        // Its instant, unless whoever changed it knows better (a recipe out of a backup).
        if (before ? entry.changed == before->changed : entry.changed.empty())
            entry.changed = std::string(now);
        if (before)
            *before = entry;
        else
            written.push_back(entry);
        changed.push_back(&entry);
    }
    return changed;
}

// And those whose last save failed.
template <class Entry>
void add_unsaved(std::vector<Entry*>& changed, std::vector<Entry>& list,
                 const std::set<std::string>& unsaved) {
    for (Entry& entry : list)
        if (unsaved.count(base_of(entry)) &&
            std::find(changed.begin(), changed.end(), &entry) == changed.end())
            changed.push_back(&entry);
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
    if (is_in(base, kOwn)) {
        auto own = store::read_kept_own(record->json);
        if (!own) {
            if (record->saves > place.saves) place = {after, record->saves};
            return;
        }
        own->saves = record->saves;
        return settle_foreign(base, slot, std::move(own).value(), written_own_, foreign_own_,
                              [&](auto lost, bool) { own_losers_.push_back(std::move(lost)); });
    }
    if (is_filed(base)) {
        auto filed = store::read_filed(record->json);
        if (!filed || base != base_of(*filed)) {
            if (record->saves > place.saves) place = {after, record->saves};
            return;
        }
        filed->saves = record->saves;
        return settle_foreign(base, slot, std::move(filed).value(), written_filed_, foreign_filed_,
                              [&](auto lost, bool was_ours) {
                                  if (!was_ours) foreign_filed_.push_back(std::move(lost));
                              });
    }
    if (is_in(base, kWeighing)) {
        auto weighing = store::read_weigh_out(record->json);
        if (!weighing || base != base_of(*weighing)) {
            if (record->saves > place.saves) place = {after, record->saves};
            return;
        }
        weighing->saves = record->saves;
        return settle_foreign(base, slot, std::move(weighing).value(), written_weighing_, foreign_weighing_,
                              [&](const auto& lost, bool) { keep_aside(json_of(lost)); });
    }
    auto theirs = store::read_kept(record->json);
    if (!theirs) {
        if (record->saves > place.saves) place = {after, record->saves};
        return;
    }
    theirs->saves = record->saves;
    settle_foreign(base, slot, std::move(theirs).value(), written_, foreign_, [&](auto lost, bool was_ours) {
        losers_.push_back({std::move(lost), was_ours});
    });
}

template <class Entry, class Lost>
void Keeping::settle_foreign(const std::string& base, char slot, Entry theirs, std::vector<Entry>& written,
                             std::vector<Entry>& foreign, Lost lost) {
    Place& place = places_[base];
    const Entry* ours = find_base(written, base);
    const bool differs = ours && !same_content(*ours, theirs);
    if (theirs.saves < place.saves) {
        if (slot == place.next) return;  // an old one
        if (differs) lost(std::move(theirs), false);
        unsaved_.insert(base);
        try_again_ = true;
        return;
    }
    const bool unknown_to_them =
        theirs.saves == place.saves || contested_.count(base) > 0 || unsaved_.count(base) > 0;
    if (unknown_to_them && differs) lost(*ours, true);
    contested_.erase(base);
    unsaved_.erase(base);
    place = {slot == 'a' ? 'b' : 'a', theirs.saves};
    if (differs || !ours) foreign.push_back(std::move(theirs));
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
        } else if (is_in(base, kOwn)) {
            auto own = store::read_kept_own(chosen.record->json);
            if (own && base == base_of(*own)) {
                own->saves = chosen.record->saves;
                work.own.push_back(std::move(own.value()));
            } else {
                set_aside(base, from, chosen.record->json);
            }
        } else if (is_filed(base)) {
            auto filed = store::read_filed(chosen.record->json);
            if (filed && base == base_of(*filed)) {
                filed->saves = chosen.record->saves;
                work.filed.push_back(std::move(filed.value()));
            } else {
                set_aside(base, from, chosen.record->json);
            }
        } else if (is_in(base, kWeighing)) {
            auto weighing = store::read_weigh_out(chosen.record->json);
            if (weighing && base == base_of(*weighing)) {
                weighing->saves = chosen.record->saves;
                work.weighing.push_back(std::move(weighing.value()));
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
    sorting::stable(work.recipes,
                    [](const workspace::Kept& a, const workspace::Kept& b) { return a.changed > b.changed; });
    const workspace::Kept* opened = workspace::find(work, work.open);
    if (!opened || !opened->binned.empty()) work.open.clear();
    sorting::stable(work.own, [](const workspace::KeptOwn& a, const workspace::KeptOwn& b) {
        return a.ingredient.id < b.ingredient.id;
    });
    workspace::sort_filed(work.filed);
    written_ = work.recipes;
    written_own_ = work.own;
    written_weighing_ = work.weighing;
    written_filed_ = work.filed;
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

void Keeping::drop(const std::string& base) {
    platform::remove(base + ".a");
    platform::remove(base + ".b");
    places_.erase(base);
    unsaved_.erase(base);
}

void Keeping::save_changes(workspace::Workspace& work, std::string_view now) {
    if (!loaded_) return;
    // First what goes, which makes room for what comes.
    const auto drop_gone = [&](auto& written, auto& list) {
        return std::erase_if(written, [&](const auto& one) {
            if (find_base(list, base_of(one))) return false;
            drop(base_of(one));
            return true;
        });
    };
    std::size_t gone = drop_gone(written_, work.recipes) + drop_gone(written_own_, work.own) +
                       drop_gone(written_weighing_, work.weighing);
    const bool filed = std::exchange(written_filings_, work.filings) != work.filings;
    if (filed) gone += drop_gone(written_filed_, work.filed);
    std::vector<workspace::Kept*> changed = changed_in(work.recipes, written_, now);
    std::vector<workspace::KeptOwn*> changed_own = changed_in(work.own, written_own_, now);
    std::vector<workspace::KeptWeighOut*> changed_weighing =
        changed_in(work.weighing, written_weighing_, now);
    std::vector<workspace::Filed*> changed_filed;
    if (filed) changed_filed = changed_in(work.filed, written_filed_, now);
    bool settings =
        work.settings != written_settings_ || work.open != written_open_ || work.place != written_place_;
    for (const std::string& base : std::exchange(contested_, {})) {  // settings, or taken away meanwhile
        unsaved_.insert(base);
        try_again_ = true;
    }
    // A store that is full stays so until something happens: trying at every frame would keep the page awake
    // for nothing.
    if (std::exchange(try_again_, false) || gone > 0 || !changed.empty() || !changed_own.empty() ||
        !changed_filed.empty() || !changed_weighing.empty() || settings) {
        add_unsaved(changed, work.recipes, unsaved_);
        add_unsaved(changed_own, work.own, unsaved_);
        add_unsaved(changed_weighing, work.weighing, unsaved_);
        add_unsaved(changed_filed, work.filed, unsaved_);
        settings = settings || unsaved_.count(kSettings);
    }
    const auto write_all = [&](const auto& entries) {
        for (auto* entry : entries) {
            entry->saves = std::max(entry->saves, places_[base_of(*entry)].saves) + 1;
            write(base_of(*entry), entry->saves, json_of(*entry));
        }
    };
    write_all(changed_own);  // before the recipes that hold copies of them
    write_all(changed);
    write_all(changed_weighing);
    write_all(changed_filed);
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

std::vector<workspace::KeptOwn> Keeping::take_foreign_own() {
    return std::exchange(foreign_own_, {});
}

void Keeping::adopt(const workspace::KeptOwn& kept) {
    std::erase_if(written_own_, [&](const workspace::KeptOwn& one) { return base_of(one) == base_of(kept); });
    written_own_.push_back(kept);
}

std::vector<workspace::Filed> Keeping::take_foreign_filed() {
    return std::exchange(foreign_filed_, {});
}

void Keeping::adopt(const workspace::Filed& filed) {
    std::erase_if(written_filed_,
                  [&](const workspace::Filed& one) { return base_of(one) == base_of(filed); });
    written_filed_.push_back(filed);
    written_filings_ = UINT64_MAX;  // what is here may differ from it
}

std::vector<workspace::KeptOwn> Keeping::take_own_losers() {
    return std::exchange(own_losers_, {});
}

std::vector<workspace::KeptWeighOut> Keeping::take_foreign_weighing() {
    return std::exchange(foreign_weighing_, {});
}

void Keeping::adopt(const workspace::KeptWeighOut& kept) {
    std::erase_if(written_weighing_, [&](const workspace::KeptWeighOut& one) { return one.id == kept.id; });
    written_weighing_.push_back(kept);
}

}  // namespace keeping
