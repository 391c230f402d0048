// Grams and percent do not add. Compiled twice: as it stands (must pass) and with MUST_NOT_COMPILE (must
// fail).
#include "engine/quantity.h"

int main() {
    quantity::Mass mass = quantity::grams(250);
#ifdef MUST_NOT_COMPILE
    mass = mass + quantity::percent(5);
#else
    mass = mass + quantity::grams(5);
#endif
    return mass.grid > 0 ? 0 : 1;
}
