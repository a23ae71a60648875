#include "compiler/commands/fixes.hpp"

#include "grammar/nearest.hpp"
#include "grammar/settings.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <set>

namespace benchcard::commands {

namespace {

using grammar::diagnostic;
using grammar::edit;
using grammar::source;

/// An edit that may be made, and the message that carries it.
struct candidate {
    edit change;
    std::string_view kind;
};

/// A misspelled setting is certain where one setting alone is near.
bool has_one_near_setting(std::string_view word) {
    std::vector<std::string> words;
    for (const auto& entry : grammar::all_settings()) words.emplace_back(entry.word);
    return grammar::nearest(word, words, 2).size() < 2;
}

/// Where what was meant leaves no doubt; other messages carry edits as proposals.
bool is_certain(const diagnostic& m, const edit& e, const source& text) {
    if (m.kind == "numbered-step" || m.kind == "plain-mention" || m.kind == "range-upside-down")
        return true;
    return m.kind == "unknown-setting" && e.where == m.where &&
           has_one_near_setting(text.text_of(m.where));
}

std::vector<candidate> candidates_in(const compiled& c) {
    const auto& text = c.files.sources.front();
    std::vector<candidate> result;
    for (const auto& m : c.messages) {
        if (m.where.file != 0 || m.helps.size() != 1 || m.helps.front().edits.size() != 1) continue;
        const auto& e = m.helps.front().edits.front();
        if (e.where.file == 0 && is_certain(m, e, text)) result.push_back({e, m.kind});
    }
    std::sort(result.begin(), result.end(), [](const auto& a, const auto& b) {
        return a.change.where.begin < b.change.where.begin;
    });
    std::uint32_t free_from = 0;
    std::erase_if(result, [&](const candidate& c_) {
        if (c_.change.where.begin < free_from) return true;
        free_from = c_.change.where.end;
        return false;
    });
    return result;
}

std::string with_edits(std::string_view text, const std::vector<candidate>& edits) {
    std::string result(text);
    for (auto e = edits.rbegin(); e != edits.rend(); ++e)
        result.replace(e->change.where.begin, e->change.where.end - e->change.where.begin,
                       e->change.text);
    return result;
}

bool is_equal(const std::optional<recipe::spread>& a, const std::optional<recipe::spread>& b) {
    if (!a || !b) return !a && !b;
    return a->low == b->low && a->used == b->used && a->high == b->high;
}

bool weighs_the_same(const recipe::component& a, const recipe::component& b) {
    return a.times == b.times && is_equal(a.mix, b.mix) && is_equal(a.baked, b.baked) &&
           is_equal(a.made.grams, b.made.grams) && is_equal(a.made.pieces, b.made.pieces) &&
           is_equal(a.made.each, b.made.each) && a.made.ml == b.made.ml &&
           std::equal(a.lines.begin(), a.lines.end(), b.lines.begin(), b.lines.end(),
                      [](const auto& x, const auto& y) { return is_equal(x.grams, y.grams); });
}

bool weighs_the_same(const recipe::recipe& a, const recipe::recipe& b) {
    return std::equal(a.components.begin(), a.components.end(), b.components.begin(),
                      b.components.end(),
                      [](const auto& x, const auto& y) { return weighs_the_same(x, y); });
}

/// The lines of the recipe itself that have an error.
std::set<std::size_t> lines_with_errors(const compiled& c) {
    std::set<std::size_t> result;
    for (const auto& m : c.messages)
        if (m.where.file == 0 && m.level == grammar::severity::error)
            result.insert(c.files.sources.front().at(m.where.begin).line);
    return result;
}

/// Whether an edit leaves an error in its line, of these. What a step says comes to light only when
/// it is read: that is no harm.
bool leaves_error(const compiled& before, const std::set<std::size_t>& wrong, const candidate& c) {
    return c.kind != "numbered-step" &&
           wrong.contains(before.files.sources.front().at(c.change.where.begin).line);
}

/// Whether the edits mend and do no harm. An edit never adds a line, so lines keep their numbers.
bool is_mended(const compiled& before, const compiled& after, const std::vector<candidate>& edits) {
    if (!grammar::has_errors(before.messages))
        return !grammar::has_errors(after.messages) &&
               weighs_the_same(before.meaning, after.meaning);
    const auto wrong = lines_with_errors(after);
    return std::none_of(edits.begin(), edits.end(),
                        [&](const candidate& c) { return leaves_error(before, wrong, c); });
}

/// Cuts what is quoted to what a person can take in at a glance.
std::string in_quotes(std::string_view text) {
    constexpr std::size_t longest = 60;
    const auto line = text.substr(0, text.find_first_of("\r\n"));
    std::string result;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const bool is_first_of_character = (static_cast<unsigned char>(line[i]) & 0xC0) != 0x80;
        if (i >= longest && is_first_of_character) break;
        result += line[i];
    }
    return "`" + result + (result.size() < text.size() ? "…" : "") + "`";
}

constexpr int most_rounds = 10; // a repair may bring another to light
/// Of the texts that are compiled to see which repairs do harm: a thousand of a usual recipe's
/// size.
constexpr std::size_t most_bytes_tried = 4 << 20;

/// Those of some repairs that do no harm, tried half by half.
std::vector<candidate> harmless(const std::vector<candidate>& edits, const auto& is_harmless) {
    if (edits.empty()) return {};
    if (is_harmless(edits)) return edits;
    if (edits.size() == 1) return {};
    const auto middle = edits.begin() + static_cast<std::ptrdiff_t>(edits.size() / 2);
    auto result = harmless({edits.begin(), middle}, is_harmless);
    for (auto& e : harmless({middle, edits.end()}, is_harmless)) result.push_back(std::move(e));
    return result;
}

} // namespace

