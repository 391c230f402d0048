#include "share_label.h"

#include "share_figure.h"

namespace share_label {
namespace {

using cbor::Reader;
using cbor::Writer;
using type_height::Shape;

constexpr std::uint64_t kItems = 13;
constexpr std::uint64_t kNeverOpened = 1, kTogether = 2, kLeaflet = 4, kMoulded = 8;

void write_texts(Writer& writer, const std::vector<std::string>& texts) {
    writer.array(texts.size());
    for (const std::string& one : texts)
        writer.text(one);
}
void read_texts(Reader& reader, std::vector<std::string>& texts, std::uint64_t most, std::size_t most_bytes) {
    const std::uint64_t count = reader.array(most);
    for (std::uint64_t i = 0; i < count && !reader.failed(); ++i)
        texts.push_back(reader.text(most_bytes));
}

std::uint64_t optional_months(std::optional<std::int64_t> months) {
    return months ? static_cast<std::uint64_t>(*months) + 1 : 0;
}
bool read_months(Reader& reader, std::optional<std::int64_t>& months) {
    const std::uint64_t said = reader.integer();
    if (said > static_cast<std::uint64_t>(label::kMostMonths) + 1) return false;
    if (said > 0) months = static_cast<std::int64_t>(said - 1);
    return true;
}

std::uint64_t packed(std::int64_t grid) {
    return share_figure::packed(grid);
}

}  // namespace

void write(Writer& writer, const label::Said& said) {
    writer.array(kItems);
    writer.integer((said.keeping.never_opened ? kNeverOpened : 0) | (said.scent_together ? kTogether : 0) |
                   (said.leaflet ? kLeaflet : 0) | (said.panel && said.panel->moulded ? kMoulded : 0));
    writer.text(said.identity);
    writer.text(said.identity_french);
    writer.integer(optional_months(said.keeping.months));
    writer.integer(optional_months(said.keeping.opened_months));
    for (const auto* texts : {&said.colours, &said.nano, &said.may_contain, &said.warnings, &said.directions})
        write_texts(writer, *texts);
    writer.integer(said.panel ? static_cast<std::uint64_t>(said.panel->shape) + 1 : 0);
    writer.integer(said.panel ? packed(said.panel->height) : 0);
    writer.integer(said.panel ? packed(said.panel->width) : 0);
}

bool read(Reader& reader, label::Said& said) {
    if (reader.array(kItems) != kItems) return false;
    const std::uint64_t flags = reader.integer();
    if (flags > (kNeverOpened | kTogether | kLeaflet | kMoulded)) return false;
    said.keeping.never_opened = (flags & kNeverOpened) != 0;
    said.scent_together = (flags & kTogether) != 0;
    said.leaflet = (flags & kLeaflet) != 0;
    said.identity = reader.text(label::kMostLineBytes);
    said.identity_french = reader.text(label::kMostLineBytes);
    if (!read_months(reader, said.keeping.months) || !read_months(reader, said.keeping.opened_months))
        return false;
    for (auto* texts : {&said.colours, &said.nano, &said.may_contain})
        read_texts(reader, *texts, label::kMostIds, label::kMostLineBytes);
    for (auto* texts : {&said.warnings, &said.directions})
        read_texts(reader, *texts, label::kMostSentences, label::kMostSentenceBytes);
    const std::uint64_t shape = reader.integer(), height = reader.integer(), width = reader.integer();
    if (shape == 0) return (flags & kMoulded) == 0 && height == 0 && width == 0;
    if (shape > static_cast<std::uint64_t>(Shape::other) + 1) return false;
    const auto high = share_figure::unpacked(height), wide = share_figure::unpacked(width);
    if (!high || !wide) return false;
    said.panel = type_height::Panel{static_cast<Shape>(shape - 1), *high, *wide, (flags & kMoulded) != 0};
    return true;
}

}  // namespace share_label
