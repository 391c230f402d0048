// Names of findings and their sentences. The sentence is data (presets/words); here its figures are filled
// in. Figures are written in full on the grid; how many places a screen shows beside it is the screen's
// affair.
#include "finding.h"

namespace finding {

std::string_view code_name(Code code) {
    switch (code) {
        case Code::sum_not_hundred:
            return "sum_not_hundred";
        case Code::rest_negative:
            return "rest_negative";
        case Code::formula_empty:
            return "formula_empty";
        case Code::line_empty:
            return "line_empty";
        case Code::line_twice:
            return "line_twice";
        case Code::ingredient_unknown:
            return "ingredient_unknown";
        case Code::usual_range_left:
            return "usual_range_left";
        case Code::line_rounds_to_zero:
            return "line_rounds_to_zero";
        case Code::line_error_large:
            return "line_error_large";
        case Code::batch_rounded:
            return "batch_rounded";
        case Code::density_partly_known:
            return "density_partly_known";
        case Code::line_too_heavy:
            return "line_too_heavy";
        case Code::warm_over_brim:
            return "warm_over_brim";
        case Code::pour_too_hot:
            return "pour_too_hot";
        case Code::stock_unknown:
            return "stock_unknown";
        case Code::stock_not_needed:
            return "stock_not_needed";
        case Code::water_without_preservative:
            return "water_without_preservative";
        case Code::water_suspected:
            return "water_suspected";
        case Code::water_gets_in:
            return "water_gets_in";
        case Code::preservative_not_vouched:
            return "preservative_not_vouched";
        case Code::preservative_over_limit:
            return "preservative_over_limit";
        case Code::preservative_below_working:
            return "preservative_below_working";
        case Code::preservative_at_wrong_ph:
            return "preservative_at_wrong_ph";
        case Code::water_boils_off:
            return "water_boils_off";
        case Code::powder_feeds_germs:
            return "powder_feeds_germs";
        case Code::powder_dusts:
            return "powder_dusts";
        case Code::water_without_emulsifier:
            return "water_without_emulsifier";
        case Code::antioxidant_missing:
            return "antioxidant_missing";
        case Code::antioxidant_too_much:
            return "antioxidant_too_much";
        case Code::heated_too_hot:
            return "heated_too_hot";
        case Code::hold_below_melting:
            return "hold_below_melting";
        case Code::near_flash_point:
            return "near_flash_point";
        case Code::origin_nut:
            return "origin_nut";
        case Code::origin_soya:
            return "origin_soya";
        case Code::origin_gluten:
            return "origin_gluten";
        case Code::origin_sesame:
            return "origin_sesame";
        case Code::origin_bee:
            return "origin_bee";
        case Code::origin_wool:
            return "origin_wool";
        case Code::origin_depends:
            return "origin_depends";
        case Code::claims_sun_protection:
            return "claims_sun_protection";
        case Code::claims_medicine:
            return "claims_medicine";
        case Code::uv_filter_without_claim:
            return "uv_filter_without_claim";
        case Code::colour_not_checked_here:
            return "colour_not_checked_here";
        case Code::certificate_missing:
            return "certificate_missing";
        case Code::certificate_forbids:
            return "certificate_forbids";
        case Code::certificate_over:
            return "certificate_over";
        case Code::certificate_peroxide:
            return "certificate_peroxide";
        case Code::share_usual_left:
            return "share_usual_left";
        case Code::constituent_over:
            return "constituent_over";
        case Code::constituent_may_be_over:
            return "constituent_may_be_over";
        case Code::constituent_over_later:
            return "constituent_over_later";
        case Code::constituent_not_for_age:
            return "constituent_not_for_age";
        case Code::ingredient_over:
            return "ingredient_over";
        case Code::ingredient_prohibited:
            return "ingredient_prohibited";
        case Code::oil_impure:
            return "oil_impure";
        case Code::phototoxic_over:
            return "phototoxic_over";
        case Code::warning_due:
            return "warning_due";
        case Code::oils_over_for_use:
            return "oils_over_for_use";
        case Code::oils_over_for_age:
            return "oils_over_for_age";
        case Code::oils_above_usual_for_age:
            return "oils_above_usual_for_age";
        case Code::oils_not_for_baby:
            return "oils_not_for_baby";
        case Code::oils_over_for_person:
            return "oils_over_for_person";
        case Code::oil_not_for_child:
            return "oil_not_for_child";
        case Code::oil_with_care_for_child:
            return "oil_with_care_for_child";
        case Code::oil_not_in_pregnancy:
            return "oil_not_in_pregnancy";
        case Code::allergens_to_name:
            return "allergens_to_name";
    }
    return "";
}

std::string_view severity_name(Severity severity) {
    switch (severity) {
        case Severity::note:
            return "note";
        case Severity::caution:
            return "caution";
        case Severity::stop:
            return "stop";
    }
    return "";
}

namespace {

std::string sentence(const words::Table& table, const std::string& key, const Finding& finding,
                     std::string_view subject_name, std::string_view constituent_name) {
    const auto figure = [&](const std::optional<std::int64_t>& grid,
                            const std::optional<quantity::Trace>& trace) {
        if (trace) return words::trace(table, *trace);
        if (grid && *grid < 0) return "\xE2\x88\x92" + words::figure(table, -*grid);  // a minus, no hyphen
        return grid ? words::figure(table, *grid) : std::string();
    };
    const bool words_found =
        finding.code == Code::claims_sun_protection || finding.code == Code::claims_medicine;
    const std::string material = finding.material.empty() || words_found
                                     ? finding.material
                                     : words::say(table, "material." + finding.material);
    const std::string subject = finding.code == Code::share_usual_left
                                    ? words::say(table, "role." + finding.subject)
                                    : std::string(subject_name);
    return words::say(table, key,
                      {{"subject", subject},
                       {"value", figure(finding.value, finding.trace)},
                       {"limit", figure(finding.limit, finding.trace_limit)},
                       {"unit", finding.unit},
                       {"material", material},
                       {"rule", finding.rule},
                       {"edition", finding.edition},
                       {"constituent", std::string(constituent_name)},
                       {"typical", figure(std::nullopt, finding.trace_typical)}});
}

}  // namespace

std::string say(const words::Table& table, const Finding& finding, std::string_view subject_name,
                std::string_view constituent_name) {
    return sentence(table, "finding." + std::string(code_name(finding.code)), finding, subject_name,
                    constituent_name);
}

std::string advice(const words::Table& table, const Finding& finding, std::string_view subject_name,
                   std::string_view constituent_name) {
    const std::string key = "finding." + std::string(code_name(finding.code)) + ".do";
    if (!words::has(table, key)) return "";
    return sentence(table, key, finding, subject_name, constituent_name);
}

}  // namespace finding
