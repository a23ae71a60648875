#include "any_text.hpp"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

using namespace benchcard::grammar;
using benchcard::exact;

namespace {

/// A number written in one of the ways a cook writes it, with what it is.
struct written {
    std::string text;
    exact value;
};

/// Bits of recipes, joined at random: texts that come further than random bytes do.
rc::Gen<std::string> broken_recipe() {
    const auto bit = rc::gen::elementOf(std::vector<std::string>{"recipe: ",
                                                                 "component: ",
                                                                 "assembly: ",
                                                                 "ingredient: ",
                                                                 "makes: ",
                                                                 "loss: ",
                                                                 "keeps: ",
                                                                 "weighs: ",
                                                                 "tin: ",
                                                                 "note: ",
                                                                 "costs: ",
                                                                 "- ",
                                                                 "  ",
                                                                 "\n",
                                                                 "\n  ",
                                                                 "\r\n",
                                                                 "#",
                                                                 " # c",
                                                                 "[",
                                                                 "]",
                                                                 ":",
                                                                 "=",
                                                                 ",",
                                                                 " or ",
                                                                 " + ",
                                                                 "1",
                                                                 "0",
                                                                 "½",
                                                                 "1/2",
                                                                 "1/",
                                                                 " x ",
                                                                 "-",
                                                                 "–",
                                                                 "to ",
                                                                 "about ",
                                                                 "half a ",
                                                                 "some ",
                                                                 "all ",
                                                                 " g ",
                                                                 " kg",
                                                                 " cups",
                                                                 "fl. oz",
                                                                 " heaped tsp",
                                                                 " C fan",
                                                                 " F",
                                                                 "gas 4",
                                                                 " min",
                                                                 "overnight",
                                                                 "rest",
                                                                 " of ",
                                                                 " per ",
                                                                 "each",
                                                                 "%",
                                                                 "é",
                                                                 "𝕏",
                                                                 "butter",
                                                                 "flour",
                                                                 "yes",
                                                                 "\\",
                                                                 "\\[",
                                                                 "\t",
                                                                 "\xFF",
                                                                 std::string("\0", 1),
                                                                 "9999999"});
    return rc::gen::map(rc::gen::container<std::vector<std::string>>(bit),
                        [](const std::vector<std::string>& bits) {
                            std::string text;
                            for (const auto& b : bits) text += b;
                            return text;
                        });
}

void must_hold_for_any_text(const std::string& bytes) { RC_ASSERT(fault_of_reading(bytes) == ""); }

rc::Gen<written> number() {
    const auto whole = rc::gen::inRange(1, 1000), part = rc::gen::inRange(1, 100);
    return rc::gen::apply(
        [](int a, int b, int c, int form) -> written {
            switch (form) {
            case 0:
                return {fmt::format("{}", a), a};
            case 1:
                return {fmt::format("{}.{:02}", a, b), a + exact(b, 100)};
            case 2:
                return {fmt::format("{}/{}", a, c), exact(a, c)};
            case 3:
                return {fmt::format("{} {}/{}", a, b, c), a + exact(b, c)};
            case 4:
                return {fmt::format("{}½", a), a + exact(1, 2)};
            default:
                return {"⅔", exact(2, 3)};
            }
        },
        whole, part, part, rc::gen::inRange(0, 6));
}

rc::Gen<std::string> a_name() {
    return rc::gen::elementOf(std::vector<std::string>{"plain flour", "crème fraîche", "large eggs",
                                                       "C# flour", "抹茶", "x"});
}

} // namespace

TEST_CASE("whatever the bytes, reading ends, and every place lies within the text") {
    CHECK(rc::check([](const std::vector<char>& bytes) {
        must_hold_for_any_text(std::string(bytes.begin(), bytes.end()));
    }));
    CHECK(rc::check([] { must_hold_for_any_text("recipe: A\n" + *broken_recipe()); }));
    CHECK(rc::check([] { must_hold_for_any_text(*broken_recipe()); }));
}

