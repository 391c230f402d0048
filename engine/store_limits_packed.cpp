// The book of limits packed: as the presets are (store_packed.cpp), with every text once, for its rows share
// documents, sources and product types.
#include "store_limits.h"
#include "store_packing.h"

namespace store_packing {

inline void pack(Out& out, const composition::Id& id) {
    out.cbor.integer(id);
}
inline void pack(In& in, composition::Id& id) {
    id = static_cast<composition::Id>(in.cbor.integer());
}

// Most figures are whole in a much coarser step than that of their grid: then they are written in that step.
inline void brief(Out& out, std::int64_t figure, std::int64_t step) {
    const auto value = static_cast<std::uint64_t>(figure);
    out.cbor.integer(figure % step == 0 ? static_cast<std::uint64_t>(figure / step) << 1 : value << 1 | 1);
}
inline std::int64_t brief(In& in, std::int64_t step) {
    const std::uint64_t value = in.cbor.integer();
    const auto figure = static_cast<std::int64_t>(value >> 1);
    return (value & 1) != 0 ? figure : figure * step;
}

constexpr std::int64_t kTraceStep = 100'000;  // 0.00001 %
inline void pack(Out& out, const quantity::Trace& trace) {
    brief(out, trace.grid, kTraceStep);
}
inline void pack(In& in, quantity::Trace& trace) {
    trace.grid = brief(in, kTraceStep);
}

constexpr std::int64_t kContentStep = 100;  // 0.01 %
inline void pack_content(Out& out, const catalogue::Content& content) {
    const std::optional<quantity::Percent> known[] = {content.min, content.typical, content.max};
    out.cbor.integer((known[0] ? 1u : 0u) | (known[1] ? 2u : 0u) | (known[2] ? 4u : 0u));
    for (const auto& one : known)
        if (one) brief(out, one->grid, kContentStep);
}
inline void pack_content(In& in, catalogue::Content& content) {
    const std::uint64_t known = in.cbor.integer();
    if ((known & 1) != 0) content.min = {brief(in, kContentStep)};
    if ((known & 2) != 0) content.typical = {brief(in, kContentStep)};
    if ((known & 4) != 0) content.max = {brief(in, kContentStep)};
}

template <class Way>
void pack(Way& way, Of<Way, composition::Constituent>& one) {
    all(way, one.id, one.name, one.sums_into, one.cas);
}

template <class Way>
void pack(Way& way, Of<Way, composition::Row>& one) {
    pack(way, one.constituent);
    pack_content(way, one.percent);
    all(way, one.source, one.standing);
}

template <class Way>
void pack(Way& way, Of<Way, composition::Carrier>& one) {
    all(way, one.ingredient, one.rows);
}

template <class Way>
void pack(Way& way, Of<Way, limits::Cap>& one) {
    pack(way, one.where);
    choice(way, one.verdict, limits::Verdict::gap);
    pack(way, one.most);
}

template <class Way>
void pack(Way& way, Of<Way, limits::Row>& one) {
    all(way, one.id, one.constituents, one.ingredients, one.names, one.within, one.document, one.edition);
    choice(way, one.force, limits::Force::warning);
    all(way, one.markets, one.from, one.from_months, one.until_months, one.caps, one.source, one.standing);
    pack(way, one.note);
}

template <class Way>
void pack(Way& way, Of<Way, limits::Type>& one) {
    all(way, one.id, one.products, one.source, one.standing);
}

template <class Way>
void pack(Way& way, Of<Way, limits::Allergen>& one) {
    all(way, one.entry, one.label, one.constituents, one.ingredients, one.names, one.cas, one.members);
    all(way, one.old, one.source, one.standing);
}

template <class Way>
void pack(Way& way, Of<Way, limits::Regime>& one) {
    all(way, one.market, one.from, one.until);
    choice(way, one.list, limits::List::extended_81);
    all(way, one.reason, one.sell_through, one.document, one.source, one.standing);
}

template <class Way>
void pack(Way& way, Of<Way, limits::Level>& one) {
    pack(way, one.id);
    choice(way, one.whom, limits::Whom::person);
    all(way, one.products, one.from_months, one.until_months, one.usual, one.most, one.document, one.edition);
    all(way, one.source, one.standing, one.note);
}

template <class Way>
void pack(Way& way, Of<Way, limits::Caution>& one) {
    all(way, one.id, one.ingredients, one.stop_months, one.warn_months, one.places, one.pregnancy);
    all(way, one.source, one.standing);
}

template <class Way>
void pack(Way& way, Of<Way, limits::Preservative>& one) {
    all(way, one.ingredient, one.id, one.document, one.edition, one.caps, one.source, one.standing);
    all(way, one.working_percent, one.working_source, one.working_standing, one.ph_low, one.ph_high);
    all(way, one.ph_source, one.ph_standing, one.note);
}

template <class Way>
void pack(Way& way, Of<Way, limits::Book>& one) {
    all(way, one.sources, one.composition.constituents, one.composition.carriers, one.types, one.rows);
    all(way, one.phototoxic, one.allergens, one.leave_on_above, one.rinse_off_above, one.regimes, one.levels);
    all(way, one.cautions, one.preservatives);
}

}  // namespace store_packing

namespace store {
namespace {

constexpr std::uint64_t kLimitsForm = 1;

// What is looked up by place must be there.
bool sound(const limits::Book& book) {
    const std::size_t known = book.composition.constituents.size();
    const auto fine = [&](composition::Id id) { return id < known; };
    for (const composition::Constituent& one : book.composition.constituents)
        if (one.sums_into != composition::kNone && !fine(one.sums_into)) return false;
    for (const composition::Carrier& carrier : book.composition.carriers)
        for (const composition::Row& row : carrier.rows)
            if (!fine(row.constituent)) return false;
    for (const limits::Row& row : book.rows)
        if (!std::all_of(row.constituents.begin(), row.constituents.end(), fine)) return false;
    for (const limits::Allergen& one : book.allergens)
        if (!std::all_of(one.constituents.begin(), one.constituents.end(), fine)) return false;
    return true;
}

}  // namespace

std::string pack_limits(const limits::Book& book) {
    store_packing::Out out;
    out.once = true;
    out.cbor.integer(kLimitsForm);
    pack(out, book);
    return store_packing::sum_of(out.cbor.bytes()) + out.cbor.bytes();
}

result::Result<limits::Book> unpack_limits(std::string_view bytes) {
    const std::string_view sum = bytes.substr(0, store_packing::kSumBytes), body = bytes.substr(sum.size());
    const result::Error damaged{result::Code::checksum_wrong, "limits", ""};
    if (sum != store_packing::sum_of(body)) return damaged;
    store_packing::In in{cbor::Reader(body), body.size()};
    in.once = true;
    if (in.cbor.integer() != kLimitsForm) return damaged;
    limits::Book book;
    pack(in, book);
    if (in.failed() || !in.cbor.at_end() || !sound(book)) return damaged;
    return book;
}

}  // namespace store
