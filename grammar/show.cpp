#include "grammar/show.hpp"

#include "grammar/settings.hpp"

#include <fmt/format.h>
#include <utility>

namespace benchcard::grammar {

namespace {

/// A visitor made of lambdas, one for each kind of node.
template <typename... Cases> struct cases : Cases... { using Cases::operator()...; };
template <typename... Cases> cases(Cases...) -> cases<Cases...>;

std::string number(const exact& value) { return value.str(); }

std::string range(const exact& low, const exact& high) {
    return low == high ? number(low) : number(low) + "-" + number(high);
}

std::string in_quotes(std::string_view text) { return fmt::format("\"{}\"", text); }
std::string in_quotes(const words& w) { return in_quotes(w.text); }

/// A blank and the words, or nothing where there are none.
std::string behind(const words& w) { return w.text.empty() ? "" : " " + in_quotes(w); }

template <typename Nodes, typename Show>
std::string listed(const Nodes& nodes, std::string_view between, Show show_one) {
    std::string result;
    for (const auto& node : nodes) {
        if (!result.empty()) result += between;
        result += show_one(node);
    }
    return result;
}

std::string_view said(filling f) {
    switch (f) {
    case filling::plain:
        return "";
    case filling::level:
        return "level ";
    case filling::packed:
        return "packed ";
    case filling::heaped:
        return "heaped ";
    case filling::scant:
        return "scant ";
    case filling::rounded:
        return "rounded ";
    }
    return "";
}

std::string show_heat(const amount& degrees, oven_scale scale) {
    switch (scale) {
    case oven_scale::celsius:
        return show(degrees) + " C";
    case oven_scale::fan_celsius:
        return show(degrees) + " C fan";
    case oven_scale::fahrenheit:
        return show(degrees) + " F";
    case oven_scale::gas_mark:
        return "gas " + show(degrees);
    }
    return "";
}

std::string show_length(const length& l) {
    const auto unit = l.in == length_unit::millimetre   ? " mm"
                      : l.in == length_unit::centimetre ? " cm"
                                                        : " in";
    return listed(l.sides, " x ", [](const amount& side) { return show(side); }) + unit +
           (l.shape.empty() ? "" : " " + in_quotes(l.shape));
}

std::string show_part(const reference::part& p) {
    switch (p.is) {
    case reference::part::sort::share:
        return number(p.share);
    case reference::part::sort::amount:
        return show(p.of);
    case reference::part::sort::rest:
        return "rest";
    }
    return "";
}

std::string show_bracket(const bracket& b) {
    return std::visit(
        cases{
            [](const reference& r) {
                return "[name " + in_quotes(r.name) + (r.of ? ": " + show_part(*r.of) : "") + "]";
            },
            [](const rest_of_block&) { return std::string("[rest]"); },
            [](const temperature& t) {
                return "[heat " + show_heat(t.degrees, t.scale) +
                       (t.equals ? " = " + show_heat(t.equals->first, t.equals->second) : "") + "]";
            },
            [](const duration& d) {
                return d.overnight ? std::string("[time overnight]")
                                   : "[time " + range(d.low_minutes, d.high_minutes) + " min]";
            },
            [](const length& l) { return "[length " + show_length(l) + "]"; },
            [](const piece_measure& p) {
                return "[portion " + show(p.of) + (p.total ? " total]" : "]");
            },
        },
        b.holds);
}

std::string show_figure(const weight_figure& f) {
    const auto per =
        std::visit(cases{
                       [](const measure& m) { return " per " + show(m); },
                       [](const words& w) {
                           return w.text.empty() ? std::string(" each") : " per " + in_quotes(w);
                       },
                   },
                   f.per);
    return show(f.mass) + per + behind(f.state);
}

std::string show_value(const setting_value& value) {
    return std::visit(
        cases{
            [](const words& w) { return in_quotes(w); },
            [](const std::vector<words>& list) {
                return listed(list, ", ", [](const words& w) { return in_quotes(w); });
            },
            [](const yield& y) { return show(y); },
            [](const std::vector<loss>& losses) {
                return listed(losses, ", ", [](const loss& l) {
                    return range(l.low_percent, l.high_percent) + "%" + behind(l.place);
                });
            },
            [](const std::vector<keeping>& keepings) {
                return listed(keepings, ", ", [](const keeping& k) {
                    const bool timed = k.high_hours > 0;
                    return timed ? range(k.low_hours, k.high_hours) + " h" + behind(k.place)
                                 : in_quotes(k.text);
                });
            },
            [](const tin& t) {
                const auto size = std::visit(cases{[](const length& l) { return show_length(l); },
                                                   [](const measure& m) { return show(m); }},
                                             t.size);
                return size + behind(t.shape);
            },
            [](const std::vector<weight_figure>& figures) {
                return listed(figures, ", ", show_figure);
            },
            [](const price& p) { return number(p.money) + " per " + show(p.per); },
            [](const measure& m) { return show(m); },
            [](bool yes) { return std::string(yes ? "yes" : "no"); },
        },
        value);
}

std::string show_item(const item_value& value) {
    return std::visit(cases{
                          [](const setting& s) {
                              return fmt::format("{}: {}", setting_of(s.name).word,
                                                 show_value(s.value));
                          },
                          [](const ingredient_line& l) { return show(l); },
                          [](const step& s) { return show(s); },
                          [](const comment& c) { return c.text; },
                          [](const empty_line&) { return std::string(); },
                          [](const unread&) { return std::string("unread"); },
                      },
                      value);
}

span place_of(const item_value& value) {
    return std::visit([](const auto& node) { return node.where; }, value);
}

std::string_view name_of(block::sort is) {
    switch (is) {
    case block::sort::before:
        return "before";
    case block::sort::recipe:
        return "recipe";
    case block::sort::component:
        return "component";
    case block::sort::assembly:
        return "assembly";
    case block::sort::ingredient:
        return "ingredient";
    }
    return "";
}

class printer {
  public:
    explicit printer(const source* text) : text_(text) {}

