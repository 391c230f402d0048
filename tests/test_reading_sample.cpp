// The cloud of all that fits against what is known exactly: broken-stick means, spreads and quantiles,
// centroids counted out in fractions, and the two ways of drawing against each other. Everything within four
// standard errors, by fixed seeds.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/reading_work.h"

namespace test_reading_sample {

using reading::Likely;
using reading::Method;
using reading::Problem;

namespace {

constexpr std::int64_t kOne = decimal::kOne;

Problem list_of(std::size_t items, std::optional<std::size_t> line_after = std::nullopt) {
    Problem problem;
    for (std::size_t i = 0; i < items; ++i)
        problem.items.push_back({"", "ingredient " + std::to_string(i + 1), false, {}});
    problem.line_after = line_after;
    return problem;
}

Problem plain(std::size_t items) {
    Problem problem = list_of(items, items);
    problem.line = {};
    return problem;
}

struct Cloud {
    Method method = Method::none;
    bool settled = false;
    std::vector<double> draws, shares;
    std::vector<Likely> likely;
    std::size_t count() const { return draws.size() / likely.size(); }
};

Cloud cloud_of(const Problem& problem, std::size_t draws, std::uint64_t seed, bool walking = false) {
    const std::vector<reading::Row> rows = reading::rows_of(problem);
    reading::BoundsWork bounds(problem, rows, true);
    while (bounds.work(100)) {
    }
    REQUIRE(bounds.feasible());
    reading::SampleWork sample(problem.items.size(), bounds.branches(), rows, draws, seed, walking);
    double before = 0;
    while (sample.work(3)) {
        CHECK(sample.progress() >= before);
        before = sample.progress();
    }
    // Every draw keeps to the list, the statements and the bounds.
    const std::size_t n = problem.items.size();
    for (std::size_t at = 0; at < sample.draws().size(); at += n) {
        const double* const one = &sample.draws()[at];
        double sum = 0;
        bool inside = true;
        for (std::size_t i = 0; i < n; ++i) {
            sum += one[i];
            inside =
                inside && one[i] >= bounds.items()[i].min - 1e-7 && one[i] <= bounds.items()[i].max + 1e-7;
        }
        for (const reading::Row& row : rows) {
            const double value = reading::sum_of(row.weights, one);
            inside = inside && value >= row.low - 1e-7 && value <= row.high + 1e-7;
        }
        if (!inside || std::abs(sum - 100) > 1e-7) FAIL("a draw that does not fit");
    }
    return {sample.method(), sample.settled(), sample.draws(), sample.shares(), sample.likely()};
}

// Within four standard errors of the mean, and of the deviation (normal kurtosis is a fair measure here).
void check_moments(const Likely& likely, double mean, double deviation) {
    CAPTURE(likely.mean);
    CAPTURE(mean);
    CHECK(std::abs(likely.mean - mean) <= 4 * deviation / std::sqrt(likely.effective) + 1e-9);
    CAPTURE(likely.deviation);
    CAPTURE(deviation);
    CHECK(std::abs(likely.deviation - deviation) <= 4 * deviation / std::sqrt(likely.effective) + 1e-9);
}

// The share of draws below a figure.
double below(const Cloud& cloud, std::size_t item, double figure) {
    std::size_t found = 0;
    for (std::size_t at = item; at < cloud.draws.size(); at += cloud.likely.size())
        found += cloud.draws[at] < figure ? 1 : 0;
    return static_cast<double>(found) / static_cast<double>(cloud.count());
}

void check_quantile(const Cloud& cloud, std::size_t item, double figure, double share) {
    CAPTURE(item);
    CAPTURE(figure);
    const double error = std::sqrt(share * (1 - share) / cloud.likely[item].effective);
    CHECK(std::abs(below(cloud, item, figure) - share) <= 4 * error);
}

// Broken stick in order (MacArthur 1957): 5 %, median and 95 %, by bisection on the exact distribution.
struct Stick {
    std::size_t n, i;
    double p05, median, p95;
};
const std::vector<Stick> kSticks = {
    {2, 1, 52.5000, 75.0000, 97.5000}, {2, 2, 2.5000, 25.0000, 47.5000},  {3, 1, 40.7869, 59.1752, 87.0901},
    {3, 2, 9.1287, 28.8675, 43.5450},  {3, 3, 0.8440, 9.7631, 25.8798},   {4, 1, 34.2146, 50.0000, 76.7921},
    {4, 2, 12.7718, 27.5761, 39.8630}, {4, 3, 3.9093, 14.4841, 25.5974},  {4, 4, 0.4238, 5.1575, 15.7899},
    {5, 1, 29.7520, 43.6949, 68.3772}, {5, 2, 14.2872, 25.7458, 36.7043}, {5, 3, 6.3618, 15.8313, 24.4694},
    {5, 4, 2.1836, 8.6477, 17.0172},   {5, 5, 0.2548, 3.1821, 10.5426},   {6, 1, 26.5128, 38.9744, 61.6148},
    {6, 2, 14.7342, 24.0202, 34.0211}, {6, 3, 7.8925, 15.9979, 23.2735},  {6, 4, 3.8431, 10.2075, 16.9481},
    {6, 5, 1.3961, 5.7403, 12.0990},   {6, 6, 0.1701, 2.1575, 7.5120}};

double inverse_sum(std::size_t from, std::size_t to, bool squares) {
    double sum = 0;
    for (std::size_t k = from; k <= to; ++k)
        sum += 1 / static_cast<double>(squares ? k * k : k);
    return sum;
}

void check_sticks(bool walking, std::size_t draws) {
    for (std::size_t n = 2; n <= 6; ++n) {
        const Cloud cloud = cloud_of(plain(n), draws, 11, walking);
        CHECK(cloud.method == (walking ? Method::walk : Method::exact));
        for (const Stick& stick : kSticks) {
            if (stick.n != n) continue;
            check_quantile(cloud, stick.i - 1, stick.p05, 0.05);
            check_quantile(cloud, stick.i - 1, stick.median, 0.5);
            check_quantile(cloud, stick.i - 1, stick.p95, 0.95);
        }
    }
}

}  // namespace

TEST_CASE("sample: the larger of two is on average three quarters") {
    const Cloud cloud = cloud_of(plain(2), 4000, 7);
    CHECK(cloud.method == Method::exact);
    REQUIRE(cloud.count() == 4000);
    check_moments(cloud.likely[0], 75, 14.433757);
    check_moments(cloud.likely[1], 25, 14.433757);
}

TEST_CASE("sample: means and spreads of a list in order, from two to forty, as their closed forms") {
    for (const std::size_t n : {2U, 3U, 4U, 5U, 6U, 8U, 12U, 20U, 30U, 40U}) {
        const Cloud cloud = cloud_of(plain(n), 4000, 3);
        const auto of = static_cast<double>(n);
        for (std::size_t i = 1; i <= n; ++i) {
            const double sum = inverse_sum(i, n, false), squares = inverse_sum(i, n, true);
            const double variance = (sum * sum + squares) / (of * (of + 1)) - sum * sum / (of * of);
            check_moments(cloud.likely[i - 1], 100 * sum / of, 100 * std::sqrt(variance));
        }
    }
}

TEST_CASE("sample: broken-stick quantiles, drawn and walked (table M1)") {
    check_sticks(false, 20000);
    check_sticks(true, 8000);
}

TEST_CASE("sample: chances of a half and a quarter on a broken stick are the published fractions") {
    const double half[] = {1, 3.0 / 4, 1.0 / 2, 5.0 / 16, 3.0 / 16};
    const double quarter[] = {0, 5.0 / 8, 5.0 / 8, 35.0 / 64, 55.0 / 128};
    for (std::size_t n = 2; n <= 6; ++n) {
        const Cloud cloud = cloud_of(plain(n), 20000, 5);
        check_quantile(cloud, 0, 50, 1 - half[n - 2]);
        if (n > 2) check_quantile(cloud, 1, 25, 1 - quarter[n - 2]);
    }
}

TEST_CASE("sample: flour and water with eggs at 2 % have the centroid counted out in fractions (T1)") {
    Problem problem = plain(5);
    problem.statements = {reading::amount(2, 2 * kOne, 2 * kOne)};
    const Cloud cloud = cloud_of(problem, 8000, 7);
    CHECK(cloud.method == Method::walk);  // an equation leaves no volume to throw into
    CHECK(cloud.settled);
    const double mean[] = {13065.0 / 184, 13801.0 / 552, 2, 367.0 / 276, 61.0 / 92};
    const double deviation[] = {13.294735, 13.282193, 0, 0.472414, 0.470365};
    for (std::size_t i = 0; i < 5; ++i)
        check_moments(cloud.likely[i], mean[i], deviation[i]);
}

TEST_CASE("sample: four above the line and three below, drawn and walked (T2)") {
    const double third = 12592714.0 / 25319385;
    const double mean[] = {2034580031.0 / 40511016,
                           414394963.0 / 15581160,
                           427750243.0 / 28936440,
                           466332163.0 / 67518360,
                           third,
                           third,
                           third};
    const double deviation[] = {12.298801, 7.626885, 6.288722, 4.575517, 0.288666, 0.288666, 0.288666};
    for (const bool walking : {false, true}) {
        const Cloud cloud = cloud_of(list_of(7, 4), 8000, 7, walking);
        CHECK(cloud.settled);
        for (std::size_t i = 0; i < 7; ++i)
            check_moments(cloud.likely[i], mean[i], deviation[i]);
    }
}

TEST_CASE("sample: with limits on two of five, drawn and walked (T4)") {
    Problem problem = list_of(5, 4);
    problem.statements = {reading::amount(1, 10 * kOne, 30 * kOne), reading::amount(0, {}, 60 * kOne)};
    const double mean[] = {46.698548, 25.096589, 18.219848, 9.482723, 0.502292};
    const double deviation[] = {8.347174, 3.391885, 4.612291, 4.947940, 0.288657};
    for (const bool walking : {false, true}) {
        const Cloud cloud = cloud_of(problem, 8000, 7, walking);
        CHECK(cloud.settled);
        for (std::size_t i = 0; i < 5; ++i)
            check_moments(cloud.likely[i], mean[i], deviation[i]);
    }
}

TEST_CASE("sample: eight and four, twelve and eight, as 400 000 draws by another program have them") {
    const std::vector<double> eight = {31.59, 20.32, 14.71, 10.95, 8.14, 5.89, 4.02, 2.41, 0.494, 0.494};
    const std::vector<double> twelve = {22.74, 15.75, 12.23, 9.90, 8.15, 6.75, 5.58,
                                        4.58,  3.70,  2.92,  2.22, 1.58, 0.489};
    const Cloud one = cloud_of(list_of(12, 8), 8000, 7), two = cloud_of(list_of(20, 12), 8000, 7);
    for (std::size_t i = 0; i < eight.size(); ++i)
        CHECK(std::abs(one.likely[i].mean - eight[i]) <=
              4 * one.likely[i].deviation / std::sqrt(8000) + 0.02);
    for (std::size_t i = 0; i < twelve.size(); ++i)
        CHECK(std::abs(two.likely[i].mean - twelve[i]) <=
              4 * two.likely[i].deviation / std::sqrt(8000) + 0.02);
}

TEST_CASE("sample: with the line unknown both ways of drawing weigh its places alike") {
    for (const std::size_t n : {5U, 9U}) {
        const Cloud drawn = cloud_of(list_of(n), 20000, 7), walked = cloud_of(list_of(n), 20000, 9, true);
        CHECK(walked.settled);
        REQUIRE(drawn.shares.size() == walked.shares.size());
        for (std::size_t i = 0; i < drawn.shares.size(); ++i)  // an effective 2000, at the least
            CHECK(std::abs(drawn.shares[i] - walked.shares[i]) <
                  4 * std::sqrt(drawn.shares[i] * (1 - drawn.shares[i]) * (1 / 20000.0 + 1 / 2000.0)) + 1e-3);
        for (std::size_t i = 0; i < n; ++i)
            CHECK(std::abs(drawn.likely[i].mean - walked.likely[i].mean) <
                  4 * drawn.likely[i].deviation *
                      std::sqrt(1 / drawn.likely[i].effective + 1 / walked.likely[i].effective));
    }
    // Two names: above both, with volume (100 - 2)/2, or one above and one below, with 1.
    const Cloud two = cloud_of(list_of(2), 20000, 7);
    CHECK(two.shares[1] == doctest::Approx(49.0 / 50).epsilon(0.01));
}

TEST_CASE("sample: narrow statements, groups and equations are walked through, and the walks agree") {
    Problem problem = list_of(12, 8);
    problem.statements = {reading::amount(0, 30 * kOne, 31 * kOne), reading::amount(4, 7 * kOne, 8 * kOne),
                          reading::group("waxes", {1, 2, 5}, 40 * kOne, 40 * kOne)};
    const Cloud cloud = cloud_of(problem, 4000, 7);
    CHECK(cloud.method == Method::walk);
    CHECK(cloud.settled);
    for (const Likely& likely : cloud.likely) {
        CHECK(likely.r_hat < 1.01);
        CHECK(likely.effective >= 400);
    }
    // Held against exact draws from a band as narrow as can still be hit.
    Problem band = problem;
    band.statements = {reading::amount(0, 30 * kOne, 34 * kOne),
                       reading::group("waxes", {1, 2, 5}, 38 * kOne, 42 * kOne)};
    const Cloud drawn = cloud_of(band, 4000, 7), walked = cloud_of(band, 4000, 8, true);
    CHECK(drawn.method == Method::exact);
    for (std::size_t i = 0; i < 12; ++i)
        CHECK(std::abs(drawn.likely[i].mean - walked.likely[i].mean) <
              4 * drawn.likely[i].deviation *
                  std::sqrt(1 / drawn.likely[i].effective + 1 / walked.likely[i].effective));
}

TEST_CASE("sample: one formula that fits is given as that, and two shut sums are kept shut") {
    Problem even = plain(4);
    even.statements = {reading::amount(0, {}, 25 * kOne)};
    const Cloud point = cloud_of(even, 4000, 7);
    CHECK(point.method == Method::single);
    CHECK(point.likely[2].mean == doctest::Approx(25));

    Problem shut = plain(4);
    shut.statements = {reading::group("one", {0, 3}, {}, 60 * kOne),
                       reading::group("other", {1, 2}, {}, 40 * kOne)};
    const Cloud flat = cloud_of(shut, 4000, 7);
    CHECK(flat.method == Method::walk);
    CHECK(flat.likely[0].mean + flat.likely[3].mean == doctest::Approx(60));
    CHECK(flat.likely[1].deviation > 1);
}

TEST_CASE("sample: walks that do not agree are found out, independent draws are worth their number") {
    chance::Generator chance(3);
    std::vector<double> even, apart, slow;
    double at = 0;
    for (std::size_t i = 0; i < 4000; ++i) {
        even.push_back(chance.unit());
        apart.push_back(chance.unit() + (i < 1000 ? 1 : 0));
        slow.push_back(at = 0.9 * at + chance.unit());
    }
    Likely one, two, three;
    reading::compare_walks(even, 1, 0, 4, one);
    reading::compare_walks(apart, 1, 0, 4, two);
    reading::compare_walks(slow, 1, 0, 4, three);
    CHECK(one.r_hat < 1.01);
    CHECK(one.effective > 3000);
    CHECK(two.r_hat > 1.2);
    // An autoregression of 0.9 is worth (1 - 0.9) / (1 + 0.9) of its length.
    CHECK(three.effective == doctest::Approx(4000 * 0.1 / 1.9).epsilon(0.4));
}

TEST_CASE("sample: the same seed gives the same cloud, whatever the slices; another seed another") {
    Problem problem = list_of(9);
    problem.statements = {reading::amount(2, 10 * kOne, 11 * kOne)};
    const reading::Wish wish{400, 3, 21, true};
    reading::Work one(problem, wish), two(problem, wish);
    double before = 0;
    while (one.work(1)) {
        CHECK(one.progress() >= before - 1e-12);
        before = one.progress();
    }
    while (two.work(1000)) {
    }
    CHECK(one.answer() == two.answer());
    CHECK(one.answer() == reading::answer(problem, wish));
    CHECK_FALSE(one.answer() == reading::answer(problem, {400, 3, 22, true}));
    {
        reading::Work dropped(problem, wish);  // at any time
        dropped.work(9);
    }
}

}  // namespace test_reading_sample
