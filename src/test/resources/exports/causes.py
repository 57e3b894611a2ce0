"""More of the corpus: exports in which something invites a wrong reading, each in several forms, with what must come of it.

Run in this folder: python3 causes.py
The expected readings come from the numbers the files are made of, as in corpus.py, whose tools are used here.
"""

import sys

sys.dont_write_bytecode = True

from corpus import *  # noqa: E402,F403


def wide(series, times, sep=",", head=None, label="Well", comma=False, digits=3):
    """Wells down, times across; head: lines between the heading and the wells."""
    lines = head if head is not None else [sep.join([label] + [str(t) for t in times])]
    for w in series:
        lines = lines + [sep.join([w] + [num(x, digits, comma) for x in series[w]])]
    return "\n".join(lines) + "\n"


def kinetic(seed, names, count):
    rnd = random.Random(seed)
    return {w: [round(rnd.uniform(0.1, 1.2), 3) for _ in range(count)] for w in names}


def timed(series, seconds, **kw):
    return Block([(w, t, x, "") for w in series for t, x in zip(seconds, series[w])], **kw)


def down(series, seconds, **kw):
    return Block([(w, t, series[w][i], "") for i, t in enumerate(seconds) for w in series], **kw)


def lines_of(values, sep=",", comma=False, digits=4):
    return "".join(f"{w}{sep}{num(values[w], digits, comma)}\n" for w in values)


A, B, C = plate(901, W96), plate(902, W96), plate(903, W96)
few = wells("ABC", 4)
few_v = plate(904, few)
K = kinetic(905, few, 3)

# ---- captions below their grids ------------------------------------------------------------------------------------
write("below-plates.csv", "Export of the morning\n\n" + grid(A) + "Plate: X1\n\n" + grid(B) + "Plate: X2\n\n" + grid(C) + "Plate: X3\n")
expect("below-plates.csv", endpoint(A, plate="X1", label="Export of the morning"), endpoint(B, plate="X2"), endpoint(C, plate="X3"))
write("below-barcodes-de.csv", grid(A, sep=";", comma=True) + "Strichcode: Q-7\n\n" + grid(B, sep=";", comma=True) + "Strichcode: Q-8\n")
expect("below-barcodes-de.csv", endpoint(A, plate="Q-7"), endpoint(B, plate="Q-8"))
write("below-wavelengths.csv", "Plate: M1\n\n" + grid(A) + "Wavelength: 340 nm\n\n" + grid(B) + "Wavelength: 405 nm\n")
expect("below-wavelengths.csv", endpoint(A, plate="M1", nm=340), endpoint(B, plate="M1", nm=405))
write("below-single.csv", grid(A) + "\nWavelength: 340 nm\nPlate: Z9\n")
expect("below-single.csv", endpoint(A, plate="Z9", nm=340))
write("below-unit-single.csv", grid(A) + "\nUnit: RFU\n")
refuse("below-unit-single.csv", "no readings")
write("below-or-above.csv", "Plate: P0\n\n" + grid(A) + "\nPlate: P1\n\n" + grid(B) + "\nPlate: P2\n")
refuse("below-or-above.csv", "above or below", "block 1", "block 2")
write("below-attached.csv", grid(A) + "Plate: P1\n\n" + grid(B) + "Plate: P2\n\n" + grid(C))
expect("below-attached.csv", endpoint(A, plate="P1"), endpoint(B, plate="P2"), endpoint(C))
write("above-attached.csv", "Plate: P1\n" + grid(A) + "\nPlate: P2\n" + grid(B) + "\nMean of all: 0.5\n")
expect("above-attached.csv", endpoint(A, plate="P1"), endpoint(B, plate="P2"))

# ---- units of times ------------------------------------------------------------------------------------------------
for i, (line, lang) in enumerate([("Incubate 30 min before reading", "en"), ("Lamp warm-up: 30 min", "lamp"),
                                  ("Inkubation 30 min", "de"), ("Sample: cider after 30 min", "sample"),
                                  ("Shaking duration 30 min", "shake"), ("Préchauffage lampe 30 min", "fr"),
                                  ("Comment: interval was meant to be 30 min", "note")]):
    write(f"unit-not-from-{lang}.csv", line + "\n\n" + wide(K, [0, 30, 60], head=["Time,0,30,60"]))
    refuse(f"unit-not-from-{lang}.csv", "times without a unit", "times in seconds", "times in minutes")
