// A line is a combination of as many runs of neighbours as there are equations, and one more, in which all
// equations stay as they are. Some of the statements are held like equations, others not, by chance: along a
// narrow one the way is long, across it short. All is drawn without looking at where the walk stands, so that
// the even spread is what it settles into. Runs of a single item are among them: it can go everywhere.
#include "reading_walk.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace reading {
namespace {

constexpr double kFlat = 1e-9;        // of a weight, beside others of about 1
constexpr double kStays = 1e-12;      // of a move
constexpr std::size_t kMostHeld = 5;  // statements, beside the equations

// Blocks of one branch: neighbours whose gap is shut move together.
std::vector<std::size_t> blocks_of(std::size_t items, const Branch& branch, std::size_t& count) {
    std::vector<std::size_t> block(items, kFixed), of(items, kFixed);
    const Shape& shape = branch.shape;
    const std::size_t above = shape.above.size();
    count = 0;
    std::size_t current = kFixed;
    for (std::size_t j = above; j-- > 0;) {
        if (!branch.fixed[j]) current = count++;
        of[shape.above[j]] = current;
    }
    std::size_t at = above;
    for (const auto* list : {&shape.below, &shape.free})
        for (const std::size_t item : *list)
            if (!branch.fixed[at++]) of[item] = count++;
    // Numbered in the order of the list, what is free last, so that branches can be compared.
    std::vector<std::size_t> number(count, kFixed);
    std::size_t next = 0;
    for (const auto* list : {&shape.above, &shape.below, &shape.free})
        for (const std::size_t item : *list) {
            if (of[item] == kFixed) continue;
            if (number[of[item]] == kFixed) number[of[item]] = next++;
            block[item] = number[of[item]];
        }
    return block;
}

// Takes out of `row` what the others say already; whether anything is left. The others are each led by a 1
// that stands in no other.
bool independent(std::vector<double>& row, const std::vector<std::vector<double>>& others,
                 const std::vector<std::size_t>& leads, std::size_t& lead) {
    double size = 0;
    for (const double one : row)
        size = std::max(size, std::abs(one));
    for (std::size_t i = 0; i < others.size(); ++i) {
        const double factor = row[leads[i]];
        for (std::size_t j = 0; j < row.size() && factor != 0; ++j)
            row[j] -= factor * others[i][j];
    }
    lead = 0;
    for (std::size_t j = 0; j < row.size(); ++j)
        if (std::abs(row[j]) > std::abs(row[lead])) lead = j;
    if (row.empty() || std::abs(row[lead]) <= kFlat * size) return false;
    const double by = 1 / row[lead];
    for (double& one : row)
        one *= by;
    return true;
}

Hull hull_of_one(std::size_t items, const Branch& branch, const std::vector<Row>& rows) {
    Hull hull;
    hull.block = blocks_of(items, branch, hull.blocks);
    std::vector<std::size_t> leads;
    const auto add = [&](const std::vector<double>& weights) {
        std::vector<double> row(hull.blocks, 0.0);
        for (std::size_t i = 0; i < items; ++i)
            if (hull.block[i] != kFixed) row[hull.block[i]] += weights[i];
        std::size_t lead = 0;
        if (!independent(row, hull.equations, leads, lead)) return;
        for (std::vector<double>& other : hull.equations) {
            const double factor = other[lead];
            for (std::size_t j = 0; j < row.size() && factor != 0; ++j)
                other[j] -= factor * row[j];
        }
        hull.equations.push_back(std::move(row));
        leads.push_back(lead);
    };
    add(std::vector<double>(items, 1.0));
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (branch.tight[i]) add(rows[i].weights);
    return hull;
}

// The part of the line on which low <= value + t rate <= high.
inline void narrow(double value, double rate, double low, double high, double& from, double& to) {
    if (std::abs(rate) < kStays) {
        if (value < low - kFlat || value > high + kFlat) to = -simplex::kInfinity;
        return;
    }
    const double by = 1 / rate, a = (low - value) * by, b = (high - value) * by;
    from = std::max(from, rate > 0 ? a : b);
    to = std::min(to, rate > 0 ? b : a);
}

}  // namespace

