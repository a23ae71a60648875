"""Made-up recipes, many and different, the same each time: python3 made_up.py COUNT FOLDER

They are of five kinds, each with its own proportions, so that hardly any of them gives a message.
Names, sizes, amounts, measures and words vary. A folder holds at most 1,000 of them.
"""

import pathlib
import random
import sys

FRUIT = ["raspberries", "plums", "apricots", "blackberries", "cherries", "blueberries", "pears"]
NUTS = ["hazelnuts", "walnuts", "almonds", "pecans", "pistachios"]
SPICES = ["ground cinnamon", "ground ginger", "ground cardamom", "ground nutmeg", "ground allspice"]
JAMS = ["apricot jam", "raspberry jam", "strawberry jam"]
VEGETABLES = ["carrots", "leeks", "parsnips", "celery", "potatoes"]
PLACES = ["Harbour", "Mill", "Orchard", "Market", "Garden", "Bridge", "Station", "Hill", "River"]
REMARKS = [
    "Best the day it is baked.",
    "Weigh the small things first; the large ones hide a slip.",
    "Keeps its shape when it is cold: do not hurry the rest.\n  Taste before the last step.",
]


def grams(rng, usual, spread=0.06):
    """An amount near the usual one, to a whole 5 g where it is large."""
    amount = usual * rng.uniform(1 - spread, 1 + spread)
    return round(amount / 5) * 5 if amount >= 100 else round(amount)


def line(amount, name, remark=""):
    return f"{amount:<10} {name}" + (f", {remark}" if remark else "")


def head(rng, title, *settings):
    lines = [f"recipe: {title}", *settings, f"revision: {rng.randint(1, 9)}"]
    if rng.random() < 0.3:
        lines.insert(0, "# from the folder of the bench")
    if rng.random() < 0.5:
        lines.append("note: " + rng.choice(REMARKS))
    return lines


def shortbread(rng, title):
    by = rng.choice([1, 1.5, 2, 3])
    nut, spice = rng.choice(NUTS), rng.choice(SPICES)
    return head(rng, title, f"makes: fingers of {rng.choice([25, 30, 35])} g", "measures: us",
                "loss: 6% in the oven", "keeps: 2 weeks in a tin") + [
        line(f"{grams(rng, 300 * by)} g", "plain flour"),
        line(f"{grams(rng, 200 * by)} g", "unsalted butter", "soft"),
        line(f"{grams(rng, 100 * by)} g", "caster sugar"),
        line(f"{grams(rng, 60 * by)} g", f"chopped {nut}"),
        line("1/2 tsp", "fine salt"),
        line("1 tsp", spice),
        f"- Cream [butter] with [sugar] for [{rng.randint(3, 5)} min].",
        f"- Stir in [flour], [{nut}], [salt] and [{spice}]; press into the tin.",
        f"- Bake at [{rng.choice([150, 160, 170])} C] for [35-40 min]; cut while warm.",
    ]


def loaf(rng, title):
    by = rng.randint(1, 6)
    flour, second = rng.choice(["strong white flour", "bread flour"]), rng.choice(["rye flour", "wholemeal flour"])
    return head(rng, title, f"makes: {by * 2} loaves", "measures: metric", f"percent: flour",
                "loss: 2% in the bowl", "loss: 12% in the oven", "keeps: 3 days in a bag") + [
        line(f"{grams(rng, 800 * by)} g", flour),
        line(f"{grams(rng, 200 * by)} g", second),
        line(f"{grams(rng, 640 * by)} g", "water", "lukewarm"),
        line(f"{grams(rng, 19 * by)} g", "fine salt"),
        line(f"{grams(rng, 8 * by)} g", "instant yeast"),
        line(f"{grams(rng, 25 * by)} ml", "olive oil"),
        f"- Mix [{flour}], [{second}], [water] and [yeast]; rest [20 min].",
        f"- Add [salt] and [oil]; knead for [{rng.randint(6, 10)} min].",
        "- Prove at [26 C] until doubled, [1-1 1/2 h]. Shape; prove again for [45 min].",
        f"- Bake at [{rng.choice([220, 230])} C] for [35-40 min]. Cool on a rack.",
    ]


def tart(rng, title):
    cases = rng.randint(2, 8)
    fruit, jam = rng.choice(FRUIT), rng.choice(JAMS)
    eggs = cases
    return head(rng, title, f"makes: {cases} tarts", "measures: us", f"serves: {cases * 8}") + [
        "",
        "component: Sweet pastry",
        "station: pastry bench",
        f"makes: {cases} cases of 265 g",
        "loss: 2% in the bowl",
        "keeps: 3 days chilled, 2 months frozen",
        line(f"{136 * cases} g", "plain flour"),
        line(f"{40 * cases} g", "icing sugar", "sifted"),
        line(f"{75 * cases} g", "unsalted butter", "cold, diced"),
        line(f"{22 * cases} g", "egg yolk"),
        line("1/4 tsp", "fine salt"),
        "- Rub [butter] into [flour], [icing sugar] and [salt] until it looks like",
        "  crumbs; bring together with [egg yolk]. Chill for [1 h].",
        "- Roll out to a [30 cm round], [3 mm] thick; line the tins. Chill for [20 min].",
        "",
        "component: Almond cream",
        "station: mixing",
        f"makes: {392 * cases} g",
        "loss: 2% in the bowl",
        "keeps: 4 days chilled",
        line(f"{112 * cases} g", "unsalted butter", "soft"),
        line(f"{115 * cases} g", "caster sugar"),
        line(f"{eggs}", "large eggs", "at room temperature"),
        line(f"{112 * cases} g", "ground almonds"),
        line(f"{cases} tbsp", "plain flour"),
        "- Beat [butter] with [sugar] until pale, [3 min].",
        "- Beat in [eggs: half], then [almonds: half], so that it does not split.",
        "- Beat in [eggs: rest]; fold in [almonds: rest] and [flour].",
        "",
        "assembly: Tarts",
        "station: oven",
        "per: 1 tart",
        "tin: 23 cm round",
        "loss: 8% in the oven",
        "keeps: 2 days in a tin",
        line("1 case", "Sweet pastry"),
        line(f"{rng.choice([380, 385, 390])} g", "Almond cream"),
        line(f"{grams(rng, 300)} g", fruit, "ripe"),
        line("2 tbsp", jam, "warmed, sieved"),
        line("some", "icing sugar", "for dusting, optional"),
        f"- Spread [Almond cream] in [Sweet pastry]; lay on [{fruit}].",
        "- Bake at [160 C fan] for [40-45 min], until the cream is firm in the middle.",
        f"- Brush with [{jam}] while hot. Cool for [30 min]; dust with [icing sugar].",
    ]


