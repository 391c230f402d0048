#include "storing.h"

#include <algorithm>

#include "date.h"
#include "sorting.h"

namespace storing {
namespace {

using blend::Kind;
using blend::Part;
using quantity::Percent;

struct Day {
    std::int64_t months, day;  // months from year 0
};
Day read(std::string_view text) {  // which is a day of the calendar
    const auto number = [&](std::size_t from, std::size_t count) {
        std::int64_t value = 0;
        for (std::size_t i = from; i < from + count; ++i)
            value = value * 10 + (text[i] - '0');
        return value;
    };
    return {number(0, 4) * 12 + number(5, 2) - 1, number(8, 2)};
}

std::string padded(std::int64_t value, std::size_t digits) {
    const std::string text = std::to_string(value);
    return std::string(text.size() < digits ? digits - text.size() : 0, '0') + text;
}
std::string day_text(std::int64_t months, std::int64_t day) {
    return padded(months / 12, 4) + "-" + padded(months % 12 + 1, 2) + "-" + padded(day, 2);
}
bool is_last_of_month(const Day& day) {
    return !date::is_day(day_text(day.months, day.day + 1));
}

// The day that counts for one lot; nothing of it where none is said.
struct Counts {
    std::string date;
    By by = By::no_date;
    bool opened = false;
};
Counts counts(const lot::Lot& lot) {
    Counts made{lot.best_before, lot.best_before.empty() ? By::no_date : By::best_before, false};
    if (lot.opened.empty()) return made;
    const std::string from_opening =
        lot.opened_months ? day_after_months(lot.opened, *lot.opened_months) : std::string();
    made.opened = from_opening.empty();
    if (!from_opening.empty() && (made.date.empty() || from_opening < made.date)) {
        made.date = from_opening;
        made.by = By::opened;
    }
    return made;
}

Material material_of(const Part& part, const Asked& asked) {
    Material made;
    made.id = part.id;
    made.name = part.name;
    made.percent = part.percent;
    if (part.known && part.known->shelf_life_months) {
        made.sealed_months = part.known->shelf_life_months->value;
        made.standing = part.known->shelf_life_months->standing;
    }
    for (const lot::Lot& lot : asked.lots) {
        const bool gone = !lot.used_up.empty() || (lot.left && lot.left->grid == 0);
        if (part.id.empty() || lot.ingredient != part.id || gone) continue;
        const Counts one = counts(lot);
        if (made.by != By::no_lot && (one.date.empty() || (!made.date.empty() && made.date <= one.date)))
            continue;
        made.by = one.by;
        made.lot = lot.number;
        made.date = one.date;
        made.opened = one.opened;
    }
    if (!made.date.empty()) made.months_left = months_between(asked.made_on, made.date);
    return made;
}

constexpr Percent kWorthNoting = quantity::percent(10), kSoftens = quantity::percent(30);
constexpr std::int64_t kWarmRoom = 35 * decimal::kOne;  // °C: what melts below it gives way in a warm room

void notes(const Asked& asked, bool water, bool wet_hands, Storing& made) {
    const auto note = [&](Note which, std::string name = "", std::optional<catalogue::Range> range = {}) {
        made.notes.push_back({which, std::move(name), range});
    };
    bool fatty = false, volatile_oil = false;
    const Part *softens = nullptr, *grains = nullptr, *stranger = nullptr;
    Percent soft;
    for (const Part& part : asked.parts) {
        const Kind kind = blend::kind_of(part.known);
        fatty = fatty || (blend::is_fatty(kind) && kind != Kind::unknown);
        volatile_oil = volatile_oil || kind == Kind::volatile_oil;
        if (kind == Kind::unknown && !stranger) stranger = &part;
        if (part.known == nullptr) continue;
        if ((kind == Kind::soft || kind == Kind::hard) && part.known->melting_c &&
            part.known->melting_c->value.max <= kWarmRoom) {
            soft = soft + part.percent;
            if (!softens || part.percent > softens->percent) softens = &part;
        }
        if (part.known->role == "butter" && part.percent >= kWorthNoting &&
            (!grains || part.percent > grains->percent))
            grains = &part;
    }
    if (fatty) note(Note::cool_dark);
    note(water || wet_hands ? Note::use_spatula : Note::keep_dry);
    if (softens && soft >= kSoftens) note(Note::softens, softens->name, softens->known->melting_c->value);
    if (grains) note(Note::grains, grains->name);
    if (volatile_oil) note(Note::scent_fades);
    if (asked.infused) note(Note::infusion);
    if (stranger) note(Note::stranger, stranger->name);
    note(Note::trial);
}

}  // namespace

Storing of(const Asked& asked) {
    Storing made;
    bool water = false;
    for (const Part& part : asked.parts) {
        water = water || blend::kind_of(part.known) == Kind::water;
        made.materials.push_back(material_of(part, asked));
        const bool dated = !made.materials.back().date.empty();
        blend::ask(made.dates, part, dated ? std::optional(source::Standing::supplier) : std::nullopt);
    }
    sorting::stable(made.materials, [](const Material& a, const Material& b) {
        if (a.date.empty() || b.date.empty()) return !a.date.empty() && b.date.empty();
        return a.date < b.date;
    });
    made.oxidisability = blend::oxidisability_of(asked.parts);
    const bool wet_hands = asked.product != nullptr && asked.product->water_gets_in.has_value();
    made.after_opening = water || wet_hands ? PeriodAfterOpening{3, 6, water ? "water" : "wet_hands"}
                                            : PeriodAfterOpening{6, 12, "dry"};
    notes(asked, water, wet_hands, made);
    const bool dated = !made.materials.empty() && !made.materials.front().date.empty();
    if (water) {
        made.answer = Answer::only_a_test;
    } else if (dated && date::is_day(asked.made_on)) {
        made.best_before = day_after_months(made.materials.front().date, -asked.margin_months);
        made.months = months_between(asked.made_on, made.best_before);
        made.answer = made.months && *made.months >= 0 ? Answer::dated : Answer::over;
    }
    durability::Keeping keeping = asked.said;
    if (made.answer == Answer::dated) keeping.months = made.months;
    if (made.answer == Answer::over) keeping.months = 0;
    made.mark = durability::of(asked.market, keeping, asked.made_on);
    return made;
}

std::string say(const words::Table& table, const NoteAbout& note) {
    return words::say(table, "storing." + std::string(note_name(note.note)),
                      {{"name", note.name},
                       {"low", words::figure(table, note.range_c ? note.range_c->min : 0)},
                       {"high", words::figure(table, note.range_c ? note.range_c->max : 0)}});
}

std::string_view by_name(By by) {
    constexpr std::string_view kNames[] = {"best_before", "opened", "no_date", "no_lot"};
    return kNames[static_cast<int>(by)];
}

std::string_view answer_name(Answer answer) {
    constexpr std::string_view kNames[] = {"dated", "over", "not_known", "only_a_test"};
    return kNames[static_cast<int>(answer)];
}

std::string_view note_name(Note note) {
    constexpr std::string_view kNames[] = {"cool_dark", "keep_dry",    "softens",  "grains", "scent_fades",
                                           "infusion",  "use_spatula", "stranger", "trial"};
    return kNames[static_cast<int>(note)];
}

std::string day_after_months(std::string_view day, std::int64_t months) {
    if (!date::is_day(day)) return "";
    const Day from = read(day);
    const std::int64_t to = from.months + months;
    if (to < 0 || to >= 120000) return "";
    std::int64_t last = from.day;
    while (!date::is_day(day_text(to, last)))
        --last;
    return day_text(to, last);
}

std::optional<std::int64_t> months_between(std::string_view from, std::string_view to) {
    if (!date::is_day(from) || !date::is_day(to)) return std::nullopt;
    const Day one = read(from), other = read(to);
    std::int64_t months = other.months - one.months;
    // The last day of a month ends a month that began on a later day; a day before it was made is over.
    if (other.day < one.day && !is_last_of_month(other)) --months;
    if (to < from && months >= 0) months = -1;
    return months;
}

}  // namespace storing
