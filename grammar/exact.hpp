#pragma once

#include <boost/multiprecision/cpp_int.hpp>
#include <compare>
#include <concepts>
#include <cstdint>
#include <iosfwd>
#include <limits>
#include <memory>
#include <numeric>
#include <string>
#include <utility>

namespace benchcard {

/// A rational number without bound or rounding: what an amount is from the source text to the
/// one rounding at the end. A third of a cup, three times, is a cup.
///
/// Nearly all numbers of a kitchen are fractions of two machine words, and are reckoned as such;
/// what does not fit is Boost's.
class exact {
  public:
    using whole = boost::multiprecision::cpp_int;
    using rational = boost::multiprecision::number<boost::multiprecision::cpp_rational_backend,
                                                   boost::multiprecision::et_off>;

    exact() = default;
    exact(std::integral auto value) : exact(of(value)) {}
    /// Throws std::overflow_error where `below` is 0.
    exact(std::integral auto above, std::integral auto below) : exact(over(above, below)) {}
    explicit exact(const rational& value);
    explicit exact(const whole& value) : exact(rational(value)) {}

    exact& operator+=(const exact& other) { return *this = *this + other; }
    exact& operator-=(const exact& other) { return *this = *this - other; }
    exact& operator*=(const exact& other) { return *this = *this * other; }
    exact& operator/=(const exact& other) { return *this = *this / other; }
    exact operator-() const { return exact() - *this; }
    friend exact operator+(const exact& a, const exact& b);
    friend exact operator-(const exact& a, const exact& b);
    friend exact operator*(const exact& a, const exact& b);
    /// Throws std::overflow_error where `b` is 0.
    friend exact operator/(const exact& a, const exact& b);
    friend bool operator==(const exact& a, const exact& b);
    friend std::strong_ordering operator<=>(const exact& a, const exact& b);

    /// The greatest whole number that is not greater.
    friend exact floor(const exact& value);
    friend exact abs(const exact& value) { return value < 0 ? -value : value; }
    friend whole numerator(const exact& value);
    friend whole denominator(const exact& value); ///< greater than 0
    rational as_rational() const;
    /// The nearest double.
    explicit operator double() const;
    /// `2/3`, `-5`.
    std::string str() const;
    friend std::ostream& operator<<(std::ostream& to, const exact& value);

  private:
    /// In lowest terms, `below_` greater than 0, and neither the smallest number that a word holds.
    std::int64_t above_ = 0, below_ = 1;
    std::shared_ptr<const rational> large_; ///< instead of these where one of them does not fit

    struct words {
        std::int64_t above, below;
    };
    explicit exact(words w) : above_(w.above), below_(w.below) {}
    static constexpr bool fits(std::integral auto value) {
        constexpr auto most = std::numeric_limits<std::int64_t>::max();
        return std::in_range<std::int64_t>(value) && std::cmp_greater_equal(value, -most);
    }
    static exact of(std::integral auto value) {
        return fits(value) ? exact(words{static_cast<std::int64_t>(value), 1})
                           : exact(rational(value));
    }
    static exact over(std::integral auto above, std::integral auto below) {
        if (!fits(above) || !fits(below) || below <= 0) return of(above) / of(below);
        const auto a = static_cast<std::int64_t>(above), b = static_cast<std::int64_t>(below);
        const auto common = std::gcd(a, b);
        return exact(words{a / common, b / common});
    }
};

/// The nearest double; for showing and for layout, never for deciding.
inline double approximately(const exact& value) { return static_cast<double>(value); }

} // namespace benchcard
