#pragma once

#include "compiler/measures/systems.hpp"
#include "compiler/recipe/recipe.hpp"

#include <optional>
#include <vector>

/// Slips of the pen: what an amount was, if the one who wrote it down made one simple mistake.
namespace benchcard::checks {

/// A number with its measure: `150 g`, `4` (of something counted).
struct amount_written {
    exact number = 0;
    std::optional<grammar::unit> in;
    std::optional<exact> packs = {}; ///< the 4 of `4 x 400 g`, which stays as it is

    bool operator==(const amount_written&) const = default;
};

/// How likely a slip is. Plain: a measure that no other line of the mix has, ounces among grams,
/// taken for the one that they have. Common: a nought or a five dropped at the end, the last digit
/// struck twice, the decimal point moved by a place, a measure taken for its neighbour (g and kg or
/// oz, mg for g, ml and l, tsp and tbsp, cup and tbsp); and any that makes the amount that of
/// another line too, as in a pound cake. Fair: halved or doubled, the first digit dropped, the 1 of
/// 1½, another struck twice. Rare: the point moved by two places, any other digit dropped or added,
/// two exchanged.
enum class likelihood { plain, common, fair, rare };

/// What an amount may have been.
struct slip {
    amount_written meant;
    likelihood is = likelihood::rare;
};
/// Every slip undone in an amount greater than 0, each once, the likeliest first. Nothing that no
/// cook would write: 25 tsp, 1.5 g for 1.5 kg, or 405 g for the 40 g of someone who uses noughts.
std::vector<slip> slips_in(const amount_written& written);

/// An amount of a line, with what is needed to weigh it had it been another.
struct weighed_amount {
    std::size_t line = 0;
    amount_written written;
    exact grams = 0; ///< what it stands for in the mix that is portioned
    measures::system measures = measures::system::unstated;
    std::optional<exact> most = {}; ///< grams: more than that of it no mix holds, as of salt
};
/// One line of which a slip, undone, would bring the mix to what it should be.
struct closing_slip {
    std::size_t line = 0;
    amount_written meant;
    exact more = 0; ///< grams more in the mix; below 0 for less
};

/// What a mix should weigh: closest is between `low` and `high`, and at most `at_most` will do.
struct balance_wanted {
    exact low = 0, high = 0, at_most = 0;
};

/// The lines that would close the balance of a mix of `ready` grams with one slip undone, the
/// commonest, then the roundest and then the nearest first, one slip a line and three at the most.
/// Rare slips count only where no other would do. Ounces are only meant where there are others.
std::vector<closing_slip> closing_slips(const std::vector<weighed_amount>& amounts,
                                        const exact& ready, const balance_wanted& wanted);

/// The amounts of a component's lines: each that is one plain measure whose weight is known.
std::vector<weighed_amount> amounts_of(const recipe::component& c);

/// `150 g`, `1½ cups`, `4`
std::string said(const amount_written& a);

} // namespace benchcard::checks