mended mend(const std::string& name, const std::string& text, measures::system measures,
            const recipe::file_reader& read) {
    const auto compiled_from = [&](std::string from) {
        return compile_text(name, std::move(from), measures, read);
    };
    mended result{text, {}, compiled_from(text)};
    // Offsets count from behind a byte order mark, which stays.
    const auto mark = text.size() - result.left->files.sources.front().text().size();
    auto bytes_left = most_bytes_tried;
    for (int round = 0; round < most_rounds; ++round) {
        const auto& before = *result.left;
        const auto& old = before.files.sources.front();
        auto edits = candidates_in(before);
        const auto made_of = [&](const std::vector<candidate>& some) {
            return text.substr(0, mark) + with_edits(old.text(), some);
        };
        auto after = compiled_from(made_of(edits));
        if (!is_mended(before, *after, edits)) {
            if (grammar::has_errors(before.messages))
                std::erase_if(edits, [&, wrong = lines_with_errors(*after)](const candidate& c) {
                    return leaves_error(before, wrong, c);
                });
            edits = harmless(edits, [&](const std::vector<candidate>& some) {
                if (bytes_left < text.size()) return false;
                bytes_left -= text.size();
                return is_mended(before, *compiled_from(made_of(some)), some);
            });
            after = compiled_from(made_of(edits));
            if (!is_mended(before, *after, edits)) edits.clear();
        }
        if (edits.empty()) break;
        for (const auto& e : edits)
            result.repairs.push_back({old.at(e.change.where.begin),
                                      in_quotes(old.text_of(e.change.where)),
                                      in_quotes(e.change.text), std::string(e.kind)});
        result.text = made_of(edits);
        result.left = std::move(after);
    }
    return result;
}

std::string repairs_text(const std::string& name, const std::vector<repair>& repairs) {
    std::string result;
    for (const auto& r : repairs)
        result += fmt::format("{}:{}:{}: mended: {} is now {} [{}]\n", name, r.at.line, r.at.column,
                              r.before, r.after, r.kind);
    return result;
}

} // namespace benchcard::commands
