"""Makes the corpus: sample exports of our own invention, and beside each the readings it holds.

Run in this folder: python3 corpus.py
Everything here is invented. The expected readings come from the same numbers the files are made of, written down by
this script and not by the importer. The workbooks in the older binary format (xls) are made by OldWorkbookCorpus.java.
"""

import io
import os
import random
import zipfile

HEADER = "file,block,plate,label,wavelength_nm,time_s,well,absorbance,mark"
R8 = "ABCDEFGH"
R16 = "ABCDEFGHIJKLMNOP"


def plain(x):
    if x == int(x) and abs(x) < 1e15:
        return str(int(x))
    return repr(float(x))


def wells(rows, cols):
    return [r + str(c) for r in rows for c in range(1, cols + 1)]


def plate(seed, names, low=0.05, high=1.4, digits=4):
    rnd = random.Random(seed)
    return {w: round(rnd.uniform(low, high), digits) for w in names}


class Block:
    """Readings in file order: (well, time or None, value or None, mark)."""

    def __init__(self, rows, plate="", label="", nm=""):
        self.rows, self.plate, self.label, self.nm = rows, plate, label, nm


def endpoint(values, order=None, marks=None, **kw):
    marks = marks or {}
    return Block([(w, None, None if w in marks else values[w], marks.get(w, "")) for w in (order or values)], **kw)


def quote(s):
    return '"' + s.replace('"', '""') + '"' if any(c in s for c in ',"\n\r') else s


def expect(name, *blocks, number=None):
    out = [HEADER]
    for i, b in enumerate(blocks):
        for w, t, v, m in b.rows:
            out.append(",".join([name, str(number or i + 1), quote(b.plate), quote(b.label), str(b.nm),
                                 "" if t is None else plain(t), w, "" if v is None else plain(v), m]))
    suffix = f".block{number}" if number else ""
    with open(name + suffix + ".expected.csv", "w", newline="\n") as f:
        f.write("\n".join(out) + "\n")


def refuse(name, *phrases, block=None):
    suffix = f".block{block}" if block else ""
    with open(name + suffix + ".refused.txt", "w", newline="\n") as f:
        f.write("\n".join(phrases) + "\n")


def write(name, text, encoding="utf-8", newline="\n"):
    with open(name, "wb") as f:
        f.write(text.replace("\n", newline).encode(encoding))


def num(x, digits=4, comma=False):
    s = f"{x:.{digits}f}"
    return s.replace(".", ",") if comma else s


def grid(values, rows=R8, cols=12, sep=",", comma=False, digits=4, head=True, side=True, corner="", lower=False,
         pad=False, gap=0, cell=None, right=None):
    """Lines of a grid. cell: text instead of a number, by well. right: extra cells, by row."""
    lines = []
    if head:
        lines.append(sep.join(([corner] if side else []) + [""] * gap
                              + [f"{c:02d}" if pad else str(c) for c in range(1, cols + 1)]
                              + (right("head") if right else [])))
    for r in rows:
        cells = [(cell or {}).get(f"{r}{c}", num(values[f"{r}{c}"], digits, comma) if f"{r}{c}" in values else "")
                 for c in range(1, cols + 1)]
        lines.append(sep.join(([r.lower() if lower else r] if side else []) + [""] * gap + cells
                              + (right(r) if right else [])))
    return "\n".join(lines) + "\n"


W96 = wells(R8, 12)


# ---- minimal workbook writer -------------------------------------------------------------------------------------
def xlsx(name, sheets, fmts=("General", "0.000", "h:mm:ss", "[h]:mm:ss", "mm:ss"), doctype=""):
    """sheets: {name: {(row, col): value}}; value: number, text, or (number, format index)."""

    def col(c):
        s = ""
        c += 1
        while c:
            c, m = divmod(c - 1, 26)
            s = chr(65 + m) + s
        return s

    def esc(s):
        return s.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")

    parts = {}
    parts["[Content_Types].xml"] = (
        '<?xml version="1.0" encoding="UTF-8"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        '<Default Extension="xml" ContentType="application/xml"/>'
        '<Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>'
        '<Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>'
        + "".join(f'<Override PartName="/xl/worksheets/sheet{i + 1}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>'
                  for i in range(len(sheets))) + "</Types>")
    parts["_rels/.rels"] = (
        '<?xml version="1.0" encoding="UTF-8"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        '<Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>')
    parts["xl/workbook.xml"] = (
        '<?xml version="1.0" encoding="UTF-8"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" '
        'xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets>'
        + "".join(f'<sheet name="{esc(n)}" sheetId="{i + 1}" r:id="r{i + 1}"/>' for i, n in enumerate(sheets))
        + "</sheets></workbook>")
    parts["xl/_rels/workbook.xml.rels"] = (
        '<?xml version="1.0" encoding="UTF-8"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        + "".join(f'<Relationship Id="r{i + 1}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet{i + 1}.xml"/>'
                  for i in range(len(sheets)))
        + '<Relationship Id="rs" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/></Relationships>')
    parts["xl/styles.xml"] = (
        '<?xml version="1.0" encoding="UTF-8"?><styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="%d">' % len(fmts)
        + "".join(f'<numFmt numFmtId="{170 + i}" formatCode="{f}"/>' for i, f in enumerate(fmts))
        + '</numFmts><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders>'
          '<cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="%d">' % len(fmts)
        + "".join(f'<xf numFmtId="{170 + i if i else 0}" applyNumberFormat="1"/>' for i in range(len(fmts)))
        + "</cellXfs></styleSheet>")
    for i, (n, cells) in enumerate(sheets.items()):
        merges = cells.pop("merges", [])
        rows = {}
        for (r, c), v in cells.items():
            rows.setdefault(r, []).append((c, v))
        body = ""
        for r in sorted(rows):
            body += f'<row r="{r + 1}">'
            for c, v in sorted(rows[r], key=lambda e: e[0]):
                ref = f"{col(c)}{r + 1}"
                style = ""
                if isinstance(v, tuple):
                    v, s = v
                    style = f' s="{s}"'
                if isinstance(v, str):
                    body += f'<c r="{ref}" t="inlineStr"{style}><is><t>{esc(v)}</t></is></c>'
                else:
                    body += f'<c r="{ref}"{style}><v>{v!r}</v></c>'
            body += "</row>"
        merge = ('<mergeCells count="%d">' % len(merges) + "".join(f'<mergeCell ref="{m}"/>' for m in merges) + "</mergeCells>") if merges else ""
        parts[f"xl/worksheets/sheet{i + 1}.xml"] = (
            '<?xml version="1.0" encoding="UTF-8"?>' + doctype
            + f'<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>{body}</sheetData>{merge}</worksheet>')
    with zipfile.ZipFile(name, "w", zipfile.ZIP_DEFLATED) as z:
        for p, t in parts.items():
            info = zipfile.ZipInfo(p, (2026, 1, 1, 0, 0, 0))
            info.compress_type = zipfile.ZIP_DEFLATED
            z.writestr(info, t)


