"""How long programs take, how two compare, and the table that says so."""

import dataclasses
import os
import statistics
import time

RUNS = max(9, int(os.environ.get("BENCH_RUNS", "9")))


@dataclasses.dataclass
class Took:
    wall: float  # seconds
    work: float  # seconds of work, its own and the system's for it
    memory: int  # KB at most


def took(arguments, environment=None):
    """Runs a program to its end, without output, and says what it took."""
    nowhere = [(os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0), (os.POSIX_SPAWN_OPEN, 2, os.devnull, os.O_WRONLY, 0)]
    begin = time.perf_counter()
    child = os.posix_spawnp(arguments[0], arguments, environment or os.environ, file_actions=nowhere)
    _, status, usage = os.wait4(child, 0)
    if status != 0:
        raise RuntimeError(f"{' '.join(arguments)} ended with {os.waitstatus_to_exitcode(status)}")
    return Took(time.perf_counter() - begin, usage.ru_utime + usage.ru_stime, usage.ru_maxrss)


def in_turn(*programs, runs=RUNS):
    """Runs programs in turn, so that what else the machine does falls on all; a list a program."""
    for each in programs:
        took(each)  # files are read into memory once
    rounds = [[took(each) for each in programs] for _ in range(runs)]
    return list(zip(*rounds))


class Table:
    """Figures with their targets, printed as they come."""

    def __init__(self):
        self.missed = 0

    def heading(self, text):
        print(f"\n{text}", flush=True)

    def add(self, what, values, unit="", least=None, most=None):
        """A line: the median of some runs, their spread, and whether it is at least or at most so much."""
        middle = statistics.median(values)
        target, verdict = "", ""
        if least is not None or most is not None:
            target = f"at least {least:g}" if least is not None else f"at most {most:g}"
            met = middle >= least if least is not None else middle <= most
            verdict = "met" if met else "MISSED"
            self.missed += not met
        figures = f"{middle:>9.4g} {unit:<6} {min(values):>9.4g} - {max(values):<9.4g} {len(values):>3}"
        print(f"  {what:<58} {figures}  {target:<16} {verdict}", flush=True)

    def not_run(self, what, why):
        print(f"  {what:<58} not run: {why}", flush=True)
