#include "compiler/label/shown.hpp"

#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <nlohmann/json.hpp>

namespace benchcard::label {

namespace {

using safety::law;
using json = nlohmann::ordered_json;

constexpr std::size_t text_width = 96;

/// Lines of at most `text_width` bytes, broken at blanks.
std::string wrapped(std::string_view text, std::string_view indent) {
    std::string result, line(indent);
    for (std::size_t begin = 0; begin < text.size();) {
        const auto end = std::min(text.find(' ', begin), text.size());
        const auto word = text.substr(begin, end - begin);
        if (line.size() > indent.size() && line.size() + 1 + word.size() > text_width) {
            result += line + "\n";
            line = indent;
        }
        if (line.size() > indent.size()) line += ' ';
        line += word;
        begin = end + 1;
    }
    return result + line + "\n";
}

void gather(const std::vector<item>& items, bool item::*flag, std::vector<std::string>& to) {
    for (const auto& i : items) {
        if (i.*flag && std::find(to.begin(), to.end(), i.name) == to.end()) to.push_back(i.name);
        gather(i.parts, flag, to);
    }
}

void gather_unweighed(const std::vector<item>& items, std::vector<std::string>& to) {
    for (const auto& i : items) {
        if (!i.used && std::find(to.begin(), to.end(), i.name) == to.end()) to.push_back(i.name);
        if (i.used) gather_unweighed(i.parts, to);
    }
}

std::string water_remark(const ingredient_list& list) {
    const auto percent = water_percent(list);
    if (!list.finished || percent == 0) return "";
    return fmt::format("Added water is {} % of the finished product by weight: {} (Annex VII, "
                       "Part A, 1).",
                       measures::in_decimals(percent, 1),
                       percent <= 5 ? "5 % or less, so it is left out of the EU list"
                                    : "listed by what is left of it after baking and boiling");
}

std::string total_remark(const ingredient_list& list) {
    const auto totals = said_totals(list);
    if (totals.empty()) return totals;
    return "The title names what stands in several places; in all: " + totals +
           ". It goes beside the name or into the list (Art. 22, Annex VIII).";
}

} // namespace

std::vector<law> forms_of(law whose) {
    if (whose == law::both) return {law::eu, law::us};
    return {whose};
}

std::string_view heading_of(law form) {
    return form == law::us ? "US form (21 CFR 101.4)" : "EU and UK form (Reg. (EU) No 1169/2011)";
}

std::string said_totals(const ingredient_list& list) {
    std::string result;
    for (const auto& t : list.totals)
        result += fmt::format("{}{} {} {}", result.empty() ? "" : ", ", t.name,
                              measures::in_decimals(t.percent, t.percent > 5 ? 0 : 1),
                              t.percent > 100 ? "g to 100 g" : "%");
    return result;
}

std::string_view draft_caution() {
    return "A draft for the person responsible for the label: it lists what the recipe says, and "
           "not what was used instead. Check it against every packet, the legal names, and local "
           "law. That an allergen is not named here does not mean that it is not there.";
}

std::vector<std::string> open_questions(const ingredient_list& list, law whose) {
    std::vector<std::string> result, packets, choices, unweighed;
    gather(list.items, &item::from_packet, packets);
    gather(list.items, &item::is_choice, choices);
    gather_unweighed(list.items, unweighed);
    if (!packets.empty())
        result.push_back(fmt::format("Copy from the packet, with its own ingredients and "
                                     "allergens: {}.",
                                     fmt::join(packets, ", ")));
    if (!choices.empty())
        result.push_back(fmt::format("Name the one that was used: {}.", fmt::join(choices, ", ")));
    if (!unweighed.empty())
        result.push_back(fmt::format("How much is not known, so the place in the list is not "
                                     "either: {}.",
                                     fmt::join(unweighed, ", ")));
    const auto others = safety::sorted_by_law(list.allergens.contains, whose).others;
    if (!others.empty())
        result.push_back(fmt::format("In it, and not on the list that is followed: {}.",
                                     fmt::join(others, ", ")));
    if (!list.finished)
        result.push_back("What it weighs in all is not known, so there are no percentages, and no "
                         "water is left out.");
    if (whose != law::us)
        for (auto& remark : {water_remark(list), total_remark(list)})
            if (!remark.empty()) result.push_back(remark);
    return result;
}

std::string as_text(const draft& d) {
    auto result = d.list.title + "\n\n" + wrapped(draft_caution(), "") + "\n";
    const auto forms = forms_of(d.whose);
    for (const auto form : forms) {
        result += std::string(heading_of(form)) + "\n";
        result += wrapped(ingredients_in(d.list, form).text, "  ");
        if (const auto contains = contains_statement(d.list);
            form == law::us && !contains.text.empty())
            result += wrapped(contains.text, "  ");
        if (const auto& may = d.list.allergens.may_contain; !may.empty())
            result += wrapped(fmt::format("May contain: {}.", fmt::join(may, ", ")), "  ");
        result += "\n";
    }
    if (const auto open = open_questions(d.list, d.whose); !open.empty()) {
        result += "To settle\n";
        for (const auto& sentence : open) result += wrapped(sentence, "  ");
        result += "\n";
    }
    if (d.date)
        result += (d.date->day ? "Use by " + said(*d.date->day) : "No use-by date") + "\n" +
                  wrapped(d.date->reason, "  ") + "\n";
    result.pop_back();
    return result;
}

namespace {

json as_object(const marked_text& t) {
    json result = {{"text", t.text}, {"allergens", json::array()}};
    for (const auto& a : t.allergens)
        result["allergens"].push_back({{"begin", a.begin}, {"end", a.end}});
    return result;
}

/// A weight as a decimal text, so that no reader rounds it.
json grams(const std::optional<exact>& value) {
    return value ? json(measures::in_decimals(*value, 3)) : json(nullptr);
}

json as_objects(const std::vector<item>& items) {
    auto result = json::array();
    for (const auto& i : items)
        result.push_back({{"name", i.name},
                          {"grams", grams(i.used)},
                          {"contains", i.allergens.contains},
                          {"may_contain", i.allergens.may_contain},
                          {"check_packet", i.from_packet},
                          {"parts", as_objects(i.parts)}});
    return result;
}

json as_object(const use_by& u) {
    return {{"day", u.day ? json(said(*u.day)) : json(nullptr)}, {"reason", u.reason}};
}

} // namespace

std::string as_json(const draft& d) {
    json document = {{"version", 1},
                     {"title", d.list.title},
                     {"caution", draft_caution()},
                     {"forms", json::array()}};
    for (const auto form : forms_of(d.whose)) {
        json one = {{"labels", form == law::us ? "us" : "eu"},
                    {"ingredients", as_object(ingredients_in(d.list, form))}};
        if (form == law::us) one["contains"] = as_object(contains_statement(d.list));
        document["forms"].push_back(std::move(one));
    }
    document["items"] = as_objects(d.list.items);
    document["finished_grams"] = grams(d.list.finished);
    document["contains"] = d.list.allergens.contains;
    document["may_contain"] = d.list.allergens.may_contain;
    document["check_packet"] = d.list.allergens.check_packet;
    document["to_settle"] = open_questions(d.list, d.whose);
    if (d.date) document["use_by"] = as_object(*d.date);
    return document.dump(2) + "\n";
}

} // namespace benchcard::label
