#include "compiler/checks/composition.hpp"

#include "compiler/ingredients/names.hpp"

#include <algorithm>
#include <map>
#include <string>

namespace benchcard::checks {

namespace {

struct share {
    part of;
    int percent;
};
using share_list = std::vector<share>;

/// Ingredients that hold the same, their names parted by bars.
struct alike {
    std::string_view names;
    share_list holds;
};

/// What a whole family holds where its entries are not listed by name.
const share_list& of_family(std::string_view family) {
    using enum part;
    static const std::map<std::string_view, share_list> all = {
        {"flours", {{flour, 100}, {dry, 100}}},
        {"sugars", {{sugar, 100}}},
        {"fats", {{fat, 100}}},
        {"eggs", {{egg, 100}, {water, 75}}},
        {"dairy", {{moist, 45}, {brine, 100}}}, // most are cheeses
        {"fruit", {{fruit, 100}, {moist, 85}}},
        {"vegetables", {{moist, 85}}},
        {"nuts", {{dry, 100}}},
        {"grains", {{dry, 100}, {brine, 100}}}, // breads, crackers, miso
        {"spices", {{spice, 100}}},
        {"chocolate", {{chocolate, 100}}},
        {std::string_view("meat-and-fish"), {{moist, 60}, {brine, 100}}},
        {"liquids", {{water, 90}}},
    };
    static const share_list nothing;
    const auto found = all.find(family);
    return found == all.end() ? nothing : found->second;
}

/// All by name, rounded (common practice); of it a card prints a hydration, as about.
const std::vector<alike>& by_name() {
    using enum part;
    static const std::vector<alike> all = {
        {"pearl tapioca| carob powder| custard powder", {{dry, 100}}},
        {"wheat bran| wheat germ| vital wheat gluten", {{flour, 100}, {dry, 100}}},
        {"butter| brown butter| laminating butter| margarine| baking spread| plant butter",
         {{fat, 100}, {water, 16}}},
        {"peanut butter| almond butter| hazelnut paste| pistachio paste| praline paste| tahini| "
         "cashew butter| walnut butter| pecan butter| macadamia butter| brazil nut "
         "butter| nut butter| sunflower seed butter",
         {{dry, 50}, {brine, 50}}},
        {"mayonnaise| garlic butter", {{fat, 80}, {brine, 100}, {sour, 100}}},
        {"honey| golden syrup| molasses| maple syrup| light corn syrup| dark corn syrup| glucose "
         "syrup| invert sugar syrup| malt extract| agave syrup| pancake syrup| grenadine| "
         "chocolate "
         "syrup| caramel",
         {{sugar, 78}, {water, 20}}},
        {"jam| fruit jelly| marmalade| apricot glaze| apple butter", {{sugar, 60}, {water, 35}}},
        {"dulce de leche| sweetened condensed milk", {{sugar, 50}, {water, 27}, {dairy, 100}}},
        {"whole milk| semi-skimmed milk| skimmed milk| goat's milk| buttermilk| kefir| soya milk| "
         "almond milk| oat milk| rice milk| hazelnut milk| cashew milk| macadamia milk| walnut "
         "milk| pistachio milk| hemp milk| plant milk| lupin milk| chocolate milk",
         {{water, 88}, {dairy, 100}}},
        {"evaporated milk| coconut milk", {{water, 73}, {dairy, 100}}},
        {"heavy cream| double cream| coconut cream| plant cream| clotted cream| creme fraiche",
         {{water, 55}, {dairy, 100}, {cream, 100}}},
        {"light cream| single cream| half-and-half| soya cream| oat cream| sour cream",
         {{water, 75}, {dairy, 100}, {cream, 100}}},
        {"plain yogurt| Greek yogurt| soya yogurt| coconut yogurt| curd cheese| cottage cheese| "
         "ricotta| mascarpone| cream cheese",
         {{water, 75}, {dairy, 100}}},
        {"whole milk powder| skimmed milk powder| instant skimmed milk powder| buttermilk powder| "
         "whey powder| malted milk powder| coconut milk powder| soya milk powder| lactose| milk "
         "protein",
         {}},
        {"ice cream| egg replacer| nougat| halva", {}},
        {"egg| pasteurised egg| duck egg| quail egg", {{egg, 100}, {water, 75}}},
        {"egg white| pasteurised egg white", {{egg, 100}, {white, 100}, {water, 88}}},
        {"egg yolk| pasteurised egg yolk", {{egg, 100}, {water, 50}}},
        {"dried whole egg| dried egg yolk", {{egg, 400}}},
        {"dried egg white| meringue powder", {{egg, 800}, {white, 800}}},
        {"hard-boiled egg", {{moist, 75}}},
        {"rolled oats| medium oatmeal| oat groats| oat bran| granola| muesli| cornflakes| bulgur "
         "wheat| couscous| freekeh| wheat berry| malted wheat flakes| spelt grain| rye flakes| "
         "pearl barley| millet| buckwheat groats| quinoa| amaranth| gluten-free oats| barley "
         "flakes| spelt flakes| long-grain rice| medium-grain rice| short-grain rice| risotto "
         "rice| basmati rice| brown rice| wild rice| macaroni| penne| dried pasta| lentil| split "
         "pea",
         {{dry, 100}}},
        {"cocoa powder| Dutch cocoa powder", {{dry, 100}}},
        {"drinking chocolate| cocoa nibs| instant coffee| ground coffee| chocolate hazelnut spread",
         {}},
        {"raisin| sultana| currant| date| dried fig| prune| dried apricot| unsulphured dried "
         "apricot| dried cranberry| dried cherry| dried blueberry| dried apple| dried peach| dried "
         "pear| mixed dried fruit| candied mixed peel| glace cherry| crystallised ginger| lemon "
         "zest| orange zest| lime zest",
         {}},
        {"lemon| lime| orange| passion fruit", {{fruit, 100}}},
        {"caper| olive| gherkin| sauerkraut| sun-dried tomato| tomato ketchup",
         {{moist, 60}, {brine, 100}}},
        {"instant potato flakes", {{dry, 100}}},
        {"desiccated coconut| sweetened coconut", {{dry, 100}}},
        {"almond paste| marzipan", {{dry, 50}, {sugar, 50}}},
        {"sesame seed| poppy seed| sunflower seed| pumpkin seed| linseed| chia seed| nigella seed| "
         "walnut| walnut piece| pecan| pistachio| cashew| macadamia nut| brazil nut| pine nut| "
         "peanut| mixed nuts| chestnut| hazelnut| fresh coconut",
         {{dry, 30}}},
        {"baking powder| baker's ammonia", {{powder, 100}}},
        {"bicarbonate of soda", {{soda, 100}}},
        {"active dry yeast", {{yeast, 250}}},
        {"instant yeast", {{yeast, 300}}},
        {"fresh yeast", {{yeast, 100}}},
        {"sourdough starter| rye sourdough starter",
         {{starter, 100}, {flour, 50}, {dry, 50}, {water, 50}}}, // fed with as much water as flour
        {"fine salt| kosher salt| flaked sea salt| coarse salt", {{salt, 100}}},
        {"celery salt| garlic salt", {{salt, 70}, {spice, 30}}},
        {"sesame salt| stock cube| yeast extract| pesto| wasabi| horseradish",
         {{brine, 100}, {sour, 100}}},
        {"prepared mustard| Dijon mustard", {{sour, 100}, {water, 60}}},
        {"vanilla sugar", {{sugar, 100}}},
        {"gelatine powder| leaf gelatine", {{gelatine, 100}}},
        {"agar powder", {{agar, 100}}},
        {"soy sauce| tamari| Worcestershire sauce| fish sauce| oyster sauce| hot pepper sauce",
         {{water, 60}, {brine, 100}, {sour, 100}}},
        {"cider vinegar| distilled vinegar| balsamic vinegar| wine vinegar| rice vinegar| malt "
         "vinegar",
         {{water, 90}, {sour, 100}}},
        {"chicken stock| vegetable stock| beef stock| fish stock| dashi| shellfish stock| clam "
         "stock",
         {{water, 97}, {brine, 10}}},
        {"water| ice| brewed coffee| espresso| brewed tea| coconut water", {{water, 100}}},
        {"distilled spirit| coffee liqueur| almond liqueur| cream liqueur| orange liqueur",
         {{water, 50}}},
        {"vanilla extract| almond extract| peppermint extract| lemon extract| orange extract| "
         "orange flower water| rose water| food colouring",
         {{spice, 100}}},
    };
    return all;
}

shares filled(const share_list& list) {
    shares result{};
    for (const auto& s : list) result[static_cast<std::size_t>(s.of)] = s.percent;
    return result;
}

const std::map<std::string, shares>& listed() {
    static const auto all = [] {
        std::map<std::string, shares> result;
        for (const auto& row : by_name())
            for (std::size_t begin = 0; begin < row.names.size();) {
                const auto end = std::min(row.names.find('|', begin), row.names.size());
                auto name = row.names.substr(begin, end - begin);
                if (name.starts_with(' ')) name.remove_prefix(1);
                result[ingredients::compared_name(name)] = filled(row.holds);
                begin = end + 1;
            }
        return result;
    }();
    return all;
}

bool is_oil(std::string_view name) { return name.ends_with(" oil"); }

/// `1 pinch of salt` is put in by feel, whatever the spoon is said to hold.
bool is_by_feel(const recipe::line& l) {
    using grammar::unit;
    return std::any_of(l.written->amounts.begin(), l.written->amounts.end(), [](const auto& m) {
        return m.in && (*m.in == unit::pinch || *m.in == unit::dash || *m.in == unit::drop);
    });
}

/// Salted butter salts a dough that has no salt besides.
bool is_salted_butter(const recipe::line& l) { return ingredients::has_word(l.name, {"salted"}); }

void add_line(makeup& to, const recipe::line& l) {
    if (is_set_aside(l)) return;
    const bool is_known = l.what && l.what->built_in;
    const auto held = is_known ? shares_of(*l.what) : shares{};
    const bool is_loose = l.some || is_by_feel(l);
    for (std::size_t i = 0; i < held.size(); ++i) {
        if (is_loose && (held[i] > 0 || !is_known)) to.loose[i] = true;
        if (!l.some && !l.grams && (held[i] > 0 || !is_known)) to.unsure[i] = true;
        if (l.grams && held[i] > 0) to.grams[i] += l.grams->used * held[i] / 100;
    }
    if (!l.grams && !l.some) to.is_whole = false;
    if (!l.grams) return;
    if (is_salted_butter(l)) to.grams[static_cast<std::size_t>(part::brine)] += l.grams->used;
    to.total += l.grams->used;
    if (!is_known) to.unknown += l.grams->used;
}

/// What a component that is used weighs when it is: less what was lost before.
std::optional<exact> ready_grams(const recipe::component& c) {
    return c.ready ? std::optional<exact>(c.ready->used) : std::nullopt;
}

bool is_baked(const recipe::component& c) {
    return std::any_of(c.losses.begin(), c.losses.end(), recipe::is_after_portioning);
}

void add_component(makeup& to, const recipe::line& l, const recipe::component& used,
                   const makeup& brought) {
    if (l.some) return;
    const auto ready = ready_grams(used);
    if (is_baked(used) || !ready || *ready <= 0 || !l.grams) {
        // What is baked is no part of a dough any more; how much there is of it counts.
        if (l.grams)
            to.total += l.grams->used, to.unknown += l.grams->used;
        else
            to.unsure.fill(true), to.is_whole = false;
        return;
    }
    const exact taken = l.grams->used / *ready;
    for (std::size_t i = 0; i < to.grams.size(); ++i) {
        to.grams[i] += brought.grams[i] * used.times * taken;
        to.unsure[i] = to.unsure[i] || brought.unsure[i];
        to.loose[i] = to.loose[i] || brought.loose[i];
    }
    to.is_whole = to.is_whole && brought.is_whole;
    to.total += l.grams->used;
    to.unknown += brought.unknown * used.times * taken;
}

} // namespace

shares shares_of(const ingredients::entry& what) {
    if (!what.built_in) return {};
    const auto& all = listed();
    if (const auto found = all.find(what.compared); found != all.end()) return found->second;
    if (what.family == "liquids" && is_oil(what.name)) return filled({{part::fat, 100}});
    return filled(of_family(what.family));
}

std::vector<makeup> makeups_of(const recipe::recipe& r) {
    std::vector<makeup> result;
    for (const auto& c : r.components) {
        makeup m;
        if (c.weight_unread) m.unsure.fill(true), m.is_whole = false;
        for (const auto& l : c.lines) {
            if (l.component)
                add_component(m, l, r.components[*l.component], result[*l.component]);
            else
                add_line(m, l);
        }
        result.push_back(std::move(m));
    }
    return result;
}

bool is_set_aside(const recipe::line& l) {
    constexpr std::string_view uses[] = {
        "bath",  "boil", "poach", "blanch",  "brush", "glaz",   "fry",     "dust", "bench",
        "tin",   "tray", "pan",   "sprinkl", "top",   "finish", "roll",    "coat", "serv",
        "decor", "wash", "greas", "lin",     "soak",  "cook",   "scatter", "water"};
    for (const auto& p : l.written->preparations) {
        const auto words = ingredients::compared_words(p.text);
        if (words.empty() || (words.front() != "for" && words.front() != "to")) continue;
        for (const auto& word : words)
            for (const auto use : uses)
                if (word.starts_with(use)) return true;
    }
    return false;
}

exact grams_in(const recipe::line& l, part p) {
    if (!l.grams || l.component || !l.what) return 0;
    const auto percent = shares_of(*l.what)[static_cast<std::size_t>(p)];
    return percent == 0 || is_set_aside(l) ? 0 : l.grams->used * percent / 100;
}

} // namespace benchcard::checks
