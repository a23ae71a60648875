#include "compiler/recipe/book.hpp"

#include "grammar/parse.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <map>

namespace benchcard::recipe {

namespace {

using grammar::key;
using grammar::severity;

class gatherer {
  public:
    explicit gatherer(const file_reader& read) : read_(read) {}

    book run(std::string name, std::string text) {
        open(std::move(name), std::move(text));
        return std::move(result_);
    }

  private:
    static constexpr std::size_t most_files = 1000;

    const file_reader& read_;
    book result_;
    std::map<std::string, std::uint32_t> read_already_;
    std::vector<std::string> chain_; ///< the files being read, each used by the one before it

    void open(std::string name, std::string text) {
        const auto number = static_cast<std::uint32_t>(result_.sources.size());
        read_already_.emplace(name, number);
        result_.sources.emplace_back(number, name, std::move(text));
        auto parsed = grammar::parse(result_.sources.back());
        std::move(parsed.messages.begin(), parsed.messages.end(),
                  std::back_inserter(result_.messages));
        const auto uses = uses_of(parsed.tree);
        result_.trees.push_back(std::move(parsed.tree));
        chain_.push_back(name);
        for (const auto& use : uses) follow(use, name);
        chain_.pop_back();
    }

    static std::vector<grammar::words> uses_of(const grammar::tree& file) {
        std::vector<grammar::words> result;
        for (const auto& block : file.blocks)
            for (const auto& item : block.items)
                if (const auto* s = std::get_if<grammar::setting>(&item.value);
                    s && s->name == key::use)
                    result.push_back(std::get<grammar::words>(s->value));
        return result;
    }

    void follow(const grammar::words& use, const std::string& from) {
        const auto folder = std::filesystem::path(from).parent_path();
        const auto path = (folder / use.text).lexically_normal().string();
        if (const auto in_chain = std::find(chain_.begin(), chain_.end(), path);
            in_chain != chain_.end())
            return say_circle(use, in_chain);
        if (read_already_.contains(path)) return;
        if (result_.sources.size() >= most_files)
            return say("too-many-files", use.where,
                       fmt::format("this recipe uses more than {} files", most_files));
        auto file = read_(path);
        if (!file.is_read)
            return say("unreadable-file", use.where,
                       fmt::format("{} cannot be read: {}", path, file.failure));
        open(path, std::move(file.text));
    }

    void say_circle(const grammar::words& use, std::vector<std::string>::const_iterator from) {
        std::string circle;
        for (auto i = from; i != chain_.end(); ++i) circle += *i + " uses ";
        circle += *from;
        say("circular-use", use.where, "these files use each other in a circle");
        result_.messages.back().notes.push_back({circle, {}});
    }

    void say(std::string_view kind, grammar::span where, std::string message) {
        result_.messages.push_back({kind, severity::error, where, std::move(message), {}, {}});
    }
};

} // namespace

book gather(std::string name, std::string text, const file_reader& read) {
    // `./a.recipe` and `a.recipe` are one file to what uses it.
    const auto normal = std::filesystem::path(name).lexically_normal().string();
    return gatherer(read).run(normal.empty() ? std::move(name) : normal, std::move(text));
}

} // namespace benchcard::recipe
