// What the open recipe's batch costs: in all, of what, by unit, phase and line; prices that follow; work and
// overhead; what has no price. Nothing of it is worked out here.
#include "app.h"
#include "engine/money_said.h"
#include "engine/pricing.h"
#include "engine/workspace_edits.h"
#include "kept_rows.h"
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

using cost::Cost;
using cost::Kind;
using price::Of;

constexpr const char* kBetween = " \xC2\xB7 ";

void cost_section(app::App& app, const std::string& title) {
    widget::gap(20);
    widget::heading(app.kit, 2, title);
}

void small_words(app::App& app, const std::string& words) {
    widget::text(app.kit, words, theme::Type::small, widget::Ink::soft);
}

// What a row leads to: the packs of a thing.
struct Leads {
    bool any = false;
    Of of = Of::ingredient;
    std::string what;
};

bool cost_row(app::App& app, const std::string& key, const std::string& title, const std::string& under,
              const std::string& right, bool onward) {
    widget::RowSpec row;
    row.title = title;
    row.under = under;
    row.right = right;
    row.plain = !onward;
    row.onward = onward;
    const bool pressed = widget::row(app.kit, key, row).pressed;
    widget::hairline(app.kit);
    return pressed;
}

std::string container_called(const app::App& app, const std::string& id) {
    const catalogue::Container* one = catalogue::find_container(app.presets.catalogue, id);
    return one ? one->name : id.empty() ? app.say("batch.portion") : id;
}

std::string ingredient_called(const app::App& app, const std::string& key) {
    const catalogue::Ingredient* one = catalogue::find_ingredient(app.known(), key);
    return one && !one->name.empty() ? one->name : key;
}

std::string missing_words(const app::App& app, const cost::Missing& one) {
    std::string of = app.say("cost." + std::string(cost::name(one.kind)));
    if (one.kind == Kind::ingredients && one.at < app.analysed->formula.lines.size())
        of = workspace::display_name(app.known(), app.analysed->formula.lines[one.at]);
    std::string what = one.what;
    if (one.kind == Kind::containers && one.why == cost::Why::no_price)
        what = container_called(app, one.what);
    else if (one.kind == Kind::ingredients && one.why != cost::Why::no_rate)
        what = ingredient_called(app, one.what);
    return app.say("cost." + std::string(cost::name(one.why)),
                   {{"what", what.empty() ? of : what}, {"name", of}});
}

void known_part(app::App& app, const Cost& made) {
    widget::gap(6);
    if (made.missing.empty()) return small_words(app, app.say("cost_ui.known_all"));
    std::string all;
    for (const cost::Missing& one : made.missing)
        all += (all.empty() ? "" : "\n") + missing_words(app, one);
    widget::finding_badge(
        app.kit, finding::Severity::caution,
        app.say("cost_ui.known", {{"percent", words::figure_fixed(app.words, made.known.grid, 1)}}), all);
}

// Of what has no price at all nothing is said, of what has one in part that it is at least so much.
std::string sum_words(const app::App& app, money::Amount sum, bool whole) {
    if (whole) return app::money(app, sum);
    return sum.minor == 0 ? app.say("card.unknown")
                          : app.say("cost_ui.at_least", {{"sum", app::money(app, sum)}});
}

