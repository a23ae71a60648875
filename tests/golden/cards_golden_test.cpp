#include "compiled_example.hpp"
#include "compiler/cards/deal.hpp"

#include <catch2/catch.hpp>

/// Every word of the dealt cards of every example, so that a changed word is a readable diff.
namespace benchcard::golden {

namespace {

std::string shown(const styles::paragraph& p) {
    std::string result;
    for (const auto& run : p) result += run.strong ? "*" + run.text + "*" : run.text;
    return result;
}

class card_text {
  public:
    std::string of(const styles::card& c) {
        text_ = "=== " + c.title + "\n";
        add("recipe", c.recipe);
        add("station", c.station);
        add("batch", c.batch);
        add("yield", c.yield);
        add("headings", c.imperial_heading + " | " + c.spoons_heading +
                            (c.percent_heading.empty() ? "" : " | " + c.percent_heading));
        for (const auto& row : c.weigh_out) add_row(row);
        for (const auto& t : c.totals)
            text_ += "  = " + t.amount + " " + t.unit + " | " + t.text + "\n";
        int number = 0;
        for (const auto& p : c.method) text_ += std::to_string(++number) + ". " + shown(p) + "\n";
        for (const auto& o : c.oven)
            text_ += "oven: " + o.celsius + " | " + o.fan + " | " + o.fahrenheit + " | " + o.gas +
                     " | " + o.time + "\n";
        add("allergens", shown(c.allergens));
        for (const auto& p : c.cautions) add("caution", shown(p));
        for (const auto& p : c.notes) add("note", shown(p));
        add("keeping", shown(c.keeping));
        add("made label", c.made_label);
        add("revision", c.revision);
        add("footnote", c.footnote);
        add("number", c.number);
        add("language", c.language);
        return text_;
    }

  private:
    std::string text_;

    void add(std::string_view what, const std::string& text) {
        if (!text.empty()) text_ += std::string(what) + ": " + text + "\n";
    }

    void add_row(const styles::weigh_row& r) {
        text_ += "  " + r.amount + " " + r.unit + " | " + r.name + " | " + r.preparation + " | " +
                 r.imperial + " | " + r.spoons;
        text_ += (r.percent.empty() ? "" : " | " + r.percent) + "\n";
    }
};

std::string cards_as_text(const std::string& example) {
    const auto c = compiled_example(example);
    std::string result;
    for (const auto& card : cards::deal(ordered(*c, "")))
        result += (result.empty() ? "" : "\n") + card_text().of(card);
    return result;
}

} // namespace

TEST_CASE("the cards of the examples say what they said", "[golden]") {
    for (const auto& example : all_examples()) {
        auto file = example + ".cards.txt";
        for (auto& c : file)
            if (c == '/') c = '-';
        compare_with_golden(file, read_golden(file), cards_as_text(example));
    }
}

} // namespace benchcard::golden
