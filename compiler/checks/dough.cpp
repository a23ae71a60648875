#include "compiler/checks/proportions.hpp"
#include "compiler/ingredients/names.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

/// A proportion to the flour that is out of its bounds.
struct finding {
    std::string_view kind;
    bool too_much;
    grammar::span where;
    std::string seen;     ///< `12 g of fine salt is 6 % of the flour in Dough`
    std::string reckoned; ///< a figure more, where there is one
    std::string practice; ///< ` in bread: 1 % to 3 %`
};
using findings = std::vector<finding>;

/// Percent of the flour. What is not in the table may be flour too, or more of the same: bounds
/// are missed only where they are missed whatever it is.
struct proportion_range {
    exact low, used, high;
};
proportion_range to_flour(const mix& m, const exact& grams) {
    const auto& flour = m.held().of(part::flour);
    const auto& unknown = m.held().unknown;
    return {grams / (flour + unknown) * 100, grams / flour * 100, (grams + unknown) / flour * 100};
}

bool is_rich(const mix& m) {
    return m.grams(part::fat) + m.grams(part::sugar) > m.grams(part::flour) * exact(15, 100);
}

constexpr std::string_view ferment_words =
    "poolish|biga|levain|leaven|starter|sourdough|preferment|sponge|ferment|pate fermentee|old "
    "dough|tangzhong|scald|soaker";

/// A first stage of a dough, which has its salt from the dough it goes into.
bool is_ferment(const mix& m) {
    if (says_one_of(m.written().title, ferment_words)) return true;
    return std::any_of(m.users.begin(), m.users.end(), [&](std::size_t user) {
        const auto& c = m.of.components[user];
        return main_line(c, part::flour) || main_line(c, part::salt);
    });
}

std::string said(const mix& m, part p, std::string_view word, const exact& percent,
                 std::string_view of = "flour") {
    return fmt::format("{} is {} of the {} in {}", said_part(m, p, word), as_percent(percent), of,
                       m.written().title);
}

void find_salt(const mix& m, findings& to) {
    const auto& held = m.held();
    if (!held.is_sure(part::salt)) return;
    const auto salt = to_flour(m, held.of(part::salt));
    if (salt.low > 4)
        to.push_back({"salt-high", true, place_of(m, part::salt),
                      said(m, part::salt, "salt", salt.used), "", " in bread: 1 % to 3 %"});
    const exact least = is_rich(m) ? exact(3, 10) : exact(8, 10);
    const bool is_left_out_on_purpose =
        held.is_loose(part::salt) || is_ferment(m) ||
        held.of(part::brine) > held.of(part::flour) / 20 ||
        is_for_one_of(m, "bao|baozi|mantou|steamed|dumpling|tuscan|blini|pancake|waffle|doughnut|"
                         "unsalted|salt free|saltless|crumpet|gluten free");
    if (is_left_out_on_purpose || salt.high >= least) return;
    const auto title = m.written().written->title.where;
    const bool has_none = held.of(part::salt) == 0;
    to.push_back({"salt-low", false, has_none ? title : place_of(m, part::salt),
                  has_none ? fmt::format("there is no salt in {}, which is raised with yeast",
                                         m.written().title)
                           : said(m, part::salt, "salt", salt.used),
                  "", " in bread: 1 % to 3 % of the flour"});
}

bool says_long(const std::string& text) {
    return says_one_of(text, "overnight|night|hour|day") ||
           text.find("until") != std::string::npos; // by eye, however long it takes
}

/// The minutes of all steps of the component and of what it goes into; nothing where a time is
/// left open.
std::optional<exact> minutes_of(const mix& m) {
    exact total = 0;
    auto all = m.users;
    all.push_back(m.index);
    for (const auto i : all)
        for (const auto& s : m.of.components[i].steps) {
            bool has_time = false;
            for (const auto& p : s.parts) {
                const auto* u = std::get_if<recipe::use>(&p);
                const auto* t = u ? std::get_if<recipe::time_use>(u) : nullptr;
                if (!t) continue;
                if (t->time.overnight) return std::nullopt;
                has_time = true;
                total += t->time.high_minutes;
            }
            for (const auto& p : s.parts)
                if (const auto* text = std::get_if<std::string>(&p);
                    text && !has_time && says_long(*text))
                    return std::nullopt;
        }
    return total == 0 ? std::nullopt : std::optional<exact>(total);
}

