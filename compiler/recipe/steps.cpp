#include "compiler/ingredients/names.hpp"
#include "compiler/recipe/scope.hpp"
#include "compiler/recipe/weighing.hpp"
#include "grammar/nearest.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <set>
#include <unordered_map>

namespace benchcard::recipe {

namespace {

using grammar::key;
using grammar::severity;

/// All words a line may be called by: its name, its preparation, and its ingredient's names.
struct line_words {
    std::vector<std::string> name;
    std::vector<std::string> with_preparation;
    std::vector<std::vector<std::string>> other_names;
};

/// How much is told of other lines beside a message, and how often what was meant is looked for: a
/// block with more wrong names has another fault than slips of the pen.
constexpr std::size_t most_named = 20, most_looked_for = 100;

bool all_among(const std::vector<std::string>& wanted, const std::vector<std::string>& words) {
    return std::all_of(wanted.begin(), wanted.end(), [&](const auto& w) {
        return std::find(words.begin(), words.end(), w) != words.end();
    });
}

line_words words_of(const line& l) {
    line_words result;
    result.name = ingredients::compared_words(l.name);
    result.with_preparation = result.name;
    for (auto& w : ingredients::compared_words(l.preparation)) {
        while (!w.empty() && w.back() == ',') w.pop_back();
        result.with_preparation.push_back(std::move(w));
    }
    if (l.what) {
        result.other_names.push_back(ingredients::compared_words(l.what->name));
        for (const auto& other : l.what->also)
            result.other_names.push_back(ingredients::compared_words(other));
    }
    return result;
}

/// How much of a line is spoken for by the steps so far.
struct spent {
    bool whole = false;
    exact parts = 0;
    std::optional<grammar::span> rest; ///< where the rest was taken
    bool mentioned = false;
    grammar::span last;
};

class step_reader {
  public:
    step_reader(const component& c, const scope& names, grammar::diagnostics& to)
        : lines_(c.lines), names_(names), station_(c.station), to_(to), spent_(c.lines.size()) {
        for (const auto& l : lines_) words_.push_back(words_of(l));
        for (std::size_t i = 0; i < words_.size(); ++i) note_words(i);
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
    /// A word of a step, and how it is written there.
    struct mention {
        grammar::span where;
        std::string_view word;
    };

    const std::vector<line>& lines_;
    const scope& names_;
    std::string station_;
    grammar::diagnostics& to_;
    std::vector<line_words> words_;
    std::unordered_map<std::string, std::vector<std::size_t>> with_word_; ///< lines, in order
    std::set<std::string> unread_words_; ///< of the lines that could not be read
    std::vector<spent> spent_;
    std::vector<step> steps_;
    std::vector<const grammar::step*> written_; ///< the same, as written
    std::size_t looked_for_ = 0;
    /// Where each word stands first in the steps, outside brackets; read when it is asked for.
    std::optional<std::unordered_map<std::string, mention>> mentions_;

    /// The words of a text as they are compared, whatever stands between them.
    static std::vector<std::string> words_in(std::string text) {
        std::replace_if(
            text.begin(), text.end(),
            [](char c) {
                return std::string_view("[](){}:;,.!?=\t\r\n").find(c) != std::string::npos;
            },
            ' ');
        return ingredients::compared_words(text);
    }

    /// Whether a line that could not be read speaks of all these words: then it is the cause of
    /// what seems to be missing.
    bool is_in_unread(const std::vector<std::string>& words) const {
        return !words.empty() && std::all_of(words.begin(), words.end(), [&](const auto& w) {
            return unread_words_.contains(w);
        });
    }

    /// The same of a line's name, or of its last word alone: a step may call it by that.
    bool may_be_used_in_unread(std::size_t index) const {
        const auto& name = words_[index].name;
        return !name.empty() && is_in_unread({name.back()});
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

    void note_words(std::size_t index) {
        const auto note = [&](const std::vector<std::string>& words) {
            for (const auto& w : words)
                if (auto& lines = with_word_[w]; lines.empty() || lines.back() != index)
                    lines.push_back(index);
        };
        note(words_[index].with_preparation);
        for (const auto& other : words_[index].other_names) note(other);
    }

    /// Of the lines that have some words, those that have the rarest.
    const std::vector<std::size_t>& may_be(const std::vector<std::string>& wanted) const {
        static const std::vector<std::size_t> none;
        const std::vector<std::size_t>* fewest = nullptr;
        for (const auto& w : wanted) {
            const auto found = with_word_.find(w);
            if (found == with_word_.end()) return none;
            if (!fewest || found->second.size() < fewest->size()) fewest = &found->second;
        }
        return fewest ? *fewest : none;
    }

    /// The lines that some words may mean: those so named exactly, or else those that have them
    /// all.
    std::vector<std::size_t> candidates(const std::string& said) const {
        const auto wanted = ingredients::compared_words(said);
        std::vector<std::size_t> exact_ones, by_name, by_preparation, by_other_name;
        for (const auto i : may_be(wanted)) {
            const auto& w = words_[i];
            if (w.name == wanted) exact_ones.push_back(i);
            if (all_among(wanted, w.name)) by_name.push_back(i);
            if (all_among(wanted, w.with_preparation)) by_preparation.push_back(i);
            for (const auto& other : w.other_names)
                if (all_among(wanted, other)) {
                    by_other_name.push_back(i);
                    break;
                }
        }
        for (const auto* found : {&exact_ones, &by_name, &by_preparation, &by_other_name})
            if (!found->empty()) return *found;
        return {};
    }

    /// Of lines of one name, the one that is weighed: `some flour, for dusting` has words of its
    /// own.
    std::vector<std::size_t> without_dusting(const std::vector<std::size_t>& found) const {
        const bool is_one_name = std::all_of(found.begin(), found.end(), [&](std::size_t i) {
            return words_[i].name == words_[found.front()].name;
        });
        std::vector<std::size_t> weighed;
        for (const auto i : found)
            if (!lines_[i].some) weighed.push_back(i);
        return is_one_name && weighed.size() == 1 ? weighed : found;
    }

    std::optional<use> named(const grammar::reference& r, grammar::span where) {
        const auto found = without_dusting(candidates(r.name.text));
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
        message.notes.push_back({lines_.empty() ? "this block has no ingredient lines"
                                                : "the lines here are " + names_of_lines(),
                                 {}});
        if (const auto meant = line_meant(r.name.text)) {
            spent_[meant->first].mentioned = true; // so that one slip is not said twice
            message.helps.push_back(help_for(r.name, lines_[meant->first], meant->second));
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
        grammar::help result{fmt::format("the ingredient table has `{}` and no `{}`: the slip may be in "
                                         "the line",
                                         said.text, meant.name)};
        if (is_as_written && meant.name.ends_with(near))
            result.edits.push_back({where, said.text});
        return result;
    }

    std::string names_of_lines() const {
        std::string all;
        for (std::size_t i = 0; i < std::min(lines_.size(), most_named); ++i)
            all += (i == 0 ? "" : ", ") + lines_[i].name;
        if (lines_.size() > most_named)
            all += fmt::format(" and {} more", lines_.size() - most_named);
        return all;
    }

    /// The line that a misspelt reference was meant for, and the words that are nearest to it.
    std::optional<std::pair<std::size_t, std::string>> line_meant(const std::string& said) {
        if (++looked_for_ > most_looked_for) return std::nullopt;
        std::vector<std::string> all;
        for (const auto& l : lines_) {
            all.push_back(l.name);
            all.push_back(l.name.substr(l.name.rfind(' ') + 1));
        }
        const auto near = grammar::nearest(said, all, 1);
        if (near.empty()) return std::nullopt;
        const auto place = std::find(all.begin(), all.end(), near.front()) - all.begin();
        return std::pair(static_cast<std::size_t>(place / 2), near.front());
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

    /// The words that the card prints: those in the bracket, where they name the thing; the line's
    /// name where they are of its preparation alone, as in `[for the tin]`.
    std::string said_for(std::size_t index, const std::string& said) const {
        const auto wanted = ingredients::compared_words(said);
        const auto& w = words_[index];
        const auto names = [&](const std::vector<std::string>& name) {
            return std::any_of(wanted.begin(), wanted.end(), [&](const auto& word) {
                return std::find(name.begin(), name.end(), word) != name.end();
            });
        };
        const bool is_named =
            names(w.name) || std::any_of(w.other_names.begin(), w.other_names.end(), names);
        return is_named ? said : lines_[index].name;
    }

    std::optional<use> part_of(std::size_t index, const grammar::reference& r,
                               grammar::span where) {
        auto& s = spent_[index];
        line_use result{index, said_for(index, r.name.text), {}, false, false};
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
        if (words_[index].name.empty()) return false;
        if (!mentions_) read_mentions();
        const auto found = mentions_->find(words_[index].name.back());
        if (found == mentions_->end()) return false;
        const auto& [where, word] = found->second;
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

    void read_mentions() {
        mentions_.emplace();
        for (const auto* written : written_)
            for (const auto& part : written->parts)
                if (const auto* text = std::get_if<grammar::words>(&part)) add_mentions(*text);
    }

    /// The words of a part of a step, in whatever number; none where the text was folded and its
    /// places are not those of the file.
    void add_mentions(const grammar::words& in) {
        const std::string_view text = in.text;
        if (text.size() != in.where.end - in.where.begin) return;
        constexpr std::string_view between = " \t.,;:()!?";
        for (auto begin = text.find_first_not_of(between); begin != text.npos;) {
            const auto end = std::min(text.find_first_of(between, begin), text.size());
            const auto word = text.substr(begin, end - begin);
            const grammar::span where{in.where.file,
                                      in.where.begin + static_cast<std::uint32_t>(begin),
                                      in.where.begin + static_cast<std::uint32_t>(end)};
            mentions_->emplace(ingredients::compared_name(word), mention{where, word});
            begin = text.find_first_not_of(between, end);
        }
    }
};

} // namespace

std::vector<step> steps_of(const grammar::block& written, const component& c, const scope& names,
                           grammar::diagnostics& to) {
    return step_reader(c, names, to).read(written);
}

} // namespace benchcard::recipe
