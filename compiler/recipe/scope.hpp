#pragma once

#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace benchcard::recipe {

/// The components of a recipe with all that it uses, by their titles.
struct component_names {
    std::map<std::string, std::size_t> by_compared_name;
    std::vector<std::string> titles;
    std::set<std::size_t> word_counts; ///< of the compared names
    std::size_t asked = 0; ///< how often a known name was looked for that is near to another

    void add(const std::string& title, std::size_t index);
};

/// What names mean while a file is resolved: components by their titles, and ingredients.
class scope {
  public:
    scope(const ingredients::table& ingredients, component_names& components,
          measures::system system)
        : ingredients_(ingredients), components_(components), system_(system) {}

    /// The component whose lines are read now. Nothing is made of itself: what has its name there
    /// is the ingredient of that name, where there is one.
    void enter(std::size_t index) { inside_ = index; }

    /// A name is the longest component title or ingredient name that it ends in.
    struct meaning {
        std::optional<std::size_t> component;
        const ingredients::entry* what = nullptr;
        std::string description; ///< the words before it
        std::vector<const ingredients::entry*> readings;
    };
    meaning of(const std::string& name) const;

    const ingredients::table& ingredients() const { return ingredients_; }
    measures::system system() const { return system_; }
    /// The known names nearest to one that is not known. To the first hundred that are asked
    /// after: a recipe with more has another fault than a slip of the pen.
    std::vector<std::string> near(const std::string& name);

  private:
    const ingredients::table& ingredients_;
    component_names& components_;
    measures::system system_;
    std::optional<std::size_t> inside_;
};

/// The lines of a block, each with what it weighs as far as that does not depend on another
/// component. Messages go to `to`.
std::vector<line> lines_of(const grammar::block& written, scope& names, grammar::diagnostics& to);

/// The steps of a block: its brackets against the lines of the component that it opens, whose
/// settings and unread lines are known. Messages go to `to`, none about what an unread line names.
std::vector<step> steps_of(const grammar::block& written, const component& c, const scope& names,
                           grammar::diagnostics& to);

/// Works out what each component makes from what goes into it, in the order they stand, each
/// after those it uses; and the weight of lines that are components.
void work_out_yields(recipe& r, grammar::diagnostics& to);

/// An error at a place.
inline grammar::diagnostic error_at(std::string_view kind, grammar::span where,
                                    std::string message) {
    return {kind, grammar::severity::error, where, std::move(message), {}, {}};
}

} // namespace benchcard::recipe
