#include "grammar/parse.hpp"

#include "grammar/limits.hpp"
#include "grammar/readable.hpp"
#include "grammar/reading.hpp"
#include "grammar/settings.hpp"
#include "grammar/suggest.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::grammar {

namespace {

template <typename Rule> bool begins_as(std::string_view text) {
    input in(text.data(), text.data() + text.size(), "");
    return tao::pegtl::parse<Rule>(in);
}

bool read_value(value_form form, input& in, scratch& s) {
    switch (form) {
    case value_form::words:
        return read<rules::words_value>(in, s);
    case value_form::prose:
        return read<rules::prose_value>(in, s);
    case value_form::list:
        return read<rules::list_value>(in, s);
    case value_form::yield:
        return read<rules::yield_value>(in, s);
    case value_form::losses:
        return read<rules::loss_value>(in, s);
    case value_form::keepings:
        return read<rules::keeps_value>(in, s);
    case value_form::tin_size:
        return read<rules::tin_value>(in, s);
    case value_form::figures:
        return read<rules::weighs_value>(in, s);
    case value_form::price:
        return read<rules::price_value>(in, s);
    case value_form::measure:
        return read<rules::measure_value>(in, s);
    case value_form::yes_or_no:
        return read<rules::yes_no_value>(in, s);
    }
    return false;
}

std::size_t indentation(std::string_view line) {
    const auto first = line.find_first_not_of(" \t");
    return first == line.npos ? line.size() : first;
}

class reader {
  public:
    explicit reader(const source& text) : text_(text) {
        result_.tree.blocks.push_back({block::sort::before, {}, {text.file(), 0, 0}, {}});
    }

    parsed read_all() {
        if (text_.text().size() > limits::file_bytes)
            stop_at(1, fmt::format("this file has {} bytes; at most {} can be read",
                                   text_.text().size(), limits::file_bytes));
        const auto last = std::min(text_.line_count(), limits::lines);
        for (std::size_t number = 1; number <= last && !is_full_;) number = read_line(number);
        const auto count = text_.line_count() - text_.line(text_.line_count()).empty();
        if (count > limits::lines && !is_full_)
            stop_at(limits::lines + 1, fmt::format("this file has {} lines; at most {} can be read",
                                                   count, limits::lines));
        if (!seen_content_ && !is_full_)
            say("no-recipe", {text_.file(), 0, 0}, "there is no recipe in this file",
                {{"a recipe begins with its name: `recipe: Pear tart`", {}}});
        return std::move(result_);
    }

  private:
    static constexpr std::size_t usual_items = 12; // of a block

    const source& text_;
    parsed result_;
    bool seen_content_ = false;
    bool seen_recipe_ = false;
    bool is_full_ = false; ///< there was more of something than can be read
    std::size_t components_ = 0, definitions_ = 0, brackets_ = 0;
    std::size_t lines_ = 0, steps_ = 0, losses_ = 0; ///< of a component

    block& now() { return result_.tree.blocks.back(); }

    void say(std::string_view kind, span where, std::string message, std::vector<help> helps = {}) {
        result_.messages.push_back(
            {kind, severity::error, where, std::move(message), {}, std::move(helps)});
    }