for line, lang in [("Read interval: 30 s", "en"), ("Messintervall: 30 s", "de"), ("Kinetic length: 60 s", "length"),
                   ("Intervalle de lecture : 30 s", "fr"), ("Интервал: 30 с", "ru"), ("间隔: 30 秒", "zh"), ("Interwał: 30 s", "pl")]:
    write(f"unit-from-{lang}.csv", "Incubate 30 min\n" + line + "\n\n" + wide(K, [0, 30, 60], head=["Time,0,30,60"]))
    expect(f"unit-from-{lang}.csv", timed(K, [0, 30, 60], label="Incubate 30 min"))

# ---- rows over the wells -------------------------------------------------------------------------------------------
write("rows-cycle-time-temperature.csv", wide(K, [], head=["Cycle,1,2,3", "Time [s],0,30,60", "Temp. [°C],25.0,25.2,25.5"]))
expect("rows-cycle-time-temperature.csv", timed(K, [0, 30, 60]))
write("rows-well-cycle-time-humidity.csv",
      wide(K, [], head=["Well,,,", "Cycle,1,2,3", "Time [s],0,30,60", "Humidity %,40.1,40.2,40.5"]))
expect("rows-well-cycle-time-humidity.csv", timed(K, [0, 30, 60]))
write("rows-zyklus-zeit-temperatur.csv",
      wide(K, [], sep=";", comma=True, head=["Zyklus;1;2;3", "Zeit [min];0;0,5;1", "Temperatur [°C];25,0;25,2;25,5"]))
expect("rows-zyklus-zeit-temperatur.csv", timed(K, [0, 30, 60]))
write("rows-time-last.csv", wide(K, [], head=["Cycle Nr.,1,2,3", "Temperature,25.0,25.2,25.5", "Time,0 s,30 s,60 s"]))
expect("rows-time-last.csv", timed(K, [0, 30, 60]))
write("rows-content.csv", "Well,Content,,,\n,Cycle,1,2,3\n,Time [s],0,30,60\n,Temperature,25.0,25.2,25.5\n"
      + "".join(f"{w},Sample {i + 1}," + ",".join(num(x, 3) for x in K[w]) + "\n" for i, w in enumerate(K)))
expect("rows-content.csv", timed(K, [0, 30, 60]))
write("rows-two-times.csv", wide(K, [], head=["Time [s],0,30,60", "Time [min],0,0.5,1", "Temperature,25.0,25.2,25.5"]))
refuse("rows-two-times.csv", "a second row of times")

# ---- rows of another width -----------------------------------------------------------------------------------------
text = grid(A).split("\n")
cells = text[3].split(",")
write("width-grid-deleted-cell.csv", "\n".join(text[:3] + [",".join(cells[:5] + cells[6:])] + text[4:]))
refuse("width-grid-deleted-cell.csv", "line 4", "12 cells in a table of 13")
write("width-grid-typed-comma.csv", "\n".join(text[:3] + [",".join(cells[:5] + ["1,5"] + cells[6:])] + text[4:]))
refuse("width-grid-typed-comma.csv", "line 4", "14 cells in a table of 13")
series = wide(K, [], head=["Well,0 s,30 s,60 s"]).split("\n")
write("width-series-deleted-cell.csv", "\n".join(series[:3] + [",".join(series[3].split(",")[:2] + series[3].split(",")[3:])] + series[4:]))
refuse("width-series-deleted-cell.csv", "line 4", "3 cells in a table of 4")
across = ["Time [s]," + ",".join(few)] + [f"{t}," + ",".join(num(K[w][i], 3) for w in few) for i, t in enumerate((0, 30, 60))]
write("width-across-deleted-cell.csv", "\n".join(across[:2] + [",".join(across[2].split(",")[:4] + across[2].split(",")[5:])] + across[3:]) + "\n")
refuse("width-across-deleted-cell.csv", "line 3", "12 cells in a table of 13")
listed = ["Well,Sample,Absorbance"] + [f"{w},S{i},{num(few_v[w])}" for i, w in enumerate(few)]
write("width-list-name-with-comma.csv", "\n".join(listed[:4] + [listed[4].replace("S3", "Juice, red")] + listed[5:]) + "\n")
refuse("width-list-name-with-comma.csv", "line 5", "4 cells in a table of 3")

