#include "compiler/editor/names.hpp"

#include "compiler/ingredients/names.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <map>

namespace benchcard::editor {

namespace {

using recipe::component;
using recipe::line;

/// The words of a line's name without those that only describe it: `flour` of `sifted flour`.
grammar::span own_words(const grammar::words& name, const std::string& description,
                        const grammar::source& text) {
    const auto all = text.text_of(name.where);
    const auto wanted = ingredients::compared_words(description).size();
    std::size_t begin = 0;
    while (begin < all.size() &&
           ingredients::compared_words(all.substr(0, begin)).size() < wanted) {
        begin = all.find_first_of(" \t-", begin);
        begin = begin == all.npos ? all.size() : all.find_first_not_of(" \t-", begin);
        begin = std::min(begin, all.size());
    }
    if (begin >= all.size()) begin = 0;
    return {name.where.file, name.where.begin + static_cast<std::uint32_t>(begin), name.where.end};
}

class finder {
  public:
    explicit finder(const commands::compiled& of) : of_(of), text_(of.files.sources.front()) {}

    std::vector<mention> run() {
        add_titles();
        for (const auto& c : of_.meaning.components)
            if (c.written && c.written->where.file == 0) add_component(c);
        std::sort(result_.begin(), result_.end(),
                  [](const auto& a, const auto& b) { return a.where.begin < b.where.begin; });
        return std::move(result_);
    }

  private:
    const commands::compiled& of_;
    const grammar::source& text_;
    std::vector<mention> result_;

    thing component_thing(const grammar::block& b) const {
        return {true, ingredients::compared_name(b.title.text),
                of_.files.sources.at(b.title.where.file).name(), b.title.where.begin};
    }

    void add_titles() {
        for (const auto& b : of_.files.trees.front().blocks) {
            using sort = grammar::block::sort;
            if (b.title.text.empty() || b.is == sort::before || b.is == sort::recipe) continue;
            mention m{b.title.where, component_thing(b), true};
            if (b.is == sort::ingredient) m.of.is_component = false;
            m.defined_at = b.title.where;
            result_.push_back(std::move(m));
        }
    }

    /// The block that defines an ingredient; null for one of the program's table.
    const grammar::block* definition_of(const ingredients::entry& what) const {
        if (what.built_in || what.where.file >= of_.files.trees.size()) return nullptr;
        for (const auto& b : of_.files.trees[what.where.file].blocks)
            if (b.is == grammar::block::sort::ingredient && b.where.begin <= what.where.begin &&
                what.where.begin <= b.where.end)
                return &b;
        return nullptr;
    }

    mention as_ingredient(grammar::span where, const ingredients::entry* what) const {
        mention m{where, {false, ingredients::compared_name(text_.text_of(where)), "", 0}};
        if (const auto* b = what ? definition_of(*what) : nullptr) {
            m.is_other_name = m.of.name != ingredients::compared_name(what->name);
            m.of = component_thing(*b);
            m.of.is_component = false;
            m.defined_at = b->title.where;
        }
        return m;
    }

    mention as_component(grammar::span where, std::size_t index) const {
        const auto& b = *of_.meaning.components.at(index).written;
        mention m{where, component_thing(b)};
        m.defined_at = b.title.where;
        return m;
    }

    void add_component(const component& c) {
        std::vector<mention> lines(c.lines.size());
        for (std::size_t i = 0; i < c.lines.size(); ++i)
            if (c.lines[i].written) result_.push_back(lines[i] = of_line(c, c.lines[i]));
        for (const auto& l : c.lines)
            if (l.written) add_alternatives(l);
        add_percent(c, lines);
        add_brackets(c, lines);
    }

    mention of_line(const component& c, const line& l) const {
        const auto where = own_words(l.written->names.front(), l.description, text_);
        auto m = l.component ? as_component(where, *l.component) : as_ingredient(where, l.what);
        m.line = &l, m.inside = &c;
        return m;
    }

    void add_alternatives(const line& l) {
        const bool all_are_known = l.others.size() + 1 == l.written->names.size();
        for (std::size_t i = 1; i < l.written->names.size(); ++i)
            result_.push_back(as_ingredient(l.written->names[i].where,
                                            all_are_known ? l.others[i - 1] : nullptr));
    }

    void add_percent(const component& c, const std::vector<mention>& lines) {
        if (!c.percent || c.percent->where.file != 0) return;
        const auto said = ingredients::compared_name(c.percent->text);
        for (const auto& l : lines)
            if (l.line && ingredients::compared_name(text_.text_of(l.where)) == said) {
                auto m = l;
                m.where = c.percent->where;
                result_.push_back(std::move(m));
                return;
            }
    }

    /// A step as it was written and as it is meant have the same texts in the same order; of what
    /// stands between two, brackets that mean nothing are left out.
    void add_brackets(const component& c, const std::vector<mention>& lines) {
        for (const auto& i : c.written->items) {
            const auto* written = std::get_if<grammar::step>(&i.value);
            if (!written) continue;
            const auto meant = std::find_if(c.steps.begin(), c.steps.end(), [&](const auto& s) {
                return s.where == written->where;
            });
            if (meant != c.steps.end()) add_brackets(lines, *written, *meant);
        }
    }

