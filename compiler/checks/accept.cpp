#include "compiler/checks/checks.hpp"
#include "compiler/diagnostics/kinds.hpp"
#include "grammar/nearest.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

using grammar::severity;
using recipe::accepted;

/// An `accept:` that can be followed, and the stretch of text that it is good for.
struct acceptance {
    accepted what;
    grammar::span covers;
    bool is_checked; ///< whether its block is part of the recipe, so that it must catch something
    std::size_t caught = 0;
};

void say_unknown(const accepted& a, grammar::diagnostics& to) {
    grammar::diagnostic message{"accept-unknown",
                                severity::error,
                                a.kind_where,
                                a.kind.empty() ? "which kind of message is accepted is not said"
                                               : fmt::format("there is no kind of message called "
                                                             "`{}`",
                                                             a.kind),
                                {},
                                {}};
    std::vector<std::string> all;
    for (const auto& k : diagnostics::all_kinds())
        if (k.level != severity::error) all.emplace_back(k.name);
    for (const auto& near : grammar::nearest(a.kind, all, 1))
        message.helps.push_back(
            {fmt::format("the nearest is `{}`", near), {grammar::edit{a.kind_where, near}}});
    if (message.helps.empty())
        message.helps.push_back({"the kind stands behind the message, in square brackets", {}});
    to.push_back(std::move(message));
}

/// Whether an `accept:` can be followed; says why not.
bool can_be_followed(const accepted& a, grammar::diagnostics& to) {
    const auto* kind = diagnostics::kind_named(a.kind);
    if (!kind) {
        say_unknown(a, to);
        return false;
    }
    if (kind->level == severity::error) {
        to.push_back(
            {"accept-error",
             severity::error,
             a.kind_where,
             fmt::format("`{}` is an error, and only hints and warnings can be accepted", a.kind),
             {},
             {{"mend what it is about, and take this line out", {}}}});
        return false;
    }
    if (a.reason.empty()) {
        to.push_back({"accept-without-reason",
                      severity::error,
                      a.kind_where,
                      fmt::format("why `{}` is accepted is not said", a.kind),
                      {},
                      {{fmt::format("put the reason behind a comma: `accept: {}, it is a salt-free "
                                    "loaf`",
                                    a.kind),
                        {}}}});
        return false;
    }
    return true;
}

bool is_head(const grammar::block& b) {
    return b.is == grammar::block::sort::recipe || b.is == grammar::block::sort::before;
}

class settler {
  public:
    settler(const recipe::book& files, const recipe::recipe& r, grammar::diagnostics& messages)
        : files_(files), recipe_(r), messages_(messages) {}

    void run() {
        for (std::size_t file = 0; file < files_.trees.size(); ++file) read(file);
        std::erase_if(messages_, [&](const auto& m) { return is_accepted(m); });
        // With an error not every check was made, so that it is not known what would be caught.
        if (grammar::has_errors(messages_) || grammar::has_errors(wrong_)) {
            std::move(wrong_.begin(), wrong_.end(), std::back_inserter(messages_));
            return;
        }
        for (const auto& a : acceptances_)
            if (a.is_checked && a.caught == 0) say_unneeded(a);
    }

  private:
    const recipe::book& files_;
    const recipe::recipe& recipe_;
    grammar::diagnostics& messages_;
    grammar::diagnostics wrong_;
    std::vector<acceptance> acceptances_;

    void read(std::size_t file) {
        const auto& blocks = files_.trees[file].blocks;
        const auto end = static_cast<std::uint32_t>(files_.sources[file].text().size());
        for (std::size_t i = 0; i < blocks.size(); ++i) {
            const auto& b = blocks[i];
            const auto block_end = i + 1 < blocks.size() ? blocks[i + 1].where.begin : end;
            const auto number = static_cast<std::uint32_t>(file);
            const grammar::span covers = is_head(b)
                                             ? grammar::span{number, 0, end}
                                             : grammar::span{number, b.where.begin, block_end};
            for (const auto& item : b.items)
                if (const auto* s = std::get_if<grammar::setting>(&item.value);
                    s && s->name == grammar::key::accept)
                    read_one(recipe::accepted_by(*s), covers, is_part_of_recipe(b, file));
        }
    }

    void read_one(accepted a, grammar::span covers, bool is_checked) {
        if (can_be_followed(a, wrong_)) acceptances_.push_back({std::move(a), covers, is_checked});
    }

    /// A used file is checked only as far as the recipe uses it.
    bool is_part_of_recipe(const grammar::block& b, std::size_t file) const {
        if (is_head(b)) return file == 0;
        return std::any_of(recipe_.components.begin(), recipe_.components.end(),
                           [&](const auto& c) { return c.written == &b; });
    }

    bool is_accepted(const grammar::diagnostic& m) {
        if (m.level == severity::error) return false;
        bool found = false;
        for (auto& a : acceptances_) {
            const bool covers = a.covers.file == m.where.file && a.covers.begin <= m.where.begin &&
                                m.where.begin < std::max(a.covers.end, a.covers.begin + 1);
            if (!covers || a.what.kind != m.kind) continue;
            ++a.caught;
            found = true;
        }
        return found;
    }

    void say_unneeded(const acceptance& a) {
        messages_.push_back({"accept-unneeded",
                             severity::hint,
                             a.what.kind_where,
                             fmt::format("there is no `{}` here to accept", a.what.kind),
                             {},
                             {{"take this line out, or it will hide the next one unseen", {}}}});
    }
};

} // namespace

void settle_accepts(const recipe::book& files, const recipe::recipe& r,
                    grammar::diagnostics& messages) {
    settler(files, r, messages).run();
}

void settle(const recipe::book& files, const recipe::recipe& r, grammar::diagnostics& messages) {
    check_house_rules(files, r, messages);
    settle_accepts(files, r, messages);
}

} // namespace benchcard::checks
