#pragma once

#include "styles/card.hpp"
#include "styles/paper.hpp"
#include "styles/style.hpp"

#include <algorithm>
#include <rapidcheck.h>
#include <set>
#include <string>
#include <vector>

/// Cards out of thin air: long names, many rows, other alphabets, words that fit on no line.
namespace benchcard::made_up {

/// Draws texts in which nearly every word is its own, so that a lost or doubled word shows.
class writer {
  public:
    std::string word() {
        static const std::vector<std::string> stems = {
            "flour",   "sugar",      "crème",     "Käse",   "αλεύρι", "ζάχαρη", "мука",
            "сахар",   "smør",       "œuf",       "Ất",     "świeży", "½",      "1¾",
            "(fresh)", "half-baked", "pour/stir", "jaffa,", "é̂"};
        return *rc::gen::elementOf(stems) + number();
    }
    /// An 80-letter word without a place to break.
    std::string long_word() {
        std::string out;
        while (out.size() < 80) out += "q" + number();
        return out;
    }
    std::string words(int least, int most) {
        std::string out;
        const int count = *rc::gen::inRange(least, most + 1);
        for (int i = 0; i < count; ++i) {
            const bool is_long = *rc::gen::inRange(0, 60) == 0;
            out += (i > 0 ? " " : "") + (is_long ? long_word() : word());
        }
        return out;
    }
    std::string maybe(int least, int most) { return coin() ? words(least, most) : std::string(); }
    bool coin() { return *rc::gen::inRange(0, 2) == 1; }

    std::string amount() {
        const int kind = *rc::gen::inRange(0, 8);
        const auto whole = "2" + number();
        if (kind == 0) return "";
        if (kind == 1) return whole + ".5";
        if (kind == 2) return whole + "½";
        if (kind == 3) return whole + "–2" + number();
        return whole;
    }
    std::string unit() {
        return *rc::gen::element<std::string>("g", "ml", "", "kg", "tbsp", "pieces");
    }
    styles::paragraph paragraph(int least, int most) {
        styles::paragraph out;
        const int parts = *rc::gen::inRange(1, 4);
        for (int i = 0; i < parts; ++i)
            out.push_back({(i > 0 ? " " : "") + words(least, most), coin()});
        return out;
    }

  private:
    /// Four digits, so that no number is the beginning of another.
    std::string number() { return std::to_string(1000 + ++count_); }

