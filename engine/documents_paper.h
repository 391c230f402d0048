// What papers have in common: the page around them, and lists of sentences under a heading.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "markup.h"
#include "words.h"

namespace documents_paper {

// From the document's type to the heading of its first level; black on white, `style` goes on from there.
markup::Writer begin(const words::Table& words, const std::string& title, std::string_view style);
// Nothing where there are no sentences. `boxes`: each with a box to tick.
void list(markup::Writer& html, const std::string& heading, const std::vector<std::string>& sentences,
          bool boxes = false);

}  // namespace documents_paper
