// What papers are made with on this device, as JSON: the plan of a workshop, the sheet of labels. Only
// store*.cpp, door*.cpp and tests include this.
#pragma once

#include <string>

#include "label_sheet.h"
#include "store_json.h"
#include "workshop.h"

namespace store_papers {

void write(store_json::Writer& writer, const workshop::Plan& plan);  // an object
void write(store_json::Writer& writer, const label_sheet::Sheet& sheet);

// What is not said is as usual; a plan or sheet out of bounds is a failure.
workshop::Plan plan_from(const store_json::Json& value, const std::string& place,
                         store_json::Failure& failure);
label_sheet::Sheet sheet_from(const store_json::Json& value, const std::string& place,
                              store_json::Failure& failure);

}  // namespace store_papers
