#include "compiler/recipe/resolve.hpp"

#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/scope.hpp"
#include "compiler/recipe/weighing.hpp"
#include "grammar/nearest.hpp"
#include "grammar/settings.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace benchcard::recipe {

namespace {

using grammar::block;
using grammar::key;
using measures::system;

template <typename Visit> void each_setting(const block& b, Visit visit) {
    for (const auto& item : b.items)
        if (const auto* s = std::get_if<grammar::setting>(&item.value)) visit(*s);
}

bool has_lines(const block& b) {
    return std::any_of(b.items.begin(), b.items.end(), [](const auto& i) {
        return std::holds_alternative<grammar::ingredient_line>(i.value) ||
               std::holds_alternative<grammar::step>(i.value);
    });
}

/// `glass` and `glasses` are `glasses`; of several words the last is the piece.
std::string many(const std::string& written) {
    const auto space = written.rfind(' ');
    const auto first = space == written.npos ? 0 : space + 1;
    return written.substr(0, first) +
           ingredients::plural(ingredients::singular(written.substr(first)));
}

/// A limit by weight; one by volume is not compared with a mix.
std::optional<exact> grams_of(const grammar::measure& m) {
    const auto unit = m.in ? measures::weight_of(*m.in) : std::nullopt;
    return unit ? std::optional<exact>(spread_of(m.quantity).used * unit->value) : std::nullopt;
}

/// Which version of its file a component is of.
struct version {
    std::string revision, date;
};
version version_of(const grammar::tree& file) {
    version result;
    for (const auto& b : file.blocks)
        each_setting(b, [&](const grammar::setting& s) {
            if (s.name == key::revision) result.revision = std::get<grammar::words>(s.value).text;
            if (s.name == key::date) result.date = std::get<grammar::words>(s.value).text;
        });
    return result;
}

/// A component as its settings state it; lines and steps come later.
component stated_component(const block& b) {
    component c;
    c.title = b.title.text;
    c.written = &b;
    c.is_assembly = b.is == block::sort::assembly;
    each_setting(b, [&](const grammar::setting& s) {
        switch (s.name) {
        case key::station:
            if (c.station.empty()) c.station = std::get<grammar::words>(s.value).text;
            break;
        case key::makes:
            c.makes = std::get<grammar::yield>(s.value), c.makes_where = s.value_where;
            break;
        case key::per:
            c.per = std::get<grammar::yield>(s.value), c.per_where = s.value_where;
            break;
        case key::tray:
            c.tray = std::get<grammar::yield>(s.value);
            break;
        case key::tin:
            c.tin = std::get<grammar::tin>(s.value);
            break;
        case key::whole_batch:
            c.whole_batch = std::get<bool>(s.value);
            break;
        case key::at_most:
            c.at_most = grams_of(std::get<grammar::measure>(s.value));
            break;
        case key::at_least:
            c.at_least = grams_of(std::get<grammar::measure>(s.value));
            break;
        case key::accept:
            c.accepts.push_back(accepted_by(s));
            break;
        case key::percent:
            c.percent = std::get<grammar::words>(s.value);
            break;
        case key::note:
            c.notes.push_back(std::get<grammar::words>(s.value).text);
            break;
        case key::caution:
            c.cautions.push_back(std::get<grammar::words>(s.value).text);
            break;
        case key::loss:
            for (const auto& l : std::get<std::vector<grammar::loss>>(s.value))
                c.losses.push_back(l);
            break;
        case key::keeps:
            for (const auto& k : std::get<std::vector<grammar::keeping>>(s.value))
                c.keeps.push_back(k);
            break;
        default:
            break;
        }
    });
    return c;
}

/// Whether a line that could not be read may change what its block weighs or makes. A step does
/// not, and of the settings only a few do.
bool may_bear_on_weight(std::string_view line) {
    const auto first = line.find_first_not_of(" \t");
    if (first == line.npos) return false;
    line.remove_prefix(first);
    const auto digits = line.find_first_not_of("0123456789");
    const bool is_numbered = digits != 0 && digits != line.npos &&
                             (line[digits] == '.' || line[digits] == ')') &&
                             digits + 1 < line.size() && line[digits + 1] == ' ';
    if (is_numbered || line.front() == '-' || line.front() == '*' || line.starts_with("•"))
        return false;
    const auto* setting = grammar::setting_named(line.substr(0, line.find(':')));
    if (!setting || line.find(':') == line.npos) return true;
    return setting->name == key::makes || setting->name == key::loss || setting->name == key::per;
}

std::vector<std::string> unread_in(const block& b, const grammar::source& file) {
    std::vector<std::string> result;
    for (const auto& item : b.items)
        if (const auto* u = std::get_if<grammar::unread>(&item.value))
            result.emplace_back(file.text_of(u->where));
    return result;
}

class resolver {
  public:
    resolver(const book& files, const ingredients::table& table, system override)
        : files_(files), table_(table), override_(override) {
        result_.meaning.own = std::make_unique<ingredients::table>(&table);
    }

