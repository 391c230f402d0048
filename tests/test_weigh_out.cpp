// Weighing a batch: what is asked for, mistakes in any order and the ways on from them. Worked cases are
// those of methods.md section 4.4 (computed there); the brute force keeps its own ledger of what went into
// the jug and works its figures out from that in double.
#include <cmath>
#include <numeric>
#include <vector>

#include "doctest/doctest.h"
#include "engine/chance.h"
#include "engine/weigh_out.h"
#include "engine/weigh_out_ways.h"

namespace test_weigh_out {

using quantity::grams;
using quantity::Mass;
using quantity::Percent;
using weigh_out::Option;
using weigh_out::Standing;
using weigh_out::Way;
using weigh_out::WeighOut;

namespace {

Mass mass(double g) {
    return {std::llround(g * decimal::kOne)};
}
Percent percent(double p) {
    return {std::llround(p * decimal::kOne)};
}

weigh_out::Line line(const char* name, const char* role, double p, double g, bool capped = false) {
    weigh_out::Line one;
    one.name = name;
    one.phase = "A";
    one.role = role;
    one.capped = capped;
    one.percent = percent(p);
    one.grams = mass(g);
    one.division = mass(0.001);
    return one;
}

// methods.md 4.4: 60 g of wax 20, butter 30, oil 45, vitamin E 1, essential oil 4 %.
enum { wax, butter, oil, vitamin, scent };
WeighOut worked() {
    WeighOut weighing;
    weighing.plan.division = mass(0.001);
    weighing.plan.phases = {{"A", {}, {}}};
    weighing.plan.lines = {line("wax", "wax", 20, 12), line("butter", "butter", 30, 18),
                           line("oil", "liquid_oil", 45, 27), line("vitamin E", "antioxidant", 1, 0.6, true),
                           line("scent", "essential_oil", 4, 2.4, true)};
    weighing.plan.lines[oil].rest = true;
    return weighing;
}

WeighOut poured(const WeighOut& weighing, std::size_t line, Mass amount) {
    return weigh_out::pour(weighing, line, amount, true, "").value();
}

const Option& way(const std::vector<Option>& options, Way wanted) {
    for (const Option& option : options)
        if (option.way == wanted) return option;
    FAIL("there is no such way");
    return options.front();
}

// Everything that is still asked for, as asked.
WeighOut to_the_end(WeighOut weighing) {
    for (int i = 0; i < 200; ++i) {
        const Standing standing = weigh_out::standing_of(weighing);
        const auto next = weigh_out::next(weighing, standing, 0);
        if (!next) break;
        weighing = poured(weighing, *next, standing.rows[*next].left);
    }
    return weighing;
}

}  // namespace

TEST_CASE("a batch weighed as asked comes to what the formula says, line by line") {
    WeighOut weighing = worked();
    CHECK(weigh_out::standing_of(weighing).rows[wax].left == grams(12));
    weighing = poured(weighing, wax, grams(12));
    Standing standing = weigh_out::standing_of(weighing);
    CHECK(standing.rows[wax].done);
    CHECK(weigh_out::next(weighing, standing, wax) == butter);
    standing = weigh_out::standing_of(to_the_end(weighing));
    CHECK(standing.finished);
    CHECK(standing.poured == grams(60));
    CHECK(standing.percents[scent] == quantity::percent(4));
}

TEST_CASE("waxes are first within their phase, and lines may be weighed in any order") {
    WeighOut weighing = worked();
    std::swap(weighing.plan.lines[wax], weighing.plan.lines[oil]);
    CHECK(weigh_out::order(weighing.plan).front() == oil);  // where the wax stands now
    weighing = poured(worked(), scent, mass(2.4));
    CHECK(weigh_out::next(weighing, weigh_out::standing_of(weighing), scent) == wax);
}

TEST_CASE("one percent of a line is right enough, of a capped line one division") {
    const auto over = [](std::size_t line, double g) {
        return weigh_out::standing_of(poured(worked(), line, mass(g))).rows[line].over;
    };
    CHECK_FALSE(over(wax, 12.12));
    CHECK(over(wax, 12.121));
    CHECK_FALSE(over(scent, 2.401));
    CHECK(over(scent, 2.402));
    CHECK_FALSE(weigh_out::standing_of(poured(worked(), wax, mass(11.87))).rows[wax].done);
    CHECK(weigh_out::standing_of(poured(worked(), wax, mass(11.88))).rows[wax].done);
}

TEST_CASE("13.5 g of wax for 12: in proportion the batch becomes 67.5 g (methods.md 4.4)") {
    const WeighOut weighing = poured(worked(), wax, mass(13.5));
    const auto options = weigh_out::options(weighing, wax);
    const Option& full = way(options, Way::proportion);
    CHECK(full.whole);
    CHECK(full.then.batch == mass(67.5));
    CHECK(full.then.rows[butter].left == mass(20.25));
    CHECK(full.then.rows[oil].left == mass(30.375));
    CHECK(full.then.rows[vitamin].left == mass(0.675));
    CHECK(full.then.rows[scent].left == mass(2.7));
    CHECK(full.beyond == mass(7.5));
    const Standing end = weigh_out::standing_of(to_the_end(full.after));
    for (std::size_t i = 0; i < end.percents.size(); ++i)
        CHECK(end.percents[i] == worked().plan.lines[i].percent);
}

TEST_CASE("left as it is, 61.5 g hold 21.951 % of wax (methods.md 4.4)") {
    const auto options = weigh_out::options(poured(worked(), wax, mass(13.5)), wax);
    const Option& accept = way(options, Way::accept);
    CHECK(accept.then.total == mass(61.5));
    const double expected[] = {21.951, 29.268, 43.902, 0.976, 3.902};
    for (std::size_t i = 0; i < 5; ++i)
        CHECK(std::abs(decimal::to_double(accept.then.percents[i].grid) - expected[i]) < 0.00065);
    CHECK_FALSE(accept.then.rows[wax].over);
}

TEST_CASE("butter for 1.05 times the batch rescues half way: 63.9 g, wax 21.127 % (methods.md 4.4)") {
    WeighOut weighing = worked();
    weighing.plan.lines[butter].have = mass(18.9);
    const auto options = weigh_out::options(poured(weighing, wax, mass(13.5)), wax);
    const Option& partial = way(options, Way::proportion);
    CHECK_FALSE(partial.whole);
    CHECK(partial.possible);
    CHECK(partial.short_of == butter);
    CHECK(partial.then.batch == grams(63));
    CHECK(partial.then.total == mass(63.9));
    const double expected[] = {21.127, 29.577, 44.366, 0.986, 3.944};
    for (std::size_t i = 0; i < 5; ++i)
        CHECK(std::abs(decimal::to_double(partial.then.percents[i].grid) - expected[i]) < 0.00065);
    CHECK_FALSE(partial.then.rows[wax].over);
    const Standing end = weigh_out::standing_of(to_the_end(partial.after));
    CHECK(end.poured == mass(63.9));
}

TEST_CASE("where nothing more is at hand, or the pot is full, in proportion does not go and says why") {
    WeighOut weighing = worked();
    weighing.plan.lines[oil].have = grams(27);
    auto options = weigh_out::options(poured(weighing, wax, mass(13.5)), wax);
    CHECK_FALSE(way(options, Way::proportion).possible);
    CHECK(way(options, Way::proportion).short_of == oil);
    weighing = worked();
    weighing.plan.pot = grams(60);
    options = weigh_out::options(poured(weighing, wax, mass(13.5)), wax);
    CHECK_FALSE(way(options, Way::proportion).possible);
    CHECK(way(options, Way::proportion).pot_full);
}

TEST_CASE("two overshoots: the larger ratio counts, and the other line is topped up (methods.md 4.4)") {
    WeighOut weighing = poured(poured(worked(), wax, mass(13.5)), butter, mass(21.6));  // 1.125 and 1.2
    const auto options = weigh_out::options(weighing, wax);
    const Option& full = way(options, Way::proportion);
    CHECK(full.then.batch == grams(72));
    CHECK(full.then.rows[wax].left == mass(0.9));
    CHECK(full.then.rows[butter].done);
    const Standing end = weigh_out::standing_of(to_the_end(full.after));
    CHECK(end.percents[wax] == quantity::percent(20));
    CHECK(end.poured == grams(72));
}

TEST_CASE("the rest line takes up what is too much, while it is not all in") {
    const auto options = weigh_out::options(poured(worked(), wax, mass(13.5)), wax);
    const Option& up = way(options, Way::take_up);
    CHECK(up.other == oil);
    CHECK(up.then.rows[oil].left == mass(25.5));
    CHECK(up.then.total == grams(60));
    CHECK(up.then.percents[wax] == percent(22.5));
    CHECK(up.then.percents[oil] == percent(42.5));
    const auto late = weigh_out::options(poured(poured(worked(), oil, grams(27)), wax, mass(13.5)), wax);
    for (const Option& option : late)
        CHECK(option.way != Way::take_up);
}

TEST_CASE("a line of the same role takes it up as well as the rest line") {
    WeighOut weighing = worked();
    weighing.plan.lines.push_back(line("other scent", "essential_oil", 2, 1.2, true));
    weighing.plan.lines[oil].percent = quantity::percent(43);
    weighing.plan.lines[oil].grams = mass(25.8);
    std::vector<std::size_t> takers;
    for (const Option& option : weigh_out::options(poured(weighing, scent, mass(2.6)), scent))
        if (option.way == Way::take_up) takers.push_back(*option.other);
    CHECK(takers == std::vector<std::size_t>{oil, 5});
}

TEST_CASE("too little: more of it first; where there is no more, the batch gets smaller or it stays so") {
    const WeighOut weighing = poured(worked(), butter, mass(16.2));
    const auto options = weigh_out::options(weighing, butter);
    CHECK(options.front().way == Way::add_more);
    CHECK(options.front().then.rows[butter].left == mass(1.8));
    const Option& smaller = way(options, Way::proportion);
    CHECK(smaller.then.batch == grams(54));
    CHECK(smaller.then.rows[oil].left == mass(24.3));
    const Standing end = weigh_out::standing_of(to_the_end(smaller.after));
    CHECK(end.percents[butter] == quantity::percent(30));
    // With all the oil in, the batch cannot get smaller any more.
    const auto late =
        weigh_out::options(poured(poured(worked(), oil, grams(27)), butter, mass(16.2)), butter);
    CHECK_FALSE(way(late, Way::proportion).possible);
    const Standing as_is = way(late, Way::accept).then;
    CHECK(as_is.rows[butter].done);
    CHECK(as_is.total == mass(58.2));
}

TEST_CASE("adjusted while warm: only wax is added, and the cool-down part grows with the batch") {
    WeighOut weighing = worked();
    for (const std::size_t line : {std::size_t{wax}, std::size_t{butter}, std::size_t{oil}})
        weighing = poured(weighing, line, weighing.plan.lines[line].grams);
    const auto adjusted = weigh_out::adjusted(weighing, wax, quantity::percent(22), false);
    REQUIRE(adjusted.ok());
    // 73 % of butter and oil are 45 g: the batch is 61.644 g, 13.562 g of it wax.
    CHECK(std::abs(decimal::to_double(adjusted->then.batch.grid) - 45 / 0.73) < 0.001);
    CHECK(std::abs(decimal::to_double(adjusted->then.rows[wax].left.grid) - 1.562) < 0.0011);
    CHECK(adjusted->then.rows[butter].left == Mass{});
    CHECK(adjusted->then.rows[oil].left == Mass{});
    CHECK(std::abs(decimal::to_double(adjusted->then.rows[scent].left.grid) - 2.466) < 0.0011);
    const Standing end = weigh_out::standing_of(to_the_end(adjusted->after));
    CHECK(std::abs(decimal::to_double(end.percents[wax].grid) - 22) < 0.002);
    CHECK(std::abs(decimal::to_double(end.percents[scent].grid) - 4) < 0.002);
}

TEST_CASE("softer while warm: nothing is taken out, so everything else grows") {
    WeighOut weighing = worked();
    for (const std::size_t line : {std::size_t{wax}, std::size_t{butter}, std::size_t{oil}})
        weighing = poured(weighing, line, weighing.plan.lines[line].grams);
    const auto adjusted = weigh_out::adjusted(weighing, wax, quantity::percent(16), true);
    REQUIRE(adjusted.ok());
    CHECK(adjusted->then.batch == grams(75));  // 12 g are 16 %
    CHECK(adjusted->then.rows[wax].left == Mass{});
    CHECK(adjusted->then.rows[oil].left == mass(36.75 - 27));  // 49 %
    CHECK(adjusted->then.rows[butter].left == mass(4.5));
    CHECK(adjusted->then.percents[oil] == quantity::percent(49));
}

TEST_CASE(
    "an adjustment that the pot or the stock does not allow is refused with the batch that it would be") {
    WeighOut weighing = worked();
    weighing.plan.pot = grams(70);
    for (const std::size_t line : {std::size_t{wax}, std::size_t{butter}, std::size_t{oil}})
        weighing = poured(weighing, line, weighing.plan.lines[line].grams);
    const auto adjusted = weigh_out::adjusted(weighing, wax, quantity::percent(16), true);
    REQUIRE_FALSE(adjusted.ok());
    CHECK(adjusted.error().code == result::Code::batch_too_large);
    CHECK_FALSE(weigh_out::adjusted(weighing, wax, quantity::percent(100), false).ok());
    CHECK_FALSE(weigh_out::adjusted(weighing, wax, Percent{0}, false).ok());
    CHECK_FALSE(weigh_out::adjusted(weighing, 9, quantity::percent(1), false).ok());
}

TEST_CASE("what the scale shows: zeroed, and with the jug where it switched itself off") {
    WeighOut weighing = worked();
    weighing.plan.jug = grams(150);
    const std::vector<scales::Scale> bench{{"fine", mass(0.001), grams(200)}, {"coarse", grams(1), {}}};
    auto shows = weigh_out::shows(weighing, weigh_out::standing_of(weighing), wax, bench);
    CHECK(shows.zeroed == grams(12));
    CHECK(shows.not_zeroed == grams(162));
    CHECK(shows.place.in_jug);
    weighing = weigh_out::pour(weighing, wax, mass(162.004), false, "").value();
    CHECK(weigh_out::standing_of(weighing).rows[wax].poured == mass(12.004));
    weighing = poured(weighing, butter, grams(18));
    shows = weigh_out::shows(weighing, weigh_out::standing_of(weighing), oil, bench);
    CHECK_FALSE(shows.place.in_jug);  // 207 g are too much for the fine scale: in a dish
    CHECK_FALSE(shows.not_zeroed.has_value());
    CHECK(weigh_out::pour(weighing, oil, grams(100), false, "").error().code ==
          result::Code::number_negative);
    // Another jug for what follows.
    weighing = weigh_out::take_jug(weighing, grams(90), "");
    CHECK(weigh_out::shows(weighing, weigh_out::standing_of(weighing), oil, bench).not_zeroed == grams(117));
    CHECK(weigh_out::pour(worked(), wax, grams(12), false, "").error().code == result::Code::field_missing);
}

TEST_CASE("a slip is taken back, and one is again at its line") {
    const WeighOut before = worked();
    WeighOut weighing = poured(before, oil, grams(270));
    weighing.at = wax;
    weighing = weigh_out::take_back(weighing);
    CHECK(weighing.at == oil);
    CHECK(weigh_out::standing_of(weighing) == weigh_out::standing_of(before));
    CHECK(weigh_out::take_back(before) == before);
}

TEST_CASE("the first container filled corrects the count") {
    WeighOut weighing = worked();
    weighing.plan.containers = 2;
    weighing.plan.each = grams(28);
    weighing.plan.loss = quantity::percent(5);
    weighing = to_the_end(weighing);
    CHECK(weigh_out::count_of(weighing.plan, weigh_out::standing_of(weighing)) == 2);
    weighing = weigh_out::fill(weighing, mass(30.2), "");
    CHECK(weigh_out::count_of(weighing.plan, weigh_out::standing_of(weighing)) == 1);
}

TEST_CASE("what a file says wrongly is refused with its place") {
    WeighOut weighing = worked();
    CHECK_FALSE(weigh_out::fault_of(weighing).has_value());
    weighing.acts = {{}};
    weighing.acts[0].line = 5;
    CHECK(weigh_out::fault_of(weighing)->place == "acts[0].line");
    weighing = worked();
    weighing.plan.lines[2].division = {};
    CHECK(weigh_out::fault_of(weighing)->code == result::Code::division_invalid);
    weighing = worked();
    weighing.plan.lines[2].percent = {};
    CHECK(weigh_out::fault_of(weighing)->code == result::Code::sum_not_hundred);
    CHECK(weigh_out::fault_of(WeighOut{}).has_value());
}

namespace {

struct Ledger {  // what a person did, kept apart from the engine
    std::vector<double> in;
    double all() const { return std::accumulate(in.begin(), in.end(), 0.0); }
};

WeighOut random_plan(chance::Generator& chance) {
    static constexpr const char* kRoles[] = {"wax", "butter", "liquid_oil", "essential_oil", "preservative"};
    static constexpr std::int64_t kDivisions[] = {10, 100, 1000, 10000};
    WeighOut weighing;
    weigh_out::Plan& plan = weighing.plan;
    plan.phases = {{"A", {}, {}}, {"B", {}, {}}};
    const std::size_t count = 2 + chance.below(7);
    std::vector<std::int64_t> weights;
    for (std::size_t i = 0; i < count; ++i)
        weights.push_back(1 + static_cast<std::int64_t>(chance.below(chance.below(3) == 0 ? 20 : 400)));
    const auto percents = decimal::share_out(quantity::kHundred.grid, weights).value();
    const Mass batch{chance.between(20, 3000) * decimal::kOne};
    plan.division = {kDivisions[chance.below(2)]};
    const std::size_t rest = chance.below(count + 1);
    for (std::size_t i = 0; i < count; ++i) {
        weigh_out::Line line;
        line.name = "line " + std::to_string(i);
        line.phase = 2 * i < count ? "A" : "B";
        line.role = kRoles[chance.below(5)];
        line.rest = i == rest;
        line.percent = {percents[i]};
        line.division = {kDivisions[chance.below(6) == 0 ? 3 : chance.below(3)]};
        const Mass share = quantity::share_of(batch, line.percent);
        while (share.grid < 20 * line.division.grid && line.division.grid > 10)
            line.division.grid /= 10;
        line.capped = line.role == "essential_oil" || line.role == "preservative";
        line.grams = {share.grid / line.division.grid * line.division.grid};
        if (line.grams == Mass{}) line.grams = line.division;
        if (line.capped && chance.below(3) == 0) line.most = line.percent + Percent{chance.between(0, 5000)};
        if (chance.below(4) == 0)
            line.have = quantity::share_of(line.grams, quantity::percent(chance.between(100, 140)));
        plan.lines.push_back(line);
    }
    if (chance.below(4) == 0)
        plan.pot = quantity::share_of(batch, quantity::percent(chance.between(102, 140)));
    return weighing;
}

double g(Mass mass) {
    return decimal::to_double(mass.grid);
}

// What one way promises, against the ledger and the plan.
void check_option(const WeighOut& before, const Standing& was, const Option& option, std::size_t line,
                  const Ledger& ledger) {
    const auto& rows = option.then.rows;
    const std::size_t count = rows.size();
    double end = 0;
    for (std::size_t i = 0; i < count; ++i) {
        CHECK(rows[i].left >= Mass{});  // never out of the jug
        CHECK(rows[i].poured == was.rows[i].poured);
        end += ledger.in[i] + g(rows[i].left);
    }
    CHECK(std::abs(end - g(option.then.total)) < 1e-6);
    for (std::size_t i = 0; i < count; ++i)
        CHECK(std::abs(100 * (ledger.in[i] + g(rows[i].left)) / end -
                       decimal::to_double(option.then.percents[i].grid)) < 1.5e-4);
    const auto division = [&](std::size_t i) { return g(before.plan.lines[i].division); };
    switch (option.way) {
        case Way::add_more:
            CHECK(option.then == was);
            break;
        case Way::accept:
            for (std::size_t i = 0; i < count; ++i)
                if (i != line) CHECK(rows[i].target == was.rows[i].target);
            break;
        case Way::take_up: {
            const std::size_t other = *option.other;
            CHECK(std::abs(g(rows[line].target) + g(rows[other].target) - g(was.rows[line].target) -
                           g(was.rows[other].target)) <= division(other) + 1e-9);
            for (std::size_t i = 0; i < count; ++i)
                if (i != line && i != other) CHECK(rows[i].target == was.rows[i].target);
            break;
        }
        case Way::proportion: {
            if (!option.possible) {
                CHECK(option.then == was);
                break;
            }
            double factor = 1;
            for (std::size_t i = 0; i < count; ++i)
                if (was.rows[i].over)
                    factor =
                        std::max(factor, ledger.in[i] * 100 /
                                             (decimal::to_double(was.rows[i].percent.grid) * g(was.batch)));
            if (was.rows[line].over && option.whole && !option.short_of && !option.pot_full)
                CHECK(std::abs(g(option.then.batch) - factor * g(was.batch)) < 1e-3);
            if (was.rows[line].over) CHECK(g(option.then.batch) <= factor * g(was.batch) + 1e-3);
            for (std::size_t i = 0; i < count; ++i) {
                const double share = decimal::to_double(rows[i].percent.grid) * g(option.then.batch) / 100;
                if (rows[i].left > Mass{} && !before.plan.lines[i].most)
                    CHECK(std::abs(g(rows[i].target) - share) <= division(i) + 1e-6);
                const auto& have = before.plan.lines[i].have;
                if (was.rows[line].over && have && rows[i].left > Mass{}) CHECK(rows[i].target <= *have);
            }
            if (was.rows[line].over && before.plan.pot) CHECK(option.then.total <= *before.plan.pot);
            break;
        }
    }
}

}  // namespace

TEST_CASE("thousands of random weigh-outs end as was promised, and nothing is asked to be taken out") {
    chance::Generator chance(4401);
    int mistakes = 0, taken[4] = {}, adjustments = 0;
    for (int round = 0; round < 2000; ++round) {
        CAPTURE(round);
        WeighOut weighing = random_plan(chance);
        REQUIRE_FALSE(weigh_out::fault_of(weighing).has_value());
        const std::size_t count = weighing.plan.lines.size();
        Ledger ledger{std::vector<double>(count)};
        std::vector<double> promised;  // percents of the last that was agreed on
        bool as_formula = true;        // nothing but proportions so far
        std::uint64_t slips = chance.below(4);
        for (int step = 0; step < 300; ++step) {
            const Standing standing = weigh_out::standing_of(weighing);
            promised.clear();
            for (const Percent p : standing.percents)
                promised.push_back(decimal::to_double(p.grid));
            if (standing.finished) break;
            std::vector<std::size_t> open;
            for (std::size_t i = 0; i < count; ++i)
                if (!standing.rows[i].done) open.push_back(i);
            const std::size_t line = open[chance.below(open.size())];
            const weigh_out::Row& row = standing.rows[line];
            const bool decide = row.over || (row.poured > Mass{} && chance.below(2) == 0);
            if (decide) {
                const auto options = weigh_out::options(weighing, line);
                REQUIRE_FALSE(options.empty());
                for (const Option& option : options)
                    check_option(weighing, standing, option, line, ledger);
                const Option& option = options[chance.below(options.size())];
                if (!option.possible) continue;
                taken[static_cast<int>(option.way)] += 1;
                if (option.way == Way::accept || option.way == Way::take_up || !option.whole)
                    as_formula = false;
                weighing = option.after;
                if (option.way != Way::add_more) continue;
            }
            if (!row.over && standing.poured > Mass{} && chance.below(40) == 0) {
                const auto way = weigh_out::adjusted(
                    weighing, line,
                    row.percent + Percent{chance.between(-row.percent.grid / 5, row.percent.grid / 5)},
                    chance.below(2) == 0);
                if (way.ok()) {
                    for (const weigh_out::Row& after : way->then.rows)
                        CHECK(after.left >= Mass{});
                    weighing = way->after;
                    adjustments += 1;
                    as_formula = false;
                    continue;
                }
            }
            if (row.over) continue;
            CHECK(row.left > Mass{});
            Mass amount = row.left;
            if (slips > 0 && chance.below(3) == 0) {
                slips -= 1;
                mistakes += 1;
                amount = quantity::share_of(amount, quantity::percent(chance.between(20, 160)));
                if (amount == Mass{}) amount = row.left;
            }
            ledger.in[line] += g(amount);
            weighing = poured(weighing, line, amount);
        }
        const Standing end = weigh_out::standing_of(weighing);
        REQUIRE(end.finished);
        const double all = ledger.all();
        double steps = 0;
        for (const weigh_out::Line& line : weighing.plan.lines)
            steps += g(line.division);
        for (std::size_t i = 0; i < count; ++i) {
            const weigh_out::Line& line = weighing.plan.lines[i];
            CHECK(std::abs(ledger.in[i] - promised[i] * all / 100) <= g(line.division) + all * 1e-6);
            // With proportions alone that is the formula, within the tolerance that asks for no more.
            const double meant = decimal::to_double(line.percent.grid) * all / 100;
            const double tolerance = std::max(g(line.division), line.capped ? 0.0 : meant / 100);
            if (as_formula)
                CHECK(std::abs(ledger.in[i] - meant) <=
                      tolerance + g(line.division) + meant / all * (steps + all / 100));
        }
    }
    CHECK(mistakes > 2000);
    for (const int times : taken)
        CHECK(times > 100);
    CHECK(adjustments > 100);
}

}  // namespace test_weigh_out