Hull hull_of(std::size_t items, const std::vector<Branch>& branches, const std::vector<Row>& rows,
             bool& others) {
    std::vector<Hull> hulls;
    for (std::size_t i = 0; i < branches.size(); ++i) {
        Hull one = hull_of_one(items, branches[i], rows);
        // The same ways to move, and the same figures where none are left.
        const auto same = [&](const Hull& other) {
            if (other.block != one.block || other.freedom() != one.freedom()) return false;
            const std::vector<double>& there = branches[other.branches[0]].middle;
            for (std::size_t j = 0; j < items; ++j)
                if (one.block[j] == kFixed && std::abs(branches[i].middle[j] - there[j]) > 1e-6) return false;
            return true;
        };
        const auto known = std::find_if(hulls.begin(), hulls.end(), same);
        if (known == hulls.end()) {
            one.branches = {i};
            hulls.push_back(std::move(one));
        } else {
            known->branches.push_back(i);
        }
    }
    const auto best = std::max_element(hulls.begin(), hulls.end(), [](const Hull& a, const Hull& b) {
        return a.freedom() != b.freedom() ? a.freedom() < b.freedom() : a.branches.size() < b.branches.size();
    });
    others = std::count_if(hulls.begin(), hulls.end(),
                           [&](const Hull& one) { return one.freedom() == best->freedom(); }) > 1;
    return *best;
}

Walk::Walk(std::size_t items, const std::vector<Branch>& branches, const std::vector<Row>& rows, Hull hull,
           std::uint64_t seed)
    : items_(items),
      rows_(rows),
      hull_(std::move(hull)),
      points_(kWalks * items),
      moves_(items),
      of_blocks_(hull_.blocks + 1),
      chance_(seed) {
    const Branch& one = branches[hull_.branches[0]];
    line_ = one.shape.line;
    ordered_ = one.shape.above;
    ordered_.insert(ordered_.end(), one.shape.below.begin(), one.shape.below.end());
    free_ = one.shape.free;
    branch_at_.assign(ordered_.size() + 1, kFixed);
    first_ = ordered_.size();
    for (const std::size_t at : hull_.branches) {
        const std::size_t above = branches[at].shape.above.size();
        branch_at_[above] = at;
        first_ = std::min(first_, above);
        last_ = std::max(last_, above);
    }
    below_.resize(ordered_.size() + 1);
    const auto sum_up = [&](const std::vector<double>& weights) {
        std::vector<double> sums(1, 0.0);
        for (const double one_weight : weights)
            sums.push_back(sums.back() + one_weight);
        up_to_.push_back(std::move(sums));
    };
    for (const std::vector<double>& equation : hull_.equations)
        sum_up(equation);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (one.tight[i]) continue;
        std::vector<double> weights(hull_.blocks, 0.0);
        for (std::size_t item = 0; item < items; ++item)
            if (hull_.block[item] != kFixed) weights[hull_.block[item]] += rows[i].weights[item];
        movable_.push_back(i);
        const auto touches = [](double weight) { return weight != 0; };
        const auto touched = std::find_if(weights.begin(), weights.end(), touches);
        single_.push_back(std::count_if(weights.begin(), weights.end(), touches) == 1
                              ? static_cast<std::size_t>(touched - weights.begin())
                              : kFixed);
        sum_up(weights);
    }
    rates_.resize(movable_.size());
    blocks_above_.push_back(0);
    for (const std::size_t item : ordered_)
        blocks_above_.push_back(hull_.block[item] == kFixed
                                    ? blocks_above_.back()
                                    : std::max(blocks_above_.back(), hull_.block[item] + 1));
    // Each walk begins in another branch, as far as there are several; they part at once.
    for (std::size_t walk = 0; walk < kWalks; ++walk) {
        const std::size_t at = hull_.branches[walk * hull_.branches.size() / kWalks];
        std::copy(branches[at].middle.begin(), branches[at].middle.end(),
                  points_.begin() + static_cast<std::ptrdiff_t>(walk * items));
    }
}

