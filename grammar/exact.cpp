#include "grammar/exact.hpp"

#include <limits>
#include <numeric>
#include <ostream>
#include <stdexcept>

namespace benchcard {

namespace {

using word = std::int64_t;
constexpr word most = std::numeric_limits<word>::max();

/// Holds the product of any two words, and the sum of two such products.
__extension__ using two_words = __int128;

two_words product(word a, word b) { return two_words{a} * b; }

bool fits(two_words value) { return value >= -most && value <= most; }

word common_divisor(word a, word b) { return a == 1 || b == 1 ? 1 : std::gcd(a, b); }

} // namespace

exact::exact(const rational& value) {
    const auto& above = boost::multiprecision::numerator(value);
    const auto& below = boost::multiprecision::denominator(value);
    if (above >= -most && above <= most && below <= most)
        above_ = static_cast<word>(above), below_ = static_cast<word>(below);
    else
        large_ = std::make_shared<const rational>(value);
}

exact::rational exact::as_rational() const { return large_ ? *large_ : rational(above_, below_); }

exact operator+(const exact& a, const exact& b) {
    if (!a.large_ && !b.large_) {
        // Both over what their denominators have in common: only that can be left to divide by.
        const auto common = common_divisor(a.below_, b.below_);
        const auto left = product(a.above_, b.below_ / common);
        const auto right = product(b.above_, a.below_ / common);
        const auto rest = common_divisor(static_cast<word>((left + right) % common), common);
        const auto above = (left + right) / rest;
        const auto below = product(a.below_ / common, b.below_ / rest);
        if (fits(above) && fits(below))
            return exact(exact::words{static_cast<word>(above), static_cast<word>(below)});
    }
    return exact(exact::rational(a.as_rational() + b.as_rational()));
}

exact operator-(const exact& a, const exact& b) {
    if (!b.large_) return a + exact(exact::words{-b.above_, b.below_});
    return exact(exact::rational(a.as_rational() - b.as_rational()));
}

exact operator*(const exact& a, const exact& b) {
    if (!a.large_ && !b.large_) {
        const auto one = common_divisor(a.above_, b.below_);
        const auto other = common_divisor(b.above_, a.below_);
        const auto above = product(a.above_ / one, b.above_ / other);
        const auto below = product(a.below_ / other, b.below_ / one);
        if (fits(above) && fits(below))
            return exact(exact::words{static_cast<word>(above), static_cast<word>(below)});
    }
    return exact(exact::rational(a.as_rational() * b.as_rational()));
}

exact operator/(const exact& a, const exact& b) {
    if (b == 0) throw std::overflow_error("a number is divided by 0");
    if (b.large_) return exact(exact::rational(a.as_rational() / b.as_rational()));
    return a * exact(b.above_ < 0 ? exact::words{-b.below_, -b.above_}
                                  : exact::words{b.below_, b.above_});
}

bool operator==(const exact& a, const exact& b) {
    if (a.large_ && b.large_) return *a.large_ == *b.large_;
    return !a.large_ && !b.large_ && a.above_ == b.above_ && a.below_ == b.below_;
}

std::strong_ordering operator<=>(const exact& a, const exact& b) {
    if (!a.large_ && !b.large_) {
        return product(a.above_, b.below_) <=> product(b.above_, a.below_);
    }
    return a.as_rational().compare(b.as_rational()) <=> 0;
}

exact floor(const exact& value) {
    if (!value.large_) {
        const auto whole = value.above_ / value.below_; // goes towards zero; below zero that is up
        return value.above_ < 0 && whole * value.below_ != value.above_ ? whole - 1 : whole;
    }
    const auto above = numerator(value), below = denominator(value);
    const exact::whole whole = above / below;
    return exact(above < 0 && whole * below != above ? exact::whole(whole - 1) : whole);
}

exact::whole numerator(const exact& value) {
    return value.large_ ? exact::whole(boost::multiprecision::numerator(*value.large_))
                        : exact::whole(value.above_);
}

exact::whole denominator(const exact& value) {
    return value.large_ ? exact::whole(boost::multiprecision::denominator(*value.large_))
                        : exact::whole(value.below_);
}

exact::operator double() const {
    // Up to here a word is a double to the last digit, and dividing rounds once.
    constexpr word most_digits = word{1} << std::numeric_limits<double>::digits;
    if (!large_ && above_ >= -most_digits && above_ <= most_digits && below_ <= most_digits)
        return static_cast<double>(above_) / static_cast<double>(below_);
    return static_cast<double>(as_rational());
}

std::string exact::str() const {
    if (large_) return large_->str();
    return std::to_string(above_) + (below_ == 1 ? "" : "/" + std::to_string(below_));
}

std::ostream& operator<<(std::ostream& to, const exact& value) { return to << value.str(); }

} // namespace benchcard