    int count_ = 0;
};

/// A card of so many rows and steps at most.
inline styles::card card_of(writer& w, int most_rows, int most_steps) {
    styles::card c;
    c.title = w.words(1, 6);
    c.recipe = w.maybe(1, 4);
    c.station = w.maybe(1, 2);
    c.batch = *rc::gen::element<std::string>("× 2", "× 1½", "× 12 · 480 pieces", "");
    c.yield = w.maybe(1, 5);
    c.imperial_heading = "oz";
    c.spoons_heading = "US cups";
    c.percent_heading = "% of flour";
    const int rows = std::min(most_rows, *rc::gen::element(0, 1, 4, 9, 14, 30, 60));
    for (int i = 0; i < rows; ++i)
        c.weigh_out.push_back({w.amount(), w.unit(), w.words(1, 4), w.maybe(1, 6), w.maybe(1, 2),
                               w.maybe(1, 2), w.maybe(1, 1)});
    for (int i = *rc::gen::inRange(0, 3); i > 0; --i)
        c.totals.push_back({w.amount(), w.unit(), w.words(1, 8)});
    const int columns = *rc::gen::inRange(1, 4);
    const std::vector<std::string> headings = {"g a cup", "tbsp", "g a tsp"};
    const int table_rows = *rc::gen::element(0, 0, 0, 2, 12, 50);
    for (int i = 0; i < columns; ++i)
        c.table.headings.push_back(headings[static_cast<std::size_t>(i)]);
    for (int i = 0; i < table_rows; ++i) {
        styles::table_row row{w.words(1, 4), w.maybe(1, 3), {}};
        for (int k = 0; k < columns; ++k) row.figures.push_back(w.amount());
        c.table.rows.push_back(std::move(row));
    }
    for (int i = std::min(most_steps, *rc::gen::element(0, 1, 3, 8, 15, 40)); i > 0; --i)
        c.method.push_back(w.paragraph(1, 12));
    for (int i = *rc::gen::inRange(0, 3); i > 0; --i)
        c.oven.push_back({"180 °C", "160 °C", w.maybe(1, 2), "4", w.maybe(1, 4)});
    if (w.coin()) c.allergens = w.paragraph(1, 20);
    for (int i = *rc::gen::inRange(0, 4); i > 0; --i) c.cautions.push_back(w.paragraph(1, 15));
    for (int i = *rc::gen::inRange(0, 3); i > 0; --i) c.notes.push_back(w.paragraph(1, 10));
    if (w.coin()) c.keeping = w.paragraph(1, 6);
    c.made_label = *rc::gen::element<std::string>("made", "");
    c.revision = w.maybe(1, 3);
    c.footnote = w.maybe(1, 40);
    c.number = *rc::gen::element<std::string>("card 2 of 3", "card 11 of 12", "");
    c.fingerprint = *rc::gen::element<std::string>("7K4Q-92", "");
    c.language = "en";
    return c;
}

inline styles::card card() {
    writer w;
    return card_of(w, 60, 40);
}

/// A whole recipe of up to four components, with where its figures come from.
inline styles::card recipe() {
    writer w;
    auto c = card_of(w, 0, 0);
    c.is_recipe = true;
    c.number.clear();
    c.table = {};
    c.totals.clear();
    c.oven.clear();
    for (int i = *rc::gen::inRange(0, 5); i > 0; --i) {
        auto part = card_of(w, 14, 8);
        part.recipe.clear(), part.table = {}, part.allergens.clear(), part.cautions.clear();
        for (auto* text : {&part.revision, &part.footnote, &part.number, &part.fingerprint})
            text->clear();
        part.made_label.clear();
        // Of the head of a part only the title, the batch and the yield are printed.
        part.station.clear();
        c.parts.push_back(std::move(part));
    }
    for (int i = *rc::gen::inRange(0, 3); i > 0; --i) {
        styles::figures f{w.words(1, 5), {}};
        for (int k = *rc::gen::inRange(1, 20); k > 0; --k)
            f.lines.push_back({*rc::gen::inRange<std::size_t>(0, 6), w.words(1, 9)});
        c.figures.push_back(std::move(f));
    }
    return c;
}

/// Any sheet, upright or turned.
inline styles::paper paper() {
    const auto all = styles::papers();
    const auto sheet = all[*rc::gen::inRange<std::size_t>(0, all.size())];
    return *rc::gen::inRange(0, 2) == 1 ? styles::turned(sheet) : sheet;
}

/// A style that comes with the program, or `station` with a hole, corners, a distance and more.
inline styles::style look() {
    const auto names = styles::built_in_style_names();
    const auto which = *rc::gen::inRange<std::size_t>(0, names.size() + 2);
    if (which < names.size()) return *styles::built_in_style(names[which]);
    auto own = *styles::built_in_style("station");
    own.margin = *rc::gen::element(6.0, 8.0, 12.5);
    own.corners = *rc::gen::element(0.0, 4.0, 10.0, 20.0);
    if (*rc::gen::inRange(0, 2) == 1)
        own.hole = {*rc::gen::element(styles::edge::top, styles::edge::right, styles::edge::bottom,
                                      styles::edge::left),
                    *rc::gen::element(6.0, 14.0, 30.0)};
    if (*rc::gen::inRange(0, 2) == 1) own.distance = *rc::gen::element(300.0, 600.0, 1000.0);
    own.accent = *rc::gen::element(styles::black, styles::colour{20, 60, 140});
    if (*rc::gen::inRange(0, 3) == 1) own.columns = {styles::column::name, styles::column::amount};
    if (*rc::gen::inRange(0, 3) == 1) {
        own.top = {styles::block::method, styles::block::table, styles::block::weigh_out};
        own.bottom.insert(own.bottom.begin(), styles::block::totals);
    }
    return own;
}

} // namespace benchcard::made_up
