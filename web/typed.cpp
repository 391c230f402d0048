// See typed.h. Reading is decimal's and quantity's; here only which of them a field asks first.
#include "typed.h"

#include "engine/batch.h"
#include "engine/decimal.h"
#include "engine/quantity.h"

namespace typed {
namespace {

using result::Code;

result::Result<std::int64_t> within(result::Result<std::int64_t> number, std::int64_t low,
                                    std::int64_t high) {
    if (!number) return number;
    if (*number < low) return {Code::number_negative, "", decimal::print(*number)};
    if (*number > high) return {Code::number_too_large, "", decimal::print(*number)};
    return number;
}

}  // namespace

std::string words(std::string_view text) {
    constexpr std::string_view kSpace = " \t\r\n";
    const std::size_t start = text.find_first_not_of(kSpace);
    if (start == std::string_view::npos) return "";
    return std::string(text.substr(start, text.find_last_not_of(kSpace) + 1 - start));
}

result::Result<std::int64_t> percent(std::string_view text) {
    if (const auto plain = quantity::read_percent(text)) return plain->grid;
    return within(decimal::calculate(text), 0, quantity::kHundred.grid);
}

result::Result<std::int64_t> loss(std::string_view text) {
    auto lost = percent(text);
    if (lost && *lost == quantity::kHundred.grid) return {Code::loss_invalid, "", decimal::print(*lost)};
    return lost;
}

result::Result<std::int64_t> mass_or_none(std::string_view text) {
    const auto plain = quantity::read_mass(text);
    if (plain) return within(plain->grid, 0, batch::kLargest.grid);
    if (plain.error().code == Code::unit_unknown)
        return plain.error();  // says more than that it is no number
    return within(decimal::calculate(text), 0, batch::kLargest.grid);
}

result::Result<std::int64_t> mass(std::string_view text) {
    auto grams = mass_or_none(text);
    if (grams && *grams == 0) return {Code::batch_zero, "", "0"};
    return grams;
}

result::Result<std::int64_t> volume(std::string_view text) {
    const auto plain = quantity::read_volume(text);
    if (!plain && plain.error().code == Code::unit_unknown) return plain.error();
    auto ml = within(plain ? result::Result<std::int64_t>(plain->grid) : decimal::calculate(text), 0,
                     batch::kLargest.grid);
    if (ml && *ml == 0) return {Code::batch_zero, "", "0"};
    return ml;
}

result::Result<std::int64_t> amount(std::string_view text) {
    return within(decimal::calculate(text), 0, decimal::kLargest);
}

result::Result<std::int64_t> whole(std::string_view text) {
    const auto number = within(decimal::calculate(text), 0, 10000 * decimal::kOne);
    if (number && *number % decimal::kOne != 0) return {Code::number_too_fine, "", decimal::print(*number)};
    return number;
}

result::Result<std::int64_t> density(std::string_view text) {
    auto number = within(decimal::calculate(text), 0, 30 * decimal::kOne);
    if (number && *number == 0) return {Code::density_invalid, "", "0"};
    return number;
}

result::Result<std::int64_t> of_fat(std::string_view text) {
    return within(decimal::calculate(text), 0, 1000 * decimal::kOne);
}

result::Result<std::int64_t> millimetres(std::string_view text) {
    auto number = within(decimal::calculate(text), 0, 1000 * decimal::kOne);
    if (number && *number == 0) return {Code::batch_zero, "", "0"};
    return number;
}

result::Result<std::int64_t> celsius(std::string_view text) {
    return within(decimal::calculate(text), -50 * decimal::kOne, 300 * decimal::kOne);
}

result::Result<std::int64_t> ph(std::string_view text) {
    return within(decimal::calculate(text), 0, 14 * decimal::kOne);
}

}  // namespace typed
