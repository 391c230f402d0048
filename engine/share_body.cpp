// Layout of version 1. Every array ends with its last item that is not the default; absent means the default.
//   recipe  [title, product, unit, [phase…], batch, [step…], notes, market, date, person, [extra…], [own…]]
//   phase   [head, hold?, below?, id?, (ingredient, share)…]   head: 1 hold, 2 below, 4 id is not the next
//   letter share   0 the rest line, else 1 + percent in units of 10^unit on the grid, the largest unit that
//   fits all lines batch   [amount + 8·others, division, 1 + loss or 0, part…]  others: parts there though
//   not the amount, or not
//           there though the amount; parts in the order grams, containers, people, stock
//   extra   [line, head, …]   head: 1 locked, 2 hold (constituent, figure), 4 id beside a name, 8 name beside
//   a number
// A figure is mantissa·8 + power of ten (0 to 7) on the grid: 250 g, 0.01 g and 5 % take one or two bytes.
// The line numbers of this layout go on for ever; a change of it is a new version byte.
// Layout of version 2: [what version 1 holds, more], more as in share_more; texts in shorthand where that is
// shorter.
#include "share_body.h"

#include <algorithm>
#include <optional>

#include "cbor.h"
#include "decimal.h"
#include "share_figure.h"
#include "share_more.h"
#include "share_own.h"

