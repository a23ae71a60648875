#include "compiler/ingredients/names.hpp"
#include "compiler/ingredients/table.hpp"
#include "grammar/parse.hpp"
#include "grammar/settings.hpp"

#include <fmt/format.h>
#include <stdexcept>

namespace benchcard::ingredients {

namespace {

using grammar::key;

/// `us extra large` is the state `extra large` in one country.
std::pair<country, std::string> country_and_state(std::string_view words) {
    auto state = compared_name(words);
    for (const auto& [word, where] : {std::pair{"us", country::us}, {"uk", country::uk}}) {
        if (state == word) return {where, ""};
        if (state.starts_with(std::string(word) + " ")) return {where, state.substr(3)};
    }
    return {country::any, state};
}

class definition_reader {
  public:
    definition_reader(const grammar::tree& file, bool poured) : file_(file), poured_(poured) {}

    defined read() {
        for (const auto& block : file_.blocks)
            for (const auto& item : block.items)
                if (const auto* s = std::get_if<grammar::setting>(&item.value);
                    s && s->name == key::measures)
                    if (const auto named =
                            measures::system_named(std::get<grammar::words>(s->value).text))
                        system_ = *named;
        for (const auto& block : file_.blocks)
            if (block.is == grammar::block::sort::ingredient && !block.title.text.empty())
                read_block(block);
        return std::move(result_);
    }

  private:
    const grammar::tree& file_;
    bool poured_;
    measures::system system_ = measures::system::unstated;
    defined result_;

    void read_block(const grammar::block& block) {
        entry e;
        e.name = block.title.text;
        e.where = block.title.where;
        e.poured = poured_;
        std::size_t without_source = 0; // figures above the next `source:`
        for (const auto& item : block.items) {
            const auto* s = std::get_if<grammar::setting>(&item.value);
            if (!s) continue;
            if (s->name == key::source) {
                const auto& source = std::get<grammar::words>(s->value).text;
                for (; without_source < e.figures.size(); ++without_source)
                    e.figures[without_source].source = source;
            } else {
                read_setting(e, *s);
            }
        }
        result_.entries.push_back(std::move(e));
    }

    void read_setting(entry& e, const grammar::setting& s) {
        switch (s.name) {
        case key::also:
            add_names(e.also, s);
            break;
        case key::contains:
            read_contents(e, s);
            break;
        case key::may_contain:
            add_names(e.may_contain, s);
            break;
        case key::raw:
            add_names(e.raw, s);
            break;
        case key::whole:
            e.whole = std::get<bool>(s.value);
            break;
        case key::note:
            e.notes.push_back(std::get<grammar::words>(s.value).text);
            break;
        case key::weighs:
            for (const auto& f : std::get<std::vector<grammar::weight_figure>>(s.value))
                read_figure(e, f);
            break;
        default:
            break;
        }
    }

    static void add_names(std::vector<std::string>& to, const grammar::setting& s) {
        for (const auto& name : std::get<std::vector<grammar::words>>(s.value))
            to.push_back(name.text);
    }

    static void read_contents(entry& e, const grammar::setting& s) {
        e.contents_stated = true;
        for (const auto& name : std::get<std::vector<grammar::words>>(s.value)) {
            if (name.text == "check the packet")
                e.check_packet = true;
            else if (name.text != "none")
                e.contains.push_back(name.text);
        }
    }

    void read_figure(entry& e, const grammar::weight_figure& written) {
        const auto each = measures::weight_of(*written.mass.in);
        if (!each) {
            say(written.mass.where, "a weight is given in g, kg, oz or lb");
            return;
        }
        figure f;
        f.low.value = each->value * written.mass.quantity.low;
        f.high.value = each->value * written.mass.quantity.high;
        std::tie(f.where, f.state) = country_and_state(written.state.text);
        if (const auto* piece = std::get_if<grammar::words>(&written.per))
            f.piece = singular(compared_name(piece->text));
        else if (!measure_into(f, std::get<grammar::measure>(written.per)))
            return;
        e.figures.push_back(std::move(f));
    }

    bool measure_into(figure& f, const grammar::measure& per) {
        if (*per.in == grammar::unit::stick) {
            f.is_stick = true;
            return true;
        }
        if (!measures::is_volume(*per.in)) {
            say(per.where,
                "a weight is given for a measure of volume or for a piece, and this is a weight");
            return false;
        }
        const auto held = measures::volume_of(*per.in, system_);
        if (!held) {
            say(per.where,
                fmt::format(
                    "whose {} this is must be said: put `measures:` at the head of the file",
                    grammar::short_name(*per.in)));
            return false;
        }
        f.volume = measures::millilitres{held->value * per.quantity.low};
        return true;
    }

    void say(grammar::span where, std::string message) {
        result_.messages.push_back(
            {"unusable-figure", grammar::severity::error, where, std::move(message), {}, {}});
    }
};

} // namespace

defined definitions_in(const grammar::tree& file, bool poured) {
    return definition_reader(file, poured).read();
}

/// A block that does not read without a message is a fault of the build, not of the user.
entry read_built_in(const indexed_block& block) {
    const auto& [name, text] = built_in_table_files().at(block.file);
    const grammar::source source(
        0, std::string(name),
        fmt::format("recipe: {}\n{}\n{}", name, block.measures.in(text), block.whole.in(text)));
    const auto file = grammar::parse(source);
    auto found = definitions_in(file.tree, name == "liquids.recipe");
    if (!file.messages.empty() || !found.messages.empty() || found.entries.size() != 1)
        throw std::logic_error(fmt::format("the built-in table {} has a mistake", name));
    auto& result = found.entries.front();
    result.built_in = true;
    result.family = name.substr(0, name.find('.'));
    result.where = {0, block.whole.begin, block.whole.end};
    return std::move(result);
}

const table& built_in_table() {
    // Lives as long as the process: other tables stand on it.
    static const table* const made_once = new table(index_of_built_in());
    return *made_once;
}

} // namespace benchcard::ingredients
