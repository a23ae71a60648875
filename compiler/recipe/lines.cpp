#include "compiler/ingredients/names.hpp"
#include "compiler/recipe/scope.hpp"
#include "compiler/recipe/weighing.hpp"
#include "grammar/nearest.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::recipe {

using grammar::severity;

void component_names::add(const std::string& title, std::size_t index) {
    const auto compared = ingredients::compared_name(title);
    by_compared_name[compared] = index;
    word_counts.insert(ingredients::words_in(compared));
    titles.push_back(title);
}

scope::meaning scope::of(const std::string& name) const {
    meaning result;
    const auto words = ingredients::compared_words(name);
    std::size_t component_words = 0;
    for (std::size_t first = 0; first < words.size() && !result.component; ++first) {
        if (!components_.word_counts.contains(words.size() - first)) continue;
        std::string end;
        for (auto i = first; i < words.size(); ++i) end += (i == first ? "" : " ") + words[i];
        const auto found = components_.by_compared_name.find(end);
        if (found == components_.by_compared_name.end()) continue;
        result.component = found->second;
        component_words = words.size() - first;
        std::string before;
        for (std::size_t i = 0; i < first; ++i) before += (i == 0 ? "" : " ") + words[i];
        result.description = before;
    }
    const auto found = ingredients_.find(name, ingredients::country_of(system_));
    const auto described = ingredients::compared_words(found.description).size();
    const auto ingredient_words = words.size() - described;
    const bool is_itself = result.component && result.component == inside_;
    const bool is_ingredient = !result.component || ingredient_words > component_words ||
                               (is_itself && ingredient_words == component_words);
    if ((found.match || !found.readings.empty()) && is_ingredient)
        return {{}, found.match, found.description, found.readings};
    return result;
}

std::vector<std::string> scope::near(const std::string& name) {
    constexpr std::size_t most_asked = 100;
    if (++components_.asked > most_asked) return {};
    auto result = grammar::nearest(name, components_.titles, 2);
    for (auto& other : ingredients_.near(name, 3))
        if (std::find(result.begin(), result.end(), other) == result.end())
            result.push_back(std::move(other));
    if (result.size() > 3) result.resize(3);
    return result;
}

namespace {

std::string joined(const std::vector<grammar::words>& parts) {
    std::string result;
    for (const auto& part : parts) result += (result.empty() ? "" : ", ") + part.text;
    return result;
}

bool says_optional(const std::vector<grammar::words>& preparations) {
    return std::any_of(preparations.begin(), preparations.end(), [](const auto& p) {
        return ingredients::compared_name(p.text) == "optional";
    });
}

class line_reader {
  public:
    line_reader(scope& names, grammar::diagnostics& to) : names_(names), to_(to) {}

    line read(const grammar::ingredient_line& written) {
        line result;
        result.where = written.where;
        result.written = &written;
        result.measures = names_.system();
        result.preparation = joined(written.preparations);
        result.optional = says_optional(written.preparations);
        result.some = written.amounts.front().quantity.is == grammar::amount::sort::some;
        for (const auto& name : written.names)
            result.name += (result.name.empty() ? "" : " or ") + name.text;
        find_names(result, written);
        if (!result.some) find_weight(result, written);
        return result;
    }

  private:
    scope& names_;
    grammar::diagnostics& to_;

    bool is_weighed_in_grams(const std::vector<grammar::measure>& terms) const {
        return std::all_of(terms.begin(), terms.end(),
                           [](const auto& m) { return m.in && measures::weight_of(*m.in); });
    }

    void find_names(line& result, const grammar::ingredient_line& written) {
        for (std::size_t i = 0; i < written.names.size(); ++i) {
            const auto meaning = names_.of(written.names[i].text);
            if (!meaning.readings.empty()) say_two_readings(written.names[i], meaning.readings);
            if (i > 0) {
                if (meaning.what) result.others.push_back(meaning.what);
                continue;
            }
            result.component = meaning.component;
            result.what = meaning.what;
            add_what_is_described(result, meaning, written.names[i]);
            result.description =
                (written.piece ? written.piece->text + " " : "") + meaning.description;
            if (!meaning.component && !meaning.what && meaning.readings.empty())
                say_unknown(written, written.names[i], result.some);
        }
    }

