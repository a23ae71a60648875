#include "grammar/tidy.hpp"

#include "grammar/parse.hpp"
#include "grammar/settings.hpp"
#include "grammar/show.hpp"
#include "grammar/tidy_lines.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace benchcard::grammar {

namespace {

/// The order of settings in a block: what is made and where, whose measures and which version,
/// what it brings in, how it is baked, lost and kept, and remarks at the end.
constexpr std::array order_of_settings = {
    key::station,     key::makes,   key::serves,   key::measures, key::labels,  key::revision,
    key::date,        key::by,      key::source,   key::use,      key::require, key::scale_step,
    key::per,         key::tin,     key::tray,     key::loss,     key::keeps,   key::percent,
    key::whole_batch, key::at_most, key::at_least, key::accept,   key::note,    key::caution};

std::size_t rank_of(key name) {
    return static_cast<std::size_t>(
        std::find(order_of_settings.begin(), order_of_settings.end(), name) -
        order_of_settings.begin());
}

bool is_prose(const setting& s) { return setting_of(s.name).form == value_form::prose; }

span where_of(const item_value& value) {
    return std::visit([](const auto& node) { return node.where; }, value);
}

class tidier {
  public:
    tidier(const source& text, const tree& file) : text_(text), file_(file) {
        for (std::size_t n = 1; n <= text.line_count(); ++n) lines_.emplace_back(text.line(n));
    }

    /// The text with these blocks, by their numbers, as they are.
    std::string run(const std::set<std::size_t>& left_alone) {
        for (std::size_t i = 0; i < file_.blocks.size(); ++i)
            if (!left_alone.contains(i)) tidy(i);
        for (const auto& b : file_.blocks)
            for (const auto& i : b.items)
                if (std::holds_alternative<unread>(i.value)) restore(where_of(i.value));
        return joined();
    }

  private:
    const source& text_;
    const tree& file_;
    std::vector<std::string> lines_;

    std::size_t first_line(span where) const { return text_.at(where.begin).line; }
    std::size_t last_line(span where) const { return text_.at(where.end).line; }
    std::string& line(std::size_t number) { return lines_.at(number - 1); }

    void restore(span where) {
        for (auto n = first_line(where); n <= last_line(where); ++n) line(n) = text_.line(n);
    }

    void put(span where, const std::vector<std::string>& lines) {
        auto number = first_line(where);
        for (const auto& l : lines) line(number++) = l;
    }

    void tidy(std::size_t index) {
        const auto& b = file_.blocks[index];
        open(b);
        const auto widths = widths_of(columns_in(b));
        for (std::size_t i = 0; i < b.items.size(); ++i)
            if (!would_be_gone_on_with(index, i)) tidy(b.items[i], widths, b);
        if (b.is == block::sort::recipe || b.is == block::sort::component ||
            b.is == block::sort::assembly)
            put_settings_in_order(b);
    }

    void open(const block& b) {
        if (b.is == block::sort::before || b.title.text.empty()) return;
        std::string_view word;
        for (const auto& entry : all_settings())
            if (opened_by(entry.name) == b.is) word = entry.word;
        const auto* behind =
            b.items.empty() ? nullptr : std::get_if<comment>(&b.items.front().value);
        const bool has_comment = behind && is_behind_opening(*behind, b);
        put(b.where, {with_comment(std::string(word) + ": " + b.title.text,
                                   has_comment ? trimmed(behind->text) : "")});
    }

    bool is_behind_opening(const comment& c, const block& b) const {
        return b.is != block::sort::before && first_line(c.where) == first_line(b.where);
    }

    std::vector<line_columns> columns_in(const block& b) const {
        std::vector<line_columns> result;
        for (const auto& i : b.items)
            if (const auto* l = std::get_if<ingredient_line>(&i.value))
                result.push_back(columns_of(i, *l, text_));
        return result;
    }

    /// Whether an indented line that cannot be read follows: a step or a note above it, moved to
    /// the left, would take it for its own.
    bool would_be_gone_on_with(std::size_t block_number, std::size_t i) const {
        const auto& b = file_.blocks[block_number];
        const auto* s = std::get_if<setting>(&b.items[i].value);
        if (!(s && is_prose(*s)) && !std::holds_alternative<step>(b.items[i].value)) return false;
        const auto next = last_line(where_of(b.items[i].value)) + 1;
        const auto below = text_.line(next);
        return !below.empty() && (below.front() == ' ' || below.front() == '\t') &&
               !trimmed(below).empty() && is_unread(next);
    }

    bool is_unread(std::size_t number) const {
        for (const auto& b : file_.blocks)
            for (const auto& i : b.items)
                if (std::holds_alternative<unread>(i.value) &&
                    first_line(where_of(i.value)) == number)
                    return true;
        return false;
    }

    void tidy(const item& i, const column_widths& widths, const block& b) {
        if (const auto* l = std::get_if<ingredient_line>(&i.value))
            put(l->where, {in_columns(columns_of(i, *l, text_), widths)});
        else if (const auto* s = std::get_if<setting>(&i.value))
            put(s->where,
                is_prose(*s) ? tidy_note(i, *s) : std::vector{tidy_setting(i, *s, text_)});
        else if (const auto* m = std::get_if<step>(&i.value))
            put(m->where, tidy_step(i, *m));
        else if (const auto* c = std::get_if<comment>(&i.value); c && !is_behind_opening(*c, b))
            put(c->where, {std::string(trimmed(c->text))});
        else if (std::holds_alternative<empty_line>(i.value))
            put(where_of(i.value), {""});
    }

