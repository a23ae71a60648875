#pragma once

#include "compiler/recipe/book.hpp"
#include "compiler/recipe/resolve.hpp"

#include <map>
#include <string>
#include <vector>

/// The examples of grammar/LANGUAGE.md: fenced blocks, each followed by what comes of it.
namespace benchcard::language {

/// A fenced block of a page: the word behind its fence, and its text.
struct fence {
    std::string info;
    std::string text;
    std::size_t line = 0;       ///< of its opening fence, from 1
    std::size_t text_begin = 0; ///< byte at which its text begins in the page
};
std::vector<fence> fences_in(const std::string& page);

/// A recipe, the files it may use, and the results that stand behind it.
struct example {
    std::string recipe;
    std::size_t line = 0;
    std::map<std::string, std::string> files; ///< of `file NAME` fences before it
    std::vector<fence> results;               ///< `tree`, `weights`, `messages`
};
std::vector<example> examples_in(const std::string& page);

/// A recipe that has been through all stages up to the checks.
struct outcome {
    recipe::book files;
    recipe::recipe meaning;
    grammar::diagnostics messages; ///< in the order of the text
};
/// The recipe is called `example.recipe`; files that are not in `files` do not exist.
outcome compile(const std::string& recipe, const std::map<std::string, std::string>& files = {});

std::string tree_text(const outcome& o);
std::string weights_text(const outcome& o);
std::string messages_text(const outcome& o);
/// The text that belongs in a result fence of that name; throws for a name that is none.
std::string result_text(const outcome& o, const std::string& name);

/// The page with what belongs in it: results behind examples, and tables between their marks.
std::string brought_up_to_date(const std::string& page);

} // namespace benchcard::language
