#include "compiler/editor/hover.hpp"

#include "compiler/cards/figures.hpp"
#include "compiler/commands/conversion.hpp"
#include "compiler/editor/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/demand.hpp"
#include "compiler/safety/safety.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::editor {

namespace {

std::string listed(const std::vector<std::string>& names) {
    return fmt::format("{}", fmt::join(names, ", "));
}

std::string percent(const exact& low, const exact& high) {
    const auto one = measures::in_decimals(low, 1), other = measures::in_decimals(high, 1);
    return one == other ? one + " %" : one + "–" + other + " %";
}

std::string allergens_said(const recipe::line& line) {
    if (line.component) return "";
    if (!line.what) return "\n\nIts allergens are not known.";
    const auto a = safety::allergens_of(line);
    std::string result;
    if (!a.contains.empty()) result += "\n\nContains " + listed(a.contains) + ".";
    if (!a.may_contain.empty()) result += "\n\nMay contain " + listed(a.may_contain) + ".";
    if (!a.check_packet.empty()) result += "\n\nCheck the packet for allergens.";
    if (result.empty()) result = "\n\nNo listed allergen is known of it.";
    return result;
}

std::string said_made(const recipe::component& c) {
    std::string result;
    if (c.made.pieces) result = cards::said_pieces(c.made.pieces->used, c.made.piece);
    if (c.made.pieces && c.made.each) result += " of " + cards::said_grams(c.made.each->used);
    if (c.made.grams)
        result += (result.empty() ? "" : ", ") + cards::said_grams(c.made.grams->used);
    return result;
}

/// What the others ask of a component, and what that leaves.
std::string said_demand(std::size_t index, const recipe::recipe& all) {
    const auto d = recipe::demands_of(all).at(index);
    if (d.users.empty()) return "";
    std::string result = "\n- used";
    if (d.pieces)
        result += ": " + cards::said_pieces(*d.pieces, all.components[index].made.piece);
    else if (d.grams)
        result += ": " + cards::said_grams(*d.grams);
    std::vector<std::string> users;
    for (const auto& u : d.users) {
        const auto& title = all.components[u.component].title;
        if (std::find(users.begin(), users.end(), title) == users.end()) users.push_back(title);
    }
    result += " in " + listed(users);
    const auto left = [&](const exact& much, const std::string& said) {
        if (much > 0) result += "\n- left over: " + said;
        if (much < 0) result += "\n- short by: " + said;
    };
    if (d.left_pieces)
        left(*d.left_pieces,
             cards::said_pieces(abs(*d.left_pieces), all.components[index].made.piece));
    else if (d.left_grams)
        left(*d.left_grams, cards::said_grams(abs(*d.left_grams)));
    return result;
}

json answer(const look& l, grammar::span where, const std::string& text) {
    return {{"contents", shown_text(text, l.shows)},
            {"range", l.places_of(0).range(where.begin, where.end)}};
}

json hover_of_mention(const look& l, const mention& m) {
    const auto& all = l.of.meaning;
    if (m.of.is_component && m.defined_at)
        for (const auto& c : all.components)
            if (c.written && c.written->title.where == *m.defined_at) {
                const auto line = m.line ? said_of(*m.line) + "\n\n" : std::string();
                return answer(l, m.where, line + balance_of(c, all));
            }
    if (m.line) return answer(l, m.where, said_of(*m.line));
    return json();
}

json hover_of_setting(const look& l, std::uint32_t offset) {
    for (const auto& b : l.tree().blocks) {
        for (const auto& entry : grammar::all_settings())
            if (b.is != grammar::block::sort::before && grammar::opened_by(entry.name) == b.is) {
                const auto written = l.text().text_of(b.where);
                const auto begin = static_cast<std::uint32_t>(
                    b.where.begin + std::min(written.find_first_not_of(" \t"), written.size()));
                const grammar::span key{0, begin,
                                        begin + static_cast<std::uint32_t>(entry.word.size())};
                if (holds(key, offset)) return answer(l, key, documentation_of(entry));
            }
        for (const auto& i : b.items)
            if (const auto* s = std::get_if<grammar::setting>(&i.value);
                s && holds(s->key_where, offset))
                return answer(l, s->key_where, documentation_of(grammar::setting_of(s->name)));
    }
    return json();
}

/// The line or the bracket in which a place stands, where it is on none of their names.
json hover_of_line(const look& l, std::uint32_t offset) {
    for (const auto& m : mentions_in(l.of))
        if (m.line && m.line->written && holds(m.line->where, offset) && m.line->where.file == 0 &&
            holds(m.line->where, m.where.begin))
            return answer(l, m.line->where, said_of(*m.line));
    return json();
}

} // namespace

std::string documentation_of(const grammar::setting_entry& entry) {
    return fmt::format("**{}:** {}\n\nFor example `{}`", entry.word, entry.says, entry.example);
}

std::string said_of(const recipe::line& line) {
    auto result = "**" + line.name + "**";
    if (line.component) result += " (component)";
    if (line.some)
        result += "\n\nNot weighed, and not in the mix.";
    else if (line.grams && line.component)
        result += "\n\n" + cards::said_grams(line.grams->used);
    else if (line.grams)
        result += "\n\n" + commands::said_every_way(line, line.measures);
    else
        result += "\n\nWhat this weighs is not known.";
    return result + allergens_said(line);
}

std::string balance_of(const recipe::component& c, const recipe::recipe& all) {
    auto result = fmt::format("**{}** ({})\n", c.title, c.is_assembly ? "assembly" : "component");
    if (c.mix)
        result += "\n- goes in: " + cards::said_grams(c.mix->used);
    else
        result += "\n- goes in: not known, as not every line has a weight";
    for (const auto& loss : c.losses)
        result +=
            fmt::format("\n- lost{}: {}", loss.place.text.empty() ? "" : " " + loss.place.text,
                        percent(loss.low_percent, loss.high_percent));
    if (c.ready && c.mix && c.ready->used != c.mix->used)
        result += "\n- to portion: " + cards::said_grams(c.ready->used);
    if (const auto made = said_made(c); !made.empty()) result += "\n- makes: " + made;
    if (c.baked && c.made.grams && c.baked->used != c.made.grams->used)
        result += "\n- baked: " + cards::said_grams(c.baked->used);
    for (std::size_t i = 0; i < all.components.size(); ++i)
        if (&all.components[i] == &c) result += said_demand(i, all);
    return result;
}

json hover(const look& l, position p) {
    const auto offset = l.offset_of(p);
    const auto all = mentions_in(l.of);
    if (const auto* m = mention_at(all, offset))
        if (auto found = hover_of_mention(l, *m); !found.is_null()) return found;
    if (auto found = hover_of_setting(l, offset); !found.is_null()) return found;
    return hover_of_line(l, offset);
}

} // namespace benchcard::editor
