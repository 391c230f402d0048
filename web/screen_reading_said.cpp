// Sheets of a reading: what product it is of, one name of the list, where the 1 % line falls, a sum of
// several or something measured.
#include <algorithm>

#include "app.h"
#include "engine/sorting.h"
#include "engine/workspace_edits.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace screens {
namespace {

using ::reading::Statement;
using reading_list::As;

constexpr const char* kSoldMarkets[] = {"", "eu", "gb", "ni", "us", "ca"};
constexpr const char* kProperties[] = {"density", "iodine_value", "saponification_value", "wax_share"};

void quiet(app::App& app, const std::string& words) {
    widget::text(app.kit, words, theme::Type::small, widget::Ink::soft);
}

bool done(app::App& app) {
    widget::gap(16);
    return widget::button(app.kit, "done", app.say("sheet_ui.done"), widget::Look::primary, app.kit.width);
}

// The least and the most of a statement; true: changed.
bool bounds(app::App& app, Statement& statement, const std::string& unit, const std::string& of) {
    bool changed = false;
    const auto field = [&](const char* key, const char* words, std::optional<std::int64_t>& value) {
        widget::NumberSpec spec;
        spec.name = app.say(words, {{"name", of}});
        spec.unit = unit;
        const bool percent = statement.kind != ::reading::Kind::property || statement.subject == "wax_share";
        spec.read = percent                          ? typed::percent
                    : statement.subject == "density" ? typed::density
                                                     : typed::of_fat;
        spec.may_be_empty = true;
        spec.hint = app.say("reading_ui.open");
        widget::gap(8);
        const auto change = widget::number_field(app.kit, key, value, spec);
        if (!change.changed) return;
        value = change.value;
        changed = true;
    };
    field("least", "reading_ui.least", statement.min);
    field("most", "reading_ui.most", statement.max);
    return changed;
}

bool crossed(const Statement& statement) {
    return statement.min && statement.max && *statement.min > *statement.max;
}

void amount_of(app::App& app, std::size_t entry, const std::string& name) {
    app::ReadingIn& in = app.ui.reading;
    const auto at = std::find_if(in.said.begin(), in.said.end(), [&](const Statement& one) {
        return one.kind == ::reading::Kind::amount && one.terms.size() == 1 &&
               one.terms.front().item == entry;
    });
    Statement now = at == in.said.end() ? ::reading::amount(entry, std::nullopt, std::nullopt) : *at;
    widget::gap(16);
    widget::heading(app.kit, 3, app.say("reading_ui.amount"));
    quiet(app, app.say("reading_ui.amount_about"));
    if (!bounds(app, now, "%", name)) {
        if (crossed(now))
            quiet(app, words::say(app.words, result::Error{result::Code::range_crossed, "", ""}));
        return;
    }
    if (at == in.said.end())
        in.said.push_back(now);
    else
        *at = now;
    if (!now.min && !now.max) std::erase_if(in.said, [&](const Statement& one) { return one == now; });
    app::ask_anew(app);
}

void place_name_of(app::App& app, reading_list::Entry& entry) {
    std::optional<std::string> chosen;
    const auto choice = [&](const std::string& id, const std::string& title, const std::string& under) {
        widget::RowSpec row;
        row.title = title;
        row.under = under;
        row.chosen = id == entry.ingredient;
        if (widget::row(app.kit, "choice_" + id, row).pressed) chosen = id;
        widget::hairline(app.kit);
    };
    widget::gap(16);
    widget::heading(app.kit, 3, app.say("reading_ui.what"));
    std::vector<std::string> ids = entry.offered;
    if (!entry.ingredient.empty() && std::find(ids.begin(), ids.end(), entry.ingredient) == ids.end())
        ids.insert(ids.begin(), entry.ingredient);
    for (const std::string& id : ids)
        if (const auto* one = catalogue::find_ingredient(app.presets.catalogue, id))
            choice(id, one->name, app.say("role." + one->role));
    choice("", app.say("ingredient.as_written", {{"name", entry.written}}),
           app.say("ingredient.as_written_about"));
    widget::gap(8);
    if (const auto found = picked(app, entry.ingredient)) chosen = *found;
    if (!chosen || *chosen == entry.ingredient) return;
    entry.ingredient = *chosen;
    app.ui.search.clear();
    app::ask_anew(app);
}

}  // namespace