TEST_CASE("one bad line in a good recipe is one message, and the rest is read as without it") {
    CHECK(rc::check([] {
        const auto lines = *rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(
            std::vector<std::string>{"200 g plain flour", "- Mix [flour] for [3 min].",
                                     "note: Well.", "# c", "", "makes: 2 tarts", "component: B"}));
        const auto place = *rc::gen::inRange<std::size_t>(0, lines.size() + 1);
        const auto bad =
            *rc::gen::elementOf(std::vector<std::string>{"???", "1/0 g x", "- [", "makes:", "x:"});
        std::string good_text = "recipe: A\n", bad_text = good_text;
        for (std::size_t i = 0; i <= lines.size(); ++i) {
            if (i == place) bad_text += bad + "\n";
            if (i < lines.size()) good_text += lines[i] + "\n", bad_text += lines[i] + "\n";
        }
        const reading good(good_text), other(bad_text);
        RC_ASSERT(good.messages().empty());
        RC_ASSERT(other.messages().size() == 1u);
        auto shown = show(other.result.tree);
        const auto at = shown.find("  unread\n");
        RC_ASSERT(at != shown.npos);
        RC_ASSERT(shown.erase(at, 9) == show(good.result.tree));
    }));
}

TEST_CASE("numbers are read exactly, in whatever way they are written") {
    CHECK(rc::check([] {
        const auto low = *number(), high = *number();
        const auto between = *rc::gen::elementOf(std::vector<std::string>{"-", " - ", "–", " to "});
        const auto unit = *rc::gen::elementOf(
            std::vector<std::string>{" g", "g", " kg", " cups", " tsp.", " fl oz", ""});
        const auto name = *a_name();
        const reading r("recipe: A\n" + low.text + between + high.text + unit + " " + name +
                        ", sifted # c\n");
        RC_ASSERT(r.messages().empty());
        const auto& l = r.only<ingredient_line>();
        RC_ASSERT(l.amounts.size() == 1u);
        RC_ASSERT(l.amounts[0].quantity.low == low.value);
        RC_ASSERT(l.amounts[0].quantity.high == high.value);
        RC_ASSERT(l.amounts[0].in.has_value() == !unit.empty());
        RC_ASSERT(l.names[0].text == name);
        RC_ASSERT(r.at(l.names[0].where) == name);
        RC_ASSERT(l.preparations[0].text == "sifted");
    }));
}

TEST_CASE("a made-up recipe comes back with the values it was made of") {
    CHECK(rc::check([] {
        const auto pieces = *number(), each = *number();
        const auto lost = *rc::gen::inRange(1, 100), part = *rc::gen::inRange(2, 50);
        const auto minutes = *rc::gen::inRange(1, 600), degrees = *rc::gen::inRange(30, 300);
        const auto name = *a_name();
        const reading r(fmt::format(
            "recipe: A\nmakes: {} rounds of {} g\nloss: {}% in the oven\n{} g {}\n- Mix [{}: "
            "1/{}]; bake at [{} C fan] for [{} min].\n",
            pieces.text, each.text, lost, pieces.text, name, name, part, degrees, minutes));
        RC_ASSERT(r.messages().empty());
        const auto settings = r.all<setting>();
        const auto& y = std::get<yield>(settings.at(0)->value);
        RC_ASSERT(y.count->low == pieces.value);
        RC_ASSERT(y.each->quantity.low == each.value);
        RC_ASSERT(y.piece->text == "rounds");
        RC_ASSERT(std::get<std::vector<loss>>(settings.at(1)->value).at(0).high_percent ==
                  exact(lost));
        const auto& parts = r.only<step>().parts;
        const auto& named = std::get<reference>(std::get<bracket>(parts.at(1)).holds);
        RC_ASSERT(named.name.text == name);
        RC_ASSERT(named.of->share == exact(1, part));
        const auto& heat = std::get<temperature>(std::get<bracket>(parts.at(3)).holds);
        RC_ASSERT(heat.degrees.low == exact(degrees));
        RC_ASSERT((heat.scale == oven_scale::fan_celsius));
        RC_ASSERT(std::get<duration>(std::get<bracket>(parts.at(5)).holds).low_minutes ==
                  exact(minutes));
    }));
}
