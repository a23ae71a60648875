#include "compiler/checks/checks.hpp"
#include "grammar/nearest.hpp"
#include "grammar/settings.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

using grammar::key;
using grammar::severity;

/// Requirements that are no settings.
constexpr std::string_view allergens_wanted = "allergens for every ingredient";
constexpr std::string_view weights_wanted = "weights";
constexpr std::string_view steps_wanted = "steps";

/// A house asks for what describes a recipe, not for what opens a block or governs the house.
bool can_be_required(const grammar::setting_entry& s) {
    constexpr key never[] = {key::use, key::accept, key::require, key::note, key::caution};
    return grammar::opened_by(s.name) == grammar::block::sort::before &&
           (s.places & grammar::in_block) != 0 &&
           std::find(std::begin(never), std::end(never), s.name) == std::end(never);
}

std::vector<std::string> all_requirements() {
    std::vector<std::string> result;
    for (const auto& s : grammar::all_settings())
        if (can_be_required(s)) result.emplace_back(s.word);
    for (const auto word : {allergens_wanted, weights_wanted, steps_wanted})
        result.emplace_back(word);
    return result;
}

bool states(const grammar::block& b, key name) {
    return std::any_of(b.items.begin(), b.items.end(), [&](const auto& item) {
        const auto* s = std::get_if<grammar::setting>(&item.value);
        return s && s->name == name;
    });
}

bool has_unread(const grammar::block& b) {
    return std::any_of(b.items.begin(), b.items.end(), [](const auto& item) {
        return std::holds_alternative<grammar::unread>(item.value);
    });
}

/// One word of a `require:` line.
struct requirement {
    std::string text;
    grammar::span where;
};

class inspector {
  public:
    inspector(const recipe::book& files, const recipe::recipe& r, grammar::diagnostics& messages)
        : files_(files), recipe_(r), messages_(messages) {}

    void run() {
        for (const auto& tree : files_.trees)
            for (const auto& b : tree.blocks)
                for (const auto& item : b.items)
                    if (const auto* s = std::get_if<grammar::setting>(&item.value);
                        s && s->name == key::require)
                        for (const auto& w : std::get<std::vector<grammar::words>>(s->value))
                            inspect({grammar::folded_case(w.text), w.where});
    }

  private:
    const recipe::book& files_;
    const recipe::recipe& recipe_;
    grammar::diagnostics& messages_;
    std::vector<std::string> seen_; ///< one breach is said once, however many files ask for it

    void inspect(const requirement& r) {
        if (std::find(seen_.begin(), seen_.end(), r.text) != seen_.end()) return;
        seen_.push_back(r.text);
        if (r.text == allergens_wanted) return each_line(r, &inspector::inspect_allergens);
        if (r.text == weights_wanted) return each_line(r, &inspector::inspect_weight);
        if (r.text == steps_wanted) return inspect_steps(r);
        const auto* s = grammar::setting_named(r.text);
        if (!s || !can_be_required(*s)) return say_unknown(r);
        if (s->places & grammar::in_component)
            inspect_components(r, *s);
        else
            inspect_heads(r, *s);
    }

    void say(const requirement& r, grammar::span where, std::string message, std::string help) {
        messages_.push_back({"house-rule",
                             severity::error,
                             where,
                             std::move(message),
                             {{"the house requires it here", r.where}},
                             {{std::move(help), {}}}});
    }

    static grammar::span title_of(const grammar::block& b) {
        return b.title.text.empty() ? b.where : b.title.where;
    }

    void inspect_components(const requirement& r, const grammar::setting_entry& s) {
        for (const auto& c : recipe_.components) {
            // What the recipe makes is what its product makes. What could not be read may be it.
            const bool from_head = s.name == key::makes && c.makes.has_value();
            if (from_head || states(*c.written, s.name) || has_unread(*c.written)) continue;
            say(r, title_of(*c.written), fmt::format("{} has no `{}:`", c.title, s.word),
                fmt::format("for example `{}`", s.example));
        }
    }