    resolved run() {
        read_definitions();
        read_heads();
        find_components();
        if (blocks_.empty()) return std::move(result_);
        read_lines_and_steps();
        if (order_by_use()) {
            settle_product();
            for (auto& c : result_.meaning.components) settle_times(c);
            work_out_yields(result_.meaning, result_.messages);
        }
        return std::move(result_);
    }

  private:
    struct found_block {
        const block* written;
        std::uint32_t file;
    };

    const book& files_;
    const ingredients::table& table_;
    system override_;
    resolved result_;
    std::vector<system> systems_;     ///< of each file
    std::vector<found_block> blocks_; ///< that are made, of all files; the recipe's own first
    std::map<std::string, std::size_t> by_name_; ///< the blocks that have a name of their own
    std::vector<component> made_;
    std::vector<grammar::diagnostics> messages_; ///< of each block
    std::size_t own_blocks_ = 0;
    bool head_unread_ = false; ///< a line of the head that may say what the product makes

    void say(grammar::diagnostic message) { result_.messages.push_back(std::move(message)); }

    /// Definitions of used files first, so that the recipe's own come later and count.
    void read_definitions() {
        for (auto i = files_.trees.size(); i-- > 0;) {
            auto found = ingredients::definitions_in(files_.trees[i], false);
            for (auto& m : found.messages) say(std::move(m));
            for (auto& e : found.entries) {
                compare_with_table(e);
                result_.meaning.own->add(std::move(e));
            }
        }
    }

    /// An ingredient that is defined anew is used as defined; where it lies outside what the table
    /// gives for it, that is said.
    void compare_with_table(const ingredients::entry& own) {
        const auto known = table_.find(own.name, ingredients::country::any);
        const bool ends_in_its_name = known.match && !known.description.empty(); // `our flour`
        if (!known.match || ends_in_its_name) return;
        const auto here = density_of(own, "");
        const auto there = density_of(*known.match, "");
        if (!here || !there || (here->used >= there->low && here->used <= there->high)) return;
        const auto per_100_ml = [](const exact& v) { return measures::in_decimals(v * 100, 1); };
        grammar::diagnostic message{
            "differs-from-table",
            grammar::severity::hint,
            own.where,
            fmt::format(
                "{} weighs {} g for 100 ml here, which is outside what the ingredient table gives",
                own.name, per_100_ml(here->used)),
            {},
            {}};
        message.notes.push_back({there->low == there->high
                                     ? fmt::format("the table gives {} g", per_100_ml(there->used))
                                     : fmt::format("the table gives {} to {} g",
                                                   per_100_ml(there->low), per_100_ml(there->high)),
                                 {}});
        if (!there->figure->source.empty())
            message.notes.push_back({"by " + there->figure->source, {}});
        message.notes.push_back({"what is defined here is what counts", {}});
        say(std::move(message));
    }

    void read_heads() {
        for (const auto& tree : files_.trees) {
            system named = system::unstated;
            for (const auto& b : tree.blocks)
                each_setting(b, [&](const grammar::setting& s) {
                    if (s.name == key::measures)
                        named = system_of(std::get<grammar::words>(s.value));
                });
            const bool is_first = systems_.empty();
            const bool overridden =
                override_ != system::unstated && (is_first || named == system::unstated);
            systems_.push_back(overridden ? override_ : named);
        }
        auto& r = result_.meaning;
        r.measures = systems_.front();
        r.scale_step = scale_step();
        r.labels = labels();
        for (const auto& b : files_.trees.front().blocks) {
            if (b.is != block::sort::recipe && b.is != block::sort::before) continue;
            if (b.is == block::sort::recipe) r.title = b.title.text;
            for (const auto& line : unread_in(b, files_.sources.front()))
                head_unread_ = head_unread_ || may_bear_on_weight(line);
            each_setting(b, [&](const grammar::setting& s) { read_head_setting(r, s); });
        }
    }

