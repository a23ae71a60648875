#pragma once

#include "compiler/ingredients/names.hpp"
#include "compiler/ingredients/table.hpp"
#include "grammar/exact.hpp"
#include "made_up_cards.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <rapidcheck.h>
#include <set>
#include <sstream>

/// Recipes out of thin air that have no error, with what must come of them.
namespace benchcard::made_up {

struct made_up_line {
    std::string name;
    std::optional<exact> grams; ///< of a line by weight
    bool is_in_mix = true;      ///< `some flour` is not
};
struct made_up_component {
    std::string title;
    std::vector<made_up_line> lines;
    exact kept = 1; ///< the part of the mix that is left after all losses

    /// The grams of all lines; nothing where one is not by weight.
    std::optional<exact> mix() const {
        exact sum = 0;
        for (const auto& l : lines)
            if (l.is_in_mix && !l.grams) return std::nullopt;
        for (const auto& l : lines) sum += l.grams.value_or(0);
        return sum;
    }
};
struct made_up_recipe {
    std::string text;
    std::vector<made_up_component> components; ///< the product is the last
};

class recipe_writer {
  public:
    made_up_recipe write() {
        line("recipe: {}", text(1, 5));
        line("measures: {}", one_of("us", "metric", "australian"));
        if (coin()) line("revision: {}", *rc::gen::inRange(1, 100));
        if (coin()) line("note: {}", text(1, 30));
        const int parts = *rc::gen::inRange(0, 5);
        for (int i = 0; i < parts; ++i) component(fmt::format("component: Part {}", names_[i]));
        component("assembly: Whole");
        return std::move(made_);
    }

  private:
    static constexpr const char* names_[] = {"alpha", "beta", "gamma", "delta", "epsilon"};
    made_up_recipe made_;
    writer words_;
    std::set<std::string> taken_; ///< words of the names in this component
    std::size_t used_ = 0;        ///< components that another one uses

    template <typename... Values>
    void line(fmt::format_string<Values...> form, Values&&... values) {
        made_.text += fmt::format(form, std::forward<Values>(values)...) + "\n";
    }
    static bool coin() { return *rc::gen::inRange(0, 2) == 1; }
    static std::string one_of(std::initializer_list<const char*> all) {
        return *rc::gen::elementOf(std::vector<std::string>(all.begin(), all.end()));
    }
    template <typename... Words> static std::string one_of(Words... all) {
        return one_of({all...});
    }
    std::string text(int least, int most) { return words_.words(least, most); }

    void component(const std::string& head) {
        made_.text += "\n" + head + "\n";
        made_up_component c{head.substr(head.find(": ") + 2), {}, 1};
        taken_.clear();
        settings(c);
        const bool is_last = c.title == "Whole";
        // The assembly uses all that nothing else does, so that no part is left over.
        const auto there = made_.components.size();
        const auto until = is_last ? there : used_ + (there > used_ && coin() ? 1 : 0);
        for (; used_ < until; ++used_) use(c, made_.components[used_]);
        for (int i = *rc::gen::inRange(c.lines.empty() ? 1 : 0, 9); i > 0; --i) ingredient(c);
        if (c.lines.empty()) c.lines.push_back(written("100", 100, "g", "water"));
        steps(c);
        made_.components.push_back(std::move(c));
    }

    void settings(made_up_component& c) {
        if (coin()) line("station: {}", text(1, 2));
        if (const int percent = *rc::gen::element(0, 0, 2, 8, 15)) {
            line("loss: {}% in the {}", percent, one_of("bowl", "oven", "pan"));
            c.kept = exact(100 - percent, 100);
        }
        if (coin())
            line("keeps: {} {} {}", *rc::gen::inRange(2, 10), one_of("days", "weeks"),
                 one_of("chilled", "frozen", "in a tin"));
        if (coin()) line("caution: {}", text(1, 15));
        if (coin()) line("note: {}", text(1, 15));
    }

    made_up_line written(const std::string& figure, std::optional<exact> grams,
                         const std::string& unit, const std::string& name) {
        line("{} {} {}{}", figure, unit, name,
             coin() ? ", " + one_of("cold", "sifted", "diced") : "");
        return {name, std::move(grams), true};
    }

    /// Grams, or kilograms with three places, with as many grams.
    std::pair<std::string, exact> weight(int least, int most) {
        const int grams = *rc::gen::inRange(least, most);
        if (coin()) return {fmt::format("{} g", grams), grams};
        return {fmt::format("{}.{:03} kg", grams / 1000, grams % 1000), grams};
    }

    void use(made_up_component& c, const made_up_component& part) {
        if (const auto mix = part.mix()) {
            const exact ready = *mix * part.kept;
            const auto whole = static_cast<int>(static_cast<double>(floor(ready)));
            if (whole > 1) {
                const int grams = *rc::gen::inRange(1, whole);
                line("{} g {}", grams, part.title);
                c.lines.push_back({part.title, exact(grams), true});
                return;
            }
        }
        line("{} {}", one_of("all", "half"), part.title);
        c.lines.push_back({part.title, std::nullopt, true});
    }

    /// An ingredient of the table that shares no word with another of this component, so that a
    /// bracket with its name can mean no other.
    const ingredients::entry* another() {
        static const auto all = ingredients::built_in_table().entries();
        const auto* found = all[*rc::gen::inRange<std::size_t>(0, all.size())];
        if (found->name.find_first_of("(,") != found->name.npos) return nullptr;
        if (ingredients::built_in_table().find(found->name, ingredients::country::any).match !=
            found)
            return nullptr;
        std::istringstream words(found->name);
        std::set<std::string> own;
        for (std::string word; words >> word;) own.insert(word);
        for (const auto& word : own)
            if (taken_.contains(word)) return nullptr;
        taken_.insert(own.begin(), own.end());
        return found;
    }

    void ingredient(made_up_component& c) {
        const auto* what = another();
        if (!what) return;
        const bool has_volume =
            std::any_of(what->figures.begin(), what->figures.end(),
                        [](const auto& f) { return f.volume && f.state.empty() && !f.is_stick; });
        const int kind = *rc::gen::inRange(0, 12);
        if (kind == 0 && has_volume)
            c.lines.push_back(written(one_of("1", "1/2", "2", "1 1/2", "¾"), {},
                                      one_of("cup", "tbsp", "tsp"), what->name));
        else if (kind == 1) {
            line("some {}", what->name);
            c.lines.push_back({what->name, {}, false});
        } else {
            const auto [figure, grams] = weight(1, *rc::gen::element(10, 1000, 20000));
            c.lines.push_back(written(figure.substr(0, figure.find(' ')), grams,
                                      figure.substr(figure.find(' ') + 1), what->name));
        }
    }

    void steps(const made_up_component& c) {
        for (const auto& l : c.lines) {
            line("- {} [{}] {}", one_of("Add", "Fold in", "Stir in"), l.name,
                 one_of("well", "at once", "gently"));
            if (coin())
                made_.text +=
                    "  and wait for [" + one_of("3 min", "1 h", "12-14 min", "overnight") + "]\n";
        }
        if (coin())
            line("- Bake at [{} C] for [{} min].", *rc::gen::inRange(120, 240),
                 *rc::gen::inRange(5, 90));
    }
};

inline made_up_recipe whole_recipe() { return recipe_writer().write(); }

} // namespace benchcard::made_up
