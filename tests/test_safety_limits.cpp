// Constituents, oils, phototoxicity and allergens: the worked examples of the facts on essential oils (T…)
// and on regulation (EX…, EX2-…) by their names, boundaries, and what is known about a bottle.
#include <set>
#include <string>
#include <vector>

#include "limited.h"

namespace test_safety_limits {

namespace {

using finding::Code;
using finding::Severity;
using limited::found;
using limited::made;
using limited::not_made;
using limited::percent;
using limited::Setup;
using limited::trace;
using Names = std::vector<std::string>;

const std::map<std::string, double> kPeppermint = {
    {"menthol", 55},          {"limonene", 5},    {"pinene", 3.5},    {"caryophyllene", 3.5},
    {"carvone", 1},           {"linalool", 0.6},  {"terpineol", 0.6}, {"terpinolene", 0.3},
    {"alpha_terpinene", 0.6}, {"menthofuran", 9}, {"pulegone", 4},    {"cineole", 14}};

}  // namespace

TEST_CASE("T01: peppermint at 2 % in a lip balm: what it comes to and what is to be named") {
    Setup setup({{"peppermint", 2}});
    setup.with("lip_balm").holding("peppermint", kPeppermint);
    CHECK(setup.high("menthol") == trace("1.1"));
    CHECK(setup.high("limonene") == trace("0.1"));
    CHECK(setup.high("linalool") == trace("0.012"));
    CHECK(setup.high("menthofuran") == trace("0.18"));
    CHECK(setup.high("cineole") == trace("0.28"));
    CHECK(setup.named() == Names{"Alpha-Terpinene", "Beta-Caryophyllene", "Carvone", "Limonene", "Linalool",
                                 "Mentha Piperita Oil", "Menthol", "Pinene", "Terpineol", "Terpinolene"});
    const auto report = setup.report();
    CHECK(made(report, "Essential Oil Safety, menthofuran"));
    CHECK(found(report, "Essential Oil Safety, menthofuran") == nullptr);  // 0.36 of its limit
    CHECK(made(report, "Essential Oil Safety, peppermint"));
    CHECK(found(report, "Essential Oil Safety, peppermint") == nullptr);  // 5.4 %
}

TEST_CASE("T02: peppermint at 3 % in a lip balm") {
    Setup setup({{"peppermint", 3}});
    setup.with("lip_balm").holding("peppermint", kPeppermint);
    CHECK(setup.high("menthol") == trace("1.65"));
    CHECK(setup.high("menthofuran") == trace("0.27"));
    CHECK(setup.high("terpinolene") == trace("0.009"));
    CHECK(setup.named().size() == 10);
    CHECK(found(setup.report(), "Essential Oil Safety, menthofuran") == nullptr);
    const safety::Report report = setup.report();
    const finding::Finding* total = found(report, Code::oils_over_for_use);  // 1 % on lips
    REQUIRE(total != nullptr);
    CHECK(total->trace == trace("3"));
    CHECK(total->trace_limit == trace("1"));
}

TEST_CASE("T03: the smallest share of an oil that makes a name due, by its content") {
    struct Example {
        double content, leave_on, rinse_off;
    };
    for (const Example& one : {Example{50, 0.002, 0.02}, Example{5, 0.02, 0.2}, Example{1, 0.1, 1},
                               Example{0.5, 0.2, 2}, Example{0.1, 1, 10}}) {
        CAPTURE(one.content);
        for (const auto& [product, share] :
             {std::pair{"salve", one.leave_on}, std::pair{"body_scrub", one.rinse_off}}) {
            Setup at({});
            at.with(product).holding("cypress", {{"linalool", one.content}});
            at.add("cypress", "", percent(share));
            CHECK(at.named().empty());  // at the threshold exactly
            at.formula.lines[0].percent = at.formula.lines[0].percent + quantity::Percent{1};
            CHECK(at.named() == Names{"Linalool"});
        }
    }
}

TEST_CASE("T04, EX-7: a name is due strictly above 0.001 % on the skin and 0.01 % rinsed off") {
    struct Example {
        double line;
        const char* comes_to;
        bool leave_on, rinse_off;
    };
    for (const Example& one :
         {Example{1, "0.001", false, false}, Example{1.0001, "0.0010001", true, false},
          Example{1.01, "0.00101", true, false}, Example{10, "0.01", true, false},
          Example{10.0001, "0.0100001", true, true}, Example{10.1, "0.0101", true, true}}) {
        CAPTURE(one.comes_to);
        Setup setup({{"cypress", one.line}});
        setup.holding("cypress", {{"limonene", 0.1}});
        CHECK(setup.high("limonene") == trace(one.comes_to));
        CHECK(setup.named() == (one.leave_on ? Names{"Limonene"} : Names{}));
        CHECK(setup.with("body_scrub").named() == (one.rinse_off ? Names{"Limonene"} : Names{}));
    }
}

TEST_CASE("T05: one allergen from three oils is one sum") {
    Setup setup({{"lavender", 0.6}, {"sweet_orange", 0.8}, {"lemongrass", 0.1}});
    setup
        .holding("lavender", {{"linalool", 45},
                              {"linalyl_acetate", 47},
                              {"limonene", 1},
                              {"caryophyllene", 6},
                              {"geraniol", 1}})
        .holding("sweet_orange", {{"limonene", 97}, {"linalool", 0.7}, {"citral", 0.3}})
        .holding("lemongrass",
                 {{"citral", 88}, {"geraniol", 8}, {"limonene", 4}, {"linalool", 1.8}, {"caryophyllene", 4}});
    CHECK(setup.high("linalool") == trace("0.2774"));
    CHECK(setup.high("linalyl_acetate") == trace("0.282"));
    CHECK(setup.high("limonene") == trace("0.786"));
    CHECK(setup.high("caryophyllene") == trace("0.04"));
    CHECK(setup.high("geraniol") == trace("0.014"));
    CHECK(setup.high("citral") == trace("0.0904"));  // 0.15 of 0.6 %
    CHECK(setup.named() == Names{"Beta-Caryophyllene", "Citral", "Citrus Aurantium Peel Oil", "Geraniol",
                                 "Lavandula Oil/Extract", "Lemongrass Oil", "Limonene", "Linalool",
                                 "Linalyl Acetate"});
}

TEST_CASE("T06, EX-10: citral is geranial and neral together") {
    Setup lemon({{"lemon_expressed", 1}});
    lemon.holding("lemon_expressed", {{"geranial", 2.3}, {"neral", 1.5}});
    CHECK(lemon.high("citral") == trace("0.038"));
    const Names named = lemon.named();
    CHECK(std::count(named.begin(), named.end(), "Citral") == 1);
    Setup traces({{"cypress", 0.01}});  // 0.0006 and 0.0005 %: each below 0.001, together above
    traces.holding("cypress", {{"geranial", 6}, {"neral", 5}});
    CHECK(traces.high("citral") == trace("0.0011"));
    CHECK(traces.named() == Names{"Citral"});
}

TEST_CASE("T07: two oils under one printed name are added") {
    Setup setup({{"sweet_orange", 0.0006}, {"bitter_orange", 0.0006}});
    setup.holding("sweet_orange", {{"limonene", 97}}).holding("bitter_orange", {{"limonene", 96}});
    CHECK(setup.high("limonene") == trace("0.001158"));
    CHECK(setup.named() == Names{"Citrus Aurantium Peel Oil", "Limonene"});
    const auto all = safety::allergens_of(setup.the());
    CHECK(all.named[0].amount == trace("0.0012"));
    CHECK(all.named[0].why == "sweet_orange, bitter_orange");
}

TEST_CASE("T08: rinsed off, coumarin at 0.003 % is not named") {
    Setup setup({{"lavender", 3}});
    setup.with("body_scrub")
        .holding("lavender", {{"linalool", 45},
                              {"linalyl_acetate", 47},
                              {"geraniol", 1},
                              {"coumarin", 0.1},
                              {"limonene", 1},
                              {"caryophyllene", 6}});
    CHECK(setup.high("coumarin") == trace("0.003"));
    CHECK(setup.high("linalool") == trace("1.35"));
    CHECK(setup.named() == Names{"Beta-Caryophyllene", "Geraniol", "Lavandula Oil/Extract", "Limonene",
                                 "Linalool", "Linalyl Acetate"});
}

TEST_CASE("T09, T10, T12, EX-14: fractions of the phototoxic limits are added and may reach 1") {
    const auto sum = [](const std::vector<std::pair<std::string, double>>& lines,
                        const char* product = "body_oil") {
        Setup setup(lines);
        const auto report = setup.with(product).report();
        const finding::Finding* one = found(report, Code::phototoxic_over);
        return one == nullptr ? std::string() : words::trace(words::Table{}, *one->trace);
    };
    CHECK(sum({{"bergamot", 0.2}, {"lemon_expressed", 0.8}, {"lime_expressed", 0.1}}).substr(0, 8) ==
          "104.2857");
    CHECK(sum({{"grapefruit", 2}, {"lemon_expressed", 0.5}}).empty());  // 0.75
    CHECK(sum({{"bergamot", 0.4}}).empty());                            // T12: exactly 1
    CHECK_FALSE(sum({{"bergamot", 0.4001}}).empty());
    CHECK(sum({{"bergamot", 0.2}, {"lemon_expressed", 1}}).empty());  // EX-14: 1.00
    CHECK(sum({{"bergamot", 0.21}, {"lemon_expressed", 1}}) == "102.5");
    CHECK(sum({{"bergamot", 0.21}, {"lemon_expressed", 1}}, "body_scrub")
              .empty());  // rinsed off: no such limit
}

TEST_CASE("T11: distilled and bergapten-free citrus adds nothing") {
    Setup setup({{"lime_distilled", 2}, {"lemon_distilled", 2}, {"bergamot_fcf", 1}, {"sweet_orange", 3}});
    const auto report = setup.with("body_oil").report();
    CHECK(found(report, Code::phototoxic_over) == nullptr);
    const auto looked = std::find_if(report.made.begin(), report.made.end(),
                                     [](const auto& one) { return one.rule == safety::Rule::phototoxic; });
    REQUIRE(looked != report.made.end());
    CHECK(looked->looked_at.empty());
}

TEST_CASE("T13, EX-2: where a bottle says its bergapten, 0.0015 % in all is the limit besides") {
    const auto check = [](double oil, double bergapten) {
        Setup setup({{"my_bergamot", oil}});
        setup.bottle("my_bergamot", "bergamot", {{"bergapten", {{}, percent(bergapten), {}}}}, true);
        const auto report = setup.with("body_oil").report();
        CHECK(made(report, "IFRA bergapten"));
        return std::pair{setup.high("bergapten"), found(report, "IFRA bergapten") == nullptr};
    };
    CHECK(check(0.4, 0.32) == std::pair{trace("0.00128"), true});
    CHECK(check(0.5, 0.32) == std::pair{trace("0.0016"), false});
    CHECK(check(1, 0.32) == std::pair{trace("0.0032"), false});
    CHECK(check(0.4, 0.35) == std::pair{trace("0.0014"), true});  // EX-2
    Setup unmeasured({{"bergamot", 0.3}});
    CHECK_FALSE(
        made(unmeasured.with("body_oil").report(), "IFRA bergapten"));  // then the oil's own limit holds
}

TEST_CASE("EX-1: 0.0015 % in the product is 0.0075 % in a compound used at 20 %") {
    for (const auto& [content, passes] : {std::pair{0.0075, true}, std::pair{0.0076, false}}) {
        Setup setup({{"compound", 20}});
        setup.bottle("compound", "", {{"bergapten", {{}, {}, percent(content)}}}, true);
        CHECK((found(setup.report(), "IFRA bergapten") == nullptr) == passes);
    }
}

TEST_CASE("T17: wintergreen in the EU: 0.06 % methyl salicylate, 0.03 % on lips, none under six") {
    Setup setup({{"wintergreen", 0.06}});
    CHECK(found(setup.report(), "III/324") == nullptr);  // 0.05994 %
    setup.formula.lines[0].percent = percent(0.0601);
    CHECK(found(setup.report(), "III/324")->trace == trace("0.0600399"));
    setup.with("lip_balm").formula.lines[0].percent = percent(0.03);
    CHECK(found(setup.report(), "III/324") == nullptr);
    setup.formula.lines[0].percent = percent(0.0301);
    CHECK(found(setup.report(), "III/324") != nullptr);
    const auto report = setup.with("salve").child(71).report();
    REQUIRE(found(report, "III/324 (children)") != nullptr);
    CHECK(found(report, "III/324 (children)")->code == Code::constituent_not_for_age);
    CHECK(found(report, "III/324 (children)")->severity == Severity::stop);
    CHECK(found(setup.child(72).report(), "III/324 (children)") == nullptr);
}

TEST_CASE("T25: 1.5 % lavender for a child of two to six: within the most, above what is recommended") {
    Setup setup({{"lavender", 1.5}});
    const auto report = setup.child(36).report();
    CHECK(found(report, Code::oils_over_for_age) == nullptr);
    const finding::Finding* above = found(report, Code::oils_above_usual_for_age);
    REQUIRE(above != nullptr);
    CHECK(above->severity == Severity::caution);
    CHECK(above->trace == trace("1.5"));
    CHECK(above->trace_limit == trace("1"));
    setup.formula.lines[0].percent = percent(2.0001);
    CHECK(found(setup.report(), Code::oils_over_for_age)->severity == Severity::stop);
}

TEST_CASE("T26: peppermint in a balm for a child of two is stopped") {
    Setup setup({{"peppermint", 0.5}});
    const auto report = setup.child(24).report();
    const finding::Finding* one = found(report, Code::oil_not_for_child);
    REQUIRE(one != nullptr);
    CHECK(one->severity == Severity::stop);
    CHECK(one->subject == "peppermint");
    CHECK(one->limit == 3 * decimal::kOne);
    CHECK(found(setup.child(48).report(), Code::oil_with_care_for_child) != nullptr);
    CHECK(found(setup.child(48).report(), Code::oil_not_for_child) == nullptr);
}

TEST_CASE("no oils under three months, and a balm for babies whose age is not said is for the youngest") {
    Setup setup({{"lavender", 0.1}});
    CHECK(found(setup.child(2).report(), Code::oils_not_for_baby)->severity == Severity::stop);
    CHECK(found(setup.child(3).report(), Code::oils_not_for_baby) == nullptr);
    Setup baby({{"lavender", 0.6}});
    CHECK(found(baby.with("baby_balm").report(), Code::oils_over_for_age)->trace_limit == trace("0.5"));
}

TEST_CASE("in pregnancy at most 1 % in all, and some oils not at all") {
    Setup setup({{"lavender", 0.6}, {"clary_sage", 0.5}, {"sage", 0.1}});
    setup.person = "pregnant";
    const auto report = setup.report();
    CHECK(found(report, Code::oils_over_for_person)->trace == trace("1.2"));
    CHECK(found(report, Code::oil_not_in_pregnancy)->subject == "sage");
}

TEST_CASE("T27: tea tree at 1 % in a face cream passes one guidance and not the EU's opinion") {
    Setup setup({{"tea_tree", 1}});
    const auto report = setup.with("face_cream").report();
    CHECK(found(report, "SCCS/1681/25")->trace_limit == trace("0.1"));
    CHECK(made(report, "Essential Oil Safety, tea tree"));
    CHECK(found(report, "Essential Oil Safety, tea tree") == nullptr);  // 15 %
    const auto salve = setup.with("salve").report();  // other uses were not looked at: no figure
    REQUIRE(not_made(salve, "SCCS/1681/25") != nullptr);
    CHECK(not_made(salve, "SCCS/1681/25")->about == Names{"tea_tree"});
}

TEST_CASE("T28: a trace of rose otto needs no name and keeps the EU's methyl eugenol limit") {
    Setup setup({{"rose_otto", 0.0005}});
    setup.holding("rose_otto", {{"citronellol", 49}, {"methyl_eugenol", 3.3}});
    CHECK(setup.high("citronellol") == trace("0.000245"));
    CHECK(setup.high("methyl_eugenol") == trace("0.0000165"));
    CHECK(setup.named().empty());
    CHECK(found(setup.report(), "III/102") == nullptr);
}

TEST_CASE("T29: no oil, no names, no sum") {
    Setup setup({{"lavender", 0}});
    CHECK(setup.named().empty());
    CHECK(setup.high("linalool") == quantity::Trace{});
    for (const finding::Finding& one : setup.report().findings)
        FAIL_CHECK(finding::code_name(one.code));
}

TEST_CASE("T30: of vanilla the worst case counts, and what is not known is not passed") {
    Setup setup({{"vanilla", 1}});
    const auto all = safety::allergens_of(setup.the());
    REQUIRE(all.named.size() == 1);
    CHECK(all.named[0].label_name == "Vanillin");
    CHECK(all.named[0].amount == trace("0.35"));
    CHECK(all.named[0].standing == source::Standing::memory);
    CHECK(not_made(setup.report(), "III/102") != nullptr);  // nothing is said of methyl eugenol in it
    Setup unheard({});
    unheard.add("", "Mystery absolute", percent(1));
    CHECK(safety::allergens_of(unheard.the()).unknown == Names{"Mystery absolute"});
    CHECK(not_made(unheard.report(), "III/73") != nullptr);
}

TEST_CASE("T31: pulegone of a peppermint bottle against the CIR's 1 % of the oil") {
    for (const auto& [pulegone, passes] :
         {std::pair{0.8, true}, std::pair{1.0, true}, std::pair{2.0, false}, std::pair{4.0, false}}) {
        CAPTURE(pulegone);
        Setup setup({{"my_mint", 1}});
        setup.bottle("my_mint", "peppermint", {{"pulegone", {{}, percent(pulegone), {}}}}, true);
        const auto report = setup.report();
        CHECK(made(report, "CIR, pulegone in peppermint oil"));
        CHECK((found(report, Code::oil_impure) == nullptr) == passes);
    }
    Setup range({{"peppermint", 1}});  // 0 to 4 %: cannot say
    CHECK(not_made(range.report(), "CIR, pulegone in peppermint oil")->reason ==
          safety::Reason::certificate_unsaid);
}

TEST_CASE("EX-8: lip balm with 1 % peppermint at 40 % menthol") {
    Setup setup({{"peppermint", 1}});
    setup.with("lip_balm").holding("peppermint", {{"menthol", 40}});
    CHECK(setup.high("menthol") == trace("0.4"));
    CHECK(setup.named() == Names{"Mentha Piperita Oil", "Menthol"});
}

TEST_CASE("EX-9: the same allergen of two oils") {
    Setup setup({{"cypress", 0.3}, {"juniper", 0.2}});
    setup.holding("cypress", {{"linalool", 30}}).holding("juniper", {{"linalool", 5}});
    CHECK(setup.high("linalool") == trace("0.1"));
}

TEST_CASE("EX-11: methyl eugenol of rose oil in a face cream: the EU's limit, IFRA 5B") {
    Setup setup({{"rose_otto", 0.01}});
    setup.with("face_cream").holding("rose_otto", {{"methyl_eugenol", 2}});
    CHECK(setup.high("methyl_eugenol") == trace("0.0002"));
    CHECK(found(setup.report(), "III/102") == nullptr);
    CHECK(found(setup.report(), "IFRA 49 methyl eugenol") == nullptr);
    setup.formula.lines[0].percent = percent(0.02);
    const auto report = setup.report();
    const finding::Finding* one = found(report, "III/102");
    REQUIRE(one != nullptr);
    CHECK(one->severity == Severity::stop);
    CHECK(one->trace == trace("0.0004"));
    CHECK(one->trace_limit == trace("0.0002"));
    CHECK(one->edition == "CosIng, May 2024");
    CHECK(one->source == "cosing_iii_2024");
    REQUIRE(one->shares.size() == 1);
    CHECK(one->shares[0].subject == "rose_otto");
    CHECK(found(report, "IFRA 49 methyl eugenol") == nullptr);  // 0.00058; category 3 would have 0.00029
}

TEST_CASE("EX-20: rose ketones are summed") {
    Setup setup({{"first", 1}, {"second", 1}});
    setup.bottle("first", "", {{"rose ketones (damascenone, damascones)", {{}, percent(1.2), {}}}}, true)
        .bottle("second", "", {{"rose_ketones", {{}, percent(0.9), {}}}}, true);
    CHECK(setup.high("rose_ketones") == trace("0.021"));
    CHECK(found(setup.report(), "III/157")->trace_limit == trace("0.02"));
}

TEST_CASE("EX-21: eucalyptus in Canada: a warning is due above 0.022 %") {
    Setup setup({{"eucalyptus_globulus", 0.022}});
    CHECK(found(setup.in("ca").report(), Code::warning_due) == nullptr);
    setup.formula.lines[0].percent = percent(0.03);
    const auto report = setup.report();
    CHECK(found(report, Code::warning_due)->severity == Severity::caution);
    CHECK(not_made(report, "Hotlist camphor")->reason == safety::Reason::no_figure);
    CHECK(found(setup.in("eu").report(), Code::warning_due) == nullptr);
}

TEST_CASE("EX2-8: oakmoss and treemoss share one limit, known by name") {
    Setup lips({});
    lips.with("lip_balm")
        .add("", "Oakmoss absolute", percent(0.012))
        .add("", "Treemoss absolute", percent(0.009));
    const auto report = lips.report();
    CHECK(found(report, "IFRA 51 oakmoss and treemoss")->trace == trace("0.021"));
    Setup body({});
    body.add("", "Oakmoss absolute", percent(0.04)).add("", "Treemoss absolute", percent(0.036));
    CHECK(found(body.report(), "IFRA 51 oakmoss and treemoss") == nullptr);
    CHECK(made(body.report(), "IFRA 51 oakmoss and treemoss"));
    CHECK(body.named() == Names{"Evernia Furfuracea Extract", "Evernia Prunastri Extract"});
}

TEST_CASE("EX2-11: safrole of 2 % of an oil: half a percent of the oil is the most") {
    Setup setup({{"nutmeg", 0.5}});
    setup.holding("nutmeg", {{"safrole", 2}});
    CHECK(setup.high("safrole") == trace("0.01"));
    CHECK(found(setup.report(), "II/360") == nullptr);
    setup.formula.lines[0].percent = percent(0.5001);
    CHECK(found(setup.report(), "II/360") != nullptr);
}

TEST_CASE("worst and usual case are told apart") {
    Setup setup({{"clove_bud", 0.3}});  // methyl eugenol 0 to 0.13 %
    const auto report = setup.report();
    const finding::Finding* one = found(report, "III/102");
    REQUIRE(one != nullptr);
    CHECK(one->trace == trace("0.00039"));
    CHECK(*one->trace_typical < *one->trace);
    CHECK(one->code == Code::constituent_may_be_over);
}

TEST_CASE("the analysis of one's own bottle takes over, for that bottle alone") {
    const std::map<std::string, catalogue::Content> paper = {{"methyl eugenol", {{}, percent(0.01), {}}}};
    Setup setup({{"my_clove", 0.3}});
    setup.bottle("my_clove", "clove_bud", paper, true);
    CHECK(setup.high("methyl_eugenol") == trace("0.00003"));
    CHECK(found(setup.report(), "III/102") == nullptr);
    CHECK(setup.high("eugenol") == trace("0.264"));  // not in the paper: the range of clove bud, 88 %
    setup.add("clove_bud", "", percent(0.1));
    CHECK(setup.high("methyl_eugenol") == trace("0.00016"));  // the other bottle has no paper
}

TEST_CASE("an analysis that came with a stranger's recipe never loosens a check") {
    const std::map<std::string, catalogue::Content> low = {{"methyl_eugenol", {{}, percent(0.0001), {}}}};
    Setup setup({{"their_clove", 0.3}});
    setup.bottle("their_clove", "clove_bud", low, false);
    CHECK(setup.high("methyl_eugenol") == trace("0.00039"));
    CHECK(found(setup.report(), "III/102") != nullptr);
    Setup worse({{"their_clove", 0.1}});
    worse.bottle("their_clove", "clove_bud", {{"methyl_eugenol", {{}, percent(0.5), {}}}}, false);
    CHECK(worse.high("methyl_eugenol") == trace("0.0005"));  // but it may make it stricter
    Setup baseless({{"their_oil", 0.3}});
    baseless.bottle("their_oil", "", low, false);
    CHECK(not_made(baseless.report(), "III/102") != nullptr);
    CHECK(safety::allergens_of(baseless.the()).unknown == Names{"their_oil"});
}

TEST_CASE("a paper that names the members of a group gives the group") {
    Setup setup({{"my_lemongrass", 0.1}});
    setup.bottle("my_lemongrass", "lemongrass",
                 {{"geranial", {{}, percent(40), {}}}, {"neral", {{}, percent(30), {}}}}, true);
    CHECK(setup.high("citral") == trace("0.07"));
}

TEST_CASE("a limit that is still to come is told, and stops nobody") {
    Setup setup({{"lemongrass", 0.3}});
    const auto report = setup.in("eu", "2026-12-31").report();
    const finding::Finding* one = found(report, "III/70");
    REQUIRE(one != nullptr);
    CHECK(one->code == Code::constituent_over_later);
    CHECK(one->severity == Severity::caution);
    CHECK(one->unit == "2027-01-01");
    CHECK(found(setup.in("eu", "2027-01-01").report(), "III/70")->severity == Severity::stop);
}

TEST_CASE("the list of allergens follows the market: one lavender balm, five markets") {
    Setup setup({{"lavender", 1}});
    CHECK(setup.named().size() > 8);
    const Names old = setup.in("gb").named();
    CHECK(std::count(old.begin(), old.end(), "Linalool") == 1);
    CHECK(std::count(old.begin(), old.end(), "Linalyl Acetate") == 0);
    CHECK(setup.in("us").named().empty());
    CHECK(setup.in("ca", "2026-04-11").named().empty());
    CHECK(setup.in("ca", "2026-08-01").named() == setup.in("ni").named());
    const auto report = setup.in("eu").report();
    CHECK(found(report, Code::allergens_to_name)->value ==
          static_cast<std::int64_t>(setup.named().size()) * decimal::kOne);
    CHECK(setup.in("au").report().not_made.back().reason == safety::Reason::market_not_covered);
}

TEST_CASE("what the law forbids is found by its name, in an own entry too") {
    Setup setup({});
    setup.add("", "Costus root oil", percent(0.1));
    CHECK(found(setup.report(), "II/1133")->severity == Severity::stop);
    CHECK(found(setup.in("us").report(), "II/1133") == nullptr);
}

TEST_CASE("benzyl alcohol as a preservative is not named as an allergen (entry 45)") {
    Setup setup({{"benzyl_alcohol", 0.8}});
    CHECK(setup.with("hand_lotion").named().empty());
}

TEST_CASE("at the limit, one step below and one above") {
    Setup setup({{"geranium", 10}});
    setup.in("us").holding("geranium", {{"geraniol", 53}});  // 5.3 % is the guidance
    CHECK(found(setup.report(), "Essential Oil Safety, geraniol") == nullptr);
    setup.formula.lines[0].percent = percent(9.9999);
    CHECK(found(setup.report(), "Essential Oil Safety, geraniol") == nullptr);
    setup.formula.lines[0].percent = percent(10.0001);
    CHECK(found(setup.report(), "Essential Oil Safety, geraniol")->severity == Severity::caution);
}

TEST_CASE("every gap in a rule that touches the formula is named, none is passed over") {
    Setup setup({{"clove_bud", 0.1}, {"ylang_ylang", 0.1}});
    const auto report = setup.report();
    CHECK(not_made(report, "IFRA 51 eugenol")->about == Names{"clove_bud", "ylang_ylang"});
    CHECK(not_made(report, "IFRA 51 ylang ylang extracts")->about == Names{"ylang_ylang"});
    CHECK_FALSE(made(report, "IFRA 51 eugenol"));
    std::set<std::string> rows;
    for (const limits::Row& row : setup.book.rows)
        if (!row.constituents.empty() && limits::is_in(row, "eu") && limits::is_for(row, std::nullopt)) {
            const limits::Cap* cap = limits::cap_for(setup.book, row.caps, *setup.the().product);
            if (cap == nullptr || cap->verdict == limits::Verdict::unlimited || !row.within.empty()) continue;
            CAPTURE(row.id);
            CHECK((made(report, row.id) || not_made(report, row.id) != nullptr));
        }
}

TEST_CASE(
    "without a market all is held against the EU's rules, and that is said; the US has none that were read") {
    Setup setup({{"clove_bud", 0.3}});
    const auto unsaid = setup.in("").report();
    CHECK(found(unsaid, "III/102") != nullptr);
    CHECK(not_made(unsaid, "")->reason == safety::Reason::market_unsaid);
    const auto states = setup.in("us").report();
    CHECK(found(states, "III/102") == nullptr);
    CHECK(found(states, "IFRA 49 methyl eugenol") == nullptr);
    CHECK(not_made(states, "")->reason == safety::Reason::market_not_covered);
}

TEST_CASE("cautions at hand are those of the oils that are there") {
    Setup setup({{"bergamot", 0.2}});
    std::set<std::string> ids;
    for (const limits::Caution* one : safety::cautions_of(setup.the()))
        ids.insert(one->id);
    CHECK(ids == std::set<std::string>{"drops", "external", "oxid", "patch", "pets", "photo", "purity"});
    CHECK(safety::cautions_of(Setup({}).the()).empty());
}

}  // namespace test_safety_limits
