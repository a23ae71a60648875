#include "compiler/commands/card_check.hpp"

#include "compiler/cards/deal.hpp"
#include "compiler/cards/record.hpp"
#include "compiler/cards/whole.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/order_options.hpp"
#include "compiler/commands/ordered.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

std::string record_beside(const std::string& recipe_file) {
    return std::filesystem::path(recipe_file).replace_extension(".cards").string();
}

struct record_read {
    std::vector<cards::recorded> cards;
    std::optional<std::string> failure; ///< that it is there and cannot be read
};

record_read read_record_at(const std::string& path) {
    if (std::error_code failed; !std::filesystem::exists(path, failed)) return {};
    constexpr std::size_t most = 16 << 20; // some thousand cards
    const auto file = read_file_up_to(most, path);
    if (!file.is_read) return {{}, fmt::format("{} cannot be read: {}", path, file.failure)};
    auto record = cards::read_record(file.text);
    if (!record) return {{}, path + " is no record of cards, or of another version"};
    return {std::move(*record), {}};
}

/// What a line of a card is shown as: fields apart, and what it is before them.
std::string shown(const std::string& line) {
    std::string result;
    for (const char c : line) result += c == '\t' ? ' ' : c;
    const auto doubled = [&] { return result.find("  "); };
    while (doubled() != result.npos) result.erase(doubled(), 1);
    return result;
}

class card_checking {
  public:
    explicit card_checking(const card_check_options& options) : options_(options) {}

    int run() {
        const auto path = record_beside(options_.file);
        auto record = read_record_at(path);
        if (record.failure) {
            complain(fmt::format("benchcard: {}\n", *record.failure));
            return not_run;
        }
        const auto known =
            std::find_if(record.cards.begin(), record.cards.end(),
                         [&](const auto& r) { return r.fingerprint == options_.fingerprint; });
        return known == record.cards.end() ? check_unknown() : check_known(*known);
    }

  private:
    const card_check_options& options_;

    int say(const std::string& text, int code) const {
        const auto failure = write_file("-", text);
        if (failure) complain(fmt::format("benchcard: {}\n", *failure));
        return failure ? not_run : code;
    }

    /// Today's cards for an order; none, with the exit code, where they cannot be made.
    std::vector<styles::card> todays(const placed_order& placed, int& code) const {
        const auto c = compile(options_.file, placed.measures,
                               {.only_in = own_folder(options_.confined, options_.file)});
        if (!c) {
            code = not_run;
            return {};
        }
        if (!placed.batches.empty()) {
            const auto batches = ordered(*c, placed.batches, placed.fit, code);
            return batches.empty() ? std::vector<styles::card>{} : cards::deal_columns(batches);
        }
        const auto batch = ordered(*c, placed.order, placed.fit, code);
        if (!batch) return {};
        auto all = cards::deal(*batch);
        if (all.size() > 1) all.push_back(cards::whole_recipe(*batch, {}));
        return all;
    }

    std::string is_current(const styles::card& c) const {
        return fmt::format("{} is current: {}, {} of {}\n", options_.fingerprint, c.title,
                           c.is_recipe ? "the whole" : c.number, options_.file);
    }

    const styles::card* with_fingerprint(const std::vector<styles::card>& all) const {
        const auto found = std::find_if(all.begin(), all.end(), [&](const auto& c) {
            return c.fingerprint == options_.fingerprint;
        });
        return found == all.end() ? nullptr : &*found;
    }

    int check_known(const cards::recorded& printed) const {
        int code = done;
        const auto now = todays(placed_by(printed.order), code);
        if (code != done) return code;
        if (const auto* same = with_fingerprint(now)) return say(is_current(*same), done);
        const auto found = std::find_if(now.begin(), now.end(),
                                        [&](const auto& c) { return c.title == printed.title; });
        auto text = fmt::format("{} is not today's card: {}", options_.fingerprint, printed.title);
        if (found == now.end())
            return say(text + fmt::format(" is no longer made in {}\n", options_.file),
                       recipe_errors);
        text += " has changed since it was printed\n";
        const auto change = cards::change_between(printed.says, cards::record_of(*found, {}).says);
        for (const auto& line : change.was) text += fmt::format("  was  {}\n", shown(line));
        for (const auto& line : change.is) text += fmt::format("  is   {}\n", shown(line));
        if (change.was.empty() && change.is.empty()) text += "  the same, in another order\n";
        text += fmt::format("today's card is {}; print it anew\n", found->fingerprint);
        return say(text, recipe_errors);
    }

    int check_unknown() const {
        int code = done;
        const auto now = todays(options_.placed, code);
        if (code != done) return code;
        if (const auto* same = with_fingerprint(now)) return say(is_current(*same), done);
        auto text = fmt::format("{} is not today's card of {}\ntoday's cards, {}:\n",
                                options_.fingerprint, options_.file,
                                std::holds_alternative<batch::as_written>(options_.placed.order) &&
                                        options_.placed.batches.empty()
                                    ? "as the recipe is written"
                                    : "for this order");
        for (const auto& c : now) text += fmt::format("  {}  {}\n", c.fingerprint, c.title);
        text += "if it was printed for another order, give that order too: --make '48 tarts'\n"
                "if it is printed with --record, what has changed since is said here\n";
        return say(text, recipe_errors);
    }
};

} // namespace

std::optional<std::string> record_cards(const std::string& recipe_file,
                                        const std::vector<styles::card>& printed,
                                        const std::vector<std::string>& order) {
    const auto path = record_beside(recipe_file);
    auto record = read_record_at(path);
    if (record.failure) return record.failure;
    std::vector<cards::recorded> added;
    for (const auto& c : printed) added.push_back(cards::record_of(c, order));
    cards::add_to(record.cards, added);
    return write_file(path, cards::written(record.cards));
}

int check_card(const card_check_options& options) { return card_checking(options).run(); }

} // namespace benchcard::commands
