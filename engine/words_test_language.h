// A language that nobody speaks, made from a table by rule, for finding what only holds in English: words
// that are in no table stand out, and places too narrow for a longer language show.
#pragma once

#include "words.h"

namespace words {

// How a browser asks for it: the tag that is usual for English with accents made up.
inline constexpr std::string_view kTestLanguage = "en-XA";

// Every vowel twice, so that a text is about a third longer, and accents on what can carry one in Latin-1 or
// Latin Extended-A. Places in braces stay. The page's tests know the same rule (tests/page/words.mjs).
Table test_language(const Table& table);

}  // namespace words
