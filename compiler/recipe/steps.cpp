#include "compiler/ingredients/names.hpp"
#include "compiler/recipe/line_names.hpp"
#include "compiler/recipe/plain_words.hpp"
#include "compiler/recipe/scope.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace benchcard::recipe {

namespace {

using grammar::key;
using grammar::severity;

/// How much is told of other lines beside a message, and how often what was meant is looked for: a
/// block with more wrong names has another fault than slips of the pen.
constexpr std::size_t most_named = 20, most_looked_for = 100;

/// How much of a line is spoken for by the steps so far.
struct spent {
    bool whole = false;
    exact parts = 0;
    std::optional<grammar::span> rest; ///< where the rest was taken
    bool mentioned = false;
    grammar::span last;
};

/// The words of a text as they are compared, whatever stands between them.
std::vector<std::string> words_in(std::string text) {
    std::replace_if(
        text.begin(), text.end(),
        [](char c) { return std::string_view("[](){}:;,.!?=\t\r\n").find(c) != std::string::npos; },
        ' ');
    return ingredients::compared_words(text);
}

class step_reader {
  public:
    step_reader(const component& c, const scope& names, grammar::diagnostics& to)
        : lines_(c.lines), called_(c.lines), names_(names), station_(c.station), to_(to),
          spent_(c.lines.size()) {
        for (const auto& text : c.unread)
            for (auto& word : words_in(text)) unread_words_.insert(std::move(word));
    }

    std::vector<step> read(const grammar::block& written) {
        for (const auto& item : written.items) {
            if (const auto* s = std::get_if<grammar::setting>(&item.value);
                s && s->name == key::station)
                station_ = std::get<grammar::words>(s->value).text;
            if (const auto* s = std::get_if<grammar::step>(&item.value)) read_step(*s);
        }
        check_parts();
        if (!steps_.empty()) check_unused();
        return std::move(steps_);
    }

  private:
    const std::vector<line>& lines_;
    const line_names called_;
    const scope& names_;
    std::string station_;
    grammar::diagnostics& to_;
    std::set<std::string> unread_words_; ///< of the lines that could not be read
    std::vector<spent> spent_;
    std::vector<step> steps_;
    std::vector<const grammar::step*> written_; ///< the same, as written
    std::size_t looked_for_ = 0;
    std::optional<plain_words> mentions_; ///< read when they are asked for

    /// Whether a line that could not be read speaks of all these words: then it is the cause of
    /// what seems to be missing.
    bool is_in_unread(const std::vector<std::string>& words) const {
        return !words.empty() && std::all_of(words.begin(), words.end(), [&](const auto& w) {
            return unread_words_.contains(w);
        });
    }

    /// The same of a line's name, or of its last word alone: a step may call it by that.
    bool may_be_used_in_unread(std::size_t index) const {
        const auto name = called_.last_word(index);
        return !name.empty() && is_in_unread({name});
    }

    void read_step(const grammar::step& written) {
        step result;
        result.where = written.where;
        result.station = station_;
        const bool in_oven = speaks_of_oven(written);
        for (const auto& part : written.parts) {
            if (const auto* w = std::get_if<grammar::words>(&part)) {
                result.parts.emplace_back(w->text);
                continue;
            }
            const auto& b = std::get<grammar::bracket>(part);
            if (auto meant = meaning_of(b, in_oven)) result.parts.emplace_back(std::move(*meant));
        }
        steps_.push_back(std::move(result));
        written_.push_back(&written);
    }

    /// A temperature is an oven's when the step is about one; else it is what a thermometer shows.
    static bool speaks_of_oven(const grammar::step& written) {
        constexpr std::string_view oven_words[] = {"bake",    "baking", "oven", "roast",
                                                   "preheat", "toast",  "grill"};
        for (const auto& part : written.parts)
            if (const auto* w = std::get_if<grammar::words>(&part))
                for (const auto& word : ingredients::compared_words(w->text))
                    for (const auto oven : oven_words)
                        if (word.starts_with(oven)) return true;
        return false;
    }

    std::optional<use> meaning_of(const grammar::bracket& b, bool in_oven) {
        if (const auto* r = std::get_if<grammar::reference>(&b.holds)) return named(*r, b.where);
        if (std::holds_alternative<grammar::rest_of_block>(b.holds)) return rest_of_block(b.where);
        if (const auto* t = std::get_if<grammar::temperature>(&b.holds)) {
            using grammar::oven_scale;
            const bool is_dial =
                t->scale == oven_scale::gas_mark || t->scale == oven_scale::fan_celsius;
            return heat_use{t->degrees.low, t->degrees.high, t->scale, is_dial || in_oven};
        }
        if (const auto* d = std::get_if<grammar::duration>(&b.holds)) return time_use{*d};
        if (const auto* l = std::get_if<grammar::length>(&b.holds)) return length_use{*l};
        const auto& p = std::get<grammar::piece_measure>(b.holds);
        return portion_use{p.of, p.total};
    }