def at(values, top, left, rows=R8, cols=12, headings=True, fmt=1):
    """Cells of a grid in a sheet."""
    cells = {}
    for i, r in enumerate(rows):
        if headings:
            cells[(top + 1 + i, left)] = r
        for c in range(1, cols + 1):
            if headings:
                cells[(top, left + c)] = c
            w = f"{r}{c}"
            if w in values:
                v = values[w]
                cells[(top + (1 if headings else 0) + i, left + c - (0 if headings else 1))] = v if isinstance(v, str) else (v, fmt)
    return cells


# ---- grids -------------------------------------------------------------------------------------------------------
v = plate(1, W96)
write("grid-plain.csv", grid(v))
expect("grid-plain.csv", endpoint(v))

v = plate(2, W96)
write("grid-german-preamble.csv",
      "Messung vom Vormittag\nBearbeiterin: A. Quell\nWellenlänge: 340 nm\nTemperatur: 37,0 °C\n\n" + grid(v, sep=";", comma=True),
      encoding="windows-1252", newline="\r\n")
expect("grid-german-preamble.csv", endpoint(v, label="Messung vom Vormittag", nm=340))

v = plate(3, W96)
write("grid-utf16.txt", "Plate P-17\n\n" + grid(v, sep="\t", lower=True, pad=True), encoding="utf-16")
expect("grid-utf16.txt", endpoint(v, plate="P-17"))

v = plate(4, W96)
write("grid-bom-pipe.txt", "\ufeff" + grid(v, sep="|", gap=2, corner="<>"))
expect("grid-bom-pipe.txt", endpoint(v))

v = plate(5, W96, digits=3)
lines = ["      " + "".join(f"{c:>8d}" for c in range(1, 13))]
marks = {"B4": "missing", "H12": "missing"}
for r in R8:
    lines.append(f"   {r}  " + "".join("        " if f"{r}{c}" in marks else f"{v[f'{r}{c}']:8.3f}" for c in range(1, 13)))
write("grid-aligned-blanks.txt", "Absorbance at 340 nm\n\n" + "\n".join(lines) + "\n")
expect("grid-aligned-blanks.txt", endpoint(v, label="Absorbance", nm=340, marks=marks))

v = plate(6, W96)
stat = {r: [""] + [num(sum(v[f"{r}{c}"] for c in range(1, 13)) / 12), num(0.01)] for r in R8}
text = grid(v, right=lambda r: ["", "Mean", "SD"] if r == "head" else stat[r])
text += "\nMean," + ",".join(num(sum(v[f"{r}{c}"] for r in R8) / 8) for c in range(1, 13)) + "\n"
text += "CV %," + ",".join("1.2" for c in range(1, 13)) + "\n"
write("grid-statistics-around.csv", text)
expect("grid-statistics-around.csv", endpoint(v))

v = plate(7, W96)
text = grid(v)
text += "," + ",".join(num(sum(v[f"{r}{c}"] for r in R8) / 8) for c in range(1, 13)) + "\n"
write("grid-unnamed-line-below.csv", text)
expect("grid-unnamed-line-below.csv", endpoint(v))

v = plate(8, W96)
text = "," + ",".join(R8) + "\n" + "".join(f"{c}," + ",".join(num(v[f"{r}{c}"]) for r in R8) + "\n" for c in range(1, 13))
write("grid-transposed.csv", text)
expect("grid-transposed.csv", endpoint(v, order=[f"{r}{c}" for c in range(1, 13) for r in R8]))

v = plate(9, W96)
write("grid-no-headings.csv", "340 nm\n" + grid(v, head=False, side=False, sep=";", comma=True))
expect("grid-no-headings.csv", endpoint(v, nm=340))

v = plate(10, W96)
write("grid-no-headings-transposed.tsv",
      "\n".join("\t".join(num(v[f"{r}{c}"]) for r in R8) for c in range(1, 13)) + "\n")
expect("grid-no-headings-transposed.tsv", endpoint(v, order=[f"{r}{c}" for c in range(1, 13) for r in R8]))

v = plate(11, W96)
write("grid-letters-only.csv", grid(v, head=False))
expect("grid-letters-only.csv", endpoint(v))

v = plate(12, W96)
write("grid-numbers-only.csv", grid(v, side=False))
expect("grid-numbers-only.csv", endpoint(v))

p24 = wells("ABCD", 6)
v = plate(13, p24)
write("grid-24.csv", grid(v, rows="ABCD", cols=6))
expect("grid-24.csv", endpoint(v))

p384 = wells(R16, 24)
v = plate(14, p384)
write("grid-384.tsv", "Plate: Q1\nFilter 340 nm\n" + grid(v, rows=R16, cols=24, sep="\t"))
expect("grid-384.tsv", endpoint(v, plate="Q1", nm=340))