    /// `hazelnut cream` ends in cream, but is no cream alone: what the words before it name is
    /// carried along with its allergens, and said.
    void add_what_is_described(line& result, const scope::meaning& meaning,
                               const grammar::words& name) {
        if (!meaning.what || meaning.description.empty()) return;
        const auto other = names_.ingredients().find(meaning.description,
                                                     ingredients::country_of(names_.system()));
        if (!other.match || other.match == meaning.what) return;
        std::string more;
        for (const auto& allergen : other.match->contains) {
            const auto& known = meaning.what->contains;
            if (std::find(known.begin(), known.end(), allergen) == known.end())
                more += (more.empty() ? "" : ", ") + allergen;
        }
        if (more.empty()) return;
        result.others.push_back(other.match);
        grammar::diagnostic message{
            "read-as-shorter-name",
            severity::hint,
            name.where,
            fmt::format("`{}` is read as {}; the allergens of {} are added to it: {}", name.text,
                        meaning.what->name, other.match->name, more),
            {},
            {}};
        message.helps.push_back(
            {fmt::format("if it is something else, define it: `ingredient: {}`", name.text), {}});
        to_.push_back(std::move(message));
    }

    void say_two_readings(const grammar::words& name,
                          const std::vector<const ingredients::entry*>& readings) {
        const bool settled = // whose words these are is known, and they are open all the same
            ingredients::country_of(names_.system()) != ingredients::country::any;
        const char* what = "is one thing in Britain and another in the United States";
        if (readings.size() == 1) what = "is understood in Britain or in the United States alone";
        if (readings.size() > 1 && settled) what = "may be more than one thing";
        auto message =
            error_at("two-readings", name.where, fmt::format("`{}` {}", name.text, what));
        for (const auto* e : readings)
            message.notes.push_back({fmt::format("it may be {}", e->name), {}});
        message.helps.push_back({settled ? "name the one that is meant"
                                         : "name the one that is meant, or say `measures: uk` or "
                                           "`measures: us` at the head of the file",
                                 {}});
        to_.push_back(std::move(message));
    }

    void say_unknown(const grammar::ingredient_line& written, const grammar::words& name,
                     bool some) {
        const auto near = names_.near(name.text);
        std::vector<grammar::help> helps;
        for (const auto& n : near)
            helps.push_back({fmt::format("a known name near it: `{}`", n), {}});
        const auto& weight = written.equals.empty() ? written.amounts : written.equals;
        if (some || is_weighed_in_grams(weight) || !weight.front().in) {
            to_.push_back(
                {"unknown-ingredient",
                 severity::hint,
                 name.where,
                 fmt::format("`{}` is not in the ingredient table: its allergens are not known",
                             name.text),
                 {},
                 std::move(helps)});
            return;
        }
        auto message = error_at(
            "unknown-volume", name.where,
            fmt::format(
                "`{}` is not in the ingredient table, so what a {} of it weighs is not known",
                name.text, grammar::short_name(*weight.front().in)));
        helps.push_back({fmt::format("or weigh one and define it: `ingredient: {}`, below it "
                                     "`weighs: … g per {}` and `source: weighed here`",
                                     name.text, grammar::short_name(*weight.front().in)),
                         {}});
        message.helps = std::move(helps);
        to_.push_back(std::move(message));
    }

    void say_all_of_none(const line& result, const grammar::ingredient_line& written) {
        auto message =
            error_at("all-of-no-component", written.amounts.front().where,
                     fmt::format("`all` is of a component, and `{}` is none", result.name));
        message.helps.push_back({"say how much of it", {}});
        to_.push_back(std::move(message));
    }

    void find_weight(line& result, const grammar::ingredient_line& written) {
        warn_of_fillings(written);
        if (result.component) return find_component_amount(result, written);
        if (written.amounts.front().quantity.is == grammar::amount::sort::all)
            return say_all_of_none(result, written);
        auto found = weigh(written.amounts, result.what, result.description, names_.system(),
                           written.names.front().text);
        result.ml = found.ml;
        result.count = found.count;
        result.how = found.how;
        result.figure = found.figure;
        result.grams = found.grams;
        if (!written.equals.empty()) return use_stated(result, written, found);
        if (found.problem)
            to_.push_back(std::move(*found.problem));
        else if (!found.grams && found.how == weighed_by::piece)
            say_piece_unknown(result, written);
    }

