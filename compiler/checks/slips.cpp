#include "compiler/checks/slips.hpp"

#include "compiler/checks/composition.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>

namespace benchcard::checks {

namespace {

using grammar::unit;

constexpr std::pair<unit, unit> neighbours[] = {
    {unit::gram, unit::kilogram},    {unit::gram, unit::ounce},
    {unit::ounce, unit::pound},      {unit::pound, unit::kilogram},
    {unit::millilitre, unit::litre}, {unit::teaspoon, unit::tablespoon},
    {unit::cup, unit::tablespoon},
};

/// The digits of a whole number that a person would write out; empty for any other.
std::string digits_of(const exact& number) {
    constexpr int most = 1'000'000;
    if (number > most || number != measures::whole_part(number)) return "";
    return measures::in_decimals(number, 0);
}

class slip_finder {
  public:
    explicit slip_finder(const amount_written& written) : written_(written) {}

    std::vector<slip> run() {
        add_factors();
        add_neighbours();
        const auto digits = digits_of(written_.number);
        if (!digits.empty()) add_common_digits(digits);
        add_fair_factors();
        if (!digits.empty()) {
            add_fair_digits(digits);
            add_any_digits(digits);
        }
        return std::move(result_);
    }

  private:
    const amount_written& written_;
    std::vector<slip> result_;

    void add(amount_written meant, likelihood is) {
        meant.packs = written_.packs;
        const bool is_new = meant != written_ && meant.number > 0 && may_be_written(meant) &&
                            std::none_of(result_.begin(), result_.end(),
                                         [&](const auto& s) { return s.meant == meant; });
        if (is_new) result_.push_back({meant, is});
    }
    void add_number(const exact& number, likelihood is) { add({number, written_.in, {}}, is); }
    void add_digits(const std::string& digits, likelihood is) {
        if (!digits.empty() && digits.front() != '0') add_number(exact(std::stol(digits)), is);
    }

    /// Spoons are counted to a few, and whoever weighs in grams does not write 1.5 g of flour.
    bool may_be_written(const amount_written& meant) const {
        const auto in = meant.in;
        if (in == unit::teaspoon) return meant.number <= 4;
        if (in == unit::tablespoon) return meant.number <= 12;
        const bool is_smaller = in != written_.in && (in == unit::gram || in == unit::millilitre) &&
                                (written_.in == unit::kilogram || written_.in == unit::litre);
        return !is_smaller || meant.number == measures::whole_part(meant.number);
    }

    void add_factors() {
        for (const auto& factor : {exact(10), exact(1, 10)})
            add_number(written_.number * factor, likelihood::common);
    }

    void add_fair_factors() {
        for (const auto& factor : {exact(2), exact(1, 2)})
            add_number(written_.number * factor, likelihood::fair);
        for (int whole = 1; written_.number < 1 && whole <= 3; ++whole) // the 1 of `1 1/4`
            add_number(written_.number + whole, likelihood::fair);
    }

    void add_neighbours() {
        if (!written_.in) return;
        for (const auto& [one, other] : neighbours) {
            if (*written_.in == one) add({written_.number, other, {}}, likelihood::common);
            if (*written_.in == other) add({written_.number, one, {}}, likelihood::common);
        }
        // Nobody means milligrams who writes grams.
        if (*written_.in == unit::milligram)
            add({written_.number, unit::gram, {}}, likelihood::common);
    }

    void add_common_digits(const std::string& digits) {
        if (digits.back() != '0') add_number(written_.number * 10 + 5, likelihood::common);
        const auto length = digits.size();
        if (length > 1 && digits[length - 1] == digits[length - 2])
            add_number(measures::whole_part(written_.number / 10), likelihood::common);
    }

    void add_fair_digits(const std::string& digits) {
        for (char digit = '1'; digit <= '9'; ++digit) add_digits(digit + digits, likelihood::fair);
        for (std::size_t i = 1; i < digits.size(); ++i)
            if (digits[i] == digits[i - 1])
                add_digits(std::string(digits).erase(i, 1), likelihood::fair);
    }