R32 = [chr(65 + i) for i in range(26)] + ["A" + chr(65 + i) for i in range(6)]
p1536 = wells(R32, 48)
v = plate(15, p1536, digits=3)
write("grid-1536.csv", grid(v, rows=R32, cols=48, digits=3))
expect("grid-1536.csv", endpoint(v))

part = [f"{r}{c}" for r in "BCD" for c in range(3, 8)]
v = plate(16, part)
write("grid-part-of-plate.csv", ",3,4,5,6,7\n" + "".join(r + "," + ",".join(num(v[f"{r}{c}"]) for c in range(3, 8)) + "\n" for r in "BCD"))
expect("grid-part-of-plate.csv", endpoint(v))

v = plate(17, W96)
m = {"A1": "over", "A2": "over", "B1": "over", "C5": "missing", "D6": "missing", "E7": "over", "H12": "missing", "G1": "over"}
words = {"A1": "OVER", "A2": "*****", "B1": ">3.500", "C5": "", "D6": "n/a", "E7": "Overflow", "H12": "---", "G1": "SAT"}
write("grid-marks.csv", grid(v, cell=words))
expect("grid-marks.csv", endpoint(v, marks=m))

v = plate(18, W96)
m = {"A1": "over", "A2": "over", "B1": "over", "C5": "missing", "D6": "missing"}
words = {"A1": "Überlauf", "A2": "+++", "B1": "> 4,0", "C5": "leer", "D6": "#NV"}
write("grid-marks-german.csv", grid(v, sep=";", comma=True, cell=words), encoding="windows-1252")
expect("grid-marks-german.csv", endpoint(v, marks=m))

v = {w: x for w, x in plate(19, W96).items() if int(w[1:]) <= 4}
text = grid(v)
write("grid-empty-wells.csv", text)
expect("grid-empty-wells.csv", endpoint(v, order=W96, marks={w: "missing" for w in W96 if w not in v}))

v = plate(20, W96, low=-0.004, high=0.006, digits=4)
write("grid-small-and-negative.csv", grid(v, cell={"C3": "1.5E-03", "C4": "-2e-4", "C5": "\u22120.0012"}))
v.update({"C3": 0.0015, "C4": -0.0002, "C5": -0.0012})
expect("grid-small-and-negative.csv", endpoint(v))

a, b = plate(21, W96), plate(22, W96)
write("grids-two-wavelengths.csv", "340 nm\n" + grid(a) + "\n405 nm\n" + grid(b))
expect("grids-two-wavelengths.csv", endpoint(a, nm=340), endpoint(b, nm=405))

write("grids-two-plates.csv", "Plate 1\n" + grid(a) + "\nPlate 2\n" + grid(b))
expect("grids-two-plates.csv", endpoint(a, plate="1"), endpoint(b, plate="2"))

ps = [plate(30 + i, W96) for i in range(4)]
write("grids-by-time.csv", "Kinetic run\n\n" + "\n".join(f"Time: {t} s\n" + grid(p) for t, p in zip((0, 30, 60, 90), ps)))
series = Block([(w, t, p[w], "") for t, p in zip((0, 30, 60, 90), ps) for w in W96], label="Kinetic run")
expect("grids-by-time.csv", series)

write("grids-by-clock.csv", "\n".join(f"0:0{t // 60}:{t % 60:02d}\n" + grid(p, sep=";", comma=True) for t, p in zip((0, 30, 60, 90), ps)))
expect("grids-by-clock.csv", Block(series.rows))

write("grids-time-and-wavelength.csv",
      "\n".join(f"t = {t} min\n340 nm\n" + grid(ps[2 * i]) + "\n405 nm\n" + grid(ps[2 * i + 1]) for i, t in enumerate((0, 1))))
expect("grids-time-and-wavelength.csv",
       Block([(w, 60 * i, ps[2 * i][w], "") for i in range(2) for w in W96], nm=340),
       Block([(w, 60 * i, ps[2 * i + 1][w], "") for i in range(2) for w in W96], nm=405))

corrected = {w: round(x - 0.05, 4) for w, x in a.items()}
write("grids-raw-and-processed.csv", "Raw data (340 nm)\n" + grid(a) + "\nBlank corrected (340 nm)\n" + grid(corrected))
refuse("grids-raw-and-processed.csv", "processed", "--block N", "block: N", "block 1:", "block 2:", "A1 = " + plain(a["A1"]))
expect("grids-raw-and-processed.csv", endpoint(a, label="Raw data", nm=340), number=1)
expect("grids-raw-and-processed.csv", endpoint(corrected, label="Blank corrected", nm=340), number=2)

write("grid-processed-only.csv", "Absorbance, scaled to a path length of 1 cm\n\n" + grid(a))
refuse("grid-processed-only.csv", "processed", "block: N")

write("grids-twins.csv", grid(a) + "\n" + grid(b))
refuse("grids-twins.csv", "nothing tells apart", "block 1: lines 1 to 9", "block 2: lines 11 to 19")
expect("grids-twins.csv", endpoint(b), number=2)

write("grids-side-by-side.csv", "\n".join(
    ["340 nm" + "," * 15 + "405 nm"] +
    ["," + ",".join(str(c) for c in range(1, 13)) + ",,," + ",".join(str(c) for c in range(1, 13))] +
    [r + "," + ",".join(num(a[f"{r}{c}"]) for c in range(1, 13)) + ",," + r + "," + ",".join(num(b[f"{r}{c}"]) for c in range(1, 13)) for r in R8]) + "\n")
expect("grids-side-by-side.csv", endpoint(a, nm=340), endpoint(b, nm=405))

write("grid-two-lines-a-row.csv", "," + ",".join(str(c) for c in range(1, 13)) + ",\n" + "".join(
    r + "," + ",".join(num(a[f"{r}{c}"]) for c in range(1, 13)) + ",340 nm\n," + ",".join(num(b[f"{r}{c}"]) for c in range(1, 13)) + ",405 nm\n"
    for r in R8))
