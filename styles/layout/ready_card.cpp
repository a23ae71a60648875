#include "styles/layout/ready_card.hpp"

#include <algorithm>

namespace benchcard::layout {

namespace {

using styles::card;
using styles::paragraph;
using styles::style;

constexpr const char* between_facts = " · ";

/// What stands beside an ingredient in the columns that a style has.
std::vector<words> side_words(const style& look, const std::string& imperial,
                              const std::string& spoons, const std::string& percent) {
    std::vector<words> out;
    for (const auto& [which, text] : {std::pair{styles::column::imperial, &imperial},
                                      {styles::column::spoons, &spoons},
                                      {styles::column::percent, &percent}})
        if (std::ranges::find(look.columns, which) != look.columns.end())
            out.push_back({.text = *text});
    return out;
}

struct preparer {
    const font_metrics& metrics;
    const std::string& language;

    ready_text operator()(const std::vector<words>& text) const {
        return made_ready(text, metrics, language);
    }
    ready_text plain(const std::string& text) const { return (*this)({{.text = text}}); }
    ready_text strong(const std::string& text) const {
        return (*this)({{.text = text, .in = weight::bold}});
    }
    ready_text set(const paragraph& text) const {
        std::vector<words> parts;
        for (const auto& run : text)
            parts.push_back({.text = run.text, .in = run.strong ? weight::bold : weight::regular});
        return (*this)(parts);
    }
    text_on_demand plain_on_demand(const std::string& text) const {
        return text_on_demand([*this, &text] { return plain(text); });
    }
    std::vector<ready_text> all(const std::vector<paragraph>& texts) const {
        std::vector<ready_text> out;
        for (const auto& text : texts) out.push_back(set(text));
        return out;
    }
};

/// Those of the words that are not empty, with a dot between each two.
std::vector<words> listed(std::vector<words> facts) {
    std::vector<words> out;
    for (auto& fact : facts) {
        if (fact.text.empty()) continue;
        if (!out.empty()) out.push_back({.text = between_facts});
        out.push_back(std::move(fact));
    }
    return out;
}

std::size_t whole_part(const ready_text& amount) {
    const auto point = std::ranges::find(amount.slots, U'.', &slot::code);
    return static_cast<std::size_t>(point - amount.slots.begin());
}

ready_row row(const styles::weigh_row& from, const style& look, const preparer& ready) {
    ready_row made;
    made.amount = ready.strong(from.amount);
    made.unit = ready.plain(from.unit);
    std::vector<words> name{{.text = from.name, .in = weight::bold}};
    const bool is_remark = from.preparation.starts_with('(');
    if (!from.preparation.empty())
        name.push_back({.text = (is_remark ? " " : ", ") + from.preparation, .minor = true});
    made.name = ready(name);
    made.imperial = ready.plain(from.imperial);
    made.spoons = ready.plain(from.spoons);
    made.percent = ready.plain(from.percent);
    made.beneath = text_on_demand([&from, &look, ready] {
        return ready(listed(side_words(look, from.imperial, from.spoons, from.percent)));
    });
    made.whole_part = whole_part(made.amount);
    return made;
}

ready_row row(const styles::total_row& from, const preparer& ready) {
    ready_row made;
    made.amount = ready.strong(from.amount);
    made.unit = ready.plain(from.unit);
    made.name = ready.plain(from.text);
    made.whole_part = whole_part(made.amount);
    return made;
}

ready_table_row row(const styles::table_row& from, const preparer& ready) {
    std::vector<words> name{{.text = from.name, .in = weight::bold}};
    if (!from.remark.empty()) name.push_back({.text = " " + from.remark, .minor = true});
    ready_table_row made{ready(name), {}};
    for (const auto& figure : from.figures) {
        auto text = ready.strong(figure);
        const auto whole = whole_part(text);
        made.figures.push_back({std::move(text), whole});
    }
    return made;
}

std::vector<ready_oven_cell> oven_cells(const styles::oven_row& from, const style& look,
                                        const preparer& ready) {
    const std::pair<const std::string*, const std::string*> cells[] = {
        {&look.words.oven, &from.celsius},
        {&look.words.fan, &from.fan},
        {&look.words.fahrenheit, &from.fahrenheit},
        {&look.words.gas, &from.gas},
        {&look.words.time, &from.time},
    };
    std::vector<ready_oven_cell> made;
    for (const auto& [label, value] : cells)
        made.push_back({ready.plain(*label), ready.strong(*value)});
    return made;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Where the letter of a page goes: behind the first number.
std::size_t letter_place(const std::string& number) {
    const auto first = std::ranges::find_if(number, is_digit);
    const auto last = std::find_if_not(first, number.end(), is_digit);
    return static_cast<std::size_t>(last - number.begin());
}

} // namespace

ready_card made_ready(const card& from, const style& look, const font_metrics& metrics) {
    const preparer ready{metrics, from.language};
    ready_card made;
    made.title = ready.strong(from.title);
    made.batch = ready.strong(from.batch);
    made.of = ready(listed({{.text = from.recipe}, {.text = from.station, .in = weight::bold}}));
    made.yield = ready.plain(from.yield);
    made.imperial_heading = ready.plain(from.imperial_heading);
    made.spoons_heading = ready.plain(from.spoons_heading);
    made.percent_heading = ready.plain(from.percent_heading);
    made.beneath_heading = text_on_demand([&from, &look, ready] {
        return ready(listed(
            side_words(look, from.imperial_heading, from.spoons_heading, from.percent_heading)));
    });
    for (const auto& r : from.weigh_out) made.weigh_out.push_back(row(r, look, ready));
    for (const auto& r : from.totals) made.totals.push_back(row(r, ready));
    for (const auto& heading : from.table.headings)
        made.table_headings.push_back(ready.plain(heading));
    for (const auto& r : from.table.rows) made.table.push_back(row(r, ready));
    made.method = ready.all(from.method);
    for (std::size_t i = 0; i < from.method.size(); ++i)
        made.step_numbers.push_back(ready.strong(std::to_string(i + 1)));
    for (const auto& r : from.oven) made.oven.push_back(oven_cells(r, look, ready));
    made.allergens = ready.set(from.allergens);
    made.cautions = ready.all(from.cautions);
    made.notes = ready.all(from.notes);
    made.keeping = ready.set(from.keeping);
    made.made = ready.plain(from.made_label);
    made.revision = ready.plain_on_demand(from.revision);
    made.footnote = ready.plain_on_demand(from.footnote);
    made.foot = text_on_demand([&from, ready] {
        return ready(listed({{.text = from.revision}, {.text = from.footnote}}));
    });
    made.dots = ready.strong("…");
    made.amount = text_on_demand([&from, ready] {
        return ready(listed({{.text = from.batch}, {.text = from.yield}}));
    });
    for (const auto& part : from.parts) made.parts.push_back(made_ready(part, look, metrics));
    for (const auto& f : from.figures) {
        ready_figures figures{ready.strong(f.title), {}};
        for (const auto& line : f.lines)
            figures.lines.push_back({ready.plain(line.text), line.depth});
        made.figures.push_back(std::move(figures));
    }
    return made;
}

page_mark mark_of(const card& from, const std::string& number, const std::string& next,
                  const style& look, const font_metrics& metrics) {
    const preparer ready{metrics, from.language};
    page_mark made;
    made.number = ready(listed({{.text = number, .in = weight::bold}, {.text = from.fingerprint}}));
    if (!next.empty()) made.next = ready.strong(look.words.continues + " " + next);
    return made;
}

std::string with_letter(const std::string& number, const std::string& letter) {
    auto out = number;
    if (letter.empty()) return out;
    const auto at = letter_place(number);
    const bool has_number = at > 0 && is_digit(number[at - 1]);
    return out.insert(at, has_number || number.empty() ? letter : " " + letter);
}

std::string page_label(const std::string& number, const std::string& letter) {
    const auto end = letter_place(number);
    auto begin = end;
    while (begin > 0 && is_digit(number[begin - 1])) --begin;
    return number.substr(begin, end - begin) + letter;
}

} // namespace benchcard::layout