    /// The step of the recipe's own head, or else of the first file it uses that states one.
    std::optional<exact> scale_step() const {
        for (const auto& tree : files_.trees) {
            std::optional<exact> step;
            for (const auto& b : tree.blocks)
                each_setting(b, [&](const grammar::setting& s) {
                    if (s.name == key::scale_step)
                        step = grams_of(std::get<grammar::measure>(s.value));
                });
            if (step && *step > 0) return step;
        }
        return std::nullopt;
    }

    /// The list of the recipe's own head, or else of the files it uses; where these differ both are
    /// followed, so that nothing is left out.
    std::string labels() const {
        std::string result;
        for (const auto& tree : files_.trees) {
            std::string said;
            for (const auto& b : tree.blocks)
                each_setting(b, [&](const grammar::setting& s) {
                    if (s.name == key::labels) said = std::get<grammar::words>(s.value).text;
                });
            if (!said.empty() && &tree == &files_.trees.front()) return said;
            if (!said.empty()) result = result.empty() || result == said ? said : "both";
        }
        return result;
    }

    static void read_head_setting(recipe& r, const grammar::setting& s) {
        switch (s.name) {
        case key::revision:
            r.revision = std::get<grammar::words>(s.value).text;
            break;
        case key::date:
            r.date = std::get<grammar::words>(s.value).text;
            break;
        case key::by:
            r.by = std::get<grammar::words>(s.value).text;
            break;
        case key::note:
            r.notes.push_back(std::get<grammar::words>(s.value).text);
            break;
        case key::caution:
            r.cautions.push_back(std::get<grammar::words>(s.value).text);
            break;
        case key::makes:
            r.makes = std::get<grammar::yield>(s.value), r.makes_where = s.value_where;
            break;
        case key::serves:
            r.serves = std::get<grammar::yield>(s.value);
            break;
        default:
            break;
        }
    }

    system system_of(const grammar::words& said) {
        if (const auto named = measures::system_named(said.text)) return *named;
        auto message = error_at("unknown-measures", said.where,
                                fmt::format("there are no measures called `{}`", said.text));
        std::vector<std::string> all;
        std::string list;
        for (const auto s : measures::all_systems) {
            all.emplace_back(measures::name_of(s));
            list += (list.empty() ? "" : ", ") + all.back();
        }
        for (const auto& near : grammar::nearest(said.text, all, 1))
            message.helps.push_back(
                {fmt::format("the nearest is `{}`", near), {grammar::edit{said.where, near}}});
        message.notes.push_back({"there are " + list, {}});
        say(std::move(message));
        return system::unstated;
    }

    void find_components() {
        for (std::uint32_t file = 0; file < files_.trees.size(); ++file) {
            const auto& blocks = files_.trees[file].blocks;
            const bool has_components =
                std::any_of(blocks.begin(), blocks.end(), [](const block& b) {
                    return b.is == block::sort::component || b.is == block::sort::assembly;
                });
            for (const auto& b : blocks) find_component(b, file, has_components);
            if (file == 0) own_blocks_ = blocks_.size();
        }
    }

    void find_component(const block& b, std::uint32_t file, bool has_components) {
        const bool is_head = b.is == block::sort::recipe || b.is == block::sort::before;
        if (is_head && has_lines(b)) {
            if (has_components)
                say_lines_in_head(b);
            else
                blocks_.push_back({&b, file});
        }
        if (b.is == block::sort::component) add_block(b, file);
        // Another file's assembly is that file's product, and can be used like any component.
        if (b.is == block::sort::assembly) add_block(b, file);
    }

