#include "compiler/checks/proportions.hpp"

#include <fmt/format.h>

namespace benchcard::checks {

namespace {

/// What the title of a mix promises of its proportions, in percent of one of its parts. The
/// bounds are common practice, widened until a factor of about 3 remains to be caught.
struct promise {
    std::string_view kind;
    std::string_view titles, but_not; ///< words of the title, singular
    part of;
    std::string_view word; ///< for `of`
    part base;
    std::string_view base_word;
    int low, high;
    bool never_without; ///< whether having none of it is worth a word
    std::string_view practice;
};

const promise promises[] = {
    {"meringue-sugar", "meringue|pavlova|macaron|vacherin", "pie|tart|roulade|lemon", part::sugar,
     "sugar", part::white, "egg white", 70, 450, true,
     " in meringue: 1 to 2 times the egg white, up to 4 times with almonds"},
    {"pastry-fat", "pastry|shortcrust|shortbread|pie crust|pie dough|sable|pate brisee|pate sucree",
     "cream|choux|filo|phyllo|strudel|danish|croissant|yeast", part::fat, "fat", part::dry, "flour",
     16, 125, true, " in short pastry: 40 % to 75 % of the flour, and as much as it in shortbread"},
    {"biscuit-fat", "biscuit|cookie|ginger nut|digestive|snap",
     "amaretti|biscotti|cantucci|macaron|finger|cake|base|filling|icing|cream|ship", part::fat,
     "fat", part::dry, "flour", 10, 160, false, " in biscuits: 25 % to 75 % of the flour"},
    {"biscuit-sugar", "biscuit|cookie|ginger nut|snap",
     "amaretti|macaron|cake|base|filling|icing|cream|cheese|savoury|oatcake|ship", part::sugar,
     "sugar", part::dry, "flour", 8, 220, false, " in sweet biscuits: 20 % to 100 % of the flour"},
    {"choux-egg", "choux|profiterole|eclair|gougere|cream puff", "filling|glaze|icing|craquelin",
     part::egg, "egg", part::flour, "flour", 80, 320, true,
     " in choux paste: 130 % to 200 % of the flour"},
    {"custard-egg",
     "custard|pastry cream|creme patissiere|creme anglaise|creme brulee|creme caramel|ice cream",
     "powder|tart|pie|cake|slice", part::egg, "egg", part::dairy, "milk and cream", 3, 110, false,
     " in custards: 10 % to 50 % of the milk and cream"},
    {"sponge-sugar", "sponge|genoise|victoria|chiffon|madeira|pound cake|swiss roll",
     "finger|angel", part::sugar, "sugar", part::dry, "flour", 40, 260, false,
     " in sponges: 70 % to 150 % of the flour"},
    {"jam-sugar", "jam|conserve", "tart|roll|onion|chilli|tomato|sponge|biscuit|doughnut",
     part::sugar, "sugar", part::fruit, "fruit", 20, 200, false,
     " in jam: 50 % to 100 % of the fruit"},
    {"ganache-cream", "ganache", "", part::cream, "cream", part::chocolate, "chocolate", 20, 400,
     false, " in ganache: from half the chocolate to twice as much"},
};

/// Whether it is that sort of mix at all, whatever its title says.
bool is_such(const mix& m, const promise& p) {
    const auto& held = m.held();
    if (held.of(p.base) == 0 || !held.is_sure(p.base) || !held.is_sure(p.of)) return false;
    if (!main_line(m.written(), p.base)) return false;
    switch (p.of) {
    case part::sugar:
        if (p.kind == "biscuit-sugar") return held.of(part::yeast) == 0;
        if (p.base == part::dry) return held.of(part::egg) > 0 && held.of(part::yeast) == 0;
        return held.of(part::flour) * 5 < held.total && held.of(p.base) * 20 > held.total;
    case part::fat:
        return held.of(part::yeast) == 0 && main_line(m.written(), part::flour) != nullptr;
    default:
        return true;
    }
}

grammar::diagnostic hint_at(const mix& m, const promise& p, bool has_none) {
    const auto& title = m.written().title;
    const auto share = m.grams(p.of) / m.grams(p.base) * 100;
    auto message =
        has_none ? proportion(p.kind, m.written().written->title.where,
                              fmt::format("there is no {} in {}", p.word, title),
                              std::string(p.practice))
                 : proportion(p.kind, place_of(m, p.of),
                              fmt::format("{} is {} of the {} in {}", said_part(m, p.of, p.word),
                                          as_percent(share), p.base_word, title),
                              std::string(p.practice));
    message.notes.insert(message.notes.begin(),
                         {fmt::format("there is {} of {}", in_grams(m.grams(p.base)), p.base_word),
                          place_of(m, p.base)});
    return message;
}

} // namespace

void check_named_mix(const mix& m, grammar::diagnostics& to) {
    for (const auto& p : promises) {
        const auto& title = m.written().title;
        if (!says_one_of(title, p.titles) || says_one_of(title, p.but_not) || !is_such(m, p))
            continue;
        const auto& held = m.held();
        const exact most = p.high * (held.of(p.base) + held.unknown);
        const exact least = p.low * held.of(p.base);
        const bool too_much = held.of(p.of) * 100 > most;
        const bool too_little = (held.of(p.of) + held.unknown) * 100 < least;
        const bool has_none = held.of(p.of) == 0;
        // One line alone is a note, not a recipe from which something was left out; and what seems
        // to be left out may be a line that is not known.
        const bool may_be_missed =
            p.never_without && m.written().lines.size() > 1 && held.unknown == 0;
        if (too_much || (too_little && !held.is_loose(p.of) && (!has_none || may_be_missed)))
            to.push_back(hint_at(m, p, has_none));
    }
}

} // namespace benchcard::checks