# ---- decimal commas cut by commas in lists -------------------------------------------------------------------------
cut = "".join(f"{w},{num(few_v[w], 3, True)}\n" for w in few)
write("cut-list-headed.csv", "Well,Absorbance\n" + cut)
refuse("cut-list-headed.csv", "decimal comma")
write("cut-list-bare.csv", cut)
refuse("cut-list-bare.csv", "decimal comma")
write("cut-list-headed-wide.csv", "Well,Absorbance,\n" + cut)
refuse("cut-list-headed-wide.csv", "decimal comma")

# ---- wavelengths ---------------------------------------------------------------------------------------------------
for lang, lines in {"comment": "Wavelength: 340 nm\nComment: compare with 405 nm",
                    "lamp": "Wavelength: 340 nm\nLamp test at 620 nm passed",
                    "list": "Wavelength: 340 nm\nInstalled filter: 405 nm\nInstalled filter: 450 nm",
                    "de": "Wellenlänge: 340 nm\nBemerkung: wie bei 405 nm", "first": "Note: 405 nm was used before\nWavelength: 340 nm",
                    "ru": "Длина волны: 340 нм\nКомментарий: ранее 405 нм", "zh": "波长: 340 nm\n备注: 405 nm"}.items():
    write(f"wavelength-explicit-{lang}.csv", lines + "\n\n" + grid(A))
    expect(f"wavelength-explicit-{lang}.csv", endpoint(A, nm=340, label="Lamp test passed" if lang == "lamp" else ""))
write("wavelength-two.csv", "Wavelength: 340 nm\nWavelength: 405 nm\n\n" + grid(A))
refuse("wavelength-two.csv", "two wavelengths", "340 nm", "405 nm")
write("wavelength-against-title.csv", "Wavelength: 340 nm\n\nAbsorbance at 405 nm\n" + grid(A))
refuse("wavelength-against-title.csv", "two wavelengths")
write("wavelength-only-by-chance.csv", "Lamp test at 620 nm passed\n\n" + grid(A))
expect("wavelength-only-by-chance.csv", endpoint(A, label="Lamp test passed"))

# ---- lists whose heading is not understood or rejected -------------------------------------------------------------
for head in ("Transmittance", "SD", "Conc", "Average", "Fluorescence", "Mittelwert", "Transmission", "濃度", "平均值"):
    name = "heading-" + {"濃度": "ja", "平均值": "zh"}.get(head, head.lower()) + ".csv"
    write(name, f"Well,{head}\n" + lines_of(few_v))
    refuse(name, "no readings", head)
write("heading-data.csv", "Well,Data\n" + lines_of(few_v))
refuse("heading-data.csv", "'Data'", "block 1")
write("heading-unknown.csv", "Well,Sugar\n" + lines_of(few_v))
refuse("heading-unknown.csv", "'Sugar'", "block 1")
expect("heading-unknown.csv", endpoint(few_v, label="Sugar"), number=1)
write("heading-unknown-under-title.csv", "Absorbance at 340 nm\n\nWell,Run 7\n" + lines_of(few_v))
expect("heading-unknown-under-title.csv", endpoint(few_v, label="Run 7", nm=340))

# ---- not absorbance, or no longer as the detector gave it ------------------------------------------------------------
other = {"mode-en": "Mode: Fluorescence", "mode-de": "Messart: Fluoreszenz", "mode-fr": "Mode : Luminescence", "mode-ru": "Режим: Флуоресценция",
         "mode-zh": "模式: 荧光", "mode-ja": "モード: 発光", "title-transmission": "Transmission [%]", "title-t": "%T at 340 nm",
         "title-volts": "Detector signal [V]", "title-turbidity": "Turbidity (NTU)", "unit-line": "RFU", "unit-key": "Unit: NTU", "unit-de": "Einheit: mV",
         "title-es": "Fluorescencia", "title-pl": "Luminescencja", "title-nl": "Troebelheid", "title-pt": "Transmitância", "title-it": "Trasmittanza"}
for name, line in other.items():
    write(f"other-{name}.csv", line + "\n\n" + grid(A))
    refuse(f"other-{name}.csv", "no readings")
