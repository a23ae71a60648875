#include "mutants.hpp"

#include "compiler/measures/kitchen.hpp"
#include "grammar/parse.hpp"

#include <algorithm>
#include <cctype>
#include <optional>
#include <utility>

namespace benchcard::mutation {

namespace {

using grammar::span;
using grammar::unit;
using sort = mutant::sort;

/// What is taken for what, as they are written.
constexpr std::pair<unit, std::string_view> unit_slips[] = {
    {unit::gram, "kg"},        {unit::gram, "oz"},        {unit::kilogram, "g"},
    {unit::ounce, "g"},        {unit::ounce, "lb"},       {unit::pound, "oz"},
    {unit::millilitre, "l"},   {unit::litre, "ml"},       {unit::teaspoon, "tbsp"},
    {unit::tablespoon, "tsp"}, {unit::tablespoon, "cup"}, {unit::cup, "tbsp"},
};

/// A word that no recipe here has a line for.
constexpr std::string_view another_word = "zarzaparilla";

bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }
bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }
bool is_of_number(char c) { return is_digit(c) || c == '.'; }

std::string written(const exact& number) {
    auto text = measures::in_decimals(number, 3);
    if (text.find('.') != text.npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
    }
    return text;
}

bool reads_as_line(const std::string& line) {
    const grammar::source text(0, "line", line);
    const auto read = grammar::parse_ingredient_line(text);
    return read.line && read.messages.empty();
}

class mutator {
  public:
    mutator(const grammar::source& text, const std::set<std::uint32_t>& component_lines)
        : text_(text), component_lines_(component_lines) {}

    std::vector<mutant> run(const grammar::tree& tree) {
        for (block_ = 0; block_ < tree.blocks.size(); ++block_)
            for (const auto& item : tree.blocks[block_].items) mutate(tree.blocks[block_], item);
        return std::move(result_);
    }

  private:
    const grammar::source& text_;
    const std::set<std::uint32_t>& component_lines_;
    std::vector<mutant> result_;
    std::set<std::pair<std::uint32_t, std::string>> made_; ///< line, and what it would be
    std::size_t block_ = 0;
    span of_; ///< what is being changed

    void mutate(const grammar::block& block, const grammar::item& item) {
        if (const auto* l = std::get_if<grammar::ingredient_line>(&item.value)) mutate(*l);
        if (const auto* s = std::get_if<grammar::setting>(&item.value))
            if (s->name == grammar::key::makes) mutate(*s);
        if (const auto* s = std::get_if<grammar::step>(&item.value))
            for (const auto& part : s->parts)
                if (const auto* b = std::get_if<grammar::bracket>(&part)) mutate(block, *b);
    }

    void add(sort is, std::string_view slip, span where, std::string text) {
        const grammar::edit change{where, std::move(text)};
        const auto begin = of_.begin;
        const auto line =
            changed(text_.text_of(of_), {{0, where.begin - begin, where.end - begin}, change.text});
        if (is == sort::amount && !reads_as_line(line)) return;
        if (line == text_.text_of(of_) || !made_.emplace(begin, line).second) return;
        result_.push_back({is, slip, change, block_, of_});
    }

    void mutate(const grammar::ingredient_line& l) {
        of_ = l.where;
        const bool is_use = component_lines_.contains(l.where.begin);
        for (const auto* terms : {&l.amounts, &l.equals})
            for (const auto& m : *terms) {
                if (is_use) add_doubled(sort::amount, "a component's use doubled", m.quantity);
                add_digits(m.quantity.where);
                add_points(m.quantity.where);
                add_units(m);
            }
        const auto line = text_.at(l.where.begin).line;
        const auto end =
            line < text_.line_count() ? text_.line_start(line + 1) : text_.text().size();
        const span whole{0, static_cast<std::uint32_t>(text_.line_start(line)),
                         static_cast<std::uint32_t>(end)};
        result_.push_back({sort::removal,
                           is_use ? "a component's use removed" : "a line removed",
                           {whole, ""},
                           block_,
                           of_});
    }

    void add_digits(span where) {
        const std::string number(text_.text_of(where));
        for (std::size_t i = 0; i < number.size(); ++i) {
            if (!is_digit(number[i])) continue;
            add(sort::amount, "a digit dropped", where, std::string(number).erase(i, 1));
            add(sort::amount, "a digit doubled", where,
                std::string(number).insert(i, 1, number[i]));
        }
    }

