#include "grammar/recipe_rules.hpp"

#include <catch2/catch.hpp>
#include <tao/pegtl/contrib/analyze.hpp>

TEST_CASE("no rule of the language can loop without reading") {
    CHECK(tao::pegtl::analyze<benchcard::grammar::rules::file>(-1) == 0);
}