void batch_whole(app::App& app, const Cost& made) {
    kit::Kit& kit = app.kit;
    widget::heading(kit, 2,
                    made.batch ? app.say("cost_ui.of_batch", {{"g", app.grams(made.total)}})
                               : app.say("cost_ui.of_kilogram"));
    widget::text(kit, sum_words(app, made.amount, made.missing.empty()), theme::Type::title);
    known_part(app, made);
    widget::gap(6);
    for (int i = 0; made.batch && i < cost::kKinds; ++i)
        if (made.kinds[i].minor > 0) {
            const std::string name = app.say("cost." + std::string(cost::name(static_cast<Kind>(i))));
            cost_row(app, "kind " + name, name,
                     app.say(made.missing.empty() ? "cost_ui.share" : "cost_ui.share_known",
                             {{"percent", words::figure_fixed(app.words, made.shares[i].grid, 1)}}),
                     sum_words(app, made.kinds[i],
                               static_cast<Kind>(i) != Kind::ingredients || made.known >= quantity::kHundred),
                     false);
        }
    if (made.lost.minor > 0) small_words(app, app.say("cost_ui.lost", {{"sum", app::money(app, made.lost)}}));
    for (const cost::Used& one : made.rates)
        small_words(app, app.say("rate.is", {{"amount", words::figure(app.words, one.amount)},
                                             {"from", one.from},
                                             {"gives", words::figure(app.words, one.gives)},
                                             {"to", one.to}}) +
                             kBetween + one.day + (one.source.empty() ? "" : kBetween + one.source));
}

void offer(app::App& app, const char* key, const std::optional<pricing::Offer>& one, const Cost& made) {
    if (!one) return;
    const auto figure = [&](const std::optional<std::int64_t>& grid) {
        return grid ? words::figure_fixed(app.words, *grid, 1) : app.say("card.unknown");
    };
    std::string under = app.say("cost_ui.offer", {{"sum", app::money(app, one->earned)},
                                                  {"margin", figure(one->margin)},
                                                  {"up", figure(one->mark_up)}});
    if (made.fixed)
        under += kBetween + (one->break_even
                                 ? app.say("cost_ui.break_even", {{"n", std::to_string(*one->break_even)}})
                                 : app.say("cost_ui.never"));
    cost_row(app, key, app.say(key), under, sum_words(app, one->price, made.missing.empty()), false);
}

void unit_rows(app::App& app, const Cost& made) {
    if (made.units.empty()) return;
    cost_section(app, app.say("cost_ui.one"));
    for (std::size_t i = 0; i < made.units.size(); ++i) {
        const cost::Units& one = made.units[i];
        ImGui::PushID(static_cast<int>(i));
        const auto n = [](std::int64_t count) { return std::to_string(count); };
        std::string under =
            one.amount.minor == 0 && !made.missing.empty() ? ""
            : one.more > 0
                ? app.say("cost_ui.adds", {{"n", n(one.count - one.more)},
                                           {"low", app::money(app, one.low)},
                                           {"more", n(one.more)},
                                           {"high", app::money(app, {one.low.minor + 1})},
                                           {"all", app::money(app, one.amount)}})
                : app.say("cost_ui.adds_even", {{"n", n(one.count)}, {"all", app::money(app, one.amount)}});
        if (one.containers.minor > 0)
            under += kBetween + app.say("cost_ui.container_is", {{"sum", app::money(app, one.containers)}});
        cost_row(
            app, "unit",
            app.say("cost_ui.count", {{"n", n(one.count)}, {"name", container_called(app, one.container)}}),
            under, sum_words(app, one.one, made.missing.empty()), false);
        const pricing::Offers offers = pricing::offers(one.one, app.work.settings.prices, made.fixed);
        offer(app, "cost_ui.wholesale", offers.wholesale, made);
        offer(app, "cost_ui.retail", offers.retail, made);
        ImGui::PopID();
    }
}

Leads by_line(app::App& app, const Cost& made) {
    Leads asked;
    cost_section(app, app.say("cost_ui.lines"));
    const formula::Formula& formula = app.analysed->formula;
    for (const cost::Phase& phase : made.phases) {
        bool whole = true;
        for (std::size_t i = 0; i < made.lines.size(); ++i)
            if (formula.lines[i].phase == phase.id && made.lines[i].known < quantity::kHundred) whole = false;
        cost_row(app, "phase " + phase.id, app.say("phase.name", {{"id", phase.id}}), "",
                 sum_words(app, phase.amount, whole), false);
        for (std::size_t i = 0; i < made.lines.size(); ++i) {
            const formula::Line& line = formula.lines[i];
            if (line.phase != phase.id) continue;
            const std::string& what = line.ingredient.empty() ? line.name : line.ingredient;
            ImGui::PushID(static_cast<int>(i));
            kept_rows::row(app.kit, "row", [&] {
                const bool known = made.lines[i].known >= quantity::kHundred;
                if (cost_row(app, "line", workspace::display_name(app.known(), line),
                             app.grams(made.lines[i].grams), sum_words(app, made.lines[i].amount, known),
                             true))
                    asked = {true, Of::ingredient, what};
            });
            ImGui::PopID();
        }
    }
    return asked;
}

