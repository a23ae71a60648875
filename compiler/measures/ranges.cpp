#include "compiler/measures/ranges.hpp"

#include "compiler/measures/kitchen.hpp"

namespace benchcard::measures {

std::string range_of(const std::string& low, const std::string& high, const std::string& unit) {
    if (low == high) return low + unit;
    const std::string both = low + high;
    const bool apart = both.find(' ') != std::string::npos || both.find("−") != std::string::npos;
    return low + (apart ? " – " : "–") + high + unit;
}

std::string decimals_with_minus(const exact& value) {
    return value < 0 ? "−" + in_decimals(-value, 2) : in_decimals(value, 2);
}

} // namespace benchcard::measures
