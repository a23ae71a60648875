#pragma once

#include "styles/layout/page.hpp"
#include "words_of.hpp"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <sys/wait.h>
#include <utility>

/// What other programs see in a PDF.
namespace benchcard {

struct output {
    std::string text;
    int status = -1;
};

/// Runs a tool and gives what it writes to its standard output; one that is not installed fails the
/// test that needs it.
inline output run(const std::string& command) {
    output out;
    FILE* pipe = popen(command.c_str(), "r");
    REQUIRE(pipe);
    std::array<char, 4096> buffer;
    while (const auto count = fread(buffer.data(), 1, buffer.size(), pipe))
        out.text.append(buffer.data(), count);
    out.status = pclose(pipe);
    INFO(command);
    REQUIRE(WIFEXITED(out.status));
    REQUIRE(WEXITSTATUS(out.status) != 127);
    return out;
}

inline std::string file_with(const std::string& bytes, const std::string& name) {
    const auto folder = std::filesystem::path(BENCHCARD_BINARY_DIR) / "pdf-tests";
    std::filesystem::create_directories(folder);
    const auto path = (folder / name).string();
    std::ofstream(path, std::ios::binary) << bytes;
    return path;
}

inline word_list sorted(word_list words) {
    std::ranges::sort(words);
    return words;
}

/// Poppler takes a figure, a blank and one sign that stand alone for a word in spaced letters,
/// and reads `2 %` as `2%`.
inline word_list without_percent_signs(word_list words) {
    for (auto& w : words)
        if (w.ends_with('%')) w.pop_back();
    std::erase(words, "");
    return words;
}

/// The words that a tool reads out of a PDF, sorted.
inline word_list read_words(const std::string& command) {
    const auto out = run(command);
    CHECK(out.status == 0);
    word_list words;
    add_words(words, out.text);
    return sorted(without_percent_signs(words));
}

/// The words that stand in one sorted list and not in the other.
inline word_list unlike(const word_list& a, const word_list& b) {
    word_list out;
    std::ranges::set_symmetric_difference(a, b, std::back_inserter(out));
    return out;
}

inline std::string joined(const word_list& words) {
    std::string out;
    for (const auto& w : words) out += w;
    return out;
}

/// A page as a reader draws it, grey values from 0 (black) to 255.
struct picture {
    int width = 0, height = 0;
    std::string grey;

    int at(int x, int y) const {
        return static_cast<unsigned char>(grey[static_cast<std::size_t>(y * width + x)]);
    }
};

inline picture rendered(const std::string& pdf, int dots_per_inch) {
    const auto stem = pdf + ".picture";
    const auto made = run("pdftoppm -r " + std::to_string(dots_per_inch) + " -gray -singlefile '" +
                          pdf + "' '" + stem + "'");
    REQUIRE(made.status == 0);
    std::ifstream in(stem + ".pgm", std::ios::binary);
    picture p;
    std::string kind;
    int most = 0;
    in >> kind >> p.width >> p.height >> most;
    REQUIRE(kind == "P5");
    in.get();
    p.grey.resize(static_cast<std::size_t>(p.width * p.height));
    in.read(p.grey.data(), static_cast<std::streamsize>(p.grey.size()));
    REQUIRE(in);
    return p;
}

/// The darkest and the lightest grey within a box of a page.
inline std::pair<int, int> greys_in(const picture& p, const layout::box& b, double scale) {
    std::pair<int, int> greys{255, 0};
    const auto clamp = [](double v, int most) {
        return std::clamp(static_cast<int>(std::floor(v)), 0, most - 1);
    };
    for (int y = clamp(b.top * scale, p.height); y <= clamp(b.bottom * scale, p.height); ++y)
        for (int x = clamp(b.left * scale, p.width); x <= clamp(b.right * scale, p.width); ++x) {
            greys.first = std::min(greys.first, p.at(x, y));
            greys.second = std::max(greys.second, p.at(x, y));
        }
    return greys;
}

} // namespace benchcard
