#include "program.hpp"

#include <catch2/catch.hpp>

/// What is said to a wrong command line, whole: what is wrong, and what to write.
namespace benchcard::program {

namespace {

void refused(const std::vector<std::string>& arguments, const std::string& said) {
    const auto r = run(arguments);
    CHECK(r.code == 2);
    CHECK(r.out == "");
    CHECK(r.err == said);
}

} // namespace

TEST_CASE("without a command, or with one there is not, the commands are named", "[commands]") {
    refused({}, "benchcard: say what to do: check, tidy, explain, weigh, print, label, convert or "
                "language-server\n"
                "     = help: for example: benchcard check tart.recipe\n"
                "     = help: all of it: benchcard --help\n");
    refused({"chek", "tart.recipe"}, "benchcard: there is no command `chek`; there are check, "
                                     "tidy, explain, weigh, print, label, convert and "
                                     "language-server\n"
                                     "     = help: the nearest is `check`\n"
                                     "     = help: all of it: benchcard --help\n");
    refused({"tart.recipe"}, "benchcard: there is no command `tart.recipe`; there are check, "
                             "tidy, explain, weigh, print, label, convert and language-server\n"
                             "     = help: the command comes first: benchcard check tart.recipe\n"
                             "     = help: all of it: benchcard --help\n");
    refused({"--loud"}, "benchcard: there is no option `--loud` before the command\n"
                        "     = help: for example: benchcard check tart.recipe\n"
                        "     = help: all of it: benchcard --help\n");
}

TEST_CASE("what a command needs is said with an example", "[commands]") {
    refused({"check"}, "benchcard: check needs a recipe\n"
                       "     = help: for example: benchcard check tart.recipe\n"
                       "     = help: all of it: benchcard check --help\n");
    refused({"print", "a.recipe"},
            "benchcard: print needs the name of the PDF to write\n"
            "     = help: for example: benchcard print tart.recipe -o cards.pdf\n"
            "     = help: all of it: benchcard print --help\n");
    refused({"convert"}, "benchcard: convert needs an amount of an ingredient\n"
                         "     = help: for example: benchcard convert '2 1/4 cups plain flour'\n"
                         "     = help: all of it: benchcard convert --help\n");
    refused({"weigh", "a.recipe", "--make"}, "benchcard: --make is followed by nothing\n"
                                             "     = help: for example: --make '48 tarts'\n"
                                             "     = help: all of it: benchcard weigh --help\n");
}

TEST_CASE("what a command does not take is said", "[commands]") {
    refused({"weigh", "a.recipe", "b.recipe"},
            "benchcard: weigh takes one recipe, and `b.recipe` is one more\n"
            "     = help: all of it: benchcard weigh --help\n");
    refused({"check", "a.recipe", "--mesures=us"},
            "benchcard: check has no option `--mesures`; it has --help, --fix, --format, --card, "
            "--jobs, --scale, --make, --from, --tin, --flour, --batch, --fit, --confined and "
            "--measures\n"
            "     = help: the nearest is `--measures`\n"
            "     = help: all of it: benchcard check --help\n");
    refused({"weigh", "a.recipe", "--scale", "2", "--scale", "3"},
            "benchcard: --scale can be given once\n"
            "     = help: all of it: benchcard weigh --help\n");
    refused({"check", "-", "-"},
            "benchcard: standard input can be read once, and `-` is given twice\n");
    refused({"check", ""}, "benchcard: the name of a recipe is empty\n"
                           "     = help: for example: tart.recipe, or - for standard input\n");
}

TEST_CASE("a name that is not known is answered with those that are", "[commands]") {
    const folder at;
    const auto recipe = at.file("tart.recipe", tart);
    refused({"check", recipe, "--measures", "metrc"},
            "benchcard: there are no measures called `metrc`; there are: us, metric, uk, imperial, "
            "australian, canadian, us-label\n     = help: the nearest is `metric`\n");
    refused({"print", recipe, "-o", at / "a.pdf", "--paper", "A9"},
            "benchcard: there is no paper `A9`; there are: a4, a5, a6, a7, letter, half-letter, "
            "5x8, 4x6, 3x5\n     = help: each also turned: 'a5 landscape'\n");
    const auto style = run({"print", recipe, "-o", at / "a.pdf", "--style", "fancy"});
    CHECK(style.code == 2);
    CHECK_THAT(style.err, Catch::StartsWith("benchcard: there is no style `fancy`; there are: "));
    CHECK_THAT(style.err, Catch::Contains("station"));
    CHECK(at.names() == std::vector<std::string>{"tart.recipe"});
}

TEST_CASE("a scale is one number above nothing", "[commands]") {
    const folder at;
    const auto recipe = at.file("tart.recipe", tart);
    for (const auto* scale : {"0", "-1", "x", "1/0", "", "1,000", "1e3", "2-3", "inf", "nan",
                              "0x10", "99999999999999999999", "2 tarts"})
        refused({"weigh", recipe, "--scale", scale},
                std::string("benchcard: --scale takes a number above 0, and not `") + scale +
                    "`\n     = help: for example: --scale 2, --scale 1/2 or --scale 1.5\n");
}

TEST_CASE("an order is so many or so much of what the recipe makes", "[commands]") {
    const folder at;
    const auto recipe = at.file("tart.recipe", tart);
    const std::string help =
        "     = help: for example: --make '48 tarts', --make 48 or --make '2 kg'\n";
    for (const auto* make :
         {"", "tarts", "0 tarts", "-3 tarts", "x", "1,000 tarts", "48 tarts # more",
          "48 tarts\n"
          "x"})
        refused({"weigh", recipe, "--make", make},
                std::string("benchcard: --make takes how many or how much to make, and not `") +
                    make + "`\n" + help);
    for (const auto* make : {"3-4 tarts", "2 x 3 tarts", "1-2 kg"})
        refused({"weigh", recipe, "--make", make},
                std::string("benchcard: --make takes one number, and `") + make + "` has two\n" +
                    help);
    refused({"weigh", recipe, "--make", "2 tarts of 50 g"},
            "benchcard: --make takes how many or how much, and `2 tarts of 50 g` says how heavy a "
            "piece is; "
            "that stands in the recipe\n" +
                help);
    refused({"weigh", recipe, "--make", "5 cakes"},
            "benchcard: " + recipe +
                ": the recipe makes tarts, not cakes\n     = help: --make '5 tarts'\n");
    const auto litres = run({"weigh", recipe, "--make", "3 l"});
    CHECK(litres.code == 2);
    CHECK_THAT(litres.err,
               Catch::Contains("the recipe makes 2 tarts, so it cannot be scaled to 3 l\n"));
    refused({"weigh", recipe, "--scale", "2", "--make", "4 tarts"},
            "benchcard: --scale and --make each say how much to make: give one of them\n"
            "     = help: for example: --scale 1/2\n"
            "     = help: or: --make '48 tarts'\n"
            "     = help: all of it: benchcard weigh --help\n");
}

TEST_CASE("an order is given in one way", "[commands]") {
    const folder at;
    const auto recipe = at.file("tart.recipe", tart);
    refused({"weigh", recipe, "--tin", "20 cm round", "--from", "400 g butter"},
            "benchcard: --from and --tin each say how much to make: give one of them\n"
            "     = help: for example: --from '400 g butter'\n"
            "     = help: or: --tin '20 cm round'\n"
            "     = help: all of it: benchcard weigh --help\n");
    refused({"weigh", recipe, "--flour", "2 kg", "--batch", "1, 2"},
            "benchcard: --flour and --batch each say how much to make: give one of them\n"
            "     = help: for example: --flour '25 kg'\n"
            "     = help: or: --batch '1/2, 1, 2, 4'\n"
            "     = help: all of it: benchcard weigh --help\n");
}

TEST_CASE("an order that cannot be read is answered with one that can", "[commands]") {
    const folder at;
    const auto recipe = at.file("tart.recipe", tart);
    for (const auto* from : {"", "butter", "0 g butter", "400 g", "all butter", "400 g butter # x"})
        refused({"weigh", recipe, "--from", from},
                std::string("benchcard: --from takes an amount of an ingredient that is there, and "
                            "not `") +
                    from +
                    "`\n     = help: for example: --from '400 g butter', or --from '400 g butter' "
                    "--from '3 eggs'\n");
    refused({"weigh", recipe, "--from", "3-4 eggs"},
            "benchcard: --from takes one number, and `3-4 eggs` has two\n"
            "     = help: for example: --from '400 g butter', or --from '400 g butter' --from '3 "
            "eggs'\n");
    for (const auto* tin : {"", "large", "20", "20 cm round # x"})
        refused({"weigh", recipe, "--tin", tin},
                std::string("benchcard: --tin takes the size of a tin, and not `") + tin +
                    "`\n     = help: for example: --tin '20 cm round', --tin '20 x 30 cm' or --tin "
                    "'900 g loaf'\n");
    for (const auto* flour : {"", "25", "25 l", "25 loaves", "2-3 kg"})
        refused({"weigh", recipe, "--flour", flour},
                std::string("benchcard: --flour takes one weight, and not `") + flour +
                    "`\n     = help: for example: --flour '25 kg'\n");
    for (const auto* batch : {"", "1,", "1;2", "0, 1", "x", "99999"})
        refused({"weigh", recipe, "--batch", batch},
                std::string("benchcard: --batch takes numbers above 0 with commas, and not `") +
                    batch + "`\n     = help: for example: --batch '1/2, 1, 2, 4'\n");
    refused({"weigh", recipe, "--batch", "1,2,3,4,5,6,7"},
            "benchcard: --batch takes 6 at the most, and these are 7\n"
            "     = help: for example: --batch '1/2, 1, 2, 4'\n");
    refused({"weigh", recipe, "--fit", "all"},
            "benchcard: --fit takes `need` or `batch`, and not `all`\n"
            "     = help: need: of each component what is used of it\n"
            "     = help: batch: whole written batches, and what is over is kept\n");
    refused({"weigh", recipe, "--batch", "1, 2", "--why"},
            "benchcard: --why explains one batch, and --batch shows several\n"
            "     = help: for example: --why --scale 2\n");
}

TEST_CASE("an order that does not fit the recipe is refused whole", "[commands]") {
    const folder at;
    const auto recipe = at.file("tart.recipe", tart);
    const auto said = [&](const std::string& rest) { return "benchcard: " + recipe + ": " + rest; };
    refused({"weigh", recipe, "--tin", "20 cm round"},
            said("the recipe names no tin, so there is none to compare with\n"
                 "     = help: say in the recipe what it is baked in: `tin: 23 cm round`\n"));
    refused({"weigh", recipe, "--flour", "2 kg"},
            said("no component says what its percentages are of, so there is no flour to order by\n"
                 "     = help: say it in the component with the dough: `percent: flour`\n"));
    refused({"weigh", recipe, "--make", "300 g Custard"},
            said("the recipe has no component called `Custard`; it has Dough\n"));
}

TEST_CASE("every command's help is complete and has an example", "[commands]") {
    const auto all = run({"--help"});
    CHECK(all.code == 0);
    CHECK(all.err == "");
    for (const auto* part :
         {"check  ", "weigh  ", "print  ", "convert  ", "Exit codes:", "Example:"})
        CHECK_THAT(all.out, Catch::Contains(part));
    const std::map<std::string, std::vector<std::string>> options = {
        {"check", {"FILE", "--measures", "Examples:\n  benchcard check tart.recipe"}},
        {"weigh",
         {"FILE", "--scale", "--make", "--from", "--tin", "--flour", "--batch", "--fit",
          "--measures", "Examples:\n  benchcard weigh tart.recipe"}},
        {"print",
         {"FILE", "-o,--output", "--scale", "--make", "--style", "--paper", "--measures",
          "Examples:\n  benchcard print tart.recipe -o tart.pdf"}},
        {"convert",
         {"AMOUNT", "--measures", "\n  benchcard convert '2 1/4 cups plain flour' --measures us"}}};
    for (const auto& [command, parts] : options) {
        const auto help = run({command, "--help"});
        INFO(help.out);
        CHECK(help.code == 0);
        CHECK(help.err == "");
        for (const auto& part : parts) CHECK_THAT(help.out, Catch::Contains(part));
    }
}

TEST_CASE("the examples in the help do as they say", "[commands]") {
    const folder at;
    at.file("tart.recipe", tart);
    const surroundings here{.folder = at.path()};
    CHECK(run({"check", "tart.recipe"}, here).code == 0);
    CHECK(run({"weigh", "tart.recipe", "--make", "6 tarts"}, here).code == 0);
    CHECK(run({"weigh", "tart.recipe", "--why"}, here).code == 0);
    CHECK(run({"weigh", "tart.recipe", "--batch", "1/2, 1, 2, 4"}, here).code == 0);
    CHECK(run({"weigh", "tart.recipe", "--make", "37 tarts", "--fit", "batch"}, here).code == 0);
    CHECK(run({"print", "tart.recipe", "-o", "tart.pdf", "--scale", "1/2", "--paper", "A4"}, here)
              .code == 0);
    CHECK(bytes_of(at / "tart.pdf").starts_with("%PDF-"));
}

TEST_CASE("the version is one line", "[commands]") {
    const auto r = run({"--version"});
    CHECK(r.code == 0);
    CHECK_THAT(r.out, Catch::Matches("benchcard [0-9]+\\.[0-9]+\\.[0-9]+\n"));
}

} // namespace benchcard::program