bool has_own_ferment(const mix& m) {
    const auto& lines = m.written().lines;
    return m.grams(part::starter) > 0 ||
           std::any_of(lines.begin(), lines.end(), [&](const auto& l) {
               return l.component && m.all[*l.component].of(part::yeast) > 0;
           });
}

/// Without hours to rise in, this little yeast does not raise a dough.
std::optional<exact> least_yeast(const mix& m) {
    constexpr int short_day = 5 * 60; // minutes
    if (has_own_ferment(m) || is_ferment(m)) return std::nullopt;
    const auto minutes = minutes_of(m);
    if (!minutes || *minutes > short_day) return exact(1, 100);
    return exact(4, 10);
}

/// Whether a ferment stands in its own component for so long that much yeast would spend itself.
bool stands_long_and_warm(const mix& m) {
    constexpr int long_night = 10 * 60; // minutes
    bool is_long = false;
    for (const auto& s : m.written().steps)
        for (const auto& p : s.parts) {
            if (const auto* text = std::get_if<std::string>(&p);
                text && says_one_of(*text, "chill|chilled|cold|fridge|refrigerator|retarder"))
                return false;
            const auto* u = std::get_if<recipe::use>(&p);
            const auto* heat = u ? std::get_if<recipe::heat_use>(u) : nullptr;
            const auto* t = u ? std::get_if<recipe::time_use>(u) : nullptr;
            constexpr int cellar = 15; // °C
            if (heat && heat->low < cellar) return false;
            is_long = is_long || (t && (t->time.overnight || t->time.low_minutes >= long_night));
        }
    return is_long;
}

void find_yeast(const mix& m, findings& to) {
    const auto& held = m.held();
    if (!held.is_sure(part::yeast) || held.of(part::yeast) == 0) return;
    const auto fresh = to_flour(m, held.of(part::yeast));
    const auto* line = main_line(m.written(), part::yeast);
    if (!line) return; // said where it is written
    const auto weighed = line->grams->used;
    const auto seen =
        fmt::format("{} of {} is {} of the flour in {}", in_grams(weighed), line->name,
                    as_percent(weighed / held.of(part::flour) * 100), m.written().title);
    const auto reckoned = weighed == held.of(part::yeast)
                              ? std::string()
                              : fmt::format("that is {} as fresh yeast, which is weaker than dry",
                                            as_percent(fresh.used));
    const exact most = is_rich(m) ? 14 : 10;
    if (fresh.low > most)
        to.push_back({"yeast-high", true, line->where, seen, reckoned,
                      fmt::format(", as fresh yeast: 0.5 % to 4 % of the flour, up to {} in quick "
                                  "{}doughs",
                                  as_percent(most), is_rich(m) ? "rich " : "")});
    else if (is_ferment(m) && fresh.low > exact(3, 2) && stands_long_and_warm(m))
        to.push_back({"yeast-high", true, line->where, seen, reckoned,
                      ", as fresh yeast: 0.1 % to 0.5 % of the flour in what stands overnight "
                      "without chilling"});
    else if (const auto least = least_yeast(m);
             least && !held.is_loose(part::yeast) && fresh.high < *least)
        to.push_back({"yeast-low", false, line->where, seen, reckoned,
                      fmt::format(", as fresh yeast: from 0.5 % of the flour{}",
                                  *least > exact(1, 10) ? ", and less only where it rises for many "
                                                          "hours"
                                                        : ", and hardly ever less than 0.01 %")});
}

