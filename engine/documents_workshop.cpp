// The plan of a workshop on paper: for who leads it. Everything is worked out in workshop; what the
// participants take home is the handout.
#include <algorithm>

#include "documents.h"
#include "documents_paper.h"

namespace documents {
namespace {

using ::workshop::Ahead;
using ::workshop::Kit;
using ::workshop::Slot;

constexpr std::string_view kWorkshopStyle = R"css(
dl{display:grid;grid-template-columns:max-content 1fr;gap:1pt 10pt;margin:4pt 0}
dd{margin:0}
.kit{break-inside:avoid}
.write{border-bottom:.75pt solid #000;padding-top:8pt}
)css";

struct WorkshopPaper {
    const workspace::Recipe& recipe;
    const ::workshop::Plan& plan;
    const ::workshop::Workshop& made;
    const catalogue::Catalogue& known;
    const std::vector<std::string>& cautions;
    const words::Table& words;
    const std::optional<cost::PerHead>& per_head;
    markup::Writer html = {};

    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return words::say(words, key, arguments);
    }
    std::string grams(quantity::Mass mass) const {
        return say("unit.grams", {{"n", words::figure(words, mass.grid)}});
    }
    std::string line_name(std::size_t line) const {
        return workspace::display_name(known, recipe.formula.lines[line]);
    }
    std::string names(const std::vector<std::size_t>& lines) const {
        std::string all;
        for (const std::size_t one : lines)
            all += (all.empty() ? "" : ", ") + line_name(one);
        return all;
    }
    std::string unit_name() const {
        const catalogue::Container* one = find_container(known, made.unit.id);
        return one != nullptr ? one->name : say("batch.portion");
    }
    static std::string clock(std::int64_t minutes) {
        const std::int64_t of_day = ((minutes % 1440) + 1440) % 1440;
        const auto two = [](std::int64_t n) { return std::string(n < 10 ? "0" : "") + std::to_string(n); };
        return two(of_day / 60) + ":" + two(of_day % 60);
    }
    void pair(std::string_view key, const std::string& value) {
        html.leaf("dt", say(key));
        html.leaf("dd", value);
    }

    void head() {
        const auto n = [](std::int64_t count) { return std::to_string(count); };
        html.open("dl");
        pair("workshop.people", say("workshop.people_said", {{"people", n(plan.people)},
                                                             {"each", n(plan.each)},
                                                             {"unit", unit_name()},
                                                             {"g", grams(made.unit_g)}}));
        pair("workshop.stations", stations_said());
        if (made.demonstration)
            pair("workshop.demonstration",
                 plan.sample.grid > 0
                     ? say("workshop.shown_samples",
                           {{"n", n(plan.shown)}, {"people", n(plan.people)}, {"g", grams(plan.sample)}})
                     : say("workshop.shown_said", {{"n", n(plan.shown)}}));
        pair("workshop.spare", n(plan.spare));
        pair("workshop.in_all",
             say("workshop.in_all_said", {{"g", grams(made.total)}, {"n", n(made.units)}}));
        if (per_head) pair("workshop.per_head", ::workshop::per_head_said(words, *per_head, plan.people));
        html.close();
    }
    std::string stations_said() const {
        std::string all;
        for (const Kit& one : made.kits)
            all += (all.empty() ? "" : " + ") + std::to_string(one.people);
        return say("workshop.stations_said",
                   {{"stations", std::to_string(made.kits.size())}, {"people", all}});
    }

    void day() {
        html.leaf("h2", say("workshop.day"));
        documents_paper::open_table(
            html, {{say("workshop.time"), "n"}, {say("workshop.what"), ""}, {say("workshop.minutes"), "n"}});
        bool untimed = false;
        for (const Slot& slot : made.day) {
            static constexpr const char* kKeys[] = {"workshop.set_up", "workshop.welcome", "",
                                                    "workshop.clear_up"};
            html.open("tr");
            documents_paper::cell(html, clock(slot.from), "n");
            if (slot.kind == Slot::Kind::step) {
                const formula::Step& step = recipe.steps[slot.step];
                documents_paper::cell(html, step.phase.empty() ? step.text
                                                               : say("sheet.step_of", {{"id", step.phase},
                                                                                       {"text", step.text}}));
            } else {
                documents_paper::cell(html, say(kKeys[static_cast<int>(slot.kind)]));
            }
            untimed = untimed || !slot.minutes;
            documents_paper::cell(
                html, slot.minutes ? std::to_string(*slot.minutes) : say("workshop.untimed"), "n");
            html.close();
        }
        documents_paper::close_table(html);
        const Slot& last = made.day.back();
        html.leaf("p", say("workshop.ends", {{"time", clock(last.from + last.minutes.value_or(0))}}) +
                           (untimed ? " " + say("workshop.ends_untimed") : ""));
        html.leaf("p", say("workshop.day_about"), {{"class", "small"}});
    }

