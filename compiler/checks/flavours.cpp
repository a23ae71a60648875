#include "compiler/checks/proportions.hpp"
#include "compiler/ingredients/names.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace benchcard::checks {

namespace {

/// Spices and flavourings with the least and the most of a mix that recipes use of them (common
/// practice, with room for a shy hand and for festive baking); names in the singular, parted by
/// bars.
struct strong {
    std::string_view names;
    int least_in_10000; ///< what nobody would taste
    int most_in_1000;
    std::string_view practice;
};
constexpr strong strong_flavours[] = {
    {"ground nutmeg|ground mace|ground cloves|whole clove", 0, 5, ": 0.3 g to 2 g in 1 kg"},
    {"saffron", 0, 3, ": under 1 g in 1 kg"},
    {"cayenne pepper", 0, 12, ": 0.5 g to 4 g in 1 kg"},
    {"ground black pepper|ground white pepper|peppercorn", 0, 10, ": 1 g to 4 g in 1 kg"},
    {"turmeric", 1, 12, ": 1 g to 5 g in 1 kg"},
    {"cinnamon stick|star anise|cardamom pod|chilli flakes", 0, 15, ": 1 g to 5 g in 1 kg"},
    {"cumin seed|ground cumin|ground coriander|coriander seed|garam masala|caraway seed|fennel "
     "seed|fenugreek seed",
     3, 18, ": 2 g to 8 g in 1 kg"},
    {"curry powder|chilli powder|garlic powder|onion powder|mustard powder", 0, 40,
     ": 2 g to 15 g in 1 kg"},
    {"ground cinnamon|ground ginger|ground cardamom|allspice|pumpkin pie spice", 4, 35,
     ": 3 g to 15 g in 1 kg"},
    {"five-spice powder", 2, 25, ": 1 g to 8 g in 1 kg"},
    {"dried sage|dried rosemary|ground sage|dried thyme|dried oregano|dried mixed herbs|dried "
     "basil|fresh thyme|fresh rosemary",
     0, 18, ": 1 g to 6 g in 1 kg"},
    {"almond extract|peppermint extract|lemon extract|orange extract", 0, 20,
     ": 2 g to 8 g in 1 kg"},
    {"vanilla pod", 0, 15, ": 1 g to 6 g in 1 kg"},
    {"vanilla extract", 0, 27, ": 3 g to 10 g in 1 kg"},
    {"lemon zest|orange zest|lime zest", 0, 45, ": 2 g to 15 g in 1 kg"},
    {"xanthan gum|guar gum", 0, 25, ": 2 g to 8 g in 1 kg"},
};

/// Titles of what is not eaten by itself, or is meant to be strong; the second where it ends so.
constexpr std::string_view not_eaten_as_it_is =
    "seasoning|rub|masala|dukkah|jerk|marinade|brine|cure|cured|pickle|pickled|kimchi|sauerkraut|"
    "ferment|bouillon|gravlax|preserved|salted|harissa|concentrate|essence|extract|relish|chutney|"
    "curry paste|curry powder|salt dough|salt crust";
constexpr std::string_view strong_endings =
    "spice|salt|sugar|butter|syrup|tea|mix|sauce|paste|topping|glaze|wash|dressing|vinaigrette|"
    "dip|salsa|stock|powder";

/// The row of a strong flavour by its name in the form in which names are compared.
const std::map<std::string, const strong*>& strong_by_name() {
    static const auto all = [] {
        std::map<std::string, const strong*> result;
        for (const auto& s : strong_flavours)
            for (std::size_t begin = 0; begin < s.names.size();) {
                const auto end = std::min(s.names.find('|', begin), s.names.size());
                result[ingredients::compared_name(s.names.substr(begin, end - begin))] = &s;
                begin = end + 1;
            }
        return result;
    }();
    return all;
}

/// What is known of an ingredient that is strong; null of others.
const strong* strong_in(const recipe::line& l) {
    if (!l.what || !l.what->built_in) return nullptr;
    const auto found = strong_by_name().find(l.what->compared);
    return found == strong_by_name().end() ? nullptr : found->second;
}

std::string said_in_mix(const mix& m, const recipe::line& l) {
    return fmt::format("{} of {} is {} of the mix in {}", in_grams(l.grams->used), l.name,
                       as_percent(l.grams->used / m.held().total * 100), m.written().title);
}

bool is_eaten_as_it_is(const mix& m) {
    const auto& held = m.held();
    const exact sweet_and_fat =
        held.of(part::sugar) + held.of(part::fat) + held.of(part::spice) + held.of(part::salt);
    return held.is_whole && !is_minor_part(m) &&
           !says_one_of(m.written().title, not_eaten_as_it_is) &&
           !ends_in_one_of(m.written().title, strong_endings) && sweet_and_fat * 5 < held.total * 4;
}

/// Spoons and pinches are seen for what they are; of a weight a nought may be lost.
bool is_weighed(const recipe::line& l) { return l.how == recipe::weighed_by::weight; }

void check_strong(const mix& m, grammar::diagnostics& to) {
    const auto& total = m.held().total;
    for (const auto& l : m.written().lines) {
        const auto* s = strong_in(l);
        if (!s || !l.grams || is_set_aside(l)) continue;
        const auto& used = l.grams->used;
        const auto say = [&](std::string_view kind) {
            to.push_back(proportion(kind, l.where, said_in_mix(m, l), std::string(s->practice)));
        };
        if (used * 1000 > total * s->most_in_1000) say("flavour-high");
        if (is_weighed(l) && used * 10000 < total * s->least_in_10000) say("flavour-low");
    }
}

/// What is drawn out with salt and rinsed, or boiled in salted water, is not eaten with all of it.
bool loses_its_salt(const recipe::component& c) {
    constexpr std::string_view words = "rinse|drain|brine|cure|squeeze|pickle|pickled|ferment|"
                                       "wash|soak|crust";
    for (const auto& s : c.steps)
        for (const auto& p : s.parts)
            if (const auto* text = std::get_if<std::string>(&p); text && says_one_of(*text, words))
                return true;
    return false;
}

/// What is savoury, and salted with so little that it cannot be tasted, is a slip; not where it is
/// salted otherwise. Stock may be salted already.
void check_little_salt(const mix& m, const recipe::line& salt, grammar::diagnostics& to) {
    const auto& held = m.held();
    const auto& lines = m.written().lines;
    const bool is_savoury = held.of(part::sugar) * 50 < held.total;
    const bool is_salted_otherwise =
        held.of(part::brine) * 25 > held.total || held.is_loose(part::salt) ||
        !held.is_sure(part::salt) || held.of(part::flour) * 2 > held.total ||
        says_one_of(m.written().title, "stock|broth|unsalted|salt free|low salt|baby|pasta|cheese");
    const bool has_stock = std::any_of(lines.begin(), lines.end(), [](const auto& l) {
        return l.name.find("stock") != l.name.npos || l.name.find("broth") != l.name.npos;
    });
    const exact percent = held.of(part::salt) / held.total * 100;
    const exact least = has_stock ? exact(1, 10) : exact(2, 10);
    if (!is_savoury || is_salted_otherwise || percent >= least) return;
    to.push_back(
        proportion({"salt-low"}, salt.where,
                   fmt::format("{} is {} of the mix in {}", said_part(m, part::salt, "salt"),
                               as_percent(percent), m.written().title),
                   " in savoury food: 0.5 % to 2 %"));
}

void check_salt(const mix& m, grammar::diagnostics& to) {
    const auto& held = m.held();
    const auto* line = main_line(m.written(), part::salt);
    const bool is_raised =
        held.of(part::flour) > 0 && (held.of(part::yeast) > 0 || held.of(part::starter) > 0);
    if (!line || is_raised || loses_its_salt(m.written())) return;
    const bool is_sweet = held.of(part::sugar) * 12 > held.total && held.of(part::sour) == 0 &&
                          held.of(part::moist) * 4 < held.total;
    const exact percent = held.of(part::salt) / held.total * 100;
    check_little_salt(m, *line, to);
    if (percent <= (is_sweet ? exact(12, 10) : exact(3))) return;
    to.push_back(proportion(
        {"salt-high"}, line->where,
        fmt::format("{} is {} of the mix in {}", said_part(m, part::salt, "salt"),
                    as_percent(percent), m.written().title),
        is_sweet ? " in sweet mixes: up to 0.8 %" : " in what is eaten as it is: 0.8 % to 2 %"));
}

/// Of all that is wet: a fruit purée sets as milk does.
void check_setting(const mix& m, part p, const exact& low, const exact& high,
                   std::string_view practice, grammar::diagnostics& to) {
    const auto& held = m.held();
    const auto* line = main_line(m.written(), p);
    const exact wet = held.of(part::water) + held.of(part::moist);
    if (!line || !held.is_whole || wet == 0) return;
    const bool sets_by_itself =
        is_minor_part(m) ||
        says_one_of(m.written().title, "gummy|gummies|marshmallow|pastille|sweet|glaze|gelatine|"
                                       "gelatin|agar|fondant|sugar paste|nougat|gum|mass|candy|"
                                       "fluid gel|icing|veil|dough|bread");
    if (sets_by_itself || held.of(part::flour) > 0) return;
    const auto say = [&](std::string_view kind) {
        to.push_back(proportion(
            kind, line->where,
            fmt::format("{} is {} of the {} of liquid in {}", said_part(m, p, line->what->name),
                        as_percent(held.of(p) / wet * 100), in_grams(wet), m.written().title),
            std::string(practice)));
    };
    if (held.of(p) * 100 > high * (wet + held.unknown)) say("gelling-high");
    if (held.of(p) * 100 < low * wet && !held.is_loose(p)) say("gelling-low");
}

} // namespace

void check_flavours(const mix& m, grammar::diagnostics& to) {
    if (m.held().total == 0) return;
    if (is_eaten_as_it_is(m)) check_strong(m, to), check_salt(m, to);
    check_setting(m, part::gelatine, exact(3, 10), exact(5),
                  " for gelatine: 0.8 % of the liquid for creams to 3 % for firm jelly", to);
    check_setting(m, part::agar, exact(1, 10), exact(3), " for agar: 0.3 % to 1.5 % of the liquid",
                  to);
}

} // namespace benchcard::checks