    /// A digit is put in nowhere behind the noughts at the end.
    void add_any_digits(const std::string& digits) {
        for (const auto& factor : {exact(100), exact(1, 100)})
            add_number(written_.number * factor, likelihood::rare);
        const auto last = digits.find_last_not_of('0') + 1;
        for (std::size_t i = 1; i <= last; ++i)
            for (char digit = '0'; digit <= '9'; ++digit)
                add_digits(std::string(digits).insert(i, 1, digit), likelihood::rare);
        for (std::size_t i = 0; i < digits.size(); ++i)
            add_digits(std::string(digits).erase(i, 1), likelihood::rare);
        for (std::size_t i = 1; i < digits.size(); ++i) {
            auto exchanged = digits;
            std::swap(exchanged[i - 1], exchanged[i]);
            add_digits(exchanged, likelihood::rare);
        }
    }
};

/// What one of a measure weighs, by what the written one does; nothing where that cannot be said.
std::optional<exact> grams_each(const weighed_amount& a, const std::optional<unit>& in) {
    const exact written_each = a.grams / a.written.number;
    if (in == a.written.in) return written_each;
    const auto size = [&](unit u) -> std::optional<exact> {
        if (const auto weight = measures::weight_of(u)) return weight->value;
        const auto volume = measures::volume_of(u, a.measures);
        return volume ? std::optional(volume->value) : std::nullopt;
    };
    const auto there = size(*a.written.in), here = size(*in);
    if (!there || !here) return std::nullopt;
    return exact(written_each * *here / *there);
}

/// The digits of a number that are not noughts at its end: 2 of 250, 1 of ½.
std::size_t odd_digits(const exact& number) {
    const auto digits = digits_of(number);
    return digits.empty() ? 1 : digits.find_last_not_of('0') + 1;
}

struct candidate {
    closing_slip would;
    likelihood is;
    exact off; ///< how far from what is wanted

    /// The commoner first; of rare ones the rounder; then the nearer.
    bool operator<(const candidate& other) const {
        if (is != other.is) return is < other.is;
        const auto odd = odd_digits(would.meant.number),
                   others = odd_digits(other.would.meant.number);
        if (is == likelihood::rare && odd != others) return odd < others;
        return off < other.off;
    }
};

/// How far a weight lies from the nearest that is wanted.
exact distance(const exact& weight, const balance_wanted& wanted) {
    if (weight < wanted.low) return wanted.low - weight;
    return weight > wanted.high ? exact(weight - wanted.high) : exact(0);
}

bool is_imperial(const std::optional<unit>& in) { return in == unit::ounce || in == unit::pound; }
bool is_metric(const std::optional<unit>& in) {
    return in == unit::gram || in == unit::kilogram || in == unit::millilitre || in == unit::litre;
}

class slip_search {
  public:
    slip_search(const std::vector<weighed_amount>& amounts, const exact& ready,
                const balance_wanted& wanted)
        : amounts_(amounts), ready_(ready), wanted_(wanted), imperial_(count_of(is_imperial)),
          metric_(count_of(is_metric)) {}

    std::vector<candidate> run() const {
        auto found = up_to(likelihood::fair);
        const bool is_plain = std::any_of(found.begin(), found.end(), [&](const auto& c) {
            return c.is <= likelihood::common && is_close(c);
        });
        if (is_plain || found.size() > most_shown) found = up_to(likelihood::common);
        if (found.size() > most_shown)
            std::erase_if(found, [&](const auto& c) { return !is_close(c); });
        if (found.empty()) found = up_to(likelihood::rare);
        if (found.size() > most_shown) found.erase(found.begin() + most_shown, found.end());
        return found;
    }

  private:
    static constexpr std::size_t most_shown = 3;

    const std::vector<weighed_amount>& amounts_;
    const exact& ready_;
    const balance_wanted& wanted_;
    std::ptrdiff_t imperial_, metric_; ///< how many amounts are in ounces or pounds, in grams or ml

    std::ptrdiff_t count_of(bool (*is_such)(const std::optional<unit>&)) const {
        return std::count_if(amounts_.begin(), amounts_.end(),
                             [&](const auto& a) { return is_such(a.written.in); });
    }

    likelihood likelihood_of(const weighed_amount& a, const slip& s) const {
        const bool is_odd_one =
            is_imperial(a.written.in) && imperial_ == 1 && is_metric(s.meant.in) && metric_ > 1;
        if (is_odd_one) return likelihood::plain;
        const bool has_twin = s.is > likelihood::common &&
                              std::any_of(amounts_.begin(), amounts_.end(), [&](const auto& o) {
                                  return o.line != a.line && o.written == s.meant;
                              });
        return has_twin ? likelihood::common : s.is;
    }

