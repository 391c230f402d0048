// See pasted_lines.h. A line is taken apart at the strongest separator that stands in it (tab, bar,
// semicolon, bullet, comma), and its cells are either several ingredients or one row of a table. A decimal
// comma is no separator, nor is one inside brackets.
// Longer than other files: what a line is depends on those before it (section, phase, columns of a table,
// cells still waiting for their amount), and all of that state is private to the one reader below.
#include "pasted_lines.h"

#include <algorithm>

#include "pasted_headings.h"
#include "pasted_piece.h"
#include "utf8.h"

namespace pasted_lines {
namespace {

using pasted::Code;
using pasted::Entry;
using pasted::Kind;
using pasted_piece::Lean;
using pasted_piece::Piece;
using pasted_text::is_digit;
using pasted_text::is_letter;
using pasted_text::kBullet;
using pasted_text::Line;
using pasted_text::trimmed;

constexpr std::size_t kMostText = 200;   // bytes of the pasted text that an entry repeats
constexpr std::size_t kMostJoined = 60;  // a name on the line above its amount

struct Cell {
    std::size_t start = 0, end = 0;  // bytes of the line's text
    std::size_t column = 0;          // of a table, from 0
};

bool has_letter(std::string_view text) {
    return std::any_of(text.begin(), text.end(), is_letter);
}

class Reader {
  public:
    Reader(const std::vector<Line>& lines, const pasted_names::Matcher& matcher)
        : lines_(lines), matcher_(matcher) {}

    Entries read() {
        take_leans();
        for (const Line& line : lines_) {
            line_ = &line;
            if (is_full()) break;
            take_line();
        }
        return std::move(made_);
    }

  private:
    std::string_view text(Cell cell) const {
        return std::string_view(line_->text).substr(cell.start, cell.end - cell.start);
    }
    std::size_t column(std::size_t byte) const {
        return byte < line_->columns.size() ? line_->columns[byte] : 1;
    }
    Cell trim(Cell cell) const {
        while (cell.start < cell.end && (line_->text[cell.start] == ' ' || line_->text[cell.start] == '\t'))
            cell.start += 1;
        while (cell.end > cell.start &&
               (line_->text[cell.end - 1] == ' ' || line_->text[cell.end - 1] == '\t'))
            cell.end -= 1;
        return cell;
    }

    void take_leans() {
        int first = 0, last = 0;
        for (const Line& line : lines_) {
            const std::string_view body =
                std::string_view(line.text).substr(pasted_headings::bullet_end(line.text));
            const Lean lean = pasted_piece::lean_of(body);
            first += lean == Lean::first;
            last += lean == Lean::last;
        }
        lean_ = first == last ? Lean::unknown : first > last ? Lean::first : Lean::last;
    }

    Entry& add(Kind kind, Cell cell, std::string name) {
        Entry entry;
        entry.kind = kind;
        entry.line = line_->number;
        const Cell bare = trim(cell);
        entry.column = column(bare.start);
        const bool whole = bare.start == trim({body_, line_->text.size(), 0}).start &&
                           bare.end == trim({0, line_->text.size(), 0}).end;
        const std::string_view shown =
            whole && kind != Kind::step ? std::string_view(line_->raw) : text(bare);
        const bool prose = kind == Kind::note || kind == Kind::step;  // kept with the recipe
        const std::size_t most = prose ? workspace::kMostStepBytes : kMostText;
        entry.text = std::string(utf8::start_within(shown, most));
        if (entry.text.size() < shown.size()) {
            entry.text += "\xE2\x80\xA6";
            if (prose)
                entry.remarks.push_back({Code::too_long, entry.line, entry.column, std::to_string(most)});
        }
        std::replace_if(
            name.begin(), name.end(), [](char c) { return c == '\t' || c == kBullet; }, ' ');
        entry.name = std::string(utf8::start_within(name, formula::kMostNameBytes));
        if (entry.name.size() < name.size() && kind == Kind::ingredient)
            entry.remarks.push_back(
                {Code::too_long, entry.line, entry.column, std::to_string(formula::kMostNameBytes)});
        made_.all.push_back(std::move(entry));
        return made_.all.back();
    }
    void remark(Entry& entry, Code code, std::size_t byte, std::string detail = "") {
        entry.remarks.push_back({code, entry.line, column(byte), std::move(detail)});
    }

