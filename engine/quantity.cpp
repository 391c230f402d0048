// Reading quantities with their unit, and the conversions between them.
// The US customary factors are those of 16 CFR 500.19(a), which allows no others; they are not exact inverses
// of each other. A number is read to the grid before its unit is applied, so "0.00001 kg" is refused as too
// fine.
#include "quantity.h"

#include <cassert>

namespace quantity {
namespace {

using result::Code;
using result::Error;

struct Unit {
    std::string_view name;     // in small letters, with single spaces
    std::int64_t top, bottom;  // how many of the base unit, as a fraction
};

constexpr Unit kMassUnits[] = {
    {"", 1, 1},
    {"g", 1, 1},
    {"gram", 1, 1},
    {"grams", 1, 1},
    {"gramme", 1, 1},
    {"grammes", 1, 1},
    {"kg", 1000, 1},
    {"kilo", 1000, 1},
    {"kilos", 1000, 1},
    {"mg", 1, 1000},
    {"oz", 283495, 10000},
    {"ounce", 283495, 10000},
    {"ounces", 283495, 10000},
    {"lb", 453592, 1000},
    {"lbs", 453592, 1000},
    {"pound", 453592, 1000},
    {"pounds", 453592, 1000},
};
constexpr Unit kVolumeUnits[] = {
    {"", 1, 1},
    {"ml", 1, 1},
    {"millilitre", 1, 1},
    {"millilitres", 1, 1},
    {"milliliter", 1, 1},
    {"milliliters", 1, 1},
    {"cl", 10, 1},
    {"dl", 100, 1},
    {"l", 1000, 1},
    {"litre", 1000, 1},
    {"litres", 1000, 1},
    {"liter", 1000, 1},
    {"liters", 1000, 1},
    {"fl oz", 295735, 10000},
    {"fl. oz", 295735, 10000},
    {"fl. oz.", 295735, 10000},
    {"floz", 295735, 10000},
};

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// Small letters, no space at the ends, one space for any run of spaces and no-break spaces.
std::string plain(std::string_view text) {
    std::string out;
    bool gap = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        char c = text[i];
        if (c == '\xC2' && i + 1 < text.size() && text[i + 1] == '\xA0') {
            i += 1;
            c = ' ';
        }
        if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
            gap = !out.empty();
            continue;
        }
        if (gap) out.push_back(' ');
        gap = false;
        out.push_back(c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c);
    }
    return out;
}

std::size_t characters(std::string_view text) {
    std::size_t count = 0;
    for (const char c : text)
        if ((static_cast<unsigned char>(c) & 0xC0) != 0x80) count += 1;
    return count;
}

template <std::size_t kCount>
result::Result<std::int64_t> read_with(std::string_view text, const Unit (&units)[kCount]) {
    std::size_t split = 0;
    while (split < text.size() && !is_letter(text[split]))
        split += 1;
    const std::string written = plain(text.substr(split));
    auto number = decimal::read(text.substr(0, split));
    if (!number) {
        // Letters with no number before them: the whole text is no number, rather than an unknown unit.
        if (number.error().code == Code::number_empty) return decimal::read(text).error();
        return number;
    }
    for (const Unit& unit : units) {
        if (unit.name != written) continue;
        if (*number < 0) return Error{Code::number_negative, "character 1", plain(text)};
        const std::int64_t grid = decimal::scale_nearest(*number, unit.top, unit.bottom);
        if (grid > decimal::kLargest) return Error{Code::number_too_large, "character 1", plain(text)};
        return grid;
    }
    return Error{Code::unit_unknown, "character " + std::to_string(characters(text.substr(0, split)) + 1),
                 written};
}

}  // namespace

result::Result<Mass> read_mass(std::string_view text) {
    const auto grid = read_with(text, kMassUnits);
    if (!grid) return grid.error();
    return Mass{*grid};
}

result::Result<Volume> read_volume(std::string_view text) {
    const auto grid = read_with(text, kVolumeUnits);
    if (!grid) return grid.error();
    return Volume{*grid};
}

result::Result<Percent> read_percent(std::string_view text) {
    std::string_view number = text;
    while (!number.empty() && (number.back() == ' ' || number.back() == '\n'))
        number.remove_suffix(1);
    if (!number.empty() && number.back() == '%') number.remove_suffix(1);
    const auto grid = decimal::read(number);
    if (!grid) return grid.error();
    const std::string written = decimal::print(*grid);
    if (*grid < 0) return Error{Code::number_negative, "character 1", written};
    if (*grid > kHundred.grid) return Error{Code::number_too_large, "character 1", written};
    return Percent{*grid};
}

Mass mass_of(Volume volume, Density density) {
    return {decimal::scale_nearest(volume.grid, density.grid, decimal::kOne)};
}

Volume volume_of(Mass mass, Density density) {
    assert(density.grid > 0);
    return {decimal::scale_nearest(mass.grid, decimal::kOne, density.grid)};
}

Mass share_of(Mass whole, Percent part) {
    return {decimal::scale_nearest(whole.grid, part.grid, kHundred.grid)};
}

std::int64_t ounces_grid(Mass mass) {
    return decimal::scale_nearest(mass.grid, 352740, 10'000'000);
}

std::int64_t fluid_ounces_grid(Volume volume) {
    return decimal::scale_nearest(volume.grid, 338140, 10'000'000);
}

}  // namespace quantity
