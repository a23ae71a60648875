#include "grammar/readable.hpp"
#include "grammar/show.hpp"
#include "reading.hpp"

#include <catch2/catch.hpp>
#include <chrono>

using namespace benchcard::grammar;
using strings = std::vector<std::string>;

TEST_CASE("twenty bad lines are twenty messages, in order, each where its mistake begins") {
    const reading r("recipe: Crème brûlée\n"
                    "revison: 3\n"
                    "makes: é\n"
                    "loss: ½ in the oven\n"
                    "serves: 1,000\n"
                    "tin: 𝕏\n"
                    "also: teff\n"
                    "½ l crème,\n"
                    "1/0 tsp crème\n"
                    "½\n"
                    "0 g crème\n"
                    "2 é = crème\n"
                    "99999999 g crème\n"
                    "1 égg + 1 yolk\n"
                    "- é [180]\n"
                    "- 𝕏𝕏 [crème: é]\n"
                    "- ½ [crème\n"
                    "- é] x\n"
                    "-\n"
                    "3) é\n"
                    "crème ½ l\n");
    CHECK(r.messages() ==
          strings{"2:1 unknown-setting",      "3:8 unreadable-value",    "4:9 unreadable-value",
                  "5:9 ambiguous-comma",      "6:6 unreadable-value",    "7:1 misplaced-setting",
                  "8:11 missing-preparation", "9:3 zero-denominator",    "10:2 missing-name",
                  "11:1 zero-amount",         "12:7 unreadable-amount",  "13:1 number-too-large",
                  "14:6 two-ingredients",     "15:5 unreadable-bracket", "16:6 unreadable-bracket",
                  "17:5 unclosed-bracket",    "18:4 unopened-bracket",   "19:2 empty-step",
                  "20:1 numbered-step",       "21:1 unreadable-line"});
}

