// A day as YYYY-MM-DD. Such texts sort as the days follow each other; nothing here knows what day it is.
#pragma once

#include <string_view>

namespace date {

bool is_day(std::string_view text);  // of the calendar

}  // namespace date
