#include "compiler/editor/completion.hpp"

#include "compiler/cards/figures.hpp"
#include "compiler/diagnostics/kinds.hpp"
#include "compiler/editor/hover.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/recipe/weighing.hpp"
#include "compiler/safety/allergen_lists.hpp"
#include "compiler/safety/safety.hpp"
#include "grammar/nearest.hpp"
#include "grammar/parse.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <set>

namespace benchcard::editor {

namespace {

/// The protocol's numbers for what an item is.
enum item_kind : int {
    class_ = 7,
    property = 10,
    unit = 11,
    value = 12,
    keyword = 14,
    file = 17,
    variable = 6
};

constexpr std::size_t most_names = 300;

bool is_blank(char c) { return c == ' ' || c == '\t'; }

/// Whether a word of a name begins as what was typed does.
bool begins_a_word(std::string_view name, std::string_view typed) {
    if (typed.empty()) return true;
    const auto all = grammar::folded_case(name), wanted = grammar::folded_case(typed);
    for (auto at = all.find(wanted); at != all.npos; at = all.find(wanted, at + 1))
        if (at == 0 || !std::isalnum(static_cast<unsigned char>(all[at - 1]))) return true;
    return false;
}

std::string without_country(const std::string& name) {
    return name.ends_with(" (uk)") || name.ends_with(" (us)") ? name.substr(0, name.size() - 5)
                                                              : name;
}

class completer {
  public:
    completer(const look& l, position p, const recipes_in_folder& recipes_in)
        : look_(l), at_(l.places_of(0)), offset_(l.offset_of(p)), recipes_in_(recipes_in) {
        const auto text = l.text().text();
        const auto line = text.rfind('\n', offset_ == 0 ? 0 : offset_ - 1);
        const auto begin = offset_ == 0 || line == text.npos ? 0 : line + 1;
        before_ = text.substr(begin, offset_ - begin);
        block_ = &block_at(l.tree(), static_cast<std::uint32_t>(begin));
    }

    json run() {
        const auto first = before_.find_first_not_of(" \t");
        const auto said = first == before_.npos ? std::string_view() : before_.substr(first);
        const auto bracket = before_.rfind('[');
        const auto colon = said.find(':');
        const bool is_step = said.starts_with('-') || (first != 0 && first != before_.npos);
        if (is_step && bracket != before_.npos && before_.find(']', bracket) == before_.npos)
            in_bracket(before_.substr(bracket + 1));
        else if (said.starts_with('-') || said.starts_with('#'))
            ;
        else if (std::all_of(said.begin(), said.end(), is_of_setting))
            settings(said);
        else if (const auto* entry = colon == said.npos ? nullptr : setting_before(said, colon))
            values(*entry, said.substr(colon + 1));
        else
            ingredients();
        return {{"isIncomplete", is_cut_}, {"items", std::move(items_)}};
    }

  private:
    const look& look_;
    places at_;
    std::uint32_t offset_;
    const recipes_in_folder& recipes_in_;
    std::string_view before_; ///< the line up to the cursor
    const grammar::block* block_;
    json items_ = json::array();
    bool is_cut_ = false, is_any_name_ = false;

    static bool is_of_setting(char c) {
        return std::isalpha(static_cast<unsigned char>(c)) || c == '-' || c == '_';
    }

    static const grammar::setting_entry* setting_before(std::string_view said, std::size_t colon) {
        auto word = said.substr(0, colon);
        while (!word.empty() && is_blank(word.back())) word.remove_suffix(1);
        return grammar::setting_named(word);
    }

    /// An item that takes the place of what was typed of it.
    json& add(std::string_view typed, const std::string& label, int kind,
              const std::string& detail = "", const std::string& inserted = "") {
        json item = {{"label", label},
                     {"kind", kind},
                     {"filterText", label},
                     {"textEdit", text_edit(at_, offset_ - typed.size(), offset_,
                                            inserted.empty() ? label : inserted)}};
        if (!detail.empty()) item["detail"] = detail;
        items_.push_back(std::move(item));
        return items_.back();
    }