/// A dough by a word of its title, and how much water a hundred of flour takes, all told.
struct named_dough {
    std::string_view words, name;
    bool raised; ///< known by its yeast or its starter
    int low, high;
};
constexpr named_dough named_doughs[] = {
    {"batter|pancake|blini|crumpet|waffle|injera|tempura|crepe", "", false, 0, 100'000},
    {"choux|profiterole|eclair|gougere|cream puff", "choux paste", false, 190, 420},
    {"poolish|levain|leaven|starter|sourdough starter|sponge|preferment|biga|ferment", "a ferment",
     true, 40, 200},
    {"brioche", "brioche", true, 33, 95},
    {"baguette", "baguettes", true, 55, 90},
    {"ciabatta", "ciabatta", true, 60, 110},
    {"focaccia", "focaccia", true, 50, 110},
    {"pizza|calzone", "pizza", true, 45, 95},
    {"bagel|pretzel|simit", "bagels and pretzels", true, 40, 75},
    {"stollen|panettone|pandoro|babka|challah|croissant|danish|kugelhopf", "rich yeast dough", true,
     22, 100},
    {"bread|loaf|roll|bun|muffin|doughnut|pita|naan|flatbread|batard|boule|bloomer|bap|dough",
     "yeast dough", true, 38, 120},
    {"tortilla|chapati|roti|paratha", "flatbread", false, 40, 85},
    {"pasta|tagliatelle|ravioli|fettuccine|pappardelle|lasagne|noodle|tortellini", "pasta", false,
     24, 75},
};

/// By its own title; a dough without a name of its own by what it goes into.
const named_dough* named(const mix& m) {
    const bool is_raised = m.grams(part::yeast) > 0 || m.grams(part::starter) > 0;
    const auto& title = m.written().title;
    const bool may_be_another =
        m.index + 1 == m.of.components.size() || is_raised || says_one_of(title, "dough|mix|paste");
    const named_dough* general = nullptr;
    for (const auto& d : named_doughs) {
        if (d.raised && !is_raised) continue;
        if (says_one_of(title, d.words)) {
            if (!says_one_of("dough", d.words)) return &d;
            general = &d; // what it goes into may say more
        }
    }
    for (const auto& d : named_doughs) {
        if (!may_be_another || (d.raised && !is_raised)) continue;
        if (is_for_one_of(m, d.words)) return &d;
    }
    return general;
}

/// Flours that drink more than wheat: with much of them bounds for wheat say nothing.
bool is_mostly_wheat(const mix& m) {
    exact wheat = 0, all = 0;
    for (const auto& l : m.written().lines) {
        const auto grams = grams_in(l, part::flour);
        all += grams;
        if (!l.what) continue;
        const auto& in = l.what->contains;
        if (std::find(in.begin(), in.end(), "wheat") != in.end()) wheat += grams;
    }
    return wheat * 10 >= all * 6;
}

void find_water(const mix& m, findings& to) {
    const auto* d = named(m);
    const auto& held = m.held();
    if (!d || d->name.empty() || !held.is_sure(part::water)) return;
    const auto water = to_flour(m, held.of(part::water));
    const exact moist = held.of(part::moist) / held.of(part::flour) * 100;
    const auto seen =
        fmt::format("{} of water is {} of the flour in {}", in_grams(held.of(part::water)),
                    as_percent(water.used), m.written().title);
    const auto practice = fmt::format(
        " for {}: {} % to {} % of the flour, the water in milk, eggs and butter counted", d->name,
        d->low, d->high);
    // Whole grains, seeds and rye drink for themselves.
    const bool may_be_wet =
        !is_mostly_wheat(m) || held.of(part::dry) > held.of(part::flour) * exact(12, 10);
    if (water.low > d->high && !may_be_wet && held.is_sure(part::moist))
        to.push_back({"hydration-high", true, place_of(m, part::water), seen, "", practice});
    const bool has_none = held.of(part::water) == 0;
    if (water.high + moist < d->low && !held.is_loose(part::water) && held.is_sure(part::moist))
        to.push_back(
            {"hydration-low", false,
             has_none ? m.written().written->title.where : place_of(m, part::water),
             has_none ? fmt::format("there is nothing wet in {}", m.written().title) : seen, "",
             practice});
}

/// Of flour and what does its work; cakes of nuts or cocoa are raised too.
void find_leavening(const mix& m, findings& to) {
    const auto& held = m.held();
    if (held.of(part::dry) == 0 || held.of(part::dry) < held.total * exact(15, 100)) return;
    const auto check = [&](part p, std::string_view word, int most, std::string_view practice) {
        const auto* line = main_line(m.written(), p);
        if (!line || !held.is_sure(p)) return;
        const exact all = held.of(part::dry) + held.unknown;
        if (held.of(p) / all * 100 <= most) return;
        to.push_back({"leavening-high", true, line->where,
                      said(m, p, word, held.of(p) / held.of(part::dry) * 100), "",
                      std::string(practice)});
    };
    check(part::powder, "baking powder", 11, ": 2 % to 6 % of the flour");
    check(part::soda, "bicarbonate of soda", 5, ": 0.5 % to 2 % of the flour");
    const auto* line = main_line(m.written(), part::powder);
    const bool must_rise = says_one_of(m.written().title, "scone|muffin|pancake|soda bread|"
                                                          "dumpling");
    const exact raised = held.of(part::powder) + held.of(part::soda) * 4 + held.unknown;
    const bool is_raised_otherwise =
        held.of(part::yeast) > 0 || held.of(part::starter) > 0 || held.is_loose(part::powder) ||
        std::any_of(m.written().lines.begin(), m.written().lines.end(),
                    [](const auto& l) { return l.what && l.what->name == "self-raising flour"; });
    if (!line || !must_rise || is_raised_otherwise || raised >= held.of(part::dry) / 100) return;
    to.push_back(
        {"leavening-low", false, line->where,
         said(m, part::powder, "baking powder", held.of(part::powder) / held.of(part::dry) * 100),
         "", ": 2 % to 6 % of the flour"});
}

void say_each(const findings& all, grammar::diagnostics& to) {
    for (const auto& f : all) {
        auto message = proportion(f.kind, f.where, f.seen, f.practice);
        if (!f.reckoned.empty()) message.notes.insert(message.notes.begin(), {f.reckoned, {}});
        to.push_back(std::move(message));
    }
}

/// Where everything is too much for the flour, it is the flour that is too little.
void say_flour(const mix& m, const findings& all, bool too_much_of_others,
               grammar::diagnostics& to) {
    const auto* line = main_line(m.written(), part::flour);
    struct way {
        std::string_view kind, word;
    };
    const auto is = too_much_of_others ? way{"flour-low", "little"} : way{"flour-high", "much"};
    grammar::diagnostic message{
        is.kind,
        grammar::severity::hint,
        line->where,
        fmt::format("{} of {} looks like too {} for what is mixed with it in {}",
                    in_grams(line->grams->used), line->name, is.word, m.written().title),
        {},
        {}};
    for (const auto& f : all)
        message.notes.push_back(
            {fmt::format("{}; common practice{}", f.seen, f.practice), f.where});
    to.push_back(std::move(message));
}

} // namespace

void check_dough(const mix& m, grammar::diagnostics& to) {
    const auto& held = m.held();
    if (!main_line(m.written(), part::flour) || !held.is_sure(part::flour)) return;
    findings all;
    const bool is_raised = held.of(part::yeast) > 0 || held.of(part::starter) > 0;
    const bool is_dough = held.of(part::flour) * (is_raised ? 15 : 4) > held.total;
    if (is_raised && is_dough) find_salt(m, all), find_yeast(m, all);
    if (is_dough) find_water(m, all);
    find_leavening(m, all);
    const auto same = [&](bool too_much) {
        return std::count_if(all.begin(), all.end(),
                             [&](const auto& f) { return f.too_much == too_much; });
    };
    const bool is_one_way =
        all.size() == static_cast<std::size_t>(same(!all.empty() && all.front().too_much));
    const bool has_nothing = std::any_of(
        all.begin(), all.end(), [](const auto& f) { return f.seen.starts_with("there is no"); });
    if (all.size() > 1 && is_one_way && !has_nothing)
        say_flour(m, all, all.front().too_much, to);
    else
        say_each(all, to);
}

} // namespace benchcard::checks