done = {"per-cm": "Absorbance per cm", "slash-cm": "Absorbance [1/cm]", "10-mm": "Absorbance to 10 mm", "minus-en": "Absorbance minus blank",
        "minus-de": "Extinktion abzüglich Leerwert", "minus-fr": "Absorbance moins blanc", "minus-es": "Absorbancia menos blanco",
        "minus-it": "Assorbanza meno bianco", "minus-pt": "Absorbância menos branco", "minus-nl": "Absorptie gecorrigeerd voor blanco",
        "minus-pl": "Absorbancja, odjęto ślepą", "minus-ru": "Поглощение минус бланк", "minus-zh": "吸光度 扣除空白", "minus-ja": "吸光度 ブランク差し引き",
        "reference": "Absorbance, reference subtracted", "reciprocal": "1/A", "reciprocal-word": "Reciprocal absorbance", "log": "log10 absorbance",
        "key": "Blank correction: yes", "key-de": "Leerwertkorrektur: ja"}
for name, line in done.items():
    write(f"done-{name}.csv", line + "\n\n" + grid(A))
    refuse(f"done-{name}.csv", "processed", "block 1")
xlsx("sheet-normalised.xlsx", {"Normalised": at(A, 0, 0)})
refuse("sheet-normalised.xlsx", "processed")
xlsx("sheet-fluorescence.xlsx", {"Fluorescence": at(A, 0, 0)})
refuse("sheet-fluorescence.xlsx", "no readings")
write("not-other-off.csv", "Fluorescence: off\nMode: Absorbance\n\n" + grid(A))
expect("not-other-off.csv", endpoint(A, label="Mode Absorbance"))

# ---- times of spreadsheets -------------------------------------------------------------------------------------------
def clocks(fmt, heading, formats):
    cells = {(0, 0): heading}
    for j, w in enumerate(few):
        cells[(0, 1 + j)] = w
    for i, t in enumerate((0, 30, 60)):
        cells[(1 + i, 0)] = (t / 1440, fmt)
        for j, w in enumerate(few):
            cells[(1 + i, 1 + j)] = K[w][i]
    return {"Run": cells}, formats


sheets, formats = clocks(1, "Time [mm:ss]", ("General", "h:mm"))
xlsx("clock-typed-minutes.xlsx", sheets, formats)
expect("clock-typed-minutes.xlsx", down(K, [0, 30, 60]))
sheets, formats = clocks(1, "Time", ("General", "h:mm"))
xlsx("clock-open.xlsx", sheets, formats)
refuse("clock-open.xlsx", "minutes and seconds, or hours and minutes")
write("clock-dotted.csv", "Time [min.sec]," + ",".join(few) + "\n" + "".join(
    f"{t}," + ",".join(num(K[w][i], 3) for w in few) + "\n" for i, t in enumerate(("0.00", "0.30", "1.30"))))
expect("clock-dotted.csv", down(K, [0, 30, 90]))

# ---- signs beside and within readings --------------------------------------------------------------------------------
write("milli-thousands.csv", "mOD\n\n" + grid({w: 0.5 for w in few}, rows="ABC", cols=4, cell={w: ("1.234" if w == "A2" else "987") for w in few}))
refuse("milli-thousands.csv", "'1.234'", "thousandths")
write("columns-from-0.csv", "," + ",".join(str(c) for c in range(12)) + "\n" + grid(A, head=False))
refuse("columns-from-0.csv", "columns counted from '0'")
write("wells-from-0.csv", "Well,Abs\nA0,0.123\n" + lines_of(few_v))
refuse("wells-from-0.csv", "'A0'")
write("letters-over-columns.csv", "," + ",".join("ABCDEFGHIJKL") + "\n" + "".join(
    f"{i + 1}," + ",".join(num(A[f"{r}{c}"]) for c in range(1, 13)) + "\n" for i, r in enumerate(R8)))
refuse("letters-over-columns.csv", "12 letters over the columns")
write("bare-8-by-6.csv", "\n".join(",".join(num(A[f"{r}{c}"]) for c in range(1, 7)) for r in R8) + "\n")
refuse("bare-8-by-6.csv", "no readings")
for name, corner in (("dose", "Dose/Day"), ("sample", "Sample"), ("concentration", "Concentration"), ("dilution", "Verdünnung")):
    write(f"corner-{name}.csv", grid(few_v, rows="ABC", cols=4, corner=corner))
    refuse(f"corner-{name}.csv", "in the corner of a grid")
