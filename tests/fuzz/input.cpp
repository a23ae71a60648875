#include "input.hpp"

#include "examples.hpp"

#include <algorithm>

namespace benchcard::fuzz {

namespace {

constexpr std::string_view file_mark = "%file ", order_mark = "%order";

} // namespace

input input_in(const std::string& text) {
    input result;
    std::string* part = &result.recipe;
    for (std::size_t begin = 0; begin < text.size();) {
        const auto end = std::min(text.find('\n', begin), text.size() - 1) + 1;
        const auto line = text.substr(begin, end - begin);
        const auto words = line.substr(0, line.find('\n'));
        if (line.starts_with(file_mark)) {
            part = &result.files[words.substr(file_mark.size())];
        } else if (line.starts_with(order_mark)) {
            part = nullptr;
        } else if (part) {
            *part += line;
        } else {
            result.order.push_back(words);
        }
        begin = end;
    }
    return result;
}

std::string text_of(const input& in) {
    auto result = in.recipe;
    for (const auto& [name, text] : in.files) result += std::string(file_mark) + name + "\n" + text;
    if (!in.order.empty()) result += std::string(order_mark) + "\n";
    for (const auto& word : in.order) result += word + "\n";
    return result;
}

std::unique_ptr<commands::compiled> compiled(const input& in) {
    return commands::compile_text("example.recipe", in.recipe, measures::system::unstated,
                                  language::reader_of(in.files));
}

} // namespace benchcard::fuzz
