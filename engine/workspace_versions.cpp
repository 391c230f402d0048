#include "workspace_versions.h"

#include <algorithm>
#include <utility>

#include "bounds.h"
#include "workspace_records.h"

namespace workspace {
namespace {

using result::Code;
using result::Error;

Version* version_in(Workspace& workspace, std::string_view id, Filed** in = nullptr) {
    for (Filed& filed : workspace.filed)
        if (filed.id == id) {
            if (in) *in = &filed;
            return std::get_if<Version>(&filed.what);
        }
    return nullptr;
}

// How much is made belongs to a batch, not to a version.
bool same_version(const Recipe& one, const Recipe& other) {
    if (one.batch == other.batch) return one == other;
    Recipe as_much = other;
    as_much.batch = one.batch;
    return one == as_much;
}

void touched(Workspace& workspace, Filed& filed, std::string now) {
    filed.changed = std::move(now);
    ++workspace.filings;
}

}  // namespace

std::vector<const Filed*> versions_of(const Workspace& workspace, std::string_view recipe) {
    std::vector<const Filed*> all;
    for (std::size_t i = workspace.filed.size(); i-- > 0;)
        if (const auto* one = std::get_if<Version>(&workspace.filed[i].what); one && one->of == recipe)
            all.push_back(&workspace.filed[i]);
    return all;
}

const Version* find_version(const Workspace& workspace, std::string_view id) {
    for (const Filed& filed : workspace.filed)
        if (filed.id == id) return std::get_if<Version>(&filed.what);
    return nullptr;
}

result::Result<std::string> keep_version(Workspace& workspace, std::string_view recipe_id,
                                         const Recipe& recipe, std::string_view name, std::string id,
                                         std::string now) {
    if (auto fault = bounds::too_long(name, kMostVersionBytes, "name")) return *fault;
    std::size_t count = 0;
    for (Filed& filed : workspace.filed) {
        auto* version = std::get_if<Version>(&filed.what);
        if (!version || version->of != recipe_id) continue;
        ++count;
        if (!same_version(version->recipe, recipe)) continue;
        if (!name.empty() && version->name != name) {
            version->name = name;
            touched(workspace, filed, std::move(now));
        }
        return filed.id;
    }
    // A record is not refused for that.
    if (!name.empty() && count >= kMostVersions)
        return Error{Code::too_many, "versions", std::to_string(kMostVersions)};
    file(workspace, {id, Version{std::string(recipe_id), std::string(name), false, false, recipe}, now, now});
    return id;
}

bool freeze_version(Workspace& workspace, std::string_view id, std::string now) {
    Filed* filed = nullptr;
    Version* version = version_in(workspace, id, &filed);
    if (!version || std::exchange(version->frozen, true)) return false;
    touched(workspace, *filed, std::move(now));
    return true;
}

result::Result<std::string> name_version(Workspace& workspace, std::string_view id, std::string_view name,
                                         std::string now) {
    Filed* filed = nullptr;
    Version* version = version_in(workspace, id, &filed);
    if (!version) return Error{Code::field_unknown_value, "id", std::string(id)};
    if (auto fault = bounds::too_long(name, kMostVersionBytes, "name")) return *fault;
    if (version->name != name) {
        version->name = name;
        touched(workspace, *filed, std::move(now));
    }
    return filed->id;
}

bool pin_version(Workspace& workspace, std::string_view id, bool pinned, std::string now) {
    const Version* chosen = version_in(workspace, id);
    if (!chosen) return false;
    const std::string of = chosen->of;
    for (Filed& filed : workspace.filed) {
        auto* version = std::get_if<Version>(&filed.what);
        if (!version || version->of != of) continue;
        const bool is = pinned && filed.id == id;
        if (std::exchange(version->pinned, is) != is) touched(workspace, filed, now);
    }
    return true;
}

void forget_versions(Workspace& workspace, std::string_view recipe) {
    const std::size_t gone = std::erase_if(workspace.filed, [&](const Filed& filed) {
        const auto* version = std::get_if<Version>(&filed.what);
        return version && version->of == recipe && !version->frozen;
    });
    workspace.filings += gone;
}

Differences differences(const Recipe& one, const Recipe& other) {
    Differences made;
    made.lines = version::compare(one.formula, other.formula);
    made.changed_lines = version::changes(made.lines);
    made.title = one.title != other.title;
    made.product = one.product != other.product;
    made.steps = one.steps != other.steps || one.formula.phases != other.formula.phases;
    made.notes = one.notes != other.notes;
    made.label = one.label != other.label;
    made.batch = one.batch != other.batch;
    return made;
}

}  // namespace workspace
