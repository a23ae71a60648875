#include "grammar/settings.hpp"

#include "grammar/nearest.hpp"

#include <algorithm>

namespace benchcard::grammar {

const std::vector<setting_entry>& all_settings() {
    using enum key;
    using enum value_form;
    constexpr auto parts = in_component | in_assembly;
    static const std::vector<setting_entry> entries = {
        {recipe, "recipe", value_form::words, in_recipe, "recipe: Pear tart",
         "Opens the file and names the recipe."},
        {by, "by", value_form::words, in_recipe, "by: the pastry bench", "Who wrote it."},
        {source, "source", prose, in_recipe | in_ingredient, "source: weighed here, three times",
         "Where the recipe, or the figures of an ingredient above it, come from."},
        {revision, "revision", value_form::words, in_recipe, "revision: 3",
         "Which version this is; printed on each card."},
        {date, "date", value_form::words, in_recipe, "date: 2026-11-25",
         "When it was last changed; printed on each card."},
        {makes, "makes", value_form::yield, in_block, "makes: 40 rounds of 22 g",
         "What it makes: pieces, their weight, or a weight or volume."},
        {serves, "serves", value_form::yield, in_recipe, "serves: 8", "How many it serves."},
        {measures, "measures", value_form::words, in_recipe, "measures: us",
         "Whose cups and spoons: us, metric, uk, imperial, australian, canadian, us-label."},
        {labels, "labels", value_form::words, in_recipe, "labels: eu",
         "Whose list of allergens: eu, us or both; otherwise both."},
        {note, "note", prose, in_block | in_ingredient, "note: Best the day it is baked.",
         "A remark printed on the card."},
        {caution, "caution", prose, in_block, "caution: Hot sugar burns.",
         "A warning printed on the card in a box."},
        {use, "use", value_form::words, in_recipe, "use: ../house/pastry.recipe",
         "Brings in another file's components and ingredients."},
        {component, "component", value_form::words, in_component, "component: Sweet pastry",
         "Opens a part that is made on its own."},
        {assembly, "assembly", value_form::words, in_assembly, "assembly: Tarts",
         "Opens the part that puts the components together."},
        {station, "station", value_form::words, in_block, "station: pastry bench",
         "Where the work is done; between steps, where it goes on."},
        {per, "per", value_form::yield, in_block, "per: 1 tart",
         "The amounts of this block are for that much, not for the whole."},
        {key::loss, "loss", losses, in_block, "loss: 8% in the oven",
         "What the bench expects to lose."},
        {keeps, "keeps", keepings, in_block, "keeps: 3 days chilled, 2 months frozen",
         "How long it keeps, and how."},
        {key::tin, "tin", tin_size, in_block, "tin: 23 cm round", "The tin it is baked in."},
        {tray, "tray", value_form::yield, in_block, "tray: 12",
         "How many pieces go on a tray or in a load."},
        {percent, "percent", value_form::words, in_block, "percent: flour",
         "Shows each line as a percentage of that ingredient."},
        {whole_batch, "whole-batch", yes_or_no, parts | in_recipe, "whole-batch: yes",
         "The mix is made whole or not at all."},
        {at_most, "at-most", value_form::measure, parts | in_recipe, "at-most: 4 kg",
         "The most that the mixer or pot holds."},
        {at_least, "at-least", value_form::measure, parts | in_recipe, "at-least: 300 g",
         "The least that the mixer or pot can mix."},
        {accept, "accept", value_form::words, in_block, "accept: salt-low, it is a salt-free loaf",
         "Takes a hint or a warning away here, with the reason."},
        {ingredient, "ingredient", value_form::words, in_ingredient, "ingredient: teff flour",
         "Opens the definition of an ingredient."},
        {also, "also", list, in_ingredient, "also: ground teff, tef",
         "Other names of the ingredient."},
        {weighs, "weighs", figures, in_ingredient, "weighs: 160 g per cup, 58 g each",
         "What a measure or a piece of it weighs."},
        {contains, "contains", list, in_ingredient, "contains: wheat, milk",
         "The allergens in it, or none."},
        {may_contain, "may-contain", list, in_ingredient, "may-contain: almonds",
         "Allergens that may be in it."},
        {raw, "raw", list, in_ingredient, "raw: egg",
         "What in it must be cooked: flour, egg, meat, poultry, fish, pulses, beans, sprouts."},
        {whole, "whole", yes_or_no, in_ingredient, "whole: yes",
         "It is not cut up: only whole ones are counted, and the rest is weighed."},
        {costs, "costs", value_form::price, in_ingredient, "costs: 4.20 per 1 kg",
         "What it costs."},
        {scale_step, "scale-step", value_form::measure, in_recipe, "scale-step: 5 g",
         "The smallest step the scale shows."},
        {require, "require", list, in_recipe, "require: keeps, station",
         "What every recipe of this house must state."},
    };
    return entries;
}

const setting_entry* setting_named(std::string_view word) {
    const auto folded = folded_case(word);
    const auto& all = all_settings();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& e) { return e.word == folded; });
    return found == all.end() ? nullptr : &*found;
}

const setting_entry& setting_of(key name) {
    return all_settings().at(static_cast<std::size_t>(name));
}

block::sort opened_by(key name) {
    switch (name) {
    case key::recipe:
        return block::sort::recipe;
    case key::component:
        return block::sort::component;
    case key::assembly:
        return block::sort::assembly;
    case key::ingredient:
        return block::sort::ingredient;
    default:
        return block::sort::before;
    }
}

place place_of(block::sort is) {
    switch (is) {
    case block::sort::component:
        return in_component;
    case block::sort::assembly:
        return in_assembly;
    case block::sort::ingredient:
        return in_ingredient;
    default:
        return in_recipe;
    }
}

std::string_view said_place(block::sort is) {
    switch (is) {
    case block::sort::component:
        return "a component";
    case block::sort::assembly:
        return "an assembly";
    case block::sort::ingredient:
        return "the definition of an ingredient";
    default:
        return "the head of the recipe";
    }
}

} // namespace benchcard::grammar
