// What a cloud of draws says of one ingredient: mean, spread, middle half and middle 90 %; and of draws that
// were walked to, whether the walks agree and how many independent ones they are worth.
#pragma once

#include <cstddef>
#include <vector>

namespace reading {

struct Likely {
    double mean = 0, deviation = 0, p05 = 0, median = 0, p95 = 0;
    double r_hat = 1, effective = 0;  // of independent draws: 1 and their number
    bool operator==(const Likely&) const = default;
};

// `draws`: formulas one after another, `items` figures each.
Likely likely_of(const std::vector<double>& draws, std::size_t items, std::size_t item);

// Split R-hat and effective sample size, for as many walks of equal length, one after the other in `draws`:
// each is cut in two, and what differs between the pieces is held against what differs within them; the
// autocorrelation is summed as far as it is positive and falling (Geyer 1992; Gelman et al., Bayesian Data
// Analysis, 3rd edition, 11.4 and 11.5). Good below 1.01 and from 400.
void compare_walks(const std::vector<double>& draws, std::size_t items, std::size_t item, std::size_t walks,
                   Likely& likely);

}  // namespace reading