def biscuits(rng, title):
    by = rng.choice([1, 2, 3])
    nut = rng.choice(NUTS)
    return head(rng, title, "measures: us", "labels: both") + [
        "",
        "component: Biscuits",
        "station: mixing",
        f"makes: biscuits of {rng.choice([28, 30, 32])} g",
        "tray: 12 biscuits",
        "loss: 2% in the bowl",
        "loss: 10% in the oven",
        "keeps: 2 weeks in a tin, 3 months frozen",
        line(f"{by} cup" + "s" * (by > 1), "unsalted butter", "soft"),
        line(f"{grams(rng, 220 * by)} g", "light brown sugar"),
        line(f"{by * 2} cups", "plain flour"),
        line(f"{by * 2}", "large eggs"),
        line(f"{by} tsp", "baking powder"),
        line("1/2 tsp", "fine salt"),
        line(f"{by * 3} cups", "rolled oats"),
        line(f"{grams(rng, 120 * by)} g", f"chopped {nut}"),
        line(f"{grams(rng, 150 * by)} g", "raisins"),
        "- Beat [butter] with [brown sugar] until fluffy, [3 min]. Beat in [eggs] one at a time.",
        "- Whisk together [flour], [baking powder] and [salt]; mix in slowly.",
        "- Mix in [rest]. Chill for [30 min].",
        f"- Roll into balls, set them [5 cm] apart and bake at [350 F] for [{rng.randint(11, 13)}-14 min].",
    ]


def soup(rng, title):
    bowls = rng.choice([10, 20, 40])
    root, second = rng.sample(VEGETABLES, 2)
    return head(rng, title, f"makes: {bowls} bowls", f"serves: {bowls}", "measures: metric", "labels: eu",
                "loss: 12% in the pot", "keeps: 2 days chilled, 3 months frozen",
                "caution: Hold hot at 63 C or above. Local rules and the person responsible come\n"
                "  first.") + [
        line(f"{bowls * 5} ml", "rapeseed oil"),
        line(f"{grams(rng, 38 * bowls)} g", "onions", "chopped"),
        line(f"{grams(rng, 40 * bowls)} g", root, "chopped"),
        line(f"{grams(rng, 40 * bowls)} g", second, "chopped"),
        line(f"{bowls // 2} cloves", "garlic", "chopped"),
        line(f"{grams(rng, 50 * bowls)} g", "red lentils", "washed, drained"),
        line(f"{bowls * 250} ml", "water", "hot"),
        line(f"{grams(rng, 2 * bowls)} g", "fine salt"),
        f"- Soften [onions], [{root}], [{second}] and [garlic] in [oil], [10 min].",
        "- Add [lentils] and [water]; simmer for [25 min]. Season with [salt].",
    ]


KINDS = [(shortbread, "shortbread"), (loaf, "loaf"), (tart, "tart"), (biscuits, "oat biscuits"), (soup, "soup")]


def recipe(number):
    """The text of the made-up recipe of that number."""
    rng = random.Random(number)
    make, noun = rng.choice(KINDS)
    return "\n".join(make(rng, f"{rng.choice(PLACES)} {noun} {number}")) + "\n"


def long_recipe(lines):
    """A recipe of about so many lines: doughs, each its own component, and a plate of all of them."""
    doughs = lines // 11
    text = ["recipe: Long", "makes: 1 plate", "measures: us", "revision: 1"]
    for number in range(1, doughs + 1):
        rng = random.Random(number)
        text += ["", f"component: Dough {number}", "makes: 600 g",
                 line(f"{grams(rng, 300)} g", "plain flour"),
                 line(f"{grams(rng, 200)} g", "unsalted butter", "soft"),
                 line("1/2 cup", "caster sugar"), line("1/4 tsp", "fine salt"),
                 f"- Cream [butter] with [sugar] for [{rng.randint(3, 5)} min].",
                 "- Stir in [flour] and [salt]; press into the tin.", ""]
    text += ["assembly: Plate", "per: 1 plate"] + [line("600 g", f"Dough {number}") for number in range(1, doughs + 1)]
    return "\n".join(text) + "\n- Bake all at [160 C] for [35-40 min]; cut while warm.\n"


def write(count, folder):
    """Writes so many recipes below a folder; its subfolders hold a thousand each."""
    folder = pathlib.Path(folder)
    for number in range(count):
        place = folder / f"{number // 1000:03}"
        if number % 1000 == 0:
            place.mkdir(parents=True, exist_ok=True)
        (place / f"{number:06}.recipe").write_text(recipe(number), encoding="utf-8")


if __name__ == "__main__":
    write(int(sys.argv[1]), sys.argv[2])
