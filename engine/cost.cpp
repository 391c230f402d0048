#include "cost.h"

#include <algorithm>
#include <array>
#include <utility>

#include "density.h"
#include "made.h"

namespace cost {
namespace {

using money::Amount;
using price::Of;
using price::Pack;
using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;
using result::Code;

constexpr std::array<std::string_view, kKinds> kNames{"ingredients", "containers", "labels",
                                                      "boxes",       "work",       "overhead"};
constexpr std::array<std::string_view, 4> kWhys{"no_price", "no_rate", "no_density", "strained_out"};
constexpr int kMostVisits = 2000;  // of parts within parts; beyond, a part is taken as one without a price

std::int64_t& at(std::int64_t (&kinds)[kKinds], Kind kind) {
    return kinds[static_cast<int>(kind)];
}

struct Priced {  // what is known of the cost of some grams
    std::int64_t fine = 0;
    Mass known;
};

// One reckoning: prices found, what is missing and which rates were used noted on the way.
struct Reckoning {
    const price::Book& book;
    const catalogue::Catalogue& known;
    std::vector<Missing> missing = {};
    std::vector<Used> rates = {};
    bool too_large = false;
    int visits = 0;

    std::int64_t scaled(std::int64_t a, std::int64_t b, std::int64_t c) {
        if (static_cast<double>(a) * static_cast<double>(b) / static_cast<double>(c) >
            static_cast<double>(kMostFine)) {
            too_large = true;
            return 0;
        }
        return decimal::scale_nearest(a, b, c);
    }

    void miss(Missing one) {
        if (std::find(missing.begin(), missing.end(), one) == missing.end())
            missing.push_back(std::move(one));
    }

    // In fractions of the minor unit that is reckoned in; nothing where there is no rate.
    std::optional<std::int64_t> fine(Amount amount, std::string_view currency, std::string_view day) {
        const std::int64_t own = amount.minor * kFine;
        if (currency == book.currency) return own;
        const price::Rate* rate = price::rate_of(book, currency, book.currency, day);
        if (rate == nullptr) return std::nullopt;
        Used used{rate->from, rate->to, rate->day, rate->source, rate->amount, rate->gives};
        if (std::find(rates.begin(), rates.end(), used) == rates.end()) rates.push_back(std::move(used));
        const bool forth = rate->from == currency;
        std::int64_t times = forth ? rate->gives : rate->amount, by = forth ? rate->amount : rate->gives;
        for (int i = money::places(currency).value_or(2); i < money::places(book.currency).value_or(2); ++i)
            times *= 10;
        for (int i = money::places(book.currency).value_or(2); i < money::places(currency).value_or(2); ++i)
            by *= 10;
        return scaled(own, times, by);
    }
    std::optional<std::int64_t> fine(const Pack& pack) {
        return fine(pack.paid + pack.delivery, pack.currency, pack.day);
    }

    // What a pack weighs; nothing where it is sold by volume and no density is known.
    std::optional<Mass> weight(const Pack& pack, std::string_view key) {
        if (pack.unit == price::Unit::g) return Mass{pack.size};
        const catalogue::Ingredient* one = catalogue::find_ingredient(known, key);
        if (one == nullptr) return std::nullopt;
        const density::Blend blend = density::of(*one, known);
        if (blend.known < batch::kEnoughKnown || blend.density.grid <= 0) return std::nullopt;
        const Mass mass = quantity::mass_of({pack.size}, blend.density);
        return mass.grid > 0 ? std::optional(mass) : std::nullopt;
    }

    // A made part that has no price of its own costs what is put into it.
    Priced of_parts(std::size_t line, const catalogue::Ingredient& one, Mass grams, std::size_t depth) {
        Priced sum;
        Percent said;
        const Percent yield = one.made ? one.made->yield : kHundred;
        for (const catalogue::Part& part : one.parts) {
            said = said + part.percent;
            const Mass stays = quantity::share_of(grams, part.percent);
            const Mass put_in{decimal::scale_nearest(stays.grid, kHundred.grid, yield.grid)};
            const Priced priced = ingredient(line, part.ingredient, put_in, depth + 1);
            sum.fine += priced.fine;
            if (put_in.grid > 0)
                sum.known.grid += decimal::scale_down(stays.grid, priced.known.grid, put_in.grid);
        }
        if (said < kHundred) miss({Kind::ingredients, line, one.id, Why::no_price});
        if (one.made)
            for (const std::string& gone : one.made->infused_with)
                miss({Kind::ingredients, line, gone, Why::strained_out});
        return sum;
    }

