// The sentences of a reading, from the table of words: what each statement says, what of the list a conflict
// rests on, and the change that would mend it. Names of items are handed in, as the screen shows them.
#pragma once

#include <string>
#include <vector>

#include "reading_work.h"
#include "words.h"

namespace reading {

using Names = std::vector<std::string>;  // of each item

std::string say(const words::Table& table, const Problem& problem, const Names& names,
                const Statement& statement);
// A statement (its whole sentence), the place of the line, or what the list itself says.
std::string say(const words::Table& table, const Problem& problem, const Names& names, const Said& said);
std::string say(const words::Table& table, const Problem& problem, const Names& names, const Mend& mend);
std::string say(const words::Table& table, const Problem& problem, const Names& names, const Gain& gain);
// "Beeswax, Shea butter and 2 more"
std::string list_of(const words::Table& table, const Names& names, const Statement& statement);

}  // namespace reading
