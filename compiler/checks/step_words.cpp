#include "compiler/checks/step_words.hpp"

#include <algorithm>

namespace benchcard::checks {

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

bool begins_with_one_of(std::string_view word, std::initializer_list<std::string_view> beginnings) {
    return std::any_of(beginnings.begin(), beginnings.end(),
                       [&](const auto b) { return word.starts_with(b); });
}

std::string in_small_letters(std::string_view text) {
    std::string result(text);
    for (auto& c : result)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return result;
}

namespace {

class word_splitter {
  public:
    std::vector<step_word> run(const grammar::step& written) {
        for (const auto& part : written.parts) {
            if (const auto* w = std::get_if<grammar::words>(&part))
                add(*w);
            else
                result_.push_back({"", {}, false}), next_begins_ = false;
        }
        return std::move(result_);
    }

  private:
    std::vector<step_word> result_;
    bool next_begins_ = true;

    void add(const grammar::words& in) {
        const auto& text = in.text;
        const bool has_places = text.size() == in.where.end - in.where.begin;
        for (auto begin = text.find_first_not_of(" \t\n"); begin != text.npos;) {
            const auto end = std::min(text.find_first_of(" \t\n", begin), text.size());
            const auto all = std::string_view(text).substr(begin, end - begin);
            const auto last = all.find_last_not_of(".,;:!?()");
            const auto word = all.substr(0, last == all.npos ? 0 : last + 1);
            std::optional<grammar::span> where;
            if (has_places)
                where =
                    grammar::span{in.where.file, in.where.begin + static_cast<std::uint32_t>(begin),
                                  in.where.begin + static_cast<std::uint32_t>(begin + word.size())};
            result_.push_back({in_small_letters(word), where, next_begins_});
            const bool is_link = is_one_of(result_.back().text, {"and", "then", "or"});
            next_begins_ = word.size() < all.size() || is_link;
            begin = text.find_first_not_of(" \t\n", end);
        }
    }
};

} // namespace

std::vector<step_word> words_of_step(const grammar::step& written) {
    return word_splitter().run(written);
}

} // namespace benchcard::checks
