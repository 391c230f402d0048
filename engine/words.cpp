// Looking a text up in the table of words and filling it in; the names of the failure codes.
// What is filled in is never searched for braces again: a person's text stays as it is. Figures inside an
// error's detail are written with a point by the engine and take the table's decimal sign here.
#include "words.h"

#include "writing.h"

namespace words {
namespace {

using result::Code;

bool one(const Table& table, const Arguments& arguments) {
    for (const auto& [name, value] : arguments) {
        if (name != "n") continue;
        const auto count = decimal::read(value);
        if (!count) return false;
        if (table.plural_rule == "one_other") return *count == decimal::kOne;
        if (table.plural_rule == "one_upto_two") return *count >= 0 && *count < 2 * decimal::kOne;
        return false;
    }
    return false;
}

const std::string* value_of(const Arguments& arguments, std::string_view name) {
    for (const auto& [known, value] : arguments)
        if (known == name) return &value;
    return nullptr;
}

std::optional<Packed::Text> find(const Table& table, std::string_view key) {
    if (const auto found = table.entries.find(key); found != table.entries.end())
        return Packed::Text{found->first, found->second.other, found->second.one};
    return table.shipped.find(key);
}

// The codes whose detail is a figure of ours, not what somebody typed.
bool detail_is_figure(Code code) {
    return code == Code::sum_not_hundred || code == Code::sum_over_hundred || code == Code::batch_too_large ||
           code == Code::cap_leaves_no_room || code == Code::division_invalid || code == Code::loss_invalid ||
           code == Code::yield_invalid;
}

// "Balm oil", "Hazel mix", "Balm oil" on lines of their own -> "Balm oil holds Hazel mix holds Balm oil".
std::string chain(const Table& table, std::string_view names) {
    std::string out;
    for (const char c : names)
        out += c == '\n' ? " " + say(table, "made.holds") + " " : std::string(1, c);
    return out;
}

}  // namespace

std::string say(const Table& table, std::string_view key, const Arguments& arguments) {
    const std::optional<Packed::Text> found = find(table, key);
    if (!found) return "[[" + std::string(key) + "]]";
    const std::string_view text = !found->one.empty() && one(table, arguments) ? found->one : found->other;

    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t open = text.find('{', at);
        const std::size_t close = open == std::string::npos ? open : text.find('}', open);
        if (close == std::string::npos) {
            out += text.substr(at);
            break;
        }
        out += text.substr(at, open - at);
        const std::string* value = value_of(arguments, text.substr(open + 1, close - open - 1));
        if (value != nullptr)
            out += writing::set_apart(*value);
        else
            out += text.substr(open, close + 1 - open);
        at = close + 1;
    }
    return out;
}

bool has(const Table& table, std::string_view key) {
    return find(table, key).has_value();
}

Table spelled_out(Table table) {
    for (std::size_t i = 0; i < table.shipped.size(); ++i) {
        const Packed::Text text = table.shipped[i];
        table.entries.try_emplace(std::string(text.key),
                                  Entry{std::string(text.other), std::string(text.one)});
    }
    table.shipped = {};
    return table;
}

bool operator==(const Table& one, const Table& other) {
    return one.language == other.language && one.name == other.name && one.plural_rule == other.plural_rule &&
           one.sign == other.sign && spelled_out(one).entries == spelled_out(other).entries;
}

std::string say(const Table& table, const result::Error& error) {
    std::string detail = error.detail;
    if (detail_is_figure(error.code))
        if (const auto grid = decimal::read(detail)) detail = figure(table, *grid);
    if (error.code == Code::made_loop) detail = chain(table, detail);
    return say(table, "error." + std::string(code_name(error.code)),
               {{"place", error.place}, {"detail", detail}});
}

