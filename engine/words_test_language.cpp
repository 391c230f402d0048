#include "words_test_language.h"

namespace words {
namespace {

constexpr std::string_view kPlain = "aceinosuyzACEINOSUYZ";
constexpr std::string_view kAccented = "áçéíñöšüýžÁÇÉÍÑÖŠÜÝŽ";  // two bytes each
static_assert(kAccented.size() == 2 * kPlain.size());

std::string stretched(std::string_view text) {
    std::string out;
    bool place = false;
    for (const char c : text) {
        place = c == '{' || (place && c != '}');
        const std::size_t letter = place ? std::string_view::npos : kPlain.find(c);
        const std::string_view shown =
            letter == std::string_view::npos ? std::string_view(&c, 1) : kAccented.substr(2 * letter, 2);
        const bool vowel = !place && std::string_view("aeiouAEIOU").find(c) != std::string_view::npos;
        out += shown;
        if (vowel) out += shown;
    }
    return out;
}

}  // namespace

Table test_language(const Table& table) {
    Table made = spelled_out(table);
    made.language = kTestLanguage;
    made.name = stretched(table.name);
    for (auto& [key, entry] : made.entries)
        entry = {stretched(entry.other), stretched(entry.one)};
    return made;
}

}  // namespace words
