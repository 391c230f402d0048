// The reading half looks at the text twice: first a pass over the events, which finds keys said twice and
// bounds the depth before anything is built, then the library's own tree. Text is cheap here; surprises are
// not.
#include "store_json.h"

#include <set>

#include "decimal.h"
#include "utf8.h"

namespace store_json {
namespace {

constexpr std::size_t kLongestDetail = 60;
constexpr std::size_t kDeepestPath = 8;

// A file may hold keys and values of any length; the line that speaks of them stays short.
std::string shortened(std::string text) {
    if (text.size() > kLongestDetail) {
        std::size_t end = kLongestDetail;
        while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0u) == 0x80u)
            --end;
        text.resize(end);
        text += "…";
    }
    return text;
}

struct Frame {
    Json* node = nullptr;  // stays where it is: nothing is put beside it before it ends
    bool is_list = false;
    std::size_t index = 0;
    std::string key;
    std::set<std::string> keys;
};

// The events of the JSON library, by the names it asks for; makes the tree of them, within bounds.
struct Survey {
    Json tree;
    std::vector<Frame> frames;
    std::optional<result::Error> error;

    Json& put(Json value) {
        if (frames.empty()) return tree = std::move(value);
        const Frame& frame = frames.back();
        if (frame.is_list) {
            Json::array_t& list = *frame.node->get_ptr<Json::array_t*>();
            return list.emplace_back(std::move(value));
        }
        Json::object_t& object = *frame.node->get_ptr<Json::object_t*>();
        return object.emplace_back(frame.key, std::move(value)).second;
    }

    std::string path() const {
        std::string out;
        std::size_t depth = 0;
        for (const Frame& frame : frames) {
            if (++depth > kDeepestPath) return out + "…";
            out = frame.is_list ? indexed(out, frame.index) : joined(out, frame.key);
        }
        return out;
    }
    bool stop(result::Code code, std::string place, std::string detail = "") {
        error = {code, std::move(place), std::move(detail)};
        return false;
    }
    bool value_done() {
        if (!frames.empty() && frames.back().is_list) ++frames.back().index;
        return true;
    }
    bool enter(bool is_list) {
        if (frames.size() >= kMostDepth)
            return stop(result::Code::too_many, path(), std::to_string(kMostDepth));
        Json& node = put(is_list ? Json::array() : Json::object());
        frames.push_back({&node, is_list, 0, "", {}});
        return true;
    }
    bool leave() {
        frames.pop_back();
        return value_done();
    }
    bool value(Json value) {
        put(std::move(value));
        return value_done();
    }
    bool null() { return value(nullptr); }
    bool boolean(bool is) { return value(is); }
    bool number_integer(std::int64_t number) { return value(number); }
    bool number_unsigned(std::uint64_t number) { return value(number); }
    bool number_float(double number, const std::string&) { return value(number); }
    bool string(std::string& text) { return value(std::move(text)); }
    bool binary(Json::binary_t&) { return value_done(); }
    bool start_object(std::size_t) { return enter(false); }
    bool start_array(std::size_t) { return enter(true); }
    bool end_object() { return leave(); }
    bool end_array() { return leave(); }
    bool key(std::string& name) {
        Frame& frame = frames.back();
        frame.key = name;
        if (!frame.keys.insert(name).second)
            return stop(result::Code::preset_duplicate, path(), shortened(name));
        if (frame.keys.size() > kMostKeys)
            return stop(result::Code::too_many, path(), std::to_string(kMostKeys));
        return true;
    }
    bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception&) {
        return stop(result::Code::json_malformed, "character " + std::to_string(position));
    }
};

std::string shown(const Json& value) {
    return shortened(value.dump(-1, ' ', false, Json::error_handler_t::replace));
}

}  // namespace

result::Result<Json> parse(std::string_view text) {
    if (text.size() > kMostBytes) return {result::Code::too_many, "", std::to_string(kMostBytes)};
    Survey survey;
    const bool sound = Json::sax_parse(text, &survey);
    if (survey.error) return *survey.error;
    if (!sound) return {result::Code::json_malformed};
    return std::move(survey.tree);
}

void Failure::at(result::Code code, std::string place, std::string detail) {
    if (!error) error = result::Error{code, std::move(place), std::move(detail)};
}

