#include "record_number.h"

#include <algorithm>

#include "utf8.h"

namespace record {
namespace {

constexpr std::string_view kWritten[] = {
    "[year]",   "[short year]", "[month]", "[day]", "[count]", "[two-digit count]", "[three-digit count]",
    "[letters]"};

std::string padded(std::size_t count, std::size_t digits) {
    std::string text = std::to_string(count);
    return text.size() < digits ? std::string(digits - text.size(), '0') + text : text;
}

std::string letters_of(std::string_view title) {
    std::string letters;
    bool apart = true;
    int count = 0;
    for (std::size_t at = 0; at < title.size() && count < 3;) {
        const std::size_t length = std::max<std::size_t>(1, utf8::length_at(title, at));
        const char c = title[at];
        const bool between = length == 1 && !(c >= 'a' && c <= 'z') && !(c >= 'A' && c <= 'Z');
        if (!between && apart) {
            letters += length == 1 && c >= 'a' ? std::string(1, static_cast<char>(c - 'a' + 'A'))
                                               : std::string(title.substr(at, length));
            ++count;
        }
        apart = between && c != '\'';
        at += length;
    }
    return letters;
}

std::string filled_in(Place place, std::string_view day, std::string_view title, std::size_t count) {
    switch (place) {
        case Place::year:
            return std::string(day.substr(0, 4));
        case Place::year_short:
            return std::string(day.substr(2, 2));
        case Place::month:
            return std::string(day.substr(5, 2));
        case Place::day:
            return std::string(day.substr(8, 2));
        case Place::count:
            return padded(count, 1);
        case Place::count_two:
            return padded(count, 2);
        case Place::count_three:
            return padded(count, 3);
        case Place::letters:
            break;
    }
    return letters_of(title);
}

bool counts(Place place) {
    return place == Place::count || place == Place::count_two || place == Place::count_three;
}

}  // namespace

std::string_view written(Place place) {
    return kWritten[static_cast<int>(place)];
}

std::string next_number(std::string_view pattern, std::string_view day, std::string_view title,
                        const std::vector<std::string>& taken) {
    if (day.size() != 10) day = "0000-00-00";
    if (pattern.empty()) pattern = kUsualPattern;
    const auto with_count = [&](std::size_t count) {
        std::string number;
        bool counted = false;
        for (std::size_t at = 0; at < pattern.size();) {
            const auto* place = std::find_if(std::begin(kPlaces), std::end(kPlaces), [&](Place one) {
                return pattern.substr(at, written(one).size()) == written(one);
            });
            if (place == std::end(kPlaces)) {
                number += pattern[at++];
                continue;
            }
            number += filled_in(*place, day, title, count);
            counted = counted || counts(*place);
            at += written(*place).size();
        }
        const std::string end = counted || count == 1 ? "" : "-" + std::to_string(count);
        return std::string(utf8::start_within(number, kMostNumberBytes - end.size())) + end;
    };
    // One more than there are is free, unless the start alone filled the room: then the count goes to the
    // end.
    for (std::size_t count = 1; count <= taken.size() + 1; ++count) {
        std::string number = with_count(count);
        if (std::none_of(taken.begin(), taken.end(),
                         [&](const std::string& one) { return same_number(one, number); }))
            return number;
    }
    const std::string end = "-" + std::to_string(taken.size() + 1);
    return std::string(utf8::start_within(with_count(1), kMostNumberBytes - end.size())) + end;
}

bool same_number(std::string_view one, std::string_view other) {
    const auto bare = [](std::string_view text) {
        std::string said = utf8::lowered(text);
        std::erase_if(said, [](char c) { return c == ' ' || c == '\t'; });
        return said;
    };
    return bare(one) == bare(other);
}

}  // namespace record
