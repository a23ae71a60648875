#include "compiled_example.hpp"

#include "compiler/commands/files.hpp"
#include "compiler/diagnostics/render.hpp"
#include "grammar/parse.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <sstream>

namespace benchcard::golden {

namespace {

const std::string examples_folder = BENCHCARD_SOURCE_DIR "/examples/";
const std::string golden_folder = BENCHCARD_SOURCE_DIR "/tests/golden/";

/// Reads what stands below `examples/`, so that messages and goldens have no path of this machine.
recipe::file_text read_example(const std::string& path) {
    return commands::read_file(examples_folder + path);
}

batch::order order_of(const std::string& said) {
    if (said.empty()) return batch::as_written{};
    if (const auto factor = grammar::parse_number(said)) return batch::scaled{*factor};
    const grammar::source text(0, "order", said);
    const auto wanted = grammar::parse_yield(text);
    REQUIRE(wanted.made);
    return batch::to_make{*wanted.made};
}

/// The lines that one text has and the other has not, as a baker would mark them.
void print_changes(const std::string& before, const std::string& now) {
    const auto old_lines = lines_of(before), new_lines = lines_of(now);
    const auto is_in = [](const auto& line, const auto& lines) {
        return std::find(lines.begin(), lines.end(), line) != lines.end();
    };
    for (const auto& line : old_lines)
        if (!is_in(line, new_lines)) std::cout << "  - " << line << "\n";
    for (const auto& line : new_lines)
        if (!is_in(line, old_lines)) std::cout << "  + " << line << "\n";
}

} // namespace

std::vector<std::string> all_examples() {
    std::vector<std::string> names;
    for (const auto& file : std::filesystem::recursive_directory_iterator(examples_folder))
        if (file.path().extension() == ".recipe")
            names.push_back(std::filesystem::relative(file.path(), examples_folder)
                                .replace_extension()
                                .string());
    std::sort(names.begin(), names.end());
    return names;
}

std::unique_ptr<commands::compiled> compiled_example(const std::string& name) {
    const auto path = name + ".recipe";
    auto text = read_example(path);
    INFO(path << ": " << text.failure);
    REQUIRE(text.is_read);
    return commands::compile_text(path, std::move(text.text), measures::system::unstated,
                                  read_example);
}

std::string messages_of(const commands::compiled& c) {
    return diagnostics::render_all(c.messages, c.files.sources, diagnostics::colour::no);
}

batch::batch ordered(const commands::compiled& c, const std::string& order) {
    REQUIRE(c.meaning.has_product);
    const auto factor = batch::factor_of(c.meaning, order_of(order));
    if (const auto* no = std::get_if<batch::refusal>(&factor)) FAIL(no->message);
    return batch::scale(c.meaning, std::get<exact>(factor));
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::string read_golden(const std::string& name) {
    std::ifstream in(golden_folder + name);
    return {std::istreambuf_iterator<char>(in), {}};
}

void compare_with_golden(const std::string& name, const std::string& golden, const std::string& now,
                         const std::string& whole) {
    if (golden != now && std::getenv("UPDATE_GOLDEN")) {
        std::ofstream(golden_folder + name) << (whole.empty() ? now : whole);
        std::cout << "golden " << name << " was written anew:\n";
        print_changes(golden, now);
        return;
    }
    INFO("differs from tests/golden/" << name << "; UPDATE_GOLDEN=1 writes it anew");
    CHECK(now == golden);
}

} // namespace benchcard::golden
