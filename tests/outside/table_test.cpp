#include "compiler/ingredients/names.hpp"
#include "compiler/ingredients/table.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

/// The built-in table against published household weights: the USDA National Nutrient Database for
/// Standard Reference, Release 28 (2015), by its NDB numbers; the egg grades of AMS 56 and of
/// Regulation (EC) No 589/2008. The figures are typed in here from those tables, not read from
/// ours.
namespace benchcard::ingredients {
namespace {

// The US customary cup is a sixteenth of a gallon of 231 cubic inches.
constexpr double cup = 236.5882365, fl_oz = cup / 8, tbsp = cup / 16, tsp = cup / 48;

/// Grams of a US measure of what a cook calls `name`: the first figure of its state.
double weight_of(std::string_view name, double millilitres) {
    const auto found = built_in_table().find(name, country::us);
    INFO(name);
    REQUIRE(found.match);
    const auto state = compared_name(found.description);
    for (const auto& f : found.match->figures)
        if (f.volume && f.state == state) return approximately(f.density()) * millilitres;
    FAIL("no figure for " << name);
    return 0;
}

/// Grams of one piece of a size in a country: the first figure for it.
double weight_of_one(std::string_view name, country where, std::string_view size) {
    const auto found = built_in_table().find(name, where);
    INFO(name << " " << size);
    REQUIRE(found.match);
    for (const auto& f : found.match->figures)
        if (!f.volume && !f.is_stick && f.piece.empty() && f.where == where && f.state == size)
            return approximately(f.low.value);
    FAIL("no weight for one " << size << " " << name);
    return 0;
}

struct published {
    std::string_view name;
    double measure;
    double grams;
    std::string_view ndb;
    double percent; ///< by how much the figure in use may differ
};

constexpr double copied = 0.05; // the same figure, but for the rounding of a cup

void check(const published& p) {
    const double used = weight_of(p.name, p.measure);
    INFO(p.name << ", NDB " << p.ndb << ": published " << p.grams << " g, in use " << used << " g");
    CHECK(std::abs(used - p.grams) <= p.grams * p.percent / 100);
}

} // namespace

TEST_CASE("Flours and starches weigh what the USDA published") {
    for (const auto& p : std::vector<published>{
             {"plain flour", cup, 125, "20081", copied},
             {"all-purpose flour", cup, 125, "20081", copied},
             {"bread flour", cup, 137, "20083", copied},
             // Dipped; GNU units' 127.6 g for the same way is in use, 7 % less.
             {"cake flour", cup, 137, "20084", 7.0},
             {"self-rising flour", cup, 125, "20082", copied},
             {"whole-wheat flour", cup, 120, "20080", copied},
             {"dark rye flour", cup, 128, "20063", copied},
             {"medium rye flour", cup, 102, "20064", copied},
             {"light rye flour", cup, 102, "20065", copied},
             {"rice flour", cup, 158, "20061", copied},
             {"whole-grain cornmeal", cup, 122, "20020", copied},
             {"degermed cornmeal", cup, 157, "20022", copied},
             {"semolina", cup, 167, "20066", copied},
             {"cornstarch", cup, 128, "20027", copied},
             {"potato flour", cup, 160, "11413", copied},
             {"chickpea flour", cup, 92, "16157", copied},
             {"oat flour", cup, 104, "20132", copied},
             {"rolled oats", cup, 81, "08120", copied},
             {"oat bran", cup, 94, "20033", copied},
         })
        check(p);
}

TEST_CASE("Sugars, syrups and fats weigh what the USDA published") {
    for (const auto& p : std::vector<published>{
             {"sugar", cup, 200, "19335", copied},
             {"sugar", tsp, 4.2, "19335", 1.0}, // 4.2 x 48 is 201.6
             {"packed brown sugar", cup, 220, "19334", copied},
             {"unpacked brown sugar", cup, 145, "19334", copied},
             {"powdered sugar", cup, 120, "19336", copied},
             {"sifted powdered sugar", cup, 100, "19336", copied},
             {"honey", cup, 339, "19296", copied},
             {"honey", tbsp, 21, "19296", 1.0},
             {"molasses", cup, 337, "19304", copied},
             {"maple syrup", cup, 315, "19353", copied},
             {"light corn syrup", cup, 341, "19350", copied},
             {"dark corn syrup", cup, 328, "19349", copied},
             {"malt syrup", cup, 332, "19352", copied},
             {"agave syrup", tsp, 6.9, "19912", copied},
             {"butter", cup, 227, "01145", copied},
             {"butter", tbsp, 14.2, "01145", 0.2},
             {"whipped butter", cup, 151, "01002", copied},
             {"shortening", cup, 205, "04615", copied},
             {"lard", tbsp, 12.8, "04002", 0.2},
             {"olive oil", cup, 216, "04053", copied},
             {"sunflower oil", cup, 218, "04506", copied},
             {"peanut butter", cup, 258, "16098", copied},
             {"mayonnaise", cup, 220, "04025", copied},
         })
        check(p);
    const auto* butter = built_in_table().find("butter", country::us).match;
    REQUIRE(butter);
    const auto stick = std::find_if(butter->figures.begin(), butter->figures.end(),
                                    [](const figure& f) { return f.is_stick; });
    REQUIRE(stick != butter->figures.end());
    CHECK(stick->low.value == 113); // NDB 01145
}

TEST_CASE("Dairy, leaveners, salt and spices weigh what the USDA published") {
    for (const auto& p : std::vector<published>{
             {"milk", cup, 244, "01077", copied},
             {"skim milk", cup, 245, "01085", copied},
             {"buttermilk", cup, 245, "01088", copied},
             {"heavy cream", cup, 238, "01053", copied},
             {"whipped heavy cream", cup, 120, "01053", copied},
             {"sour cream", cup, 230, "01056", copied},
             {"yogurt", cup, 245, "01116", copied},
             {"evaporated milk", cup, 252, "01214", copied},
             {"condensed milk", cup, 306, "01095", copied},
             {"dry milk", cup, 120, "01091", copied},
             {"instant milk powder", cup, 68, "01092", copied},
             {"shredded cheddar", cup, 113, "01009", copied},
             {"grated parmesan", cup, 100, "01032", copied},
             {"baking powder", tsp, 4.6, "18369", copied},
             {"baking soda", tsp, 4.6, "18372", copied},
             {"cream of tartar", tsp, 3.0, "18373", copied},
             {"active dry yeast", tsp, 4.0, "18375", copied},
             {"active dry yeast", tbsp, 12.0, "18375", copied},
             {"table salt", tsp, 6.0, "02047", copied},
             {"table salt", tbsp, 18, "02047", copied},
             {"table salt", cup, 292, "02047", 1.5}, // 6.0 x 48 is 288
             {"cinnamon", tsp, 2.6, "02010", copied},
             {"ground ginger", tsp, 1.8, "02021", copied},
             {"nutmeg", tsp, 2.2, "02025", copied},
             {"ground cloves", tsp, 2.1, "02011", copied},
             {"vanilla extract", tsp, 4.2, "02050", copied},
             {"vanilla extract", tbsp, 13.0, "02050", 3.2}, // 4.2 x 3 is 12.6
             {"cider vinegar", cup, 239, "02048", copied},
             {"lemon juice", cup, 244, "09152", copied},
             {"lemon juice", fl_oz, 30.5, "09152", copied},
             {"water", cup, 237, "14555", 0.2},
             {"rum", fl_oz, 27.8, "14037", copied},
         })
        check(p);
}

TEST_CASE("Cocoa, nuts, fruit and grains weigh what the USDA published, cut by cut") {
    for (const auto& p : std::vector<published>{
             {"cocoa", cup, 86, "19165", copied},
             {"cocoa", tbsp, 5.4, "19165", 0.6}, // 5.4 x 16 is 86.4
             {"chocolate chips", cup, 168, "19080", copied},
             {"large chocolate chips", cup, 182, "19080", copied},
             {"mini chocolate chips", cup, 173, "19080", copied},
             {"grated baking chocolate", cup, 132, "19078", copied},
             {"whole almonds", cup, 143, "12061", copied},
             {"sliced almonds", cup, 92, "12061", copied},
             {"flaked almonds", cup, 92, "12061", copied},
             {"slivered almonds", cup, 108, "12061", copied},
             {"ground almonds", cup, 95, "12061", copied},
             {"chopped walnuts", cup, 117, "12155", copied},
             {"ground walnuts", cup, 80, "12155", copied},
             {"walnut halves", cup, 100, "12155", copied},
             {"walnut pieces", cup, 120, "12155", copied},
             {"pecan halves", cup, 99, "12142", copied},
             {"chopped pecans", cup, 109, "12142", copied},
             {"hazelnuts", cup, 135, "12120", copied},
             {"chopped hazelnuts", cup, 115, "12120", copied},
             {"ground hazelnuts", cup, 75, "12120", copied},
             {"raisins", cup, 145, "09298", copied},
             {"packed raisins", cup, 165, "09298", copied},
             {"currants", cup, 144, "09085", copied},
             {"chopped dates", cup, 147, "09087", copied},
             {"dried apricots", cup, 130, "09032", copied},
             {"sweetened flaked coconut", cup, 85, "12109", copied},
             {"shredded sweetened coconut", cup, 93, "12179", copied},
             {"mashed bananas", cup, 225, "09040", copied},
             {"long-grain rice", cup, 185, "20044", copied},
             {"medium-grain rice", cup, 195, "20050", copied},
             {"short-grain rice", cup, 200, "20452", copied},
             {"couscous", cup, 173, "20028", copied},
             {"bulgur", cup, 140, "20012", copied},
             {"dry breadcrumbs", cup, 108, "18079", copied},
             {"fresh breadcrumbs", cup, 45, "18069", copied},
             {"graham cracker crumbs", cup, 84, "18173", copied},
         })
        check(p);
}

TEST_CASE("US eggs weigh what the USDA published, and their class less the shell") {
    struct us_class {
        std::string_view size;
        double grams;            ///< edible, NDB 01123
        double ounces_per_dozen; ///< at least, in the shell: AMS 56
    };
    constexpr double ounce = 28.349523125, edible = 0.88; // NDB 01123: refuse 12 %, shell
    for (const auto& c : {us_class{"jumbo", 63, 30},
                          {"extra large", 56, 27},
                          {"large", 50, 24},
                          {"medium", 44, 21},
                          {"small", 38, 18}}) {
        const double used = weight_of_one("egg", country::us, c.size);
        INFO(c.size);
        CHECK(used == Approx(c.grams));
        CHECK(used == Approx(c.ounces_per_dozen * ounce / 12 * edible).epsilon(0.02));
    }
    CHECK(weight_of_one("egg white", country::us, "large") == Approx(33)); // NDB 01124
    CHECK(weight_of_one("egg yolk", country::us, "large") == Approx(17));  // NDB 01125
    CHECK(weight_of_one("eggs", country::us, "") ==
          Approx(50));                                  // unstated is large: common practice
    CHECK(weight_of("beaten egg", cup) == Approx(243)); // NDB 01123, 4.86 large eggs
}

TEST_CASE("British and European eggs weigh the middle of their grade less the shell") {
    // Regulation (EC) No 589/2008: S under 53 g, M 53 to 63, L 63 to 73, XL 73 g and over.
    constexpr double edible = 0.88;
    CHECK(weight_of_one("egg", country::uk, "medium") == Approx((53 + 63) / 2.0 * edible));
    CHECK(weight_of_one("egg", country::uk, "large") == Approx((63 + 73) / 2.0 * edible));
    CHECK(weight_of_one("egg", country::uk, "small") == Approx(53 * edible));       // the bound
    CHECK(weight_of_one("egg", country::uk, "extra large") == Approx(73 * edible)); // the bound
    CHECK(weight_of_one("egg", country::uk, "") == Approx(58 * edible)); // medium: common practice
    CHECK(weight_of_one("egg", country::any, "") == Approx(58 * edible));
}

TEST_CASE("A white and a yolk make the egg they come from") {
    for (const auto where : {country::us, country::uk})
        for (const auto* size : {"small", "medium", "large", "extra large", ""}) {
            INFO(size);
            CHECK(weight_of_one("egg white", where, size) +
                      weight_of_one("egg yolk", where, size) ==
                  Approx(weight_of_one("egg", where, size)));
        }
}

TEST_CASE("One fruit or vegetable weighs what the USDA published for its size") {
    struct piece {
        std::string_view name, size;
        double grams;
        std::string_view ndb;
    };
    for (const auto& p : {piece{"apples", "medium", 182, "09003"},
                          {"pears", "", 178, "09252"},
                          {"pears", "large", 230, "09252"},
                          {"bananas", "", 118, "09040"},
                          {"lemons", "", 58, "09150"},
                          {"oranges", "", 131, "09200"},
                          {"plums", "", 66, "09279"},
                          {"onions", "small", 70, "11282"},
                          {"carrots", "", 61, "11124"},
                          {"potatoes", "", 213, "11352"},
                          {"tomatoes", "large", 182, "11529"},
                          {"leeks", "", 89, "11246"}}) {
        INFO("NDB " << p.ndb);
        CHECK(weight_of_one(p.name, country::any, p.size) == Approx(p.grams));
    }
}

} // namespace benchcard::ingredients
