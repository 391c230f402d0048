// What a line of a pasted list is that is not an ingredient: a phase, the name of a section, the names of
// columns, a total, prose. By its words, in English and some neighbouring languages. Part of pasted.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "measures.h"

namespace pasted_headings {

// Bytes of bullets, numbering and empty check boxes at the beginning, and the space after them.
std::size_t bullet_end(std::string_view line);

// The letter of "Phase A", "B-Phase" or a lone "C"; "" for a phase without one ("Oil phase", "Cool down").
std::optional<std::string> phase_in(std::string_view words);
bool phase_letter(std::string_view cell);
std::size_t word_count(std::string_view text);

enum class Section { none, list, method, notes };
Section section_in(std::string_view words);

bool is_prose(std::string_view words);                       // begins like a step of work, or is an address
bool is_total(std::string_view name, bool amount_is_first);  // what stands beside the amount
bool is_shared(std::string_view name);                       // "of each"

// Of the head of a column.
const measures::Measure* column_unit(std::string_view words);
bool names_amounts(std::string_view words);
bool names_ingredients(std::string_view words);

// What all numbers are, where a heading says so ("in grams", "parts by weight", "(%)"); else `before`.
const measures::Measure* hint_in(std::string_view words, const measures::Measure* before);

}  // namespace pasted_headings
