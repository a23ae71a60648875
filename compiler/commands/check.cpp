#include "compiler/commands/commands.hpp"
#include "compiler/commands/compile.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/fixes.hpp"
#include "compiler/commands/folders.hpp"
#include "compiler/commands/progress.hpp"
#include "compiler/commands/said_once.hpp"
#include "compiler/commands/shared_files.hpp"
#include "compiler/commands/side_by_side.hpp"
#include "compiler/diagnostics/formats.hpp"

#include <algorithm>
#include <cstdio>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// One recipe as it was checked: what stays of it is what is said.
struct checked {
    told heard;
    std::string failure; ///< where it could not be read
};

/// All recipes of one call, and where what is said of them goes.
class checking {
  public:
    explicit checking(const check_options& options)
        : options_(options), is_plain_(options.format == check_format::text),
          // A recipe that is mended on its way through leaves no room for anything else.
          say_on_error_(options.fix &&
                        std::count(options.files.begin(), options.files.end(), "-")) {}

    int run() {
        const auto recipes = recipes_named(options_.files);
        if (recipes.has_failed) worst_ = not_run;
        options_.fix ? mend_all(recipes) : check_all(recipes);
        if (!is_plain_) say(document(recipes.all.size()));
        return worst_;
    }

  private:
    void mend_all(const named_recipes& recipes) {
        for (const auto& recipe : recipes.all)
            if (!mend_one(recipe)) worst_ = not_run;
    }

    void check_all(const named_recipes& recipes) {
        const auto count = recipes.all.size();
        shared_files used(read_file);
        side_by_side<checked> work(count, threads_for(options_.jobs, count), [&](std::size_t i) {
            checked one;
            const auto c =
                compile(recipes.all[i].path, options_.measures,
                        {std::ref(used), [&](std::string_view text) { one.failure += text; },
                         own_folder(options_.confined, recipes.all[i])});
            if (c) one.heard = {std::move(c->messages), std::move(c->files.sources)};
            return one;
        });
        progress bar(count, is_plain_);
        said_once known;
        for (const auto& recipe : recipes.all) {
            auto one = work.take();
            bar.step();
            if (!one.failure.empty() || !one.heard.messages.empty()) bar.clear();
            complain(one.failure);
            if (!one.failure.empty()) worst_ = not_run;
            keep(std::move(one.heard), recipe.in_folder ? &known : nullptr);
        }
    }

    bool mend_one(const named_recipe& recipe) {
        const auto& file = recipe.path;
        const bool is_input = file == "-";
        const auto reader = confined_to(own_folder(options_.confined, recipe), read_file);
        const auto read = is_input ? read_standard_input() : reader(file);
        const std::string name = is_input ? "standard input" : file;
        if (!read.is_read) {
            complain(fmt::format("benchcard: {} cannot be read: {}\n", name, read.failure));
            return false;
        }
        auto m = mend(name, read.text, options_.measures, reader);
        const bool must_write = is_input || !m.repairs.empty();
        if (const auto failure = must_write ? write_file(file, m.text) : std::nullopt) {
            complain(fmt::format("benchcard: {}\n", *failure));
            return false;
        }
        const auto repairs = repairs_text(name, m.repairs);
        is_plain_ ? say(repairs) : complain(repairs);
        keep({std::move(m.left->messages), std::move(m.left->files.sources)}, nullptr);
        return true;
    }

    void keep(told heard, said_once* known) {
        if (grammar::has_errors(heard.messages)) worst_ = std::max<int>(worst_, recipe_errors);
        if (known) known->drop_known(heard);
        if (is_plain_)
            say(shown_messages(heard.messages, heard.sources, say_on_error_ ? stderr : stdout));
        else if (!heard.sources.empty())
            kept_.push_back(std::move(heard));
    }

    std::string document(std::size_t count) const {
        std::vector<diagnostics::report> reports;
        for (const auto& heard : kept_) reports.push_back({&heard.messages, &heard.sources});
        switch (options_.format) {
        case check_format::gcc:
            return diagnostics::as_gcc(reports);
        case check_format::json:
            return diagnostics::as_json(reports);
        case check_format::sarif:
            return diagnostics::as_sarif(reports, kept_.size() == count);
        case check_format::text:
            break;
        }
        return "";
    }

    void say(const std::string& text) {
        if (text.empty()) return;
        if (say_on_error_) return complain(text);
        const auto failure = write_file("-", text);
        if (!failure) return;
        complain(fmt::format("benchcard: {}\n", *failure));
        worst_ = not_run;
    }

    const check_options& options_;
    bool is_plain_, say_on_error_;
    int worst_ = done;
    std::vector<told> kept_; ///< for a document at the end
};

} // namespace

int check(const check_options& options) { return checking(options).run(); }

} // namespace benchcard::commands
