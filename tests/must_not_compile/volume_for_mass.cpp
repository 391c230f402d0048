// A volume is no mass: only a density turns one into the other.
#include "engine/quantity.h"

int main() {
    const quantity::Volume volume = quantity::millilitres(60);
#ifdef MUST_NOT_COMPILE
    const quantity::Mass mass = volume;
#else
    const quantity::Mass mass = quantity::mass_of(volume, quantity::Density{9000});
#endif
    return mass.grid > 0 ? 0 : 1;
}
