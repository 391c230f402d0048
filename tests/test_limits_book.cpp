// The book of limits as it is shipped: what is in it is counted, so that a lost row fails; what a row must
// have; looking things up by product kind, market, day and age.
#include <algorithm>
#include <map>
#include <set>
#include <string>

#include "doctest/doctest.h"
#include "engine/limits_book.h"
#include "engine/store_limits.h"
#include "shipped.h"

namespace test_limits_book {

namespace {

using limits::Verdict;
using quantity::Trace;
using result::Code;

const catalogue::Product& product(std::string_view id) {
    const catalogue::Product* found = catalogue::find_product(shipped::presets().catalogue, id);
    REQUIRE(found != nullptr);
    return *found;
}

const limits::Row& row(std::string_view id, std::string_view market = "") {
    for (const limits::Row& one : shipped::book().rows)
        if (one.id == id && (market.empty() || limits::is_in(one, market))) return one;
    FAIL("there is no row ", std::string(id));
    return shipped::book().rows.front();
}

const limits::Cap& cap(std::string_view id, std::string_view kind) {
    const limits::Cap* found = limits::cap_for(shipped::book(), row(id).caps, product(kind));
    REQUIRE(found != nullptr);
    return *found;
}

Trace percent(double value) {  // of a test: at most six places
    return {static_cast<std::int64_t>(value * 1e6 + 0.5) * 10'000};
}

// The JSON of presets/ with one text in one file changed.
result::Result<limits::Book> changed(const std::string& file, const std::string& from,
                                     const std::string& to) {
    std::vector<store::File> files = shipped::files();
    std::string text;
    for (store::File& one : files) {
        if (one.first != file) continue;
        text = one.second;
        const auto at = text.find(from);
        REQUIRE(at != std::string::npos);
        text.replace(at, from.size(), to);
        one.second = text;
    }
    return store::read_limits(files, shipped::presets().catalogue);
}

}  // namespace

TEST_CASE("a limit is looked up by product kind: methyl eugenol in a salve, 0.0002 % in the EU (III/102)") {
    const limits::Cap& found = cap("III/102", "salve");
    CHECK(found.verdict == Verdict::at_most);
    CHECK(found.most == percent(0.0002));
    CHECK(cap("III/102", "body_scrub").most == percent(0.001));
    CHECK(cap("III/102", "lip_scrub").most == percent(0.0002));  // both stays and goes: the stricter
}

TEST_CASE("the program carries exactly the book that stands in the JSON") {
    const auto judged = store::read_limits(shipped::files(), shipped::presets().catalogue);
    REQUIRE(judged);
    CHECK(*judged == shipped::book());
    CHECK(store::pack_limits(*judged) == presets_data::kLimits);
    CHECK(presets_data::kLimits.size() < 60'000);
}

TEST_CASE("a book that was damaged or cut off is refused") {
    const std::string whole(presets_data::kLimits);
    CHECK(store::unpack_limits("").error().code == Code::checksum_wrong);
    CHECK_FALSE(store::unpack_limits(whole.substr(0, whole.size() - 1)));
    std::string bent = whole;
    bent[bent.size() / 2] = static_cast<char>(bent[bent.size() / 2] ^ 1);
    CHECK_FALSE(store::unpack_limits(bent));
}

TEST_CASE("all 81 printed names of Annex III are there, each with entry, number and what it covers") {
    const limits::Book& book = shipped::book();
    REQUIRE(book.allergens.size() == 81);
    std::set<std::int64_t> entries;
    std::size_t old = 0, substances = 0, whole = 0, groups = 0, members = 0, numbers = 0;
    for (const limits::Allergen& one : book.allergens) {
        CAPTURE(one.label);
        entries.insert(one.entry);
        old += one.old ? 1 : 0;
        CHECK_FALSE(one.cas.empty());
        numbers += one.cas.size();
        CHECK(one.standing == source::Standing::document);
        substances += one.constituents.empty() ? 0 : 1;
        whole += one.constituents.empty() ? 1 : 0;
        groups += one.members.empty() ? 0 : 1;
        members +=
            one.members.empty()
                ? 0
                : 1 + static_cast<std::size_t>(std::count(one.members.begin(), one.members.end(), ';'));
    }
    CHECK(entries.size() == 81);
    CHECK(*entries.begin() == 45);
    CHECK(*entries.rbegin() == 371);
    CHECK(old == 24);  // EU-AL-8, EU-AL-9
    // 24 old, 12 amended ones newly to be printed, 45 new ones from 327 on
    CHECK(std::count_if(entries.begin(), entries.end(), [](std::int64_t entry) { return entry >= 327; }) ==
          45);
    CHECK(substances + whole == 81);
    CHECK(whole == 29);
    CHECK(groups == 39);
    CHECK(members == 52);
    CHECK(numbers == 169);
    CHECK(book.leave_on_above == percent(0.001));
    CHECK(book.rinse_off_above == percent(0.01));
}

TEST_CASE("every row has document, edition, product types, source and standing") {
    const limits::Book& book = shipped::book();
    const catalogue::Catalogue& shipped_catalogue = shipped::presets().catalogue;
    std::map<Verdict, int> verdicts;
    for (const auto* rows : {&book.rows, &book.phototoxic})
        for (const limits::Row& one : *rows) {
            CAPTURE(one.id);
            CHECK_FALSE(one.document.empty());
            CHECK_FALSE(one.edition.empty());
            CHECK_FALSE(one.caps.empty());
            const source::Entry* entry = limits::find_source(book, one.source);
            if (entry == nullptr) entry = catalogue::find_source(shipped_catalogue, one.source);
            REQUIRE(entry != nullptr);
            CHECK(one.standing >= entry->standing);
            for (const limits::Cap& cap : one.caps)
                ++verdicts[cap.verdict];
        }
    CHECK(book.rows.size() == 198);
    CHECK(book.phototoxic.size() == 13);
    CHECK(verdicts[Verdict::at_most] == 260);
    CHECK(verdicts[Verdict::prohibited] == 15);
    CHECK(verdicts[Verdict::unlimited] == 24);
    CHECK(verdicts[Verdict::gap] == 60);
}

TEST_CASE("a row without document, edition, product type, source or standing is refused, and says where") {
    const std::string whole = R"("document": "IFRA Standard", "edition": "49th Amendment, 2020")";
    CHECK(changed("limits/rows.json", whole, R"("edition": "49th Amendment, 2020")").error().code ==
          Code::field_missing);
    CHECK(changed("limits/rows.json", whole, R"("document": "IFRA Standard")").error().code ==
          Code::field_missing);
    const std::string capped =
        R"("max_percent": {"any": 0.02}, "source": "cosing_iii_2026", "standing": "document")";
    CHECK(changed("limits/rows.json", capped, R"("source": "cosing_iii_2026", "standing": "document")")
              .error()
              .code == Code::field_missing);
    CHECK(changed("limits/rows.json", capped,
                  R"("max_percent": {}, "source": "cosing_iii_2026", "standing": "document")")
              .error()
              .code == Code::field_missing);
    CHECK(changed("limits/rows.json", capped, R"("max_percent": {"any": 0.02}, "standing": "document")")
              .error()
              .code == Code::preset_source_missing);
    const auto standing =
        changed("limits/rows.json", capped, R"("max_percent": {"any": 0.02}, "source": "cosing_iii_2026")");
    CHECK(standing.error().code == Code::field_missing);
    CHECK(standing.error().place == "limits/rows.json: III/73.standing");
    CHECK(
        changed("limits/rows.json", capped,
                R"("max_percent": {"somewhere": 0.02}, "source": "cosing_iii_2026", "standing": "document")")
            .error()
            .code == Code::field_unknown_value);
    // recalled from memory and called a document
    CHECK(changed("limits/rows.json",
                  R"("max_percent": {"any": 0.02}, "source": "memory", "standing": "memory")",
                  R"("max_percent": {"any": 0.02}, "source": "memory", "standing": "document")")
              .error()
              .code == Code::field_unknown_value);
    CHECK(
        changed("limits/rows.json", R"("constituents": ["isoeugenol"])", R"("constituents": ["isoeugenal"])")
            .error()
            .code == Code::field_unknown_value);
    CHECK(
        changed(
            "limits/rows.json", capped,
            R"("max_percent": {"any": 0.020000000001}, "source": "cosing_iii_2026", "standing": "document")")
            .error()
            .code == Code::number_too_fine);
}

TEST_CASE("what is known of each essential oil is counted, so that a lost figure fails") {
    const std::map<std::string, std::pair<int, int>> counted = {
        // rows that are there; printed or limited constituents of which nothing is said
        {"anise", {8, 62}},
        {"basil_estragole", {11, 60}},
        {"basil_linalool", {16, 57}},
        {"bergamot", {19, 57}},
        {"bergamot_fcf", {13, 59}},
        {"bitter_orange", {9, 63}},
        {"black_pepper", {15, 60}},
        {"camphor_white", {12, 61}},
        {"cardamom", {18, 58}},
        {"cassia", {8, 63}},
        {"cedarwood_atlas", {3, 68}},
        {"cedarwood_virginian", {3, 68}},
        {"chamomile_german", {6, 65}},
        {"chamomile_roman", {12, 61}},
        {"cinnamon_bark", {20, 55}},
        {"cinnamon_leaf", {21, 52}},
        {"citronella_ceylon", {13, 60}},
        {"citronella_java", {13, 58}},
        {"clary_sage", {14, 58}},
        {"clove_bud", {13, 59}},
        {"clove_leaf", {8, 62}},
        {"cornmint", {13, 61}},
        {"cypress", {13, 62}},
        {"eucalyptus_globulus", {12, 62}},
        {"eucalyptus_radiata", {11, 61}},
        {"fennel_bitter", {9, 63}},
        {"frankincense", {12, 62}},
        {"geranium", {16, 58}},
        {"ginger", {18, 58}},
        {"grapefruit", {11, 62}},
        {"helichrysum", {12, 62}},
        {"jasmine_absolute", {11, 60}},
        {"juniper", {17, 60}},
        {"lavandin", {15, 59}},
        {"lavender", {17, 58}},
        {"lemon_distilled", {17, 59}},
        {"lemon_expressed", {21, 58}},
        {"lemongrass", {16, 57}},
        {"lime_distilled", {17, 61}},
        {"lime_expressed", {18, 58}},
        {"litsea", {17, 57}},
        {"mandarin", {14, 60}},
        {"melissa", {14, 60}},
        {"myrrh", {3, 67}},
        {"neroli", {19, 58}},
        {"nutmeg", {21, 56}},
        {"oregano", {13, 60}},
        {"patchouli", {8, 64}},
        {"peppermint", {17, 58}},
        {"petitgrain", {15, 59}},
        {"pine_scots", {12, 63}},
        {"rose_absolute", {12, 59}},
        {"rose_otto", {16, 56}},
        {"rosemary_camphor", {16, 61}},
        {"rosemary_cineole", {17, 60}},
        {"sage", {18, 59}},
        {"sandalwood", {4, 67}},
        {"spearmint", {19, 59}},
        {"sweet_orange", {12, 63}},
        {"tangerine", {12, 63}},
        {"tea_tree", {15, 61}},
        {"thyme_linalool", {12, 59}},
        {"thyme_thymol", {16, 59}},
        {"vanilla", {1, 68}},
        {"vetiver", {2, 68}},
        {"wintergreen", {5, 65}},
        {"ylang_ylang", {17, 56}},
    };
    const limits::Book& book = shipped::book();
    std::map<std::string, std::pair<int, int>> found;
    for (const catalogue::Ingredient& one : shipped::presets().catalogue.ingredients) {
        if (one.role != "essential_oil" && one.role != "extract") continue;
        const composition::Carrier* carrier = composition::find_carrier(book.composition, one.id);
        REQUIRE_MESSAGE(carrier != nullptr, one.id);
        std::set<composition::Id> said;
        for (const composition::Row& known : carrier->rows)
            said.insert(known.constituent);
        int silent = 0;  // printed names and limited constituents of which nothing is said
        std::set<composition::Id> asked;
        for (const limits::Allergen& allergen : book.allergens)
            asked.insert(allergen.constituents.begin(), allergen.constituents.end());
        for (const limits::Row& limit : book.rows)
            asked.insert(limit.constituents.begin(), limit.constituents.end());
        for (const composition::Id id : asked)
            silent += said.count(id) == 0 ? 1 : 0;
        found[one.id] = {static_cast<int>(carrier->rows.size()), silent};
    }
    CHECK(found.size() == 67);
    for (const auto& [id, known] : found) {
        CAPTURE(id);
        const auto at = counted.find(id);
        if (at == counted.end()) {
            FAIL_CHECK("{\"", id, "\", {", known.first, ", ", known.second, "}},");
            continue;
        }
        CHECK(at->second.first == known.first);
        CHECK(at->second.second == known.second);
    }
}

TEST_CASE("a gap stays a gap: eugenol by IFRA has no figure, verbena absolute has five of eighteen") {
    CHECK(cap("IFRA 51 eugenol", "salve").verdict == Verdict::gap);
    CHECK(cap("IFRA 49 verbena absolute", "salve").most == percent(0.17));
    CHECK(cap("IFRA 49 verbena absolute", "face_oil").verdict == Verdict::gap);
    CHECK(cap("Essential Oil Safety, cornmint", "salve").verdict == Verdict::gap);
    CHECK(cap("Essential Oil Safety, lavender", "salve").verdict == Verdict::unlimited);
    CHECK(row("Hotlist menthol", "ca").caps.front().verdict == Verdict::gap);
}

TEST_CASE("EX-19: which list holds for a product new on a day and a market, with its reason") {
    using limits::List;
    const limits::Book& book = shipped::book();
    const auto list = [&](const char* market, const char* date) {
        const limits::Regime* found = limits::regime_on(book, market, date);
        REQUIRE(found != nullptr);
        CHECK_FALSE(found->reason.empty());
        return found->list;
    };
    CHECK(list("eu", "2026-07-31") == List::old_24);
    CHECK(list("eu", "2026-08-01") == List::extended_81);
    CHECK(list("eu", "2026-11-25") == List::extended_81);  // EU-AL-3
    CHECK(list("ni", "2026-08-01") == List::extended_81);
    CHECK(list("gb", "2026-11-25") == List::old_24);
    CHECK(list("ca", "2026-04-11") == List::none);
    CHECK(list("ca", "2026-04-12") == List::old_24);
    CHECK(list("ca", "2026-07-31") == List::old_24);
    CHECK(list("ca", "2026-08-01") == List::extended_81);
    CHECK(list("us", "2026-11-25") == List::none);
    CHECK(limits::regime_on(book, "au", "2026-11-25") == nullptr);
    CHECK(limits::regime_on(book, "eu", "2026-08-01")->sell_through == "2028-07-31");  // EU-AL-2
}

TEST_CASE("children have rows of their own: methyl salicylate in the EU and in Great Britain") {
    CHECK_FALSE(limits::is_for(row("III/324 (children)"), std::nullopt));
    CHECK(limits::is_for(row("III/324 (children)"), 71));
    CHECK_FALSE(limits::is_for(row("III/324 (children)"), 72));  // six years old
    CHECK(row("III/324 (children)").caps.front().verdict == Verdict::prohibited);
    CHECK(row("III/324 (6 to 12 months)").caps.front().most == percent(0.02));  // SI 2025/413
    CHECK(limits::is_for(row("III/324"), std::nullopt));
    CHECK(cap("III/324", "lip_balm").most == percent(0.03));
    CHECK(cap("III/324", "salve").most == percent(0.06));
}

TEST_CASE("IFRA categories as printed: methyl eugenol, estragole, cinnamyl alcohol, citronellal") {
    CHECK(cap("IFRA 49 methyl eugenol", "lip_balm").most == percent(0.00058));
    CHECK(cap("IFRA 49 methyl eugenol", "face_oil").most == percent(0.00058));
    CHECK(cap("IFRA 49 methyl eugenol", "salve").most == percent(0.002));
    CHECK(cap("IFRA 49 methyl eugenol", "baby_balm").most == percent(0.00019));
    CHECK(cap("IFRA 49 estragole", "salve").most == percent(0.075));
    CHECK(cap("IFRA 49 estragole", "face_cream").most == percent(0.0062));
    CHECK(cap("IFRA 49 cinnamyl alcohol", "deodorant").most == percent(0.067));
    CHECK(cap("IFRA 49 citronellal", "body_scrub").most == percent(1.4));
    CHECK(cap("IFRA 51 oakmoss and treemoss", "lip_balm").most == percent(0.02));  // EX2-8
    CHECK(cap("IFRA 51 oakmoss and treemoss", "salve").most == percent(0.076));
}

TEST_CASE("each product kind has its level of essential oils, or is known to have none") {
    const limits::Book& book = shipped::book();
    std::set<std::string> without;
    for (const catalogue::Product& one : shipped::presets().catalogue.products)
        if (limits::level_for_use(book, one.id) == nullptr) without.insert(one.id);
    CHECK(without == std::set<std::string>{"baby_balm", "deodorant", "solid_perfume"});
    CHECK(limits::level_for_use(book, "lip_balm")->most == percent(1));
    CHECK(limits::level_for_age(book, 2)->most == Trace{});
    CHECK(limits::level_for_age(book, 3)->most == percent(0.5));
    CHECK(limits::level_for_age(book, 24)->most == percent(2));
    CHECK(limits::level_for_age(book, 179)->most == percent(3));
    CHECK(limits::level_for_age(book, 180)->most == percent(5));
    CHECK(limits::level_for_person(book, "pregnant")->most == percent(1));
}

TEST_CASE("preservatives are limited as they are sold: the salt, where the acid is limited") {
    const limits::Preservative* benzoate = limits::find_preservative(shipped::book(), "sodium_benzoate");
    REQUIRE(benzoate != nullptr);
    CHECK(limits::cap_for(shipped::book(), benzoate->caps, product("hand_lotion"))->most == percent(0.59));
    CHECK(limits::cap_for(shipped::book(), benzoate->caps, product("body_scrub"))->most == percent(2.95));
    CHECK(benzoate->ph_high == 55000);
    std::size_t covered = 0;
    for (const catalogue::Ingredient& one : shipped::presets().catalogue.ingredients)
        if (one.role == "preservative") {
            CAPTURE(one.id);
            CHECK(limits::find_preservative(shipped::book(), one.id) != nullptr);
            ++covered;
        }
    CHECK(covered == shipped::book().preservatives.size());
}

}  // namespace test_limits_book
