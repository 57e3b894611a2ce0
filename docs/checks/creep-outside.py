#!/usr/bin/env python3
"""Whole plates made up outside the program, worked up by it, and what became of them.

Shares nothing with the program but its file formats: laws, noise and layouts are written here anew, with the standard library
of Python only. Every plate has 96 wells: 8 blanks, 4 standards and 36 samples in duplicate. Truth is known for each.

    python3 docs/checks/creep-outside.py --out FOLDER -- java -jar tallywell.jar
    python3 docs/checks/creep-outside.py --out FOLDER --only first --plates 1 -- java -jar tallywell.jar

Everything is written to FOLDER (runs, exports, truth.csv, results.csv), and the tables to standard output. The same seed
gives the same plates. As it stands: 2 plates a case, 1 242 plates, 5 minutes on a quiet core, 18 where others work. --again
tabulates what is there already.
"""
import argparse
import csv
import math
import random
import subprocess
import sys
import time
from collections import defaultdict
from pathlib import Path

# Absorbance 1 is 1 mL * 150 g/mol / (6300 L/mol/cm * 1 cm * 0.05 mL).
PER_A = 1.0 * 150 / (6300 * 0.05)
SAMPLES = (0.05, 0.1, 0.2, 0.4, 0.7, 1.05)
STANDARDS = (0.04, 0.3, 0.7, 1.3)
TRIGGER = 120.0
PIPETTING = 0.002
NOISE = (0.0003, 0.001)
RATES = (0.002, 0.004, 0.008, 0.015, 0.03, 0.05)
FEW_RATES = (0.004, 0.015, 0.05)
OTHER_RATE = 6  # how many times slower the slow ones of standards and samples are


def every(first, step, count):
    return tuple(60 * (first + step * i) for i in range(count))


TIMES = {
    "1: 15": every(15, 1, 1),
    "3: 3, 6, 9": every(3, 3, 3),
    "3: 5, 10, 15": every(5, 5, 3),
    "4: 5, 7 .. 11": every(5, 2, 4),
    "5: 5, 7 .. 13": every(5, 2, 5),
    "6: 5, 10 .. 30": every(5, 5, 6),
    "8: 3, 5 .. 17": every(3, 2, 8),
    "12: 2, 3 .. 13": every(2, 1, 12),
    "60: .25 .. 15": every(0.25, 0.25, 60),
}

METHOD = """tallywell: method/1
id: outside
signal: {{absorptivity: 6300 L/mol/cm, direction: {direction}}}
steps:
  - analyte: {{name: acid, molar-mass: 150 g/mol}}
    volumes: {{sample: 50 µL, before-trigger: 1 mL, after-trigger: 1 mL}}
light-path: {{beam: fixed, length: 1 cm}}
creep: {{correct: extrapolate}}
calibration: {{{by}}}
report: {{unit: g/L}}
"""


# ---- laws: the part of change D that is seen at t; k is the rate of the first order that each ends or begins with ----

def first(d, k, t):
    return d * -math.expm1(-k * t)


def second(d, k, t):
    """Second substrate at 1.5 A: as fast as k at first, slower the more of it is used."""
    e = 1.5
    x = math.exp(-k * t * (e - d) / e)
    return d * e * (1 - x) / (e - d * x)


def integrated(d, rate, t):
    """dp/dt by Runge and Kutta, fixed steps of 2 s at most."""
    if d == 0:
        return 0.0
    n = max(1, math.ceil(t / 2))
    h = t / n
    p = 0.0
    for _ in range(n):
        a = rate(p)
        b = rate(p + h * a / 2)
        c = rate(p + h * b / 2)
        e = rate(p + h * c)
        p = min(d, p + h * (a + 2 * b + 2 * c + e) / 6)
    return p


def inhibited(d, k, t):
    """Product binds as strongly as substrate: Km = Ki = 0.2 A, Vmax = k Km."""
    return integrated(d, lambda p: k * 0.2 * (d - p) / (0.2 * (1 + p / 0.2) + d - p), t)


def saturated(d, k, t):
    """Km = 0.3 A, Vmax = k Km."""
    return integrated(d, lambda p: k * 0.3 * (d - p) / (0.3 + d - p), t)