    Priced ingredient(std::size_t line, const std::string& key, Mass grams, std::size_t depth = 0) {
        if (grams.grid <= 0) return {0, grams};
        const Pack* pack = price::pack_of(book, Of::ingredient, key);
        if (pack == nullptr) {
            const catalogue::Ingredient* one = catalogue::find_ingredient(known, key);
            if (one != nullptr && !one->parts.empty() && depth < made::kDeepest && ++visits < kMostVisits)
                return of_parts(line, *one, grams, depth);
            miss({Kind::ingredients, line, key, Why::no_price});
            return {};
        }
        const std::optional<Mass> weighs = weight(*pack, key);
        if (!weighs) {
            miss({Kind::ingredients, line, key, Why::no_density});
            return {};
        }
        const std::optional<std::int64_t> whole = fine(*pack);
        if (!whole) {
            miss({Kind::ingredients, line, pack->currency, Why::no_rate});
            return {};
        }
        return {scaled(*whole, grams.grid, weighs->grid), grams};
    }

    // Of so many containers, labels, boxes.
    std::int64_t pieces(Kind kind, std::size_t place, Of of, std::string_view what, std::int64_t count) {
        const Pack* pack = price::pack_of(book, of, what);
        const std::optional<std::int64_t> whole = pack ? fine(*pack) : std::nullopt;
        if (whole) return scaled(*whole, count * decimal::kOne, pack->size);
        miss({kind, place, pack ? pack->currency : std::string(what), pack ? Why::no_rate : Why::no_price});
        return 0;
    }

    std::int64_t sum(Kind kind, const std::optional<money::Sum>& said, std::int64_t times, std::int64_t by) {
        const auto one = said ? fine(said->amount, said->currency, "") : std::nullopt;
        if (one) return scaled(*one, times, by);
        miss({kind, 0, said ? said->currency : "", said ? Why::no_rate : Why::no_price});
        return 0;
    }

    result::Error fault() const {
        return {Code::number_too_large, "prices", std::to_string(kMostFine / kFine)};
    }
};

const std::string& key_of(const formula::Line& line) {
    return line.ingredient.empty() ? line.name : line.ingredient;
}

// So that they add up; all 0 where there is nothing to share by.
std::vector<Amount> shared(Amount whole, const std::vector<std::int64_t>& by) {
    std::vector<Amount> out(by.size());
    if (const auto parts = decimal::share_out(whole.minor, by))
        for (std::size_t i = 0; i < by.size(); ++i)
            out[i] = {(*parts)[i]};
    return out;
}

Amount rounded(std::int64_t fine) {
    return {decimal::scale_nearest(fine, 1, kFine)};
}

struct Costing {
    const Asked& asked;
    const price::Making making;
    Reckoning reckoning;
    Cost made = {};
    std::int64_t fines[kKinds] = {};
    std::vector<std::int64_t> containers = {};  // of each fill
    std::int64_t batch_fine = 0;  // of work and overhead, what comes with the batch and not with a unit
    std::int64_t unit_fine = 0;   // of one unit: label, box, its minutes

    void lines() {
        const std::vector<formula::Line>& all = asked.formula.lines;
        made.lines.resize(all.size());
        if (asked.batch) {
            for (const batch::Line& line : asked.batch->lines)
                if (line.line < all.size()) made.lines[line.line].grams = line.grams;
        } else {
            for (std::size_t i = 0; i < all.size() && i < asked.percents.size(); ++i)
                made.lines[i].grams = quantity::share_of(kWithoutBatch, asked.percents[i]);
        }
        Mass weight;
        for (std::size_t i = 0; i < all.size(); ++i) {
            Line& line = made.lines[i];
            const Priced priced = reckoning.ingredient(i, key_of(all[i]), line.grams);
            line.fine = priced.fine;
            line.known = line.grams.grid > 0
                             ? Percent{decimal::scale_down(priced.known.grid, kHundred.grid, line.grams.grid)}
                             : kHundred;
            at(fines, Kind::ingredients) += priced.fine;
            made.total = made.total + line.grams;
            weight = weight + priced.known;
        }
        made.known = made.total.grid > 0
                         ? Percent{decimal::scale_down(weight.grid, kHundred.grid, made.total.grid)}
                         : kHundred;
    }