namespace share_body {
namespace {

using batch::Amount;

constexpr std::size_t kMostIdBytes = 80;
constexpr std::uint64_t kMostItems = 100;  // of a list that has no bound of its own
constexpr std::uint64_t kMostRecipeItems = 12;
constexpr std::uint64_t kLargestUnitPower = 4;                                        // whole percents
constexpr unsigned kHold = 1, kBelow = 2, kOtherId = 4;                               // phase head
constexpr unsigned kLocked = 1, kHeld = 2, kIdBesideName = 4, kNameBesideNumber = 8;  // extra head

// YYYYMMDD for a date in its usual form; 0 for anything else, which then travels as text.
std::uint64_t date_number(std::string_view date) {
    if (date.size() != 10 || date[4] != '-' || date[7] != '-') return 0;
    std::uint64_t out = 0;
    for (std::size_t i = 0; i < date.size(); ++i) {
        if (i == 4 || i == 7) continue;
        if (date[i] < '0' || date[i] > '9') return 0;
        out = out * 10 + static_cast<std::uint64_t>(date[i] - '0');
    }
    return out;
}

std::string date_text(std::uint64_t number) {
    std::string digits = std::to_string(number);
    digits.insert(0, digits.size() < 8 ? 8 - digits.size() : 0, '0');
    return digits.substr(0, 4) + "-" + digits.substr(4, 2) + "-" + digits.substr(6);
}

using share_figure::packed;
using share_figure::power_of_ten;
using share_reference::id_of;
using share_reference::Kind;
using share_reference::number_name;
using share_reference::Reference;
using share_reference::References;

std::string phase_letter(std::size_t index) {
    return std::string(1, static_cast<char>('A' + index % 26));
}

// ---- writing ----

using cbor::Writer;

void put(Writer& writer, const Reference& reference, std::string_view text) {
    if (reference.numbered) {
        writer.integer(reference.number);
    } else {
        writer.text(text);
    }
}

// The position after the last `true`.
std::uint64_t used(std::initializer_list<bool> present) {
    std::uint64_t count = 0, at = 0;
    for (const bool is : present) {
        ++at;
        if (is) count = at;
    }
    return count;
}

std::uint64_t unit_power(const formula::Formula& formula) {
    std::uint64_t power = kLargestUnitPower;
    for (const formula::Line& line : formula.lines) {
        while (!line.rest && power > 0 && line.percent.grid % power_of_ten(power) != 0)
            --power;
    }
    return power;
}

// Indices of the lines, phase by phase: the order in which a link holds them.
std::vector<std::size_t> line_order(const formula::Formula& formula) {
    std::vector<std::size_t> order;
    for (const formula::Phase& phase : formula.phases) {
        for (std::size_t i = 0; i < formula.lines.size(); ++i) {
            if (formula.lines[i].phase == phase.id) order.push_back(i);
        }
    }
    return order;
}

void write_phases(Writer& writer, const formula::Formula& formula, const References& references,
                  std::int64_t unit) {
    writer.array(formula.phases.size());
    for (std::size_t p = 0; p < formula.phases.size(); ++p) {
        const formula::Phase& phase = formula.phases[p];
        const bool other_id = phase.id != phase_letter(p);
        std::uint64_t lines = 0;
        for (const formula::Line& line : formula.lines)
            lines += line.phase == phase.id ? 1 : 0;
        writer.array(1 + (phase.hold_c ? 1u : 0u) + (phase.add_below_c ? 1u : 0u) + (other_id ? 1u : 0u) +
                     2 * lines);
        writer.integer((phase.hold_c ? kHold : 0) + (phase.add_below_c ? kBelow : 0) +
                       (other_id ? kOtherId : 0));
        if (phase.hold_c) writer.integer(share_figure::packed_temperature(*phase.hold_c));
        if (phase.add_below_c) writer.integer(share_figure::packed_temperature(*phase.add_below_c));
        if (other_id) writer.text(phase.id);
        for (std::size_t i = 0; i < formula.lines.size(); ++i) {
            const formula::Line& line = formula.lines[i];
            if (line.phase != phase.id) continue;
            put(writer, references.lines[i], line.name);
            const std::int64_t share =
                line.rest ? 0 : 1 + std::max<std::int64_t>(0, line.percent.grid) / unit;
            writer.integer(static_cast<std::uint64_t>(share));
        }
    }
}

bool is_plain(const formula::Line& line, const Reference& reference) {
    return !line.locked && !line.hold && !reference.named && (reference.numbered || line.ingredient.empty());
}

void write_extras(Writer& writer, const formula::Formula& formula, const References& references) {
    const std::vector<std::size_t> order = line_order(formula);
    std::uint64_t count = 0;
    for (const std::size_t i : order)
        count += is_plain(formula.lines[i], references.lines[i]) ? 0 : 1;
    writer.array(count);
    for (std::size_t at = 0; at < order.size(); ++at) {
        const formula::Line& line = formula.lines[order[at]];
        const Reference& reference = references.lines[order[at]];
        if (is_plain(line, reference)) continue;
        const bool id = !reference.numbered && !line.ingredient.empty();
        writer.array(2 + (line.hold ? 2u : 0u) + (id ? 1u : 0u) + (reference.named ? 1u : 0u));
        writer.integer(at);
        writer.integer((line.locked ? kLocked : 0) + (line.hold ? kHeld : 0) + (id ? kIdBesideName : 0) +
                       (reference.named ? kNameBesideNumber : 0));
        if (line.hold) {
            writer.text(line.hold->constituent);
            writer.integer(packed(line.hold->percent.grid));
        }
        if (id) writer.text(line.ingredient);
        if (reference.named) writer.text(line.name);
    }
}

// Bit 0 grams, 1 containers, 2 people, 3 stock: what the request holds beside or as its amount.
unsigned parts_there(const batch::Request& request) {
    return (request.grams != quantity::Mass{} ? 1u : 0u) + (!request.containers.empty() ? 2u : 0u) +
           (request.people != 0 || request.each != 0 ? 4u : 0u) + (!request.stock.empty() ? 8u : 0u);
}

unsigned part_of(Amount amount) {
    return amount == Amount::none ? 0u : 1u << (static_cast<unsigned>(amount) - 1);
}

void write_containers(Writer& writer, const batch::Request& request, const References& references) {
    writer.array(request.containers.size());
    for (std::size_t i = 0; i < request.containers.size(); ++i) {
        const batch::Containers& kind = request.containers[i];
        const std::uint64_t items =
            used({true, kind.count != 1, kind.fill_g.has_value(), kind.fill_percent.has_value()});
        writer.array(items);
        put(writer, references.containers[i], kind.id);
        if (items > 1) writer.integer(static_cast<std::uint64_t>(std::max<std::int64_t>(0, kind.count)));
        if (items > 2) writer.integer(kind.fill_g ? packed(kind.fill_g->grid) + 1 : 0);
        if (items > 3) writer.integer(packed(kind.fill_percent->grid) + 1);
    }
}

void write_batch(Writer& writer, const batch::Request& request, const References& references) {
    const unsigned there = parts_there(request);
    const unsigned others = there ^ part_of(request.amount);
    const std::uint64_t head = static_cast<std::uint64_t>(request.amount) + 8 * others;
    const bool usual_division = request.division == batch::Request{}.division;
    unsigned parts = 0;
    for (unsigned bit = 1; bit <= 8; bit *= 2)
        parts += (there & bit) != 0 ? 1 : 0;
    const std::uint64_t items =
        parts != 0 ? 3 + parts : used({head != 0, !usual_division, request.loss.has_value()});
    writer.array(items);
    if (items > 0) writer.integer(head);
    if (items > 1) writer.integer(packed(request.division.grid));
    if (items > 2) writer.integer(request.loss ? packed(request.loss->grid) + 1 : 0);
    if ((there & 1u) != 0) writer.integer(packed(request.grams.grid));
    if ((there & 2u) != 0) write_containers(writer, request, references);
    if ((there & 4u) != 0) {
        writer.array(2);
        writer.integer(static_cast<std::uint64_t>(std::max<std::int64_t>(0, request.people)));
        writer.integer(static_cast<std::uint64_t>(std::max<std::int64_t>(0, request.each)));
    }
    if ((there & 8u) != 0) {
        writer.array(2 * request.stock.size());
        for (std::size_t i = 0; i < request.stock.size(); ++i) {
            put(writer, references.stock[i], request.stock[i].ingredient);
            writer.integer(packed(request.stock[i].grams.grid));
        }
    }
}

void write_steps(Writer& writer, const workspace::Recipe& recipe) {
    writer.array(recipe.steps.size());
    for (const formula::Step& step : recipe.steps) {
        const std::uint64_t items = used({true, !step.phase.empty(), step.minutes.has_value()});
        writer.array(items);
        writer.text(step.text);
        if (items > 1) {
            std::uint64_t phase = 0;  // 1 + index; 0 for none
            for (std::size_t p = 0; p < recipe.formula.phases.size(); ++p) {
                if (recipe.formula.phases[p].id == step.phase) phase = p + 1;
            }
            writer.integer(phase);
        }
        if (items > 2)
            writer.integer(static_cast<std::uint64_t>(std::max<std::int64_t>(0, *step.minutes)) + 1);
    }
}

}  // namespace

unsigned char lowest_version(const workspace::Recipe& recipe) {
    return share_more::holds_more(recipe) ? kMore : kPlain;
}

namespace {

void write_recipe(Writer& writer, const workspace::Recipe& recipe, const References& references) {
    const std::uint64_t power = unit_power(recipe.formula);
    bool extras = false;
    for (std::size_t i = 0; i < recipe.formula.lines.size(); ++i) {
        extras = extras || !is_plain(recipe.formula.lines[i], references.lines[i]);
    }
    const bool batch = recipe.batch != batch::Request{};
    const std::uint64_t items = std::max<std::uint64_t>(
        3, used({true, true, true, !recipe.formula.phases.empty(), batch, !recipe.steps.empty(),
                 !recipe.notes.empty(), !recipe.market.empty(), !recipe.date.empty(), !recipe.person.empty(),
                 extras, !recipe.own.empty()}));
    writer.array(items);
    writer.text(recipe.title);
    put(writer, references.product, recipe.product);
    writer.integer(power);
    if (items > 3) write_phases(writer, recipe.formula, references, power_of_ten(power));
    if (items > 4) write_batch(writer, recipe.batch, references);
    if (items > 5) write_steps(writer, recipe);
    if (items > 6) writer.text(recipe.notes);
    if (items > 7) writer.text(recipe.market);
    if (items > 8) {
        const std::uint64_t number = date_number(recipe.date);
        if (number != 0 || recipe.date.empty()) {
            writer.integer(number);
        } else {
            writer.text(recipe.date);
        }
    }
    if (items > 9) writer.text(recipe.person);
    if (items > 10) write_extras(writer, recipe.formula, references);
    if (items > 11) {
        writer.array(recipe.own.size());
        for (const catalogue::Ingredient& own : recipe.own)
            share_own::encode(writer, own);
    }
}

}  // namespace

std::string encode(const workspace::Recipe& recipe, const References& references, unsigned char version) {
    Writer writer(version == kMore ? cbor::Texts::packed : cbor::Texts::plain);
    if (version == kMore) writer.array(2);
    write_recipe(writer, recipe, references);
    if (version == kMore) share_more::encode(writer, recipe);
    return writer.bytes();
}

// ---- reading ----

namespace {

// Holds the first fault of the content; faults of the packing stay in the reader.
struct Decoder {
    cbor::Reader reader;
    const catalogue::Catalogue& shipped;
    Body body;
    std::optional<result::Error> fault;

