// See workspace_backup.h. Instants are texts that sort as they follow each other (2026-11-25T12:00:00Z).
#include "workspace_backup.h"

#include <algorithm>
#include <utility>

#include "bounds.h"
#include "workspace_own.h"
#include "workspace_records.h"

namespace workspace_backup {
namespace {

using bounds::is_id;
using workspace::Kept;
using workspace::Settings;
using workspace::Workspace;

bool same_here(const Kept& mine, const Kept& theirs) {
    return mine.recipe == theirs.recipe && mine.tags == theirs.tags &&
           mine.binned.empty() == theirs.binned.empty();
}

// When a backup was made is each device's own business.
Settings as_here(Settings theirs, const Settings& mine) {
    theirs.last_backup = mine.last_backup;
    return theirs;
}

std::optional<std::int64_t> seconds_of(std::string_view instant) {
    if (instant.size() != 20 || instant[4] != '-' || instant[7] != '-' || instant[10] != 'T' ||
        instant[13] != ':' || instant[16] != ':' || instant[19] != 'Z')
        return std::nullopt;
    bool sound = true;
    const auto number = [&](std::size_t from, std::size_t count) {
        std::int64_t value = 0;
        for (const char c : instant.substr(from, count)) {
            sound = sound && c >= '0' && c <= '9';
            value = value * 10 + (c - '0');
        }
        return value;
    };
    const std::int64_t month = number(5, 2), day = number(8, 2);
    const std::int64_t year = number(0, 4) - (month <= 2 ? 1 : 0);
    const std::int64_t seconds = number(11, 2) * 3600 + number(14, 2) * 60 + number(17, 2);
    if (!sound || month < 1 || month > 12 || day < 1 || day > 31) return std::nullopt;
    // Days of the Gregorian calendar, the year counted from March so that the leap day is its last.
    const std::int64_t of_year = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;
    const std::int64_t days = year * 365 + year / 4 - year / 100 + year / 400 + of_year;
    return days * 86400 + seconds;
}

}  // namespace

Preview preview(const Workspace& workspace, Content content) {
    Preview preview;
    preview.made = std::move(content.made);
    preview.damaged = std::move(content.damaged);
    if (content.settings && as_here(*content.settings, workspace.settings) != workspace.settings)
        preview.settings = std::move(content.settings);
    for (workspace::KeptOwn& theirs : content.own) {
        const auto same = [&](const workspace::KeptOwn& mine) {
            return mine.ingredient == theirs.ingredient;
        };
        if (std::none_of(workspace.own.begin(), workspace.own.end(), same))
            preview.own.push_back(std::move(theirs));
    }
    for (workspace::Filed& theirs : content.filed) {
        Workspace here;  // with this one alone
        for (const workspace::Filed& mine : workspace.filed)
            if (mine.id == theirs.id) here.filed.push_back(mine);
        if (workspace::take_filed(here, theirs)) preview.filed.push_back(std::move(theirs));
    }
    preview.weighing = std::move(content.weighing);
    for (Kept& theirs : content.recipes) {
        Entry entry;
        const auto twice = std::any_of(preview.entries.begin(), preview.entries.end(),
                                       [&](const Entry& before) { return before.theirs.id == theirs.id; });
        if (!is_id(theirs.id) || twice) theirs.id.clear();
        const Kept* mine = theirs.id.empty() ? nullptr : workspace::find(workspace, theirs.id);
        const bool content_is_here =
            std::any_of(workspace.recipes.begin(), workspace.recipes.end(),
                        [&](const Kept& one) { return &one != mine && one.recipe == theirs.recipe; });
        if (mine) entry.mine = mine->id;
        if ((mine && same_here(*mine, theirs)) || content_is_here)
            entry.state = State::same, ++preview.same;
        else if (mine)
            entry.state = State::changed, ++preview.changed;
        else
            entry.state = State::fresh, ++preview.fresh;
        entry.theirs = std::move(theirs);
        preview.entries.push_back(std::move(entry));
    }
    return preview;
}

bool put_back(Workspace& workspace, const Entry& entry, std::string new_id, std::string_view tag) {
    Kept theirs = entry.theirs;
    theirs.saves = 0;
    Kept* mine = entry.mine.empty() ? nullptr : workspace::find(workspace, entry.mine);
    if (entry.state == State::same) return false;
    if (entry.state == State::changed && mine) {
        if (entry.choice == Choice::mine) return false;
        if (entry.choice == Choice::theirs) {
            theirs.id = mine->id;
            theirs.saves = mine->saves;
            if (workspace.open == mine->id && !theirs.binned.empty()) workspace.open.clear();
            *mine = std::move(theirs);
            return true;
        }
    }
    const bool beside = entry.state == State::changed && mine;
    if (beside || theirs.id.empty() || workspace::find(workspace, theirs.id)) theirs.id = std::move(new_id);
    const std::string id = theirs.id;
    workspace.recipes.push_back(std::move(theirs));
    if (beside && !tag.empty()) (void)workspace::tag(workspace, id, tag);  // full of tags: it comes without
    return true;
}

std::size_t put_back_own(Workspace& workspace, const Preview& preview, const catalogue::Catalogue& shipped) {
    std::size_t came = 0;
    for (workspace::KeptOwn theirs : preview.own) {
        theirs.saves = 0;
        const std::string& id = theirs.ingredient.id;
        const bool taken = workspace::find_own(workspace, id) != nullptr ||
                           catalogue::find_ingredient(shipped, id) != nullptr || !is_id(id);
        if (!taken) {
            workspace::put_own(workspace, std::move(theirs));
            ++came;
        } else if (auto added = workspace::add_own(workspace, shipped, theirs.ingredient, theirs.changed)) {
            if (!theirs.binned.empty()) workspace::bin_own(workspace, *added, theirs.binned);
            ++came;
        }
    }
    return came;
}

std::size_t put_back_filed(Workspace& workspace, const Preview& preview) {
    std::size_t came = 0;
    for (workspace::Filed theirs : preview.filed) {
        theirs.saves = 0;
        came += workspace::take_filed(workspace, std::move(theirs)) ? 1 : 0;
    }
    return came;
}

std::size_t put_back(Workspace& workspace, const Preview& preview, const std::vector<std::string>& new_ids,
                     std::string_view tag) {
    // A device that was empty now has what the file has: that much is in a backup.
    const bool was_empty = workspace.recipes.empty();
    std::size_t came = 0;
    for (std::size_t i = 0; i < preview.entries.size(); ++i)
        if (put_back(workspace, preview.entries[i], i < new_ids.size() ? new_ids[i] : "", tag)) ++came;
    for (const workspace::KeptWeighOut& theirs : preview.weighing)
        if (is_id(theirs.id) && workspace::find(workspace, theirs.of) &&
            std::none_of(workspace.weighing.begin(), workspace.weighing.end(),
                         [&](const workspace::KeptWeighOut& mine) {
                             return mine.of == theirs.of || mine.id == theirs.id;
                         })) {
            workspace.weighing.push_back(theirs);
            workspace.weighing.back().saves = 0;
        }
    if (preview.take_settings && preview.settings)
        workspace.settings = as_here(*preview.settings, workspace.settings);
    if (was_empty && came > 0) workspace.settings.last_backup = preview.made;
    return came;
}

std::size_t not_in_backup(const Workspace& workspace) {
    const auto is_new = [&](const Kept& kept) {
        return kept.binned.empty() && kept.changed > workspace.settings.last_backup;
    };
    return static_cast<std::size_t>(
        std::count_if(workspace.recipes.begin(), workspace.recipes.end(), is_new));
}

std::size_t filed_not_in_backup(const Workspace& workspace) {
    return static_cast<std::size_t>(std::count_if(
        workspace.filed.begin(), workspace.filed.end(),
        [&](const workspace::Filed& filed) { return filed.changed > workspace.settings.last_backup; }));
}

std::optional<std::int64_t> seconds_between(std::string_view from, std::string_view to) {
    const auto first = seconds_of(from), last = seconds_of(to);
    if (!first || !last) return std::nullopt;
    return *last - *first;
}

std::optional<std::int64_t> days_between(std::string_view from, std::string_view to) {
    const auto seconds = seconds_between(from, to);
    if (!seconds) return std::nullopt;
    return std::max<std::int64_t>(0, *seconds) / 86400;
}

bool due(const Workspace& workspace, std::string_view now) {
    const std::size_t changed = not_in_backup(workspace) + filed_not_in_backup(workspace);
    if (changed >= kManyChanged) return true;
    const auto days = days_between(workspace.settings.last_backup, now);
    return changed > 0 && days && *days >= kLongDays;
}

}  // namespace workspace_backup
