"""The benchmarks: python3 bench.py BUILD-FOLDER [PART...]

A ratio is of two things that are run in turn. Seconds are of work, the program's own and the system's
for it, which says the same on a machine that does other things too; where it says `wall` they are of
the clock on the wall. The figures are the median, the smallest and the largest of so many runs.
"""

import json
import os
import pathlib
import platform
import subprocess
import sys
import tempfile

import made_up
from editing import edits
from hostile import hostile
from others import ways
from timing import RUNS, Table, in_turn

HERE = pathlib.Path(__file__).resolve().parent
SOURCE = HERE.parent.parent
EXAMPLE = str(SOURCE / "examples" / "pear-and-almond-tart.recipe")


class Bench:
    def __init__(self, build, scratch):
        self.build, self.scratch = pathlib.Path(build), pathlib.Path(scratch)
        self.table = Table()
        self.benchcard = str(self.build / "benchcard")

    def program(self, name):
        return str(self.build / "tests" / "bench" / name)

    def recipes(self, count):
        """A folder of so many made-up recipes."""
        folder = self.scratch / f"recipes-{count}"
        if not folder.exists():
            made_up.write(count, folder)
        return str(folder)


def parse(b):
    """Reading recipes, against PEGTL by the same rules without actions, and against reading the files."""
    b.table.heading("parsing 1,000 made-up recipes")
    output = subprocess.run([b.program("parse_speed"), b.recipes(1000), str(RUNS)],
                            capture_output=True, text=True, check=True).stdout.splitlines()
    megabytes = int(output[0]) / 1e6
    runs = [[float(figure) for figure in line.split()] for line in output[1:]]
    b.table.add("speed", [megabytes / ours for _, _, ours in runs], "MB/s")
    b.table.add("speed of PEGTL alone", [megabytes / alone for _, alone, _ in runs], "MB/s")
    b.table.add("speed, times that of PEGTL alone", [alone / ours for _, alone, ours in runs], least=0.5)
    b.table.add("time, times that of reading the files", [ours / files for files, _, ours in runs])


def check(b):
    """Checking books of 1,000, 10,000 and 100,000 recipes."""
    counts = [1000, 10_000, 100_000]
    b.table.heading("`check` on a folder of made-up recipes")
    folders = [b.recipes(count) for count in counts]

    def checking(folder, threads):
        return [b.benchcard, "check", folder, "--jobs", str(threads)]

    one = in_turn(*[checking(folder, 1) for folder in folders])
    for count, runs in zip(counts, one):
        b.table.add(f"{count} recipes, one thread", [run.work for run in runs], "s")
        b.table.add("memory", [run.memory / 1024 for run in runs], "MB")
    for smaller, larger in ((0, 1), (1, 2)):
        growth = [more.work / few.work / 10 for few, more in zip(one[smaller], one[larger])]
        b.table.add(f"time for {counts[larger]}, times ten of {counts[smaller]}", growth, most=1.15)
    single, double = in_turn(checking(folders[1], 1), checking(folders[1], 2))
    b.table.add("10000 recipes, two threads, wall", [run.wall for run in double], "s", most=1)
    b.table.add("times faster than on one thread, wall", [s.wall / d.wall for s, d in zip(single, double)])


def start(b):
    """A cold start, against the least that starting a program takes."""
    b.table.heading("cold start of `check` on one recipe")
    true, version, ours = in_turn(["/bin/true"], [b.benchcard, "--version"], [b.benchcard, "check", EXAMPLE], runs=3 * RUNS)
    for name, runs in (("true", true), ("benchcard --version", version), ("benchcard check", ours)):
        b.table.add(name, [run.work * 1e3 for run in runs], "ms")
    b.table.add("benchcard check, more than true", [(o.work - t.work) * 1e3 for o, t in zip(ours, true)], "ms", most=5)
    b.table.add("the same, wall", [(o.wall - t.wall) * 1e3 for o, t in zip(ours, true)], "ms")


def dumped(b, recipes, folder):
    """What the cards of some recipes are made of, in a folder; and their words."""
    folder = b.scratch / folder
    folder.mkdir(exist_ok=True)
    subprocess.run([b.program("dump_cards"), str(folder), *recipes], check=True)
    return str(folder), json.loads((folder / "cards.json").read_text())


def first_recipes(b, count):
    folder = pathlib.Path(b.recipes(1000 if count <= 1000 else 10_000))
    return [str(path) for path in sorted(folder.rglob("*.recipe"))[:count]]


