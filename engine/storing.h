// Will it keep: a best before for what holds no water, from the dates of the very raw materials on the shelf,
// the shortest first; what drives oxidation; how it is to be stored. Months are never worked out from fatty
// acids, vitamin E, warmth or time in an oven. For what holds water only a test can tell.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "blend.h"
#include "durability.h"
#include "lot.h"
#include "market.h"
#include "words.h"

namespace storing {

enum class By {
    best_before,  // printed on the lot
    opened,       // the lot's opened day and what its supplier says it keeps from then
    no_date,      // there is a lot, without a day
    no_lot,       // there is none on the shelf
};
struct Material {
    std::string id, name;
    quantity::Percent percent;
    By by = By::no_lot;
    std::string lot, date;                    // the number and day that count: "" none
    std::optional<std::int64_t> months_left;  // whole ones from the day it is made; below 0: over
    bool opened = false;  // open, and how long it keeps from then is not known: the printed day is for closed
    std::optional<catalogue::Range> sealed_months;  // what its kind usually keeps, closed and from new
    source::Standing standing = source::Standing::document;  // of that
};

enum class Answer { dated, over, not_known, only_a_test };  // over: a raw material is past its day
struct PeriodAfterOpening {  // what is usual; judged by resistance, pack, time of use, place and people
    std::int64_t min_months = 0, max_months = 0;
    std::string_view why;  // "water", "wet_hands" or "dry"
    source::Standing standing = source::Standing::common_practice;
};
enum class Note { cool_dark, keep_dry, softens, grains, scent_fades, infusion, use_spatula, stranger, trial };
struct NoteAbout {
    Note note = Note::cool_dark;
    std::string name;                         // of what it is about
    std::optional<catalogue::Range> range_c;  // where it melts
};

struct Storing {
    Answer answer = Answer::not_known;
    std::vector<Material> materials;     // the shortest first; those without a day at the end
    blend::Coverage dates;               // of how much of the weight a day is known
    std::string best_before;             // the shortest day, less the margin; "" none
    std::size_t governs = 0;             // which of the materials it is
    std::optional<std::int64_t> months;  // whole ones from the day it is made
    durability::Durability mark;         // which mark a label carries by the rule of 30 months
    PeriodAfterOpening after_opening;
    blend::Oxidisability oxidisability;
    std::vector<NoteAbout> notes;
};

struct Asked {
    const std::vector<blend::Part>& parts;
    const catalogue::Product* product = nullptr;  // its kind; null: not known
    const std::vector<lot::Lot>& lots;            // on the shelf; those used up do not count
    std::string_view made_on;                     // YYYY-MM-DD
    std::int64_t margin_months = 0;               // kept in hand
    market::Market market = market::Market::eu;
    durability::Keeping said;  // of which the months after opening count
    bool infused = false;      // holds an infusion of plants
};
Storing of(const Asked& asked);

// What is to be done, in a sentence.
std::string say(const words::Table& table, const NoteAbout& note);

std::string_view by_name(By by);  // as files and words have them
std::string_view answer_name(Answer answer);
std::string_view note_name(Note note);

std::string day_after_months(std::string_view day,
                             std::int64_t months);  // the same day of the month, or its last
std::optional<std::int64_t> months_between(std::string_view from, std::string_view to);

}  // namespace storing