std::size_t Walk::branch_of(const double* percents) const {
    const auto value = [&](std::size_t j) { return percents[ordered_[j]]; };
    for (std::size_t m = 0; m < branch_at_.size(); ++m) {
        if (branch_at_[m] == kFixed || (m > 0 && value(m - 1) < line_ - 1e-7)) continue;
        bool fits = true;
        for (std::size_t j = m; j < ordered_.size() && fits; ++j)
            fits = value(j) <= line_ + 1e-7;
        if (fits) return branch_at_[m];
    }
    return hull_.branches[0];
}

// Blocks that move alike: neighbours above the line, with none between them that is shut; a single one below
// it. From the beginning of such a stretch, a single one, or any part of it. `line`: of the blocks.
bool Walk::add_run(std::size_t line) {
    const std::size_t block = below(hull_.blocks);
    if (shut_[block]) return false;
    const std::uint64_t kind = chance_.below(4);
    std::size_t from = block, first = block;
    while (block < line && first > 0 && !shut_[first - 1])
        --first;
    if (kind < 2) from = first;
    if (kind == 3 && first < block) from = first + below(block - first + 1);
    runs_.push_back({from, block + 1});
    return true;
}

bool Walk::choose_direction() {
    held_.clear();
    shut_.assign(hull_.blocks, false);
    for (std::size_t i = 0; i < hull_.equations.size(); ++i)
        held_.push_back(i);
    const std::uint64_t which = movable_.empty() ? 0 : chance_.next();
    std::size_t open = hull_.blocks;
    for (std::size_t i = 0; i < movable_.size() && held_.size() < hull_.equations.size() + kMostHeld; ++i) {
        if ((which >> (i % 64) & 1) == 0 || open <= hull_.equations.size() + 1) continue;
        if (single_[i] == kFixed) {
            if (held_.size() + 1 < open) held_.push_back(hull_.equations.size() + i);
        } else if (!shut_[single_[i]]) {
            shut_[single_[i]] = true;
            --open;
        }
    }
    const std::size_t line = blocks_above_[first_ + below(last_ - first_ + 1)];
    const std::size_t rank = held_.size(), columns = rank + 1;
    runs_.clear();
    for (std::size_t c = 0; c < columns; ++c)
        if (!add_run(line)) return false;
    // What each run does to each of them; the factors that undo one another, by elimination.
    table_.resize(rank * columns);
    for (std::size_t r = 0; r < rank; ++r)
        for (std::size_t c = 0; c < columns; ++c)
            table_[r * columns + c] = up_to_[held_[r]][runs_[c].to] - up_to_[held_[r]][runs_[c].from];
    for (std::size_t r = 0; r < rank; ++r) {
        std::size_t best = r;
        for (std::size_t other = r + 1; other < rank; ++other)
            if (std::abs(table_[other * columns + r]) > std::abs(table_[best * columns + r])) best = other;
        if (std::abs(table_[best * columns + r]) < kFlat) return false;  // another line, then
        if (best != r)
            for (std::size_t c = 0; c < columns; ++c)
                std::swap(table_[r * columns + c], table_[best * columns + c]);
        for (std::size_t other = 0; other < rank; ++other) {
            const double factor = table_[other * columns + r] / table_[r * columns + r];
            if (other == r || factor == 0) continue;
            for (std::size_t c = r; c < columns; ++c)
                table_[other * columns + c] -= factor * table_[r * columns + c];
        }
    }
    std::fill(of_blocks_.begin(), of_blocks_.end(), 0.0);
    std::fill(rates_.begin(), rates_.end(), 0.0);
    for (std::size_t c = 0; c < columns; ++c) {
        const double factor = c == rank ? -1 : table_[c * columns + rank] / table_[c * columns + c];
        of_blocks_[runs_[c].from] += factor;
        of_blocks_[runs_[c].to] -= factor;
        for (std::size_t i = 0; i < movable_.size(); ++i) {
            const std::vector<double>& sums = up_to_[hull_.equations.size() + i];
            rates_[i] += factor * (sums[runs_[c].to] - sums[runs_[c].from]);
        }
    }
    for (std::size_t i = hull_.equations.size(); i < rank; ++i)
        rates_[held_[i] - hull_.equations.size()] = 0;
    double most = 0;
    for (std::size_t b = 0; b < hull_.blocks; ++b) {
        if (b > 0) of_blocks_[b] += of_blocks_[b - 1];
        most = std::max(most, std::abs(of_blocks_[b]));
    }
    if (most < kFlat) return false;
    for (std::size_t i = 0; i < items_; ++i) {
        const double move = hull_.block[i] == kFixed ? 0 : of_blocks_[hull_.block[i]];
        moves_[i] = std::abs(move) < kStays ? 0 : move;
    }
    return true;
}

