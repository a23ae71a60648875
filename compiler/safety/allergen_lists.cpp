#include "compiler/safety/allergen_lists.hpp"

#include "compiler/ingredients/names.hpp"

#include <map>

namespace benchcard::safety {

namespace {

constexpr std::string_view cereals = "cereals containing gluten";

// The sources of the rows. The EU's list is also that of the United Kingdom.
constexpr std::string_view eu_1 = "Reg. (EU) No 1169/2011, Annex II, 1";
constexpr std::string_view eu_1_wheat =
    "Reg. (EU) No 1169/2011, Annex II, 1 (spelt and khorasan wheat named there as wheat); "
    "FALCPA 2004, section 203 (wheat)";
constexpr std::string_view nuts_both =
    "Reg. (EU) No 1169/2011, Annex II, 8; FALCPA 2004, section 203, and FDA, Questions and Answers "
    "on Food Allergens, edition 5 (January 2025)";

/// Where only one list has a row, the other's silence is by the same sources: FALCPA 2004 and the
/// FASTER Act 2021 name nine, Annex II fourteen.
const std::vector<allergen> rows = {
    {"wheat",
     {"durum wheat", "semolina", "bulgur", "couscous", "seitan"},
     cereals,
     "wheat",
     eu_1_wheat},
    {"spelt", {"dinkel"}, cereals, "wheat", eu_1_wheat},
    {"khorasan wheat", {"kamut", "khorasan"}, cereals, "wheat", eu_1_wheat},
    {"emmer", {"einkorn", "farro", "freekeh", "triticale"}, cereals, "wheat", eu_1_wheat},
    {"rye", {}, cereals, "", eu_1},
    {"barley", {"malt", "barley malt"}, cereals, "", eu_1},
    {"oats", {}, cereals, "", eu_1},
    {"gluten", {"cereals containing gluten"}, cereals, "wheat", eu_1_wheat},
    {"crustaceans",
     {"crustacean shellfish", "shellfish", "prawns", "shrimp", "crab", "lobster", "crayfish"},
     "crustaceans",
     "crustacean shellfish",
     "Reg. (EU) No 1169/2011, Annex II, 2; FALCPA 2004, section 203"},
    {"egg", {}, "eggs", "eggs", "Reg. (EU) No 1169/2011, Annex II, 3; FALCPA 2004, section 203"},
    {"fish",
     {"anchovies"},
     "fish",
     "fish",
     "Reg. (EU) No 1169/2011, Annex II, 4; FALCPA 2004, section 203"},
    {"peanuts",
     {"groundnuts"},
     "peanuts",
     "peanuts",
     "Reg. (EU) No 1169/2011, Annex II, 5; FALCPA 2004, section 203"},
    {"soya",
     {"soy", "soybeans", "soya beans"},
     "soybeans",
     "soybeans",
     "Reg. (EU) No 1169/2011, Annex II, 6; FALCPA 2004, section 203"},
    {"milk",
     {"dairy", "lactose", "butter", "cream", "cheese"},
     "milk",
     "milk",
     "Reg. (EU) No 1169/2011, Annex II, 7; FALCPA 2004, section 203"},
    {"almonds", {}, "nuts", "tree nuts", nuts_both},
    {"hazelnuts", {"filberts", "cobnuts"}, "nuts", "tree nuts", nuts_both},
    {"walnuts", {"black walnuts", "heartnuts"}, "nuts", "tree nuts", nuts_both},
    {"cashews", {"cashew nuts"}, "nuts", "tree nuts", nuts_both},
    {"pecans", {"pecan nuts"}, "nuts", "tree nuts", nuts_both},
    {"brazil nuts", {"brazils"}, "nuts", "tree nuts", nuts_both},
    {"pistachios", {"pistachio nuts"}, "nuts", "tree nuts", nuts_both},
    {"macadamia nuts", {"macadamias", "queensland nuts"}, "nuts", "tree nuts", nuts_both},
    {"nuts", {"tree nuts"}, "nuts", "tree nuts", nuts_both},
    {"pine nuts",
     {"pinons", "pine kernels"},
     "",
     "tree nuts",
     "FDA, Questions and Answers on Food Allergens, edition 5 (January 2025); not in Reg. (EU) No "
     "1169/2011, Annex II, 8"},
    {"celery", {"celeriac"}, "celery", "", "Reg. (EU) No 1169/2011, Annex II, 9"},
    {"mustard", {}, "mustard", "", "Reg. (EU) No 1169/2011, Annex II, 10"},
    {"sesame",
     {"sesame seeds", "tahini"},
     "sesame seeds",
     "sesame",
     "Reg. (EU) No 1169/2011, Annex II, 11; FASTER Act of 2021"},
    {"sulphites",
     {"sulfites", "sulphur dioxide", "sulfur dioxide"},
     "sulphur dioxide and sulphites",
     "",
     "Reg. (EU) No 1169/2011, Annex II, 12 (above 10 mg/kg or 10 mg/l)"},
    {"lupin", {"lupine"}, "lupin", "", "Reg. (EU) No 1169/2011, Annex II, 13"},
    {"molluscs",
     {"mollusks", "mussels", "clams", "oysters", "squid", "octopus", "snails", "scallops"},
     "molluscs",
     "",
     "Reg. (EU) No 1169/2011, Annex II, 14"},
};

/// The rows by all that they are called, as names are compared; the first where two share a name.
std::map<std::string, const allergen*> rows_by_name() {
    std::map<std::string, const allergen*> result;
    for (const auto& row : rows) {
        result.emplace(ingredients::compared_name(row.name), &row);
        for (const auto name : row.also) result.emplace(ingredients::compared_name(name), &row);
    }
    return result;
}

} // namespace

law law_named(std::string_view labels) {
    return labels == "eu" ? law::eu : labels == "us" ? law::us : law::both;
}

bool is_law(std::string_view labels) {
    return labels == "eu" || labels == "us" || labels == "both";
}

std::span<const allergen> all_allergens() { return rows; }

const allergen* allergen_named(std::string_view name) {
    static const auto by_name = rows_by_name();
    const auto found = by_name.find(ingredients::compared_name(name));
    return found == by_name.end() ? nullptr : found->second;
}

std::string listed_name(const std::string& name) {
    const auto* row = allergen_named(name);
    return row ? std::string(row->name) : name;
}

bool is_on_list(const allergen& a, law whose) {
    if (whose == law::eu) return !a.eu.empty();
    if (whose == law::us) return !a.us.empty();
    return !a.eu.empty() || !a.us.empty();
}

by_law sorted_by_law(const std::vector<std::string>& names, law whose) {
    by_law result;
    for (const auto& name : names) {
        const auto* row = allergen_named(name);
        if (!row || !is_on_list(*row, whose))
            result.others.push_back(name);
        else if (whose != law::both || (!row->eu.empty() && !row->us.empty()))
            result.listed.push_back(name);
        else
            (row->us.empty() ? result.eu_only : result.us_only).push_back(name);
    }
    return result;
}

std::string_view said_of_others(law whose) {
    return whose == law::eu   ? " (not on the EU list)"
           : whose == law::us ? " (not on the US list)"
                              : " (on neither list)";
}

} // namespace benchcard::safety