    /// Of every file that the recipe has a component from.
    void inspect_heads(const requirement& r, const grammar::setting_entry& s) {
        for (std::size_t file = 0; file < files_.trees.size(); ++file) {
            const auto& blocks = files_.trees[file].blocks;
            const bool takes_part =
                std::any_of(recipe_.components.begin(), recipe_.components.end(),
                            [&](const auto& c) { return c.written->where.file == file; });
            const bool is_stated = std::any_of(blocks.begin(), blocks.end(), [&](const auto& b) {
                return (b.is == grammar::block::sort::recipe ||
                        b.is == grammar::block::sort::before) &&
                       states(b, s.name);
            });
            if (!takes_part || is_stated) continue;
            const auto head = std::find_if(blocks.begin(), blocks.end(), [](const auto& b) {
                return b.is == grammar::block::sort::recipe;
            });
            if (head == blocks.end() || has_unread(*head)) continue;
            say(r, title_of(*head), fmt::format("{} has no `{}:`", head->title.text, s.word),
                fmt::format("for example `{}`", s.example));
        }
    }

    void inspect_steps(const requirement& r) {
        for (const auto& c : recipe_.components)
            if (c.steps.empty())
                say(r, title_of(*c.written), fmt::format("{} has no step", c.title),
                    "for example `- Mix.`");
    }

    void each_line(const requirement& r,
                   void (inspector::*look)(const requirement&, const recipe::line&)) {
        for (const auto& c : recipe_.components)
            for (const auto& l : c.lines)
                if (!l.component) (this->*look)(r, l);
    }

    void inspect_allergens(const requirement& r, const recipe::line& l) {
        if (l.what && l.what->contents_stated) return;
        const auto& name = l.written->names.front();
        // The hint that it is unknown says no more.
        std::erase_if(messages_, [&](const auto& m) {
            return m.kind == "unknown-ingredient" && m.where.file == name.where.file &&
                   m.where.begin == name.where.begin;
        });
        say(r, name.where, fmt::format("the allergens of {} are not stated", name.text),
            fmt::format("define it: `ingredient: {}`, below it `contains: …` or `contains: none`",
                        l.what ? l.what->name : name.text));
    }

    /// Cups differ in whose they are and how they are filled. Spoons and millilitres may stand.
    void inspect_weight(const requirement& r, const recipe::line& l) {
        using grammar::unit;
        constexpr unit loose[] = {unit::cup,  unit::stick, unit::fluid_ounce, unit::gill,
                                  unit::pint, unit::quart, unit::gallon};
        if (!l.written->equals.empty() || l.some) return;
        for (const auto& m : l.written->amounts) {
            if (!m.in || std::find(std::begin(loose), std::end(loose), *m.in) == std::end(loose))
                continue;
            return say(r, m.where,
                       fmt::format("this {} of {} has no weight beside it",
                                   grammar::short_name(*m.in), l.name),
                       l.grams
                           ? fmt::format("by the table it is {:.0f} g: put `= {:.0f} g` "
                                         "behind the measure once it was weighed",
                                         approximately(l.grams->used), approximately(l.grams->used))
                           : "put the weight behind the measure: `1 cup = 125 g`");
        }
    }

    void say_unknown(const requirement& r) {
        grammar::diagnostic message{"unknown-requirement",
                                    severity::error,
                                    r.where,
                                    fmt::format("a house cannot require `{}`", r.text),
                                    {},
                                    {}};
        std::string list;
        const auto all = all_requirements();
        for (const auto& near : grammar::nearest(r.text, all, 1))
            message.helps.push_back(
                {fmt::format("the nearest is `{}`", near), {grammar::edit{r.where, near}}});
        for (const auto& word : all) list += (list.empty() ? "" : ", ") + word;
        message.notes.push_back({"it can require " + list, {}});
        messages_.push_back(std::move(message));
    }
};

} // namespace

void check_house_rules(const recipe::book& files, const recipe::recipe& r,
                       grammar::diagnostics& messages) {
    inspector(files, r, messages).run();
}

} // namespace benchcard::checks
