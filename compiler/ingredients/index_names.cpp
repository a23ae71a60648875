// A program of the build: writes the C++ source of `index_of_built_in` for the files that it is
// given, in the order in which they are built in.

#include "compiler/ingredients/names.hpp"
#include "compiler/ingredients/table_file.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ostream.h>
#include <fstream>
#include <iostream>
#include <iterator>
#include <set>
#include <tuple>

namespace {

using namespace benchcard::ingredients;

struct name {
    std::string compared;
    std::size_t block;
    country where;
};

struct name_index {
    std::vector<std::string> blocks; ///< as they are written in the source
    std::vector<name> names;

    void add(std::size_t file, const std::string& text) {
        for (const auto& b : blocks_of(text)) {
            for (const auto& written : b.names) {
                const auto [bare, where] = name_and_country(written);
                names.push_back({compared_name(bare), blocks.size(), where});
            }
            blocks.push_back(fmt::format("{{{}, {{{}, {}}}, {{{}, {}}}}}", file, b.whole.begin,
                                         b.whole.end, b.measures.begin, b.measures.end));
        }
    }
};

/// Names hold no character that a string in C++ takes for anything else: letters, figures, blanks
/// and a few signs.
void write(const name_index& made, std::ostream& to) {
    fmt::print(to, "#include \"compiler/ingredients/built_in_index.hpp\"\n\n"
                   "namespace benchcard::ingredients {{\n\nnamespace {{\n\n"
                   "constexpr std::string_view texts =");
    std::string names;
    std::set<std::size_t> counts;
    std::size_t at = 0;
    for (const auto& n : made.names) {
        fmt::print(to, "\n    R\"({})\"", n.compared);
        fmt::format_to(std::back_inserter(names), "    {{{{{}, {}}}, {}, country{{{}}}}},\n", at,
                       at + n.compared.size(), n.block, static_cast<int>(n.where));
        at += n.compared.size();
        counts.insert(words_in(n.compared));
    }
    fmt::print(to, ";\n\nconstexpr indexed_name names[] = {{\n{}}};\n\n", names);
    fmt::print(to, "constexpr indexed_block blocks[] = {{\n    {}}};\n\n",
               fmt::join(made.blocks, ",\n    "));
    fmt::print(to, "constexpr std::uint32_t word_counts[] = {{{}}};\n\n", fmt::join(counts, ", "));
    fmt::print(to, "constexpr built_in_index index = {{texts, names, blocks, word_counts}};\n\n"
                   "}} // namespace\n\n"
                   "const built_in_index& index_of_built_in() {{ return index; }}\n\n"
                   "}} // namespace benchcard::ingredients\n");
}

} // namespace

int main(int count, char** arguments) {
    name_index made;
    for (int i = 2; i < count; ++i) {
        std::ifstream file(arguments[i], std::ios::binary);
        made.add(static_cast<std::size_t>(i - 2),
                 std::string(std::istreambuf_iterator<char>(file), {}));
    }
    std::ranges::sort(made.names, {}, [](const name& n) { return std::tie(n.compared, n.block); });
    std::ofstream output(count > 1 ? arguments[1] : "", std::ios::binary);
    write(made, output);
    output.close();
    return output && !made.names.empty() ? 0 : 1;
}