Leads things_beside(app::App& app, const Cost& made, price::Making& making, bool& changed) {
    Leads asked;
    kit::Kit& kit = app.kit;
    if (made.count == 0) return asked;
    cost_section(app, app.say("cost_ui.beside"));
    const auto thing = [&](const std::string& name, Of of, const std::string& what) {
        const price::Pack* pack = price::pack_of(app.work.settings.prices, of, what);
        if (cost_row(app, "thing " + name, name, "",
                     pack ? money::say(app.words, pack->paid + pack->delivery, pack->currency)
                          : app.say("card.unknown"),
                     true))
            asked = {true, of, what};
    };
    for (const cost::Units& one : made.units)
        if (!one.container.empty()) thing(container_called(app, one.container), Of::container, one.container);
    const auto each = [&](const char* key, bool& wanted, const char* name, Of of) {
        widget::gap(4);
        if (widget::tick(kit, key, app.say(key), wanted)) {
            wanted = !wanted;
            changed = true;
        }
        if (wanted) thing(app.say(name), of, "");
    };
    each("cost_ui.label_each", making.label, "cost_ui.a_label", Of::label);
    each("cost_ui.box_each", making.box, "cost_ui.a_box", Of::box);
    return asked;
}

// A field that may be empty; true when it was changed.
bool number_or_none(app::App& app, const char* key, const std::string& name, const std::string& unit,
                    std::optional<std::int64_t>& value) {
    widget::gap(10);
    widget::NumberSpec spec;
    spec.name = name;
    spec.unit = unit;
    spec.read = typed::amount;
    spec.may_be_empty = true;
    spec.hint = app.say("settings.not_said");
    const auto change = widget::number_field(app.kit, key, value, spec);
    if (change.changed) value = change.value;
    return change.changed;
}

bool sum_field(app::App& app, const char* key, std::optional<money::Sum>& sum, const std::string& currency) {
    const std::string unit = sum ? sum->currency : currency;
    std::optional<std::int64_t> shown;
    if (sum) shown = money::grid_of(sum->amount, unit);
    if (!number_or_none(app, key, app.say(key), unit, shown)) return false;
    if (!shown) {
        sum.reset();
        return true;
    }
    const auto amount = money::amount_of(*shown, unit);
    if (!amount) {
        app::tell(app, words::say(app.words, amount.error()), true);
        return false;
    }
    sum = money::Sum{*amount, unit};
    return true;
}

bool step_field(app::App& app, const char* key, std::optional<price::Step>& step, price::By& by) {
    const std::string name = app.say(key);
    if (step) by = step->by;
    widget::gap(10);
    const int pressed =
        widget::choice(app.kit, std::string("by ") + key, app.say("cost_ui.by", {{"name", name}}),
                       {app.say("cost_ui.margin"), app.say("cost_ui.mark_up")}, static_cast<int>(by));
    bool changed = false;
    if (pressed >= 0) {
        by = static_cast<price::By>(pressed);
        if (step) step->by = by;
        changed = step.has_value();
    }
    std::optional<std::int64_t> percent;
    if (step) percent = step->percent;
    if (number_or_none(app, (std::string("percent ") + key).c_str(),
                       app.say("cost_ui.step", {{"name", name}}), "%", percent)) {
        step.reset();
        if (percent) step = price::Step{by, *percent};
        changed = true;
    }
    return changed;
}

