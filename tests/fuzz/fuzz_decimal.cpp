// Number text: whatever is read prints shortest and reads back as the same number, with either sign.
#include <cstdint>
#include <cstdlib>
#include <string>

#include "engine/decimal.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(data), size);
    for (const auto& read : {decimal::read(text), decimal::calculate(text)}) {
        if (!read) continue;
        for (const decimal::Sign sign : {decimal::Sign::point, decimal::Sign::comma}) {
            const auto again = decimal::read(decimal::print(*read, sign));
            if (!again || *again != *read) std::abort();
        }
    }
    return 0;
}