    void take_line() {
        body_ = pasted_headings::bullet_end(line_->text);
        const Cell whole = trim({body_, line_->text.size(), 0});
        const std::string_view words = text(whole);
        if (!has_letter(words) && !std::any_of(words.begin(), words.end(), is_digit)) {
            add(Kind::note, whole, "");  // a rule drawn between parts
            return;
        }
        if (heading(whole)) return;
        if (section_ != Section::list) {
            add(section_ == Section::method ? Kind::step : Kind::note, whole, std::string(words));
            return;
        }
        if (pasted_headings::is_prose(words) && !is_known_amount(words)) {
            add(Kind::note, whole, std::string(words));
            return;
        }
        if (total(whole)) return;
        cells(whole, 0);
    }

    // --- headings ---
    bool heading(Cell whole) {
        const std::string_view words = text(whole);
        if (column_names(whole)) return true;
        const std::size_t colon = words.find(':');
        if (colon != std::string_view::npos && colon + 1 < words.size()) {
            const Cell head{whole.start, whole.start + colon, 0};
            const Cell rest = trim({whole.start + colon + 1, whole.end, 0});
            if (const auto phase = pasted_headings::phase_in(text(head)); phase && has_amount(text(rest))) {
                begin_phase(head, *phase);
                cells(rest, 0);
                return true;
            }
            const bool named = pasted_headings::section_in(text(head)) != pasted_headings::Section::none;
            if (named && section_after(text(head)) == Section::list) {
                begin_section(head);
                cells(rest, 0);
                return true;
            }
            if (named && section_after(text(head)) != Section::list) {
                begin_section(head);
                add(section_ == Section::method ? Kind::step : Kind::note, rest, std::string(text(rest)));
                return true;
            }
        }
        if (const auto phase = pasted_headings::phase_in(words); phase && names_phase_alone(words))
            return begin_phase(whole, *phase);
        if (pasted_headings::section_in(words) != pasted_headings::Section::none && !has_amount(words)) {
            begin_section(whole);
            return true;
        }
        const bool marked = line_->text[trim({0, line_->text.size(), 0}).start] == '#';
        const bool colon_last = colon != std::string_view::npos && colon + 1 == words.size();
        if ((!marked && !colon_last) || has_amount(words)) return false;
        Entry& entry = add(Kind::heading, whole, name_of(words));
        hint_ = pasted_headings::hint_in(words, hint_);
        if (made_.title.empty() && !any_ingredient_ && (marked || made_.all.size() == 1))
            made_.title = entry.name;
        if (section_ == Section::notes) section_ = Section::list;
        return true;
    }

    // "Phase A", "Oil phase (25 %)"; not "Phase A beeswax 20 g".
    bool names_phase_alone(std::string_view words) const {
        const Piece piece = pasted_piece::read(words, lean_, matcher_);
        const std::size_t count =
            pasted_headings::word_count(piece.has_amount() ? piece.name : std::string());
        return count <= 2 || (count <= 5 && piece.name.find_first_of("(-") != std::string::npos);
    }

    static std::string name_of(std::string_view words) {
        while (!words.empty() && (words.back() == ':' || words.back() == '*' || words.back() == ' ' ||
                                  words.back() == '_' || words.back() == '=' || words.back() == '#'))
            words.remove_suffix(1);
        while (!words.empty() && (words.front() == '#' || words.front() == '*' || words.front() == ' ' ||
                                  words.front() == '_' || words.front() == '='))
            words.remove_prefix(1);
        return std::string(words);
    }

