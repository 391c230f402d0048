// What the open recipe is made of and how long it keeps, worked out when it is first asked for, by what is on
// this device's shelf today.
#include <utility>

#include "app.h"
#include "engine/workspace_edits.h"
#include "engine/workspace_versions.h"
#include "platform.h"

namespace app {

const BlendView& blend_view(App& app) {
    const BlendIn& in = app.ui.blend;
    analysis::Shelf shelf{{}, platform::today(), in.margin};
    const BlendAsked asked{in.temp, in.margin, app.work.filings, shelf.made_on};
    if (app.blend_view && app.blend_view->asked == asked) return *app.blend_view;
    for (const workspace::Filed& filed : app.work.filed)
        if (const auto* lot = std::get_if<lot::Lot>(&filed.what)) shelf.lots.push_back(*lot);
    app.blend_view.emplace(
        BlendView{asked, analysis::blended(*app.analysed, app.presets.catalogue, shelf, in.temp),
                  analysis::ladder(app.presets.recipes, app.presets.catalogue, app.analysed->title)});
    return *app.blend_view;
}

std::vector<std::pair<std::string, std::string>> laid_over(const App& app) {
    constexpr std::size_t kMost = 8;
    std::vector<std::pair<std::string, std::string>> list;
    for (const workspace::Filed* filed : workspace::versions_of(app.work, app.work.open))
        if (list.size() < kMost / 2) list.push_back({filed->id, version_name(app, filed->id)});
    for (const workspace::Kept& kept : app.work.recipes)
        if (kept.id != app.work.open && kept.binned.empty() && list.size() < kMost)
            list.push_back(
                {kept.id, kept.recipe.title.empty() ? app.say("recipe.untitled") : kept.recipe.title});
    return list;
}

std::optional<blend::Profile> profile_of(const App& app, const std::string& id) {
    const workspace::Version* version = workspace::find_version(app.work, id);
    const workspace::Kept* kept = workspace::find(app.work, id);
    if (!version && !kept) return std::nullopt;
    const workspace::Recipe& recipe = version ? version->recipe : kept->recipe;
    const auto parts = blend::parts_of(recipe.formula, app.presets.catalogue, recipe.own);
    if (!parts) return std::nullopt;
    return blend::profile_of(*parts);
}

void rate_firmness(App& app, int rating) {
    const auto& made = blend_view(app).made;
    if (!made) return;
    edit(app, workspace::rate_firmness(app.work.settings, {app.analysed->title, made->firm.body, rating}));
}

}  // namespace app