    void add_block(const block& b, std::uint32_t file) {
        const auto name = ingredients::compared_name(b.title.text);
        const auto [place, is_new] = by_name_.emplace(name, blocks_.size());
        if (!is_new && !name.empty()) {
            const auto& other = blocks_[place->second];
            if (other.file != file) return; // the recipe's own hides that of a file it uses
            auto message =
                error_at("duplicate-component", b.title.where,
                         fmt::format("there are two components called {}", b.title.text));
            message.notes.push_back({"the other is here", other.written->title.where});
            return say(std::move(message));
        }
        blocks_.push_back({&b, file});
    }

    void say_lines_in_head(const block& b) {
        for (const auto& item : b.items) {
            const auto* l = std::get_if<grammar::ingredient_line>(&item.value);
            const auto* s = std::get_if<grammar::step>(&item.value);
            if (!l && !s) continue;
            auto message = error_at("line-outside-component", l ? l->where : s->where,
                                    "this stands before the first component, and belongs to none");
            message.helps.push_back({"put a line like `component: Dough` above it", {}});
            return say(std::move(message));
        }
    }

    void read_lines_and_steps() {
        std::vector<scope> scopes; // one a file: each has its own `measures:`
        for (const auto system : systems_) {
            scopes.emplace_back(*result_.meaning.own, system);
            for (const auto& [name, i] : by_name_)
                if (!name.empty()) scopes.back().add_component(blocks_[i].written->title.text, i);
        }
        std::vector<version> versions; // one a file
        for (const auto& tree : files_.trees) versions.push_back(version_of(tree));
        for (std::size_t i = 0; i < blocks_.size(); ++i) {
            const auto& b = blocks_[i];
            auto& names = scopes[b.file];
            names.enter(i);
            auto c = stated_component(*b.written);
            c.revision = versions[b.file].revision, c.date = versions[b.file].date;
            c.unread = unread_in(*b.written, files_.sources[b.file]);
            c.weight_unread = std::any_of(c.unread.begin(), c.unread.end(), [](const auto& line) {
                return may_bear_on_weight(line);
            });
            grammar::diagnostics messages;
            c.lines = lines_of(*b.written, names, messages);
            c.steps = steps_of(*b.written, c, messages);
            made_.push_back(std::move(c));
            messages_.push_back(std::move(messages));
        }
        check_assemblies();
    }

    void check_assemblies() {
        const block* first = nullptr;
        for (std::size_t i = 0; i < own_blocks_; ++i) {
            const auto& b = *blocks_[i].written;
            if (b.is != block::sort::assembly) {
                if (!first) continue;
                auto message = error_at("assembly-not-last", first->where,
                                        "the assembly stands last, and a component follows it");
                message.notes.push_back({"this follows it", b.where});
                return say(std::move(message));
            }
            if (first) {
                auto message =
                    error_at("second-assembly", b.where,
                             "a recipe has at most one assembly, and this is the second");
                message.notes.push_back({"the first is here", first->where});
                return say(std::move(message));
            }
            first = &b;
        }
    }

    /// Puts each component after those it uses, leaving out those of other files that nobody
    /// uses. False where they use each other in a circle.
    bool order_by_use() {
        std::vector<std::size_t> order;
        std::vector<int> state(made_.size(), 0); // 0 not seen, 1 being followed, 2 placed
        std::vector<std::size_t> chain;
        for (std::size_t i = 0; i < own_blocks_; ++i)
            if (!place(i, state, chain, order)) return false;
        std::vector<std::size_t> new_place(made_.size());
        for (std::size_t i = 0; i < order.size(); ++i) new_place[order[i]] = i;
        for (const auto i : order) {
            for (auto& l : made_[i].lines)
                if (l.component) l.component = new_place[*l.component];
            for (auto& m : messages_[i]) say(std::move(m));
            result_.meaning.components.push_back(std::move(made_[i]));
        }
        result_.meaning.has_product = !result_.meaning.components.empty();
        return result_.meaning.has_product;
    }

