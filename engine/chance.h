// A small seeded generator that gives the same numbers natively and as wasm (SplitMix64, Steele et al. 2014).
// No standard distribution: those differ between libraries. Not called random: the C library has a function
// of that name.
#pragma once

#include <cstdint>

namespace chance {

class Generator {
  public:
    explicit Generator(std::uint64_t seed) : state_(seed) {}
    std::uint64_t next();
    std::uint64_t below(std::uint64_t bound);  // uniform in [0, bound), bound > 0, without modulo bias
    std::int64_t between(std::int64_t low, std::int64_t high);  // both ends included
    double unit();                                              // [0, 1), 53 bits

  private:
    std::uint64_t state_;
};

}  // namespace chance