for name, code in (("9999", "9.999"), ("minus-1", "-1"), ("10000", "10.000")):
    write(f"code-{name}.csv", grid(A, cell={"C3": code}))
    refuse(f"code-{name}.csv", "C3")
for name, slip in (("letter-o", "A1O"), ("cyrillic", "А3"), ("first-cyrillic", "А1")):
    names = list(few)
    names[{"letter-o": 9, "cyrillic": 2, "first-cyrillic": 0}[name]] = slip
    write(f"slip-{name}.csv", "Well,Abs\n" + "".join(f"{n},{num(few_v[w])}\n" for n, w in zip(names, few)))
    refuse(f"slip-{name}.csv", f"'{slip}'")
write("flags-beside.csv", "Well,Abs,Flag\n" + "".join(f"{w},{num(few_v[w])},{'saturated' if w == 'B2' else ''}\n" for w in few))
expect("flags-beside.csv", endpoint(few_v, label="Abs"))

# ---- marks of pages and injections ------------------------------------------------------------------------------------
K6 = kinetic(906, few, 6)


def run(sep=",", head="Time [s]", mark="", at_row=3, again=False):
    rows = [head + sep + sep.join(few)] + [f"{10 * i}{sep}" + sep.join(num(K6[w][i], 3) for w in few) for i in range(6)]
    return "\n".join(rows[:at_row] + [mark] + ([rows[0]] if again else []) + rows[at_row:]) + "\n"


for name, mark in (("page", "Page 2 of 3"), ("seite", "Seite 2"), ("injection", "Injection"), ("line", "----------"), ("zugabe", "Zugabe Startreagenz"), ("ru", "Страница 2")):
    write(f"cut-by-{name}.csv", run(mark=mark))
    expect(f"cut-by-{name}.csv", down(K6, [0, 10, 20, 30, 40, 50]))
write("cut-by-page-headings.csv", run(mark="Page 2", again=True))
expect("cut-by-page-headings.csv", down(K6, [0, 10, 20, 30, 40, 50]))
for name, head in (("de", "Zeit [s]"), ("ru", "Время (с)"), ("zh", "时间 (秒)"), ("ja", "時間 (秒)"), ("pl", "Czas [s]"), ("nl", "Tijd (s)"), ("pt", "Tempo [s]")):
    write(f"times-{name}.csv", run(head=head, mark=""))
    expect(f"times-{name}.csv", down(K6, [0, 10, 20, 30, 40, 50]))
for name, title in (("de", "Zeit: {} s"), ("ru", "Время: {} с"), ("zh", "时间: {} 秒"), ("ja", "時間: {} 秒"), ("cycle-ru", "Цикл {c} ({} с)"), ("cycle-zh", "循环 {c} ({} 秒)"), ("cycle-de", "Zyklus {c} ({} Sek.)")):
    write(f"grid-times-{name}.csv", "\n".join(title.format(30 * i, c=i + 1) + "\n" + grid(p, rows="ABC", cols=4) for i, p in enumerate((A, B, C))))
    expect(f"grid-times-{name}.csv", Block([(w, 30 * i, p[w], "") for i, p in enumerate((A, B, C)) for w in few]))

# ---- readable, though written in a way of its own --------------------------------------------------------------------
for name, form in (("number-first", "{c}{r}"), ("dash", "{l}-{c}"), ("colon", "{r}:{c}"), ("brackets", "[{r}{c}]"), ("padded", "{r}0{c}")):
    write(f"wells-{name}.csv", "Well;Abs\n" + "".join(
        form.format(r=w[0], l=w[0].lower(), c=w[1:]) + ";" + num(few_v[w]) + "\n" for w in few))
    expect(f"wells-{name}.csv", endpoint(few_v, label="Abs"))
write("wells-numeric.csv", "Row,Column,Abs\n" + "".join(f"{'ABC'.index(w[0]) + 1},{w[1:]},{num(few_v[w])}\n" for w in few))
expect("wells-numeric.csv", endpoint(few_v, label="Abs"))
write("wells-numeric-from-0.csv", "Row,Column,Abs\n" + "".join(f"{'ABC'.index(w[0])},{int(w[1:]) - 1},{num(few_v[w])}\n" for w in few))
refuse("wells-numeric-from-0.csv", "no readings")
stamps = {"iso": ["2026-03-01T23:59:30", "2026-03-02T00:00:00", "2026-03-02T00:00:30"],
          "offset": ["2026-03-01T23:59:30+01:00", "2026-03-02T00:00:00+01:00", "2026-03-02T00:00:30+01:00"],
          "dotted": ["01.03.2026 23:59:30", "02.03.2026 00:00:00", "02.03.2026 00:00:30"]}