void currency_field(app::App& app) {
    kit::Kit& kit = app.kit;
    const std::string now = app.work.settings.prices.currency;
    if (!app.ui.price.currency) app.ui.price.currency = now;
    std::string& typing = *app.ui.price.currency;
    widget::TextSpec spec;
    spec.name = app.say("cost_ui.currency");
    spec.hint = "EUR";
    spec.most_bytes = 3;
    widget::gap(10);
    if (const auto typed = widget::text_field(kit, "currency", typing, spec)) {
        typing = *typed;
        std::string code = typing;
        for (char& c : code)
            if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
        if (code != now && money::places(code)) {
            price::Book book = app.work.settings.prices;
            book.currency = typing = code;
            app::edit_prices(app, book);
        }
    }
    if (!typing.empty() && typing != now)
        widget::text(kit, app.say("cost_ui.currency_form"), theme::Type::small, widget::Ink::stop);
    small_words(app, app.say("cost_ui.currency_about"));
}

void sums(app::App& app) {
    price::Book book = app.work.settings.prices;
    const std::string currency = book.currency;
    price::Making making = price::making_of(book, app.work.open);
    bool of_making = false;
    cost_section(app, app.say("cost_ui.making"));
    const std::string minutes = app.say("cost_ui.minutes");
    of_making = number_or_none(app, "batch", app.say("cost_ui.minutes_batch"), minutes, making.minutes_batch);
    of_making = number_or_none(app, "unit", app.say("cost_ui.minutes_unit"), minutes, making.minutes_unit) ||
                of_making;
    bool changed = sum_field(app, "cost_ui.hour", book.hour, currency);
    changed = sum_field(app, "cost_ui.overhead_batch", book.overhead_batch, currency) || changed;
    std::optional<std::int64_t> percent;
    if (book.overhead_percent != 0) percent = book.overhead_percent;
    if (number_or_none(app, "overhead", app.say("cost_ui.overhead_percent"), "%", percent)) {
        book.overhead_percent = percent.value_or(0);
        changed = true;
    }
    cost_section(app, app.say("cost_ui.prices"));
    small_words(app, app.say("cost_ui.explained"));
    changed = step_field(app, "cost_ui.wholesale", book.wholesale, app.ui.price.by[0]) || changed;
    changed = step_field(app, "cost_ui.retail", book.retail, app.ui.price.by[1]) || changed;
    changed = sum_field(app, "cost_ui.fixed", book.fixed, currency) || changed;
    widget::gap(10);
    widget::RowSpec rates;
    rates.title = app.say("rate.title");
    rates.onward = true;
    if (widget::row(app.kit, "rates", rates).pressed) {
        app.kit.drafts.clear();  // they belong to the screen
        app::show(app, app::Sheet::rates);
    }
    currency_field(app);
    if (of_making)
        app::edit_prices(app, price::with_making(std::move(book), std::move(making)));
    else if (changed)
        app::edit_prices(app, price::checked(std::move(book)));
}

}  // namespace

void cost(app::App& app) {
    if (!app::open_recipe(app) || !app.analysed || !app.analysis) return nothing_open(app);
    if (app.work.settings.prices.currency.empty()) return currency_field(app);
    const result::Result<Cost> made = app::cost_of(app);  // a press may change what it rests on
    if (!made) {
        widget::finding_badge(app.kit, finding::Severity::note, words::say(app.words, made.error()), "");
        return sums(app);
    }
    batch_whole(app, *made);
    unit_rows(app, *made);
    Leads asked = by_line(app, *made);
    price::Making making = price::making_of(app.work.settings.prices, app.work.open);
    bool changed = false;
    if (Leads other = things_beside(app, *made, making, changed); other.any) asked = std::move(other);
    if (changed) app::edit_prices(app, price::with_making(app.work.settings.prices, std::move(making)));
    sums(app);
    if (asked.any) app::show_packs(app, asked.of, asked.what);
}

}  // namespace screens