std::string joined(const std::string& place, std::string_view key) {
    return (place.empty() ? "" : place + ".") + shortened(std::string(key));
}
std::string indexed(const std::string& place, std::size_t index) {
    return place + "[" + std::to_string(index) + "]";
}

std::string text_of(const Json& value, const std::string& place, Failure& failure) {
    const auto* text = value.get_ptr<const std::string*>();
    if (text == nullptr) return failure.at(result::Code::field_type, place, shown(value)), "";
    return *text;
}

std::int64_t figure_of(const Json& value, const std::string& place, Failure& failure) {
    constexpr std::int64_t kLargestWhole = decimal::kLargest / decimal::kOne;
    if (value.is_number_unsigned()) {
        const std::uint64_t whole = *value.get_ptr<const std::uint64_t*>();
        if (whole <= static_cast<std::uint64_t>(kLargestWhole))
            return static_cast<std::int64_t>(whole) * decimal::kOne;
        return failure.at(result::Code::number_too_large, place, shown(value)), 0;
    }
    if (value.is_number_integer()) {
        const std::int64_t whole = *value.get_ptr<const std::int64_t*>();
        if (whole >= -kLargestWhole && whole <= kLargestWhole) return whole * decimal::kOne;
        return failure.at(result::Code::number_too_large, place, shown(value)), 0;
    }
    if (!value.is_number_float()) return failure.at(result::Code::field_type, place, shown(value)), 0;
    const result::Result<std::int64_t> read = decimal::from_double(*value.get_ptr<const double*>());
    if (!read) return failure.at(read.error().code, place, shown(value)), 0;
    return *read;
}

quantity::Percent percent_of(const Json& value, const std::string& place, Failure& failure) {
    const quantity::Percent percent{figure_of(value, place, failure)};
    if (percent.grid < 0) failure.at(result::Code::number_negative, place, shown(value));
    if (percent > quantity::kHundred) failure.at(result::Code::number_too_large, place, shown(value));
    return percent;
}

Fields::Fields(const Json& value, std::string place, Failure& failure)
    : place_(std::move(place)), failure_(failure) {
    if (value.is_object()) {
        object_ = &value;
    } else {
        failure_.at(result::Code::field_type, place_, shown(value));
    }
}

bool Fields::has(std::string_view key) const {
    return object_ != nullptr && object_->find(std::string(key)) != object_->end();
}

const Json* Fields::any(std::string_view key) {
    asked_.push_back(key);
    if (object_ == nullptr) return nullptr;
    const auto found = object_->find(std::string(key));
    return found == object_->end() ? nullptr : &*found;
}

const Json* Fields::list(std::string_view key) {
    const Json* value = any(key);
    if (value == nullptr || value->is_array()) return value;
    return failure_.at(result::Code::field_type, place(key), shown(*value)), nullptr;
}

const Json* Fields::object(std::string_view key) {
    const Json* value = any(key);
    if (value == nullptr || value->is_object()) return value;
    return failure_.at(result::Code::field_type, place(key), shown(*value)), nullptr;
}

std::string Fields::text(std::string_view key) {
    const Json* value = any(key);
    return value == nullptr ? "" : text_of(*value, place(key), failure_);
}

std::string Fields::needed_text(std::string_view key) {
    need(key);
    return text(key);
}

bool Fields::flag(std::string_view key) {
    const Json* value = any(key);
    if (value == nullptr) return false;
    if (value->is_boolean()) return *value->get_ptr<const bool*>();
    return failure_.at(result::Code::field_type, place(key), shown(*value)), false;
}

std::optional<std::int64_t> Fields::figure(std::string_view key) {
    const Json* value = any(key);
    if (value == nullptr) return std::nullopt;
    return figure_of(*value, place(key), failure_);
}

std::optional<quantity::Percent> Fields::percent(std::string_view key) {
    const Json* value = any(key);
    if (value == nullptr) return std::nullopt;
    return percent_of(*value, place(key), failure_);
}

std::optional<quantity::Mass> Fields::mass(std::string_view key) {
    const std::optional<std::int64_t> grid = figure(key);
    if (!grid) return std::nullopt;
    if (*grid < 0) failure_.at(result::Code::number_negative, place(key), decimal::print(*grid));
    return quantity::Mass{*grid};
}