    bool has_amount(std::string_view words) const {
        const auto numbers = pasted_amount::in(words);
        if (!numbers.all.empty() && pasted_piece::read(words, lean_, matcher_).has_amount()) return true;
        return std::count_if(numbers.all.begin(), numbers.all.end(),
                             [](const auto& number) { return number.measure != nullptr; }) > 0;
    }

    // Begins like a sentence, but is an amount of something known: "Mix of tocopherols 0.5 %".
    bool is_known_amount(std::string_view words) const {
        const Piece piece = pasted_piece::read(words, lean_, matcher_);
        return piece.amount && piece.amount->measure && piece.aside.empty() &&
               matcher_.match(piece.name).ingredient != nullptr;
    }

    enum class Section { list, method, notes };
    static Section section_after(std::string_view words) {
        using S = pasted_headings::Section;
        const S found = pasted_headings::section_in(words);
        return found == S::method ? Section::method : found == S::notes ? Section::notes : Section::list;
    }
    void begin_section(Cell cell) {
        section_ = section_after(text(cell));
        hint_ = pasted_headings::hint_in(text(cell), hint_);
        add(Kind::heading, cell, name_of(text(cell)));
    }
    bool begin_phase(Cell cell, const std::string& letter) {
        section_ = Section::list;
        std::string id = letter;
        if (id.empty()) {
            char next = 'A';
            const auto used = [&] {
                return std::find(phases_.begin(), phases_.end(), std::string(1, next)) != phases_.end();
            };
            while (used() && next < 'Z')
                next = static_cast<char>(next + 1);
            id = std::string(1, next);
        }
        if (std::find(phases_.begin(), phases_.end(), id) == phases_.end()) {
            if (phases_.size() < formula::kMostPhases)
                phases_.push_back(id);
            else
                id = phases_.back();
        }
        phase_ = id;
        hint_ = pasted_headings::hint_in(text(cell), hint_);
        add(Kind::phase, cell, name_of(text(cell))).phase = id;
        return true;
    }

    // A row that names the columns of a table: "Ingredient | % | g".
    bool column_names(Cell whole) {
        const char separator = strongest(whole);
        if (separator != '\t' && separator != '|' && separator != ';' && separator != ',') return false;
        std::vector<const measures::Measure*> units;
        bool any = false, named = false;
        for (const Cell cell : split(whole, separator)) {
            const std::string_view words = trimmed(text(cell));
            if (std::any_of(words.begin(), words.end(), is_digit)) return false;
            const measures::Measure* unit = pasted_headings::column_unit(words);
            any = any || unit != nullptr || pasted_headings::names_amounts(words);
            named = named || pasted_headings::names_ingredients(words);
            units.resize(std::max(units.size(), cell.column + 1), nullptr);
            units[cell.column] = unit;
        }
        if (!any || (!named && separator == ',')) return false;
        columns_ = std::move(units);
        add(Kind::heading, whole, std::string(text(whole)));
        return true;
    }

    // "Total 100 %", or a row "Total | 100 % | 250 g" with the units of its columns.
    bool total(Cell whole) {
        const std::string_view words = text(whole);
        const char separator = strongest(whole);
        const bool table = separator != '\0' && separator != ',';
        const std::vector<Cell> all = table ? split(whole, separator) : std::vector<Cell>{whole};
        if (all.empty()) return false;
        const Piece piece = pasted_piece::read(text(all[0]), Lean::last, matcher_);
        const bool amount_first = piece.amount && piece.amount->start == 0;
        if (!pasted_headings::is_total(piece.name, amount_first) && words.front() != '=') return false;
        if (all.size() == 1 && !piece.amount) return false;
        bool any = false;
        for (const Cell cell : all)
            for (pasted_amount::Number number : pasted_amount::in(text(cell)).all) {
                if (!number.measure && table && cell.column < columns_.size())
                    number.measure = columns_[cell.column];
                put_amount(add(Kind::total, whole, name_of(piece.name)), number, cell.start);
                any = true;
            }
        return any;
    }

