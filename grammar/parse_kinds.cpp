#include "grammar/parse.hpp"

namespace benchcard::grammar {

const std::vector<kind_entry>& parse_kinds() {
    using enum severity;
    static const std::vector<kind_entry> kinds = {
        {"ambiguous-comma", error, "a comma between digits can be read two ways"},
        {"control-character", error, "a character that cannot be printed"},
        {"dash-before-amount", hint, "a step that reads like an ingredient line"},
        {"empty-step", error, "a dash with nothing to do after it"},
        {"line-too-long", error, "a line or step of more than 10,000 bytes"},
        {"misplaced-line", error, "a line where only settings can stand"},
        {"misplaced-setting", error, "a setting where it cannot stand"},
        {"missing-name", error, "an amount without an ingredient"},
        {"missing-preparation", error, "a comma with nothing after it"},
        {"missing-value", error, "a setting without a value"},
        {"name-too-long", error, "a name longer than a card can hold"},
        {"no-recipe", error, "a file without a recipe"},
        {"not-utf8", error, "a file that is not UTF-8 text"},
        {"number-too-large", error, "a number too large or too fine for an amount"},
        {"numbered-step", error, "a step with a number of its own"},
        {"second-recipe", error, "a second recipe in one file"},
        {"text-before-recipe", error, "text before the line that names the recipe"},
        {"too-many", error, "more of something than can be read"},
        {"too-many-marks", error, "more marks on a letter than can be printed"},
        {"two-ingredients", error, "two ingredients on one line"},
        {"unclosed-bracket", error, "a bracket that is not closed"},
        {"unexpected-words", error, "more on a line than it can hold"},
        {"unknown-setting", error, "a setting that does not exist"},
        {"unopened-bracket", error, "a closing bracket that was not opened"},
        {"unreadable-amount", error, "an amount that cannot be read"},
        {"unreadable-bracket", error, "brackets whose content cannot be read"},
        {"unreadable-line", error, "a line that is no setting, ingredient or step"},
        {"unreadable-number", error, "a number that cannot be read"},
        {"unreadable-value", error, "a setting's value that cannot be read"},
        {"zero-amount", error, "an amount of nothing"},
        {"zero-denominator", error, "a fraction with 0 below the line"},
    };
    return kinds;
}

} // namespace benchcard::grammar