expect("grid-two-lines-a-row.csv", endpoint(a, nm=340), endpoint(b, nm=405))

write("grids-time-in-margin.tsv", "Time [hh:mm:ss]\tTemp. [°C]\t" + "\t".join(str(c) for c in range(1, 13)) + "\n" + "\n".join(
    "".join((f"0:00:{t:02d}\t37.0\t" if r == "A" else "\t\t") + "\t".join(num(p[f"{r}{c}"]) for c in range(1, 13)) + "\n" for r in R8)
    for t, p in zip((0, 20, 40), ps)))
expect("grids-time-in-margin.tsv", Block([(w, t, p[w], "") for t, p in zip((0, 20, 40), ps) for w in W96]))

write("grid-and-names.csv", "Belegung\n" + grid({}, cell={w: "S1" if int(w[1:]) > 2 else "B1" for w in W96}) + "\nMesswerte\n" + grid(a))
expect("grid-and-names.csv", endpoint(a, label="Messwerte"))

write("grid-and-temperatures.csv", "Absorbance 340 nm\n" + grid(a) + "\nTemperature [°C]\n" + grid({w: 36.9 for w in W96}, digits=1))
expect("grid-and-temperatures.csv", endpoint(a, label="Absorbance", nm=340))

write("grid-without-corner.txt", " ".join(str(c) for c in range(1, 13)) + "\n" + "".join(
    r + " " + " ".join(num(a[f"{r}{c}"]) for c in range(1, 13)) + "\n" for r in R8))
expect("grid-without-corner.txt", endpoint(a))

# ---- lists -------------------------------------------------------------------------------------------------------
v = plate(40, W96)
write("list-plain.csv", "well,absorbance\n" + "".join(f"{w},{num(v[w])}\n" for w in W96))
expect("list-plain.csv", endpoint(v, label="absorbance"))

order = W96[:]
random.Random(41).shuffle(order)
write("list-any-order.txt", "Position;Extinktion 340 nm\n" + "".join(f"{w[0]}{int(w[1:]):02d};{num(v[w], comma=True)}\n" for w in order))
expect("list-any-order.txt", endpoint(v, order=order, label="Extinktion", nm=340))

write("list-two-position-columns.csv", "Row,Column,Abs (340)\n" + "".join(f"{w[0]},{w[1:]},{num(v[w])}\n" for w in W96))
expect("list-two-position-columns.csv", endpoint(v, label="Abs", nm=340))

write("list-by-columns-bare.txt", "".join(f"{r} {c} {num(v[f'{r}{c}'])}\n" for c in range(1, 13) for r in R8))
expect("list-by-columns-bare.txt", endpoint(v, order=[f"{r}{c}" for c in range(1, 13) for r in R8]))

write("list-cuvette-typed.txt", "A1 0.312\nA2 0.315\nB1 0.871\nB2 >3.0\nC1 -\n")
expect("list-cuvette-typed.txt", Block([("A1", None, 0.312, ""), ("A2", None, 0.315, ""), ("B1", None, 0.871, ""),
                                        ("B2", None, None, "over"), ("C1", None, None, "missing")]))

write("list-other-columns.csv", "Well,Content,Sample No.,Temperature,Abs 340 nm,Conc. mg/L,Dilution,Mean,SD\n" + "".join(
    f"{w},S{i % 8 + 1},{i + 1},37.1,{num(v[w])},{i * 1.25:.2f},10,{num(v[w])},0.001\n" for i, w in enumerate(W96)))
expect("list-other-columns.csv", endpoint(v, label="Abs", nm=340))

a, b = plate(42, W96), plate(43, W96)
write("list-two-wavelengths.csv", "Well;340 nm;405 nm\n" + "".join(f"{w};{num(a[w], comma=True)};{num(b[w], comma=True)}\n" for w in W96))
expect("list-two-wavelengths.csv", endpoint(a, nm=340), endpoint(b, nm=405))

write("list-two-line-headings.csv", ",340,,405,\nWell,Raw,Temp.,Raw,Temp.\n" + "".join(f"{w},{num(a[w])},37.0,{num(b[w])},37.0\n" for w in W96))
expect("list-two-line-headings.csv", endpoint(a, label="Raw", nm=340), endpoint(b, label="Raw", nm=405))

write("list-raw-and-net.csv", "Well,Raw,Blank subtracted\n" + "".join(f"{w},{num(a[w])},{num(a[w] - 0.05)}\n" for w in W96))
refuse("list-raw-and-net.csv", "processed", "--block N")
expect("list-raw-and-net.csv", endpoint(a, label="Raw"), number=1)

write("list-two-unnamed-columns.csv", "".join(f"{w},{num(a[w])},{num(b[w])}\n" for w in W96))
refuse("list-two-unnamed-columns.csv", "nothing tells apart", "block 1", "block 2")

write("list-two-plates.csv", "Plate,Well,Absorbance\n" + "".join(f"{n},{w},{num(p[w])}\n" for n, p in (("alpha", a), ("beta", b)) for w in W96))
expect("list-two-plates.csv", endpoint(a, plate="alpha", label="Absorbance"), endpoint(b, plate="beta", label="Absorbance"))

write("list-plate-named-once.csv", "Plate,Well,Absorbance\n" + "".join(
    f"{n if i == 0 else ''},{w},{num(p[w])}\n" for n, p in (("alpha", a), ("beta", b)) for i, w in enumerate(W96)))
expect("list-plate-named-once.csv", endpoint(a, plate="alpha", label="Absorbance"), endpoint(b, plate="beta", label="Absorbance"))

write("list-side-by-side.csv", "Well,Abs,,Well,Abs\n" + "".join(f"{x},{num(a[x])},,{y},{num(a[y])}\n" for x, y in zip(W96[:48], W96[48:])))
expect("list-side-by-side.csv", Block([(w, None, a[w], "") for w in W96], label="Abs"))

