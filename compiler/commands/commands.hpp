#pragma once

#include "compiler/batch/batch.hpp"
#include "compiler/label/dates.hpp"
#include "compiler/measures/systems.hpp"
#include "styles/layout/impose.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

/// One file a command. Each gives the program's exit code.
namespace benchcard::commands {

enum exit_code : int {
    done = 0,
    recipe_errors = 1, ///< the recipe has errors
    not_run = 2, ///< a wrong command line, an unreadable file, an output that cannot be written
};

enum class check_format { text, gcc, json, sarif };

struct check_options {
    std::vector<std::string> files;           ///< recipes, and folders of them
    check_format format = check_format::text; ///< for people, or for other programs
    bool fix = false;                         ///< makes the repairs that are certain
    std::size_t jobs = 0;                     ///< recipes at once; 0 for one a core
    bool confined = false;                    ///< reads nothing outside the recipe's own folder
    measures::system measures = measures::system::unstated;
};
int check(const check_options& options);

/// What is made of a recipe, as the command line says it.
struct placed_order {
    batch::order order;
    std::optional<batch::fit> fit;
    std::vector<exact> batches = {}; ///< several factors, side by side, instead of an order
    measures::system measures = measures::system::unstated;
};

struct card_check_options {
    std::string file;
    std::string fingerprint; ///< `7K4Q-92`
    placed_order placed;     ///< what it was printed for, where no record says so
    bool confined = false;   ///< reads nothing outside the recipe's own folder
};

struct explain_options {
    std::vector<std::string> kinds; ///< none for a list of all
};
int explain(const explain_options& options);

enum class tidy_way { print, write, check };

struct tidy_options {
    std::vector<std::string> files;
    tidy_way way = tidy_way::print; ///< in the file, or only the names of those that would change
};
/// The canonical text of recipes. With `check`, 1 where one is written otherwise.
int tidy(const tidy_options& options);

struct weigh_options {
    std::string file;
    batch::order order;
    std::optional<batch::fit> fit;
    std::vector<exact> batches; ///< several factors, side by side, instead of an order
    bool why = false;           ///< how each amount came about, instead of the table
    bool confined = false;      ///< reads nothing outside the recipe's own folder
    measures::system measures = measures::system::unstated;
};
int weigh(const weigh_options& options);

struct print_options {
    std::vector<std::string> files; ///< recipes, and folders of them
    std::string output;             ///< a file; or a folder, for a PDF a recipe
    batch::order order;
    std::optional<batch::fit> fit;
    std::vector<exact> batches; ///< several factors, side by side on each card, instead of an order
    std::vector<std::string> cards; ///< names of components; none for all
    std::string style;              ///< a name, or the path of a file; empty for the usual one
    std::string paper;              ///< empty for the style's own
    std::optional<layout::flip> two_sided;
    std::size_t copies = 1; ///< of each card on a sheet
    bool chart = false;     ///< a wall chart instead of cards
    bool dated = false;     ///< the PDF says when it was made
    bool record = false;    ///< keeps what the cards say in a file beside each recipe
    std::vector<std::string> order_words = {}; ///< the order as it was given, for the record
    bool watch = false;                        ///< again whenever one of the files changes
    std::string depfile;                       ///< what was read, for make and ninja; may be empty
    std::size_t jobs = 0;                      ///< recipes at once; 0 for one a core
    bool confined = false;                     ///< reads nothing outside the recipe's own folder
    measures::system measures = measures::system::unstated;
};
int print(const print_options& options);
/// A wall chart of the ingredients of some recipes, or of the whole table.
int print_chart(const print_options& options);

/// Prints now and whenever one of the recipes or of the files that they use changes, until it is
/// ended from outside; a line each time. Where there are errors the last PDF stays.
using printer = std::function<int(const print_options&)>;
int watch(const print_options& options, const printer& print);

struct convert_options {
    std::string amount; ///< or the words of a name, for a list
    bool why = false;   ///< how the weight came about too
    measures::system measures = measures::system::unstated;
};
int convert(const convert_options& options);
/// A table of what a cup and the spoons of the ingredients of a name weigh; of all where it is
/// empty.
int list_measures(const convert_options& options);

struct label_options {
    std::string file;
    batch::order order;
    std::optional<batch::fit> fit;
    bool json = false;                 ///< for other programs, instead of text
    std::string output;                ///< the PDF of a label to print; empty for text
    std::string style, paper;          ///< of the PDF; as in print_options
    std::vector<label::date> made;     ///< when it and its parts were made; none for no date
    std::vector<label::frozen> frozen; ///< when it was in the freezer
    bool confined = false;             ///< reads nothing outside the recipe's own folder
    measures::system measures = measures::system::unstated;
};
/// The draft of a label: the ingredient list, and the date by which it must be used.
int label(const label_options& options);

/// Serves an editor on standard input and output, by the Language Server Protocol.
int language_server();

/// Reads the command line, runs the command it names and gives the exit code.
int run(int argc, const char* const* argv);

} // namespace benchcard::commands
