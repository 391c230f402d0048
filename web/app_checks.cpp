// What the checks say of the open recipe, worked out when it is first asked for, and how it is called in
// words. The book of limits is unpacked here, once.
#include <utility>

#include "app.h"
#include "engine/store_limits.h"
#include "presets_data.h"

namespace app {

const limits::Book* limits_book(App& app) {
    if (!app.book)
        if (auto book = store::unpack_limits(presets_data::kLimits)) app.book = std::move(book.value());
    return app.book ? &*app.book : nullptr;
}

const safety::Report& checks(App& app) {
    const limits::Book* book = limits_book(app);
    if (!app.report)
        app.report = analysis::checks(*app.analysed, app.presets.catalogue, book, app.analysed_on, app.mine);
    return *app.report;
}

const ceiling::Ceiling* ceiling_of(App& app, std::size_t line) {
    const limits::Book* book = limits_book(app);
    if (!book || !app.analysed || line >= app.analysed->formula.lines.size()) return nullptr;
    if (app.analysed->formula.lines[line].rest || app.analysed->formula.lines[line].locked) return nullptr;
    const auto [place, fresh] = app.ceilings.try_emplace(line);
    if (fresh)
        if (auto found =
                ceiling::of({*app.analysed, line, app.presets.catalogue, book, app.analysed_on, app.mine}))
            place->second = std::move(found.value());
    return place->second ? &*place->second : nullptr;
}

std::vector<formula::Hold> brought(App& app, std::size_t line) {
    if (!app.analysed) return {};
    return ceiling::brought(
        {*app.analysed, line, app.presets.catalogue, limits_book(app), app.analysed_on, app.mine});
}

std::optional<result::Result<ceiling::Kept>> keeping(App& app, std::size_t line) {
    if (!app.analysed || line >= app.analysed->formula.lines.size()) return std::nullopt;
    const std::optional<formula::Hold>& hold = app.analysed->formula.lines[line].hold;
    if (!hold) return std::nullopt;
    return ceiling::keeping(
        {*app.analysed, line, app.presets.catalogue, limits_book(app), app.analysed_on, app.mine}, *hold);
}

std::string subject_name(const App& app, const finding::Finding& finding) {
    if (finding.line && app.analysed && *finding.line < app.analysed->formula.lines.size()) {
        const formula::Line& line = app.analysed->formula.lines[*finding.line];
        if (finding.subject.empty() || finding.subject == line.ingredient || finding.subject == line.name)
            return workspace::display_name(app.known(), line);
    }
    if (const auto* one = catalogue::find_ingredient(app.known(), finding.subject)) return one->name;
    if (const auto* one = catalogue::find_container(app.known(), finding.subject)) return one->name;
    if (const auto* one = catalogue::find_product(app.known(), finding.subject)) return one->name;
    return finding.subject;
}

std::string constituent_name(const App& app, const finding::Finding& finding) {
    if (!app.book) return finding.constituent;
    const composition::Id id = composition::find(app.book->composition, finding.constituent);
    return id == composition::kNone ? finding.constituent : app.book->composition.constituents[id].name;
}

std::string source_words(const App& app, std::string_view key, source::Standing standing) {
    static constexpr std::string_view kStandings[] = {"standing.document", "standing.supplier",
                                                      "standing.common_practice", "standing.memory",
                                                      "standing.estimate"};
    const std::string how = app.say(kStandings[static_cast<int>(standing)]);
    const source::Entry* entry = catalogue::find_source(app.presets.catalogue, key);
    if (!entry && app.book)
        for (const source::Entry& one : app.book->sources)
            if (one.key == key) entry = &one;
    const bool says_no_more = !entry || key == "common_practice" || key == "memory";
    return says_no_more ? how : entry->title + "; " + how;
}

}  // namespace app
