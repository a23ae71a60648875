#pragma once

#include "styles/card.hpp"
#include "styles/layout/page.hpp"
#include "styles/layout/utf8.hpp"
#include "styles/style.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

/// What is written on cards and on pages, word by word.
namespace benchcard {

using word_list = std::vector<std::string>;

/// Adds the words of a text in composed form, without commas at their ends and dots between.
inline void add_words(word_list& to, std::string_view text) {
    const auto whole = layout::composed(text);
    std::size_t at = 0;
    while (at < whole.size()) {
        const auto end = std::min(whole.find_first_of(" \n\f\t", at), whole.size());
        auto word = whole.substr(at, end - at);
        while (word.ends_with(',')) word.pop_back();
        while (word.starts_with(',')) word.erase(0, 1); // of one that was broken there
        if (!word.empty() && word != "·") to.push_back(word);
        at = end + 1;
    }
}

inline std::string text_of(const styles::paragraph& p) {
    std::string out;
    for (const auto& run : p) out += run.text;
    return out;
}

/// The words that every page of a card may repeat.
inline word_list repeated_words(const styles::card& c, const styles::style& look) {
    word_list out;
    for (const auto& text :
         {c.title, c.batch, c.revision, c.footnote, c.fingerprint, look.words.continues})
        add_words(out, text);
    add_words(out, "card 2 11 of 3 12 …");
    for (const auto& part : c.parts) {
        for (auto& word : repeated_words(part, look)) out.push_back(std::move(word));
        add_words(out, part.yield); // in the heading of a component that runs on
    }
    if (c.is_recipe) add_words(out, look.words.page + " " + look.words.of);
    for (const auto& text : {c.imperial_heading, c.spoons_heading, c.percent_heading})
        add_words(out, text);
    for (const auto& text : c.table.headings) add_words(out, text);
    for (const auto& text :
         {look.words.oven, look.words.fan, look.words.fahrenheit, look.words.gas, look.words.time})
        add_words(out, text);
    return out;
}

/// The words that stand once on a card in a style.
inline word_list body_words(const styles::card& c, const styles::style& look) {
    word_list out;
    for (const auto& part : c.parts)
        for (auto& word : body_words(part, look)) out.push_back(std::move(word));
    if (styles::shows(look, styles::block::figures))
        for (const auto& f : c.figures) {
            add_words(out, f.title);
            for (const auto& line : f.lines) add_words(out, line.text);
        }
    for (const auto& text : {c.recipe, c.station, c.yield, c.made_label}) add_words(out, text);
    const auto has = [&](styles::column which) {
        return std::ranges::find(look.columns, which) != look.columns.end();
    };
    for (const auto& r : c.weigh_out) {
        for (const auto& text : {r.amount, r.unit, r.name, r.preparation}) add_words(out, text);
        if (has(styles::column::imperial)) add_words(out, r.imperial);
        if (has(styles::column::spoons)) add_words(out, r.spoons);
        if (has(styles::column::percent)) add_words(out, r.percent);
    }
    for (const auto& r : c.totals)
        for (const auto& text : {r.amount, r.unit, r.text}) add_words(out, text);
    for (const auto& r : c.table.rows) {
        add_words(out, r.name + " " + r.remark);
        for (const auto& text : r.figures) add_words(out, text);
    }
    for (std::size_t i = 0; i < c.method.size(); ++i) {
        add_words(out, std::to_string(i + 1));
        add_words(out, text_of(c.method[i]));
    }
    for (const auto& r : c.oven)
        for (const auto& text : {r.celsius, r.fan, r.fahrenheit, r.gas, r.time})
            add_words(out, text);
    add_words(out, text_of(c.allergens));
    for (const auto& p : c.cautions) add_words(out, text_of(p));
    for (const auto& p : c.notes) add_words(out, text_of(p));
    add_words(out, text_of(c.keeping));
    return out;
}

/// The words of a page in the order they were set; runs that touch on a line are read as one.
inline word_list page_words(const layout::page& p, const layout::font_metrics& metrics) {
    std::string text;
    const layout::text_run* last = nullptr;
    double last_end = 0;
    for (const auto& run : p.text) {
        double advance = 0;
        for (const auto code : layout::characters_of(run.text))
            if (const auto* g = metrics.faces[run.face].find(code)) advance += g->advance;
        const bool touches = last && last->y == run.y && std::abs(run.x - last_end) < 0.01;
        if (!touches) text += ' ';
        text += run.text;
        last = &run;
        last_end = run.x + advance * run.size / 1000;
    }
    word_list out;
    add_words(out, text);
    return out;
}

inline std::map<std::string, int> counted(const word_list& words) {
    std::map<std::string, int> out;
    for (const auto& w : words) ++out[w];
    return out;
}

} // namespace benchcard
