#include "compiler/cards/allergen_strip.hpp"

namespace benchcard::cards {

namespace {

/// Spelt and its like are wheat to both laws, and not everyone who must not eat it knows.
std::string with_wheat(const std::string& name) {
    const auto* a = safety::allergen_named(name);
    const bool is_kind = a && a->us == "wheat" && a->name != "wheat" && a->name != "gluten" &&
                         a->name.find("wheat") == std::string_view::npos;
    return is_kind ? name + " (wheat)" : name;
}

} // namespace

styles::paragraph allergen_strip(const safety::allergens& a, safety::law whose) {
    styles::paragraph p;
    const auto add = [&](const std::string& before, const std::vector<std::string>& names,
                         bool strong, std::string_view after = "") {
        if (names.empty()) return;
        p.push_back({(p.empty() ? "" : ". ") + before, false});
        for (std::size_t i = 0; i < names.size(); ++i) {
            if (i > 0) p.push_back({" · ", false});
            p.push_back({strong ? with_wheat(names[i]) : names[i], strong});
        }
        if (!after.empty()) p.push_back({std::string(after), false});
    };
    const auto add_by_law = [&](const std::string& before, const std::vector<std::string>& names) {
        const auto sorted = safety::sorted_by_law(names, whose);
        add(before, sorted.listed, true);
        add(before, sorted.eu_only, true, " (EU list only)");
        add(before, sorted.us_only, true, " (US list only)");
        add(before, sorted.others, true, safety::said_of_others(whose));
    };
    add_by_law("Contains ", a.contains);
    add_by_law("May contain ", a.may_contain);
    add("Check the packet of ", a.check_packet, false);
    return p;
}

} // namespace benchcard::cards
