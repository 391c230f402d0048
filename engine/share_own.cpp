// Layout of version 1: [id, name, role, source, standing, density, [market, inci…], [where, cap…], based_on,
// [ingredient, percent…], [lot, date, by, constituent, min, typical, max…], [language, name…]], ended at the
// last item that is not the default. Figures that may be unsaid are 1 + figure, or 0.
#include "share_own.h"

#include "share_figure.h"

namespace share_own {
namespace {

using cbor::Reader;
using cbor::Writer;
using share_figure::packed;

constexpr std::size_t kMostIdBytes = 80;
constexpr std::size_t kMostTextBytes = 1000;
constexpr std::uint64_t kMostEntries = 100;  // of one list
constexpr std::uint64_t kItems = 12;
constexpr std::uint64_t kItemsOfContent = 4;

void encode_texts(Writer& writer, const std::map<std::string, std::string>& texts) {
    writer.array(2 * texts.size());
    for (const auto& [key, text] : texts) {
        writer.text(key);
        writer.text(text);
    }
}

void decode_texts(Reader& reader, std::map<std::string, std::string>& texts) {
    const std::uint64_t pairs = reader.array(2 * kMostEntries) / 2;
    for (std::uint64_t i = 0; i < pairs && !reader.failed(); ++i) {
        std::string key = reader.text(kMostIdBytes);
        texts[std::move(key)] = reader.text(kMostTextBytes);
    }
}

void encode_content(Writer& writer, const std::optional<quantity::Percent>& percent) {
    writer.integer(percent ? packed(percent->grid) + 1 : 0);
}

bool percent_from(std::uint64_t figure, quantity::Percent& percent) {
    const std::optional<std::int64_t> grid = share_figure::unpacked(figure);
    if (!grid || *grid > quantity::kHundred.grid) return false;
    percent.grid = *grid;
    return true;
}

bool decode_content(Reader& reader, std::optional<quantity::Percent>& percent) {
    const std::uint64_t figure = reader.integer();
    if (figure == 0) return true;
    percent.emplace();
    return percent_from(figure - 1, *percent);
}

std::uint64_t items_of(const catalogue::Ingredient& own) {
    if (!own.names.empty()) return kItems;
    if (own.analysis) return kItems - 1;
    if (!own.parts.empty()) return kItems - 2;
    if (!own.based_on.empty()) return kItems - 3;
    if (!own.max_percent.empty()) return kItems - 4;
    if (!own.inci.empty()) return kItems - 5;
    if (own.density) return kItems - 6;
    return kItems - 7;
}

void encode_analysis(Writer& writer, const std::optional<catalogue::LotAnalysis>& analysis) {
    if (!analysis) return writer.array(0);
    writer.array(3 + kItemsOfContent * analysis->constituents.size());
    writer.text(analysis->lot);
    writer.text(analysis->date);
    writer.text(analysis->by);
    for (const auto& [constituent, content] : analysis->constituents) {
        writer.text(constituent);
        encode_content(writer, content.min);
        encode_content(writer, content.typical);
        encode_content(writer, content.max);
    }
}

bool decode_analysis(Reader& reader, std::optional<catalogue::LotAnalysis>& analysis) {
    const std::uint64_t items = reader.array(3 + kItemsOfContent * kMostEntries);
    if (items == 0) return true;
    analysis.emplace();
    analysis->lot = reader.text(kMostIdBytes);
    analysis->date = reader.text(kMostIdBytes);
    analysis->by = reader.text(kMostIdBytes);
    for (std::uint64_t at = 3; at < items && !reader.failed(); at += kItemsOfContent) {
        std::string constituent = reader.text(kMostIdBytes);
        catalogue::Content content;
        if (!decode_content(reader, content.min) || !decode_content(reader, content.typical) ||
            !decode_content(reader, content.max)) {
            return false;
        }
        analysis->constituents[std::move(constituent)] = content;
    }
    return true;
}

}  // namespace

void encode(Writer& writer, const catalogue::Ingredient& own) {
    const std::uint64_t items = items_of(own);
    writer.array(items);
    writer.text(own.id);
    writer.text(own.name);
    writer.text(own.role);
    writer.text(own.source);
    writer.integer(static_cast<std::uint64_t>(own.standing));
    if (items > 5) writer.integer(own.density ? packed(own.density->value.density.grid) : 0);
    if (items > 6) encode_texts(writer, own.inci);
    if (items > 7) {
        writer.array(2 * own.max_percent.size());
        for (const auto& [where, cap] : own.max_percent) {
            writer.text(where);
            writer.integer(packed(cap.grid));
        }
    }
    if (items > 8) writer.text(own.based_on);
    if (items > 9) {
        writer.array(2 * own.parts.size());
        for (const catalogue::Part& part : own.parts) {
            writer.text(part.ingredient);
            writer.integer(packed(part.percent.grid));
        }
    }
    if (items > 10) encode_analysis(writer, own.analysis);
    if (items > 11) encode_texts(writer, own.names);
}

std::optional<catalogue::Ingredient> decode(Reader& reader) {
    catalogue::Ingredient own;
    own.own = true;
    const std::uint64_t items = reader.array(kItems);
    own.id = reader.text(kMostIdBytes);
    own.name = reader.text(kMostIdBytes);
    own.role = reader.text(kMostIdBytes);
    own.source = reader.text(kMostTextBytes);
    const std::uint64_t standing = reader.integer();
    if (standing > static_cast<std::uint64_t>(source::Standing::estimate)) return std::nullopt;
    own.standing = static_cast<source::Standing>(standing);
    if (items > 5) {
        const std::optional<std::int64_t> density = share_figure::unpacked(reader.integer());
        if (!density) return std::nullopt;
        if (*density != 0)
            own.density = source::Sourced<catalogue::DensityAt>{{{*density}, {}}, own.source, own.standing};
    }
    if (items > 6) decode_texts(reader, own.inci);
    if (items > 7) {
        const std::uint64_t pairs = reader.array(2 * kMostEntries) / 2;
        for (std::uint64_t i = 0; i < pairs && !reader.failed(); ++i) {
            std::string where = reader.text(kMostIdBytes);
            if (!percent_from(reader.integer(), own.max_percent[std::move(where)])) return std::nullopt;
        }
    }
    if (items > 8) own.based_on = reader.text(kMostIdBytes);
    if (items > 9) {
        const std::uint64_t pairs = reader.array(2 * kMostEntries) / 2;
        for (std::uint64_t i = 0; i < pairs && !reader.failed(); ++i) {
            catalogue::Part part;
            part.ingredient = reader.text(kMostIdBytes);
            if (!percent_from(reader.integer(), part.percent)) return std::nullopt;
            own.parts.push_back(std::move(part));
        }
    }
    if (items > 10 && !decode_analysis(reader, own.analysis)) return std::nullopt;
    if (items > 11) decode_texts(reader, own.names);
    return own;
}

}  // namespace share_own
