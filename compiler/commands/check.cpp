#include "compiler/commands/commands.hpp"
#include "compiler/commands/compile.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/fixes.hpp"
#include "compiler/diagnostics/formats.hpp"

#include <algorithm>
#include <cstdio>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// All recipes of one call, and where what is said of them goes.
class checking {
  public:
    explicit checking(const check_options& options)
        : options_(options), is_plain_(options.format == check_format::text),
          // A recipe that is mended on its way through leaves no room for anything else.
          say_on_error_(options.fix &&
                        std::count(options.files.begin(), options.files.end(), "-")) {}

    int run() {
        for (const auto& file : options_.files)
            if (!(options_.fix ? mend_one(file) : check_one(file))) worst_ = not_run;
        if (!is_plain_) say(document());
        return worst_;
    }

  private:
    bool check_one(const std::string& file) {
        auto c = compile(file, options_.measures);
        if (!c) return false;
        keep(std::move(c));
        return true;
    }

    bool mend_one(const std::string& file) {
        const bool is_input = file == "-";
        const auto read = is_input ? read_standard_input() : read_file(file);
        const std::string name = is_input ? "standard input" : file;
        if (!read.is_read) {
            complain(fmt::format("benchcard: {} cannot be read: {}\n", name, read.failure));
            return false;
        }
        auto m = mend(name, read.text, options_.measures, read_file);
        const bool must_write = is_input || !m.repairs.empty();
        if (const auto failure = must_write ? write_file(file, m.text) : std::nullopt) {
            complain(fmt::format("benchcard: {}\n", *failure));
            return false;
        }
        const auto repairs = repairs_text(name, m.repairs);
        is_plain_ ? say(repairs) : complain(repairs);
        keep(std::move(m.left));
        return true;
    }

    void keep(std::unique_ptr<compiled> c) {
        if (grammar::has_errors(c->messages)) worst_ = std::max<int>(worst_, recipe_errors);
        if (is_plain_)
            say(shown_messages(*c, say_on_error_ ? stderr : stdout));
        else
            kept_.push_back(std::move(c));
    }

    std::string document() const {
        std::vector<diagnostics::report> reports;
        for (const auto& c : kept_) reports.push_back({&c->messages, &c->files.sources});
        switch (options_.format) {
        case check_format::gcc:
            return diagnostics::as_gcc(reports);
        case check_format::json:
            return diagnostics::as_json(reports);
        case check_format::sarif:
            return diagnostics::as_sarif(reports, kept_.size() == options_.files.size());
        case check_format::text:
            break;
        }
        return "";
    }

    void say(const std::string& text) {
        if (say_on_error_) return complain(text);
        const auto failure = write_file("-", text);
        if (!failure) return;
        complain(fmt::format("benchcard: {}\n", *failure));
        worst_ = not_run;
    }

    const check_options& options_;
    bool is_plain_, say_on_error_;
    int worst_ = done;
    std::vector<std::unique_ptr<compiled>> kept_; ///< for a document at the end
};

} // namespace

int check(const check_options& options) { return checking(options).run(); }

} // namespace benchcard::commands
