// SplitMix64: a counter in steps of the golden ratio, mixed. Published in Steele, Lea and Flood, "Fast
// splittable pseudorandom number generators" (2014); the mixing constants are those of Vigna's reference
// code. Good for tests, sampling and shuffling; not for secrets.
#include "chance.h"

#include <cassert>

namespace chance {

std::uint64_t Generator::next() {
    state_ += 0x9E3779B97F4A7C15U;
    std::uint64_t mixed = state_;
    mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9U;
    mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBU;
    return mixed ^ (mixed >> 31);
}

std::uint64_t Generator::below(std::uint64_t bound) {
    assert(bound > 0);
    // 2^64 mod bound values at the low end are thrown away; what stays is a whole number of rounds.
    const std::uint64_t uneven = (0 - bound) % bound;
    std::uint64_t drawn = next();
    while (drawn < uneven)
        drawn = next();
    return drawn % bound;
}

std::int64_t Generator::between(std::int64_t low, std::int64_t high) {
    assert(low <= high);
    const std::uint64_t span = static_cast<std::uint64_t>(high) - static_cast<std::uint64_t>(low) + 1;
    const std::uint64_t drawn = span == 0 ? next() : below(span);
    return static_cast<std::int64_t>(static_cast<std::uint64_t>(low) + drawn);
}

double Generator::unit() {
    return static_cast<double>(next() >> 11) * 0x1.0p-53;
}

}  // namespace chance
