// How long the analysis of one recipe takes: twenty lines of the shipped catalogue, made into 500 g, as it
// runs after every change on a screen; and the link of one with thirty, for the page to be measured with. One
// line of JSON. A loop of our own and no library, because the very same code has to run natively and as wasm
// under node: batches of so many runs that the clock's step does not count, the median of them, and the
// fastest as a measure of the machine's unrest.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "engine/analysis.h"
#include "engine/share.h"
#include "engine/store.h"
#include "presets_data.h"

namespace {

using Clock = std::chrono::steady_clock;

constexpr std::size_t kLines = 20, kManyLines = 30;
constexpr int kBatches = 41;
constexpr double kBatchSeconds = 0.02;

double seconds_of(int runs, const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                  std::size_t& sink) {
    const Clock::time_point start = Clock::now();
    for (int i = 0; i < runs; ++i)
        sink += analysis::of(recipe, shipped).findings.size() + 1;
    return std::chrono::duration<double>(Clock::now() - start).count();
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

    std::size_t sink = 0;
    int runs = 1;
    while (seconds_of(runs, recipe, presets->catalogue, sink) < kBatchSeconds)
        runs *= 2;
    std::vector<double> micros;
    for (int i = 0; i < kBatches; ++i)
        micros.push_back(seconds_of(runs, recipe, presets->catalogue, sink) / runs * 1e6);
    std::sort(micros.begin(), micros.end());
    std::printf(
        "{\"median_us\":%.2f,\"fastest_us\":%.2f,\"batches\":%d,\"runs\":%d,\"lines\":%d,\"sink\":%d,"
        "\"link\":\"%s\"}\n",
        micros[kBatches / 2], micros[0], kBatches, runs, static_cast<int>(kLines),
        static_cast<int>(sink % 10), link->c_str());
    return 0;
}