    // --- cells ---
    char strongest(Cell range) const {
        const std::string_view words = text(range);
        for (const char one : {'\t', '|', ';', kBullet})
            if (words.find(one) != std::string_view::npos) return one;
        return split(range, ',').size() > 1 ? ',' : '\0';
    }

    std::vector<Cell> split(Cell range, char separator) const {
        std::vector<Cell> cells;
        int depth = 0;
        std::size_t start = range.start, column = 0;
        const std::string& all = line_->text;
        const auto finish = [&](std::size_t end) {
            const Cell cell = trim({start, end, column});
            if (cell.start < cell.end) cells.push_back(cell);
            column += 1;
            start = end + 1;
        };
        for (std::size_t i = range.start; i < range.end; ++i) {
            const char c = all[i];
            depth += c == '(' || c == '[';
            if ((c == ')' || c == ']') && depth > 0) depth -= 1;
            if (c != separator) continue;
            if (separator == ',') {
                const bool decimal =
                    i > range.start && is_digit(all[i - 1]) && i + 1 < range.end && is_digit(all[i + 1]);
                const bool leading =
                    i + 1 < range.end && is_digit(all[i + 1]) && i > range.start && all[i - 1] == ' ';
                if (depth > 0 || decimal || leading) continue;
            }
            if (c == '|' && i == range.start) {
                start = i + 1;
                continue;
            }
            finish(i);
        }
        finish(range.end);
        return cells;
    }

    void cells(Cell range, int depth) {
        const std::size_t colon = text(range).find(':');
        if (depth > 0 && colon != std::string_view::npos) {  // "…; water phase: water 59 %"
            const Cell head{range.start, range.start + colon, 0};
            if (const auto phase = pasted_headings::phase_in(text(head))) {
                begin_phase(head, *phase);
                range.start += colon + 1;
                range = trim(range);
            }
        }
        if (is_full()) return;
        const char separator = strongest(range);
        if (separator == '\0' || depth > 4) return run_on(range);
        const std::vector<Cell> all = split(range, separator);
        if (all.empty()) return piece(range);
        if (all.size() == 1) {
            if (separator == ',') return piece(range);
            return cells(all[0], depth + 1);
        }
        std::size_t both = 0, amounts = 0;
        std::vector<int> kinds;  // 1 name, 2 amount, 3 both
        for (const Cell cell : all) {
            const Piece one = pasted_piece::read(text(cell), lean_, matcher_);
            const bool unit_alone = measures::at_start(text(cell)).bytes == cell.end - cell.start;
            const int kind = unit_alone ? 2 : one.has_amount() ? (has_letter(one.name) ? 3 : 2) : 1;
            kinds.push_back(kind);
            both += kind == 3;
            amounts += kind == 2 && !unit_alone;
        }
        if (both + amounts == 0) {
            std::size_t known = 0;
            for (const Cell cell : all)
                known += matcher_.match(text(cell)).exact;
            if (known < 2 || 2 * known < all.size()) return piece(range);
            for (const Cell cell : all)  // a list of names alone
                if (!is_full()) ingredient(cell, {cell});
            return;
        }
        if (both >= 2) {
            std::vector<Cell> waiting;
            for (std::size_t i = 0; i < all.size(); ++i) {
                if (kinds[i] == 1 && !waiting.empty()) flush(waiting);
                if (kinds[i] == 1 && i + 1 < all.size() && kinds[i + 1] == 3) {
                    const Cell joined{all[i].start, all[i + 1].end, 0};
                    const bool alone = matcher_.match(text(all[i])).exact;
                    const bool together =
                        matcher_.match(pasted_piece::read(text(joined), lean_, matcher_).name).exact;
                    if (separator == ',' && together) {
                        ingredient(joined, {joined});
                        i += 1;
                        continue;
                    }
                    if (alone) {
                        ingredient(all[i], {all[i]});
                        continue;
                    }
                }
                if (is_full()) break;
                if (kinds[i] == 2)
                    waiting.push_back(all[i]);
                else if (kinds[i] == 1)
                    add_note(all[i]);
                else
                    cells(all[i], depth + 1);
            }
            flush(waiting);
            return;
        }
        if (both == 1 && amounts == 0) {
            if (separator == ',') return piece(range);
            return row(range, all);
        }
        // Name and amount in cells of their own: one row, or several pairs in one line.
        std::vector<Cell> group;
        bool named = false, measured = false;
        const auto last = std::find_if(kinds.rbegin(), kinds.rend(), [](int kind) { return kind > 1; });
        const std::size_t amounts_end = static_cast<std::size_t>(kinds.rend() - last);
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (is_full()) return;
            if (named && measured && kinds[i] != 2 && i < amounts_end) {
                row({group.front().start, group.back().end, 0}, group);
                group.clear();
                named = measured = false;
            }
            group.push_back(all[i]);
            named = named || kinds[i] != 2;
            measured = measured || kinds[i] != 1;
        }
        row({group.front().start, range.end, 0}, group);
    }

