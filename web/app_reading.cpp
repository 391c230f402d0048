// The question of what a list of ingredients allows: read from what was pasted, asked anew whenever something
// is said of it, worked at between frames, and what comes of it put into the book.
#include <algorithm>

#include "app.h"
#include "engine/listed_recipe.h"
#include "engine/utf8.h"
#include "engine/workspace_edits.h"
#include "engine/workspace_versions.h"
#include "platform.h"

namespace app {
namespace {

constexpr double kMostMs = 6;  // of a frame; what is left draws it
constexpr int kMostSlices = 400;

// Of a statement that is known: what it is about, by name, so that it stays the same when the list changes.
std::string key_of(const ::reading::Problem& problem, const ::reading::Statement& statement) {
    std::string key = std::to_string(static_cast<int>(statement.kind)) + " " + statement.subject;
    if (!statement.terms.empty()) key += " " + problem.items[statement.terms.front().item].name;
    return key;
}

// The person's statements name entries; the question's name items. One whose entries are all taken out waits.
std::optional<::reading::Statement> about_items(const App& app, ::reading::Statement statement,
                                                const reading_list::Made& made) {
    if (statement.kind == ::reading::Kind::property) {
        auto property = ::reading::property(statement.subject, made.problem.items, statement.min,
                                            statement.max, app.presets.catalogue);
        if (property) property->on = statement.on;
        return property;
    }
    std::vector<::reading::Term> terms;
    for (::reading::Term term : statement.terms) {
        const auto at = std::find(made.entry_of.begin(), made.entry_of.end(), term.item);
        if (at == made.entry_of.end()) continue;
        term.item = static_cast<std::size_t>(at - made.entry_of.begin());
        terms.push_back(term);
    }
    if (terms.empty()) return std::nullopt;
    statement.terms = std::move(terms);
    return statement;
}

std::string recipe_title(const App& app, std::size_t which) {
    const std::string title =
        app.ui.reading.title.empty() ? app.say("reading_ui.untitled") : app.ui.reading.title;
    return app.say("reading_ui.recipe_title", {{"title", title}, {"n", std::to_string(which + 1)}});
}

std::optional<workspace::Recipe> recipe_of(App& app, std::size_t which) {
    const ReadingIn& in = app.ui.reading;
    const auto& suggestions = app.reading->answer().suggestions;
    if (which >= suggestions.size()) return std::nullopt;
    std::vector<reading_list::Entry> entries;
    for (const std::size_t place : app.reading_entries)
        entries.push_back(in.entries[place]);
    workspace::Recipe recipe = listed_recipe::of(entries, suggestions[which].percents, app.presets.catalogue);
    recipe.title = std::string(utf8::start_within(recipe_title(app, which), workspace::kMostTitleBytes));
    recipe.product = in.sold.product;
    recipe.market = in.sold.market;
    recipe.date = in.sold.date;
    recipe.batch.division = blank_recipe(app).batch.division;
    recipe.notes = app.say("reading_ui.origin", {{"n", std::to_string(which + 1)},
                                                 {"of", std::to_string(suggestions.size())},
                                                 {"list", std::string(utf8::start_within(in.text, 4000))}});
    auto checked = workspace::checked(std::move(recipe));
    if (checked) return std::move(checked.value());
    tell(app, words::say(app.words, checked.error()), true);
    return std::nullopt;
}

}  // namespace

void read_ingredients(App& app) {
    ReadingIn& in = app.ui.reading;
    const limits::Book* book = limits_book(app);
    const declaration_read::Reading list = declaration_read::read(in.text, app.presets.catalogue);
    app.ui.again = true;
    in.trouble.clear();
    const auto trouble = [&](result::Error error) { in.trouble = words::say(app.words, error); };
    if (list.cut) return trouble({result::Code::too_many, "", std::to_string(declaration_read::kMostItems)});
    if (book == nullptr) return;
    std::vector<reading_list::Entry> entries = reading_list::entries_of(list, app.presets.catalogue, *book);
    if (std::none_of(entries.begin(), entries.end(), [](const reading_list::Entry& one) {
            return one.as != reading_list::As::incidental && one.as != reading_list::As::aside;
        }))
        return trouble({result::Code::list_empty, "", ""});
    in.entries = std::move(entries);
    in.line_after.reset();
    in.said.clear();
    in.turned.clear();
    app.ui.to_top = true;
    ask_anew(app);
}

void ask_anew(App& app) {
    ReadingIn& in = app.ui.reading;
    const limits::Book* book = limits_book(app);
    app.ui.again = true;
    app.reading.reset();
    in.stopped = false;
    remember_reading(app);
    if (in.entries.empty() || book == nullptr) return;
    reading_list::Made made =
        reading_list::problem_of(in.entries, in.sold, app.presets.catalogue, *book, true);
    if (in.line_after) made.problem.line_after = std::min(*in.line_after, made.problem.items.size());
    for (::reading::Statement& statement : made.problem.statements)
        if (std::find(in.turned.begin(), in.turned.end(), key_of(made.problem, statement)) != in.turned.end())
            statement.on = !statement.on;
    std::vector<::reading::Statement> statements;
    app.reading_said.clear();
    for (std::size_t i = 0; i < in.said.size(); ++i)
        if (auto one = about_items(app, in.said[i], made)) {
            statements.push_back(std::move(*one));
            app.reading_said.push_back(i);
        }
    for (::reading::Statement& statement : made.problem.statements)
        if (statements.size() < ::reading::kMostStatements) statements.push_back(std::move(statement));
    made.problem.statements = std::move(statements);
    app.reading_entries = std::move(made.entry_of);
    auto problem = ::reading::checked(std::move(made.problem));
    if (problem)
        app.reading = std::make_unique<::reading::Work>(std::move(problem.value()), ::reading::Wish{});
    else
        in.trouble = words::say(app.words, problem.error());
}

bool to_think(const App& app) {
    return app.reading && app.ui.screen == Screen::reading && !app.ui.reading.stopped;
}

bool think(App& app) {
    if (!to_think(app)) return false;
    const double until = platform::now_ms() + kMostMs;
    bool more = true;
    for (int i = 0; i < kMostSlices && more && platform::now_ms() < until; ++i)
        more = app.reading->work();
    app.ui.again = true;
    if (!more) app.ui.reading.stopped = true;
    return true;
}

std::string entry_name(const App& app, const reading_list::Entry& entry) {
    const auto* one = catalogue::find_ingredient(app.presets.catalogue, entry.ingredient);
    return one ? one->name : entry.written;
}

::reading::Names item_names(const App& app) {
    ::reading::Names names;
    for (const std::size_t place : app.reading_entries)
        names.push_back(entry_name(app, app.ui.reading.entries[place]));
    return names;
}

void turn_statement(App& app, std::size_t statement) {
    ReadingIn& in = app.ui.reading;
    if (!app.reading || statement >= app.reading->problem().statements.size()) return;
    if (statement < app.reading_said.size()) {
        bool& on = in.said[app.reading_said[statement]].on;
        on = !on;
    } else {
        const std::string key = key_of(app.reading->problem(), app.reading->problem().statements[statement]);
        const auto at = std::find(in.turned.begin(), in.turned.end(), key);
        if (at == in.turned.end())
            in.turned.push_back(key);
        else
            in.turned.erase(at);
    }
    ask_anew(app);
}

bool may_mend(const App& app, const ::reading::Mend& mend) {
    using What = ::reading::Said::What;
    if (mend.said.what == What::line) return true;
    if (mend.said.what != What::statement || mend.said.at >= app.reading->problem().statements.size())
        return false;
    const ::reading::Kind kind = app.reading->problem().statements[mend.said.at].kind;
    return mend.said.at < app.reading_said.size() || kind == ::reading::Kind::declared ||
           kind == ::reading::Kind::undeclared;
}

void mend(App& app, const ::reading::Mend& mend) {
    if (!may_mend(app, mend)) return;
    ReadingIn& in = app.ui.reading;
    if (mend.said.what == ::reading::Said::What::line) {
        in.line_after = static_cast<std::size_t>(mend.figure);
    } else if (mend.said.at < app.reading_said.size()) {
        ::reading::Statement& said = in.said[app.reading_said[mend.said.at]];
        (mend.said.at_most ? said.max : said.min) = mend.figure;
    } else {
        return turn_statement(app, mend.said.at);
    }
    ask_anew(app);
}

// What was kept is read anew; what was decided of a place that is no longer there is dropped.
void recall_reading(App& app) {
    ReadingIn& in = app.ui.reading;
    if (in.recalled || !app.kept_loaded) return;
    in.recalled = true;
    const ::reading::Kept& kept = app.work.settings.reading;
    const limits::Book* book = limits_book(app);
    if (kept.text.empty() || !in.text.empty() || book == nullptr) return;
    in.text = kept.text;
    in.title = kept.title;
    in.sold = {kept.product, kept.market, kept.date};
    if (kept.decided.empty()) return;
    in.entries = reading_list::entries_of(declaration_read::read(kept.text, app.presets.catalogue),
                                          app.presets.catalogue, *book);
    for (const ::reading::Decided& one : kept.decided) {
        if (one.entry >= in.entries.size() || one.as > static_cast<std::size_t>(reading_list::As::aside))
            continue;
        in.entries[one.entry].ingredient = one.ingredient;
        in.entries[one.entry].as = static_cast<reading_list::As>(one.as);
    }
    in.line_after = kept.line_after;
    in.said = kept.said;
    in.turned = kept.turned;
    ask_anew(app);
}

void remember_reading(App& app) {
    const ReadingIn& in = app.ui.reading;
    ::reading::Kept kept{in.text, in.title, in.sold.product, in.sold.market, in.sold.date, {}, {}, {}, {}};
    if (!in.entries.empty()) {
        kept.line_after = in.line_after;
        kept.said = in.said;
        kept.turned = in.turned;
        for (std::size_t i = 0; i < in.entries.size(); ++i)
            kept.decided.push_back({i, in.entries[i].ingredient, static_cast<std::size_t>(in.entries[i].as)});
    }
    app.work.settings.reading = std::move(kept);
}

void keep_suggestion(App& app, std::size_t which) {
    if (auto recipe = recipe_of(app, which)) keep(app, std::move(*recipe));
}

void keep_suggestions(App& app) {
    std::vector<workspace::Recipe> recipes;
    for (std::size_t i = 0; i < app.reading->answer().suggestions.size(); ++i)
        if (auto recipe = recipe_of(app, i)) recipes.push_back(std::move(*recipe));
    std::string first;
    for (std::size_t i = recipes.size(); i-- > 0;) {  // the newest comes first in the book
        first = new_id();
        workspace::add(app.work, first, std::move(recipes[i]), platform::now_utc());
        const std::string tag(utf8::start_within(app.ui.reading.title, workspace::kMostTagBytes));
        if (!tag.empty()) (void)workspace::tag(app.work, first, tag);
    }
    if (first.empty()) return;
    open(app, first, Screen::book);
    ask_to_keep(app);
    tell(app, app.say("reading_ui.all_kept", {{"n", std::to_string(recipes.size())}}));
}

void keep_as_versions(App& app) {
    const std::size_t count = app.reading->answer().suggestions.size();
    std::string id;
    for (std::size_t i = 0; i < count; ++i) {
        const auto recipe = recipe_of(app, i);
        if (!recipe) continue;
        const std::string now = platform::now_utc();
        if (id.empty()) {
            id = new_id();
            workspace::add(app.work, id, *recipe, now);
        }
        (void)workspace::keep_version(app.work, id, *recipe,
                                      app.say("reading_ui.suggestion", {{"n", std::to_string(i + 1)}}),
                                      new_id(), now);
    }
    if (id.empty()) return;
    open(app, id, Screen::versions);
    ask_to_keep(app);
}

}  // namespace app
