#include "compiler/checks/labels.hpp"

#include "compiler/label/dates.hpp"
#include "compiler/safety/allergen_lists.hpp"
#include "compiler/safety/safety.hpp"
#include "grammar/nearest.hpp"
#include "grammar/settings.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace benchcard::checks {

namespace {

using grammar::key;
using grammar::severity;

void add_nearest(grammar::diagnostic& to, const std::string& said,
                 const std::vector<std::string>& names) {
    for (const auto& near : grammar::nearest(said, names, 1))
        to.helps.push_back(
            {fmt::format("the nearest is `{}`", near), {grammar::edit{to.where, near}}});
}

void check_list(const grammar::setting& s, grammar::diagnostics& to) {
    const auto& said = std::get<grammar::words>(s.value);
    if (safety::is_law(said.text)) return;
    grammar::diagnostic m{"unknown-labels",
                          severity::error,
                          said.where,
                          fmt::format("there is no list of allergens called `{}`", said.text),
                          {{"there are eu, us and both", {}}},
                          {}};
    add_nearest(m, said.text, {"eu", "us", "both"});
    to.push_back(std::move(m));
}

std::vector<std::string> allergen_names() {
    std::vector<std::string> names;
    for (const auto& a : safety::all_allergens()) {
        names.emplace_back(a.name);
        for (const auto other : a.also) names.emplace_back(other);
    }
    return names;
}

void check_allergens(const grammar::setting& s, grammar::diagnostics& to) {
    for (const auto& said : std::get<std::vector<grammar::words>>(s.value)) {
        if (said.text == "none" || said.text == "check the packet" ||
            safety::allergen_named(said.text))
            continue;
        grammar::diagnostic m{
            "unknown-allergen",
            severity::hint,
            said.where,
            fmt::format("`{}` is on no list of allergens: it is printed as it stands", said.text),
            {},
            {}};
        add_nearest(m, said.text, allergen_names());
        to.push_back(std::move(m));
    }
}

void check_raw(const grammar::setting& s, grammar::diagnostics& to) {
    for (const auto& said : std::get<std::vector<grammar::words>>(s.value)) {
        if (safety::is_raw_word(said.text)) continue;
        grammar::diagnostic m{
            "unknown-raw",
            severity::error,
            said.where,
            fmt::format("`{}` is nothing raw that is known, so no card would warn of it",
                        said.text),
            {{fmt::format("there are {}", fmt::join(safety::raw_words(), ", ")), {}}},
            {}};
        add_nearest(m, said.text, safety::raw_words());
        to.push_back(std::move(m));
    }
}

void check_label_setting(const grammar::setting& s, grammar::diagnostics& to) {
    if (s.name == key::labels) check_list(s, to);
    if (s.name == key::contains || s.name == key::may_contain) check_allergens(s, to);
    if (s.name == key::raw) check_raw(s, to);
}

void check_keeping(const recipe::component& c, int days, grammar::diagnostics& to) {
    for (const auto& k : c.keeps) {
        if (!label::is_chilled(k) || k.high_hours <= days * 24) continue;
        to.push_back(
            {"keeps-too-long",
             severity::warning,
             k.text.where,
             fmt::format("{} is to keep {}, and food of its kind keeps at most {} days", c.title,
                         k.text.text, days),
             {{fmt::format(
                   "FDA Food Code, 3-501.17: ready-to-eat food that needs the cold, at 5 °C "
                   "(41 °F) or below, at most {} days, the day it is made being the first",
                   days),
               {}}},
             {{fmt::format("keep it for no more: `keeps: {} days chilled`", days), {}},
              {"where the law is another, say so: `labels: eu`; where it was tested, accept it: "
               "`accept: keeps-too-long, tested by …`",
               {}}}});
    }
}

} // namespace

void check_labels(const recipe::book& files, const recipe::recipe& r, grammar::diagnostics& to) {
    for (const auto& tree : files.trees)
        for (const auto& block : tree.blocks)
            for (const auto& item : block.items)
                if (const auto* s = std::get_if<grammar::setting>(&item.value))
                    check_label_setting(*s, to);
    const auto days = label::days_by_rule(safety::law_named(r.labels));
    if (!days || !r.has_product) return;
    const auto cold = safety::needs_the_cold(r);
    for (std::size_t i = 0; i < r.components.size(); ++i)
        if (cold[i]) check_keeping(r.components[i], *days, to);
}

} // namespace benchcard::checks