    span span_of_lines(std::size_t first, std::size_t last) const {
        const auto begin = text_.line_start(first);
        const auto end = text_.line_start(last) + text_.line(last).size();
        return {text_.file(), static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
    }

    static span without_blanks(span where, std::string_view text) {
        const auto first = indentation(text);
        const auto last = text.find_last_not_of(" \t");
        if (last == text.npos) return where;
        return {where.file, where.begin + static_cast<std::uint32_t>(first),
                where.begin + static_cast<std::uint32_t>(last + 1)};
    }

    template <typename Value> void keep(Value&& value, std::vector<comment> comments = {}) {
        now().items.emplace_back(std::forward<Value>(value), std::move(comments));
    }

    /// Says why nothing is read from a line on, and keeps the rest as it is.
    void stop_at(std::size_t number, std::string message, std::string_view among = "files") {
        say("too-many", without_blanks(span_of_lines(number, number), text_.line(number)),
            std::move(message),
            {{fmt::format("nothing is read from here on: divide it among several {}", among), {}}});
        keep(unread{span_of_lines(number, text_.line_count())});
        is_full_ = true;
    }

    /// Counts so many more of something; where that is too many, reading ends at a line.
    bool has_room(std::size_t number, std::size_t& count, std::size_t more, std::size_t most,
                  std::string_view what, std::string_view among = "files") {
        count += more;
        if (count <= most) return true;
        const auto in = among == "files" ? "a file" : "a component";
        stop_at(number,
                fmt::format("with this line {} has {} {}; at most {} can be read", in, count, what,
                            most),
                among);
        return false;
    }

    /// Reads the line, with those that continue it, and returns the number of the next.
    std::size_t read_line(std::size_t number) {
        const auto line = text_.line(number);
        const auto where = span_of_lines(number, number);
        if (auto why = unreadable(line, where)) {
            result_.messages.push_back(std::move(*why));
            seen_content_ = true;
            keep(unread{where});
        } else if (begins_as<rules::blank_line>(line)) {
            keep(empty_line{where});
        } else if (begins_as<rules::comment_line>(line)) {
            const auto text = line.substr(indentation(line));
            const auto begin = where.end - static_cast<std::uint32_t>(text.size());
            keep(comment{{where.file, begin, where.end}, std::string(text)});
        } else {
            return read_content(number, line, where);
        }
        return number + 1;
    }

    std::size_t read_content(std::size_t number, std::string_view line, span where) {
        const bool is_step = begins_as<rules::step_start>(line);
        const bool is_setting = !is_step && begins_as<rules::setting_start>(line);
        expect_recipe_first(is_setting, line, without_blanks(where, line));
        if (is_step) return read_step(number);
        if (is_setting) return read_setting(number);
        if (begins_as<rules::amount_start>(line))
            read_ingredient(number, where);
        else
            refuse(line, where);
        return number + 1;
    }

    /// Says once, at the first line that is more than a comment, that `recipe:` comes first.
    void expect_recipe_first(bool is_setting, std::string_view line, span where) {
        if (seen_content_) return;
        seen_content_ = true;
        if (is_setting && key_in(line) && key_in(line)->name == key::recipe) return;
        say("text-before-recipe", where,
            "a file begins with `recipe:` and its name, and this stands before it",
            {{"put a line like `recipe: Pear tart` first", {}}});
    }

    static std::string_view word_before_colon(std::string_view line) {
        auto head = line.substr(indentation(line));
        head = head.substr(0, head.find(':'));
        return head.substr(0, head.find_last_not_of(" \t") + 1);
    }
    static const setting_entry* key_in(std::string_view line) {
        return setting_named(word_before_colon(line));
    }

    void refuse(std::string_view line, span where) {
        const auto trimmed = without_blanks(where, line);
        say("unreadable-line", trimmed,
            "a line is a setting (`makes: 2 tarts`), an ingredient (`200 g plain flour`) or a step "
            "(`- Mix.`), "
            "and this is none of them",
            suggest_line(line, trimmed, now().is));
        keep(unread{where});
    }

    scratch pad() const {
        scratch s{};
        s.base = text_.text().data();
        s.file = text_.file();
        return s;
    }

    /// What a message that knows only a place is about: from there to the end of the bracket, or
    /// of what stands on the line before a comment.
    span range_at(const line_error& e, span line) const {
        auto s = pad();
        if (e.begin != e.end) return s.between(e.begin, e.end);
        const std::string_view rest(e.begin, text_.text().data() + line.end);
        auto length = std::min(rest.find_first_of("\r\n"), rest.find(" #"));
        if (e.kind == "unreadable-bracket") length = std::min(length, rest.find(']'));
        if (e.kind == "unopened-bracket") length = 1;
        const auto covered = rest.substr(0, length);
        const auto last = covered.find_last_not_of(" \t");
        return s.between(e.begin, e.begin + (last == covered.npos ? 0 : last + 1));
    }

    /// Reads a line by a rule; a failure becomes a message and an `unread`.
    template <typename Read> bool attempt(span where, Read read_it) {
        const auto text = text_.text_of(where);
        input in(text.data(), text.data() + text.size(), "");
        try {
            read_it(in);
            return true;
        } catch (const line_error& e) {
            if (!say_full_bracket(e, text, where))
                say(e.kind, range_at(e, where), e.message, helps_for(e, text, where));
            keep(unread{where});
            return false;
        }
    }

    static std::vector<help> helps_for(const line_error& e, std::string_view text, span where) {
        if (e.kind == "missing-value" || e.kind == "unreadable-value" ||
            e.kind == "unreadable-amount")
            if (const auto* entry = begins_as<rules::setting_start>(text) ? key_in(text) : nullptr)
                return {{fmt::format("for example `{}`", entry->example), {}}};
        if (e.kind != "numbered-step") return {};
        const auto rest = text.substr(text.find_first_of(".)") + 1);
        const auto words = std::string("- ").append(rest.substr(indentation(rest)));
        return {{"write it as `" + words + "`", {edit{without_blanks(where, text), words}}}};
    }

    /// A bracket that is closed further on in its line is not open: it holds too much.
    bool say_full_bracket(const line_error& e, std::string_view text, span where) {
        if (e.kind != "unclosed-bracket" && e.kind != "unreadable-bracket") return false;
        const auto stop = static_cast<std::size_t>(e.begin - text.data());
        const auto end = text.find_first_of("[]\n", stop);
        const auto open = stop == 0 ? text.npos : text.rfind('[', stop - 1);
        if (open == text.npos) return false;
        if (end == text.npos || text[end] != ']') {
            auto whole = e;
            whole.begin = whole.end = text.data() + open;
            say(e.kind, range_at(whole, where), e.message);
            return true;
        }
        const auto between = text.substr(open + 1, end - open - 1);
        const auto at = [&](std::size_t i) { return where.begin + static_cast<std::uint32_t>(i); };
        if (e.kind == "unreadable-bracket") {
            const bool fails_at_once = between.find_first_not_of(" \t") + open + 1 == stop;
            say(e.kind, {where.file, at(open), at(end + 1)}, e.message,
                fails_at_once ? suggest_bracket(between, 0, {where.file, at(open + 1), at(end)})
                              : std::vector<help>{});
            return true;
        }
        say("unreadable-bracket", {where.file, at(open), at(end + 1)},
            fmt::format("only the beginning of this bracket can be read: `{}`",
                        between.substr(0, between.find_last_not_of(" \t", stop - open - 2) + 1)),
            suggest_bracket(between, stop - open - 1, {where.file, at(open + 1), at(end)}));
        return true;
    }

    /// The last line of a step or of prose: those below that are indented deeper continue it.
    std::size_t last_continuation(std::size_t number) const {
        const auto own = indentation(text_.line(number));
        auto last = number;
        while (last < text_.line_count()) {
            const auto next = text_.line(last + 1);
            const bool goes_on = indentation(next) > own && !begins_as<rules::blank_line>(next) &&
                                 !begins_as<rules::step_start>(next) && !unreadable(next, {});
            if (!goes_on) break;
            ++last;
        }
        return last;
    }

    bool lines_may_stand_here(span where, std::string_view what) {
        if (now().is != block::sort::ingredient) return true;
        say("misplaced-line", without_blanks(where, text_.text_of(where)),
            fmt::format("{} cannot stand in the definition of an ingredient", what),
            {{"a component begins with a line like `component: Sweet pastry`", {}}});
        keep(unread{where});
        return false;
    }

    std::size_t read_step(std::size_t number) {
        const auto last = last_continuation(number);
        const auto where = span_of_lines(number, last);
        if (!lines_may_stand_here(where, "a step") || !short_enough(where, "step")) return last + 1;
        if (!has_room(number, steps_, 1, limits::steps, "steps", "components")) return last + 1;
        auto s = pad();
        if (attempt(where, [&](input& in) { read<rules::step_line>(in, s); })) {
            if (!has_room(number, brackets_, brackets_in(s.method), limits::brackets, "brackets"))
                return last + 1;
            s.method.where = where;
            hint_at_dash(s.method);
            keep(std::move(s.method), std::move(s.comments));
        }
        return last + 1;
    }

    static std::size_t brackets_in(const step& method) {
        return static_cast<std::size_t>(
            std::count_if(method.parts.begin(), method.parts.end(),
                          [](const auto& part) { return std::holds_alternative<bracket>(part); }));
    }

    /// A list with dashes, as it is pasted from elsewhere, would pass for a method.
    void hint_at_dash(const step& method) {
        const auto* only =
            method.parts.size() == 1 ? std::get_if<words>(&method.parts.front()) : nullptr;
        if (!only || !reads_like_ingredient(only->text)) return;
        result_.messages.push_back(
            {"dash-before-amount",
             severity::hint,
             only->where,
             "this is read as a step, since it begins with a dash, and looks like an ingredient",
             {},
             {{"leave the dash out: `" + only->text + "`",
               {edit{{method.where.file, method.where.begin, only->where.end}, only->text}}}}});
    }

    void read_ingredient(std::size_t number, span where) {
        if (!lines_may_stand_here(where, "an ingredient line") ||
            !has_room(number, lines_, 1, limits::ingredient_lines, "ingredients", "components"))
            return;
        auto s = pad();
        if (!attempt(where, [&](input& in) { read<rules::ingredient_line>(in, s); })) return;
        s.line.where = where;
        for (const auto& name : s.line.names)
            if (!short_enough(name)) return keep(unread{where});
        keep(std::move(s.line), std::move(s.comments));
    }

    /// Of lines that are continued: each of them was looked at before.
    bool short_enough(span where, std::string_view what) {
        const auto size = where.end - where.begin;
        if (size <= limits::line_bytes) return true;
        say("line-too-long", {where.file, where.begin, where.begin},
            fmt::format("this {} is {} bytes long, with the lines that continue it; at most {} can "
                        "be read",
                        what, size, limits::line_bytes),
            {{fmt::format("divide it into several {}s", what), {}}});
        keep(unread{where});
        return false;
    }

    bool short_enough(const words& name) {
        const auto& text = name.text; // has no more characters than bytes
        if (text.size() <= limits::name_characters ||
            count_characters(text) <= limits::name_characters)
            return true;
        say("name-too-long", name.where,
            fmt::format("this name is {} characters long; a card can hold {}",
                        count_characters(text), limits::name_characters));
        return false;
    }

    std::size_t read_setting(std::size_t number) {
        const auto line = text_.line(number);
        const auto word = word_before_colon(line);
        const auto* entry = setting_named(word);
        const bool is_prose = entry && entry->form == value_form::prose;
        const auto last = is_prose ? last_continuation(number) : number;
        const auto where = span_of_lines(number, last);
        const auto word_begin = where.begin + static_cast<std::uint32_t>(indentation(line));
        const span key_where{where.file, word_begin,
                             word_begin + static_cast<std::uint32_t>(word.size())};
        if (!entry)
            unknown_setting(line, word, key_where, where);
        else if (!short_enough(where, entry->word))
            return last + 1;
        else if (opened_by(entry->name) != block::sort::before)
            open_block(number, *entry, key_where, where);
        else if (!(entry->places & place_of(now().is)))
            misplaced_setting(*entry, key_where, where);
        else
            keep_setting(number, *entry, key_where, where);
        return last + 1;
    }

    void unknown_setting(std::string_view line, std::string_view word, span key_where, span where) {
        const auto value = line.substr(line.find(':') + 1);
        say("unknown-setting", key_where,
            count_characters(word) <= limits::name_characters
                ? fmt::format("there is no setting `{}`", word)
                : "there is no such setting",
            suggest_setting(word, key_where, value, without_blanks(where, line), now().is));
        keep(unread{where});
    }

    void misplaced_setting(const setting_entry& entry, span key_where, span where) {
        std::string places;
        for (auto is : {block::sort::recipe, block::sort::component, block::sort::assembly,
                        block::sort::ingredient})
            if (entry.places & place_of(is))
                places += (places.empty() ? "" : " or ") + std::string(said_place(is));
        say("misplaced-setting", key_where,
            fmt::format("`{}:` cannot stand in {}", entry.word, said_place(now().is)),
            {{fmt::format("it belongs in {}", places), {}}});
        keep(unread{where});
    }

    /// Where a value ends: before the comment and the blanks that may follow it.
    static const char* end_of_value(const char* begin, const char* end, const scratch& s) {
        if (!s.comments.empty() && s.comments.back().where.end == s.between(begin, end).end)
            end = s.base + s.comments.back().where.begin;
        while (end > begin && (end[-1] == ' ' || end[-1] == '\t')) --end;
        return end;
    }

    std::optional<setting> value_of(const setting_entry& entry, span key_where, span where,
                                    scratch& s) {
        setting result;
        const bool is_read = attempt(where, [&](input& in) {
            read<rules::setting_head>(in, s);
            const char* begin = in.current();
            read_value(entry.form, in, s);
            result = {where, entry.name, key_where,
                      s.between(begin, end_of_value(begin, in.current(), s)),
                      std::move(*s.value_read)};
        });
        if (!is_read) return std::nullopt;
        return result;
    }

    void keep_setting(std::size_t number, const setting_entry& entry, span key_where, span where) {
        auto s = pad();
        auto made = value_of(entry, key_where, where, s);
        if (!made) return;
        const auto* losses = std::get_if<std::vector<loss>>(&made->value);
        if (losses &&
            !has_room(number, losses_, losses->size(), limits::losses, "losses", "components"))
            return;
        keep(std::move(*made), std::move(s.comments));
    }

    void open_block(std::size_t number, const setting_entry& entry, span key_where, span where) {
        if (entry.name == key::ingredient &&
            !has_room(number, definitions_, 1, limits::ingredients_defined, "own ingredients"))
            return;
        if ((entry.name == key::component || entry.name == key::assembly) &&
            !has_room(number, components_, 1, limits::components, "components"))
            return;
        lines_ = steps_ = losses_ = 0;
        if (entry.name == key::recipe && std::exchange(seen_recipe_, true)) {
            say("second-recipe", key_where, "a file holds one recipe, and this opens a second",
                {{"a part of the recipe begins with `component:`; another recipe goes in a file of "
                  "its own",
                  {}}});
            return keep(unread{where});
        }
        auto s = pad();
        auto opening = value_of(entry, key_where, where, s);
        words title;
        if (opening) title = std::get<words>(opening->value);
        if (opening && !short_enough(title)) title = {};
        result_.tree.blocks.push_back({opened_by(entry.name), std::move(title), where, {}});
        now().items.reserve(usual_items);
        if (!s.comments.empty()) keep(comment{s.comments.front()});
    }
};

} // namespace

parsed parse(const source& text) { return reader(text).read_all(); }

} // namespace benchcard::grammar