    void add_brackets(const std::vector<mention>& lines, const grammar::step& written,
                      const recipe::step& meant) {
        auto part = meant.parts.begin();
        for (const auto& w : written.parts) {
            if (part == meant.parts.end()) return;
            const auto* b = std::get_if<grammar::bracket>(&w);
            const auto* use = std::get_if<recipe::use>(&*part);
            if (!b || use) ++part;
            if (!b || !use) continue;
            const auto* named = std::get_if<grammar::reference>(&b->holds);
            const auto* means = std::get_if<recipe::line_use>(use);
            if (!named || !means || means->line >= lines.size() || !lines[means->line].line)
                continue;
            auto m = lines[means->line];
            m.where = named->name.where;
            m.is_by_preparation = !shares_a_word(m);
            result_.push_back(std::move(m));
        }
    }

    /// Whether a bracket goes by words of its line's name, and not only of its preparation.
    bool shares_a_word(const mention& bracket) const {
        const auto of_name = ingredients::compared_words(bracket.line->name);
        for (const auto& word : ingredients::compared_words(text_.text_of(bracket.where)))
            if (std::find(of_name.begin(), of_name.end(), word) != of_name.end()) return true;
        return false;
    }
};

/// An ingredient that no file here defines goes by its name in each file, and not beyond.
bool is_of_one_file(const thing& t) { return t.path.empty(); }

void each_mention(const look& l, const thing& of, const every_look& every,
                  const std::function<void(const look&, const mention&)>& do_it) {
    const auto in = [&](const look& other) {
        for (const auto& m : mentions_in(other.of))
            if (m.of == of) do_it(other, m);
    };
    in(l);
    if (is_of_one_file(of)) return;
    every([&](const look& other) {
        if (other.text().name() != l.text().name()) in(other);
    });
}

} // namespace

std::vector<mention> mentions_in(const commands::compiled& of) { return finder(of).run(); }

const mention* mention_at(const std::vector<mention>& all, std::uint32_t offset) {
    for (const auto& m : all)
        if (holds(m.where, offset)) return &m;
    return nullptr;
}

json definition(const look& l, position p) {
    const auto offset = l.offset_of(p);
    for (const auto& b : l.tree().blocks)
        for (const auto& i : b.items)
            if (const auto* s = std::get_if<grammar::setting>(&i.value);
                s && s->name == grammar::key::use && holds(s->value_where, offset)) {
                // The file that a `use:` brings in, by the place of its first character.
                const auto used = std::get<grammar::words>(s->value).text;
                const auto path = (std::filesystem::path(l.text().name()).parent_path() / used)
                                      .lexically_normal()
                                      .string();
                for (const auto& source : l.of.files.sources)
                    if (source.name() == path) return l.location({source.file(), 0, 0});
            }
    const auto all = mentions_in(l.of);
    const auto* m = mention_at(all, offset);
    return m && m->defined_at ? l.location(*m->defined_at) : json();
}

json references(const look& l, position p, bool with_title, const every_look& every) {
    const auto all = mentions_in(l.of);
    const auto* m = mention_at(all, l.offset_of(p));
    json result = json::array();
    if (!m) return result;
    each_mention(l, m->of, every, [&](const look& other, const mention& found) {
        if (with_title || !found.is_title) result.push_back(other.location(found.where));
    });
    return result;
}

json highlights(const look& l, position p) {
    const auto all = mentions_in(l.of);
    const auto* m = mention_at(all, l.offset_of(p));
    json result = json::array();
    if (!m) return result;
    const auto at = l.places_of(0);
    for (const auto& other : all)
        if (other.of == m->of)
            result.push_back({{"range", at.range(other.where.begin, other.where.end)},
                              {"kind", other.is_title ? 3 : 2}});
    return result;
}

json prepare_rename(const look& l, position p) {
    const auto all = mentions_in(l.of);
    const auto* m = mention_at(all, l.offset_of(p));
    if (!m || m->is_other_name) return json();
    return {{"range", l.places_of(0).range(m->where.begin, m->where.end)},
            {"placeholder", l.text().text_of(m->where)}};
}

std::string refused_name(const std::string& name, bool is_component) {
    const auto what = is_component ? "a component" : "an ingredient";
    if (name.find_first_not_of(" \t") == name.npos) return fmt::format("{} needs a name", what);
    const auto bad = name.find_first_of(",[]#:=\r\n\\");
    if (bad != name.npos && name[bad] >= ' ')
        return fmt::format("the name of {} cannot have `{}` in it", what, name[bad]);
    if (bad != name.npos) return fmt::format("the name of {} stands on one line", what);
    if (grammar::count_characters(name) > 120) return "this name is longer than a card can hold";
    return "";
}

json rename(const look& l, position p, const std::string& name, const every_look& every) {
    const auto all = mentions_in(l.of);
    const auto* m = mention_at(all, l.offset_of(p));
    if (!m || m->is_other_name) return json();
    std::map<std::string, edits_of> by_uri;
    each_mention(l, m->of, every, [&](const look& other, const mention& found) {
        // Where it goes by another name, that name stays.
        if (found.is_other_name || found.is_by_preparation) return;
        auto& to = by_uri[other.doc.uri];
        to.uri = other.doc.uri, to.version = other.doc.version;
        to.edits.push_back(text_edit(other.places_of(0), found.where.begin, found.where.end, name));
    });
    std::vector<edits_of> edits;
    for (auto& [uri, e] : by_uri) edits.push_back(std::move(e));
    return workspace_edit(edits, l.shows);
}

} // namespace benchcard::editor
