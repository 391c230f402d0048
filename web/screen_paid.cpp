// What is paid for one thing: its packs, one of them entered or corrected; and the rates of exchange.
#include <utility>

#include "app.h"
#include "engine/money_said.h"
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

using price::Unit;

bool amount_field(app::App& app, const char* key, const std::string& unit, std::optional<std::int64_t>& value,
                  result::Result<std::int64_t> (*read)(std::string_view) = typed::amount) {
    widget::gap(10);
    widget::NumberSpec spec;
    spec.name = app.say(key);
    spec.unit = unit;
    spec.read = read;
    spec.may_be_empty = true;
    const auto change = widget::number_field(app.kit, key, value, spec);
    if (change.changed) value = change.value;
    return change.changed;
}

void word_field(app::App& app, const char* key, const std::string& name, std::string& value, int most,
                bool code = false) {
    widget::gap(10);
    widget::TextSpec spec;
    spec.name = name;
    spec.most_bytes = most;
    const auto typed = widget::text_field(app.kit, key, value, spec);
    if (!typed) return;
    value = *typed;
    for (char& c : value)
        if (code && c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
}

void day_of(app::App& app, const char* key, std::string& value) {
    widget::gap(10);
    if (const auto typed = day_field(app, key, app.say(key), value)) value = *typed;
}

std::string size_words(const app::App& app, const price::Pack& pack) {
    const std::string n = words::figure(app.words, pack.size);
    if (pack.unit == Unit::pieces) return app.say("paid.count", {{"n", n}});
    return app.say(pack.unit == Unit::g ? "unit.grams" : "paid.millilitres", {{"n", n}});
}

std::string thing_name(const app::App& app) {
    const app::PriceIn& in = app.ui.price;
    if (in.of == price::Of::label) return app.say("cost_ui.a_label");
    if (in.of == price::Of::box) return app.say("cost_ui.a_box");
    if (in.of == price::Of::container) {
        const catalogue::Container* one = catalogue::find_container(app.presets.catalogue, in.what);
        return one ? one->name : in.what;
    }
    formula::Line line;
    line.ingredient = in.what;
    return workspace::display_name(app.known(), line);
}

void begin_pack(app::App& app, std::optional<std::size_t> at) {
    app::PriceIn& in = app.ui.price;
    const price::Book& book = app.work.settings.prices;
    in.entering = true;
    in.at = at;
    in.pack = at ? book.packs[*at] : price::Pack{};
    in.paid = in.delivery = std::nullopt;
    if (at) {
        in.paid = money::grid_of(in.pack.paid, in.pack.currency);
        if (in.pack.delivery.minor != 0) in.delivery = money::grid_of(in.pack.delivery, in.pack.currency);
    }
    app.kit.drafts.clear();
    app.ui.again = true;
}

bool can_keep(app::App& app, std::initializer_list<std::string_view> currencies) {
    if (!app::all_read(app)) return false;
    for (const std::string_view code : currencies)
        if (!money::places(code)) {
            app::tell(app, app.say("cost_ui.currency_form"), true);
            return false;
        }
    return true;
}

void packs_there(app::App& app) {
    kit::Kit& kit = app.kit;
    const app::PriceIn& in = app.ui.price;
    const price::Book& book = app.work.settings.prices;
    const price::Pack* used = price::pack_of(book, in.of, in.what);
    std::optional<std::size_t> pressed;
    widget::text(kit, app.say("paid.about"), theme::Type::small, widget::Ink::soft);
    for (std::size_t i = 0; i < book.packs.size(); ++i) {
        const price::Pack& pack = book.packs[i];
        if (pack.of != in.of || pack.what != in.what) continue;
        widget::RowSpec row;
        row.title = app.say("paid.row", {{"size", size_words(app, pack)},
                                         {"sum", money::say(app.words, pack.paid, pack.currency)}});
        const auto add = [&](const std::string& more) {
            if (!more.empty()) row.under += (row.under.empty() ? "" : " \xC2\xB7 ") + more;
        };
        if (&pack == used) add(app.say("paid.is_used"));
        if (pack.delivery.minor > 0)
            add(app.say("paid.with_delivery",
                        {{"sum", money::say(app.words, pack.paid + pack.delivery, pack.currency)}}));
        add(pack.day);
        add(pack.supplier);
        row.onward = true;
        row.chosen = &pack == used;
        if (widget::row(kit, "pack " + std::to_string(i), row).pressed) pressed = i;
        widget::hairline(kit);
    }
    widget::gap(8);
    if (widget::button(kit, "other", app.say("paid.other"), widget::Look::primary, kit.width))
        return begin_pack(app, std::nullopt);
    if (pressed) begin_pack(app, pressed);
}

}  // namespace