    bool is_full() {
        if (made_.all.size() < pasted::kMostEntries) return false;
        if (made_.first_left == 0) made_.first_left = line_->number;
        return true;
    }

    // "Olive oil 50 g beeswax 20 g": several ingredients with nothing between them.
    void run_on(Cell range) {
        const std::string_view words = text(range);
        std::vector<pasted_amount::Number> amounts;
        for (pasted_amount::Number& number : pasted_amount::in(words).all)
            if (number.measure && !number.in_brackets) amounts.push_back(std::move(number));
        for (std::size_t i = 1; i < amounts.size(); ++i) {
            const auto between =
                trimmed(words.substr(amounts[i - 1].end, amounts[i].start - amounts[i - 1].end));
            if (std::count_if(between.begin(), between.end(), is_letter) < 3) return piece(range);
        }
        if (amounts.size() < 2) return piece(range);
        const bool last = has_letter(words.substr(0, amounts[0].start));
        std::size_t start = range.start;
        for (std::size_t i = 0; i < amounts.size(); ++i) {
            const bool final = i + 1 == amounts.size();
            const std::size_t end = final  ? range.end
                                    : last ? range.start + amounts[i].end
                                           : range.start + amounts[i + 1].start;
            if (is_full()) return;
            piece(trim({start, end, 0}));
            start = end;
        }
    }

    void flush(std::vector<Cell>& waiting) {
        for (const Cell cell : waiting)
            piece(cell);
        waiting.clear();
    }
    void add_note(Cell cell) { add(Kind::note, cell, std::string(text(cell))); }

    // One ingredient whose name, amounts and remarks stand in cells.
    void row(Cell range, std::vector<Cell> all) {
        const auto phase = pasted_headings::phase_in(text(all[0]));
        if (all.size() > 2 && phase && !phase->empty()) {
            if (*phase != phase_) begin_phase(all[0], *phase);
            all.erase(all.begin());
            range.start = all[0].start;
        }
        ingredient(range, all);
    }

