#include "compiler/recipe/resolve.hpp"

#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/heads.hpp"
#include "compiler/recipe/scope.hpp"
#include "compiler/recipe/statements.hpp"
#include "compiler/recipe/use_order.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace benchcard::recipe {

namespace {

using grammar::block;
using grammar::key;
using measures::system;

/// `glass` and `glasses` are `glasses`; of several words the last is the piece.
std::string many(const std::string& written) {
    const auto space = written.rfind(' ');
    const auto first = space == written.npos ? 0 : space + 1;
    return written.substr(0, first) +
           ingredients::plural(ingredients::singular(written.substr(first)));
}

class resolver {
  public:
    resolver(const book& files, const ingredients::table& table, system override)
        : files_(files), table_(table), override_(override) {
        result_.meaning.own = std::make_unique<ingredients::table>(&table);
    }

    resolved run() {
        read_definitions();
        heads_ = read_heads(files_, override_, result_.meaning, result_.messages);
        find_components();
        if (blocks_.empty()) return std::move(result_);
        read_lines_and_steps();
        if (settle_order()) {
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
    file_heads heads_;
    std::vector<found_block> blocks_; ///< that are made, of all files; the recipe's own first
    std::map<std::string, std::size_t> by_name_; ///< the blocks that have a name of their own
    std::vector<component> made_;
    std::vector<grammar::diagnostics> messages_; ///< of each block
    std::size_t own_blocks_ = 0;

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
        component_names components;
        for (const auto& [name, i] : by_name_)
            if (!name.empty()) components.add(blocks_[i].written->title.text, i);
        std::vector<scope> scopes; // one a file: each has its own `measures:`
        for (const auto system : heads_.systems)
            scopes.emplace_back(*result_.meaning.own, components, system);
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
            c.steps = steps_of(*b.written, c, names, messages);
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
    bool settle_order() {
        const auto order = order_by_use(made_, own_blocks_, result_.messages);
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

    void settle_product() {
        auto& r = result_.meaning;
        auto& product = r.components.back();
        if (!product.makes && r.makes) product.makes = r.makes, product.makes_where = r.makes_where;
        if (product.title.empty()) product.title = r.title;
        add_accepts_of_head(product);
        product.weight_unread = product.weight_unread || heads_.weight_unread;
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

resolved resolve(const book& files, const ingredients::table& table, system override) {
    return resolver(files, table, override).run();
}

} // namespace benchcard::recipe
