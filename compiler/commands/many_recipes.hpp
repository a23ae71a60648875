#pragma once

#include "compiler/commands/commands.hpp"
#include "compiler/commands/depfile.hpp"
#include "compiler/commands/folders.hpp"
#include "compiler/commands/pdf_file.hpp"
#include "compiler/commands/progress.hpp"
#include "compiler/commands/said_once.hpp"
#include "compiler/commands/shared_files.hpp"

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

namespace benchcard::commands {

/// What came of one of many recipes, before any of it is said.
struct made_recipe {
    told heard;       ///< of the checks
    std::string said; ///< all else
    int code = done;
    bool is_printed = false; ///< false too for a file that makes nothing
    std::string title;
    std::vector<styles::card> cards;
    std::vector<layout::page> sheets; ///< of a book
    std::vector<std::string> inputs;  ///< the files it was made from
};

/// What the threads have in common: nothing in it changes but the files that were read.
class kitchen {
  public:
    kitchen(const print_options& wanted, look found, pdf::font_set loaded)
        : options(wanted), how(std::move(found)), fonts(std::move(loaded)), files_(read_file) {}

    /// The cards of a recipe. Threads may call this at once.
    made_recipe deal(const named_recipe& recipe);

    const print_options& options;
    const look how;
    const pdf::font_set fonts;

  private:
    shared_files files_;
};

/// Everything in a kitchen, or nothing, and said on standard error.
std::unique_ptr<kitchen> open_kitchen(const print_options& options);

/// Says in order what came of many recipes, and keeps the worst exit code.
class reporting {
  public:
    reporting(const print_options& options, std::size_t count)
        : options_(options), bar_(count, true),
          not_seen_(options.cards.begin(), options.cards.end()) {}

    void take(const named_recipe& recipe, made_recipe& made);
    void fail(int code) { worst_ = std::max(worst_, code); }
    void say(const std::string& text);
    /// Says which cards were in no recipe; whether all were in one.
    bool saw_all_cards();
    int worst() const { return worst_; }

  private:
    const print_options& options_;
    progress bar_;
    said_once known_;
    std::vector<std::string> not_seen_;
    int worst_ = done;
};

/// Writes the rules of a depfile, where one is wanted. Gives the exit code.
int write_depfile(const print_options& options, const std::vector<dependence>& all);

} // namespace benchcard::commands