void pack(app::App& app) {
    kit::Kit& kit = app.kit;
    app::PriceIn& in = app.ui.price;
    widget::heading(kit, 3, thing_name(app));
    widget::gap(6);
    if (!in.entering) return packs_there(app);
    price::Pack& pack = in.pack;
    if (pack.currency.empty()) pack.currency = app.work.settings.prices.currency;
    std::optional<std::int64_t> size;
    if (pack.size != 0) size = pack.size;
    if (in.of != price::Of::ingredient) {
        pack.unit = Unit::pieces;
        amount_field(app, "paid.pieces", "", size, typed::whole);
    } else {
        const int by = widget::choice(kit, "unit", app.say("paid.sold"),
                                      {app.say("paid.g"), app.say("paid.ml")}, static_cast<int>(pack.unit));
        if (by >= 0) {
            pack.unit = static_cast<Unit>(by);
            kit.drafts.clear();
        }
        const bool by_weight = pack.unit == Unit::g;
        amount_field(app, "paid.size", by_weight ? "g" : "mL", size, by_weight ? typed::mass : typed::volume);
    }
    pack.size = size.value_or(0);
    amount_field(app, "paid.price", pack.currency, in.paid);
    amount_field(app, "paid.delivery", pack.currency, in.delivery);
    word_field(app, "currency", app.say("paid.currency"), pack.currency, 3, true);
    day_of(app, "paid.day", pack.day);
    word_field(app, "supplier", app.say("lot.supplier"), pack.supplier,
               static_cast<int>(price::kMostTextBytes));
    widget::gap(8);
    if (widget::tick(kit, "chosen", app.say("paid.chosen"), pack.chosen)) pack.chosen = !pack.chosen;
    widget::gap(16);
    if (widget::button(kit, "keep", app.say(in.at ? "paid.keep" : "paid.add"), widget::Look::primary,
                       kit.width) &&
        can_keep(app, {pack.currency}) && app::keep_pack(app))
        return app::close_sheet(app);
    if (!in.at) return;
    widget::gap(8);
    if (widget::button(kit, "remove", app.say("paid.remove"), widget::Look::danger, kit.width)) {
        app::edit_prices(app, price::without_pack(app.work.settings.prices, *in.at));
        app::close_sheet(app);
    }
}

void rates(app::App& app) {
    kit::Kit& kit = app.kit;
    price::Rate& rate = app.ui.price.rate;
    const price::Book& book = app.work.settings.prices;
    widget::text(kit, app.say("rate.about"), theme::Type::small, widget::Ink::soft);
    std::optional<std::size_t> gone;
    for (std::size_t i = 0; i < book.rates.size(); ++i) {
        const price::Rate& one = book.rates[i];
        const std::string words = app.say("rate.is", {{"amount", words::figure(app.words, one.amount)},
                                                      {"from", one.from},
                                                      {"gives", words::figure(app.words, one.gives)},
                                                      {"to", one.to}}) +
                                  ", " + one.day;
        widget::gap(8);
        widget::text(kit, one.source.empty() ? words : words + ", " + one.source);
        if (widget::button(kit, "remove " + std::to_string(i), app.say("rate.remove", {{"rate", words}}),
                           widget::Look::quiet))
            gone = i;
    }
    if (rate.to.empty()) rate.to = book.currency;
    if (rate.day.empty()) rate.day = app::today();
    word_field(app, "rate.from", app.say("rate.from"), rate.from, 3, true);
    word_field(app, "rate.to", app.say("rate.to"), rate.to, 3, true);
    std::optional<std::int64_t> amount, gives;
    if (rate.amount != 0) amount = rate.amount;
    if (rate.gives != 0) gives = rate.gives;
    amount_field(app, "rate.amount", rate.from, amount);
    amount_field(app, "rate.gives", rate.to, gives);
    rate.amount = amount.value_or(0);
    rate.gives = gives.value_or(0);
    day_of(app, "rate.day", rate.day);
    word_field(app, "rate.source", app.say("rate.source"), rate.source,
               static_cast<int>(price::kMostTextBytes));
    widget::gap(16);
    if (widget::button(kit, "add", app.say("rate.add"), widget::Look::primary, kit.width)) {
        if (!can_keep(app, {rate.from, rate.to})) return;
        const auto changed = price::with_rate(book, rate);
        app::edit_prices(app, changed);
        if (changed) rate = {};
        kit.drafts.clear();
    } else if (gone) {
        app::edit_prices(app, price::without_rate(book, *gone));
    }
}

}  // namespace screens