write("list-with-means-between.csv", "Well,Absorbance\n" + "".join(
    f"{w},{num(a[w])}\n" + (f"Mean,{num(0.5)}\n" if (i + 1) % 12 == 0 else "") for i, w in enumerate(W96)))
expect("list-with-means-between.csv", endpoint(a, label="Absorbance"))

write("list-marks-column.csv", "Well,Absorbance,Flag\nA1,0.512,\nA2,,over\nA3,,\nA4,0.498,\n")
expect("list-marks-column.csv", Block([("A1", None, 0.512, ""), ("A2", None, None, "over"), ("A3", None, None, "missing"), ("A4", None, 0.498, "")], label="Absorbance"))

# ---- series ------------------------------------------------------------------------------------------------------
T = [0, 15, 30, 45, 60, 75]
s = {t: plate(50 + t, W96) for t in T}
down = Block([(w, t, s[t][w], "") for t in T for w in W96])
across = Block([(w, t, s[t][w], "") for w in W96 for t in T])
write("series-down.csv", "Time [s]," + ",".join(W96) + "\n" + "".join(f"{t}," + ",".join(num(s[t][w]) for w in W96) + "\n" for t in T))
expect("series-down.csv", down)

write("series-down-german.txt", "Zeit (min);Temperatur (°C);" + ";".join(f"{w[0]}{int(w[1:]):02d}" for w in W96) + "\n" + "".join(
    f"{num(t / 60, 2, True)};37,0;" + ";".join(num(s[t][w], comma=True) for w in W96) + "\n" for t in T), encoding="utf-8-sig", newline="\r\n")
expect("series-down-german.txt", Block([(w, round(t / 60, 2) * 60, s[t][w], "") for t in T for w in W96]))

write("series-down-clock.tsv", "Cycle\tTime\tTemp. °C\t" + "\t".join(W96) + "\n" + "".join(
    f"{i + 1}\t0:0{t // 60}:{t % 60:02d}\t37.0\t" + "\t".join(num(s[t][w]) for w in W96) + "\n" for i, t in enumerate(T)))
expect("series-down-clock.tsv", down)

write("series-down-statistics.csv", "Time [s]," + ",".join(W96) + "\n" + "".join(f"{t}," + ",".join(num(s[t][w]) for w in W96) + "\n" for t in T)
      + "\nMean," + ",".join("0.5" for w in W96) + "\nMax," + ",".join("0.9" for w in W96) + "\n")
expect("series-down-statistics.csv", down)

write("series-two-heading-rows.csv", "," + ",".join(w[0] for w in W96) + "\nTime (s)," + ",".join(w[1:] for w in W96) + "\n" + "".join(
    f"{t}," + ",".join(num(s[t][w]) for w in W96) + "\n" for t in T))
expect("series-two-heading-rows.csv", down)

write("series-across.csv", "Well," + ",".join(f"{t} s" for t in T) + "\n" + "".join(f"{w}," + ",".join(num(s[t][w]) for t in T) + "\n" for w in W96))
expect("series-across.csv", across)

write("series-across-title.csv", "Time [s]\nWell;" + ";".join(str(t) for t in T) + "\n" + "".join(f"{w};" + ";".join(num(s[t][w], comma=True) for t in T) + "\n" for w in W96))
expect("series-across-title.csv", across)

write("series-long.csv", "Well,Time (s),Absorbance\n" + "".join(f"{w},{t},{num(s[t][w])}\n" for t in T for w in W96))
expect("series-long.csv", Block(down.rows, label="Absorbance"))

write("series-long-by-well.csv", "Time,Well,OD 340 nm\n" + "".join(f"00:{t // 60:02d}:{t % 60:02d},{w},{num(s[t][w])}\n" for w in W96 for t in T))
expect("series-long-by-well.csv", Block(across.rows, label="OD", nm=340))

write("series-long-two-wavelengths.csv", "time_s,wavelength_nm,well,absorbance\n" + "".join(
    f"{t},{nm},{w},{num(s[t][w] + (0.1 if nm == 405 else 0))}\n" for t in T for nm in (340, 405) for w in W96[:24]))
expect("series-long-two-wavelengths.csv",
       Block([(w, t, s[t][w], "") for t in T for w in W96[:24]], label="absorbance", nm=340),
       Block([(w, t, round(s[t][w] + 0.1, 4), "") for t in T for w in W96[:24]], label="absorbance", nm=405))

write("series-no-unit.csv", "Time," + ",".join(W96) + "\n" + "".join(f"{t}," + ",".join(num(s[t][w]) for w in W96) + "\n" for t in T))
refuse("series-no-unit.csv", "times without a unit", "times in seconds", "times in minutes", "block: N")
expect("series-no-unit.csv", down, number=1)
expect("series-no-unit.csv", Block([(w, t * 60, x, m) for w, t, x, m in down.rows]), number=2)

write("series-unit-from-interval.csv", "Interval: 15 s\n\nTime," + ",".join(W96) + "\n" + "".join(f"{t}," + ",".join(num(s[t][w]) for w in W96) + "\n" for t in T))
expect("series-unit-from-interval.csv", down)

write("series-two-part-times.csv", "Time," + ",".join(W96) + "\n" + "".join(f"{t // 60}:{t % 60:02d}," + ",".join(num(s[t][w]) for w in W96) + "\n" for t in T))
refuse("series-two-part-times.csv", "minutes:seconds", "hours:minutes", "block: N")
write("series-two-part-times-named.csv", "Time (mm:ss)," + ",".join(W96) + "\n" + "".join(f"{t // 60}:{t % 60:02d}," + ",".join(num(s[t][w]) for w in W96) + "\n" for t in T))
expect("series-two-part-times-named.csv", down)
write("series-hours-minutes-named.csv", "Time [h:mm]," + ",".join(W96) + "\n" + "".join(f"{t // 60}:{t % 60:02d}," + ",".join(num(s[t][w]) for w in W96) + "\n" for t in T))
expect("series-hours-minutes-named.csv", Block([(w, t * 60, x, m) for w, t, x, m in down.rows]))

