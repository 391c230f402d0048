// What a label says is in the package: the conversions that the law prints, the forms of words, never more
// than there is.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/chance.h"
#include "engine/net_contents.h"
#include "shipped.h"

namespace test_net_contents {

using decimal::kOne;
using market::Market;
using net_contents::Digits;
using net_contents::Doubt;
using net_contents::Figure;
using net_contents::fine_of;
using net_contents::Form;
using net_contents::Unit;
using quantity::Mass;
using quantity::Volume;

namespace {

// With plain blanks, so that it can be read here.
std::string plain(std::string text) {
    for (std::size_t at = text.find("\xC2\xA0"); at != std::string::npos; at = text.find("\xC2\xA0", at))
        text.replace(at, 2, " ");
    return text;
}

std::string metric(std::int64_t grid, Unit unit, bool volume, Digits digits = Digits::three) {
    return plain(net_contents::print(net_contents::metric(fine_of(grid, unit), volume, digits)));
}

// Cut off at so many digits, in a unit that is not metric.
std::string cut(std::int64_t grid, Unit from, Unit to, std::int64_t step) {
    const std::int64_t value = net_contents::in(fine_of(grid, from), to);
    return decimal::print(value - value % step);
}

std::string said(Market market, Form form, Mass mass, std::optional<Volume> volume = {}) {
    return plain(net_contents::statement(market, form, mass, volume).text);
}

}  // namespace

TEST_CASE("an exact ounce is 28.3495 g, and a figure is cut off, never rounded up") {
    // EX-15, EX-16; 16 CFR 500.19.
    CHECK(fine_of(1500, Unit::oz).grid == 425'242'500);  // 0.15 oz = 4.252425 g
    CHECK(fine_of(5000, Unit::oz).grid == 1'417'475'000);
    CHECK(fine_of(2 * kOne, Unit::oz).grid == 5'669'900'000);
    CHECK(fine_of(4 * kOne, Unit::oz).grid == 11'339'800'000);
    CHECK(fine_of(kOne, Unit::lb).grid == 45'359'200'000);
    CHECK(fine_of(kOne, Unit::fl_oz).grid == 2'957'350'000);
    CHECK(fine_of(8 * kOne, Unit::fl_oz).grid == 23'658'800'000);
    const Digits two = Digits::two_below_hundred;
    CHECK(metric(1500, Unit::oz, false, two) == "4.2 g");
    CHECK(metric(5000, Unit::oz, false, two) == "14 g");
    CHECK(metric(2 * kOne, Unit::oz, false, two) == "56 g");
    CHECK(metric(4 * kOne, Unit::oz, false, two) == "113 g");
    CHECK(metric(kOne, Unit::lb, false, two) == "453 g");
    CHECK(metric(kOne, Unit::fl_oz, true, two) == "29 mL");
    CHECK(metric(8 * kOne, Unit::fl_oz, true, two) == "236 mL");
}

TEST_CASE("the sixteen conversions that 16 CFR 500.8 to 500.19 print come out as printed") {
    // EX2-1. Rounding to the nearest would fail on nine of them.
    CHECK(metric(kOne, Unit::lb, false) == "453 g");
    CHECK(metric(2 * kOne, Unit::oz, false) == "56.6 g");
    CHECK(metric(2 * kOne, Unit::oz, false, Digits::two_below_hundred) == "56 g");
    CHECK(metric(15 * kOne, Unit::oz, false) == "425 g");
    CHECK(metric(3 * kOne / 2, Unit::lb, false) == "680 g");
    CHECK(metric(24 * kOne, Unit::oz, false) == "680 g");
    CHECK(metric(5 * kOne / 2, Unit::oz, false) == "70.8 g");
    CHECK(cut(100 * kOne, Unit::g, Unit::oz, kOne / 10) == "3.5");
    CHECK(metric(12 * kOne, Unit::oz, false) == "340 g");
    CHECK(net_contents::in(fine_of(5 * kOne, Unit::lb) + fine_of(4 * kOne, Unit::oz), Unit::g) == 23'813'580);
    CHECK(plain(net_contents::print(net_contents::metric(
              fine_of(5 * kOne, Unit::lb) + fine_of(4 * kOne, Unit::oz), false))) == "2.38 kg");
    CHECK(metric(12 * kOne, Unit::fl_oz, true) == "354 mL");
    CHECK(metric(8 * kOne, Unit::fl_oz, true) == "236 mL");
    CHECK(metric(kOne, Unit::gal, true) == "3.78 L");
    CHECK(cut(500 * kOne, Unit::ml, Unit::pt, kOne / 100) == "1.05");
    CHECK(cut(kOne, Unit::l, Unit::qt, kOne / 100) == "1.05");
    CHECK(metric(kOne, Unit::qt, true) == "946 mL");
    CHECK(metric(56 * kOne, Unit::fl_oz, true) == "1.65 L");
    CHECK(metric(5 * kOne / 2, Unit::gal, true) == "9.46 L");
}

TEST_CASE("the forms of words of 21 CFR 701.13(j), (k) and (m)") {
    const auto words = [](std::int64_t grid, Unit unit, bool volume) {
        return plain(net_contents::customary(fine_of(grid, unit), volume));
    };
    CHECK(words(3 * kOne / 2, Unit::lb, false) == "Net wt. 24 oz. (1 lb. 8 oz.)");
    CHECK(words(3 * kOne / 4, Unit::lb, false) == "Net wt. 12 oz.");
    CHECK(words(kOne, Unit::qt, true) == "Net contents 32 fl. oz. (1 qt.)");
    CHECK(words(56 * kOne, Unit::fl_oz, true) == "Net contents 56 fl. oz. (1 qt. 1 pt. 8 oz.)");
    CHECK(words(5 * kOne / 2, Unit::gal, true) == "Net contents 2 gal. 2 qt.");
    CHECK(words(6 * kOne, Unit::oz, false) == "Net wt. 6 oz.");
    CHECK(words(6 * kOne, Unit::fl_oz, true) == "Net contents 6 fl. oz.");
    // EX-17 and EX2-6: the bracket begins at one pound.
    CHECK(words(20 * kOne, Unit::oz, false) == "Net wt. 20 oz. (1 lb. 4 oz.)");
    CHECK(words(16 * kOne, Unit::oz, false) == "Net wt. 16 oz. (1 lb.)");
    CHECK(words(1599 * kOne / 100, Unit::oz, false) == "Net wt. 15.99 oz.");
    // From four pounds and from a gallon on the larger unit stands alone.
    CHECK(words(6399 * kOne / 100, Unit::oz, false) == "Net wt. 63.99 oz. (3 lb. 15.99 oz.)");
    CHECK(words(64 * kOne, Unit::oz, false) == "Net wt. 4 lb.");
    CHECK(words(70 * kOne, Unit::oz, false) == "Net wt. 4 lb. 6 oz.");
}

TEST_CASE("a mass that was entered in ounces is printed as those ounces") {
    // What is kept is cut to 0.0001 g: 0.15 oz is kept as 4.2524 g. EX2-2.
    for (std::int64_t hundredths = 1; hundredths < 700; ++hundredths) {
        const std::string figure = decimal::print(hundredths * kOne / 100);
        const Mass kept = quantity::read_mass(figure + " oz").value();
        CAPTURE(figure);
        CHECK(plain(net_contents::customary(fine_of(kept.grid, Unit::g), false)).find(figure + " oz.") !=
              std::string::npos);
    }
    const Mass kept = quantity::read_mass("0.15 oz").value();
    CHECK(said(Market::us, Form::solid, kept) == "Net wt. 0.15 oz. (4.25 g)");
    CHECK(plain(net_contents::statement(Market::us, Form::solid, kept, {}, Digits::two_below_hundred).text) ==
          "Net wt. 0.15 oz. (4.2 g)");
    CHECK(said(Market::us, Form::semisolid, quantity::read_mass("20 oz").value()) ==
          "Net wt. 20 oz. (1 lb. 4 oz.) 566 g");
}

TEST_CASE("nothing is ever said to be more than it is") {
    chance::Generator chance(20261126);
    for (int i = 0; i < 4000; ++i) {
        const Mass mass{chance.between(1, chance.below(2) == 0 ? 2'000'000 : 60'000'000)};
        for (const Digits digits : {Digits::three, Digits::two_below_hundred}) {
            const Figure figure = net_contents::metric(fine_of(mass.grid, Unit::g), false, digits);
            const std::int64_t shown = fine_of(figure.grid, figure.unit).grid, is = mass.grid * 10'000;
            CHECK(shown <= is);
            // And not less by more than its digits: one part in a hundred, or in ten.
            CHECK((is - shown) * (digits == Digits::three ? 100 : 10) <= is);
        }
    }
}

TEST_CASE("which measure a market takes for what pours and what does not") {
    const Volume fifty = quantity::millilitres(50);
    const Mass mass{46 * kOne};
    CHECK(said(Market::eu, Form::liquid, mass, fifty) == "50 mL");
    CHECK(said(Market::us, Form::liquid, mass, fifty) == "Net contents 1.69 fl. oz. (50 mL)");
    CHECK(said(Market::us, Form::viscous, mass, fifty) == "Net wt. 1.62 oz. (46 g)");
    CHECK(said(Market::ca, Form::viscous, mass, fifty) == "50 mL");
    CHECK(said(Market::ca, Form::solid, mass, fifty) == "46 g");
    CHECK(said(Market::gb, Form::semisolid, mass, fifty) == "46 g");
    const auto unknown = net_contents::statement(Market::ca, Form::liquid, mass, {});
    CHECK(unknown.doubt == Doubt::volume_unknown);
    CHECK(plain(unknown.text) == "46 g");
}

TEST_CASE("under 5 g or 5 mL the EU and GB ask for no net contents") {
    // EU-19-3: Art. 19(1)(b).
    const auto required = [](Market market, std::int64_t grid) {
        return net_contents::statement(market, Form::solid, Mass{grid}, {}).required;
    };
    CHECK_FALSE(required(Market::eu, 5 * kOne - 1));
    CHECK(required(Market::eu, 5 * kOne));
    CHECK_FALSE(required(Market::gb, 42'000));
    CHECK(required(Market::us, 42'000));
    CHECK(required(Market::ca, 42'000));
}

TEST_CASE("a figure has three digits at most and a prefix that keeps it between 1 and 1000") {
    // US2-26: 1.96 kg, not 1960 g; 750 mL, not 0.75 L.
    CHECK(metric(1960 * kOne, Unit::g, false) == "1.96 kg");
    CHECK(metric(750 * kOne, Unit::ml, true) == "750 mL");
    CHECK(metric(999'999'9, Unit::g, false) == "999 g");
    CHECK(metric(5000, Unit::g, false) == "500 mg");
    CHECK(net_contents::statement(Market::eu, Form::solid, Mass{0}, {}).doubt == Doubt::zero);
}

TEST_CASE("every shipped product kind has a form") {
    for (const catalogue::Product& one : shipped::presets().catalogue.products) {
        CAPTURE(one.id);
        CHECK(net_contents::form_of(one.id).has_value());
    }
    CHECK_FALSE(net_contents::form_of("candle").has_value());
}

}  // namespace test_net_contents