    void settings(std::string_view typed) {
        const bool has_recipe =
            std::any_of(look_.tree().blocks.begin(), look_.tree().blocks.end(),
                        [](const auto& b) { return b.is == grammar::block::sort::recipe; });
        for (const auto& entry : grammar::all_settings()) {
            const auto opened = grammar::opened_by(entry.name);
            const bool opens = opened != grammar::block::sort::before;
            const bool fits = opens ? (opened == grammar::block::sort::recipe) != has_recipe
                                    : (entry.places & grammar::place_of(block_->is)) != 0;
            if (!fits || !begins_a_word(entry.word, typed)) continue;
            const std::string word(entry.word);
            auto& item = add(typed, word + ":", opens ? class_ : property,
                             std::string(entry.example), word + ": ");
            item["documentation"] = shown_text(documentation_of(entry), look_.shows);
        }
    }

    template <typename Words> void words(std::string_view typed, const Words& all, int kind) {
        for (const auto& word : all)
            if (begins_a_word(word, typed)) add(typed, std::string(word), kind);
    }

    void values(const grammar::setting_entry& entry, std::string_view typed) {
        using grammar::key;
        if (const auto comma = typed.rfind(','); comma != typed.npos)
            typed = typed.substr(comma + 1);
        while (!typed.empty() && is_blank(typed.front())) typed.remove_prefix(1);
        std::vector<std::string> all;
        switch (entry.name) {
        case key::measures:
            for (const auto s : measures::all_systems) all.emplace_back(measures::name_of(s));
            break;
        case key::labels:
            all = {"eu", "us", "both"};
            break;
        case key::whole_batch:
        case key::whole:
            all = {"yes", "no"};
            break;
        case key::contains:
            all = {"none", "check the packet"};
            [[fallthrough]];
        case key::may_contain:
            for (const auto& a : safety::all_allergens()) all.emplace_back(a.name);
            break;
        case key::raw:
            all = safety::raw_words();
            break;
        case key::require:
            all = {"steps", "weights", "allergens for every ingredient"};
            for (const auto& e : grammar::all_settings())
                if (e.places & grammar::in_block) all.emplace_back(e.word);
            break;
        case key::accept:
            for (const auto& kind : diagnostics::all_kinds())
                if (kind.level != grammar::severity::error) all.emplace_back(kind.name);
            break;
        case key::station:
            all = stations();
            break;
        case key::percent:
            for (const auto* name : names_of_block()) all.push_back(name->text);
            break;
        case key::use:
            return used_files(typed);
        default:
            return;
        }
        words(typed, all, value);
    }

    std::vector<std::string> stations() const {
        std::set<std::string> all;
        for (const auto& tree : look_.of.files.trees)
            for (const auto& b : tree.blocks)
                for (const auto& i : b.items)
                    if (const auto* s = std::get_if<grammar::setting>(&i.value);
                        s && s->name == grammar::key::station)
                        all.insert(std::get<grammar::words>(s->value).text);
        return {all.begin(), all.end()};
    }

    void used_files(std::string_view typed) {
        const std::filesystem::path own = look_.text().name();
        for (const auto& path : recipes_in_(own.parent_path().string())) {
            const auto relative =
                std::filesystem::path(path).lexically_relative(own.parent_path()).string();
            if (path != own && begins_a_word(relative, typed)) add(typed, relative, file);
        }
    }

    std::vector<const grammar::words*> names_of_block() const {
        std::vector<const grammar::words*> result;
        for (const auto& i : block_->items)
            if (const auto* l = std::get_if<grammar::ingredient_line>(&i.value))
                result.push_back(&l->names.front());
        return result;
    }

    /// The lines of the block by their names and, where it singles one out, by the last word.
    void in_bracket(std::string_view typed) {
        if (const auto colon = typed.find(':'); colon != typed.npos) {
            auto part = typed.substr(colon + 1);
            while (!part.empty() && is_blank(part.front())) part.remove_prefix(1);
            return words(part, std::vector<std::string>{"half", "rest", "1/3", "1/4"}, keyword);
        }
        const auto names = names_of_block();
        std::multiset<std::string> last_words;
        const auto last_of = [](const std::string& name) {
            return name.substr(name.rfind(' ') == name.npos ? 0 : name.rfind(' ') + 1);
        };
        for (const auto* name : names) last_words.insert(last_of(name->text));
        for (const auto* name : names) {
            const auto line = look_.text().at(name->where.begin).line;
            const auto begin = static_cast<std::uint32_t>(look_.text().line_start(line));
            auto detail = std::string(look_.text().text_of({0, begin, name->where.end}));
            const auto last = last_of(name->text);
            if (last != name->text && last_words.count(last) == 1 && begins_a_word(last, typed))
                add(typed, last, variable, detail);
            if (begins_a_word(name->text, typed)) add(typed, name->text, variable, detail);
        }
        words(typed, std::vector<std::string>{"rest", "overnight"}, keyword);
    }