    void asked() {
        std::vector<std::string> all;
        for (const ::workshop::Asked& one : made.asked)
            all.push_back(say(one.key, {{"names", names(one.lines)}}));
        documents_paper::list(html, say("workshop.ask"), all, true);
        html.leaf("p", say("workshop.ask_about"), {{"class", "small"}});
    }

    void burns() {
        std::vector<std::string> all;
        for (const char* key : {"workshop.burn_before", "workshop.burn_cool", "workshop.burn_wax",
                                "workshop.burn_cover", "workshop.burn_help", "workshop.burn_fire"})
            all.push_back(say(key));
        documents_paper::list(html, say("workshop.burns"), all);
        for (const char* key : {"workshop.burn_tap", "workshop.burn_who"})
            html.leaf("p", say(key), {{"class", "write"}});
    }

    void shopping() {
        html.leaf("h2", say("workshop.buy"));
        documents_paper::open_table(html, {{say("sheet.done"), "b"},
                                           {say("sheet.ingredient"), ""},
                                           {say("shopping.need"), "n"},
                                           {say("shopping.buy"), "n"},
                                           {say("workshop.left"), "n"}});
        for (const ::workshop::Total& one : made.totals) {
            html.open("tr");
            documents_paper::cell(html, "", "b");
            documents_paper::cell(html, line_name(one.line), "th");
            documents_paper::cell(html, grams(one.need), "n");
            documents_paper::cell(
                html,
                one.bought ? say("shopping.packs",
                                 {{"n", std::to_string(one.bought->count)}, {"g", grams(one.bought->each)}})
                           : "",
                "n");
            documents_paper::cell(html, one.bought ? grams(one.bought->left) : "", "n");
            html.close();
        }
        documents_paper::close_table(html);
        std::vector<std::string> things{
            say("batch.count_short", {{"count", std::to_string(made.units)}, {"name", unit_name()}})};
        if (plan.sample.grid > 0)
            things.push_back(
                say("workshop.pots", {{"n", std::to_string(plan.people)}, {"g", grams(plan.sample)}}));
        things.push_back(say("workshop.things", {{"n", std::to_string(made.power.plates)}}));
        documents_paper::list(html, say("workshop.besides"), things, true);
    }

    void ahead() {
        static constexpr const char* kWhy[] = {"",
                                               "workshop.not_evaporates",
                                               "workshop.not_preservative",
                                               "workshop.not_active",
                                               "workshop.not_sensitive",
                                               "workshop.not_water",
                                               "workshop.not_known"};
        std::vector<std::string> before, on_the_day;
        for (std::size_t i = 0; i < made.ahead.size(); ++i) {
            if (made.ahead[i] == Ahead::day_before)
                before.push_back(line_name(i));
            else
                on_the_day.push_back(
                    say("workshop.not_ahead",
                        {{"name", line_name(i)}, {"why", say(kWhy[static_cast<int>(made.ahead[i])])}}));
        }
        documents_paper::list(html, say("workshop.before"), before, true);
        documents_paper::list(html, say("workshop.on_the_day"), on_the_day, true);
        html.leaf("p", say("workshop.before_about"), {{"class", "small"}});
    }

    void dilution() {
        if (!made.dilution) return;
        const ::workshop::Dilution& mix = *made.dilution;
        html.leaf("h2", say("workshop.dilution"));
        html.leaf("p", say("workshop.dilution_said",
                           {{"percent", words::figure(words, mix.strength.grid)}, {"g", grams(mix.total)}}));
        html.open("ul", {{"class", "boxes"}});
        for (const ::workshop::Dilution::Part& part : mix.parts)
            html.leaf("li",
                      say("batch.mix_part", {{"g", grams(part.grams)}, {"name", line_name(part.line)}}));
        html.leaf("li", say("batch.mix_part", {{"g", grams(mix.with)}, {"name", line_name(mix.oil)}}));
        html.close();
        html.leaf("p", say("workshop.dilution_about", {{"name", line_name(mix.oil)}}), {{"class", "small"}});
    }