    /// Things of the trade that are counted, and are no misspelt measure for being near one.
    static bool is_counted_thing(const std::string& word) {
        constexpr std::string_view things[] = {
            "slice", "stalk", "cap",  "dish", "stock", "crop",  "drip",    "pack", "sack", "stem",
            "sheet", "leaf",  "head", "half", "punch", "bunch", "quarter", "chop", "clip", "pin"};
        const auto one = ingredients::compared_name(word);
        return std::find(std::begin(things), std::end(things), one) != std::end(things);
    }

    /// The measure that the first word of a counted line was meant to be: `2 cupps flour`.
    static std::string measure_meant(const std::string& first_word) {
        if (is_counted_thing(first_word)) return "";
        // Short forms that the language leaves out: `T` and `t` are too easily taken for each
        // other.
        constexpr std::pair<std::string_view, std::string_view> short_forms[] = {
            {"c", "cup"},      {"c.", "cup"},      {"C", "cup"},     {"T", "tbsp"},
            {"T.", "tbsp"},    {"t", "tsp"},       {"t.", "tsp"},    {"Tb", "tbsp"},
            {"pkg", "packet"}, {"pkg.", "packet"}, {"pkt", "packet"}};
        for (const auto& [form, meant] : short_forms)
            if (first_word == form) return std::string(meant);
        std::vector<std::string> all = {"teaspoon", "tablespoon", "ounce", "pound",
                                        "gram",     "kilogram",   "litre", "millilitre"};
        for (const auto u : grammar::all_units) {
            const std::string name(grammar::short_name(u));
            constexpr std::size_t too_short_to_compare = 3;
            if (name.size() >= too_short_to_compare && name.find(' ') == name.npos)
                all.push_back(name);
        }
        for (std::size_t i = all.size(); i-- > 0;) all.push_back(ingredients::plural(all[i]));
        // Short words are near many: only one slip counts as one.
        constexpr std::size_t long_word = 8;
        const auto near = grammar::nearest(first_word, all, 1);
        const bool meant = !near.empty() && (first_word.size() >= long_word ||
                                             grammar::distance(first_word, near.front()) <= 1);
        return meant ? near.front() : "";
    }

    void say_piece_unknown(const line& result, const grammar::ingredient_line& written) {
        const auto& name = written.names.front();
        const auto first_word = name.text.substr(0, name.text.find(' '));
        const auto meant = result.description.empty() ? "" : measure_meant(first_word);
        if (!meant.empty()) {
            const grammar::span word{name.where.file, name.where.begin,
                                     name.where.begin +
                                         static_cast<std::uint32_t>(first_word.size())};
            auto message = error_at("unknown-measure", word,
                                    fmt::format("there is no measure `{}`", first_word));
            message.helps.push_back(
                {fmt::format("the nearest is `{}`", meant), {grammar::edit{word, meant}}});
            return to_.push_back(std::move(message));
        }
        if (!result.what) return; // said where its name was looked up
        grammar::diagnostic message{
            "no-piece-weight",
            severity::hint,
            written.amounts.front().where,
            fmt::format("what one weighs is not known, so {} is left out of the weights",
                        result.name),
            {},
            {}};
        message.helps.push_back(
            {fmt::format(
                 "give a weight instead, as in `100 g {}`, or define what one weighs: `ingredient: "
                 "{}`, below it `weighs: 25 g each` and `source: weighed here`",
                 result.name, result.what->name),
             {}});
        to_.push_back(std::move(message));
    }

    void warn_of_fillings(const grammar::ingredient_line& written) {
        using grammar::filling;
        for (const auto& m : written.amounts) {
            if (m.filled != filling::heaped && m.filled != filling::scant &&
                m.filled != filling::rounded)
                continue;
            grammar::diagnostic message{
                "not-a-measure",
                severity::warning,
                m.where,
                "heaped, rounded and scant are not measures: one cook's is another's and a half",
                {},
                {}};
            message.notes.push_back(
                {m.filled == filling::heaped
                     ? "heaped may mean from 1¼ to 2 level ones (common practice)"
                 : m.filled == filling::rounded
                     ? "rounded may mean from 1⅛ to 1½ level ones (common practice)"
                     : "scant may mean from ¾ to a whole level one (common practice)",
                 {}});
            message.helps.push_back({"give level measures, or the weight as well", {}});
            to_.push_back(std::move(message));
        }
    }

