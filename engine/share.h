// A recipe as the text after '#': base64url( version byte ‖ canonical CBOR ‖ CRC-32 big-endian ), and back.
// What belongs to the device (scales, prices, settings, ids) never travels. A link is hostile input: sizes
// are bounded before anything is allocated, and a recipe comes back whole or not at all.
#pragma once

#include <string>
#include <string_view>

#include "catalogue.h"
#include "result.h"
#include "workspace.h"

namespace share {

inline constexpr unsigned char kVersion = 2;  // the newest
inline constexpr std::size_t kMostCharacters = 8000;

// How much of a recipe goes into its link.
enum class Extent { all, without_notes, without_notes_and_steps };
workspace::Recipe cut_to(Extent extent, workspace::Recipe recipe);

// The lowest version that can carry the recipe, but for long recipes, or the version whose link is shortest.
enum class Form { usual, shortest };

// The link text with its '#'. link_too_long when it would pass kMostCharacters (offer a file instead).
result::Result<std::string> write(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                                  Form form = Form::usual);

// Takes a whole address, "#…" or the bare text; space around it is ignored. An ingredient number this version
// does not know becomes a line named "#<number>" with its percent kept.
result::Result<workspace::Recipe> read(std::string_view link, const catalogue::Catalogue& shipped);

}  // namespace share