    std::optional<use> rest_of_block(grammar::span where) {
        rest_use result;
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            if (spent_[i].mentioned) continue;
            spent_[i] = {true, 0, {}, true, where};
            result.lines.push_back(i);
        }
        if (result.lines.empty()) {
            if (!unread_words_.empty()) return std::nullopt; // the rest may stand there
            to_.push_back(error_at("nothing-left", where,
                                   "every ingredient was used before, so there is no rest"));
            return std::nullopt;
        }
        return result;
    }

    std::optional<use> named(const grammar::reference& r, grammar::span where) {
        const auto found = called_.meant_by(r.name.text);
        if (found.size() == 1) return part_of(found.front(), r, where);
        if (found.empty() && is_in_unread(ingredients::compared_words(r.name.text)))
            return std::nullopt;
        if (found.empty())
            say_unknown(r);
        else
            say_ambiguous(r, found);
        return std::nullopt;
    }

    void say_unknown(const grammar::reference& r) {
        auto message = error_at("unknown-reference", r.name.where,
                                fmt::format("no line here is called `{}`", r.name.text));
        message.notes.push_back({lines_.empty()
                                     ? "this block has no ingredient lines"
                                     : "the lines here are " + called_.listed(most_named),
                                 {}});
        const bool is_looked_for = ++looked_for_ <= most_looked_for;
        if (const auto meant = is_looked_for ? called_.nearest(r.name.text) : std::nullopt) {
            spent_[meant->line].mentioned = true; // so that one slip is not said twice
            message.helps.push_back(help_for(r.name, lines_[meant->line], meant->words));
        }
        to_.push_back(std::move(message));
    }

    /// Of two spellings the one that the ingredient table has is right: what a step calls `butter`
    /// may be a line's `buter`.
    grammar::help help_for(const grammar::words& said, const line& meant,
                           const std::string& near) const {
        const bool is_known = meant.what || meant.component || !names_.of(said.text).what;
        if (is_known)
            return {fmt::format("the nearest is `[{}]`", near), {grammar::edit{said.where, near}}};
        auto where = meant.written->names.front().where;
        const bool is_as_written = where.end - where.begin == meant.name.size();
        where.begin = where.end - static_cast<std::uint32_t>(near.size());
        grammar::help result{
            fmt::format("the ingredient table has `{}` and no `{}`: the slip may be in "
                        "the line",
                        said.text, meant.name)};
        if (is_as_written && meant.name.ends_with(near)) result.edits.push_back({where, said.text});
        return result;
    }

    void say_ambiguous(const grammar::reference& r, const std::vector<std::size_t>& found) {
        auto message =
            error_at("ambiguous-reference", r.name.where,
                     fmt::format("`{}` may mean {} lines here", r.name.text, found.size()));
        for (const auto i : found) spent_[i].mentioned = true;
        for (std::size_t n = 0; n < std::min(found.size(), most_named); ++n) {
            const auto& l = lines_[found[n]];
            message.notes.push_back(
                {fmt::format("{}{}", l.name, l.preparation.empty() ? "" : ", " + l.preparation),
                 l.where});
        }
        if (found.size() > most_named)
            message.notes.push_back({fmt::format("and {} more", found.size() - most_named), {}});
        message.helps.push_back(
            {fmt::format("use the words that only one of them has, as in `[{}]`",
                         lines_[found.front()].name),
             {}});
        to_.push_back(std::move(message));
    }

    std::optional<use> part_of(std::size_t index, const grammar::reference& r,
                               grammar::span where) {
        auto& s = spent_[index];
        line_use result{index, called_.printed(index, r.name.text), {}, false, false};
        s.mentioned = true;
        s.last = where;
        if (!r.of) {
            // Named again, it is only spoken of; weighed out once.
            if (!s.whole && s.parts == 0) {
                s.whole = true;
                result.share = 1;
            }
            return result;
        }
        if (lines_[index].some) {
            to_.push_back(error_at(
                "part-of-some", r.of->where,
                fmt::format("`some {}` has no amount to take a part of", lines_[index].name)));
            return std::nullopt;
        }
        const auto share = share_of(lines_[index], *r.of, s);
        if (!share) return std::nullopt;
        result.share = share;
        result.is_part = true;
        result.is_rest = r.of->is == grammar::reference::part::sort::rest;
        if (s.whole) {
            say_more_than_whole(index, where, 1 + *share);
            return std::nullopt;
        }
        if (s.rest) {
            say_rest_before_part(index, *s.rest, where);
            return std::nullopt;
        }
        s.parts += *share;
        if (result.is_rest) s.rest = where;
        if (s.parts > 1) {
            say_more_than_whole(index, where, s.parts);
            s.parts = 1;
        }
        return result;
    }

