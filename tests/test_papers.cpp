// Every paper of every demonstration recipe, as a whole (tests/data/papers, a file a recipe, without styles
// and without the lines of QR codes, which test_qr reads back), and what a person wrote, which stays text in
// all of them.
#include <fstream>
#include <regex>
#include <string>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "engine/documents.h"
#include "engine/door.h"
#include "shipped.h"

namespace test_papers {

namespace {

using Papers = std::vector<std::pair<std::string, std::string>>;

Papers papers_of(const workspace::Recipe& recipe) {
    const catalogue::Catalogue& shipped = shipped::presets().catalogue;
    const words::Table& words = shipped::english();
    const analysis::Analysis report = analysis::of(recipe, shipped);
    const safety::Report checks = analysis::checks(recipe, shipped, &shipped::book());
    Papers all;
    const auto add = [&](const char* name, const result::Result<std::string>& paper) {
        all.emplace_back(name,
                         paper ? *paper : "refused: " + std::string(words::code_name(paper.error().code)));
    };
    add("batch sheet", documents::batch_sheet(recipe, report, shipped, words));
    documents::Handout handout = documents::handout_of(report, shipped, checks);
    handout.before = "https://hollow-lane.example/";
    handout.from = "Hollow Lane Allotments";
    add("handout", documents::handout(recipe, shipped, handout, words));
    workshop::Plan plan;
    plan.packs = {{"beeswax_yellow", quantity::grams(100)}, {"sunflower_ho", quantity::grams(1000)}};
    add("shopping list", documents::shopping_list(recipe, report, shipped, plan.packs, words));
    add("customer card",
        documents::customer_card(labelling::card_of(recipe, checks, shipped, {}, &shipped::book(), words),
                                 words));
    const auto pack = labelling::pack_of(recipe, shipped);
    add("assessor's pack", pack ? result::Result<std::string>(documents::assessor_pack(*pack, shipped, words))
                                : result::Result<std::string>(pack.error()));
    const auto made = workshop::of({recipe.formula, recipe.steps, recipe.batch, recipe.product}, plan,
                                   catalogue::with_own(shipped, recipe.own));
    add("workshop", made ? result::Result<std::string>(
                               documents::workshop(recipe, plan, *made, shipped, checks.cautions, words))
                         : result::Result<std::string>(made.error()));
    const auto labelled =
        labelling::of(recipe, report.batch ? std::optional(*report.batch) : std::nullopt, shipped, {},
                      labelling::allergens_of(recipe, shipped, {}, &shipped::book(), words), words, &checks);
    REQUIRE(labelled);
    documents::LabelPaper paper;
    paper.sheet = label_sheet::Sheet{};
    paper.copies = 3;
    add("labels", documents::labels(recipe, *labelled, paper, words));
    return all;
}

std::string bare(const std::string& html) {
    static const std::regex style("<style>[^<]*</style>\n"), lines(" d=\"M[^\"]{200,}\"");
    static const std::regex link("#[-_A-Za-z0-9]{40,}");
    return std::regex_replace(std::regex_replace(std::regex_replace(html, style, ""), lines, " d=\"…\""),
                              link, "#…");
}

bool holds(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

std::string with_wrap(const workspace::Recipe& recipe, const std::string& beside) {
    return "{\"recipe\":" + store::write_recipe(recipe) + beside + "}";
}
door::Answer run(const char* verb, const std::string& input) {
    return door::run(verb, input, shipped::presets(), presets_data::kLimits);
}

}  // namespace

TEST_CASE("papers: all of every demonstration recipe") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        std::string all;
        for (const auto& [name, paper] : papers_of(recipe)) {
            CAPTURE(name);
            CHECK(paper.rfind("<!doctype html>", 0) == 0);
            CHECK_FALSE(holds(paper, "[["));
            CHECK_FALSE(holds(paper, "<script"));
            CHECK_FALSE(holds(paper, " src="));
            all += "==== " + name + "\n" + bare(paper);
        }
        const std::string file = "papers/" + stem + ".txt";
        std::ifstream kept(std::string(TAREBENCH_SOURCE_DIR) + "/tests/data/" + file, std::ios::binary);
        const std::string before{std::istreambuf_iterator<char>(kept), {}};
        if (all != before) {
            std::ofstream(stem + ".txt.new", std::ios::binary) << all;
            FAIL_CHECK(stem, ".txt.new differs from tests/data/", file);
        }
    }
}

