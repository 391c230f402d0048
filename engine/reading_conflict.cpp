// A deletion filter over the sides of statements: each is left out in turn, and stays out if still nothing
// fits. Then the same over the rows of the list, beginning with those that the multipliers of one proof need.
// All in slices of one search, because with the line unknown each question is one for every place of it.
#include "reading_conflict.h"

#include <algorithm>
#include <cmath>

#include "sorting.h"

namespace reading {
namespace {

using What = Said::What;

constexpr std::size_t kFewItems = 100;  // the rows of longer lists are not told apart
constexpr std::size_t kFewSaid = 16;    // up to so many, every pair is tried

}  // namespace

ConflictWork::ConflictWork(const Problem& problem) : problem_(problem) {
    for (std::size_t i = 0; i < problem_.statements.size(); ++i) {
        const Statement& one = problem_.statements[i];
        if (!one.on) continue;
        if (one.min) all_.push_back({What::statement, i, false});
        if (one.max) all_.push_back({What::statement, i, true});
    }
    line_places_ = places_of(problem_);
    Problem open = problem_;
    open.line_after.reset();
    every_place_ = places_of(open);
    if (problem_.line_after && problem_.line.grid > 0)
        all_.push_back({What::line, *problem_.line_after, false});
    // Of each row, whose it is. A row with both sides is split.
    for (const Row& row : rows_of(problem_))
        for (const bool at_most : {false, true}) {
            if (at_most ? row.high == simplex::kInfinity : row.low == -simplex::kInfinity) continue;
            Row side = row;
            // The inverse of a density swaps its sides.
            const Statement& of = problem_.statements[row.statement];
            const bool inverse = of.kind == Kind::property && of.subject == "density";
            (at_most ? side.low : side.high) = at_most ? -simplex::kInfinity : simplex::kInfinity;
            const Said said{What::statement, row.statement, at_most != inverse};
            of_row_.push_back(
                static_cast<std::size_t>(std::find(all_.begin(), all_.end(), said) - all_.begin()));
            rows_.push_back(side);
        }
    set_.assign(all_.size(), true);
}

double ConflictWork::progress() const {
    switch (stage_) {
        case Stage::filter:
            return 0.4 * static_cast<double>(at_) / static_cast<double>(all_.size() + 1);
        case Stage::few:
            return 0.5;
        case Stage::list:
            return 0.6;
        case Stage::mend:
            return 0.7 + 0.3 * static_cast<double>(at_) / static_cast<double>(all_.size() + 1);
        case Stage::done:
            break;
    }
    return 1;
}

// Whether something fits all of `set`: looked at for one place at a time. True once it is known, in fits_.
bool ConflictWork::ask(const Set& set) {
    const bool open = !all_.empty() && all_.back().what == What::line && !set.back();
    const std::vector<std::size_t>& places = open ? every_place_ : line_places_;
    if (place_ == 0) fits_ = false;
    if (place_ < places.size()) {
        std::vector<Row> rows;
        for (std::size_t i = 0; i < rows_.size(); ++i)
            if (set[of_row_[i]]) rows.push_back(rows_[i]);
        fits_ = simplex::Solver(shape_of(problem_, rows, places[place_]).gaps).fit() !=
                simplex::Verdict::infeasible;
        ++place_;
    }
    if (!fits_ && place_ < places.size()) return false;
    place_ = 0;
    return true;
}

void ConflictWork::step_filter() {
    if (at_ == all_.size()) {
        const auto left = static_cast<std::size_t>(std::count(set_.begin(), set_.end(), true));
        size_ = 1;
        first_ = second_ = 0;
        stage_ = left > 1 && all_.size() <= kFewSaid ? Stage::few : Stage::list;
        if (stage_ == Stage::list) start_list();
        return;
    }
    asked_ = set_;
    asked_[at_] = false;
    if (!ask(asked_)) return;
    if (!fits_) set_ = asked_;
    ++at_;
}

// Every one by itself, then every pair, as long as that would be smaller than what the filter left.
bool ConflictWork::next_few() {
    const auto left = static_cast<std::size_t>(std::count(set_.begin(), set_.end(), true));
    if (size_ == 1 && ++first_ == all_.size()) {
        size_ = 2;
        first_ = 0;
        second_ = 1;
    } else if (size_ == 2 && ++second_ == all_.size()) {
        second_ = ++first_ + 1;
    }
    return size_ < left && first_ < all_.size() && (size_ == 1 || second_ < all_.size());
}

void ConflictWork::start_list() {
    stage_ = Stage::mend;
    at_ = 0;
    place_ = 0;
    for (std::size_t i = 0; i < all_.size(); ++i)
        if (set_[i]) conflict_.said.push_back(all_[i]);
    if (!problem_.line_after || problem_.items.size() > kFewItems) return;
    std::vector<Row> rows;
    for (std::size_t i = 0; i < rows_.size(); ++i)
        if (set_[of_row_[i]]) rows.push_back(rows_[i]);
    natural_ = natural_of(problem_, rows, *problem_.line_after);
    simplex::Solver solver(natural_.percents);
    if (solver.fit() != simplex::Verdict::infeasible) return;
    list_.assign(natural_.rows.size(), true);
    for (std::size_t i = 0; i < list_.size(); ++i)
        list_[i] = natural_.rows[i].claim == Claim::statement || solver.certificate().of_rows[i] != 0;
    stage_ = Stage::list;
}

void ConflictWork::step_list() {
    while (at_ < list_.size() && !list_[at_])
        ++at_;
    const auto problem_with = [&](const Set& rows) {
        simplex::Problem some(problem_.items.size(), 0, 100);
        for (std::size_t i = 0; i < rows.size(); ++i)
            if (rows[i])
                std::copy_n(natural_.percents.row(i), some.variables(),
                            some.add_row(natural_.percents.row_low[i], natural_.percents.row_high[i]));
        return some;
    };
    if (at_ < list_.size()) {
        Set without = list_;
        without[at_] = false;
        if (simplex::Solver(problem_with(without)).fit() != simplex::Verdict::infeasible) {
            ++at_;
            return;
        }
        // Where it matters that the line may stand elsewhere, no one place of it tells the story.
        if (natural_.rows[at_].claim != Claim::statement) {
            list_ = without;
            return;
        }
        list_.assign(list_.size(), false);
    }
    for (std::size_t i = 0; i < list_.size(); ++i) {
        const Stated& row = natural_.rows[i];
        if (!list_[i] || row.claim == Claim::statement) continue;
        const What what = row.claim == Claim::total   ? What::total
                          : row.claim == Claim::order ? What::order
                          : row.claim == Claim::above ? What::above
                                                      : What::below;
        conflict_.beside.push_back({what, row.at, row.at_most});
    }
    at_ = 0;
    place_ = 0;
    stage_ = Stage::mend;
}

// One of the set is left out and the others of the whole problem kept: how far must its sum go?
void ConflictWork::step_mend() {
    while (at_ < all_.size() && !set_[at_])
        ++at_;
    if (at_ == all_.size()) {
        finish();
        return;
    }
    const Said& said = all_[at_];
    const bool line = said.what == What::line;
    const std::vector<std::size_t>& places = line ? every_place_ : line_places_;
    if (place_ == 0) any_ = false;
    if (place_ < places.size()) {
        std::vector<Row> rows;
        const Row* own = nullptr;
        for (std::size_t i = 0; i < rows_.size(); ++i)
            if (of_row_[i] != at_)
                rows.push_back(rows_[i]);
            else
                own = &rows_[i];
        const Shape shape = shape_of(problem_, rows, places[place_]);
        simplex::Solver solver(shape.gaps);
        if (line || own == nullptr) {
            const double far = std::abs(static_cast<double>(places[place_]) - static_cast<double>(said.at));
            const bool fits = solver.fit() == simplex::Verdict::optimal;
            if (fits && (!any_ || far < std::abs(best_ - static_cast<double>(said.at))))
                best_ = static_cast<double>(places[place_]), any_ = true;
        } else {
            // A most that is too low: the least that the sum can be; a least likewise.
            double constant = 0;
            const std::vector<double> weights = shape.in_gaps(own->weights, constant);
            const bool upper = own->high < simplex::kInfinity;
            const simplex::Verdict verdict = upper ? solver.minimise(weights) : solver.maximise(weights);
            const double value = solver.value() + constant;
            if (verdict == simplex::Verdict::optimal && (!any_ || (upper ? value < best_ : value > best_)))
                best_ = value, any_ = true;
        }
        ++place_;
    }
    if (place_ < places.size()) return;
    place_ = 0;
    ++at_;
    if (!any_) return;
    Mend mend{said, 0, 0};
    if (line) {
        mend.figure = static_cast<std::int64_t>(best_);
        mend.by = std::abs(best_ - static_cast<double>(said.at)) / static_cast<double>(problem_.items.size());
    } else {
        const Statement& of = problem_.statements[said.at];
        const double figure = of.kind == Kind::property && of.subject == "density" ? 1 / best_ : best_;
        mend.figure =
            decimal::rounded(figure, said.at_most ? decimal::Toward::above : decimal::Toward::below);
        const std::int64_t was = said.at_most ? *of.max : *of.min;
        mend.by = static_cast<double>(std::abs(mend.figure - was)) /
                  static_cast<double>(std::max<std::int64_t>(std::max(was, mend.figure), 1));
    }
    conflict_.mends.push_back(mend);
}

void ConflictWork::finish() {
    sorting::stable(conflict_.mends, [](const Mend& a, const Mend& b) { return a.by < b.by; });
    stage_ = Stage::done;
}

bool ConflictWork::work(std::size_t searches) {
    for (; searches > 0 && stage_ != Stage::done; --searches) {
        if (stage_ == Stage::filter) {
            step_filter();
        } else if (stage_ == Stage::few) {
            asked_.assign(all_.size(), false);
            asked_[first_] = true;
            if (size_ == 2) asked_[second_] = true;
            if (!ask(asked_)) continue;
            if (!fits_) set_ = asked_;
            if (!fits_ || !next_few()) start_list();
        } else if (stage_ == Stage::list) {
            step_list();
        } else {
            step_mend();
        }
    }
    return stage_ != Stage::done;
}

}  // namespace reading
