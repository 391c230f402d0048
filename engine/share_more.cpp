// An open-ended table as an array [key, value, key, value…], keys rising, a value that is the default left
// out. A key that is not known here was written by a later program; since a recipe comes back whole or not at
// all, such a link is called newer.
//   1 made part       [kind, 1 + yield or 0 for 100 %, id]
//   2 strained lines  [line…], rising, counted phase by phase
//   3 own made parts  [own, kind, 1 + yield or 0, [infused with…], …], rising by own
//   4 fills           [container, 1 + test fill or 0, 1 + water or 0, …] g, rising by container
//   5 one for a person [id, then 1 + figure or 0: fill g, fill %, test fill g, water g]
//   6 whom it is for and what was measured [1 + age in months or 0, 1 + pH or 0]
//   7 the label       as share_label.h has it
// To add one: a number that was never used, a line here, a row in kFields.
#include "share_more.h"

#include <array>

#include "share_figure.h"
#include "share_label.h"

namespace share_more {
namespace {

using cbor::Reader;
using cbor::Writer;
using quantity::Percent;
using workspace::Recipe;

constexpr std::size_t kMostNameBytes = 80;
constexpr std::uint64_t kMostKeys = 100;
constexpr std::uint64_t kMostPlants = 100, kMostOwn = 100;

std::uint64_t yield_figure(Percent yield) {
    return yield == quantity::kHundred ? 0 : share_figure::packed(yield.grid) + 1;
}

// Kind and yield as they stand one after the other; false when no made part could have them.
bool read_kind(Reader& reader, catalogue::MadeAs& as, Percent& yield) {
    const std::uint64_t kind = reader.integer(), figure = reader.integer();
    if (kind > static_cast<std::uint64_t>(catalogue::MadeAs::pre_dilution)) return false;
    as = static_cast<catalogue::MadeAs>(kind);
    if (figure == 0) return true;
    const auto grid = share_figure::unpacked(figure - 1);
    yield.grid = grid.value_or(-1);
    return yield > Percent{0} && yield < quantity::kHundred;
}

// ---- 1 made part ----

bool has_made(const Recipe& recipe) {
    return recipe.made.has_value();
}
void write_made(Writer& writer, const Recipe& recipe) {
    writer.array(3);
    writer.integer(static_cast<std::uint64_t>(recipe.made->as));
    writer.integer(yield_figure(recipe.made->yield));
    writer.text(recipe.made->id);
}
bool read_made(Reader& reader, Recipe& recipe) {
    if (reader.array(3) != 3) return false;
    recipe.made.emplace();
    if (!read_kind(reader, recipe.made->as, recipe.made->yield)) return false;
    recipe.made->id = reader.text(kMostNameBytes);
    return true;
}

// ---- 2 strained lines ----
// Lines are counted as version 1 holds them, phase by phase, which is also the order of a checked recipe.

bool has_strained(const Recipe& recipe) {
    for (const formula::Line& line : recipe.formula.lines)
        if (line.strained) return true;
    return false;
}
void write_strained(Writer& writer, const Recipe& recipe) {
    const auto& lines = recipe.formula.lines;
    std::uint64_t count = 0;
    for (const formula::Line& line : lines)
        count += line.strained ? 1 : 0;
    writer.array(count);
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (lines[i].strained) writer.integer(i);
}
bool read_strained(Reader& reader, Recipe& recipe) {
    const std::uint64_t count = reader.array(formula::kMostLines);
    for (std::uint64_t i = 0; i < count; ++i) {
        const std::uint64_t line = reader.integer();
        if (line >= recipe.formula.lines.size()) return false;
        recipe.formula.lines[static_cast<std::size_t>(line)].strained = true;
    }
    return true;
}

// ---- 3 own made parts ----

bool has_own_made(const Recipe& recipe) {
    for (const catalogue::Ingredient& own : recipe.own)
        if (own.made) return true;
    return false;
}
void write_own_made(Writer& writer, const Recipe& recipe) {
    std::uint64_t count = 0;
    for (const catalogue::Ingredient& own : recipe.own)
        count += own.made ? 1 : 0;
    writer.array(4 * count);
    for (std::size_t i = 0; i < recipe.own.size(); ++i) {
        if (!recipe.own[i].made) continue;
        const catalogue::Made& made = *recipe.own[i].made;
        writer.integer(i);
        writer.integer(static_cast<std::uint64_t>(made.as));
        writer.integer(yield_figure(made.yield));
        writer.array(made.infused_with.size());
        for (const std::string& plant : made.infused_with)
            writer.text(plant);
    }
}
bool read_own_made(Reader& reader, Recipe& recipe) {
    const std::uint64_t items = reader.array(4 * kMostOwn);
    if (items % 4 != 0) return false;
    for (std::uint64_t at = 0; at < items && !reader.failed(); at += 4) {
        const std::uint64_t own = reader.integer();
        if (own >= recipe.own.size()) return false;
        catalogue::Made made;
        if (!read_kind(reader, made.as, made.yield)) return false;
        const std::uint64_t plants = reader.array(kMostPlants);
        for (std::uint64_t i = 0; i < plants && !reader.failed(); ++i)
            made.infused_with.push_back(reader.text(kMostNameBytes));
        recipe.own[static_cast<std::size_t>(own)].made = std::move(made);
    }
    return true;
}

// ---- 4 fills ----

template <class Figure>
std::uint64_t optional_figure(const std::optional<Figure>& figure) {
    return figure ? share_figure::packed(figure->grid) + 1 : 0;
}
// False when no figure could be packed so.
template <class Figure>
bool read_optional(Reader& reader, std::optional<Figure>& figure) {
    const std::uint64_t packed = reader.integer();
    if (packed == 0) return true;
    const auto grid = share_figure::unpacked(packed - 1);
    if (grid) figure = Figure{*grid};
    return grid.has_value();
}

bool fills_more(const batch::Containers& one) {
    return one.test_fill_g.has_value() || one.water_g.has_value();
}
bool has_fills(const Recipe& recipe) {
    for (const batch::Containers& one : recipe.batch.containers)
        if (fills_more(one)) return true;
    return false;
}
void write_fills(Writer& writer, const Recipe& recipe) {
    const auto& all = recipe.batch.containers;
    std::uint64_t count = 0;
    for (const batch::Containers& one : all)
        count += fills_more(one) ? 1 : 0;
    writer.array(3 * count);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!fills_more(all[i])) continue;
        writer.integer(i);
        writer.integer(optional_figure(all[i].test_fill_g));
        writer.integer(optional_figure(all[i].water_g));
    }
}
bool read_fills(Reader& reader, Recipe& recipe) {
    auto& all = recipe.batch.containers;
    const std::uint64_t items = reader.array(3 * kMostOwn);
    if (items % 3 != 0) return false;
    for (std::uint64_t at = 0; at < items && !reader.failed(); at += 3) {
        const std::uint64_t which = reader.integer();
        if (which >= all.size()) return false;
        batch::Containers& one = all[static_cast<std::size_t>(which)];
        if (!read_optional(reader, one.test_fill_g) || !read_optional(reader, one.water_g)) return false;
    }
    return true;
}

