"""The benchmarks: python3 bench.py BUILD-FOLDER [PART...]

A ratio is of two things that are run in turn. Seconds are of work, the program's own and the system's
for it, which says the same on a machine that does other things too; where it says `wall` they are of
the clock on the wall. The figures are the median, the smallest and the largest of so many runs.
"""

import os
import pathlib
import platform
import subprocess
import sys
import tempfile

import made_up
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
    b.table.heading("checking made-up recipes, in one process")
    folders = [b.recipes(count) for count in counts]
    one = in_turn(*[[b.program("check_speed"), folder, "1"] for folder in folders])
    for count, runs in zip(counts, one):
        b.table.add(f"{count} recipes, one thread", [run.work for run in runs], "s")
    for smaller, larger in ((0, 1), (1, 2)):
        growth = [more.work / few.work / 10 for few, more in zip(one[smaller], one[larger])]
        b.table.add(f"time for {counts[larger]}, times ten of {counts[smaller]}", growth, most=1.15)
    two, = in_turn([b.program("check_speed"), folders[1], "2"])
    b.table.add("10000 recipes, two threads, wall", [run.wall for run in two], "s", most=1)
    b.table.add("10000 recipes, two threads, work of each", [run.work / 2 for run in two], "s")


def start(b):
    """A cold start, against the least that starting a program takes."""
    b.table.heading("cold start of `check` on one recipe")
    true, version, ours = in_turn(["/bin/true"], [b.benchcard, "--version"], [b.benchcard, "check", EXAMPLE], runs=3 * RUNS)
    for name, runs in (("true", true), ("benchcard --version", version), ("benchcard check", ours)):
        b.table.add(name, [run.work * 1e3 for run in runs], "ms")
    b.table.add("benchcard check, more than true", [(o.work - t.work) * 1e3 for o, t in zip(ours, true)], "ms", most=5)
    b.table.add("the same, wall", [(o.wall - t.wall) * 1e3 for o, t in zip(ours, true)], "ms")


PARTS = {"parse": parse, "check": check, "start": start}


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
        for name in parts or PARTS:
            PARTS[name](b)
    print(f"\n{b.table.missed} targets missed" if b.table.missed else "\nall targets met")


if __name__ == "__main__":
    main()