for name, of in stamps.items():
    write(f"stamps-{name}.csv", "Time," + ",".join(few) + "\n" + "".join(
        f"{t}," + ",".join(num(K[w][i], 3) for w in few) + "\n" for i, t in enumerate(of)))
    base = 82770 if name == "offset" else 86370
    expect(f"stamps-{name}.csv", down(K, [base, base + 30, base + 60]))
write("stamps-two-columns.csv", "Date,Time," + ",".join(few) + "\n" + "".join(
    t.replace("T", ",") + "," + ",".join(num(K[w][i], 3) for w in few) + "\n" for i, t in enumerate(stamps["iso"])))
expect("stamps-two-columns.csv", down(K, [86370, 86400, 86430]))
words = {"A1": "OL", "A2": "HI", "A3": ">>", "A4": "4.000+", "B1": "#DIV/0!", "B2": "#NUM!", "B3": "#N/A", "B4": "#VALUE!"}
write("marks-more.csv", grid(few_v, rows="ABC", cols=4, cell=words))
expect("marks-more.csv", endpoint(few_v, marks={w: "over" if w[0] == "A" else "missing" for w in words}))
write("blanks-not-breaking.csv", "Wavelength:\u00a0340\u00a0nm\n\n" + grid(few_v, rows="ABC", cols=4, cell={w: "\u00a0" + num(few_v[w]) + "\u00a0" for w in few}))
expect("blanks-not-breaking.csv", endpoint(few_v, nm=340))
write("plates-named-like-wells.csv", "Plate,Well,Abs\n" + "".join(f"{p},{w},{num(v[w])}\n" for p, v in (("P1", A), ("P2", B)) for w in few))
expect("plates-named-like-wells.csv", endpoint({w: A[w] for w in few}, plate="P1", label="Abs"), endpoint({w: B[w] for w in few}, plate="P2", label="Abs"))
write("every-other-line.csv", grid(few_v, rows="ABC", cols=4).replace("\n", "\n\n"))
expect("every-other-line.csv", endpoint(few_v))
write("every-other-row.csv", grid({w: A[w] for w in W96 if w[0] in "ACEG"}, rows="ACEG"))
expect("every-other-row.csv", endpoint({w: A[w] for w in W96 if w[0] in "ACEG"}))
write("two-wavelengths-over-wells.csv", "," + "340,,,405,,\nTime [s],A1,A2,A3,A1,A2,A3\n" + "".join(
    f"{t}," + ",".join(num(v, 3) for v in [K[w][i] for w in few[:3]] + [K[w][i] for w in few[3:6]]) + "\n" for i, t in enumerate((0, 30, 60))))
three = few[:3]
expect("two-wavelengths-over-wells.csv", down({w: K[w] for w in three}, [0, 30, 60], nm=340),
       down({w: K[x] for w, x in zip(three, few[3:6])}, [0, 30, 60], nm=405))
xlsx("percent-cells.xlsx", {"Run": at(few_v, 0, 0, rows="ABC", cols=4, fmt=1)}, ("General", "0.0%"))
refuse("percent-cells.xlsx", "no readings")

# ---- captions below under shared headings, and other slips found later -------------------------------------------------
head, rest = grid(A).split("\n", 1)
write("below-shared-headings.csv", head + "\n" + rest + "Plate: S1\n\n" + grid(B).split("\n", 1)[1] + "Plate: S2\n")
refuse("below-shared-headings.csv", "above or below", "block 1")
write("below-shared-wells.csv", across[0] + "\n" + "\n".join(across[1:]) + "\n340 nm\n" + "\n".join(across[1:]) + "\n405 nm\n")
refuse("below-shared-wells.csv", "above or below", "block 1")
write("corner-time-well.csv", grid(few_v, rows="ABC", cols=4, corner="Time/Well"))
refuse("corner-time-well.csv", "in the corner of a grid")
write("done-nettoextinktion.csv", "Nettoextinktion\n\n" + grid(A))
refuse("done-nettoextinktion.csv", "processed")
