#include "money.h"

#include <array>

#include "decimal.h"

namespace money {
namespace {

// Three letters each, by the digits they have.
constexpr std::array<std::pair<int, std::string_view>, 4> kCodes{
    {{2,
      "AEDAFNALLAMDANGAOAARSAUDAWGAZNBAMBBDBDTBGNBMDBNDBOBBRLBSDBTNBWPBYNBZDCADCDFCHFCNYCOPCRCCUCCUPCVECZK"
      "DKKDOPDZDEGPERNETBEURFJDFKPGBPGELGHSGIPGMDGTQGYDHKDHNLHTGHUFIDRILSINRIRRJMDKESKGSKHRKPWKYDKZTLAKLBP"
      "LKRLRDLSLMADMDLMGAMKDMMKMNTMOPMRUMURMVRMWKMXNMYRMZNNADNGNNIONOKNPRNZDPABPENPGKPHPPKRPLNQARRONRSDRUB"
      "SARSBDSCRSDGSEKSGDSHPSLESOSSRDSSPSTNSVCSYPSZLTHBTJSTMTTOPTRYTTDTWDTZSUAHUSDUYUUZSVEDVESWSTXCDYERZAR"
      "ZMWZWG"},
     {0, "BIFCLPDJFGNFISKJPYKMFKRWPYGRWFUGXVNDVUVXAFXOFXPF"},
     {3, "BHDIQDJODKWDLYDOMRTND"},
     {4, "CLFUYW"}}};

constexpr std::int64_t step_of(int places) {  // of one minor unit on the grid
    std::int64_t step = 1;
    for (int i = places; i < decimal::kPlaces; ++i)
        step *= 10;
    return step;
}

}  // namespace

std::optional<int> places(std::string_view currency) {
    if (currency.size() != 3) return std::nullopt;
    for (const auto& [digits, codes] : kCodes)
        for (std::size_t at = 0; at < codes.size(); at += 3)
            if (codes.substr(at, 3) == currency) return digits;
    return std::nullopt;
}

result::Result<Amount> amount_of(std::int64_t grid, std::string_view currency) {
    using result::Code;
    const std::optional<int> digits = places(currency);
    if (!digits) return {Code::field_unknown_value, "", std::string(currency.substr(0, 80))};
    const std::int64_t step = step_of(*digits);
    if (grid < 0) return {Code::number_negative, "", decimal::print(grid)};
    if (grid % step != 0) return {Code::number_too_fine, "", decimal::print(grid)};
    if (grid / step > kMostMinor) return {Code::number_too_large, "", decimal::print(grid)};
    return Amount{grid / step};
}

std::int64_t grid_of(Amount amount, std::string_view currency) {
    return amount.minor * step_of(places(currency).value_or(2));
}

}  // namespace money
