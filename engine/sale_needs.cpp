#include "sale_needs.h"

namespace sale_needs {
namespace {

using market::Market;
using quantity::Percent;
using source::Standing;

constexpr unsigned bit(Market market) {
    return 1U << static_cast<unsigned>(market);
}
constexpr unsigned kUnion = bit(Market::eu) | bit(Market::ni);
constexpr unsigned kEurope = kUnion | bit(Market::gb);
constexpr unsigned kUs = bit(Market::us), kCa = bit(Market::ca), kAll = kEurope | kUs | kCa;

struct Row {
    unsigned markets;
    Need need;
};
constexpr std::array<Row, 24> kRows{{
    {kUnion, {"person_eu", "Reg. (EC) 1223/2009 Art. 4, 19(1)(a)", "eu_1223_19", Standing::document}},
    {bit(Market::gb), {"person_gb", "Reg. 2009/1223 in Great Britain", "uk_1223", Standing::document}},
    {kEurope, {"assessor", "Reg. (EC) 1223/2009 Art. 10, Annex I", "memory", Standing::memory}},
    {kEurope, {"file", "Reg. (EC) 1223/2009 Art. 11", "memory", Standing::memory}},
    {kEurope, {"practice", "Reg. (EC) 1223/2009 Art. 8", "memory", Standing::memory}},
    {kUnion, {"notify_eu", "Reg. (EC) 1223/2009 Art. 13", "memory", Standing::memory}},
    {bit(Market::gb), {"notify_gb", "Reg. 2009/1223 in Great Britain, Art. 13", "memory", Standing::memory}},
    {kUnion, {"language", "Reg. (EC) 1223/2009 Art. 19(5)", "memory", Standing::memory}},
    {kEurope, {"effects", "Reg. (EC) 1223/2009 Art. 23", "memory", Standing::memory}},
    {kEurope, {"claims_eu", "Reg. (EC) 1223/2009 Art. 20", "memory", Standing::memory}},
    {kUs, {"substantiation", "FD&C Act s. 608; 21 CFR 740.10", "fdca_612", Standing::document}},
    {kUs, {"registration", "FD&C Act s. 607, 612", "fdca_612", Standing::document}},
    {kUs, {"practice_us", "FD&C Act s. 606, 612", "fdca_612", Standing::document}},
    {kUs, {"events", "FD&C Act s. 605, 612", "fdca_612", Standing::document}},
    {kUs, {"drug", "FD&C Act s. 201(g); 21 CFR 347.50", "fdca_201", Standing::document}},
    {kUs, {"states", "", "memory", Standing::memory}},
    {kCa, {"notify_ca", "C.R.C., c. 869, s. 30, 31", "crc_869", Standing::document}},
    {kCa, {"bilingual", "C.R.C., c. 869, s. 18", "crc_869", Standing::document}},
    {kCa, {"hotlist", "Cosmetic Ingredient Hotlist", "ca_hotlist", Standing::document}},
    {kCa, {"hazard", "C.R.C., c. 869, s. 24", "crc_869", Standing::document}},
    {kCa, {"evidence", "C.R.C., c. 869, s. 21", "crc_869", Standing::document}},
    {kAll, {"keeping", "", "common_practice", Standing::common_practice}},
    {kAll, {"records", "", "common_practice", Standing::common_practice}},
    {kAll, {"insurance", "", "common_practice", Standing::common_practice}},
}};

}  // namespace

std::vector<Need> of(Market market, const std::set<std::string, std::less<>>& done) {
    std::vector<Need> needs;
    for (const Row& row : kRows) {
        if ((row.markets & bit(market)) == 0) continue;
        needs.push_back(row.need);
        needs.back().done = done.count(row.need.id) == 1;
    }
    return needs;
}

int canada_range(Percent percent) {
    // Over the first, up to and with the one before it; 0.0001 %.
    constexpr std::array<std::int64_t, 13> kOver{
        800'000, 650'000, 500'000, 400'000, 300'000, 200'000, 100'000, 30'000, 10'000, 3'000, 1'000, 10, 0};
    for (std::size_t i = 0; i < kOver.size(); ++i)
        if (percent.grid > kOver[i]) return static_cast<int>(i) + 1;
    return 0;
}

bool is_small_business(const std::array<std::int64_t, 3>& sales) {
    return sales[0] + sales[1] + sales[2] < 3 * kSmallBelow;
}

}  // namespace sale_needs