void reading_for(app::App& app) {
    kit::Kit& kit = app.kit;
    ::reading::Sold& sold = app.ui.reading.sold;
    const ::reading::Sold before = sold;
    quiet(app, app.say("reading_ui.for_about"));
    widget::gap(10);
    std::vector<std::string> markets;
    int chosen = 0;
    for (std::size_t i = 0; i < std::size(kSoldMarkets); ++i) {
        const std::string id = kSoldMarkets[i];
        markets.push_back(app.say(id.empty() ? std::string("market.unsaid") : "market." + id));
        if (id == sold.market) chosen = static_cast<int>(i);
    }
    widget::text(kit, app.say("meant.market"), theme::Type::small, widget::Ink::soft);
    widget::gap(4);
    if (const int n = widget::choice(kit, "market", app.say("meant.market"), markets, chosen); n >= 0)
        sold.market = kSoldMarkets[n];
    widget::gap(14);
    widget::TextSpec date;
    date.name = app.say("reading_ui.date");
    date.most_bytes = 10;
    if (app.ui.meant_date_of != "reading") {
        app.ui.meant_date_of = "reading";
        app.ui.meant_date = sold.date;
    }
    if (const auto typed = widget::text_field(kit, "date", app.ui.meant_date, date)) {
        app.ui.meant_date = *typed;
        if (typed->empty() || workspace::is_date(*typed)) sold.date = *typed;
    }
    if (!app.ui.meant_date.empty() && app.ui.meant_date != sold.date)
        widget::text(kit, app.say("own.date_form"), theme::Type::small, widget::Ink::stop);
    widget::gap(14);
    widget::heading(kit, 3, app.say("product.title"));
    for (const catalogue::Product& one : app.presets.catalogue.products) {
        widget::RowSpec row;
        row.title = one.name;
        row.under = app.say(one.contact == "rinse_off" ? "product.rinse_off" : "product.leave_on");
        row.chosen = one.id == sold.product;
        if (widget::row(kit, one.id, row).pressed) sold.product = one.id;
        widget::hairline(kit);
    }
    if (!(sold == before)) app::ask_anew(app);
    if (done(app)) app::close_sheet(app);
}

void reading_item(app::App& app) {
    app::ReadingIn& in = app.ui.reading;
    if (in.entry >= in.entries.size()) return app::close_sheet(app);
    reading_list::Entry& entry = in.entries[in.entry];
    quiet(app, app.say("reading_ui.written", {{"name", entry.written}}));
    widget::gap(8);
    const int as = widget::choice(
        app.kit, "as", app.say("reading_ui.as"),
        {app.say("reading_ui.as_added"), app.say("reading_ui.as_free"), app.say("reading_ui.as_incidental"),
         app.say("reading_ui.as_carrier"), app.say("reading_ui.as_aside")},
        static_cast<int>(entry.as));
    if (as >= 0) {
        entry.as = static_cast<As>(as);
        entry.other.reset();  // the person has decided
        app::ask_anew(app);
    }
    if (entry.other) {
        static constexpr const char* kOffers[] = {"reading_ui.offer_added", "reading_ui.offer_free",
                                                  "reading_ui.offer_incidental", "reading_ui.offer_carrier",
                                                  "reading_ui.offer_aside"};
        widget::gap(6);
        quiet(app, app.say(kOffers[static_cast<int>(*entry.other)]));
    }
    if (entry.as != As::incidental && entry.as != As::aside)
        amount_of(app, in.entry, app::entry_name(app, entry));
    place_name_of(app, entry);
    if (done(app)) app::close_sheet(app);
}

