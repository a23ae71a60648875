#include "made_up_cards.hpp"
#include "sample_cards.hpp"
#include "styles/html/document.hpp"
#include "styles/html/markup.hpp"
#include "words_of.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>

/// Cards as a page for a screen; what a browser makes of it is looked at in tests/html.
namespace benchcard {
namespace {

const bool few_cards = (setenv("RC_PARAMS", "max_success=40 noshrink=1 seed=11", 0), true);

std::string page_of(const std::vector<styles::card>& cards, const char* style = "station",
                    const char* paper = "a5") {
    return html::document_of(cards, "All cards", *styles::built_in_style(style),
                             *styles::paper_named(paper));
}

std::size_t count_of(const std::string& text, std::string_view part) {
    std::size_t count = 0;
    for (auto at = text.find(part); at != text.npos; at = text.find(part, at + 1)) ++count;
    return count;
}

/// The text between `</style>` and the end, its tags left out and its characters as they are meant.
std::string read_back(const std::string& page) {
    std::string result;
    bool in_tag = false;
    for (auto at = page.find("</style>"); at < page.size(); ++at) {
        const char c = page[at];
        if (c == '<') {
            in_tag = true;
            const auto tag = std::string_view(page).substr(at);
            const bool is_within_words = tag.starts_with("<b>") || tag.starts_with("</b>") ||
                                         tag.starts_with("<span") || tag.starts_with("</span");
            if (!is_within_words) result += ' ';
        } else if (c == '>')
            in_tag = false;
        else if (in_tag)
            continue;
        else if (c != '&')
            result += c;
        else {
            const auto name = page.substr(at + 1, page.find(';', at) - at - 1);
            REQUIRE(
                (name == "amp" || name == "lt" || name == "gt" || name == "quot" || name == "#39"));
            result += name == "amp"    ? '&'
                      : name == "lt"   ? '<'
                      : name == "gt"   ? '>'
                      : name == "quot" ? '"'
                                       : '\'';
            at += name.size() + 1;
        }
    }
    for (auto at = result.find("\u00A0"); at != result.npos; at = result.find("\u00A0"))
        result.replace(at, 2, " ");
    return result;
}

/// The tags that are left open, or closed without having been opened.
std::vector<std::string> unbalanced(const std::string& page) {
    std::vector<std::string> open;
    for (auto at = page.find('<'); at != page.npos; at = page.find('<', at + 1)) {
        const auto end = page.find_first_of(" >\n", at + 1);
        const auto name = page.substr(at + 1, end - at - 1);
        const bool is_alone = name == "!DOCTYPE" || name == "meta" || name == "input" ||
                              page[page.find('>', at) - 1] == '/';
        if (is_alone) continue;
        if (name.front() != '/')
            open.push_back(name);
        else if (!open.empty() && "/" + open.back() == name)
            open.pop_back();
        else
            open.push_back(name);
    }
    return open;
}

} // namespace

TEST_CASE("what could be taken for a tag is escaped everywhere", "[html]") {
    CHECK(html::escaped("<b class=\"x\" id='y'>&amp;\x01\n") ==
          "&lt;b class=&quot;x&quot; id=&#39;y&#39;&gt;&amp;amp; ");
    const std::string bad = "<script>alert('1')</script>\"&";
    styles::card c;
    for (auto* text : {&c.title, &c.recipe, &c.station, &c.batch, &c.yield, &c.imperial_heading,
                       &c.spoons_heading, &c.percent_heading, &c.made_label, &c.revision,
                       &c.footnote, &c.number, &c.fingerprint, &c.language})
        *text = bad;
    c.weigh_out = {{bad, bad, bad, bad, bad, bad, bad}, {"", bad, bad, bad, bad, bad, bad}};
    c.totals = {{bad, bad, bad}};
    c.table = {{bad}, {{bad, bad, {bad}}}};
    c.method = {{{bad, true}, {bad, false}}};
    c.oven = {{bad, bad, bad, bad, bad}};
    c.allergens = c.keeping = {{bad, true}};
    c.cautions = c.notes = {{{bad, false}}};
    auto look = *styles::built_in_style("station");
    look.words.oven = look.words.fan = look.words.fahrenheit = look.words.gas = look.words.time =
        bad;
    const auto page = html::document_of({c, c}, bad, look, look.sheet);
    CHECK(page.find("<script") == page.npos);
    CHECK(page.find("alert('") == page.npos);
    CHECK(page.find("\"&\"") == page.npos);
    CHECK(unbalanced(page).empty());
    CHECK(count_of(page, "&lt;script&gt;") > 80); // about forty in each card
}

TEST_CASE("a page is whole in itself, and says its language", "[html]") {
    const auto page = page_of({samples::short_card(), samples::long_card()});
    CHECK(
        page.starts_with("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">"));
    for (const auto* foreign : {"<script", "<link", "@import", "src=", "http"}) {
        INFO(foreign);
        CHECK(page.find(foreign) == page.npos);
    }
    CHECK(unbalanced(page).empty());
    CHECK(count_of(page, "<article ") == 2);
    CHECK(count_of(page, "<h1>") == 1);
    CHECK(count_of(page, "<h2 ") == 2);
    auto german = samples::short_card();
    german.language = "de";
    CHECK(page_of({german}).find("<html lang=\"de\">") != page.npos);
}

TEST_CASE("a page prints to the sheet that is asked for", "[html]") {
    CHECK(page_of({samples::short_card()}).find("@page { size: 148mm 210mm; margin: 8mm }") !=
          std::string::npos);
    CHECK(page_of({samples::short_card()}, "station", "4x6")
              .find("@page { size: 101.6mm 152.4mm; margin: 8mm }") != std::string::npos);
    CHECK(page_of({samples::short_card()}).find("--amounts: 14pt") != std::string::npos);
}

TEST_CASE("columns that no row needs are left out, and ticks are labelled", "[html]") {
    const auto page = page_of({samples::short_card()});
    CHECK(count_of(page, "class=\"imperial\">") == 5); // with the heading
    CHECK(count_of(page, "class=\"percent\">") == 0);
    CHECK(count_of(page, "<input type=\"checkbox\" id=\"card-1-line-") == 4);
    CHECK(count_of(page, "<label for=\"card-1-line-4\"><b>ground almonds</b></label>") == 1);
    CHECK(page.find("<b>eggs</b>, large (400\u00A0g)") != page.npos);
    // Without a column of ticks there is nothing to be ticked.
    const std::string name = "<th role=\"rowheader\" scope=\"row\" class=\"name\"><b>";
    auto look = *styles::built_in_style("station");
    look.columns = {styles::column::name};
    const auto bare = html::document_of({samples::short_card()}, "", look, look.sheet);
    CHECK(count_of(bare, name) == 4);
    CHECK(bare.find("<input") == bare.npos);
    CHECK(bare.find("class=\"amount\"") == bare.npos);
}

TEST_CASE("the parts of a card stand in the style's order", "[html]") {
    auto look = *styles::built_in_style("station");
    const auto order = [&] {
        const auto page = html::document_of({samples::short_card()}, "", look, look.sheet);
        const auto at = [&](const char* part) { return page.find(part, page.find("</style>")); };
        CHECK(at("class=\"weigh-out\"") != page.npos);
        return at("class=\"weigh-out\"") < at("class=\"method\"");
    };
    CHECK(order());
    look.top = {styles::block::method, styles::block::weigh_out, styles::block::totals};
    CHECK_FALSE(order());
}

TEST_CASE("no line ends between a number and its unit", "[html]") {
    CHECK(html::marked_up({{"Beat ", false}, {"butter 400 g", true}, {" for 3 min.", false}}) ==
          "Beat <b>butter 400\u00A0g</b> for 3\u00A0min.");
}

TEST_CASE("whatever a card says, all of it stands on the page", "[html][property]") {
    const bool holds = rc::check("made-up cards", [] {
        const auto card = made_up::card();
        const auto page = page_of({card});
        RC_ASSERT(unbalanced(page).empty());
        word_list said, wanted;
        add_words(said, read_back(page));
        wanted = body_words(card, *styles::built_in_style("station"));
        for (const auto& text : {card.title, card.batch, card.revision, card.footnote})
            add_words(wanted, text);
        const auto seen = counted(said);
        for (const auto& [word, count] : counted(wanted)) {
            // The numbers of steps are made by the browser.
            const bool is_number = word.size() <= 2;
            const auto at = seen.find(word);
            if (!is_number && (at == seen.end() || at->second < count)) RC_LOG() << word << "\n";
            RC_ASSERT(is_number || (at != seen.end() && at->second >= count));
        }
    });
    CHECK(holds);
}

} // namespace benchcard
