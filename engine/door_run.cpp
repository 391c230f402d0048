// Which verb, and the one line that says what is wrong. The sentences are from the table of words, in
// English: a command line is read by scripts as well.
#include <array>

#include "door.h"
#include "utf8.h"
#include "words.h"

namespace door {
namespace {

struct Verb {
    std::string_view name;
    Answer (*answer)(std::string_view input, const store::Presets& presets, std::string_view limits);
};
template <Answer (*kVerb)(std::string_view, const store::Presets&)>
Answer without_limits(std::string_view input, const store::Presets& presets, std::string_view) {
    return kVerb(input, presets);
}
constexpr std::array<Verb, 18> kVerbs{{{"batch", without_limits<batch>},
                                       {"blend", without_limits<blend>},
                                       {"card", card},
                                       {"check", check},
                                       {"cost", without_limits<cost>},
                                       {"handout", handout},
                                       {"label", label},
                                       {"labels", labels},
                                       {"link", without_limits<link>},
                                       {"lots", without_limits<lots>},
                                       {"open", without_limits<open>},
                                       {"pack", without_limits<pack>},
                                       {"read", read},
                                       {"sheet", without_limits<sheet>},
                                       {"shopping", without_limits<shopping>},
                                       {"swap", swap},
                                       {"weigh", weigh},
                                       {"workshop", workshop}}};

// What a file says may stand in the line: without its control characters, so that it stays one line and a
// terminal shows it and does not obey it.
std::string one_line(std::string_view text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = utf8::length_at(text, at);
        const auto byte = static_cast<unsigned char>(text[at]);
        const bool c1_control =
            length == 2 && byte == 0xC2 && static_cast<unsigned char>(text[at + 1]) < 0xA0;
        if (length == 0 || byte < 0x20 || byte == 0x7F || c1_control) {
            out += ' ';
        } else {
            out += text.substr(at, length);
        }
        at += length == 0 ? 1 : length;
    }
    return out;
}

std::string_view whole_of(result::Code code) {
    switch (code) {
        case result::Code::json_malformed:
        case result::Code::too_many:
            return "input";
        case result::Code::list_empty:
            return "listed";
        case result::Code::link_not_ours:
        case result::Code::link_truncated:
        case result::Code::link_altered:
        case result::Code::link_not_canonical:
        case result::Code::link_newer:
        case result::Code::link_too_long:
        case result::Code::link_content:
            return "link";
        default:
            return "recipe";
    }
}

}  // namespace

const words::Table& english(const store::Presets& presets) {
    static const words::Table none;
    for (const words::Table& table : presets.words) {
        if (table.language == "en") return table;
    }
    return presets.words.empty() ? none : presets.words.front();
}

Answer refuse(const result::Error& error, const store::Presets& presets) {
    const words::Table& table = english(presets);
    const std::string sentence =
        table.language.empty() ? std::string(words::code_name(error.code)) : words::say(table, error);
    const std::string place = error.place.empty() ? std::string(whole_of(error.code)) : error.place;
    return {2, "", one_line(place + ": " + sentence) + "\n"};
}

Answer usage(const store::Presets& presets) {
    std::string names;
    for (const Verb& verb : kVerbs)
        names += (names.empty() ? "" : ", ") + std::string(verb.name);
    return {2, "",
            "tarebench: " + one_line(words::say(english(presets), "door.usage", {{"verbs", names}})) + "\n"};
}

Answer unreadable(std::string_view file, const store::Presets& presets) {
    const std::string sentence = words::say(english(presets), "door.unreadable");
    return {2, "", one_line(std::string(file) + ": " + sentence) + "\n"};
}

Answer run(std::string_view verb, std::string_view input, const store::Presets& presets,
           std::string_view limits) {
    for (const Verb& known : kVerbs) {
        if (known.name == verb) return known.answer(input, presets, limits);
    }
    return usage(presets);
}

}  // namespace door
