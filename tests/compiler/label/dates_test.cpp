#include "compiler/label/dates.hpp"

#include "../recipe/reading.hpp"

#include <catch2/catch.hpp>

/// Dates by the rule, against worked examples that were published.
namespace benchcard::testing {

namespace {

label::date day(std::string_view text) {
    const auto read = label::date_in(text);
    INFO(text);
    REQUIRE(read);
    return *read;
}

label::frozen days(std::string_view text) {
    const auto read = label::frozen_in(text);
    INFO(text);
    REQUIRE(read);
    return *read;
}

label::use_by use_by(const std::string& text, const std::vector<label::date>& made,
                     const std::vector<label::frozen>& in_freezer = {}) {
    return label::use_by_of(compiled(text)->meaning, made, in_freezer);
}

std::string keeping(const std::string& keeps, const std::string& labels = "us") {
    return "recipe: Chilli\nlabels: " + labels + "\nkeeps: " + keeps + "\n500 g minced beef\n";
}

} // namespace

TEST_CASE("dates are read and written as ISO 8601 has them") {
    CHECK(label::said(day("2026-04-01")) == "2026-04-01");
    CHECK(label::said(day("2028-02-29")) == "2028-02-29");
    for (const auto* wrong : {"2026-02-29", "2026-13-01", "2026-4-1", "01.04.2026", "", "today",
                              "2026-04-01 ", "2026-04-31", "-026-04-01"}) {
        INFO(wrong);
        CHECK_FALSE(label::date_in(wrong));
    }
    CHECK_FALSE(label::frozen_in("2026-10-10/2026-10-03"));
    CHECK_FALSE(label::frozen_in("2026-10-10"));
}

TEST_CASE("seven days, the day it is made being the first") {
    // Southern Nevada Health District on Food Code 3-501.17: made 1 April, discard after 7 April.
    CHECK(label::last_day(day("2026-04-01"), 7, {}) == day("2026-04-07"));
    // The same: chilli made 3 June from burger cooked 1 June, discard after 7 June.
    CHECK(use_by(keeping("7 days chilled"), {day("2026-06-03"), day("2026-06-01")}).day ==
          day("2026-06-07"));
    // North Carolina, on the Food Code: cooked 1 October, frozen 3 October, thawed 10 October,
    // which is day 3; discard by 14 October.
    CHECK(label::last_day(day("2026-10-01"), 7, {days("2026-10-03/2026-10-10")}) ==
          day("2026-10-14"));
    CHECK(label::last_day(day("2026-12-28"), 7, {}) == day("2027-01-03"));
}

TEST_CASE("no day in the freezer gives more than itself") {
    const auto made = day("2026-04-01");
    const auto with = [&](const std::vector<label::frozen>& in_freezer) {
        return label::said(label::last_day(made, 7, in_freezer));
    };
    CHECK(with({days("2026-04-03/2026-04-05")}) == "2026-04-09");
    CHECK(with({days("2026-04-05/2026-04-06"), days("2026-04-03/2026-04-04")}) == "2026-04-09");
    // Told twice, or in part twice.
    CHECK(with({days("2026-04-03/2026-04-05"), days("2026-04-03/2026-04-05")}) == "2026-04-09");
    CHECK(with({days("2026-04-03/2026-04-06"), days("2026-04-04/2026-04-05")}) == "2026-04-10");
    CHECK(with({days("2026-04-03/2026-04-05"), days("2026-04-04/2026-04-07")}) == "2026-04-11");
    // Frozen before it was made, or when it was over.
    CHECK(with({days("2026-03-20/2026-04-05")}) == "2026-04-07");
    CHECK(with({days("2026-04-08/2026-05-01")}) == "2026-04-07");
    CHECK(with({days("2026-04-07/2026-05-01")}) == "2026-05-01");
}

TEST_CASE("of several parts the one whose time is over first counts") {
    // The first was in the freezer while the second was made.
    CHECK(use_by(keeping("7 days chilled"), {day("2026-06-01"), day("2026-06-20")},
                 {days("2026-06-02/2026-07-02")})
              .day == day("2026-06-26"));
}

TEST_CASE("the shorter of keeps and the rule counts, and freezing is left out of both") {
    const std::vector made = {day("2026-04-01")};
    CHECK(use_by(keeping("3 days chilled"), made).day == day("2026-04-03"));
    CHECK(use_by(keeping("2-3 days chilled"), made).day == day("2026-04-02"));
    CHECK(use_by(keeping("10 days chilled"), made).day == day("2026-04-07"));
    CHECK(use_by(keeping("10 days chilled", "both"), made).day == day("2026-04-07"));
    // Neither the EU nor the United Kingdom counts days for all food: it is for its maker to say.
    CHECK(use_by(keeping("10 days chilled", "eu"), made).day == day("2026-04-10"));
    CHECK(use_by(keeping("3 days chilled"), made, {days("2026-04-02/2026-04-20")}).day ==
          day("2026-04-21"));
    CHECK_FALSE(use_by(keeping("2 weeks in a tin"), made).day);
    CHECK_THAT(use_by(keeping("10 days chilled"), made).reason,
               Catch::Contains("FDA Food Code, 3-501.17"));
}

} // namespace benchcard::testing