write("series-marks.csv", "Time [s],A1,A2,A3\n0,0.101,0.102,0.103\n30,OVER,0.202,\n60,0.301,>3.0,-\n")
expect("series-marks.csv", Block([("A1", 0, .101, ""), ("A2", 0, .102, ""), ("A3", 0, .103, ""), ("A1", 30, None, "over"), ("A2", 30, .202, ""),
                                  ("A3", 30, None, "missing"), ("A1", 60, .301, ""), ("A2", 60, None, "over"), ("A3", 60, None, "missing")]))

write("series-wells-in-two-parts.csv", "Time [s]," + ",".join(W96[:48]) + "\n" + "".join(f"{t}," + ",".join(num(s[t][w]) for w in W96[:48]) + "\n" for t in T)
      + "\nTime [s]," + ",".join(W96[48:]) + "\n" + "".join(f"{t}," + ",".join(num(s[t][w]) for w in W96[48:]) + "\n" for t in T))
expect("series-wells-in-two-parts.csv", Block([(w, t, s[t][w], "") for half in (W96[:48], W96[48:]) for t in T for w in half]))

write("series-thousands.csv", '"Time [s]",A1,A2\n0,0.100,0.110\n"1,200",0.300,0.310\n"2,400",0.400,0.410\n')
expect("series-thousands.csv", Block([("A1", 0, .1, ""), ("A2", 0, .11, ""), ("A1", 1200, .3, ""), ("A2", 1200, .31, ""), ("A1", 2400, .4, ""), ("A2", 2400, .41, "")]))

# ---- workbooks ---------------------------------------------------------------------------------------------------
v = plate(70, W96)
cells = at(v, 6, 3)
cells[(0, 0)] = "Absorbance at 340 nm"
cells[(2, 0)] = "Plate:"
cells[(2, 1)] = "K7"
xlsx("workbook-grid.xlsx", {"Notes": {(0, 0): "nothing here"}, "Run": cells})
expect("workbook-grid.xlsx", endpoint(v, plate="K7", label="Absorbance", nm=340))

text_cells = {w: num(x, comma=True) for w, x in v.items()}
cells = at(text_cells, 2, 0)
xlsx("workbook-numbers-as-text.xlsx", {"Werte": cells})
expect("workbook-numbers-as-text.xlsx", endpoint(v))

cells = {(0, 0): "Time"}
for j, w in enumerate(W96):
    cells[(0, j + 1)] = w
for i, t in enumerate(T):
    cells[(i + 1, 0)] = (t / 86400, 2)
    for j, w in enumerate(W96):
        cells[(i + 1, j + 1)] = (s[t][w], 1)
xlsx("workbook-times-of-day.xlsx", {"Kinetics": cells})
expect("workbook-times-of-day.xlsx", down)

cells = {k: (x[0], 0) if isinstance(x, tuple) and k[1] == 0 else x for k, x in cells.items()}
cells[(0, 0)] = "Time [hh:mm:ss]"
xlsx("workbook-fractions-of-a-day.xlsx", {"Kinetics": cells})
expect("workbook-fractions-of-a-day.xlsx", Block([(w, t / 86400 * 86400, x, m) for w, t, x, m in down.rows]))

a, b = plate(71, W96), plate(72, W96)
xlsx("workbook-two-sheets.xlsx", {"Plate 1": at(a, 0, 0), "Plate 2": at(b, 3, 2)})
expect("workbook-two-sheets.xlsx", endpoint(a, plate="1"), endpoint(b, plate="2"))

cells = {(0, 1): "340 nm", (0, 3): "405 nm", (1, 0): "Well", (1, 1): "Abs", (1, 2): "Temp", (1, 3): "Abs", (1, 4): "Temp", "merges": ["B1:C1", "D1:E1"]}
for i, w in enumerate(W96):
    cells.update({(i + 2, 0): w, (i + 2, 1): (a[w], 1), (i + 2, 2): 37.0, (i + 2, 3): (b[w], 1), (i + 2, 4): 37.0})
xlsx("workbook-merged-headings.xlsx", {"List": cells})
expect("workbook-merged-headings.xlsx", endpoint(a, label="Abs", nm=340), endpoint(b, label="Abs", nm=405))

# ---- what must be refused ----------------------------------------------------------------------------------------
v = plate(80, W96)
write("bad-empty.csv", "")
refuse("bad-empty.csv", "found nothing")
write("bad-words-only.txt", "The plate was put aside.\nNo readings today.\n")
refuse("bad-words-only.txt", "found no readings", "expected a grid")
with open("bad-binary.dat", "wb") as f:
    f.write(bytes(random.Random(5).randrange(256) for _ in range(3000)))