    /// `2 cups = 250 g`: the weight counts, and the volume is checked against it.
    void use_stated(line& result, const grammar::ingredient_line& written, const weighing& found) {
        auto stated = weigh(written.equals, result.what, result.description, names_.system(),
                            written.names.front().text);
        if (stated.problem) {
            to_.push_back(std::move(*stated.problem));
            return;
        }
        if (!stated.grams) {
            to_.push_back(error_at("unreadable-amount", written.equals.front().where,
                                   "what stands after `=` is a weight"));
            return;
        }
        result.grams = stated.grams;
        if (found.problem || !found.grams) return;
        const bool both_weights = is_weighed_in_grams(written.amounts);
        const bool fits = both_weights ? check_ounces(written, *stated.grams, *found.grams)
                                       : check_pair(written, *stated.grams, *found.grams, result);
        if (!fits) result.grams.reset(); // which of the two is meant is not known
    }

    bool check_pair(const grammar::ingredient_line& written, const spread& stated,
                    const spread& reckoned, const line& l);
    bool check_ounces(const grammar::ingredient_line& written, const spread& stated,
                      const spread& reckoned);
    void find_component_amount(line& result, const grammar::ingredient_line& written);
};

/// How far a stated pair may lie outside the published range before it is an error. Figures are
/// rounded when recipes are written: 3 % is common practice.
const exact pair_tolerance = exact(3, 100);

/// False where it disagrees, which has been said.
bool line_reader::check_pair(const grammar::ingredient_line& written, const spread& stated,
                             const spread& reckoned, const line& l) {
    const bool fits = stated.used >= reckoned.low * (1 - pair_tolerance) &&
                      stated.used <= reckoned.high * (1 + pair_tolerance);
    if (fits) return true;
    const auto g = [](const exact& v) { return fmt::format("{:.0f}", approximately(v)); };
    const grammar::span pair{written.where.file, written.amounts.front().where.begin,
                             written.equals.back().where.end};
    auto message =
        error_at("pair-disagrees", pair,
                 fmt::format("{} g is stated, and this much {} weighs {}", g(stated.used), l.name,
                             reckoned.low == reckoned.high
                                 ? g(reckoned.used) + " g"
                                 : fmt::format("{} to {} g", g(reckoned.low), g(reckoned.high))));
    if (l.figure && !l.figure->source.empty())
        message.notes.push_back({"by " + l.figure->source, {}});
    to_.push_back(std::move(message));
    return false;
}

/// `8 oz = 225 g`, both weights. Books round an ounce to 25 or to 30 g (common practice).
bool line_reader::check_ounces(const grammar::ingredient_line& written, const spread& stated,
                               const spread& reckoned) {
    const bool in_ounces = std::any_of(written.amounts.begin(), written.amounts.end(),
                                       [](const auto& m) { return m.in == grammar::unit::ounce; });
    const exact ounce = measures::weight_of(grammar::unit::ounce)->value;
    const exact low = in_ounces ? exact(25 / ounce) : exact(1);
    const exact high = in_ounces ? exact(30 / ounce) : exact(1);
    if (stated.used >= reckoned.low * low * (1 - pair_tolerance) &&
        stated.used <= reckoned.high * high * (1 + pair_tolerance))
        return true;
    const grammar::span pair{written.where.file, written.amounts.front().where.begin,
                             written.equals.back().where.end};
    to_.push_back(error_at("pair-disagrees", pair,
                           fmt::format("{:.0f} g is stated, and the weight beside it is {:.0f} g",
                                       approximately(stated.used), approximately(reckoned.used))));
    return false;
}

void line_reader::find_component_amount(line& result, const grammar::ingredient_line& written) {
    using sort = grammar::amount::sort;
    const auto& first = written.amounts.front();
    result.how = weighed_by::component;
    if (first.quantity.is == sort::all)
        result.share = 1;
    else if (first.quantity.is == sort::half)
        result.share = exact(1, 2);
    else {
        auto found = weigh(written.equals.empty() ? written.amounts : written.equals, nullptr,
                           result.description, names_.system(), result.name);
        if (found.problem) to_.push_back(std::move(*found.problem));
        result.grams = found.grams;
        result.ml = found.ml;
        result.count = found.count;
    }
}

} // namespace

std::vector<line> lines_of(const grammar::block& written, scope& names, grammar::diagnostics& to) {
    std::vector<line> result;
    for (const auto& item : written.items)
        if (const auto* l = std::get_if<grammar::ingredient_line>(&item.value))
            result.push_back(line_reader(names, to).read(*l));
    return result;
}

} // namespace benchcard::recipe