TEST_CASE("a bad line hides neither the errors nor the content of the others") {
    const std::string good[] = {"makes: 2 tarts\n", "200 g plain flour\n", "- Mix [flour].\n",
                                "# a comment\n", "station: oven\n"};
    const std::string bad[] = {"flour 200 g\n",   "makes:\n", "1/0 g flour\n",
                               "- Mix [flour.\n", "x: y\n",   "\x01\n",
                               "\xFF\n",          "* Mix.\n", std::string(20'000, 'x') + "\n"};
    for (const auto& g : good)
        for (const auto& b : bad) {
            INFO(g << b);
            const reading alone("recipe: A\n" + g);
            const reading behind("recipe: A\n" + b + g), before("recipe: A\n" + g + b),
                between("recipe: A\n" + b + g + b);
            CHECK(behind.messages().size() == 1);
            CHECK(before.messages().size() == 1);
            CHECK(between.messages().size() == 2);
            const auto wanted = show(alone.result.tree);
            const auto last = wanted.substr(wanted.find('\n') + 1);
            CHECK(show(behind.result.tree) == "recipe \"A\"\n  unread\n" + last);
            CHECK(show(between.result.tree) == "recipe \"A\"\n  unread\n" + last + "  unread\n");
        }
}

TEST_CASE("a block whose opening line is bad is opened all the same") {
    const reading r("recipe: A\ncomponent:\n200 g plain flour\nassembly: " + std::string(121, 'x') +
                    "\n100 g milk\n");
    CHECK(r.messages() == strings{"2:11 missing-value", "4:11 name-too-long"});
    CHECK(show(r.result.tree) == "recipe \"A\"\n  unread\ncomponent\n  line 200 g of \"plain "
                                 "flour\"\nassembly\n  line 100 g of \"milk\"\n");
}

TEST_CASE("a comment is no value, no name and no step") {
    CHECK(reading("recipe: A\nby: # c\nnote: # c\nrequire: # c\nmakes: # c\n- # c\n400 g # c\n400 "
                  "g butter, # c\n")
              .messages() == strings{"2:5 missing-value", "3:7 missing-value", "4:10 missing-value",
                                     "5:8 unreadable-value", "6:3 empty-step", "7:7 missing-name",
                                     "8:15 missing-preparation"});
    const reading r("recipe: A\nmakes: 2 # c\nloss: 2% # c\nkeeps: 3 days # c\ntin: 9 in # c\n- # "
                    "c\n  Mix.\nnote: # c\n  Words.\n"
                    "ingredient: x\nweighs: 3 g each # c\n");
    CHECK(r.messages().empty());
    CHECK(show(r.result.tree) == "recipe \"A\"\n  makes: 2\n    # c\n  loss: 2%\n    # c\n  keeps: "
                                 "72 h\n    # c\n  tin: 9 in\n    # c\n"
                                 "  step \"Mix.\"\n    # c\n  note: \"Words.\"\n    # c\n"
                                 "ingredient \"x\"\n  weighs: 3 g each\n    # c\n");
}

TEST_CASE("a file without a recipe says so") {
    for (const auto* text : {"", "\n\n", "# nothing\n", "  \t ", "\xEF\xBB\xBF"}) {
        INFO(text);
        CHECK(reading(text).messages() == strings{"1:1 no-recipe"});
    }
}

TEST_CASE("what stands before the recipe is said once") {
    CHECK(reading("# fine\n\n200 g flour\n100 g milk\nrecipe: A\n").messages() ==
          strings{"3:1 text-before-recipe"});
    CHECK(reading("recipe: A\nrecipe: B\n100 g milk\n").messages() == strings{"2:1 second-recipe"});
}

TEST_CASE("a byte order mark and Windows line ends change nothing") {
    const std::string text = "recipe: A\nnote: One\n  two.\n\n200 g plain flour, sifted  # as "
                             "bought\n- Mix [flour]\n  well.\n";
    std::string windows = "\xEF\xBB\xBF";
    for (const char c : text) windows += c == '\n' ? "\r\n" : std::string(1, c);
    const reading one(text), other(windows);
    CHECK(one.messages().empty());
    CHECK(other.messages().empty());
    CHECK(show(one.result.tree) == show(other.result.tree));
    CHECK(show(reading(text.substr(0, text.size() - 1)).result.tree) == show(one.result.tree));
}

TEST_CASE("control characters and bytes that are not UTF-8 are found at their place") {
    CHECK(reading(std::string("recipe: A\nab\0c\n", 15)).messages() ==
          strings{"2:3 control-character"});
    CHECK(reading("recipe: A\n1 g a\rb\n").messages() == strings{"2:6 control-character"});
    CHECK(reading("recipe: A\n1 g a\x7F\n").messages() == strings{"2:6 control-character"});
    const reading r("recipe: A\n1 g cr\xC3\xA8me br\xFBl\n");
    CHECK(r.messages() == strings{"2:13 not-utf8"});
    CHECK(r.result.messages[0].message ==
          "this is not UTF-8 text: byte 24 of the file is FB hexadecimal");
}

/// The control characters are those of Unicode (category Cc) below 0x80; a tab may stand in a line.
TEST_CASE("any byte is found anywhere in a line, and beside any other") {
    for (std::size_t length = 1; length <= 18; ++length)
        for (std::size_t at = 0; at < length; ++at)
            for (int byte = 0; byte < 0x100; ++byte)
                for (const char beside : {'a', ' ', '~'}) {
                    std::string line(length, beside);
                    line[at] = static_cast<char>(byte);
                    const auto why = unreadable(line, {0, 0, 0});
                    const bool is_control = (byte < 0x20 && byte != '\t') || byte == 0x7F;
                    const auto* expected = byte >= 0x80 ? "not-utf8"
                                           : is_control ? "control-character"
                                                        : "";
                    const bool is_right = (why ? why->kind : "") == std::string_view(expected) &&
                                          (!why || why->where.begin == at);
                    if (!is_right) FAIL("byte " << byte << " at " << at << " of " << length);
                }
}

TEST_CASE("comments are kept, on lines of their own, behind others, and within folded ones") {
    const reading r("# one\nrecipe: A # two\n200 g flour # three\n# four\n- Mix # five\n  # six\n  "
                    "well. #seven\nmakes: 2 # eight\n- Chill#8\n");
    CHECK(
        show(r.result.tree) ==
        "before\n  # one\nrecipe \"A\"\n  # two\n  line 200 g of \"flour\"\n    # three\n  # four\n"
        "  step \"Mix well.\"\n    # five\n    # six\n    #seven\n"
        "  makes: 2\n    # eight\n  step \"Chill#8\"\n");
    CHECK(r.messages().empty());
}

TEST_CASE("what is indented below a step or prose goes on with it, and nothing else does") {
    const reading r("recipe: A\n  200 g flour\n    100 g milk\n- Mix\n  a\n   b\n  - Chill\n  # "
                    "c\n\n  50 g sugar\nnote: x\n  y\nmakes: 2\n  3 eggs\n");
    CHECK(show(r.result.tree) ==
          "recipe \"A\"\n  line 200 g of \"flour\"\n  line 100 g of \"milk\"\n  step \"Mix a b\"\n"
          "  step \"Chill\"\n  # c\n  line 50 g of \"sugar\"\n  note: \"x y\"\n  makes: 2\n  line "
          "3 of \"eggs\"\n");
}

TEST_CASE("lines of any length are read quickly or refused") {
    constexpr std::size_t a_megabyte = 1 << 20;
    const auto filled = [](const std::string& with, std::size_t size) {
        std::string text;
        while (text.size() < size) text += with;
        return text;
    };
    const auto begin = std::chrono::steady_clock::now();
    for (const auto* with : {" ", "a", "1 ", "a ", "[a] ", "[", "]", "\\", "1/", "- ", ", ", "or ",
                             "+ 1 ", "# ", ":", "é", "½", "  a", "1 g "}) {
        INFO(with);
        const auto text = filled(with, a_megabyte);
        CHECK(reading("recipe: A\n" + text).messages().size() <= 1);
        std::string lines = "recipe: A\n";
        for (int i = 0; i < 15; ++i)
            lines += filled(with, 9'000) + "\n" + "1 g a" + filled(with, 9'000) + "\n- " +
                     filled(with, 9'000) + "\n";
        reading many(lines);
    }
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begin;
    CHECK(taken.count() <
          60); // some 30 MB, in a debug build on a slow machine; quadratic reading takes hours
}

TEST_CASE("a line that is not a file's is read alone") {
    CHECK(parse_ingredient_line(source(0, "", "2 cups flour, sifted")).line->names[0].text ==
          "flour");
    CHECK(parse_ingredient_line(source(0, "", "2 cups flour\n1 egg")).messages.at(0).kind ==
          "unexpected-words");
    CHECK_FALSE(parse_ingredient_line(source(0, "", "cups flour")).line);
    CHECK(show(*parse_yield(source(0, "", "40 rounds of 22 g")).made) == "40 \"rounds\" each 22 g");
    CHECK_FALSE(parse_yield(source(0, "", "rounds")).made);
    CHECK(*parse_number("1½") == benchcard::exact(3, 2));
    CHECK_FALSE(parse_number("0"));
    CHECK_FALSE(parse_number("1 x"));
}

TEST_CASE("a step that is all comments has nothing to do, and one that begins below its dash has") {
    using std::pair;
    for (const auto& [empty, said] : {pair{"-\n", "2:2 empty-step"},
                                      {"- # c\n", "2:3 empty-step"},
                                      {"-\n  # c\n", "3:6 empty-step"},
                                      {"- # c\n  # d\n", "3:6 empty-step"}}) {
        INFO(empty);
        CHECK(reading(std::string("recipe: A\n") + empty).messages() == strings{said});
    }
    const reading r("recipe: A\n- # c\n  Mix well.\n");
    CHECK(r.messages().empty());
    CHECK(std::get<words>(r.only<step>().parts.at(0)).text == "Mix well.");
}
