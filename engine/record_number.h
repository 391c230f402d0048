// Batch numbers by a pattern of one's own: plain text with places in square brackets,
// "[year][month][day]-[count]".
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "record.h"

namespace record {

enum class Place { year, year_short, month, day, count, count_two, count_three, letters };
inline constexpr Place kPlaces[] = {Place::year,  Place::year_short, Place::month,       Place::day,
                                    Place::count, Place::count_two,  Place::count_three, Place::letters};
std::string_view written(Place place);  // "[year]"

inline constexpr std::string_view kUsualPattern = "[year][month][day]-[count]";
inline constexpr std::size_t kMostPatternBytes = 120;

// The number of a batch made on this day: its count is the first that gives a number nobody has. A pattern
// without a count gets one at its end where it must. `letters`: the first letters of the title's words, up to
// three. Brackets that are no place stay as they are.
std::string next_number(std::string_view pattern, std::string_view day, std::string_view title,
                        const std::vector<std::string>& taken);
// Numbers that a reader would take for one and the same: letters without case, blanks left out.
bool same_number(std::string_view one, std::string_view other);

}  // namespace record
