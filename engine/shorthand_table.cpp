// The table of version 2 of a link, frozen for ever (tests/test_shorthand.cpp holds its checksum): 256 bytes,
// then fragments that recipes are full of, each with the length of its code in bits, 'a' for 0. Made from the
// shipped recipes, ingredients and words by pairing what stands together most often; lengths as Huffman gives
// them.
#include "shorthand.h"

namespace shorthand {

const std::string_view kFragments[kFragmentCount] = {
    " Oil",   " a",    " a ",    " all",    " allerg", " and ", " ask",   " at ",      " b",    " m",
    " oil",   " the ", " w",     " water ", " wax",    " with", " with ", ") ",        ", ",    ", and ",
    ", s",    ". ",    ". C",    ". N",     ": ",      "; ",    "Leaf",   "Oil",       "Seed ", "St",
    "Th",     "Weigh", "_oil",   "a ",      "ac",      "ak",    "al",     "am",        "an",    "and",
    "ang",    "ar",    "at",     "at ",     "atch",    "ate",   "ater ",  "ax",        "ay",    "ay ",
    "ba",     "bath",  "be",     "ch",      "co",      "d ",    "di",     "distille",  "dr",    "dry",
    "e ",     "e a",   "e and ", "e the ",  "e, ",     "ea",    "eaf",    "eav",       "ec",    "ed",
    "ed ",    "ee",    "eed ",   "eep ",    "eigh",    "el",    "em",     "en",        "en ",   "ent",
    "ential", "er",    "er ",    "erg",     "es",      "es ",   "ess",    "essential", "et",    "ev",
    "flow",   "for",   "for ",   "hol",     "ia ",     "ial",   "ic",     "id",        "if",    "ig",
    "igh",    "il",    "in",     "in ",     "in the ", "ing",   "ing ",   "ip",        "ir",    "is ",
    "it",     "it ",   "ith",    "itr",     "itt",     "iv",    "jug",    "l ",        "la",    "le",
    "le ",    "li",    "lin",    "ll",      "lo",      "low",   "ly",     "m ",        "mon",   "nd ",
    "no",     "no ",   "o ",     "of",      "of ",     "oil",   "ol",     "old",       "om",    "on",
    "on ",    "one ",  "oo",     "op",      "or",      "or ",   "ot",     "ot ",       "ou",    "our",
    "out",    "out ",  "ow",     "own",     "own_",    "p ",    "per",    "pr",        "qu",    "ra",
    "re",     "ro",    "rom",    "s ",      "s and ",  "s, ",   "s.",     "sh",        "sk",    "skin",
    "sm",     "ss",    "st",     "stil",    "stille",  "stir",  "t ",     "ter",       "th",    "the",
    "the ",   "them ", "to",     "to ",     "ug",      "ul",    "um",     "um ",       "un",    "und",
    "up",     "ur",    "urn",    "us",      "us ",     "ut",    "utter",  "wax",       "with",  "y "};

const std::string_view kLengths =
    "oooooooooojooooooooooooooooooooogmmmmmmlijmmljhljlklljkklmjlmmmmmiihjjijijkjijjjimjijkkjmmlmmmmi"
    "mghggfghghjhhhhggkhfghhhjgkmmmmoknnnnnnnnnnnnnnnnnnnnnnnnlnnnnnnnnnnnnnnnnnnnnnnjnnnnnnnnnnnnnnn"
    "oojlooooooooooooooooooooooooooooookoooooooooooooooooooooooooooooihiljhjjhihhiijkijhjjhjjiikkjkjk"
    "jhijhihjjhhkkjnmjkkjjjiikkkjgkkjjjlkjijjnjkijhjjogiliikjijkjijjohjjjkigijijijihinjkjjiihljjijjkj"
    "jnikjjjkiijijjjiijijljkjkkjkjjkjiijhjjjimjjjhnokhjhlnjjjkjjjikjjjjiijkni";

}  // namespace shorthand
