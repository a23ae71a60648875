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
    const auto begin = [&](const std::string& before) {
        p.push_back({(p.empty() ? "" : ". ") + before, false});
    };
    const auto part = [&] {
        if (p.back().strong || !p.back().text.ends_with(' ')) p.push_back({" · ", false});
    };
    const auto add_by_law = [&](const std::string& before, const std::vector<std::string>& names) {
        if (names.empty()) return;
        begin(before);
        const auto sorted = safety::sorted_by_law(names, whose);
        // Behind each name, so that it is said of no other.
        const auto add = [&](const std::vector<std::string>& of_list, std::string_view whose_list) {
            for (const auto& name : of_list) {
                part();
                p.push_back({with_wheat(name), true});
                if (!whose_list.empty()) p.push_back({std::string(whose_list), false});
            }
        };
        add(sorted.listed, "");
        add(sorted.eu_only, " (EU list only)");
        add(sorted.us_only, " (US list only)");
        add(sorted.others, safety::said_of_others(whose));
    };
    add_by_law("Contains ", a.contains);
    add_by_law("May contain ", a.may_contain);
    if (!a.check_packet.empty()) begin("Check the packet of ");
    for (const auto& name : a.check_packet) {
        part();
        p.push_back({name, false});
    }
    return p;
}

} // namespace benchcard::cards
