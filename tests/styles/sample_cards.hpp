#pragma once

#include "styles/card.hpp"

#include <string>

/// Cards as the bakery of the examples would print them.
namespace benchcard::samples {

inline styles::run strong(std::string text) { return {std::move(text), true}; }
inline styles::run plain(std::string text) { return {std::move(text), false}; }

/// Four ingredients, three steps: a card that leaves room.
inline styles::card short_card() {
    styles::card c;
    c.title = "Almond cream";
    c.recipe = "Pear and almond tart";
    c.station = "mixing bench";
    c.batch = "× 2";
    c.yield = "1600 g · for 4 tarts";
    c.imperial_heading = "oz";
    c.spoons_heading = "US cups";
    c.weigh_out = {{"400", "g", "unsalted butter", "soft", "14 oz", "1¾ cups", ""},
                   {"400", "g", "caster sugar", "", "14 oz", "2 cups", ""},
                   {"8", "", "eggs", "large (400 g)", "14 oz", "", ""},
                   {"400", "g", "ground almonds", "", "14 oz", "4¼ cups", ""}};
    c.totals = {{"1600", "g", "in the bowl: 4 fillings of 400 g"}};
    c.method = {{plain("Beat "), strong("butter 200 g"), plain(" with "), strong("sugar 400 g"),
                 plain(" until pale, "), strong("3 min"), plain("; beat in "),
                 strong("the other 200 g"), plain(".")},
                {plain("Beat in "), strong("8 eggs"), plain(" one at a time, then fold in "),
                 strong("almonds 400 g"), plain(".")},
                {plain("Fill the lined cases, "), strong("400 g each"), plain(".")}};
    c.oven = {{"180 °C", "160 °C", "350 °F", "4", "35–40 min"}};
    c.allergens = {plain("Contains "), strong("almonds"), plain(" · "),
                   strong("egg"),      plain(" · "),      strong("milk")};
    c.cautions = {{plain("Raw egg until baked: keep below 5 °C, bake the day it is made.")}};
    c.keeping = {plain("Keeps "), strong("2 days"), plain(" chilled")};
    c.made_label = "made";
    c.revision = "rev 3 · 2026-11-25";
    c.footnote = "check the packet for allergens; local rules come first";
    c.number = "card 2 of 3";
    c.fingerprint = "7K4Q-92";
    c.language = "en";
    return c;
}

/// Fourteen ingredients with decimals and percentages, nine steps, two oven settings.
inline styles::card long_card() {
    styles::card c;
    c.title = "Seeded rye and wheat tin loaf";
    c.recipe = "Everyday tin loaves";
    c.station = "dough bench";
    c.batch = "× 3 · 12 loaves";
    c.yield = "10,860 g · 12 loaves of 900 g";
    c.imperial_heading = "lb oz";
    c.spoons_heading = "US cups, spoons";
    c.percent_heading = "% of flour";
    c.weigh_out = {{"3600", "g", "strong white flour", "", "7 lb 15 oz", "", "60 %"},
                   {"1800", "g", "wholemeal flour", "stoneground", "3 lb 15½ oz", "", "30 %"},
                   {"600", "g", "dark rye flour", "", "1 lb 5¼ oz", "", "10 %"},
                   {"4080", "g", "water", "at 28 °C", "9 lb", "", "68 %"},
                   {"120", "g", "fine salt", "", "4¼ oz", "6½ tbsp", "2 %"},
                   {"42.5", "g", "fresh yeast", "crumbled", "1½ oz", "", "0.7 %"},
                   {"240", "g", "sunflower seeds", "toasted", "8½ oz", "1¾ cups", "4 %"},
                   {"180", "g", "linseed", "", "6¼ oz", "1 cup + 1 tbsp", "3 %"},
                   {"120", "g", "sesame seeds", "", "4¼ oz", "⅞ cup", "2 %"},
                   {"150", "g", "dark malt syrup", "warmed so that it pours", "5¼ oz", "", "2.5 %"},
                   {"90", "ml", "sunflower oil", "", "3 fl oz", "6 tbsp", "1.4 %"},
                   {"1.5", "g", "malt flour", "", "", "½ tsp", "0.03 %"},
                   {"", "", "rice flour", "for the baskets and the bench", "", "", ""},
                   {"24", "", "tin papers", "", "", "", ""}};
    c.totals = {{"11024", "g", "in the bowl"},
                {"10860", "g", "after 1.5 % in the bowl: 12 loaves of 905 g"}};
    c.method = {{plain("Soak "), strong("sunflower seeds 240 g"), plain(", "),
                 strong("linseed 180 g"), plain(" and "), strong("sesame 120 g"), plain(" in "),
                 strong("water 600 g"), plain(" for "), strong("1 h"), plain(".")},
                {plain("Mix all the flours with "), strong("water 3480 g"), plain(" on slow for "),
                 strong("3 min"), plain("; rest covered "), strong("20 min"), plain(".")},
                {plain("Add "), strong("yeast 42.5 g"), plain(", "), strong("malt syrup 150 g"),
                 plain(", "), strong("oil 90 ml"), plain(" and "), strong("malt flour 1.5 g"),
                 plain(". Mix on slow "), strong("4 min"), plain(", then add "),
                 strong("salt 120 g"), plain(" and mix on fast "), strong("5 min"), plain(".")},
                {plain("Fold in the soaked seeds on slow until even, "), strong("2 min"),
                 plain(". Dough at "), strong("26 °C"), plain(".")},
                {plain("Prove in bulk "), strong("60 min"), plain(", folding once at "),
                 strong("30 min"), plain(".")},
                {plain("Scale "), strong("12 pieces of 905 g"), plain(", round, rest "),
                 strong("15 min"), plain(".")},
                {plain("Mould long, roll the tops in "), strong("the rest of the seeds"),
                 plain(", set in papered tins.")},
                {plain("Prove "), strong("50–60 min"), plain(" at "), strong("30 °C"),
                 plain(" until 2 cm over the rim.")},
                {plain("Bake with steam at "), strong("230 °C"), plain(" for "), strong("10 min"),
                 plain(", then at "), strong("200 °C"), plain(" for "), strong("30–35 min"),
                 plain(" to "), strong("96 °C"),
                 plain(" in the middle. Out of the tins at once.")}};
    c.oven = {{"230 °C", "210 °C", "450 °F", "8", "10 min, with steam"},
              {"200 °C", "180 °C", "400 °F", "6", "30–35 min"}};
    c.allergens = {plain("Contains "),     strong("wheat"),          plain(" · "), strong("rye"),
                   plain(" · "),           strong("barley (malt)"),  plain(" · "), strong("sesame"),
                   plain(". Not known: "), strong("dark malt syrup")};
    c.cautions = {{strong("Raw flour"),
                   plain(": do not taste the dough; wash hands and bench after scaling.")},
                  {plain("Tins and trays at "), strong("230 °C"),
                   plain(": dry cloths, two hands, call out when you carry.")}};
    c.notes = {{plain("In summer use water at 22 °C.")}};
    c.keeping = {plain("Keeps "), strong("3 days"), plain(" in paper, "), strong("1 month"),
                 plain(" frozen")};
    c.made_label = "made";
    c.revision = "rev 12 · 2026-11-20";
    c.footnote = "check the packet for allergens; local rules come first";
    c.number = "card 1 of 2";
    c.fingerprint = "P3VX-6H";
    c.language = "en";
    return c;
}

} // namespace benchcard::samples
