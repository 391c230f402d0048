// What papers have in common: the page around them, lists of sentences under a heading, tables, a QR code.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "markup.h"
#include "qr.h"
#include "words.h"

namespace documents_paper {

// From the document's type to the heading of its first level; black on white, `style` goes on from there.
markup::Writer begin(const words::Table& words, const std::string& title, std::string_view style);
// Nothing where there are no sentences. `boxes`: each with a box to tick.
void list(markup::Writer& html, const std::string& heading, const std::vector<std::string>& sentences,
          bool boxes = false);

struct Column {
    std::string head;
    std::string_view kind;  // "", "n" a figure, "w" room to write, "b" a box to tick
};
// From the table to its open body; each row ends with close().
void open_table(markup::Writer& html, const std::vector<Column>& columns);
void cell(markup::Writer& html, const std::string& text, std::string_view kind = "");
void close_table(markup::Writer& html);

// Each line of what a person wrote as a paragraph.
void paragraphs(markup::Writer& html, std::string_view text);

// As a picture of lines, with the white edge that readers look for; `name` is read aloud.
void code(markup::Writer& html, const qr::Code& code, const std::string& name);

std::string mm(std::int64_t grid);  // "62.5mm", for a style

}  // namespace documents_paper