    void units() {
        for (std::size_t i = 0; i < asked.batch->fills.size(); ++i) {
            const batch::Fill& fill = asked.batch->fills[i];
            made.count += fill.count;
            containers.push_back(
                fill.container.empty() || fill.count == 0
                    ? 0
                    : reckoning.pieces(Kind::containers, i, Of::container, fill.container, fill.count));
            at(fines, Kind::containers) += containers.back();
        }
        const auto each = [&](bool wanted, Kind kind, Of of) {
            if (!wanted || made.count == 0) return;
            at(fines, kind) = reckoning.pieces(kind, 0, of, "", made.count);
        };
        each(making.label, Kind::labels, Of::label);
        each(making.box, Kind::boxes, Of::box);
    }

    void work() {
        const price::Book& book = reckoning.book;
        constexpr std::int64_t kHour = 60 * decimal::kOne;
        const std::int64_t of_batch = making.minutes_batch.value_or(0);
        const std::int64_t of_units = making.minutes_unit.value_or(0) * made.count;
        std::int64_t units_fine = 0;
        if (!making.minutes_batch && !making.minutes_unit) {
            reckoning.miss({Kind::work, 0, "", Why::no_price});
        } else if (of_batch + of_units > 0) {
            batch_fine = reckoning.sum(Kind::work, book.hour, of_batch, kHour);
            units_fine = reckoning.sum(Kind::work, book.hour, of_units, kHour);
        }
        at(fines, Kind::work) = batch_fine + units_fine;
        std::int64_t before = 0;
        for (const std::int64_t fine : fines)
            before += fine;
        std::int64_t overhead = reckoning.scaled(before, book.overhead_percent, kHundred.grid);
        if (book.overhead_batch) overhead += reckoning.sum(Kind::overhead, book.overhead_batch, 1, 1);
        at(fines, Kind::overhead) = overhead;
        batch_fine += overhead;
        unit_fine = at(fines, Kind::labels) + at(fines, Kind::boxes) + units_fine;
    }

    void share() {
        std::int64_t sum = 0;
        for (const std::int64_t fine : fines)
            sum += fine;
        made.amount = rounded(sum);
        const std::vector<std::int64_t> by(std::begin(fines), std::end(fines));
        const std::vector<Amount> kinds = shared(made.amount, by);
        const std::vector<Amount> shares = shared({10000}, by);
        for (std::size_t i = 0; i < kKinds; ++i) {
            made.kinds[i] = kinds[i];
            made.shares[i] = {shares[i].minor * (decimal::kOne / 100)};
        }
        share_lines();
        share_units();
    }

    void share_lines() {
        const std::vector<formula::Line>& all = asked.formula.lines;
        std::vector<std::int64_t> by;
        for (const formula::Phase& phase : asked.formula.phases) {
            by.push_back(0);
            for (std::size_t i = 0; i < all.size(); ++i)
                if (all[i].phase == phase.id) by.back() += made.lines[i].fine;
        }
        const std::vector<Amount> phases = shared(made.kinds[0], by);
        for (std::size_t p = 0; p < phases.size(); ++p) {
            made.phases.push_back({asked.formula.phases[p].id, phases[p]});
            std::vector<std::size_t> of;
            by.clear();
            for (std::size_t i = 0; i < all.size(); ++i)
                if (all[i].phase == asked.formula.phases[p].id) {
                    of.push_back(i);
                    by.push_back(made.lines[i].fine);
                }
            const std::vector<Amount> parts = shared(phases[p], by);
            for (std::size_t i = 0; i < of.size(); ++i)
                made.lines[of[i]].amount = parts[i];
        }
        if (asked.batch && made.total.grid > 0 && asked.batch->fill < made.total)
            made.lost = {decimal::scale_nearest(made.kinds[0].minor, (made.total - asked.batch->fill).grid,
                                                made.total.grid)};
    }

