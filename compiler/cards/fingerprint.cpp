#include "compiler/cards/fingerprint.hpp"

#include <algorithm>
#include <cctype>
#include <cstdint>

namespace benchcard::cards {

namespace {

using styles::card;
using styles::paragraph;

constexpr std::string_view signs = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
constexpr std::size_t dash_after = 4, sign_count = 6;

class card_lines {
  public:
    std::vector<std::string> run(const card& c) {
        add_unless_empty("title", {c.title, c.recipe, c.station});
        add_unless_empty("batch", {c.batch, c.yield});
        add_unless_empty("columns", {c.imperial_heading, c.spoons_heading, c.percent_heading});
        for (const auto& r : c.weigh_out)
            add("weigh",
                {r.amount, r.unit, r.name, r.preparation, r.imperial, r.spoons, r.percent});
        for (const auto& t : c.totals) add("total", {t.amount, t.unit, t.text});
        add_table(c.table);
        for (const auto& p : c.method) add("step", p);
        for (const auto& o : c.oven) add("oven", {o.celsius, o.fan, o.fahrenheit, o.gas, o.time});
        if (!c.allergens.empty()) add("allergens", c.allergens);
        for (const auto& p : c.cautions) add("caution", p);
        for (const auto& p : c.notes) add("note", p);
        if (!c.keeping.empty()) add("keeping", c.keeping);
        add("foot", {c.made_label, c.revision, c.footnote, c.language});
        // Where the figures come from is no part of what is made: it is not counted.
        for (const auto& part : c.parts)
            for (auto& line : said_on(part)) lines_.push_back(std::move(line));
        return std::move(lines_);
    }

  private:
    std::vector<std::string> lines_;

    void add(std::string_view what, const std::vector<std::string>& parts) {
        std::string line(what);
        line += ':';
        for (const auto& part : parts) {
            line += '\t';
            line += part;
        }
        line.erase(line.find_last_not_of('\t') + 1);
        lines_.push_back(std::move(line));
    }
    void add_unless_empty(std::string_view what, const std::vector<std::string>& parts) {
        if (std::any_of(parts.begin(), parts.end(), [](const auto& p) { return !p.empty(); }))
            add(what, parts);
    }

    /// What is set bold stands between stars.
    void add(std::string_view what, const paragraph& p) {
        std::string text;
        bool is_strong = false;
        for (const auto& r : p) {
            if (r.strong != is_strong) text += "**";
            is_strong = r.strong;
            text += r.text;
        }
        if (is_strong) text += "**";
        add(what, std::vector<std::string>{text});
    }

    void add_table(const styles::table& t) {
        add_unless_empty("headings", t.headings);
        for (const auto& r : t.rows) {
            std::vector<std::string> parts = {r.name, r.remark};
            parts.insert(parts.end(), r.figures.begin(), r.figures.end());
            add("row", parts);
        }
    }
};

/// FNV-1a over 64 bits (Fowler, Noll, Vo): spreads well, and needs no library.
std::uint64_t digest_of(const std::vector<std::string>& lines) {
    std::uint64_t value = 14695981039346656037u;
    for (const auto& line : lines)
        for (const char c : line + "\n")
            value = (value ^ static_cast<unsigned char>(c)) * 1099511628211u;
    return value;
}

} // namespace

std::vector<std::string> said_on(const card& c) { return card_lines().run(c); }

std::string fingerprint_of(const card& c) {
    const auto digest = digest_of(said_on(c));
    auto rest = digest ^ (digest >> 32);
    std::string result;
    for (std::size_t i = 0; i < sign_count; ++i, rest >>= 5) {
        if (i == dash_after) result += '-';
        result += signs[rest & 31];
    }
    return result;
}

std::string fingerprint_in(std::string_view text) {
    std::string result;
    for (const char c : text) {
        const auto sign = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
        if (sign == '-' && result.size() == dash_after) continue;
        if (signs.find(sign) == signs.npos) return "";
        result += sign;
    }
    if (result.size() != sign_count) return "";
    return result.insert(dash_after, "-");
}

} // namespace benchcard::cards
