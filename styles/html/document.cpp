#include "styles/html/document.hpp"

#include "styles/html/blocks.hpp"
#include "styles/html/markup.hpp"

#include <fmt/format.h>

namespace benchcard::html {

const std::vector<std::pair<std::string_view, std::string_view>>& built_in_sheets();

namespace {

using styles::card;
using styles::style;

/// What the style and the paper say, for the sheet of rules to use.
std::string measures_of(const style& look, const styles::paper& sheet) {
    return fmt::format("@page {{ size: {}mm {}mm; margin: {}mm }}\n"
                       ":root {{ --title: {}pt; --amounts: {}pt; --names: {}pt; --text: {}pt; "
                       "--small: {}pt }}\n",
                       sheet.width, sheet.height, std::max(look.margin, styles::least_margin),
                       look.title.least, look.amounts.least, look.names.least, look.text.least,
                       look.small_print.least);
}

std::string head_of(const card& c, const std::string& id) {
    auto result = fmt::format("<header>\n<h2 id=\"{}-title\">{}</h2>\n", id, escaped(c.title));
    if (!c.batch.empty()) result += "<p class=\"batch\">" + escaped(c.batch) + "</p>\n";
    auto of = escaped(c.recipe);
    if (!c.station.empty()) of += (of.empty() ? "<b>" : " · <b>") + escaped(c.station) + "</b>";
    if (!of.empty()) result += "<p class=\"of\">" + of + "</p>\n";
    if (!c.yield.empty()) result += "<p class=\"yield\">" + worded(c.yield) + "</p>\n";
    return result + "</header>\n";
}

std::string foot_of(const card& c) {
    const auto facts = c.revision.empty() || c.footnote.empty() ? c.revision + c.footnote
                                                                : c.revision + " · " + c.footnote;
    const auto mark = c.fingerprint.empty() ? "" : " · " + escaped(c.fingerprint);
    return fmt::format("<footer>\n<p>{}</p>\n<p class=\"number\"><b>{}</b>{}</p>\n</footer>\n",
                       escaped(facts), escaped(c.number), mark);
}

std::string article_of(const card& c, const style& look, const std::string& id) {
    auto result = fmt::format("<article id=\"{0}\" lang=\"{1}\" aria-labelledby=\"{0}-title\">\n",
                              id, escaped(c.language)) +
                  head_of(c, id);
    for (const auto* list : {&look.top, &look.bottom})
        for (const auto which : *list) result += block_of(which, c, look, id);
    return result + foot_of(c) + "</article>\n";
}

std::string id_of(std::size_t index) { return fmt::format("card-{}", index + 1); }

/// Ways to the cards, where there are several.
std::string contents_of(const std::vector<card>& cards, const std::string& title) {
    auto result = "<header class=\"document\">\n<h1>" + escaped(title) + "</h1>\n";
    if (cards.size() > 1) {
        result += "<nav aria-label=\"" + escaped(title) + "\"><ul>\n";
        for (std::size_t i = 0; i < cards.size(); ++i)
            result +=
                fmt::format("<li><a href=\"#{}\">{}</a></li>\n", id_of(i), escaped(cards[i].title));
        result += "</ul></nav>\n";
    }
    return result + "</header>\n";
}

} // namespace

std::string document_of(const std::vector<card>& cards, const std::string& title, const style& look,
                        const styles::paper& sheet) {
    const auto language = cards.empty() ? "en" : cards.front().language;
    auto result = fmt::format("<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta "
                              "charset=\"utf-8\">\n<meta name=\"viewport\" "
                              "content=\"width=device-width, initial-scale=1\">\n"
                              "<title>{}</title>\n<style>\n{}{}</style>\n</head>\n<body>\n",
                              escaped(language), escaped(title), measures_of(look, sheet),
                              built_in_sheets().front().second) +
                  contents_of(cards, title) + "<main>\n";
    for (std::size_t i = 0; i < cards.size(); ++i) result += article_of(cards[i], look, id_of(i));
    return result + "</main>\n</body>\n</html>\n";
}

} // namespace benchcard::html
