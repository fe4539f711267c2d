"""Map and curve of the annual program of the demo city: called by src/bench/pictures.sh; only Python's own library and the files beside it.

    program_pictures.py PROGRAM_FOLDER RUN FOLDER

Map: spans by the year in which they are recovered. Curve: positions that budgets buy, by the program and by rank.
"""
import csv
import gzip
import json
import sqlite3
import sys
from pathlib import Path

from connections_map import drawn, line_of
from pictures import MARGIN_PX, WIDTH_PX, Plane, lines, marks, path

YEARS = [("#c1121f", 6.0), ("#e07b00", 5.0), ("#1f78b4", 4.0), ("#5fb0a5", 3.5)]
LEFT_PX, TOP_PX, PLOT_WIDE_PX, PLOT_HIGH_PX = 90, 40, 780, 360


def head(height, title):
    return ['<svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%.0f" viewBox="0 0 %d %.0f" '
            'font-family="sans-serif" font-size="13">' % (WIDTH_PX, height, WIDTH_PX, height),
            "<title>%s</title>" % title,
            '<rect width="100%" height="100%" fill="#ffffff"/>']


def program_map(folder, run):
    spans = json.loads((run / "spans.geojson").read_text(encoding="utf-8"))["features"]
    plane = Plane([p for f in spans for line in lines(f) for p in line])
    out = head(plane.bottom_px + 70, "The annual program of the demo city")
    out.append(path(plane, spans, "#cfcfcf", 1.0))
    with sqlite3.connect(folder / "program.gpkg") as base:
        rows = [(year, line_of(blob)) for year, blob in base.execute("select year, geom from program")]
    years = sorted({year for year, _ in rows})
    for year in reversed(years):
        out.append(drawn(plane, [line for of, line in rows if of == year], *YEARS[(year - 1) % len(YEARS)]))
    y = plane.bottom_px + 40
    for i, year in enumerate(years):
        color, width = YEARS[(year - 1) % len(YEARS)]
        x = MARGIN_PX + i * 170
        count = sum(1 for of, _ in rows if of == year)
        out.append('<line x1="%d" y1="%.1f" x2="%d" y2="%.1f" stroke="%s" stroke-width="%s"/>' % (x, y - 4, x + 26, y - 4, color, width))
        out.append('<text x="%d" y="%.1f">year %d: %d spans</text>' % (x + 34, y, year, count))
    out += marks(plane, y - 10)
    return "\n".join(out + ["</svg>"]) + "\n"


def by_rank(run, most):
    """Money and positions of the spans taken by rank, with the likely cost that the budgets count; of the set-ups at a vault the largest is paid."""
    with gzip.open(run / "run_spans.csv.gz", "rt", encoding="utf-8") as file:
        ranked = [row for row in csv.DictReader(file) if row["rank"]]
    ranked.sort(key=lambda row: int(row["rank"]))
    points, money, positions, paid = [(0, 0)], 0, 0, {}
    for row in ranked:
        likely = float(row["recovery_likely_money"])
        money += likely
        for vault, hours in ((row["vault_a"], row["shared_a_hours"]), (row["vault_b"], row["shared_b_hours"])):
            place = (vault, float(row["nights"] or 0) > 0)
            set_up = float(hours or 0) * float(row["site_hour_money"] or 0) * likely / float(row["recovery_money"])
            money -= min(paid.get(place, 0), set_up)
            paid[place] = max(paid.get(place, 0), set_up)
        positions += int(row["positions_gained"])
        if money > most:
            break
        points.append((money, positions))
    return points


def curve(folder, run):
    with open(folder / "curve.csv", newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    program = [(0, 0)] + [(float(row["spent_money"]), int(row["positions"])) for row in rows]
    most = max(money for money, _ in program)
    ranked = by_rank(run, most)
    high = max(max(p for _, p in program), max(p for _, p in ranked))
    at = lambda money, positions: (LEFT_PX + PLOT_WIDE_PX * money / most, TOP_PX + PLOT_HIGH_PX * (1 - positions / high))
    out = head(TOP_PX + PLOT_HIGH_PX + 70, "What budgets buy in the demo city")
    for step in range(0, int(high) + 1, 500):
        x, y = at(0, step)
        out.append('<line x1="%d" y1="%.1f" x2="%d" y2="%.1f" stroke="#e4e4e4"/>' % (LEFT_PX, y, LEFT_PX + PLOT_WIDE_PX, y))
        out.append('<text x="%d" y="%.1f" text-anchor="end">%s</text>' % (LEFT_PX - 8, y + 4, format(step, ",")))
    for million in range(0, int(most / 5e5) + 1):
        x, y = at(million * 5e5, 0)
        out.append('<line x1="%.1f" y1="%.1f" x2="%.1f" y2="%.1f" stroke="#202020"/>' % (x, y, x, y + 5))
        out.append('<text x="%.1f" y="%.1f" text-anchor="middle">%s</text>' % (x, y + 20, format(million * 500000, ",")))
    for points, color, width in ((ranked, "#8a8a8a", 2), (program, "#0b3c6f", 3)):
        steps = " ".join("%.1f,%.1f" % at(*point) for point in points)
        out.append('<polyline fill="none" stroke="%s" stroke-width="%s" points="%s"/>' % (color, width, steps))
    for row, point in zip(rows, program[1:]):
        x, y = at(*point)
        out.append('<circle cx="%.1f" cy="%.1f" r="5" fill="#ffffff" stroke="#0b3c6f" stroke-width="2"/>' % (x, y))
        anchor = "end" if x > LEFT_PX + PLOT_WIDE_PX - 60 else "middle"
        out.append('<text x="%.1f" y="%.1f" text-anchor="%s" font-size="12">%.0f %%</text>' % (x - 6, y - 12, anchor, float(row["budget_pct"])))
    out.append('<text x="%d" y="22">Positions gained over money spent: the program (points: share of its budget) and spans taken by rank (gray)</text>' % LEFT_PX)
    out.append('<text x="%d" y="%d" text-anchor="end">money spent, USD</text>' % (LEFT_PX + PLOT_WIDE_PX, TOP_PX + PLOT_HIGH_PX + 44))
    return "\n".join(out + ["</svg>"]) + "\n"


if __name__ == "__main__":
    folder, run, images = (Path(name) for name in sys.argv[1:4])
    (images / "program-map.svg").write_text(program_map(folder, run), encoding="utf-8")
    (images / "program-curve.svg").write_text(curve(folder, run), encoding="utf-8")