    void kit(const std::string& title, const Kit& one) {
        html.open("section", {{"class", "kit"}});
        html.leaf("h3", title);
        html.leaf("p", say("workshop.kit_said", {{"g", grams(one.total)}, {"n", std::to_string(one.units)}}));
        documents_paper::open_table(html, {{say("sheet.done"), "b"},
                                           {say("workshop.phase"), "b"},
                                           {say("sheet.ingredient"), ""},
                                           {say("sheet.weigh"), "n"},
                                           {say("sheet.weighed"), "w"}});
        int places = decimal::kPlaces;  // that the scale shows
        for (std::int64_t step = recipe.batch.division.grid; places > 0 && step % 10 == 0; step /= 10)
            --places;
        const auto row = [&](const std::string& phase, const std::string& name, quantity::Mass mass) {
            html.open("tr");
            documents_paper::cell(html, "", "b");
            documents_paper::cell(html, phase);
            documents_paper::cell(html, name, "th");
            documents_paper::cell(html, words::figure_fixed(words, mass.grid, places), "n");
            documents_paper::cell(html, "", "w");
            html.close();
        };
        bool mixed = one.mix.grid == 0;
        for (std::size_t i = 0; i < one.grams.size(); ++i) {
            const formula::Line& line = recipe.formula.lines[i];
            const bool diluted =
                made.dilution && std::any_of(made.dilution->parts.begin(), made.dilution->parts.end(),
                                             [&](const auto& part) { return part.line == i; });
            if (!diluted) {
                row(line.phase, line_name(i), one.grams[i]);
            } else if (!mixed) {
                row(line.phase, say("workshop.dilution"), one.mix);
                mixed = true;
            }
        }
        documents_paper::close_table(html);
        html.close();
    }

    void kits() {
        html.leaf("h2", say("workshop.kits"));
        for (std::size_t i = 0; i < made.kits.size(); ++i)
            kit(say("workshop.station",
                    {{"station", std::to_string(i + 1)}, {"n", std::to_string(made.kits[i].people)}}),
                made.kits[i]);
        if (made.demonstration) kit(say("workshop.demonstration"), *made.demonstration);
        for (std::size_t i = 0; i < made.spare.size(); ++i)
            kit(say("workshop.spare_kit", {{"n", std::to_string(i + 1)}}), made.spare[i]);
    }

    void power() {
        const ::workshop::Power& power = made.power;
        const auto n = [](std::int64_t count) { return std::to_string(count); };
        html.leaf("h2", say("workshop.power"));
        html.leaf("p",
                  say("workshop.power_usable", {{"volts", n(plan.volts)},
                                                {"amperes", n(plan.amperes)},
                                                {"watts", n(power.usable)},
                                                {"percent", words::figure(words, ::workshop::kLoad.grid)}}));
        html.leaf("p", power.each == 0 ? say("workshop.power_none", {{"watts", n(plan.watts)}})
                                       : say("workshop.power_said", {{"plates", n(power.plates)},
                                                                     {"watts", n(plan.watts)},
                                                                     {"each", n(power.each)},
                                                                     {"circuits", n(power.circuits)}}));
        html.leaf("p", say("workshop.power_about"), {{"class", "small"}});
    }

    std::string build() {
        html = documents_paper::begin(
            words,
            say("workshop.title", {{"title", recipe.title.empty() ? say("recipe.untitled") : recipe.title}}),
            kWorkshopStyle);
        head();
        day();
        asked();
        burns();
        power();
        shopping();
        ahead();
        dilution();
        kits();
        std::vector<std::string> all;
        for (const std::string& key : cautions)
            if (key != "caution.defer") all.push_back(say(key));
        documents_paper::list(html, say("sheet.cautions"), all);
        html.leaf("p", say("caution.defer"), {{"class", "small"}});
        return html.finish();
    }
};

}  // namespace

std::string workshop(const workspace::Recipe& recipe, const ::workshop::Plan& plan,
                     const ::workshop::Workshop& made, const catalogue::Catalogue& catalogue,
                     const std::vector<std::string>& cautions, const words::Table& words,
                     const std::optional<cost::PerHead>& head) {
    const catalogue::Catalogue known = catalogue::with_own(catalogue, recipe.own);
    return WorkshopPaper{recipe, plan, made, known, cautions, words, head}.build();
}

}  // namespace documents
