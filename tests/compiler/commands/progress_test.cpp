#include "compiler/commands/progress.hpp"

#include <catch2/catch.hpp>

namespace benchcard::commands {

TEST_CASE("how far a long command has come is said in one line", "[progress]") {
    using std::chrono::milliseconds;
    CHECK(progress_line(0, 10, milliseconds(0)) == "........................ 0 of 10");
    CHECK(progress_line(250, 1000, milliseconds(500)) ==
          "######.................. 250 of 1000, 500 a second, 2 s left");
    CHECK(progress_line(1, 601, milliseconds(200)) ==
          "........................ 1 of 601, 5 a second, 2 min 0 s left");
    CHECK(progress_line(601, 601, milliseconds(60000)) ==
          "######################## 601 of 601, 10 a second, 0 s left");
}

} // namespace benchcard::commands