refuse("bad-binary.dat", "binary")
text = "well,absorbance\n" + "".join(f"{w},{num(v[w])}\n" for w in W96)
write("bad-well-twice.csv", text + "C5,0.4321\n")
refuse("bad-well-twice.csv", "line 98", "the well C5 a second time", "line 30")
write("bad-well-outside.csv", text + "A13,0.4321\n")
refuse("bad-well-outside.csv", "line 98", "found the well A13", "a plate of 96")
write("bad-well-of-no-plate.csv", text.replace("D7,", "D77,"))
refuse("bad-well-of-no-plate.csv", "line 44", "'D77'", "expected")
write("bad-word-for-number.csv", grid(v, cell={"E4": "0.4x5"}))
refuse("bad-word-for-number.csv", "line 6, column 5", "'0.4x5'", "expected a number")
write("bad-times-backwards.csv", "Time [s],A1,A2\n0,0.1,0.2\n30,0.2,0.3\n20,0.3,0.4\n60,0.4,0.5\n")
refuse("bad-times-backwards.csv", "line 4", "20 s after 30 s")
write("bad-time-twice.csv", "Time [s],A1,A2\n0,0.1,0.2\n30,0.2,0.3\n30,0.3,0.4\n")
refuse("bad-time-twice.csv", "line 4", "30 s twice")
write("bad-cut-off-row.csv", grid(v)[:-40])
refuse("bad-cut-off-row.csv", "line 9", "cut off")
write("bad-cut-off-number.csv", grid(v)[:-3])
refuse("bad-cut-off-number.csv", "line 9", "cut off")
write("bad-decimal-comma-as-delimiter.csv", grid(v, comma=True))
refuse("bad-decimal-comma-as-delimiter.csv", "decimal comma")
write("bad-two-decimal-marks.csv", grid(v, sep=";", cell={"B2": "0,456"}))
refuse("bad-two-decimal-marks.csv", "decimal comma", "decimal point", "line 3, column 3")
write("bad-open-quote.csv", "well,absorbance\nA1,\"0.123\nA2,0.456\n")
refuse("bad-open-quote.csv", "line 2", "never closed")
write("bad-row-twice.csv", grid(v).replace("\nC,", "\nB,"))
refuse("bad-row-twice.csv", "row B", "2 times")
write("bad-stated-plate.csv", "Plate type: 96 wells\nwell,absorbance\n" + "".join(f"{w},0.{i + 100}\n" for i, w in enumerate(wells("AB", 13))))
refuse("bad-stated-plate.csv", "A13", "a plate of 96")
xlsx("bad-external-entity.xlsx", {"Run": at(v, 0, 0)}, doctype='<!DOCTYPE worksheet [<!ENTITY e SYSTEM "file:///etc/hostname">]>')
refuse("bad-external-entity.xlsx", "document type declaration")
xlsx("bad-truncated.xlsx", {"Run": at(v, 0, 0)})
with open("bad-truncated.xlsx", "rb") as f:
    data = f.read()
