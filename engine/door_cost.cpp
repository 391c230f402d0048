// tarebench cost: a recipe with prices beside it to what its batch costs, by line, phase, kind and unit, what
// prices follow from it, and what has no price. Nothing is kept.
#include "analysis.h"
#include "cost.h"
#include "door.h"
#include "door_papers.h"
#include "pricing.h"
#include "store_json.h"
#include "workshop_cost.h"

namespace door {
namespace {

using money::Amount;

struct CostWriter {
    std::string_view currency;
    const workspace::Recipe& recipe;
    store_json::Writer json{store_json::Layout::indented};

    void amount(std::string_view key, Amount one) { json.pair_figure(key, money::grid_of(one, currency)); }
    void whole(std::string_view key, std::int64_t count) {
        json.key(key);
        json.whole(static_cast<std::uint64_t>(count));
    }
    void figure(std::string_view key, const std::optional<std::int64_t>& grid) {
        if (grid) json.pair_figure(key, *grid);
    }
    void flag(std::string_view key, bool value) {
        json.key(key);
        json.flag(value);
    }

    void missing(const std::vector<cost::Missing>& all) {
        json.key("missing");
        json.list();
        for (const cost::Missing& one : all) {
            json.flat_object();
            json.pair("kind", cost::name(one.kind));
            if (one.kind == cost::Kind::ingredients) whole("line", static_cast<std::int64_t>(one.at));
            if (!one.what.empty()) json.pair("what", one.what);
            json.pair("why", cost::name(one.why));
            json.end();
        }
        json.end();
    }

    void offer(std::string_view key, const std::optional<pricing::Offer>& one) {
        if (!one) return;
        json.key(key);
        json.flat_object();
        amount("price", one->price);
        amount("earned", one->earned);
        figure("margin_percent", one->margin);
        figure("mark_up_percent", one->mark_up);
        if (one->break_even) whole("break_even_units", *one->break_even);
        json.end();
    }

    void lines(const cost::Cost& made) {
        json.key("lines");
        json.list();
        for (std::size_t i = 0; i < made.lines.size(); ++i) {
            const formula::Line& said = recipe.formula.lines[i];
            json.flat_object();
            json.pair(said.ingredient.empty() ? "name" : "ingredient",
                      said.ingredient.empty() ? said.name : said.ingredient);
            json.pair("phase", said.phase);
            json.pair_figure("grams", made.lines[i].grams.grid);
            amount("amount", made.lines[i].amount);
            json.pair_figure("known_percent", made.lines[i].known.grid);
            json.end();
        }
        json.end();
        json.key("phases");
        json.list();
        for (const cost::Phase& phase : made.phases) {
            json.flat_object();
            json.pair("id", phase.id);
            amount("amount", phase.amount);
            json.end();
        }
        json.end();
    }

    void kinds(const cost::Cost& made) {
        json.key("kinds");
        json.list();
        for (int i = 0; i < cost::kKinds; ++i) {
            json.flat_object();
            json.pair("kind", cost::name(static_cast<cost::Kind>(i)));
            amount("amount", made.kinds[i]);
            json.pair_figure("share_percent", made.shares[i].grid);
            json.end();
        }
        json.end();
    }

    void units(const cost::Cost& made, const price::Book& book) {
        json.key("units");
        json.list();
        for (const cost::Units& one : made.units) {
            json.object();
            json.pair("container", one.container);
            whole("count", one.count);
            json.pair_figure("fill_g", one.each.grid);
            amount("amount", one.amount);
            amount("one", one.one);
            amount("low", one.low);
            whole("of_low", one.count - one.more);
            whole("of_one_more", one.more);
            amount("containers", one.containers);
            const pricing::Offers offers = pricing::offers(one.one, book, made.fixed);
            offer("wholesale", offers.wholesale);
            offer("retail", offers.retail);
            json.end();
        }
        json.end();
    }

    void rates(const cost::Cost& made) {
        json.key("rates");
        json.list();
        for (const cost::Used& one : made.rates) {
            json.flat_object();
            json.pair_figure("amount", one.amount);
            json.pair("from", one.from);
            json.pair_figure("gives", one.gives);
            json.pair("to", one.to);
            json.pair("day", one.day);
            if (!one.source.empty()) json.pair("source", one.source);
            json.end();
        }
        json.end();
    }

    void head(const cost::PerHead& made, std::int64_t people) {
        json.key("workshop");
        json.object();
        whole("people", people);
        amount("used", made.used);
        amount("low", made.low);
        whole("of_one_more", made.more);
        if (made.bought) amount("bought", *made.bought);
        json.pair_figure("known_percent", made.known.grid);
        missing(made.missing);
        json.end();
    }
};

}  // namespace

Answer cost(std::string_view input, const store::Presets& presets) {
    const auto read = door_papers::read(input);
    if (!read) return refuse(read.error(), presets);
    const workspace::Recipe& recipe = read->recipe;
    const catalogue::Catalogue known = catalogue::with_own(presets.catalogue, recipe.own);
    const analysis::Analysis report = analysis::of(recipe, presets.catalogue);
    if (!report.percents) return refuse(report.percents.error(), presets);
    const bool any_batch = recipe.batch.amount != batch::Amount::none;
    if (any_batch && !report.batch) return refuse(report.batch.error(), presets);
    const auto made = ::cost::of(
        {recipe.formula, *report.percents, any_batch ? &*report.batch : nullptr, known, ""}, read->prices);
    if (!made) return refuse(made.error(), presets);

    CostWriter out{made->currency, recipe};
    out.json.object();
    out.json.pair("currency", made->currency);
    out.flag("batch", made->batch);
    out.json.pair_figure("weighed_g", made->total.grid);
    out.amount("amount", made->amount);
    out.flag("at_least", !made->missing.empty());
    out.json.pair_figure("known_percent", made->known.grid);
    out.kinds(*made);
    out.amount("lost", made->lost);
    out.lines(*made);
    out.units(*made, read->prices);
    out.missing(made->missing);
    out.rates(*made);
    if (read->planned) {
        const ::workshop::Recipe of{recipe.formula, recipe.steps, recipe.batch, recipe.product};
        const auto workshop = ::workshop::of(of, read->plan, known);
        if (!workshop) return refuse(workshop.error(), presets);
        const auto head = ::workshop::per_head(of, "", read->plan, *workshop, known, read->prices);
        if (!head) return refuse(head.error(), presets);
        out.head(*head, read->plan.people);
    }
    return {0, out.json.finish(), ""};
}

}  // namespace door