std::string_view code_name(Code code) {
    switch (code) {
        case Code::number_empty:
            return "number_empty";
        case Code::number_malformed:
            return "number_malformed";
        case Code::number_ambiguous:
            return "number_ambiguous";
        case Code::number_too_fine:
            return "number_too_fine";
        case Code::number_too_large:
            return "number_too_large";
        case Code::number_negative:
            return "number_negative";
        case Code::unit_unknown:
            return "unit_unknown";
        case Code::division_by_zero:
            return "division_by_zero";
        case Code::line_missing:
            return "line_missing";
        case Code::phase_missing:
            return "phase_missing";
        case Code::phase_twice:
            return "phase_twice";
        case Code::phase_in_use:
            return "phase_in_use";
        case Code::name_empty:
            return "name_empty";
        case Code::text_too_long:
            return "text_too_long";
        case Code::too_many:
            return "too_many";
        case Code::rest_twice:
            return "rest_twice";
        case Code::sum_not_hundred:
            return "sum_not_hundred";
        case Code::sum_over_hundred:
            return "sum_over_hundred";
        case Code::formula_empty:
            return "formula_empty";
        case Code::line_locked:
            return "line_locked";
        case Code::nothing_gives_way:
            return "nothing_gives_way";
        case Code::gives_too_little:
            return "gives_too_little";
        case Code::locked_over_hundred:
            return "locked_over_hundred";
        case Code::no_wax:
            return "no_wax";
        case Code::no_oil:
            return "no_oil";
        case Code::amount_missing:
            return "amount_missing";
        case Code::stock_not_needed:
            return "stock_not_needed";
        case Code::stock_too_little:
            return "stock_too_little";
        case Code::batch_zero:
            return "batch_zero";
        case Code::batch_too_large:
            return "batch_too_large";
        case Code::division_invalid:
            return "division_invalid";
        case Code::loss_invalid:
            return "loss_invalid";
        case Code::container_unknown:
            return "container_unknown";
        case Code::fill_unknown:
            return "fill_unknown";
        case Code::density_unknown:
            return "density_unknown";
        case Code::density_invalid:
            return "density_invalid";
        case Code::cap_leaves_no_room:
            return "cap_leaves_no_room";
        case Code::made_loop:
            return "made_loop";
        case Code::made_too_deep:
            return "made_too_deep";
        case Code::made_empty:
            return "made_empty";
        case Code::yield_invalid:
            return "yield_invalid";
        case Code::list_empty:
            return "list_empty";
        case Code::item_missing:
            return "item_missing";
        case Code::item_twice:
            return "item_twice";
        case Code::range_crossed:
            return "range_crossed";
        case Code::line_beyond:
            return "line_beyond";
        case Code::json_malformed:
            return "json_malformed";
        case Code::not_a_recipe:
            return "not_a_recipe";
        case Code::field_missing:
            return "field_missing";
        case Code::field_type:
            return "field_type";
        case Code::field_unknown_value:
            return "field_unknown_value";
        case Code::version_newer:
            return "version_newer";
        case Code::checksum_wrong:
            return "checksum_wrong";
        case Code::preset_unit_missing:
            return "preset_unit_missing";
        case Code::preset_source_missing:
            return "preset_source_missing";
        case Code::preset_duplicate:
            return "preset_duplicate";
        case Code::preset_unsorted:
            return "preset_unsorted";
        case Code::link_not_ours:
            return "link_not_ours";
        case Code::link_truncated:
            return "link_truncated";
        case Code::link_altered:
            return "link_altered";
        case Code::link_not_canonical:
            return "link_not_canonical";
        case Code::link_newer:
            return "link_newer";
        case Code::link_too_long:
            return "link_too_long";
        case Code::link_content:
            return "link_content";
    }
    return "";
}

std::string figure(const Table& table, std::int64_t grid) {
    return decimal::print(grid, table.sign);
}

std::string figure_fixed(const Table& table, std::int64_t grid, int places) {
    return decimal::print_fixed(grid, places, table.sign);
}

std::string trace(const Table& table, quantity::Trace trace) {
    return decimal::print_fine(trace.grid, quantity::kTracePlaces, table.sign);
}

}  // namespace words
