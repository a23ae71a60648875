#pragma once

#include <boost/multiprecision/cpp_int.hpp>

namespace benchcard {

/// A rational number without bound or rounding: what an amount is from the source text to the
/// one rounding at the end. A third of a cup, three times, is a cup.
using exact = boost::multiprecision::number<boost::multiprecision::cpp_rational_backend,
                                            boost::multiprecision::et_off>;

/// The nearest double; for showing and for layout, never for deciding.
inline double approximately(const exact& value) { return static_cast<double>(value); }

} // namespace benchcard
