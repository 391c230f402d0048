// Sums are of whole numbers: an amount is a count of 0.00000001 g or mL, a factor of the law times the grid
// of a unit is such a count exactly.
#include "net_contents.h"

#include <array>
#include <string_view>
#include <utility>

namespace net_contents {
namespace {

using decimal::kOne;
using market::Market;
using source::Standing;

struct Of {
    std::int64_t fine;  // of 0.0001 of the unit
    std::string_view symbol, customary;
};
// 16 CFR 500.19(a): 1 oz = 28.3495 g, 1 lb = 453.592 g, 1 fl oz = 29.5735 mL, 1 pt = 473.177 mL,
// 1 qt = 946.353 mL, 1 gal = 3.78541 L.
constexpr std::array<Of, 11> kUnits{{{10, "mg", ""},
                                     {10'000, "g", ""},
                                     {10'000'000, "kg", ""},
                                     {10'000, "mL", ""},
                                     {10'000'000, "L", ""},
                                     {283'495, "oz", "oz."},
                                     {4'535'920, "lb", "lb."},
                                     {295'735, "fl oz", "fl. oz."},
                                     {4'731'770, "pt", "pt."},
                                     {9'463'530, "qt", "qt."},
                                     {37'854'100, "gal", "gal."}}};
const Of& of(Unit unit) {
    return kUnits[static_cast<std::size_t>(unit)];
}

std::int64_t cut_to(std::int64_t grid, std::int64_t step) {
    return grid - grid % step;
}

// The step that leaves this many digits: of 56.699 and three, 0.1.
std::int64_t step_of(std::int64_t grid, int digits) {
    std::int64_t step = 1;
    std::int64_t most = 1;
    for (int i = 0; i < digits; ++i)
        most *= 10;
    while (grid / step >= most)
        step *= 10;
    return step;
}

constexpr std::int64_t kOunces = 16, kHundredth = kOne / 100;
constexpr std::string_view kSpace = "\xC2\xA0";

std::string said(std::int64_t grid, Unit unit) {
    return decimal::print(grid) + std::string(kSpace) + std::string(of(unit).customary);
}

// Whole larger units and what is left of ounces: "1 lb. 8 oz.", "1 qt. 1 pt. 8 oz.", "2 gal. 2 qt.".
std::string in_larger(std::int64_t ounces, bool volume, bool small_fluid) {
    struct Larger {
        Unit unit;
        std::int64_t ounces;
    };
    static constexpr std::array<Larger, 1> kWeight{{{Unit::lb, 16}}};
    static constexpr std::array<Larger, 3> kVolume{{{Unit::gal, 128}, {Unit::qt, 32}, {Unit::pt, 16}}};
    std::string text;
    const auto take = [&](const Larger& larger) {
        const std::int64_t whole = ounces / (larger.ounces * kOne);
        if (whole == 0) return;
        ounces -= whole * larger.ounces * kOne;
        text += (text.empty() ? "" : " ") + said(whole * kOne, larger.unit);
    };
    if (volume) {
        for (const Larger& larger : kVolume)
            take(larger);
    } else {
        take(kWeight[0]);
    }
    if (ounces > 0) text += (text.empty() ? "" : " ") + said(ounces, small_fluid ? Unit::fl_oz : Unit::oz);
    return text;
}

}  // namespace

Fine fine_of(std::int64_t grid, Unit unit) {
    return {grid * of(unit).fine};
}

std::int64_t in(Fine amount, Unit unit) {
    return amount.grid / of(unit).fine;
}

Figure metric(Fine amount, bool volume, Digits digits) {
    Unit unit = volume ? Unit::ml : Unit::g;
    if (in(amount, unit) >= 1000 * kOne) unit = volume ? Unit::l : Unit::kg;
    if (!volume && in(amount, unit) < kOne) unit = Unit::mg;
    const std::int64_t grid = in(amount, unit);
    const bool two = digits == Digits::two_below_hundred && grid < 100 * kOne;
    return {cut_to(grid, step_of(grid, two ? 2 : 3)), unit};
}

std::string print(Figure figure, decimal::Sign sign) {
    return decimal::print(figure.grid, sign) + std::string(kSpace) + std::string(of(figure.unit).symbol);
}

std::int64_t hundredths(Fine amount, Unit unit) {
    constexpr Fine kUnderAStep{9'999};  // of 0.0001 g or mL, which is all that is kept
    return cut_to(in(amount + kUnderAStep, unit), kHundredth);
}

std::string customary(Fine amount, bool volume) {
    const Unit small = volume ? Unit::fl_oz : Unit::oz;
    const std::int64_t ounces = hundredths(amount, small);
    const std::string lead = volume ? "Net contents " : "Net wt. ";
    const std::int64_t first_larger = kOunces * kOne, larger_alone = (volume ? 128 : 64) * kOne;
    if (ounces >= larger_alone) return lead + in_larger(ounces, volume, volume);
    std::string text = lead + said(ounces, small);
    if (ounces >= first_larger) text += " (" + in_larger(ounces, volume, false) + ")";
    return text;
}

std::optional<Form> form_of(std::string_view product) {
    static constexpr std::array<std::pair<std::string_view, Form>, 19> kForms{
        {{"lip_balm", Form::solid},
         {"lip_scrub", Form::semisolid},
         {"tinted_lip_balm", Form::solid},
         {"salve", Form::semisolid},
         {"body_butter", Form::semisolid},
         {"whipped_butter", Form::semisolid},
         {"lotion_bar", Form::solid},
         {"body_oil", Form::liquid},
         {"face_oil", Form::liquid},
         {"roll_on", Form::liquid},
         {"solid_perfume", Form::solid},
         {"deodorant", Form::solid},
         {"hand_lotion", Form::viscous},
         {"face_cream", Form::viscous},
         {"body_scrub", Form::semisolid},
         {"foot_scrub", Form::semisolid},
         {"cleansing_balm", Form::semisolid},
         {"bath_oil", Form::liquid},
         {"baby_balm", Form::semisolid}}};
    for (const auto& [id, form] : kForms)
        if (id == product) return form;
    return std::nullopt;
}

// US: weight for what is solid, semisolid or viscous, fluid measure for liquids (21 CFR 701.13(a)). Canada:
// volume for what is liquid or viscous, weight for what is solid (C.R.C., c. 417, s. 21). EU and GB: either;
// volume for what pours is the custom of the trade.
Statement statement(Market market, std::optional<Form> form, quantity::Mass mass,
                    std::optional<quantity::Volume> volume, Digits digits) {
    Statement made;
    const bool wants_volume = form == Form::liquid || (form == Form::viscous && market != Market::us);
    made.volume = wants_volume && volume.has_value();
    if (wants_volume && !volume) made.doubt = Doubt::volume_unknown;
    const Fine amount = made.volume ? fine_of(volume->grid, Unit::ml) : fine_of(mass.grid, Unit::g);
    const Figure figure = metric(amount, made.volume, digits);
    made.text = print(figure);
    switch (market) {
        case Market::us:
            made.source = "cfr_701_13";
            break;
        case Market::ca:
            made.source = "crc_417";
            break;
        default:
            made.source = "eu_1223_19";
            made.required = amount >= fine_of(5 * kOne, made.volume ? Unit::ml : Unit::g);
    }
    if (market == Market::us) {
        const std::string said_in_ounces = customary(amount, made.volume);
        const bool closed = said_in_ounces.back() == ')';
        made.text = said_in_ounces + (closed ? " " + made.text : " (" + made.text + ")");
    }
    if (figure.grid == 0) made.doubt = Doubt::zero;
    return made;
}

}  // namespace net_contents
