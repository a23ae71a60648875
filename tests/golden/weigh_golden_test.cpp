#include "compiled_example.hpp"
#include "compiler/cards/weigh_table.hpp"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <set>

/// The weigh-out of every example against figures reckoned by hand. A golden file holds the table
/// and, above each of its lines, the reckoning as comment lines that begin with `#`.
namespace benchcard::golden {

namespace {

struct golden_order {
    std::string file; ///< of this folder
    std::string example;
    std::string order; ///< as on the command line; empty for the written batch
};

std::string file_name(const std::string& example, const std::string& more) {
    auto name = example;
    for (auto& c : name)
        if (c == '/') c = '-';
    return name + more + ".weigh.txt";
}

std::vector<golden_order> all_orders() {
    std::vector<golden_order> result;
    for (const auto& example : all_examples())
        result.push_back({file_name(example, ""), example, ""});
    for (const auto* example : {"pear-and-almond-tart", "currant-buns"})
        result.push_back({file_name(example, ".half"), example, "1/2"});
    result.push_back(
        {file_name("pear-and-almond-tart", ".5-tarts"), "pear-and-almond-tart", "5 tarts"});
    result.push_back({file_name("currant-buns", ".36-buns"), "currant-buns", "36 buns"});
    return result;
}

std::string table_of(const golden_order& o) {
    const auto c = compiled_example(o.example);
    return cards::weigh_table(ordered(*c, o.order));
}

bool is_comment(const std::string& line) { return line.starts_with('#'); }

/// A table line that only goes on with the name of the line above.
bool goes_on(const std::string& line) { return line.find_first_not_of(' ') >= 30; }

/// A line of the table with the comment lines above it.
struct explained {
    std::string line;
    std::string comment;
};

std::vector<explained> explained_lines(const std::string& golden) {
    std::vector<explained> result;
    std::string comment;
    for (const auto& line : lines_of(golden)) {
        if (is_comment(line))
            comment += line + "\n";
        else if (goes_on(line) && !result.empty())
            result.back().line += "\n" + line;
        else
            result.push_back({line, std::exchange(comment, {})});
    }
    return result;
}

std::string without_comments(const std::string& golden) {
    std::string result;
    for (const auto& e : explained_lines(golden)) result += e.line + "\n";
    return result;
}

/// A new table with the comments of the old one, line for line.
std::string with_comments_of(const std::string& table, const std::string& golden) {
    const auto now = explained_lines(table);
    const auto before = explained_lines(golden);
    std::string result;
    for (std::size_t i = 0; i < now.size(); ++i)
        result += (i < before.size() ? before[i].comment : "") + now[i].line + "\n";
    return result;
}

/// The figures in a text: `1041`, `5¼`, `600–800`, `53.6`.
std::set<std::string> figures_in(const std::string& text) {
    static const std::vector<std::string> signs = {"0", "1", "2", "3", "4", "5", "6",
                                                   "7", "8", "9", ".", "–", "½", "⅓",
                                                   "⅔", "¼", "¾", "⅛", "⅜", "⅝", "⅞"};
    std::set<std::string> result;
    std::string figure;
    const auto end_figure = [&] {
        while (!figure.empty() && figure.back() == '.') figure.pop_back();
        if (!figure.empty() && figure != "–") result.insert(figure);
        figure.clear();
    };
    for (std::size_t i = 0; i < text.size();) {
        std::size_t length = 0;
        for (const auto& sign : signs)
            if (text.compare(i, sign.size(), sign) == 0) length = sign.size();
        if (length > 0)
            figure += text.substr(i, length);
        else
            end_figure();
        i += std::max<std::size_t>(length, 1);
    }
    end_figure();
    return result;
}

} // namespace

TEST_CASE("every example compiles without a message") {
    REQUIRE(all_examples().size() >= 9);
    for (const auto& example : all_examples()) {
        const auto c = compiled_example(example);
        CHECK(messages_of(*c) == "");
        CHECK(c->meaning.has_product);
    }
}

TEST_CASE("weigh-outs stand as they were reckoned by hand", "[golden]") {
    for (const auto& o : all_orders()) {
        const auto golden = read_golden(o.file);
        const auto table = table_of(o);
        compare_with_golden(o.file, without_comments(golden), table,
                            with_comments_of(table, golden));
    }
}

TEST_CASE("every line of a golden weigh-out has its reckoning above it, with each of its figures",
          "[golden]") {
    for (const auto& o : all_orders()) {
        const auto golden = explained_lines(read_golden(o.file));
        REQUIRE(golden.size() > 5);
        for (const auto& e : golden) {
            if (e.line.empty()) continue;
            INFO(o.file << ": " << e.line << "\nreckoned so:\n" << e.comment);
            CHECK_FALSE(e.comment.empty());
            const auto reckoned = figures_in(e.comment);
            for (const auto& figure : figures_in(e.line)) {
                INFO("figure " << figure);
                CHECK(reckoned.contains(figure));
            }
        }
    }
}

} // namespace benchcard::golden
