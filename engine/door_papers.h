// What the verbs that give papers, and the one that gives costs, read: a recipe, or {"recipe": …} with what
// the paper is made with beside it.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "door.h"
#include "label_sheet.h"
#include "limits_book.h"
#include "price.h"
#include "workshop.h"

namespace door_papers {

struct Input {
    workspace::Recipe recipe;
    workshop::Plan plan;                      // "workshop"
    bool planned = false;                     // it was said
    price::Book prices;                       // "prices"
    std::optional<label_sheet::Sheet> sheet;  // "label_sheet"
    std::string address;                      // before a link's '#'
    std::size_t copies = 1, used = 0;         // used: cells of the first sheet of labels that are gone
};
result::Result<Input> read(std::string_view input);

// An empty text: an empty book.
result::Result<limits::Book> book_of(std::string_view limits);

}  // namespace door_papers