    bool failed() const { return fault.has_value() || reader.failed(); }
    void refuse(std::string place, std::string detail = "") {
        if (!failed()) fault = result::Error{result::Code::link_content, std::move(place), std::move(detail)};
    }

    std::int64_t figure(const char* place) {
        const std::optional<std::int64_t> grid = share_figure::unpacked(reader.integer());
        if (!grid) refuse(place);
        return grid.value_or(0);
    }
    std::optional<std::int64_t> optional_figure(const char* place) {
        const std::uint64_t packed_plus_one = reader.integer();
        if (packed_plus_one == 0) return std::nullopt;
        const std::optional<std::int64_t> grid = share_figure::unpacked(packed_plus_one - 1);
        if (!grid) refuse(place);
        return grid;
    }
    std::int64_t temperature(const char* place) {
        const std::optional<std::int64_t> grid = share_figure::unpacked_temperature(reader.integer());
        if (!grid) refuse(place);
        return grid.value_or(0);
    }
    std::int64_t count(const char* place) {
        const std::uint64_t number = reader.integer();
        if (number > share_figure::kLargest) return refuse(place), 0;
        return static_cast<std::int64_t>(number);
    }

    // What a number stands for is looked up by the caller; the text is "" when it came as a number.
    Reference reference(std::string& text, std::size_t most_bytes) {
        if (reader.next_is_text()) {
            text = reader.text(most_bytes);
            return {};
        }
        const std::uint64_t number = reader.integer();
        if (number > UINT32_MAX) refuse("", std::to_string(number));
        return {true, number, false};
    }
    Reference catalogued(Kind kind, std::string& id) {
        const Reference reference = this->reference(id, kMostIdBytes);
        if (!reference.numbered) return reference;
        id = id_of(shipped, kind, static_cast<std::uint32_t>(reference.number))
                 .value_or(number_name(reference.number));
        return reference;
    }