    // What is in it goes by weight, as what comes with the batch does; the rest by the piece.
    void share_units() {
        if (made.count == 0) return;
        const std::vector<batch::Fill>& fills = asked.batch->fills;
        Mass filled;
        for (const batch::Fill& fill : fills)
            filled.grid += fill.each.grid * fill.count;
        std::vector<std::int64_t> by;
        for (std::size_t i = 0; i < fills.size(); ++i) {
            const std::int64_t mass = fills[i].each.grid * fills[i].count;
            by.push_back(containers[i] + decimal::scale_nearest(unit_fine, fills[i].count, made.count) +
                         (filled.grid > 0 ? decimal::scale_nearest(at(fines, Kind::ingredients) + batch_fine,
                                                                   mass, filled.grid)
                                          : 0));
        }
        const std::vector<Amount> parts = shared(made.amount, by);
        const std::vector<Amount> held = shared(made.kinds[static_cast<int>(Kind::containers)], containers);
        for (std::size_t i = 0; i < fills.size(); ++i) {
            if (fills[i].count == 0) continue;
            made.units.push_back({fills[i].container,
                                  fills[i].count,
                                  fills[i].each,
                                  parts[i],
                                  {decimal::scale_nearest(parts[i].minor, 1, fills[i].count)},
                                  {parts[i].minor / fills[i].count},
                                  parts[i].minor % fills[i].count,
                                  held[i]});
        }
    }
};

}  // namespace

std::string_view name(Kind kind) {
    return kNames[static_cast<std::size_t>(kind)];
}
std::string_view name(Why why) {
    return kWhys[static_cast<std::size_t>(why)];
}

result::Result<Cost> of(const Asked& asked, const price::Book& book) {
    if (book.currency.empty()) return {Code::field_missing, "prices.currency", ""};
    Costing costing{asked, price::making_of(book, asked.recipe), {book, asked.known}};
    costing.made.currency = book.currency;
    costing.made.batch = asked.batch != nullptr;
    costing.lines();
    if (asked.batch) {
        costing.units();
        costing.work();
    }
    if (book.fixed) {
        if (const auto fine = costing.reckoning.fine(book.fixed->amount, book.fixed->currency, ""))
            costing.made.fixed = rounded(*fine);
        else
            costing.reckoning.miss({Kind::overhead, 0, book.fixed->currency, Why::no_rate});
    }
    if (costing.reckoning.too_large) return costing.reckoning.fault();
    costing.share();
    costing.made.missing = std::move(costing.reckoning.missing);
    costing.made.rates = std::move(costing.reckoning.rates);
    return std::move(costing.made);
}

result::Result<PerHead> per_head(const Class& of, const price::Book& book) {
    if (book.currency.empty()) return {Code::field_missing, "prices.currency", ""};
    Reckoning reckoning{book, of.known};
    PerHead made;
    made.currency = book.currency;
    std::int64_t used = 0, whole = 0;
    bool all_bought = true;
    const auto buy = [&](const Pack* pack, std::optional<std::int64_t> size, std::int64_t need) {
        const auto one = pack && size ? reckoning.fine(*pack) : std::nullopt;
        if (one)
            whole += reckoning.scaled(*one, decimal::scale_up(need, 1, *size), 1);
        else
            all_bought = false;
    };
    Mass weight, total;
    for (const Need& need : of.needs) {
        if (need.line >= of.formula.lines.size() || need.grams.grid <= 0) continue;
        const std::string& key = key_of(of.formula.lines[need.line]);
        const Priced priced = reckoning.ingredient(need.line, key, need.grams);
        used += priced.fine;
        weight = weight + priced.known;
        total = total + need.grams;
        const Pack* pack = price::pack_of(book, Of::ingredient, key);
        const auto weighs = pack ? reckoning.weight(*pack, key) : std::nullopt;
        buy(pack, weighs ? std::optional(weighs->grid) : std::nullopt, need.grams.grid);
    }
    const price::Making making = price::making_of(book, of.recipe);
    const auto pieces = [&](bool wanted, Kind kind, Of what, std::string_view which) {
        if (!wanted || of.units == 0) return;
        used += reckoning.pieces(kind, 0, what, which, of.units);
        const Pack* pack = price::pack_of(book, what, which);
        buy(pack, pack ? std::optional(pack->size) : std::nullopt, of.units * decimal::kOne);
    };
    pieces(!of.container.empty(), Kind::containers, Of::container, of.container);
    pieces(making.label, Kind::labels, Of::label, "");
    pieces(making.box, Kind::boxes, Of::box, "");
    if (reckoning.too_large) return reckoning.fault();
    made.used = rounded(used);
    made.low = {made.used.minor / of.people};
    made.more = made.used.minor % of.people;
    if (all_bought) made.bought = rounded(whole);
    made.known =
        total.grid > 0 ? Percent{decimal::scale_down(weight.grid, kHundred.grid, total.grid)} : kHundred;
    made.missing = std::move(reckoning.missing);
    return made;
}

}  // namespace cost