// ---- 5 one for a person ----

bool has_unit(const Recipe& recipe) {
    return recipe.batch.unit.has_value();
}
void write_unit(Writer& writer, const Recipe& recipe) {
    const batch::Containers& unit = *recipe.batch.unit;
    writer.array(5);
    writer.text(unit.id);
    writer.integer(optional_figure(unit.fill_g));
    writer.integer(optional_figure(unit.fill_percent));
    writer.integer(optional_figure(unit.test_fill_g));
    writer.integer(optional_figure(unit.water_g));
}
bool read_unit(Reader& reader, Recipe& recipe) {
    if (reader.array(5) != 5) return false;
    batch::Containers& unit = recipe.batch.unit.emplace();
    unit.id = reader.text(kMostNameBytes);
    return read_optional(reader, unit.fill_g) && read_optional(reader, unit.fill_percent) &&
           read_optional(reader, unit.test_fill_g) && read_optional(reader, unit.water_g);
}

// ---- 6 whom it is for and what was measured ----

bool has_measured(const Recipe& recipe) {
    return recipe.age_months.has_value() || recipe.measured_ph.has_value();
}
void write_measured(Writer& writer, const Recipe& recipe) {
    writer.array(2);
    writer.integer(recipe.age_months ? static_cast<std::uint64_t>(*recipe.age_months) + 1 : 0);
    writer.integer(recipe.measured_ph ? share_figure::packed(*recipe.measured_ph) + 1 : 0);
}
bool read_measured(Reader& reader, Recipe& recipe) {
    if (reader.array(2) != 2) return false;
    const std::uint64_t age = reader.integer(), ph = reader.integer();
    if (age > static_cast<std::uint64_t>(workspace::kMostAgeMonths) + 1) return false;
    if (age > 0) recipe.age_months = static_cast<std::int64_t>(age - 1);
    if (ph > 0) recipe.measured_ph = share_figure::unpacked(ph - 1);
    return ph == 0 || recipe.measured_ph.has_value();
}

// ---- 7 the label ----

bool has_label(const Recipe& recipe) {
    return recipe.label != label::Said{};
}
void write_label(Writer& writer, const Recipe& recipe) {
    share_label::write(writer, recipe.label);
}
bool read_label(Reader& reader, Recipe& recipe) {
    return share_label::read(reader, recipe.label);
}

struct Field {
    std::uint64_t key;
    const char* place;
    bool (*has)(const Recipe&);
    void (*write)(Writer&, const Recipe&);
    bool (*read)(Reader&, Recipe&);
};
constexpr std::array<Field, 7> kFields{{
    {1, "made", has_made, write_made, read_made},
    {2, "lines", has_strained, write_strained, read_strained},
    {3, "ingredients", has_own_made, write_own_made, read_own_made},
    {4, "batch.containers", has_fills, write_fills, read_fills},
    {5, "batch.unit", has_unit, write_unit, read_unit},
    {6, "measured_ph", has_measured, write_measured, read_measured},
    {7, "label", has_label, write_label, read_label},
}};

}  // namespace

bool holds_more(const Recipe& recipe) {
    for (const Field& field : kFields)
        if (field.has(recipe)) return true;
    return false;
}

void encode(Writer& writer, const Recipe& recipe) {
    std::uint64_t count = 0;
    for (const Field& field : kFields)
        count += field.has(recipe) ? 1 : 0;
    writer.array(2 * count);
    for (const Field& field : kFields) {
        if (!field.has(recipe)) continue;
        writer.integer(field.key);
        field.write(writer, recipe);
    }
}

std::optional<result::Error> decode(Reader& reader, Recipe& recipe) {
    const std::uint64_t pairs = reader.array(2 * kMostKeys) / 2;
    for (std::uint64_t i = 0; i < pairs && !reader.failed(); ++i) {
        const std::uint64_t key = reader.integer();
        const Field* known = nullptr;
        for (const Field& field : kFields)
            if (field.key == key) known = &field;
        if (reader.failed()) break;
        if (known == nullptr) return result::Error{result::Code::link_newer, "", "2." + std::to_string(key)};
        if (!known->read(reader, recipe) && !reader.failed())
            return result::Error{result::Code::link_content, known->place, ""};
    }
    return std::nullopt;
}

}  // namespace share_more