    // A piece without separators, or one in which they belong to the name.
    void piece(Cell range) {
        const Piece read = pasted_piece::read(text(range), lean_, matcher_);
        if (read.amount && !has_letter(read.name) && join_to_name(range, read)) return;
        if (made_.all.empty() && read.amount && read.amount->in_brackets && read.amount->measure &&
            read.amount->measure->kind == measures::Kind::mass) {
            const pasted_names::Match match = matcher_.match(read.name);
            if (!match.ingredient && !match.exact) {  // "Lip balm (100 g)": a title with its batch
                made_.title = add(Kind::heading, range, read.name).name;
                put_amount(add(Kind::total, range, read.name), *read.amount, range.start);
                return;
            }
        }
        if (read.has_amount()) return ingredient(range, {range});
        if (!read.unknown_unit.empty() && has_letter(read.name) &&
            matcher_.match(first_words(read.name)).exact) {
            Entry& entry = named(range, first_words(read.name));
            remark(entry, Code::unit_unknown, range.start + read.unknown_at, read.unknown_unit);
            return;
        }
        const pasted_names::Match match = matcher_.match(read.name);
        if (match.exact && !read.other) return ingredient(range, {range});
        const bool title = made_.title.empty() && !any_ingredient_ && made_.all.empty();
        hint_ = pasted_headings::hint_in(text(range), hint_);
        Entry& entry = add(title ? Kind::heading : Kind::note, range, name_of(text(range)));
        if (title) made_.title = entry.name;
    }
    static std::string first_words(std::string_view name) {
        const auto digit = std::find_if(name.begin(), name.end(), is_digit);
        return std::string(trimmed(name.substr(0, static_cast<std::size_t>(digit - name.begin()))));
    }

    // Tables copied cell by cell: the name on one line, its amount on the next.
    bool join_to_name(Cell range, const Piece& read) {
        if (made_.all.empty()) return false;
        Entry& last = made_.all.back();
        const bool open = (last.kind == Kind::note || last.kind == Kind::heading ||
                           (last.kind == Kind::ingredient && !last.amount)) &&
                          line_->number - last.line <= 2 && last.name.size() <= kMostJoined &&
                          has_letter(last.name) && last.text.back() != ':' && last.text.front() != '#';
        if (!open) return false;
        if (last.kind == Kind::heading && made_.title == last.name) made_.title.clear();
        last.kind = Kind::ingredient;
        last.text += " " + std::string(text(range));
        last.remarks.clear();
        any_ingredient_ = true;
        find(last, last.name);
        last.phase = current_phase();
        put_amount(last, *read.amount, range.start);
        return true;
    }

    std::string current_phase() {
        if (phase_.empty()) {
            phase_ = "A";
            phases_.push_back(phase_);
        }
        return phase_;
    }

    Entry& named(Cell range, const std::string& name) {
        Entry& entry = add(Kind::ingredient, range, name);
        any_ingredient_ = true;
        entry.phase = current_phase();
        if (name.empty())
            remark(entry, Code::name_missing, range.start);
        else
            find(entry, name);
        return entry;
    }

    // "Water, potassium sorbate, phenoxyethanol": a blend is not its first part.
    bool names_others(std::string_view name, std::size_t comma) const {
        while (comma < name.size()) {
            const std::size_t next = std::min(name.find(',', comma + 1), name.size());
            const pasted_names::Match match =
                matcher_.match(trimmed(name.substr(comma + 1, next - comma - 1)));
            if (match.ingredient || !match.offered.empty()) return true;
            comma = next;
        }
        return false;
    }

    void find(Entry& entry, const std::string& name) {
        pasted_names::Match match = matcher_.match(name);
        for (const std::string_view cut : {" - ", ",", "(", " / ", ";"}) {
            if (match.ingredient || !match.offered.empty()) break;
            const auto at = name.find(cut);
            if (at != std::string::npos && at > 0 && (cut != "," || !names_others(name, at)))
                match = matcher_.match(trimmed(std::string_view(name).substr(0, at)));
        }
        entry.offered.clear();
        entry.ingredient.clear();
        if (match.ingredient) entry.ingredient = match.ingredient->id;
        for (const catalogue::Ingredient* one : match.offered)
            entry.offered.push_back(one->id);
        if (entry.ingredient.empty())
            entry.remarks.push_back({entry.offered.empty() ? Code::name_unknown : Code::name_several,
                                     entry.line, entry.column, entry.name});
    }