TEST_CASE("papers: a batch record shows what holds, and every entry with what was corrected") {
    record::Record record;
    record.number = "20261126-1";
    record.day = "2026-11-26";
    record.who = "</script>A. Maker";
    record.title = "Orchard lip balm";
    record.product = "lip_balm";
    record.lines = {
        {"beeswax_yellow", "Beeswax, yellow", "A", quantity::percent(22), quantity::grams(22),
         quantity::Mass{220'100}, "W-7", "2027-05-01", false},
        {"", "<b>Something</b>", "B", quantity::percent(78), quantity::grams(78), {}, "", "", true}};
    const auto add = [&](record::Entry entry) {
        entry.id = std::to_string(record.entries.size());
        entry.day = "2026-11-26";
        entry.written = "2026-11-26T14:0" + entry.id + ":00Z";
        auto with = record::with_entry(record, entry);
        REQUIRE(with.ok());
        record = *with;
    };
    record::Entry entry;
    entry.kind = record::Kind::weighed;
    entry.lines = {{1, quantity::grams(78), "S-1", ""}};
    add(entry);
    entry = {};
    entry.kind = record::Kind::filled;
    entry.figure = 12 * decimal::kOne;
    add(entry);
    entry.figure = 13 * decimal::kOne;
    entry.corrects = "1";
    add(entry);
    entry = {};
    entry.kind = record::Kind::release;
    entry.yes = true;
    entry.text = "Smells & looks as it should";
    add(entry);
    const std::string paper =
        documents::batch_record(record, shipped::presets().catalogue, shipped::english());
    for (const char* part : {"Batch record 20261126-1", ">22.01<", ">W-7, 2027-05-01<", ">78<", "S-1", ">13<",
                             "Smells &amp; looks", "&lt;b&gt;Something", "in place of an earlier entry",
                             "does not hold any more"}) {
        CAPTURE(std::string(part));
        CHECK(holds(paper, part));
    }
    CHECK_FALSE(holds(paper, "<b>"));
    CHECK_FALSE(holds(paper, "</script"));
    CHECK_FALSE(holds(paper, "[["));
    const std::string all = "==== batch record\n" + bare(paper);
    if (all != shipped::data("papers/batch_record.txt")) {
        std::ofstream("batch_record.txt.new", std::ios::binary) << all;
        FAIL_CHECK("batch_record.txt.new differs from tests/data/papers/batch_record.txt");
    }
}

TEST_CASE("papers: a hostile title is text in all of them, as long as it likes to be") {
    workspace::Recipe recipe = shipped::recipe("frost_line_elbow_butter");
    for (const std::string& title :
         {std::string("</script><script>alert('1')</script>"), std::string("\" onload=\"alert(1)"),
          std::string("\xE2\x80\xAE\xD7\x90\xD7\x91 \xE2\x81\xA7<b>"), std::string(4000, 'w') + "<i>"}) {
        recipe.title = title;
        recipe.steps[0].text = title.substr(0, 900);
        recipe.notes = title + "\n" + title;
        recipe.formula.lines[0].ingredient.clear();
        recipe.formula.lines[0].name = title.substr(0, 79);
        for (const auto& [name, paper] : papers_of(recipe)) {
            CAPTURE(name);
            CAPTURE(title.substr(0, 40));
            CHECK(paper.rfind("<!doctype html>", 0) == 0);
            for (const char* part : {"<script", "</script", "<b>", "<i>", " onload=\""})
                CHECK_FALSE(holds(paper, part));
        }
    }
}

TEST_CASE("papers: a title that is too long for a recipe has no code, and the handout says so") {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.title = std::string(4000, 'w');
    const auto paper = documents::handout(recipe, shipped::presets().catalogue, {}, shipped::english());
    REQUIRE(paper);
    CHECK(holds(*paper, words::say(shipped::english(), "handout.code_none")));
    CHECK_FALSE(holds(*paper, "<svg"));
}

TEST_CASE("handout: grams for one unit add up to it, and many copies have room for a name each") {
    const workspace::Recipe& recipe = shipped::recipe("orchard_lip_balm");
    documents::Handout given;
    given.unit = {42'500};
    given.copies = 12;
    const std::string paper =
        *documents::handout(recipe, shipped::presets().catalogue, given, shipped::english());
    std::size_t names = 0;
    for (std::size_t at = paper.find("class=\"name\""); at != std::string::npos;
         at = paper.find("class=\"name\"", at + 1))
        ++names;
    CHECK(names == 12);
    // 22, 8, 14, 10, 12, 33.6 and 0.4 % of 4.25 g to 0.01 g, by largest remainder: 4.25 g.
    for (const char* grams : {">0.94<", ">0.34<", ">0.59<", ">0.42<", ">0.51<", ">1.43<", ">0.02<"}) {
        CAPTURE(std::string(grams));
        CHECK(holds(paper, grams));
    }
    CHECK(holds(paper, "From 50"));  // 20 steps of 0.01 g are 0.4 % of 50 g
}

TEST_CASE("papers: the command line gives them, with what they are made with beside the recipe") {
    const workspace::Recipe& recipe = shipped::recipe("orchard_lip_balm");
    for (const char* verb : {"handout", "labels", "shopping", "workshop"}) {
        CAPTURE(std::string(verb));
        CHECK(run(verb, store::write_recipe(recipe)).out == run(verb, with_wrap(recipe, "")).out);
        CHECK(run(verb, store::write_recipe(recipe)).exit_code == 0);
        CHECK(run(verb, "{").exit_code == 2);
        CHECK(run(verb, with_wrap(recipe, ",\"more\":1")).err.rfind("more:", 0) == 0);
    }
    const std::string workshop =
        run("workshop", with_wrap(recipe,
                                  ",\"workshop\":{\"people\":7,\"stations\":2,\"packs\":[{\"ingredient\":"
                                  "\"castor\",\"pack_g\":50}]}"))
            .out;
    CHECK(holds(workshop, "Station 2: 3 people"));
    CHECK(holds(workshop, "1 × 50\xC2\xA0g"));
    CHECK(run("workshop", with_wrap(recipe, ",\"workshop\":{\"stations\":13}"))
              .err.rfind("workshop.stations:", 0) == 0);
    CHECK(holds(run("handout", with_wrap(recipe, ",\"address\":\"https://a.example/\"")).out,
                "href=\"https://a.example/#"));
    CHECK_FALSE(holds(run("handout", with_wrap(recipe, ",\"address\":\"javascript:1\"")).out, "href="));
}

TEST_CASE("labels: the cells of a bought sheet lie where they are said to, moved by the printer's shift") {
    const workspace::Recipe& recipe = shipped::recipe("orchard_lip_balm");
    const std::string sheet =
        ",\"copies\":7,\"used\":1,\"label_sheet\":{\"columns\":2,\"rows\":3,\"width_mm\":90,\"height_mm\":50,"
        "\"left_mm\":10,"
        "\"top_mm\":15,\"across_mm\":5,\"down_mm\":2.5,\"shift_right_mm\":-0.5,\"shift_down_mm\":1}";
    const std::string paper = run("labels", with_wrap(recipe, sheet)).out;
    const auto count = [&](const std::string& part) {
        std::size_t found = 0;
        for (std::size_t at = paper.find(part); at != std::string::npos; at = paper.find(part, at + 1))
            ++found;
        return found;
    };
    CHECK(count("class=\"cell\"") == 7);
    CHECK(count("class=\"page\"") == 2);  // the first cell is gone: five on the first sheet, two on the next
    CHECK(count("left:9.5mm;top:16mm;width:90mm;height:50mm") == 1);
    CHECK(count("left:104.5mm;top:16mm") == 2);
    CHECK(count("left:9.5mm;top:68.5mm") == 1);
    CHECK(count("left:104.5mm;top:121mm") == 1);
    CHECK(holds(paper, "@page{size:210mm 297mm;margin:0}"));
    const auto beyond = run("labels", with_wrap(recipe, ",\"label_sheet\":{\"columns\":4,\"width_mm\":60}"));
    CHECK(beyond.err.rfind("label_sheet.columns:", 0) == 0);
}

TEST_CASE("labels: a tin has a round lid and a strip around its side, a wrap has a flap") {
    workspace::Recipe recipe = shipped::recipe("potting_shed_hand_salve");
    recipe.label.panel = type_height::Panel{type_height::Shape::round_top, 150'000, 500'000, false};
    const std::string tin = run("labels", store::write_recipe(recipe)).out;
    CHECK(holds(tin, "class=\"label round\" style=\"width:50mm;height:50mm;padding:4mm\""));
    CHECK(holds(tin, "class=\"label strip\" style=\"width:157.08mm;height:15mm\""));  // 50 mm x 3.1416
    const std::size_t strip = tin.find("class=\"label strip\"");
    CHECK(tin.find("Ingredients:") > strip);
    documents::LabelPaper wrap;
    wrap.flap = 50'000;
    const auto labelled =
        labelling::of(recipe, std::nullopt, shipped::presets().catalogue, {}, {}, shipped::english());
    CHECK(holds(documents::labels(recipe, *labelled, wrap, shipped::english()),
                "class=\"flap\" style=\"width:5mm;height:40mm\""));
}

TEST_CASE("labels: the test print shows each cell with its number, and rulers") {
    const std::string paper = documents::test_print({}, false, shipped::english());
    CHECK(holds(paper, ">24</div>"));
    CHECK(holds(paper, "left:70mm;top:0.5mm;width:70mm;height:37mm"));
    CHECK(holds(paper, ">190</div>"));
}

TEST_CASE("batch sheet: usual faults are those of the kind of product, and called common practice") {
    const auto faults = [](const char* stem) {
        const workspace::Recipe& recipe = shipped::recipe(stem);
        return *documents::batch_sheet(recipe, analysis::of(recipe, shipped::presets().catalogue),
                                       shipped::presets().catalogue, shipped::english());
    };
    const std::string balm = faults("orchard_lip_balm"), lotion = faults("kitchen_garden_hand_lotion"),
                      oil = faults("harvest_supper_body_oil"), scrub = faults("greenhouse_foot_scrub");
    for (const char* part :
         {"A hole or dip", "Grains that melt", "Drops of oil", "Sticky", "Common practice"})
        CHECK(holds(balm, part));
    CHECK(holds(lotion, "Water and oil part"));
    CHECK_FALSE(holds(lotion, "A hole or dip"));
    CHECK(holds(oil, "Cloudy when cold"));
    CHECK(holds(scrub, "Oil stands on top"));
}

}  // namespace test_papers
