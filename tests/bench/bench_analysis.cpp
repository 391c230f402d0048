// How long the analysis of one recipe takes: twenty lines of the shipped catalogue, made into 500 g, as it
// runs after every change on a screen; how long the whole report of the checks takes for thirty lines with
// twelve essential oils; and the link of one with thirty, for the page to be measured with. One line of JSON.
// A loop of our own and no library, because the very same code has to run natively and as wasm under node:
// batches of so many runs that the clock's step does not count, the median of them, and the fastest as a
// measure of the machine's unrest.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "engine/analysis.h"
#include "engine/share.h"
#include "engine/store.h"
#include "engine/store_limits.h"
#include "presets_data.h"

namespace {

using Clock = std::chrono::steady_clock;

constexpr std::size_t kLines = 20, kManyLines = 30, kOils = 12;
constexpr int kBatches = 41;
constexpr double kBatchSeconds = 0.02;

template <class Work>
double seconds_of(int runs, std::size_t& sink, const Work& work) {
    const Clock::time_point start = Clock::now();
    for (int i = 0; i < runs; ++i)
        sink += work() + 1;
    return std::chrono::duration<double>(Clock::now() - start).count();
}

struct Taken {
    double median = 0, fastest = 0;  // microseconds
    int runs = 1;
};
template <class Work>
Taken taken(std::size_t& sink, const Work& work) {
    Taken out;
    while (seconds_of(out.runs, sink, work) < kBatchSeconds)
        out.runs *= 2;
    std::vector<double> micros;
    for (int i = 0; i < kBatches; ++i)
        micros.push_back(seconds_of(out.runs, sink, work) / out.runs * 1e6);
    std::sort(micros.begin(), micros.end());
    out.median = micros[kBatches / 2];
    out.fastest = micros[0];
    return out;
}

// Thirty lines, twelve of them essential oils at a twentieth of a percent, with a market, a day and a person.
workspace::Recipe with_oils(const catalogue::Catalogue& shipped) {
    workspace::Recipe recipe;
    recipe.title = "Many oils";
    recipe.market = "eu";
    recipe.date = "2026-11-26";
    recipe.person = "adult";
    recipe.formula.phases = {{"A", 75 * decimal::kOne, {}}, {"B", {}, 40 * decimal::kOne}};
    std::vector<const catalogue::Ingredient*> others, oils;
    for (const catalogue::Ingredient& one : shipped.ingredients)
        (one.role == "essential_oil" ? oils : others).push_back(&one);
    for (std::size_t i = 0; i < kManyLines; ++i) {
        const bool oil = i + kOils >= kManyLines;
        const std::size_t at = oil ? i + kOils - kManyLines : i;
        formula::Line line;
        line.ingredient =
            oil ? oils[at * oils.size() / kOils]->id : others[at * others.size() / (kManyLines - kOils)]->id;
        line.percent = {oil ? 500 : i == 0 ? 0 : 50000};
        line.rest = i == 0;
        line.phase = oil ? "B" : "A";
        recipe.formula.lines.push_back(line);
    }
    recipe.batch.amount = batch::Amount::grams;
    recipe.batch.grams = quantity::grams(500);
    recipe.batch.division = {100};
    return recipe;
}

workspace::Recipe with_lines(std::size_t lines, const catalogue::Catalogue& shipped) {
    workspace::Recipe recipe;
    recipe.title = "Many lines";
    recipe.formula.phases.push_back({"A", {}, {}});
    const auto& shelf = shipped.ingredients;
    for (std::size_t i = 0; i < lines; ++i) {
        formula::Line line;
        line.ingredient = shelf[i * shelf.size() / lines].id;
        line.percent = {i + 1 == lines ? 0 : 30000 + static_cast<std::int64_t>(i) * 137};
        line.rest = i + 1 == lines;
        line.phase = "A";
        recipe.formula.lines.push_back(line);
    }
    recipe.batch.amount = batch::Amount::grams;
    recipe.batch.grams = quantity::grams(500);
    recipe.batch.division = {100};
    return recipe;
}

}  // namespace

int main() {
    const auto presets = store::unpack_presets(presets_data::kPacked);
    if (!presets) return std::fputs("bench: the presets cannot be read\n", stderr), 1;

    const workspace::Recipe recipe = with_lines(kLines, presets->catalogue);
    const auto once = analysis::of(recipe, presets->catalogue);
    if (!once.batch || once.batch->lines.size() != kLines)
        return std::fputs("bench: the recipe does not work out\n", stderr), 1;

    const auto link = share::write(with_lines(kManyLines, presets->catalogue), presets->catalogue);
    if (!link) return std::fputs("bench: no link can be made\n", stderr), 1;

    const auto book = store::unpack_limits(presets_data::kLimits);
    if (!book) return std::fputs("bench: the limits cannot be read\n", stderr), 1;
    const workspace::Recipe oils = with_oils(presets->catalogue);

    std::size_t sink = 0;
    const Taken analysis =
        taken(sink, [&] { return analysis::of(recipe, presets->catalogue).findings.size(); });
    const Taken report = taken(
        sink, [&] { return analysis::checks(oils, presets->catalogue, &book.value()).findings.size(); });
    std::printf(
        "{\"median_us\":%.2f,\"fastest_us\":%.2f,\"report_us\":%.2f,\"batches\":%d,\"runs\":%d,\"lines\":%d,"
        "\"report_lines\":%d,\"report_oils\":%d,\"sink\":%d,\"link\":\"%s\"}\n",
        analysis.median, analysis.fastest, report.median, kBatches, analysis.runs, static_cast<int>(kLines),
        static_cast<int>(kManyLines), static_cast<int>(kOils), static_cast<int>(sink % 10), link->c_str());
    return 0;
}