    bool place(std::size_t start, std::vector<int>& state, std::vector<std::size_t>& chain,
               std::vector<std::size_t>& order) {
        // A chain of components may be long; a stack of our own does not run out.
        struct frame {
            std::size_t index, next;
        };
        if (state[start] == 2) return true;
        std::vector<frame> stack{{start, 0}};
        state[start] = 1;
        chain = {start};
        while (!stack.empty()) {
            auto& top = stack.back();
            const auto& lines = made_[top.index].lines;
            while (top.next < lines.size() && !lines[top.next].component) ++top.next;
            if (top.next == lines.size()) {
                state[top.index] = 2;
                order.push_back(top.index);
                stack.pop_back();
                chain.pop_back();
                continue;
            }
            const auto& l = lines[top.next++];
            const auto used = *l.component;
            if (state[used] == 1) {
                say_circle(l, used, chain);
                return false;
            }
            if (state[used] == 2) continue;
            state[used] = 1;
            chain.push_back(used);
            stack.push_back({used, 0});
        }
        return true;
    }

    void say_circle(const line& l, std::size_t used, const std::vector<std::size_t>& chain) {
        auto message = error_at("circular-components", l.written->names.front().where,
                                "these components are made of each other in a circle");
        std::string circle;
        for (auto i = std::find(chain.begin(), chain.end(), used); i != chain.end(); ++i)
            circle += made_[*i].title + " uses ";
        message.notes.push_back({circle + made_[used].title, {}});
        say(std::move(message));
    }

    void settle_product() {
        auto& r = result_.meaning;
        auto& product = r.components.back();
        if (!product.makes && r.makes) product.makes = r.makes, product.makes_where = r.makes_where;
        if (product.title.empty()) product.title = r.title;
        add_accepts_of_head(product);
        product.weight_unread = product.weight_unread || head_unread_;
    }

    /// What the head accepts is said with the product.
    void add_accepts_of_head(component& product) {
        for (const auto& b : files_.trees.front().blocks) {
            const bool is_head = b.is == block::sort::recipe || b.is == block::sort::before;
            if (!is_head || &b == product.written) continue;
            each_setting(b, [&](const grammar::setting& s) {
                if (s.name == key::accept) product.accepts.push_back(accepted_by(s));
            });
        }
    }

    /// `per: 1 tart` of `makes: 2 tarts`: the amounts are made twice.
    void settle_times(component& c) {
        if (!c.per) return;
        const auto* whole = c.makes ? &*c.makes : nullptr;
        if (c.weight_unread && !whole) return;
        if (!whole || !whole->count) {
            auto message = error_at("per-without-makes", c.per_where,
                                    fmt::format("{} does not say how many it makes, so how often "
                                                "these amounts are made is not known",
                                                c.title));
            message.helps.push_back(
                {fmt::format("say it in {}: `makes: 12 {}`", c.title,
                             c.per->piece ? many(c.per->piece->text) : "pieces"),
                 {}});
            return say(std::move(message));
        }
        if (!c.per->count)
            return say(error_at("per-without-number", c.per_where,
                                "how many these amounts are for is not said, as in `per: 1 tart`"));
        const auto piece = [](const grammar::yield& y) {
            return y.piece ? ingredients::compared_name(y.piece->text) : std::string();
        };
        if (piece(*c.per) != piece(*whole) && !piece(*c.per).empty()) {
            auto message = error_at("per-other-piece", c.per_where,
                                    fmt::format("{} makes {}, not {}", c.title,
                                                whole->piece ? many(whole->piece->text) : "pieces",
                                                many(c.per->piece->text)));
            message.notes.push_back({"this is what it makes", c.makes_where});
            return say(std::move(message));
        }
        c.times = spread_of(*whole->count).used / spread_of(*c.per->count).used;
    }
};

} // namespace

accepted accepted_by(const grammar::setting& s) {
    const auto& said = std::get<grammar::words>(s.value);
    const auto comma = std::min(said.text.find(','), said.text.size());
    auto kind = said.text.substr(0, comma);
    kind.erase(kind.find_last_not_of(' ') + 1);
    const auto begin = said.text.find_first_not_of(" ,", comma);
    return {kind,
            begin == said.text.npos ? "" : said.text.substr(begin),
            {said.where.file, said.where.begin,
             said.where.begin + static_cast<std::uint32_t>(kind.size())}};
}

resolved resolve(const book& files, const ingredients::table& table, system override) {
    return resolver(files, table, override).run();
}

} // namespace benchcard::recipe