    void add_points(span where) {
        const auto text = text_.text_of(where);
        if (text.find('/') != text.npos) return;
        for (std::size_t begin = 0; begin < text.size();) {
            auto end = begin;
            while (end < text.size() && is_of_number(text[end])) ++end;
            if (end == begin) {
                ++begin;
                continue;
            }
            for (const int places : {1, -1}) {
                const auto moved = with_point_moved(text.substr(begin, end - begin), places);
                if (!moved.empty())
                    add(sort::amount, "the point moved",
                        {0, where.begin + static_cast<std::uint32_t>(begin),
                         where.begin + static_cast<std::uint32_t>(end)},
                        moved);
            }
            begin = end;
        }
    }

    /// The unit is the last word of the measure.
    void add_units(const grammar::measure& m) {
        if (!m.in) return;
        const auto text = text_.text_of({0, m.quantity.where.end, m.where.end});
        auto end = text.size();
        while (end > 0 && !is_letter(text[end - 1])) --end;
        auto begin = end;
        while (begin > 0 && is_letter(text[begin - 1])) --begin;
        const span word{0, m.quantity.where.end + static_cast<std::uint32_t>(begin),
                        m.quantity.where.end + static_cast<std::uint32_t>(end)};
        for (const auto& [from, to] : unit_slips)
            if (from == *m.in) add(sort::amount, "a unit swapped", word, std::string(to));
    }

    void add_doubled(sort is, std::string_view slip, const grammar::amount& a) {
        using kind = grammar::amount::sort;
        if (a.is == kind::half) return add(is, slip, a.where, "all");
        if (a.is != kind::number || a.packs || a.low != a.high) return;
        add(is, slip, a.where, written(a.low * 2));
    }

    void mutate(const grammar::setting& makes) {
        of_ = makes.where;
        const auto& y = std::get<grammar::yield>(makes.value);
        const auto mutate_yield = [&](const grammar::amount& a) {
            add_doubled(sort::yield, "a yield doubled", a);
            const std::string number(text_.text_of(a.where));
            for (std::size_t i = 0; number.size() > 1 && i < number.size(); ++i)
                if (is_digit(number[i]))
                    add(sort::yield, "a digit of a yield dropped", a.where,
                        std::string(number).erase(i, 1));
        };
        if (y.count) mutate_yield(*y.count);
        if (y.each) mutate_yield(y.each->quantity);
        if (y.whole) mutate_yield(y.whole->quantity);
    }

    void mutate(const grammar::block& block, const grammar::bracket& b) {
        of_ = b.where;
        if (const auto* r = std::get_if<grammar::reference>(&b.holds)) {
            add(sort::reference, "a reference renamed", r->name.where, std::string(another_word));
            if (const auto other = next_name(block, r->name.text))
                add(sort::reference, "a reference to another line", r->name.where, *other);
        }
        if (const auto* t = std::get_if<grammar::temperature>(&b.holds)) mutate(*t);
    }

    /// The name of the line below the first that has these words, the first line after the last.
    static std::optional<std::string> next_name(const grammar::block& block,
                                                const std::string& said) {
        std::vector<std::string> names;
        for (const auto& item : block.items)
            if (const auto* l = std::get_if<grammar::ingredient_line>(&item.value))
                names.push_back(l->names.front().text);
        if (names.size() < 2) return std::nullopt;
        const auto found = std::find_if(names.begin(), names.end(), [&](const auto& name) {
            return name.find(said) != name.npos;
        });
        if (found == names.end() || found + 1 == names.end()) return names.front();
        return *(found + 1);
    }

    void mutate(const grammar::temperature& t) {
        using grammar::oven_scale;
        const bool is_plain = t.scale == oven_scale::celsius || t.scale == oven_scale::fahrenheit;
        if (!is_plain || t.equals) return;
        const bool is_celsius = t.scale == oven_scale::celsius;
        const auto text = text_.text_of({0, t.degrees.where.end, of_.end});
        const auto at = text.find(is_celsius ? 'C' : 'F');
        if (at == text.npos) return;
        const auto begin = t.degrees.where.end + static_cast<std::uint32_t>(at);
        add(sort::heat, "a scale of heat swapped", {0, begin, begin + 1}, is_celsius ? "F" : "C");
    }
};

} // namespace

std::vector<mutant> mutants_of(const grammar::source& text, const grammar::tree& tree,
                               const std::set<std::uint32_t>& component_lines) {
    return mutator(text, component_lines).run(tree);
}

std::string changed(std::string_view text, const grammar::edit& change) {
    std::string result(text);
    return result.replace(change.where.begin, change.where.end - change.where.begin, change.text);
}

std::string with_point_moved(std::string_view number, int places) {
    const auto value = grammar::parse_number(number);
    if (!value || number.find('.') != number.rfind('.')) return "";
    return written(places > 0 ? exact(*value * 10) : exact(*value / 10));
}

} // namespace benchcard::mutation
