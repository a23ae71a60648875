#include "compiler/commands/house_book.hpp"

#include "compiler/cards/contents.hpp"
#include "compiler/commands/many_recipes.hpp"
#include "compiler/commands/side_by_side.hpp"
#include "styles/layout/folio.hpp"
#include "styles/layout/lay_out.hpp"
#include "styles/pdf/book.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <future>
#include <iterator>
#include <memory>

namespace benchcard::commands {

namespace {

namespace fs = std::filesystem;

/// The name of the first folder that is printed.
std::string title_of(const print_options& options) {
    for (const auto& name : options.files) {
        std::error_code failed;
        const auto folder = fs::canonical(name, failed);
        if (!failed && fs::is_directory(folder, failed)) return folder.filename().string();
    }
    return "Recipes";
}

/// Cards that are cut out of a sheet carry no page number.
look above_page_numbers(look how) {
    if (!how.on.is_cut()) {
        how.on.card = layout::above_folio(how.on.card, how.style);
        how.on.sheet = how.on.card;
    }
    return how;
}

/// A PDF of all recipes, which grows as they come in.
class book {
  public:
    explicit book(kitchen& in)
        : in_(in), pages_(above_page_numbers(in.how)),
          drawn_(std::make_unique<pdf::book>(in.fonts, described(title_of(in.options), in.how),
                                             cards::contents_title)) {}

    /// The sheets of a recipe. Threads may call this at once.
    made_recipe make(const named_recipe& recipe) const {
        auto made = in_.deal(recipe);
        if (!made.is_printed) return made;
        made.sheets = sheets_of(made.cards, pages_, in_.fonts.metrics);
        const auto failed = pdf::look_over(made.sheets, in_.fonts);
        made.code = say_failures(failed, {{}, made.title, {made.heard.sources}},
                                 [&](std::string_view text) { made.said += text; });
        made.is_printed = made.code == done;
        return made;
    }

    void add(const named_recipe& recipe, made_recipe made) {
        from_.insert(from_.end(), made.inputs.begin(), made.inputs.end());
        if (made.code != done) left_out_.push_back(recipe.within);
        if (!made.is_printed) return;
        if (drawn_->page_count() + made.sheets.size() > most_pages) {
            left_out_.push_back(recipe.within);
            ++too_many_;
            return;
        }
        entries_.push_back({made.title, drawn_->page_count() + 1});
        if (!in_.how.on.is_cut())
            for (std::size_t i = 0; i < made.sheets.size(); ++i)
                layout::add_folio(made.sheets[i], std::to_string(drawn_->page_count() + 1 + i),
                                  in_.how.style, in_.fonts.metrics);
        drawn_->add(made.title, made.sheets);
    }

    bool is_empty() const { return entries_.empty(); }

    /// Gives the exit code. What the book was drawn in is given back beside the writing, where
    /// there is more than one thread for it.
    int write(std::size_t threads) {
        if (too_many_ > 0)
            complain(
                fmt::format("benchcard: {} has room for {} pages, and {} recipes are left out\n",
                            in_.options.output, most_pages, too_many_));
        const auto pdf = drawn_->finish(contents(threads));
        std::future<void> given_back;
        if (threads > 1) given_back = std::async([this] { drawn_.reset(); });
        if (const int code = say_failures(pdf, {}, complain); code != done) return code;
        if (const auto failure = write_file(in_.options.output, pdf.bytes)) {
            complain(fmt::format("benchcard: {}\n", *failure));
            return not_run;
        }
        const int code = write_depfile(in_.options, {{in_.options.output, from_}});
        return too_many_ > 0 ? not_run : code;
    }

  private:
    kitchen& in_;
    const look pages_;
    std::unique_ptr<pdf::book> drawn_;
    std::vector<cards::book_entry> entries_;
    std::vector<std::string> left_out_, from_;
    std::size_t too_many_ = 0; ///< recipes beyond the most pages

    /// A card fills whole sheets, so each can be laid out by itself.
    std::vector<layout::page> contents(std::size_t threads) const {
        using pages = std::vector<layout::page>;
        auto how = in_.how;
        how.style = *styles::built_in_style("chart");
        how.on = {in_.how.on.sheet, in_.how.on.sheet};
        how.copies = 1;
        const auto cards = cards::contents_cards(title_of(in_.options), entries_, left_out_);
        side_by_side<pages> work(
            cards.size(), threads_for(threads, cards.size()),
            [&](std::size_t i) { return sheets_of({cards[i]}, how, in_.fonts.metrics); });
        pages result;
        for (std::size_t i = 0; i < cards.size(); ++i)
            std::ranges::move(work.take(), std::back_inserter(result));
        return result;
    }
};

int nothing_printed(int code) {
    complain("benchcard: nothing was printed\n");
    return std::max<int>(code, recipe_errors);
}

} // namespace

int print_book(const print_options& options, const named_recipes& recipes) {
    const auto in = open_kitchen(options);
    if (!in) return not_run;
    book made(*in);
    reporting report(options, recipes.all.size());
    if (recipes.has_failed) report.fail(not_run);
    const auto threads = threads_for(options.jobs, recipes.all.size());
    side_by_side<made_recipe> work(recipes.all.size(), threads,
                                   [&](std::size_t i) { return made.make(recipes.all[i]); });
    for (const auto& recipe : recipes.all) {
        auto one = work.take();
        report.take(recipe, one);
        made.add(recipe, std::move(one));
    }
    report.say("");
    if (!report.saw_all_cards()) report.fail(not_run);
    if (made.is_empty()) return nothing_printed(report.worst());
    report.fail(made.write(threads));
    return report.worst();
}

} // namespace benchcard::commands