    void phases(std::int64_t unit);
    void extras();
    void name_lines();
    void containers();
    void batch();
    void steps();
    void recipe();
};

void Decoder::phases(std::int64_t unit) {
    formula::Formula& formula = body.recipe.formula;
    const std::uint64_t count = reader.array(formula::kMostPhases);
    for (std::uint64_t p = 0; p < count && !failed(); ++p) {
        const std::uint64_t items = reader.array(4 + 2 * formula::kMostLines);
        const std::uint64_t head = reader.integer();
        if (head >= 2 * kOtherId) refuse("phases");
        formula::Phase phase;
        phase.id = phase_letter(static_cast<std::size_t>(p));
        std::uint64_t used = 1;
        if ((head & kHold) != 0) phase.hold_c = temperature("phases"), ++used;
        if ((head & kBelow) != 0) phase.add_below_c = temperature("phases"), ++used;
        if ((head & kOtherId) != 0) phase.id = reader.text(kMostIdBytes), ++used;
        if (items < used || (items - used) % 2 != 0) refuse("phases");
        for (; used < items && !failed(); used += 2) {
            formula::Line line;
            line.phase = phase.id;
            body.references.lines.push_back(reference(line.name, formula::kMostNameBytes));
            const std::uint64_t share = reader.integer();
            line.rest = share == 0;
            if (share > static_cast<std::uint64_t>(quantity::kHundred.grid / unit) + 1) {
                refuse("lines[" + std::to_string(formula.lines.size()) + "].percent");
            } else if (!line.rest) {
                line.percent.grid = static_cast<std::int64_t>(share - 1) * unit;
            }
            formula.lines.push_back(std::move(line));
        }
        if (formula.lines.size() > formula::kMostLines) {
            refuse("lines", std::to_string(formula::kMostLines));
        }
        formula.phases.push_back(std::move(phase));
    }
}

void Decoder::extras() {
    formula::Formula& formula = body.recipe.formula;
    const std::uint64_t count = reader.array(formula::kMostLines);
    for (std::uint64_t e = 0; e < count && !failed(); ++e) {
        reader.array(6);
        const std::uint64_t at = reader.integer();
        const std::uint64_t head = reader.integer();
        if (at >= formula.lines.size() || head >= 2 * kNameBesideNumber) return refuse("lines");
        formula::Line& line = formula.lines[static_cast<std::size_t>(at)];
        Reference& reference = body.references.lines[static_cast<std::size_t>(at)];
        line.locked = (head & kLocked) != 0;
        if ((head & kHeld) != 0) {
            std::string constituent = reader.text(kMostIdBytes);
            line.hold = formula::Hold{std::move(constituent), {figure("lines")}};
        }
        if ((head & kIdBesideName) != 0) line.ingredient = reader.text(kMostIdBytes);
        if ((head & kNameBesideNumber) != 0) {
            line.name = reader.text(formula::kMostNameBytes);
            reference.named = true;
        }
    }
}

// Only now is it known how many numbers the own ingredients take.
void Decoder::name_lines() {
    workspace::Recipe& recipe = body.recipe;
    for (std::size_t i = 0; i < recipe.formula.lines.size(); ++i) {
        formula::Line& line = recipe.formula.lines[i];
        const Reference& reference = body.references.lines[i];
        if (!reference.numbered) continue;
        if (reference.number < recipe.own.size()) {
            line.ingredient = recipe.own[static_cast<std::size_t>(reference.number)].id;
            continue;
        }
        const std::uint64_t number = reference.number - recipe.own.size();
        if (const auto id = id_of(shipped, Kind::ingredient, static_cast<std::uint32_t>(number))) {
            line.ingredient = *id;
        } else if (!reference.named) {
            line.name = number_name(number);
        }
    }
}

void Decoder::containers() {
    const std::uint64_t count = reader.array(kMostItems);
    for (std::uint64_t i = 0; i < count && !failed(); ++i) {
        batch::Containers kind;
        const std::uint64_t items = reader.array(4);
        body.references.containers.push_back(catalogued(Kind::container, kind.id));
        if (items > 1) kind.count = this->count("batch.containers");
        if (items > 2) {
            if (const auto grid = optional_figure("batch.containers")) kind.fill_g = quantity::Mass{*grid};
        }
        if (items > 3) {
            if (const auto grid = optional_figure("batch.containers"))
                kind.fill_percent = quantity::Percent{*grid};
        }
        body.recipe.batch.containers.push_back(std::move(kind));
    }
}

void Decoder::batch() {
    batch::Request& request = body.recipe.batch;
    const std::uint64_t items = reader.array(7);
    if (items == 0) return;
    const std::uint64_t head = reader.integer();
    if (head % 8 > static_cast<std::uint64_t>(Amount::stock) || head >= 8 * 16) return refuse("batch");
    request.amount = static_cast<Amount>(head % 8);
    const auto there = static_cast<unsigned>(head / 8) ^ part_of(request.amount);
    if (items > 1) request.division.grid = figure("batch.division_g");
    if (items > 2) {
        if (const auto loss = optional_figure("batch.loss_percent")) request.loss = quantity::Percent{*loss};
    }
    if ((there & 1u) != 0) request.grams.grid = figure("batch.grams");
    if ((there & 2u) != 0) containers();
    if ((there & 4u) != 0) {
        reader.array(2);
        request.people = count("batch.people");
        request.each = count("batch.each");
    }
    if ((there & 8u) != 0) {
        const std::uint64_t pairs = reader.array(2 * kMostItems) / 2;
        for (std::uint64_t i = 0; i < pairs && !failed(); ++i) {
            batch::Stock stock;
            body.references.stock.push_back(catalogued(Kind::ingredient, stock.ingredient));
            stock.grams.grid = figure("batch.stock");
            request.stock.push_back(std::move(stock));
        }
    }
}

void Decoder::steps() {
    const std::uint64_t count = reader.array(workspace::kMostSteps);
    const auto& phases = body.recipe.formula.phases;
    for (std::uint64_t i = 0; i < count && !failed(); ++i) {
        formula::Step step;
        const std::uint64_t items = reader.array(3);
        step.text = reader.text(workspace::kMostStepBytes);
        if (items > 1) {
            const std::uint64_t phase = reader.integer();
            if (phase > phases.size()) return refuse("steps");
            if (phase > 0) step.phase = phases[static_cast<std::size_t>(phase) - 1].id;
        }
        if (items > 2) {
            const std::int64_t minutes = this->count("steps");
            if (minutes == 0) refuse("steps");
            step.minutes = minutes - 1;
        }
        body.recipe.steps.push_back(std::move(step));
    }
}

void Decoder::recipe() {
    workspace::Recipe& recipe = body.recipe;
    const std::uint64_t items = reader.array(kMostRecipeItems);
    recipe.title = reader.text(workspace::kMostTitleBytes);
    body.references.product = catalogued(Kind::product, recipe.product);
    const std::uint64_t power = reader.integer();
    if (power > kLargestUnitPower) return refuse("lines");
    if (items > 3) phases(power_of_ten(power));
    if (items > 4) batch();
    if (items > 5) steps();
    if (items > 6) recipe.notes = reader.text(workspace::kMostNotesBytes);
    if (items > 7) recipe.market = reader.text(kMostIdBytes);
    if (items > 8) {
        if (reader.next_is_text()) {
            recipe.date = reader.text(kMostIdBytes);
        } else if (const std::uint64_t number = reader.integer(); number > 99999999) {
            refuse("date");
        } else if (number != 0) {
            recipe.date = date_text(number);
        }
    }
    if (items > 9) recipe.person = reader.text(kMostIdBytes);
    if (items > 10) extras();
    if (items > 11) {
        const std::uint64_t count = reader.array(kMostItems);
        for (std::uint64_t i = 0; i < count && !failed(); ++i) {
            const std::optional<catalogue::Ingredient> own = share_own::decode(reader);
            if (!own) return refuse("ingredients");
            recipe.own.push_back(*own);
        }
    }
    name_lines();
}

}  // namespace

result::Result<Body> decode(std::string_view bytes, unsigned char version,
                            const catalogue::Catalogue& shipped) {
    const cbor::Texts texts = version == kMore ? cbor::Texts::packed : cbor::Texts::plain;
    Decoder decoder{cbor::Reader(bytes, texts), shipped, {}, {}};
    if (version == kMore) decoder.reader.array(2);
    decoder.recipe();
    if (version == kMore && !decoder.failed())
        decoder.fault = share_more::decode(decoder.reader, decoder.body.recipe);
    if (decoder.fault) return *decoder.fault;
    if (decoder.reader.failed()) return decoder.reader.error();
    if (!decoder.reader.at_end()) return {result::Code::link_not_canonical};
    return std::move(decoder.body);
}

}  // namespace share_body