    void ingredient(Cell range, const std::vector<Cell>& all) {
        std::string name, aside;
        std::optional<pasted_amount::Number> amount;
        std::size_t amount_at = 0;
        bool rest_word = false;
        const auto put_aside = [&](std::string_view more) {
            if (more.empty()) return;
            aside += (aside.empty() ? "" : "; ") + std::string(more);
        };
        for (const Cell cell : all) {
            if (amount && !amount->measure && !amount->rest) {  // the unit in a cell of its own
                const measures::Found unit = measures::at_start(text(cell));
                if (unit.measure && unit.bytes == cell.end - cell.start) {
                    amount->measure = unit.measure;
                    continue;
                }
            }
            Piece one = pasted_piece::read(text(cell), lean_, matcher_);
            const bool in_column =
                cell.column < columns_.size() && columns_[cell.column] != nullptr && all.size() > 1;
            if (one.amount && !one.amount->measure && in_column) one.amount->measure = columns_[cell.column];
            const bool better =
                one.amount &&
                (!amount || (one.amount->measure && one.amount->measure->kind == measures::Kind::percent &&
                             !(amount->measure && amount->measure->kind == measures::Kind::percent)));
            if (one.amount && better && !rest_word) {
                if (amount) put_aside(said(*amount, amount_at));
                amount = one.amount;
                amount_at = cell.start;
            } else if (one.amount) {
                put_aside(said(*one.amount, cell.start));
                continue;
            }
            rest_word = rest_word || one.rest_word;
            if (has_letter(one.name)) {
                if (name.empty())
                    name = one.name;
                else
                    put_aside(one.name);
            }
            put_aside(one.aside);
        }
        if (name.empty() && amount && all.size() == 1 && join_name(range, *amount, amount_at)) return;
        Entry& entry = named(range, name);
        entry.aside = std::string(utf8::start_within(aside, kMostText));
        if (pasted_headings::is_shared(name)) {
            remark(entry, Code::amount_shared, range.start);
        } else if (amount) {
            put_amount(entry, *amount, amount_at);
        } else if (rest_word) {
            entry.amount = pasted::Amount{"", {}, true};
        } else {
            remark(entry, Code::amount_missing, range.start);
        }
    }
    // The amount as written, with the unit of its column.
    std::string said(const pasted_amount::Number& number, std::size_t base) const {
        std::string words(
            trimmed(std::string_view(line_->text).substr(base + number.start, number.end - number.start)));
        if (number.measure && (words.empty() || is_digit(words.back())))
            words += number.measure->kind == measures::Kind::percent ? " %"
                     : number.measure->id == "gram"                  ? " g"
                                                                     : " " + std::string(number.measure->id);
        return words;
    }
    bool join_name(Cell range, const pasted_amount::Number& number, std::size_t) {
        Piece read;
        read.amount = number;
        return join_to_name(range, read);
    }

    void put_amount(Entry& entry, const pasted_amount::Number& number, std::size_t base) {
        const measures::Measure* unit = number.measure ? number.measure : hint_;
        if (number.fault) remark(entry, *number.fault, base + number.fault_at, number.detail);
        if (unit && unit->kind == measures::Kind::vague && !number.fault) {
            remark(
                entry, Code::amount_vague, base + number.start,
                std::string(trimmed(
                    std::string_view(line_->text).substr(base + number.start, number.end - number.start))));
            return;
        }
        if (number.fault) return;
        if (number.range) remark(entry, Code::amount_range, base + number.start);
        entry.amount = pasted::Amount{unit ? unit->id : std::string_view(), number.value, number.rest};
    }

    const std::vector<Line>& lines_;
    const pasted_names::Matcher& matcher_;
    const Line* line_ = nullptr;
    Entries made_;
    Lean lean_ = Lean::unknown;
    Section section_ = Section::list;
    std::size_t body_ = 0;  // where the line begins behind its bullet
    bool any_ingredient_ = false;
    std::string phase_;
    std::vector<std::string> phases_;
    const measures::Measure* hint_ = nullptr;  // "all in grams"
    std::vector<const measures::Measure*> columns_;
};

}  // namespace

Entries read(const std::vector<Line>& lines, const pasted_names::Matcher& matcher) {
    return Reader(lines, matcher).read();
}

}  // namespace pasted_lines
