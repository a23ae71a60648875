// dump_cards FOLDER RECIPE...: writes what the cards of some recipes are made of, for programs that
// print the same by other means: FOLDER/cards.json, their words; FOLDER/pages.txt, where everything
// stands; FOLDER/N.ttf, the fonts with the characters that are used.

#include "compiler/cards/deal.hpp"
#include "compiler/commands/compile.hpp"
#include "compiler/commands/files.hpp"
#include "styles/layout/lay_out.hpp"
#include "styles/layout/utf8.hpp"
#include "styles/pdf/fonts.hpp"

#include <cstdio>
#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <set>

using namespace benchcard;
using nlohmann::json;

namespace {

std::string plain(const styles::paragraph& p) {
    std::string text;
    for (const auto& run : p) text += run.text;
    return text;
}

json words_of(const styles::card& c) {
    json rows = json::array(), steps = json::array();
    for (const auto& r : c.weigh_out)
        rows.push_back({r.amount + " " + r.unit, r.name, r.preparation});
    for (const auto& s : c.method) steps.push_back(plain(s));
    return {{"title", c.title},
            {"recipe", c.recipe},
            {"yield", c.yield},
            {"rows", rows},
            {"steps", steps},
            {"foot", {plain(c.allergens), plain(c.keeping), c.revision, c.footnote, c.number}}};
}

/// A thing on a page as a line of text: its kind, its places in points from the foot of the page,
/// and its ink from 0 to 1.
struct shape_line {
    double height;

    static double grey(styles::colour c) { return (c.red + c.green + c.blue) / 765.0; }
    std::string operator()(const layout::line& l) const {
        return fmt::format("line {} {} {} {} {} {}\n", l.x1, height - l.y1, l.x2, height - l.y2,
                           l.width, grey(l.ink));
    }
    std::string operator()(const layout::rectangle& r) const {
        return fmt::format("box {} {} {} {} {} {}\n", r.x, height - r.y - r.height, r.width,
                           r.height, r.line_width, grey(r.ink));
    }
    std::string operator()(const layout::polygon& p) const {
        std::string points;
        for (const auto& at : p.points) points += fmt::format(" {} {}", at.x, height - at.y);
        return fmt::format("polygon {} {} {}{}\n", p.line_width, grey(p.ink), p.points.size(),
                           points);
    }
};

std::string things_on(const layout::page& p, std::vector<std::set<char16_t>>& used) {
    auto text = fmt::format("page {} {}\n", p.width, p.height);
    for (const auto& s : p.shapes) text += std::visit(shape_line{p.height}, s);
    for (const auto& run : p.text) {
        text += fmt::format("text {} {} {} {} {} {}\n", static_cast<int>(run.face), run.size, run.x,
                            p.height - run.y, shape_line::grey(run.ink), run.text);
        for (const auto code : layout::characters_of(run.text))
            used[run.face].insert(static_cast<char16_t>(code));
    }
    return text;
}

void write(const std::string& path, const std::string& bytes) {
    if (const auto failure = commands::write_file(path, bytes)) throw std::runtime_error(*failure);
}

} // namespace

int main(int argc, char** argv) {
    const std::string folder = argv[1];
    grammar::diagnostics messages;
    const auto fonts = pdf::load_fonts(messages);
    const auto look = styles::built_in_style("station");
    if (!look) return 2;
    json cards = json::array();
    std::string pages;
    std::vector<std::set<char16_t>> used(fonts.faces.size());
    for (int i = 2; i < argc; ++i) {
        const auto c = commands::compile(argv[i], measures::system::unstated);
        for (const auto& card : cards::deal(batch::scale(c->meaning, 1))) {
            cards.push_back(words_of(card));
            for (const auto& p : layout::lay_out(card, *look, look->sheet, fonts.metrics))
                pages += things_on(p, used);
        }
    }
    write(folder + "/cards.json", cards.dump());
    write(folder + "/pages.txt", pages);
    for (std::size_t i = 0; i < used.size(); ++i)
        if (!used[i].empty())
            write(fmt::format("{}/{}.ttf", folder, i),
                  pdf::cut_to(std::get<pdf::font_program>(fonts.faces[i]), used[i]));
}