def isomer(d, k, t):
    """A tenth reacts with a half-life of 15 min, the rest with k."""
    return first(0.9 * d, k, t) + first(0.1 * d, math.log(2) / 900, t)


LAWS = {"first": first, "second": second, "inhibited": inhibited, "saturated": saturated, "isomer": isomer}
_seen = {}


def seen(law, d, k, t):
    key = law, d, k, t
    if key not in _seen:
        _seen[key] = LAWS[law](d, k, t) if t > 0 else 0.0
    return _seen[key]


class Case:
    """One kind of plate. Standards and samples have a law and a rate each."""

    def __init__(self, name, rate, times, by, law="first", standards=None, standard_rate=None, falls=False, walk=0.0,
                 late=0.0, creep=0.001):
        self.name, self.rate, self.times, self.by, self.law = name, rate, times, by, law
        self.standards = standards or law
        self.standard_rate = standard_rate or rate
        self.falls, self.walk, self.late, self.creep = falls, walk, late, creep

    def finished(self, d):
        """Less than 0.3 mA left at the first of few readings, or half way of many; in the standards as well."""
        after = TIMES[self.times]
        at = after[0] if len(after) < 12 else after[len(after) // 2]
        def left(law, size, k):
            return size - seen(law, size, k, at)
        ok = left(self.law, d, self.rate) < 0.0003
        if self.by == "standards":
            ok = ok and all(left(self.standards, s, self.standard_rate) < 0.0003 for s in STANDARDS)
        return ok


def cases():
    for times in TIMES:
        for k in RATES:
            yield Case("first order", k, times, "absorptivity")
            yield Case("first order", k, times, "standards")
            yield Case("standards slow", k, times, "standards", standard_rate=k / OTHER_RATE)
            yield Case("samples slow", k / OTHER_RATE, times, "standards", standard_rate=k)
        for k in FEW_RATES:
            for by in ("absorptivity", "standards"):
                yield Case("first order, falls", k, times, by, falls=True)
                yield Case("second order", k, times, by, law="second")
                yield Case("product inhibits", k, times, by, law="inhibited")
                yield Case("saturated", k, times, by, law="saturated")
                yield Case("slow isomer", k, times, by, law="isomer")
                yield Case("random walk", k, times, by, walk=0.0003)
                yield Case("trigger 40 s late, creep 5 mA/min", k, times, by, late=40, creep=0.005)
            yield Case("slow isomer, not in standards", k, times, "standards", law="isomer", standards="first")


def plate(case, noise, chance):
    """Rows of readings, and the change of each sample slot."""
    after = TIMES[case.times]
    before = (30.0, 60.0, 90.0) if len(after) < 12 else tuple(12.0 * i for i in range(1, 10))
    clock = before + tuple(TRIGGER + t for t in after)
    wells = []
    for pair in range(48):
        if pair < 4:
            law, d, k = "first", 0.0, case.rate
        elif pair < 8:
            law, d, k = case.standards, STANDARDS[pair - 4], case.standard_rate
        else:
            law, d, k = case.law, SAMPLES[(pair - 8) % len(SAMPLES)], case.rate
        for _ in range(2):
            wells.append((law, d, k, 1 + PIPETTING * chance.gauss(0, 1), chance.gauss(0, 0.004)))
    sign = -1 if case.falls else 1
    base = 2.0 if case.falls else 0.12
    columns = []
    for law, d, k, pipetted, offset in wells:
        walk, last, column = 0.0, 0.0, []
        for t in clock:
            since = t - TRIGGER - case.late
            walk += case.walk * math.sqrt((t - last) / 60) * chance.gauss(0, 1) if case.walk else 0.0
            last = t
            y = sign * (pipetted * seen(law, d, k, since) if d and since > 0 else 0.0)
            y += sign * case.creep / 60 * max(0.0, since)
            column.append(base + offset + y + walk + noise * chance.gauss(0, 1))
        columns.append(column)
    return clock, columns


def well(i):
    return "ABCDEFGH"[i // 12] + str(i % 12 + 1)


def write(folder, case, noise, chance):
    folder.mkdir(parents=True, exist_ok=True)
    clock, columns = plate(case, noise, chance)
    with open(folder / "trace.csv", "w") as out:
        out.write("Time (s)," + ",".join(well(i) for i in range(96)) + "\n")
        for row, t in enumerate(clock):
            out.write(f"{t:.0f}," + ",".join(f"{c[row]:.5f}" for c in columns) + "\n")
    by = "by: absorptivity" if case.by == "absorptivity" else "by: standards, model: line"
    (folder / "method.yaml").write_text(METHOD.format(direction="falls" if case.falls else "rises", by=by))
    words = ["o"] * 4 + ["a", "b", "c", "d"] + [str(n) for n in range(1, 41)]
    lines = ["tallywell: layout/1", "name: outside", "plate: 96", "wells:"]
    for row in range(8):
        lines.append(f"  {'ABCDEFGH'[row]}: " + " ".join(words[(row * 12 + c) // 2] for c in range(12)))
    lines += ["legend:", "  o: {role: blank}"]
    for word, level in zip("abcd", STANDARDS):
        lines.append(f"  {word}: {{role: standard, level: {level * PER_A:.9f} g/L}}")
    (folder / "layout.yaml").write_text("\n".join(lines) + "\n")
    (folder / "samples.csv").write_text(
        "slot,sample,dilution\n" + "".join(f"{n},Sample {n},1\n" for n in range(1, 41)))
    (folder / "run.yaml").write_text(
        "tallywell: run/1\ntitle: outside\nmethod: method.yaml\nlayout: layout.yaml\nsamples: samples.csv\n"
        f"readings:\n  - {{file: trace.csv, trigger-at: {TRIGGER:.0f} s}}\n")


def run(program, folder, runs, many):
    """Works the runs up, many in one call, and returns the rows of all results."""
    rows = []
    for start in range(0, len(runs), many):
        part = runs[start:start + many]
        tables = folder / f"tables-{start}"
        done = subprocess.run(
            program + ["workup"] + [str(r) for r in part]
            + ["-o", str(folder / f"all-{start}.xlsx"), "--tables", str(tables), "--force", "--quiet"],
            capture_output=True, text=True)
        if done.returncode not in (0, 1, 3):
            sys.exit(f"the program ended with {done.returncode}: {done.stderr[-2000:]}")
        if (tables / "results.csv").exists():
            with open(tables / "results.csv", newline="", encoding="utf-8") as table:
                rows += list(csv.DictReader(table))
        print(f"{start + len(part)} of {len(runs)} plates", file=sys.stderr)
    return rows


def read(folder):
    rows = []
    for table in sorted(folder.glob("tables-*/results.csv")):
        with open(table, newline="", encoding="utf-8") as opened:
            rows += list(csv.DictReader(opened))
    return rows


COURSE = {"reaction-incomplete", "creep-not-tested", "creep-not-constant", "creep-follows-analyte", "standards-unfinished",
          "trigger-elsewhere", "plate-drifts", "jump", "baseline-drifts", "creep-belongs", "curve-misfit"}


class Count:
    def __init__(self):
        self.n = self.report = self.wrong = self.finished = self.unflagged = self.inside = self.valued = 0
        self.off = []

    def add(self, row, truth, finished):
        self.n += 1
        value, u = row["value"], row["U"]
        report = row["verdict"] == "report"
        self.report += report
        if finished:
            self.finished += 1
            self.unflagged += not COURSE & set(row["flags"].replace(";", " ").split())
        if value and report:
            off = abs(float(value) - truth)
            wide = float(u) if u else 0.0
            self.valued += 1
            self.inside += off <= wide
            if off > 2 * wide:
                self.wrong += 1
                self.off.append((float(value) - truth) / truth)


def part(a, b):
    return f"{100 * a / b:.1f} %" if b else "-"


def table(rows, counts):
    """One line a kind of plate and number of readings; the worst rate is named."""
    groups = defaultdict(list)
    for key, count in counts.items():
        groups[key[0], key[1], key[2]].append((key[3], count))
    print("| plates | by | read after (min) | results | report | off > 2 U, report | worst rate | finished, unflagged | in U, report |")
    print("| --- | --- | --- | --- | --- | --- | --- | --- | --- |")
    for (name, by, times), members in groups.items():
        total = lambda what: sum(getattr(c, what) for _, c in members)
        k, worst = max(members, key=lambda m: m[1].wrong / max(1, m[1].n))
        at = f"{part(worst.wrong, worst.n)} at {k:.4g} /s" if worst.wrong else "-"
        print(f"| {name} | {by} | {times} | {total('n')} | {part(total('report'), total('n'))} | "
              f"{part(total('wrong'), total('n'))} | {at} | {part(total('unflagged'), total('finished'))} | "
              f"{part(total('inside'), total('valued'))} |")


def short(counts):
    """Pooled over rates: by kind for three readings or more, and by times for all kinds."""
    head = ("| results | report | off > 2 U, report | finished, unflagged | in U, report |\n"
            "| --- | --- | --- | --- | --- | --- |")
    for title, key, keep in (
            ("plates, by, three readings or more", lambda k: f"{k[0]}, {k[1]}", lambda k: not k[2].startswith("1:")),
            ("read after (min)", lambda k: k[2], lambda k: True)):
        groups = defaultdict(list)
        for k, count in counts.items():
            if keep(k):
                groups[key(k)].append(count)
        print(f"| {title} {head}")
        for name, members in groups.items():
            t = {w: sum(getattr(c, w) for c in members)
                 for w in ("n", "report", "wrong", "finished", "unflagged", "inside", "valued")}
            print(f"| {name} | {t['n']} | {part(t['report'], t['n'])} | {part(t['wrong'], t['n'])} | "
                  f"{part(t['unflagged'], t['finished'])} | {part(t['inside'], t['valued'])} |")
        print()


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--out", required=True, type=Path)
    words.add_argument("--seed", type=int, default=20261201)
    words.add_argument("--plates", type=int, default=2, help="plates a case; scatter 0.3 and 1 mA in turn")
    words.add_argument("--many", type=int, default=110, help="runs in one call of the program")
    words.add_argument("--only", default="", help="kinds of plates whose name has this word")
    words.add_argument("--times", default="", help="times of reading that begin so")
    words.add_argument("--by", default="", help="absorptivity or standards")
    words.add_argument("--again", action="store_true", help="tabulate the results that are there already")
    words.add_argument("program", nargs="*", help="the program's command, after --")
    a = words.parse_args()
    begun = time.time()
    a.out.mkdir(parents=True, exist_ok=True)
    runs, of = [], {}
    with open(a.out / "truth.csv", "w") as truth:
        truth.write("run,kind,by,times,rate_per_s,noise,slot,change,value,finished\n")
        for number, case in enumerate(cases()):
            if a.only not in case.name or not case.times.startswith(a.times) or a.by not in case.by:
                continue
            for i in range(a.plates):
                noise = NOISE[i % len(NOISE)]
                folder = a.out / f"{number:04d}-{i}"
                if not a.again:
                    write(folder, case, noise, random.Random(a.seed * 100003 + number * 101 + i))
                runs.append(folder / "run.yaml")
                of[str(folder / "run.yaml")] = case
                for slot in range(1, 41):
                    d = SAMPLES[(slot - 1) % len(SAMPLES)]
                    truth.write(f'{folder / "run.yaml"},"{case.name}",{case.by},"{case.times}",{case.rate},{noise},{slot},{d},'
                                f"{d * PER_A!r},{case.finished(d)}\n")
    rows = read(a.out) if a.again else run(a.program, a.out, runs, a.many)
    counts = defaultdict(Count)
    for row in rows:
        case = of[row["run"]]
        d = SAMPLES[(int(row["slot"]) - 1) % len(SAMPLES)]
        counts[case.name, case.by, case.times, case.rate].add(row, d * PER_A, case.finished(d))
    table(rows, counts)
    print()
    short(counts)
    over = [(k, c) for k, c in counts.items() if c.wrong > 0.05 * c.n]
    print(f"{len(over)} of {len(counts)} cases have more than 5 of 100 results off by more than 2 U with report.")
    for (name, by, times, k), c in over:
        print(f"- {name}, {by}, {times} min, {k:.4g} /s: {part(c.wrong, c.n)}, off by "
              f"{100 * min(c.off):.0f} to {100 * max(c.off):.0f} %")
    lost = len(runs) - len({row["run"] for row in rows})
    print(f"\n{len(runs)} plates ({lost} refused), {len(rows)} results, {time.time() - begun:.0f} s.")


if __name__ == "__main__":
    main()