    bool is_close(const candidate& c) const { return c.off <= wanted_.high / 100; }

    /// The lines of which some slip, this rare at most, would do.
    std::vector<candidate> up_to(likelihood rarest) const {
        std::vector<candidate> result;
        for (const auto& a : amounts_)
            if (auto found = nearest(a, rarest)) result.push_back(*found);
        std::stable_sort(result.begin(), result.end());
        return result;
    }

    std::optional<candidate> nearest(const weighed_amount& a, likelihood rarest) const {
        std::optional<candidate> best;
        for (const auto& s : slips_in(a.written)) {
            const auto is = likelihood_of(a, s);
            if (is > rarest || (is_imperial(s.meant.in) && imperial_ == 0)) continue;
            const auto each = grams_each(a, s.meant.in);
            if (!each) continue;
            const exact more = *each * s.meant.number - a.grams;
            if (a.most && a.grams + more > *a.most) continue;
            const exact would_be = ready_ + more;
            const exact off = distance(would_be, wanted_);
            const bool is_short = would_be < wanted_.low * exact(99, 100);
            const bool would_do = !is_short && would_be <= wanted_.at_most;
            const candidate one{{a.line, s.meant, more}, is, off};
            if (would_do && (!best || one < *best)) best = one;
        }
        return best;
    }
};

std::optional<weighed_amount> amount_of(const recipe::line& l, std::size_t index) {
    using sort = grammar::amount::sort;
    if (l.some || !l.grams || l.grams->used <= 0) return std::nullopt;
    const bool has_pair = !l.written->equals.empty();
    // Where a measure stands beside the weight, one vouches for the other if it can be weighed.
    const bool is_vouched_for = has_pair && l.what && !l.what->figures.empty();
    if (is_vouched_for && l.written->amounts.front().in) return std::nullopt;
    const auto& terms = has_pair ? l.written->equals : l.written->amounts;
    if (terms.size() != 1) return std::nullopt;
    const auto& q = terms.front().quantity;
    if (q.is != sort::number || q.low != q.high) return std::nullopt;
    return weighed_amount{index, {q.low, terms.front().in, q.packs}, l.grams->used, l.measures, {}};
}

/// What works, or tastes, in small amounts: a twelfth of a mix is more than anyone means (common
/// practice).
bool is_strong(const recipe::line& l) {
    constexpr part strong[] = {part::salt, part::spice, part::yeast,   part::powder,
                               part::soda, part::agar,  part::gelatine};
    return std::any_of(std::begin(strong), std::end(strong),
                       [&](part p) { return grams_in(l, p) > 0; });
}

} // namespace

std::vector<slip> slips_in(const amount_written& written) { return slip_finder(written).run(); }

std::vector<closing_slip> closing_slips(const std::vector<weighed_amount>& amounts,
                                        const exact& ready, const balance_wanted& wanted) {
    std::vector<closing_slip> result;
    for (auto& c : slip_search(amounts, ready, wanted).run()) result.push_back(std::move(c.would));
    return result;
}

std::vector<weighed_amount> amounts_of(const recipe::component& c) {
    std::vector<weighed_amount> result;
    const exact in_portion = c.mix && c.mix->used > 0 ? exact(c.ready->used / c.mix->used) : 1;
    for (std::size_t i = 0; i < c.lines.size(); ++i)
        if (auto a = amount_of(c.lines[i], i)) {
            a->grams *= c.times * in_portion;
            if (is_strong(c.lines[i])) a->most = c.ready->used / 12;
            result.push_back(std::move(*a));
        }
    return result;
}

std::string said(const amount_written& a) {
    const auto packs = a.packs ? measures::with_fraction(*a.packs) + " x " : std::string();
    const auto number = packs + measures::with_fraction(a.number, 3);
    if (!a.in) return number;
    const auto name = std::string(grammar::short_name(*a.in));
    const bool is_word = *a.in == unit::cup || *a.in == unit::stick || *a.in == unit::pint;
    return number + " " + (is_word && a.number > 1 ? ingredients::plural(name) : name);
}

} // namespace benchcard::checks
