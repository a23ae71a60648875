#include "compiler/recipe/book.hpp"

#include "grammar/limits.hpp"
#include "grammar/parse.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <map>
#include <utility>

namespace benchcard::recipe {

namespace {

using grammar::key;
using grammar::severity;
namespace limits = grammar::limits;

class gatherer {
  public:
    explicit gatherer(const file_reader& read) : read_(read) {}

    book run(std::string name, std::string text) {
        open(std::move(name), std::move(text));
        return std::move(result_);
    }

  private:
    const file_reader& read_;
    book result_;
    std::map<std::string, std::uint32_t> read_already_;
    std::vector<std::string> chain_; ///< the files being read, each used by the one before it
    std::size_t bytes_ = 0, components_ = 0; ///< of all files
    bool is_full_ = false;                   ///< there was more than can be read

    void open(std::string name, std::string text, const grammar::words* used_by = nullptr) {
        const auto number = static_cast<std::uint32_t>(result_.sources.size());
        read_already_.emplace(name, number);
        bytes_ += text.size();
        result_.sources.emplace_back(number, name, std::move(text));
        auto parsed = grammar::parse(result_.sources.back());
        std::move(parsed.messages.begin(), parsed.messages.end(),
                  std::back_inserter(result_.messages));
        const auto uses = uses_of(parsed.tree);
        components_ += components_in(parsed.tree);
        if (used_by && components_ > limits::components_of_all) {
            say_full(*used_by, fmt::format("with this file all that the recipe uses has {} "
                                           "components; at most {} can be read",
                                           components_, limits::components_of_all));
            parsed.tree.blocks.resize(1);
        }
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

    static std::size_t components_in(const grammar::tree& file) {
        using sort = grammar::block::sort;
        return static_cast<std::size_t>(
            std::count_if(file.blocks.begin(), file.blocks.end(), [](const auto& b) {
                return b.is == sort::component || b.is == sort::assembly;
            }));
    }

    void follow(const grammar::words& use, const std::string& from) {
        const auto folder = std::filesystem::path(from).parent_path();
        const auto path = (folder / use.text).lexically_normal().string();
        if (const auto in_chain = std::find(chain_.begin(), chain_.end(), path);
            in_chain != chain_.end())
            return say_circle(use, in_chain);
        if (read_already_.contains(path)) return;
        if (result_.sources.size() >= limits::files)
            return say_full(use, fmt::format("this recipe uses more than {} files", limits::files));
        if (chain_.size() >= limits::files_in_a_chain)
            return say_full(use, fmt::format("this is the end of a chain of {} files that use one "
                                             "another; at most {} can be read",
                                             chain_.size() + 1, limits::files_in_a_chain));
        auto file = read_(path);
        const auto failure = fmt::format("{} cannot be read: {}", path, file.failure);
        if (file.is_outside) return say("file-outside", use.where, failure);
        if (!file.is_read) return say("unreadable-file", use.where, failure);
        if (bytes_ + file.text.size() > limits::bytes_of_all)
            return say_full(use,
                            fmt::format("with this file all that the recipe uses has {} bytes; at "
                                        "most {} can be read",
                                        bytes_ + file.text.size(), limits::bytes_of_all));
        open(path, std::move(file.text), &use);
    }

    /// Says it once where there are too many files: what follows is more of the same.
    void say_full(const grammar::words& use, std::string message) {
        if (!std::exchange(is_full_, true)) say("too-many-files", use.where, std::move(message));
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

book gather(const std::string& name, std::string text, const file_reader& read) {
    // `./a.recipe` and `a.recipe` are one file to what uses it.
    const auto normal = std::filesystem::path(name).lexically_normal().string();
    return gatherer(read).run(normal.empty() ? name : normal, std::move(text));
}

} // namespace benchcard::recipe