def print_(b):
    """Printing one example, against libharu alone; and many recipes into one PDF."""
    b.table.heading("printing, cold")
    folder, _ = dumped(b, [EXAMPLE], "example")
    output = str(b.scratch / "out.pdf")
    ours, bare = in_turn([b.benchcard, "print", EXAMPLE, "-o", output], [b.program("bare_haru"), folder, output], runs=2 * RUNS)
    b.table.add("an example", [run.work * 1e3 for run in ours], "ms")
    b.table.add("libharu alone, the same strings, places and fonts", [run.work * 1e3 for run in bare], "ms")
    b.table.add("time, times that of libharu alone", [o.work / l.work for o, l in zip(ours, bare)], most=1.5)

    b.table.heading("printing many recipes into one PDF, one thread")
    recipes = first_recipes(b, 1000)
    _, cards = dumped(b, recipes, "thousand")
    alone, many = in_turn([b.benchcard, "print", recipes[0], "-o", output], [b.benchcard, "print", *recipes, "-o", output])
    b.table.add("cards a second, start and all", [len(cards) / run.work for run in many], least=2000)
    b.table.add("work a card, less that of the start", [(m.work - a.work) / len(cards) * 1e3 for a, m in zip(alone, many)], "ms")

    b.table.heading("printing a folder of 1,000 recipes as a book, wall")
    book = [b.benchcard, "print", b.recipes(1000), "-o", output, "--jobs"]
    single, double = in_turn([*book, "1"], [*book, "2"])
    b.table.add("one thread", [run.wall for run in single], "s")
    b.table.add("cards a second on two threads, times that on one", [s.wall / d.wall for s, d in zip(single, double)],
                least=1.8)

    b.table.heading("memory of printing")
    by_count = {}
    for count in (50, 500, 2000):
        recipes = first_recipes(b, count)
        _, cards = dumped(b, recipes, f"of-{count}")
        runs, = in_turn([b.benchcard, "print", *recipes, "-o", output])
        by_count[len(cards)] = [run.memory for run in runs]
        b.table.add(f"{len(cards)} cards", [memory / 1024 for memory in by_count[len(cards)]], "MB")
    few, *_, most = by_count
    b.table.add("growth a card", [(m - f) / (most - few) for f, m in zip(by_count[few], by_count[most])], "KB", most=20)


def others(b):
    """The words of one card and of a hundred, through programs that set text."""
    for count in (1, 100):
        recipes, cards = [], []
        for path in first_recipes(b, count):  # whole recipes, until there are as many cards
            if len(cards) < count:
                recipes.append(path)
                _, cards = dumped(b, recipes, "others")
        b.table.heading(f"the words of {len(cards)} card{'s' * (len(cards) > 1)} to PDF, cold")
        output = str(b.scratch / "out.pdf")
        for name, command in ways(cards, b.scratch / f"others-{count}").items():
            if not command:
                b.table.not_run(name, "it is not installed")
                continue
            try:
                ours, theirs = in_turn([b.benchcard, "print", *recipes, "-o", output], command)
            except RuntimeError as failure:
                b.table.not_run(name, str(failure))
                continue
            b.table.add(name, [run.wall * 1e3 for run in theirs], "ms")
            b.table.add(f"benchcard, times {name}", [o.work / t.work for o, t in zip(ours, theirs)], most=1)
            b.table.add(f"benchcard, times {name}, wall", [o.wall / t.wall for o, t in zip(ours, theirs)], most=1)


def editor(b):
    """The language server: from an edit to what is said of it."""
    b.table.heading("language server: from an edit to its diagnostics, wall")
    true, = in_turn(["/bin/true"], runs=100)
    b.table.add("starting /bin/true, to compare", [run.wall * 1e3 for run in true], "ms")
    for lines, limit in ((200, 20), (5000, 100)):
        text = made_up.long_recipe(lines)
        slowest, work = [], []
        for _ in range(RUNS):
            seconds, _, each = edits(b.benchcard, text, 100)
            slowest.append(sorted(seconds)[94] * 1e3)
            work.append(each * 1e3)
        b.table.add(f"{len(text.splitlines())} lines, 95 of 100 edits within", slowest, "ms", most=limit)
        b.table.add("work an edit", work, "ms")
    _, memory, _ = edits(b.benchcard, made_up.long_recipe(200), 10_000)
    b.table.add("memory over 10,000 edits", [kilobytes / 1024 for kilobytes in memory], "MB")
    b.table.add("the last, times the first after 500", [memory[-1] / memory[0]], most=1.05)


def hostile_(b):
    """Inputs of 1 MB that are made to be slow or large. Long, and so only where it is named."""
    b.table.heading("hostile inputs of 1 MB, at most 2 s of work and 256 MB each")
    b.table.missed += hostile(b.benchcard)


PARTS = {"parse": parse, "check": check, "start": start, "print": print_, "others": others, "editor": editor,
         "hostile": hostile_}
USUAL = [part for part in PARTS if part != "hostile"]


def machine(build):
    """What the figures were measured on."""
    model = next((line.split(":")[1].strip() for line in open("/proc/cpuinfo") if line.startswith("model name")), "?")
    cache = (pathlib.Path(build) / "CMakeCache.txt").read_text()
    compiler = next(line.split("=")[1] for line in cache.splitlines() if line.startswith("CMAKE_CXX_COMPILER:"))
    version = subprocess.run([compiler, "--version"], capture_output=True, text=True, check=True).stdout.splitlines()[0]
    return (f"{model}, {len(os.sched_getaffinity(0))} cores, Linux {platform.release()}; {version}, Release; "
            f"load {os.getloadavg()[0]:.1f}")


def main():
    build, *parts = sys.argv[1:]
    unknown = set(parts) - set(PARTS)
    if unknown:
        sys.exit(f"there is no part {', '.join(sorted(unknown))}; there are: {', '.join(PARTS)}")
    print(machine(build))
    print(f"  {'':<58} {'median':>9} {'':<6} {'smallest':>9} - {'largest':<9} {'runs':>3}  target")
    with tempfile.TemporaryDirectory(prefix="benchcard-bench-") as scratch:
        b = Bench(build, scratch)
        for name in parts or USUAL:
            PARTS[name](b)
    print(f"\n{b.table.missed} targets missed" if b.table.missed else "\nall targets met")


if __name__ == "__main__":
    main()