    void ingredients() {
        // What is typed of the name, whatever it is, is read with one letter more.
        const grammar::source text(0, "", std::string(before_) + "x");
        const auto read = grammar::parse_ingredient_line(text);
        if (!read.line || !read.line->preparations.empty()) return;
        const auto begin = read.line->names.back().where.begin;
        const auto typed = before_.substr(std::min<std::size_t>(begin, before_.size()));
        const auto& amounts = read.line->amounts;
        const bool may_have_unit = amounts.size() == 1 && !amounts.front().in &&
                                   read.line->names.size() == 1 &&
                                   amounts.front().quantity.is == grammar::amount::sort::number;
        if (may_have_unit)
            for (const auto u : grammar::all_units)
                if (begins_a_word(grammar::short_name(u), typed))
                    add(typed, unit_word(u, amounts.front()), unit);
        // Words before the name may be no part of it: `1 case Sw`, `1 cup sifted pl`.
        const auto weighed = read.line->equals.empty() ? amounts : read.line->equals;
        for (auto name = typed;;) {
            components(name);
            from_tables(name, weighed);
            const auto next = name.find(' ');
            if (is_any_name_ || next == name.npos) return;
            name.remove_prefix(std::min(name.find_first_not_of(' ', next), name.size()));
        }
    }

    static std::string unit_word(grammar::unit u, const grammar::measure& amount) {
        using grammar::unit;
        const std::string name(grammar::short_name(u));
        const bool has_plural = u == unit::cup || u == unit::pint || u == unit::quart ||
                                u == unit::gallon || u == unit::gill || u == unit::stick ||
                                u == unit::drop || u == unit::dash || u == unit::pinch ||
                                u == unit::dessertspoon;
        return has_plural && amount.quantity.high > 1 ? ingredients::plural(name) : name;
    }

    void components(std::string_view typed) {
        std::set<std::string> seen;
        for (const auto& tree : look_.of.files.trees)
            for (const auto& b : tree.blocks) {
                if (b.is != grammar::block::sort::component || &b == block_) continue;
                if (!b.title.text.empty() && begins_a_word(b.title.text, typed) &&
                    seen.insert(b.title.text).second)
                    add(typed, b.title.text, class_, "component"), is_any_name_ = true;
            }
    }

    void from_tables(std::string_view typed, const std::vector<grammar::measure>& amounts) {
        std::set<std::string> seen;
        const auto& own = look_.of.meaning.own;
        for (const ingredients::table* table :
             {static_cast<const ingredients::table*>(own.get()), &ingredients::built_in_table()}) {
            if (!table) continue;
            for (const auto* e : table->entries()) {
                auto names = e->also;
                names.insert(names.begin(), e->name);
                for (const auto& written : names) {
                    const auto name = without_country(written);
                    if (!begins_a_word(name, typed) || !seen.insert(name).second) continue;
                    if (seen.size() > most_names) {
                        is_cut_ = true;
                        return;
                    }
                    add(typed, name, variable, grams_of(*e, amounts));
                    is_any_name_ = true;
                }
            }
        }
    }

    /// What the amount on this line weighs of an ingredient; empty where that is not known.
    std::string grams_of(const ingredients::entry& e,
                         const std::vector<grammar::measure>& amounts) const {
        if (amounts.front().quantity.is != grammar::amount::sort::number) return "";
        const auto w = recipe::weigh(amounts, &e, "", look_.of.meaning.measures, e.name);
        if (!w.grams || w.problem) return "";
        const auto used = cards::said_grams(w.grams->used);
        const auto low = cards::said_grams(w.grams->low), high = cards::said_grams(w.grams->high);
        return low == high ? used : fmt::format("{} ({} to {})", used, low, high);
    }
};

} // namespace

json completion(const look& l, position p, const recipes_in_folder& recipes_in) {
    return completer(l, p, recipes_in).run();
}

} // namespace benchcard::editor