    std::string run(const tree& file) {
        for (const auto& b : file.blocks) {
            if (b.is == block::sort::before && b.items.empty()) continue;
            put("", std::string(name_of(b.is)) + behind(b.title), b.where);
            for (const auto& i : b.items) put_item(i);
        }
        return std::move(result_);
    }

  private:
    const source* text_;
    std::string result_;

    void put_item(const item& i) {
        if (std::holds_alternative<empty_line>(i.value)) return;
        put("  ", show_item(i.value), place_of(i.value));
        for (const auto& c : i.comments) put("    ", c.text, c.where);
    }

    void put(std::string_view indentation, const std::string& line, span where) {
        result_ += fmt::format("{}{}", indentation, line);
        if (text_) {
            const auto begin = text_->at(where.begin), end = text_->at(where.end);
            result_ +=
                fmt::format("  @{}:{}-{}:{}", begin.line, begin.column, end.line, end.column);
        }
        result_ += '\n';
    }
};

} // namespace

std::string show(const tree& file) { return printer(nullptr).run(file); }

std::string show(const tree& file, const source& text) { return printer(&text).run(file); }

std::string show(const amount& a) {
    const std::string about = a.about ? "about " : "";
    switch (a.is) {
    case amount::sort::half:
        return about + "half";
    case amount::sort::all:
        return about + "all";
    case amount::sort::some:
        return about + "some";
    case amount::sort::number:
        break;
    }
    return about + (a.packs ? number(*a.packs) + " x " : "") + range(a.low, a.high);
}

std::string show(const measure& m) {
    if (!m.in) return show(m.quantity);
    return fmt::format("{} {}{}", show(m.quantity), said(m.filled), short_name(*m.in));
}

std::string show(const ingredient_line& l) {
    const auto one = [](const measure& m) { return show(m); };
    auto result = "line " + listed(l.amounts, " + ", one);
    if (l.piece) result += behind(*l.piece);
    if (!l.equals.empty()) result += " = " + listed(l.equals, " + ", one);
    result += " of " + listed(l.names, " or ", [](const words& w) { return in_quotes(w); });
    for (const auto& p : l.preparations) result += ", " + in_quotes(p);
    return result;
}

std::string show(const step& s) {
    std::string result = "step", text;
    const auto end_text = [&] {
        result += text.empty() ? "" : " " + in_quotes(std::exchange(text, {}));
    };
    for (const auto& part : s.parts) {
        if (const auto* w = std::get_if<words>(&part)) {
            text +=
                w->text; // words that follow each other are one text, folded or escaped in the file
            continue;
        }
        end_text();
        result += " " + show_bracket(std::get<bracket>(part));
    }
    end_text();
    return result;
}

std::string show(const yield& y) {
    if (y.whole) return show(*y.whole);
    std::string result;
    if (y.count) result += show(*y.count);
    if (y.piece) result += (result.empty() ? "" : " ") + in_quotes(*y.piece);
    if (y.each) result += " each " + show(*y.each);
    return result;
}

} // namespace benchcard::grammar
