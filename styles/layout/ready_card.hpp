#pragma once

#include "styles/card.hpp"
#include "styles/layout/text.hpp"
#include "styles/style.hpp"

#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace benchcard::layout {

/// A text that is made ready when it is first asked for, since on most cards nothing asks.
class text_on_demand {
  public:
    text_on_demand() = default; ///< an empty one
    /// What `make` refers to must outlive the text.
    explicit text_on_demand(std::function<ready_text()> make) : make_(std::move(make)) {}

    const ready_text& operator*() const {
        if (make_) made_ = std::exchange(make_, nullptr)();
        return made_;
    }
    const ready_text* operator->() const { return &**this; }

  private:
    mutable std::function<ready_text()> make_;
    mutable ready_text made_;
};

/// A row of the weigh-out, or a total, with every character measured.
struct ready_row {
    ready_text amount, unit, name;
    ready_text imperial, spoons, percent;
    text_on_demand beneath;     ///< the last three in one, for cards too narrow for columns
    std::size_t whole_part = 0; ///< characters of the amount before its decimal point
};

/// A figure of a table, and the characters of it before its decimal point.
struct ready_figure {
    ready_text text;
    std::size_t whole_part = 0;
};
struct ready_table_row {
    ready_text name;
    std::vector<ready_figure> figures;
};

/// One column of an oven setting.
struct ready_oven_cell {
    ready_text label, value;
};

/// How figures came about: a heading and its lines.
struct ready_figures {
    struct line {
        ready_text text;
        std::size_t depth = 0;
    };
    ready_text title;
    std::vector<line> lines;
};

/// A card whose texts were looked up and measured once, to be set at many sizes.
struct ready_card {
    ready_text title, batch, of, yield;
    ready_text imperial_heading, spoons_heading, percent_heading;
    text_on_demand beneath_heading;
    std::vector<ready_row> weigh_out, totals;
    std::vector<ready_text> table_headings;
    std::vector<ready_table_row> table;
    std::vector<ready_text> step_numbers, method;
    std::vector<std::vector<ready_oven_cell>> oven;
    ready_text allergens;
    std::vector<ready_text> cautions, notes;
    ready_text keeping, made;
    text_on_demand revision, footnote;
    text_on_demand foot;   ///< both in one
    ready_text dots;       ///< stands for what was left out
    text_on_demand amount; ///< of a part of a whole recipe: batch and yield in one
    std::vector<ready_card> parts;
    std::vector<ready_figures> figures;
};

/// What it is made from must outlive it.
ready_card made_ready(const styles::card& from, const styles::style& look,
                      const font_metrics& metrics);

/// Who a page is: its number, the fingerprint, and on a card that runs on the next one's label.
struct page_mark {
    ready_text number, next;
};

/// `next` is the label of the next page of a card, or empty.
page_mark mark_of(const styles::card& from, const std::string& number, const std::string& next,
                  const styles::style& look, const font_metrics& metrics);

/// `card 2a of 3`.
std::string with_letter(const std::string& number, const std::string& letter);

/// `2` of `card 2 of 3`, with the letter behind it; the letter alone where there is no number.
std::string page_label(const std::string& number, const std::string& letter);

} // namespace benchcard::layout