std::optional<std::uint64_t> Fields::whole(std::string_view key) {
    const Json* value = any(key);
    if (value == nullptr) return std::nullopt;
    if (value->is_number_unsigned()) return *value->get_ptr<const std::uint64_t*>();
    const std::int64_t grid = figure_of(*value, place(key), failure_);
    if (grid < 0) failure_.at(result::Code::number_negative, place(key), shown(*value));
    if (grid % decimal::kOne != 0) failure_.at(result::Code::number_too_fine, place(key), shown(*value));
    return static_cast<std::uint64_t>(grid / decimal::kOne);
}

std::map<std::string, std::string> Fields::texts(std::string_view key) {
    std::map<std::string, std::string> out;
    const Json* value = object(key);
    if (value == nullptr) return out;
    for (auto item = value->begin(); item != value->end(); ++item) {
        out[item.key()] = text_of(*item, joined(place(key), item.key()), failure_);
    }
    return out;
}

void Fields::need(std::string_view key) {
    if (object_ != nullptr && !has(key))
        failure_.at(result::Code::field_missing, place(key), std::string(key));
}

void Fields::finish() {
    if (object_ == nullptr) return;
    for (auto item = object_->begin(); item != object_->end(); ++item) {
        bool known = false;
        for (const std::string_view key : asked_)
            known = known || key == item.key();
        if (!known) failure_.at(result::Code::field_unknown_value, place(item.key()), shortened(item.key()));
    }
}

void Writer::before_value() {
    if (after_key_) {
        after_key_ = false;
        return;
    }
    if (!fresh_) out_ += ',';
    if (!open_.empty() && layout_ == Layout::indented) {
        if (flat_from_ == 0) {
            line_break();
        } else if (!fresh_) {
            out_ += ' ';
        }
    }
    fresh_ = false;
}

void Writer::line_break() {
    out_ += '\n';
    out_.append(2 * open_.size(), ' ');
}

void Writer::begin(char opening, char closing) {
    before_value();
    out_ += opening;
    open_.push_back(closing);
    fresh_ = true;
}

void Writer::object() {
    begin('{', '}');
}
void Writer::list() {
    begin('[', ']');
}
void Writer::flat_object() {
    begin('{', '}');
    if (flat_from_ == 0) flat_from_ = open_.size();
}

void Writer::end() {
    const char closing = open_.back();
    const bool flat = flat_from_ != 0;
    if (flat_from_ == open_.size()) flat_from_ = 0;
    open_.pop_back();
    if (!fresh_ && !flat && layout_ == Layout::indented) line_break();
    out_ += closing;
    fresh_ = false;
}

void Writer::key(std::string_view name) {
    before_value();
    after_key_ = true;  // the comma is there: the key goes out as a text without another
    text(name);
    out_ += layout_ == Layout::one_line ? ":" : ": ";
    after_key_ = true;
}

void Writer::text(std::string_view plain) {
    before_value();
    constexpr char kHex[] = "0123456789abcdef";
    out_ += '"';
    for (std::size_t at = 0; at < plain.size();) {
        const std::size_t length = utf8::length_at(plain, at);
        const auto byte = static_cast<unsigned char>(plain[at]);
        if (length == 0) {
            out_ += "\xEF\xBF\xBD";  // U+FFFD for what is no character: the file stays readable
        } else if (plain[at] == '"' || plain[at] == '\\') {
            out_ += '\\';
            out_ += plain[at];
        } else if (plain[at] == '\n') {
            out_ += "\\n";
        } else if (byte < 0x20 || byte == 0x7F) {
            out_ += "\\u00";
            out_ += kHex[byte >> 4];
            out_ += kHex[byte & 15u];
        } else {
            out_ += plain.substr(at, length);
        }
        at += length == 0 ? 1 : length;
    }
    out_ += '"';
}

void Writer::figure(std::int64_t grid) {
    before_value();
    if (grid < 0) out_ += '-';
    out_ += decimal::print(grid < 0 ? -grid : grid);
}

void Writer::fine(std::int64_t steps, int places) {
    before_value();
    out_ += decimal::print_fine(steps, places);
}

void Writer::whole(std::uint64_t number) {
    before_value();
    out_ += std::to_string(number);
}

void Writer::flag(bool value) {
    before_value();
    out_ += value ? "true" : "false";
}

std::string Writer::finish() {
    while (!open_.empty())
        end();
    if (layout_ == Layout::indented) out_ += '\n';
    return std::move(out_);
}

}  // namespace store_json