void reading_line(app::App& app) {
    app::ReadingIn& in = app.ui.reading;
    if (!app.reading) return app::close_sheet(app);
    quiet(app, app.say("reading_ui.line_about"));
    widget::gap(8);
    const ::reading::Names names = app::item_names(app);
    std::optional<std::optional<std::size_t>> chosen;
    const auto choice = [&](std::optional<std::size_t> after, const std::string& title) {
        widget::RowSpec row;
        row.title = title;
        row.chosen = in.line_after == after;
        if (widget::row(app.kit, "after " + (after ? std::to_string(*after) : "open"), row).pressed)
            chosen = after;
        widget::hairline(app.kit);
    };
    choice(std::nullopt, app.say("reading_ui.line_unknown"));
    choice(0, app.say("reading_ui.line_first"));
    for (std::size_t i = 0; i < names.size(); ++i)
        if (!app.reading->problem().items[i].free)
            choice(i + 1, app.say("reading_ui.line_after", {{"name", names[i]}}));
    if (!chosen) return;
    in.line_after = *chosen;
    app::ask_anew(app);
    app::close_sheet(app);
}

void reading_sum(app::App& app) {
    app::ReadingIn& in = app.ui.reading;
    Statement& draft = in.draft;
    if (in.statement && *in.statement >= in.said.size()) return app::close_sheet(app);
    std::string unit = "%";
    if (draft.kind == ::reading::Kind::property) {
        static constexpr const char* kUnits[] = {"reading.unit_density", "reading.unit_iodine",
                                                 "reading.unit_lye", "reading.unit_percent"};
        std::vector<std::string> options{app.say("reading.density"), app.say("reading.iodine_value"),
                                         app.say("reading.saponification_value"),
                                         app.say("reading.wax_share")};
        int chosen = 0;
        for (std::size_t i = 0; i < std::size(kProperties); ++i)
            if (draft.subject == kProperties[i]) chosen = static_cast<int>(i);
        quiet(app, app.say("reading_ui.measured_about"));
        widget::gap(8);
        if (const int n =
                widget::choice(app.kit, "property", app.say("reading_ui.say_measured"), options, chosen);
            n >= 0)
            draft.subject = kProperties[n], chosen = n;
        unit = app.say(kUnits[chosen]);
        bounds(app, draft, unit, options[static_cast<std::size_t>(chosen)]);
    } else {
        if (draft.kind == ::reading::Kind::group) quiet(app, app.say("reading_ui.sum_about"));
        for (std::size_t i = 0; i < in.entries.size(); ++i) {
            if (draft.kind != ::reading::Kind::group || in.entries[i].as == As::incidental ||
                in.entries[i].as == As::aside)
                continue;
            const auto at = std::find_if(draft.terms.begin(), draft.terms.end(),
                                         [&](const ::reading::Term& one) { return one.item == i; });
            if (!widget::tick(app.kit, "of_" + std::to_string(i), app::entry_name(app, in.entries[i]),
                              at != draft.terms.end()))
                continue;
            if (at != draft.terms.end())
                draft.terms.erase(at);
            else
                draft.terms.push_back({i});
        }
        bounds(app, draft, unit, app.say("reading_ui.sum"));
    }
    widget::gap(10);
    if (crossed(draft))
        widget::finding_badge(app.kit, finding::Severity::caution,
                              words::say(app.words, result::Error{result::Code::range_crossed, "", ""}), "");
    const bool some = draft.min || draft.max;
    const bool whole =
        some && !crossed(draft) && (draft.kind == ::reading::Kind::property || !draft.terms.empty());
    widget::gap(8);
    if (widget::button(app.kit, "take", app.say("reading_ui.take"), widget::Look::primary, app.kit.width,
                       !whole) &&
        app::all_read(app)) {
        sorting::stable(draft.terms,
                        [](const ::reading::Term& a, const ::reading::Term& b) { return a.item < b.item; });
        if (in.statement)
            in.said[*in.statement] = draft;
        else
            in.said.push_back(draft);
        app::ask_anew(app);
        return app::close_sheet(app);
    }
    if (in.statement && widget::button(app.kit, "remove", app.say("reading_ui.remove"), widget::Look::danger,
                                       app.kit.width)) {
        in.said.erase(in.said.begin() + static_cast<std::ptrdiff_t>(*in.statement));
        app::ask_anew(app);
        app::close_sheet(app);
    }
}

}  // namespace screens
