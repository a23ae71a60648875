#pragma once

#include "grammar/exact.hpp"

#include <rapidcheck.h>

/// Amounts for the properties: fractions as recipes have them, and awkward ones.
namespace benchcard::measures::testing {

inline exact positive(int up_to) {
    const int denominator = *rc::gen::element(1, 2, 3, 4, 7, 8, 10, 16, 100, 997);
    return exact(*rc::gen::inRange(1, up_to * denominator + 1), denominator);
}

inline exact any_number(int up_to) {
    const int denominator = *rc::gen::element(1, 2, 3, 4, 7, 8, 10, 16, 100, 997);
    return exact(*rc::gen::inRange(-up_to * denominator, up_to * denominator + 1), denominator);
}

} // namespace benchcard::measures::testing
