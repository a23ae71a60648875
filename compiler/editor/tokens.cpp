#include "compiler/editor/names.hpp"
#include "compiler/editor/outline.hpp"
#include "grammar/settings.hpp"

#include <algorithm>
#include <tuple>

namespace benchcard::editor {

namespace {

enum token : int {
    setting_word,
    title,
    component_name,
    ingredient_name,
    number,
    measure,
    setting_value,
    remark
};

struct marked {
    grammar::span where;
    token kind;
};

/// The parts of a recipe that an editor colours, none in another.
class marker {
  public:
    explicit marker(const look& l) : look_(l), text_(l.text()) {}

    std::vector<marked> run() {
        for (const auto& m : mentions_in(look_.of))
            if (!m.is_title) add(m.where, m.of.is_component ? component_name : ingredient_name);
        for (const auto& b : look_.tree().blocks) {
            add_opening(b);
            for (const auto& i : b.items) add_item(i);
        }
        std::stable_sort(result_.begin(), result_.end(), [](const auto& a, const auto& b) {
            return a.where.begin < b.where.begin;
        });
        std::uint32_t free_from = 0;
        std::erase_if(result_, [&](const marked& m) {
            if (m.where.begin < free_from || m.where.end <= m.where.begin) return true;
            free_from = m.where.end;
            return false;
        });
        return std::move(result_);
    }

  private:
    const look& look_;
    const grammar::source& text_;
    std::vector<marked> result_;

    void add(grammar::span where, token kind) {
        if (where.file == 0) result_.push_back({where, kind});
    }

    void add_opening(const grammar::block& b) {
        if (b.is == grammar::block::sort::before) return;
        const auto written = text_.text_of(b.where);
        const auto first = std::min(written.find_first_not_of(" \t"), written.size());
        const auto end = std::min(written.find_first_of(": \t", first), written.size());
        add({0, b.where.begin + static_cast<std::uint32_t>(first),
             b.where.begin + static_cast<std::uint32_t>(end)},
            setting_word);
        add(b.title.where, title);
    }

    void add_item(const grammar::item& i) {
        for (const auto& c : i.comments) add(c.where, remark);
        if (const auto* c = std::get_if<grammar::comment>(&i.value)) add(c->where, remark);
        if (const auto* s = std::get_if<grammar::setting>(&i.value)) {
            add(s->key_where, setting_word);
            if (grammar::setting_of(s->name).form != grammar::value_form::prose)
                add(s->value_where, setting_value);
        }
        if (const auto* l = std::get_if<grammar::ingredient_line>(&i.value)) {
            for (const auto& m : l->amounts) add_measure(m);
            for (const auto& m : l->equals) add_measure(m);
        }
        if (const auto* s = std::get_if<grammar::step>(&i.value))
            for (const auto& part : s->parts)
                if (const auto* b = std::get_if<grammar::bracket>(&part)) add_bracket(*b);
    }

    void add_measure(const grammar::measure& m) {
        const auto amount = m.quantity.where;
        add(amount, number);
        const auto behind = text_.text_of({0, amount.end, m.where.end});
        const auto blanks = behind.find_first_not_of(" \t");
        if (blanks != behind.npos)
            add({0, amount.end + static_cast<std::uint32_t>(blanks), m.where.end}, measure);
    }

    void add_bracket(const grammar::bracket& b) {
        if (const auto* r = std::get_if<grammar::reference>(&b.holds)) {
            add(r->name.where, ingredient_name); // or what the mention there has made of it
            if (r->of) add(r->of->where, number);
        } else {
            add({0, b.where.begin + 1, b.where.end - 1}, number);
        }
    }
};

} // namespace

const std::vector<std::string>& token_kinds() {
    static const std::vector<std::string> kinds = {"keyword", "class", "type",   "variable",
                                                   "number",  "macro", "string", "comment"};
    return kinds;
}

json tokens(const look& l) {
    const auto at = l.places_of(0);
    const auto text = l.text().text();
    json data = json::array();
    position last;
    std::size_t last_offset = 0;
    // A place in the line of the one before is counted from there: a long line holds thousands.
    const auto further = [&](const position& from, std::size_t from_offset, std::size_t offset) {
        const auto between = text.substr(from_offset, offset - from_offset);
        if (from_offset == 0 || between.find_first_of("\r\n") != between.npos) return at.at(offset);
        return position{from.line, from.character + units_in(between, l.shows.counted)};
    };
    for (const auto& m : marker(l).run()) {
        const auto begin = further(last, last_offset, m.where.begin);
        const auto end = further(begin, m.where.begin, m.where.end);
        last_offset = m.where.begin;
        if (begin.line != end.line || begin == end) {
            last_offset = 0;
            continue;
        }
        const bool is_same = begin.line == last.line;
        for (const auto n :
             {begin.line - last.line, begin.character - (is_same ? last.character : 0),
              end.character - begin.character, static_cast<std::size_t>(m.kind), std::size_t{0}})
            data.push_back(n);
        last = begin;
    }
    return {{"data", std::move(data)}};
}

} // namespace benchcard::editor