void Walk::step(std::size_t walk) {
    if (!choose_direction()) return;
    double* const point = points_.data() + walk * items_;
    double from = -simplex::kInfinity, to = simplex::kInfinity;
    for (const std::size_t item : free_)
        if (moves_[item] != 0) narrow(point[item], moves_[item], 0, 100, from, to);
    for (std::size_t i = 0; i < movable_.size(); ++i)
        if (std::abs(rates_[i]) > kStays) {
            const Row& row = rows_[movable_[i]];
            narrow(sum_of(row.weights, point), rates_[i], row.low, row.high, from, to);
        }
    const std::size_t count = ordered_.size();
    // What the items below the line allow, for each place of it; then what those above allow.
    below_[count] = {from, to};
    for (std::size_t j = count; j-- > first_;) {
        below_[j] = below_[j + 1];
        narrow(point[ordered_[j]], moves_[ordered_[j]], 0, line_, below_[j].low, below_[j].high);
    }
    spans_.clear();
    double low = -simplex::kInfinity, high = simplex::kInfinity;
    for (std::size_t m = 0; m <= last_ && high > low; ++m) {
        if (m > 1) {
            const std::size_t a = ordered_[m - 2], b = ordered_[m - 1];
            narrow(point[a] - point[b], moves_[a] - moves_[b], 0, simplex::kInfinity, low, high);
        }
        if (branch_at_[m] == kFixed) continue;
        Span span{std::max(low, below_[m].low), std::min(high, below_[m].high)};
        if (m > 0)
            narrow(point[ordered_[m - 1]], moves_[ordered_[m - 1]], line_, simplex::kInfinity, span.low,
                   span.high);
        if (span.high > span.low) spans_.push_back(span);
    }
    // Places that say the same (an item at exactly the line) count once.
    std::sort(spans_.begin(), spans_.end(), [](const Span& a, const Span& b) { return a.low < b.low; });
    double length = 0, end = -simplex::kInfinity;
    for (Span& span : spans_) {
        span.low = std::max(span.low, end);
        end = std::max(end, span.high);
        length += std::max(0.0, span.high - span.low);
    }
    if (!(length > 0 && length < simplex::kInfinity)) return;
    double left = chance_.unit() * length;
    for (const Span& span : spans_) {
        const double own = span.high - span.low;
        if (own <= 0) continue;
        if (left <= own) {
            for (std::size_t i = 0; i < items_; ++i)
                point[i] = std::max(0.0, point[i] + (span.low + left) * moves_[i]);
            return;
        }
        left -= own;
    }
}

}  // namespace reading
