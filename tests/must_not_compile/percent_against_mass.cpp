// A percent cannot be compared with a mass, and a bare number is neither.
#include "engine/quantity.h"

int main() {
    const quantity::Percent percent = quantity::percent(21);
#ifdef MUST_NOT_COMPILE
    const bool more = percent > quantity::grams(20);
#else
    const bool more = percent > quantity::percent(20);
#endif
    return more ? 0 : 1;
}