    std::optional<exact> share_of(const line& l, const grammar::reference::part& part,
                                  const spent& s) {
        using sort = grammar::reference::part::sort;
        if (part.is == sort::share) return part.share;
        if (part.is == sort::rest) {
            if (s.parts >= 1 || s.whole) {
                to_.push_back(error_at(
                    "nothing-left", part.where,
                    fmt::format("all of the {} was used before, so there is no rest", l.name)));
                return std::nullopt;
            }
            return exact(1 - s.parts);
        }
        return share_by_amount(l, part);
    }

    /// `[butter: 50 g]` of 150 g is a third. Weight against weight, volume against volume in the
    /// same measure, number against number.
    std::optional<exact> share_by_amount(const line& l, const grammar::reference::part& part) {
        const auto& m = part.of;
        const auto wanted = spread_of(m.quantity).used;
        std::optional<exact> share;
        if (!m.in && l.count && l.count->used > 0) share = wanted / l.count->used;
        if (m.in && l.grams && l.grams->used > 0)
            if (const auto each = measures::weight_of(*m.in))
                share = wanted * each->value / l.grams->used;
        if (m.in && !share) {
            exact written = 0;
            for (const auto& term : l.written->amounts)
                if (term.in == m.in) written += spread_of(term.quantity).used;
            if (written > 0 && l.written->amounts.size() == 1) share = wanted / written;
        }
        if (!share)
            to_.push_back(error_at(
                "part-cannot-be-compared", part.where,
                fmt::format(
                    "this part cannot be compared with the {} above, which is in another measure",
                    l.name)));
        return share;
    }

    void say_more_than_whole(std::size_t index, grammar::span where, const exact& total) {
        auto message = error_at("parts-exceed-whole", where,
                                fmt::format("the steps use {:.0f} % of the {}",
                                            approximately(total) * 100, lines_[index].name));
        message.notes.push_back({"there is this much of it", lines_[index].where});
        to_.push_back(std::move(message));
    }

    /// `[butter: rest]`, and a part of it only afterwards.
    void say_rest_before_part(std::size_t index, grammar::span rest, grammar::span part) {
        auto message = error_at(
            "rest-before-part", part,
            fmt::format("a part of the {} is taken after its rest was", lines_[index].name));
        message.notes.push_back({"all that was left of it is used here", rest});
        message.helps.push_back({"take the rest where the last of it is used", {}});
        to_.push_back(std::move(message));
    }

    void check_parts() {
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            const auto& s = spent_[i];
            if (s.whole || s.parts == 0 || s.parts >= 1 || may_be_used_in_unread(i)) continue;
            auto message =
                error_at("parts-do-not-add-up", s.last,
                         fmt::format("the steps use {:.0f} % of the {} and leave the rest",
                                     approximately(s.parts) * 100, lines_[i].name));
            message.notes.push_back({"there is this much of it", lines_[i].where});
            message.helps.push_back(
                {fmt::format("say where the rest goes: `[{}: rest]`", lines_[i].name), {}});
            to_.push_back(std::move(message));
        }
    }

    void check_unused() {
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            if (spent_[i].mentioned || lines_[i].optional || lines_[i].some) continue;
            if (may_be_used_in_unread(i)) continue;
            if (say_plain_mention(i)) continue;
            grammar::diagnostic message{"unused-ingredient",
                                        severity::warning,
                                        lines_[i].written->names.front().where,
                                        fmt::format("no step uses the {}", lines_[i].name),
                                        {},
                                        {}};
            message.helps.push_back(
                {fmt::format("name it in a step in brackets: `[{}]`", lines_[i].name), {}});
            to_.push_back(std::move(message));
        }
    }

    /// An ingredient that a step names without brackets: its amount is not printed there.
    bool say_plain_mention(std::size_t index) {
        if (!mentions_) mentions_.emplace(written_);
        const auto found = mentions_->find(called_.last_word(index));
        if (!found) return false;
        const auto& [where, word] = *found;
        grammar::diagnostic message{
            "plain-mention",
            severity::hint,
            where,
            fmt::format("`{}` stands without brackets, so the card cannot print how much", word),
            {},
            {}};
        message.helps.push_back({fmt::format("write it as `[{}]`", word),
                                 {grammar::edit{where, fmt::format("[{}]", word)}}});
        to_.push_back(std::move(message));
        return true;
    }
};

} // namespace

std::vector<step> steps_of(const grammar::block& written, const component& c, const scope& names,
                           grammar::diagnostics& to) {
    return step_reader(c, names, to).read(written);
}

} // namespace benchcard::recipe
