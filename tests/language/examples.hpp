#pragma once

#include "compiler/recipe/book.hpp"
#include "compiler/recipe/resolve.hpp"

#include <map>
#include <string>
#include <vector>

/// The examples of grammar/LANGUAGE.md and of the pages of messages: fenced blocks, each followed
/// by what comes of it.
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
    std::size_t end = 0;                      ///< byte behind its text in the page
    bool is_style = false; ///< a `style` fence: a style file, which has messages only
};
std::vector<example> examples_in(const std::string& page);

/// Every example of LANGUAGE.md and of the pages of messages.
std::vector<example> all_examples();

/// A recipe that has been through all stages up to the checks.
struct outcome {
    recipe::book files;
    recipe::recipe meaning;
    grammar::diagnostics messages; ///< in the order of the text
};
/// Reads from files by their names, and nothing else; they must outlive it.
recipe::file_reader reader_of(const std::map<std::string, std::string>& files);
/// The recipe is called `example.recipe`; files that are not in `files` do not exist.
outcome compile(const std::string& recipe, const std::map<std::string, std::string>& files = {});

std::string tree_text(const outcome& o);
std::string weights_text(const outcome& o);
std::string messages_text(const outcome& o);
/// What is said of an example, whether a recipe or a style, and of which texts.
struct said {
    grammar::diagnostics messages;
    std::vector<grammar::source> sources;
};
said said_of(const example& e);
std::string messages_text(const said& s);
/// The text that belongs in a result fence of that name; throws for a name that is none.
std::string result_text(const example& e, const std::string& name);

/// The page with the results that belong behind its examples.
std::string with_results(const std::string& page);
/// The page with the program's tables between their marks.
std::string with_tables(const std::string& page);

/// The text of a file of the project; empty when there is none.
std::string text_of(const std::string& path);
/// Whether UPDATE_GOLDEN=1 asks for results to be written anew.
bool wants_update();
/// Says which result fences differ between two pages of the same examples.
void print_changes(const std::string& name, const std::string& before, const std::string& after);

} // namespace benchcard::language