    std::vector<std::string> tidy_note(const item& i, const setting& s) const {
        return tidy_prose(i, std::string(setting_of(s.name).word) + ": ",
                          {text_.file(), s.value_where.begin, s.where.end}, text_);
    }

    std::vector<std::string> tidy_step(const item& i, const step& m) const {
        const auto dash =
            m.where.begin + static_cast<std::uint32_t>(text_.text_of(m.where).find('-'));
        return tidy_prose(i, "- ", {text_.file(), dash + 1, m.where.end}, text_);
    }

    /// A setting with the comments above it.
    struct moved {
        std::size_t rank;
        std::vector<std::string> lines;
    };

    /// The settings at the head of a block, as far as nothing else and no empty line stands between
    /// them, each with the comments above it.
    void put_settings_in_order(const block& b) {
        std::vector<moved> run;
        std::vector<std::string> comments;
        std::size_t first = 0;
        const auto end_run = [&] {
            std::stable_sort(run.begin(), run.end(),
                             [](const auto& x, const auto& y) { return x.rank < y.rank; });
            auto number = first;
            for (const auto& m : run)
                for (const auto& l : m.lines) line(number++) = l;
            run.clear(), comments.clear(), first = 0;
        };
        for (const auto& i : b.items) {
            const auto where = where_of(i.value);
            if (std::holds_alternative<ingredient_line>(i.value) ||
                std::holds_alternative<step>(i.value))
                break;
            if (const auto* c = std::get_if<comment>(&i.value)) {
                if (is_behind_opening(*c, b)) continue;
                if (first == 0) first = first_line(where);
                comments.push_back(line(first_line(where)));
                continue;
            }
            const auto* s = std::get_if<setting>(&i.value);
            if (!s) {
                end_run();
                continue;
            }
            if (first == 0) first = first_line(where);
            moved m{rank_of(s->name), std::exchange(comments, {})};
            for (auto n = first_line(where); n <= last_line(where); ++n) m.lines.push_back(line(n));
            run.push_back(std::move(m));
        }
        end_run();
    }

    /// The line end behind line `number` as it is in the text; nothing behind the last.
    std::string_view end_of(std::size_t number) const {
        if (number >= text_.line_count()) return {};
        const auto end = text_.line_start(number) + text_.line(number).size();
        return text_.text().substr(end, text_.line_start(number + 1) - end);
    }

    std::string joined() const {
        std::string result;
        for (std::size_t n = 1; n <= lines_.size(); ++n)
            result.append(lines_[n - 1]).append(end_of(n));
        if (!lines_.back().empty()) result += lines_.size() > 1 ? end_of(1) : "\n";
        return result;
    }
};

/// What was read, block by block: what stands in it in order of the alphabet, and its lines and
/// steps in theirs.
std::vector<std::vector<std::string>> meaning_of(const tree& file) {
    std::vector<std::vector<std::string>> result(1);
    const auto shown = show(file);
    std::vector<std::string> in_order;
    const auto end_block = [&] {
        std::sort(result.back().begin(), result.back().end());
        result.push_back(std::exchange(in_order, {}));
        result.emplace_back();
    };
    for (std::size_t begin = 0; begin < shown.size();) {
        const auto end = shown.find('\n', begin);
        auto line = shown.substr(begin, end - begin);
        line.erase(line.find_last_not_of(" \t\r") + 1);
        if (!line.starts_with(' ')) end_block();
        if (line.starts_with("  line ") || line.starts_with("  step ")) in_order.push_back(line);
        result.back().push_back(std::move(line));
        begin = end + 1;
    }
    end_block();
    return result;
}

/// Puts the blocks of a file in order, as far as they are read as before.
class order_finder {
  public:
    order_finder(const source& text, const tree& file)
        : text_(text), file_(file), meaning_(meaning_of(file)), result_(text.text()) {
        for (std::size_t i = 0; i < file.blocks.size(); ++i) left_alone_.insert(i);
    }

    std::string run() {
        find(0, file_.blocks.size());
        return result_;
    }

  private:
    const source& text_;
    const tree& file_;
    const std::vector<std::vector<std::string>> meaning_;
    std::string result_;
    std::set<std::size_t> left_alone_;
    std::size_t tries_left_ = 50; ///< a file where more are needed has other faults

    /// Some blocks at once, or else half of them and half: the last first, for whether a block may
    /// be put in order hangs on what stands below it.
    void find(std::size_t first, std::size_t end) {
        if (first == end || tries_left_ == 0) return;
        --tries_left_;
        auto left = left_alone_;
        left.erase(left.lower_bound(first), left.lower_bound(end));
        auto made = tidier(text_, file_).run(left);
        if (meaning_of(parse(source(0, "", made)).tree) == meaning_) {
            left_alone_ = std::move(left);
            result_ = std::move(made);
        } else if (end - first > 1) {
            const auto middle = first + (end - first) / 2;
            find(middle, end);
            find(first, middle);
        }
    }
};

} // namespace

std::string tidied(const source& text, const tree& file) { return order_finder(text, file).run(); }

std::string tidied(const std::string& bytes) {
    const source text(0, "", bytes);
    const auto mark = bytes.substr(0, bytes.size() - text.text().size());
    return mark + tidied(text, parse(text).tree);
}

} // namespace benchcard::grammar