with open("bad-truncated.xlsx", "wb") as f:
    f.write(data[:len(data) // 2])
refuse("bad-truncated.xlsx", "damaged")
few = {w: 1.1 + i / 8 for i, w in enumerate(wells("AB", 3))}
write("ambiguous-comma.txt", "\n".join(f"{w};{num(x, 3, True)}" for w, x in few.items()) + "\n")
refuse("ambiguous-comma.txt", "1,234", "decimal comma", "block 1", "block 2", "--block N")
expect("ambiguous-comma.txt", endpoint({w: round(x, 3) for w, x in few.items()}), number=1)
write("ambiguous-wavelengths-or-times.csv", "Well,300,330,360,390\n" + "".join(f"{w},0.1,0.2,0.3,0.4\n" for w in W96[:6]))
refuse("ambiguous-wavelengths-or-times.csv", "wavelengths or times")

# ---- found by damaging files at random ----------------------------------------------------------------------------
write("found-heading-of-thousands.csv", "Well;1.234.567;2.345.678\nA1;0,1;0,2\nA2;0,3;0,4\n")
refuse("found-heading-of-thousands.csv", "times without a unit", "block: N")
write("found-grid-in-halves.csv", "t = 0 min\n,1,2\nA,0.1,0.2\n\n,3,4\nA,0.3,0.4\n\nt = 1 min\n,1,2,3,4\nA,0.5,0.6,0.7,0.8\n")
expect("found-grid-in-halves.csv", Block([("A1", 0, .1, ""), ("A2", 0, .2, ""), ("A3", 0, .3, ""), ("A4", 0, .4, ""),
                                          ("A1", 60, .5, ""), ("A2", 60, .6, ""), ("A3", 60, .7, ""), ("A4", 60, .8, "")]))
write("found-two-notations-of-time.csv", "0:30\n" + grid(a, rows="AB", cols=3) + "\n1 min\n" + grid(b, rows="AB", cols=3) + "\n")
two = [f"{r}{c}" for r in "AB" for c in range(1, 4)]
expect("found-two-notations-of-time.csv", Block([(w, t, p[w], "") for t, p in ((30, a), (60, b)) for w in two]))

# ---- workbooks in the older format: OldWorkbookCorpus makes them from these readings ------------------------------
v = plate(90, W96)
expect("workbook-old-grid.xls", endpoint(v, label="Absorbance", nm=340))
expect("workbook-old-series.xls", Block([(w, t, x, m) for w, t, x, m in down.rows if w in ("A1", "A2", "B7")]))

# ---- further cases ------------------------------------------------------------------------------------------------
write("list-milli.csv", "Well;mAU\nA1;456\nA2;512,5\n")
expect("list-milli.csv", Block([("A1", None, 0.456, ""), ("A2", None, 0.5125, "")], label="mAU"))
write("series-stamps.csv", "Date/Time,A1,A2\n2026-03-01 10:00:00,0.1,0.2\n2026-03-01 10:00:30,0.2,0.3\n")
expect("series-stamps.csv", Block([("A1", 36000, .1, ""), ("A2", 36000, .2, ""), ("A1", 36030, .2, ""), ("A2", 36030, .3, "")]))
write("series-units-below.csv", "Time;A1;A2\ns;AU;AU\n0;0,1;0,2\n30;0,2;0,3\n")
expect("series-units-below.csv", Block([("A1", 0, .1, ""), ("A2", 0, .2, ""), ("A1", 30, .2, ""), ("A2", 30, .3, "")]))
write("series-wavelengths-above.csv", ",340 nm,,405 nm,\nTime [s],A1,A2,A1,A2\n0,0.1,0.2,0.3,0.4\n30,0.11,0.21,0.31,0.41\n")
expect("series-wavelengths-above.csv",
       Block([("A1", 0, .1, ""), ("A2", 0, .2, ""), ("A1", 30, .11, ""), ("A2", 30, .21, "")], nm=340),
       Block([("A1", 0, .3, ""), ("A2", 0, .4, ""), ("A1", 30, .31, ""), ("A2", 30, .41, "")], nm=405))
write("series-unit-in-title.csv", "Absorbance 340 nm, time in min\n,A1,A2\n0,0.1,0.2\n0.5,0.2,0.3\n")
expect("series-unit-in-title.csv", Block([("A1", 0, .1, ""), ("A2", 0, .2, ""), ("A1", 30, .2, ""), ("A2", 30, .3, "")], nm=340))
write("list-typed-with-colons.txt", "A1: 0.345\nA2: 0.355\nB1: 0.401\n")
expect("list-typed-with-colons.txt", Block([("A1", None, .345, ""), ("A2", None, .355, ""), ("B1", None, .401, "")]))
write("list-before-and-after.csv", "Before\nWell,Abs\nA1,0.1\nA2,0.2\n\nAfter\nWell,Abs\nA1,0.3\nA2,0.4\n")
expect("list-before-and-after.csv", Block([("A1", None, .1, ""), ("A2", None, .2, "")], label="Before, Abs"),
       Block([("A1", None, .3, ""), ("A2", None, .4, "")], label="After, Abs"))
write("list-page-breaks.csv", "Well,Abs\nA1,0.1\nA2,0.2\n\nWell,Abs\nA3,0.3\nA4,0.4\n")
expect("list-page-breaks.csv", Block([("A1", None, .1, ""), ("A2", None, .2, ""), ("A3", None, .3, ""), ("A4", None, .4, "")], label="Abs"))
write("list-shuffled-times.csv", "Well,Time [s],Abs\nA1,30,0.2\nA2,0,0.3\nA1,0,0.1\nA2,30,0.4\nA2,60,.5\nA1,60,.6\n")
expect("list-shuffled-times.csv", Block([("A1", 30, .2, ""), ("A2", 0, .3, ""), ("A1", 0, .1, ""), ("A2", 30, .4, ""), ("A2", 60, .5, ""), ("A1", 60, .6, "")], label="Abs"))
write("spectrum-down.csv", "Wavelength [nm],A1,A2\n340,0.1,0.2\n350,0.2,0.3\n")
expect("spectrum-down.csv", Block([("A1", None, .1, ""), ("A2", None, .2, "")], nm=340), Block([("A1", None, .2, ""), ("A2", None, .3, "")], nm=350))
write("grids-by-reading.csv", "Reading 1\n" + grid(a, rows="AB", cols=3) + "\nReading 2\n" + grid(b, rows="AB", cols=3))
expect("grids-by-reading.csv", endpoint({w: a[w] for w in two}, label="reading 1"), endpoint({w: b[w] for w in two}, label="reading 2"))
write("grid-path-length-off.csv", "Path length correction: off\nBlank subtraction: no\n" + grid(a, rows="AB", cols=3))
expect("grid-path-length-off.csv", endpoint({w: a[w] for w in two}))
write("grid-path-length-on.csv", "Path length correction: on\n" + grid(a, rows="AB", cols=3))
refuse("grid-path-length-on.csv", "processed", "block: N")
write("grid-letters-of-statistics.csv", grid(a) + "M," + ",".join("0.5" for _ in range(12)) + "\nN," + ",".join("8" for _ in range(12)) + "\n")
expect("grid-letters-of-statistics.csv", endpoint(a))
write("grid-concentrations-only.csv", "Concentration [mg/L]\n" + grid(a, rows="AB", cols=3))
refuse("grid-concentrations-only.csv", "found no readings", "Concentration")
write("list-rates-beside.csv", "Well,Abs 340,mOD/min\nA1,0.1,12.1\nA2,0.2,13.2\n")
expect("list-rates-beside.csv", Block([("A1", None, .1, ""), ("A2", None, .2, "")], label="Abs", nm=340))
write("bad-grid-too-wide.csv", "".join(r + "," + ",".join("0.1234" for _ in range(14)) + "\n" for r in R8))
refuse("bad-grid-too-wide.csv", "found no readings", "line 1")
write("bad-formula.csv", "well,absorbance\nA1,0.1\nA2,=B1*2\n")
refuse("bad-formula.csv", "line 3, column 2", "'=B1*2'")
write("tables-of-wells.csv", "Position A1;;;\nZeit [min];340 nm;405 nm;Temp. [°C]\n0;0,1;0,5;37,0\n0,5;OVER;0,6;37,0\n\n"
      "Position B1;;;\nZeit [min];340 nm;405 nm;Temp. [°C]\n0,1;0,2;0,7;37,0\n0,6;0,3;;37,0\n")
expect("tables-of-wells.csv",
       Block([("A1", 0, .1, ""), ("A1", 30, None, "over"), ("B1", 6, .2, ""), ("B1", 36, .3, "")], nm=340),
       Block([("A1", 0, .5, ""), ("A1", 30, .6, ""), ("B1", 6, .7, ""), ("B1", 36, None, "missing")], nm=405))
write("bad-tables-of-one-well.csv", "Well A1\nTime [s],Abs\n0,0.1\n30,0.2\n\nWell A1\nTime [s],Abs\n0,0.3\n30,0.4\n")
refuse("bad-tables-of-one-well.csv", "several blocks", "block: N")
write("tables-of-wells-mean-below.csv", "Well:,A1\nTime [s],Abs\n0,0.1\n30,0.2\nMean,0.15\n\nWell:,A2\nTime [s],Abs\n0,\n30,0.4\n\nWell:,A3\nTime [s],Abs\n")
expect("tables-of-wells-mean-below.csv", Block([("A1", 0, .1, ""), ("A1", 30, .2, ""), ("A2", 0, None, "missing"), ("A2", 30, .4, "")], label="Abs"))
write("bad-tables-of-wells-time.csv", "A1\nTime [s],Abs\n0,0.1\nlater,0.2\n60,0.3\n\nA2\nTime [s],Abs\n0,0.1\n30,0.2\n")
refuse("bad-tables-of-wells-time.csv", "line 4, column 1", "'later'", "a time such as")
