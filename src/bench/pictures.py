"""Pictures of the documentation from a run of the demo: called by src/bench/pictures.sh; only Python's own library.

    pictures.py SHEET.svg RUN FOLDER

SHEET.svg is what 'explain --svg' drew, RUN the results folder of the demo (GeoJSON and GeoPackage), FOLDER where the pictures go.
"""
import json
import math
import re
import sqlite3
import struct
import sys
from pathlib import Path

WIDTH_PX, MAP_PX, MARGIN_PX = 940, 700, 20
CLASSES = [  # share of the ranked spans up to which a class goes, its words, color and width; dark and wide is best
    (0.10, "best tenth", "#0b3c6f", 3.2),
    (0.25, "next 15 %", "#1f78b4", 2.6),
    (0.50, "next 25 %", "#5fb0a5", 2.2),
    (1.00, "lower half", "#e0b04a", 1.8),
]
EXCLUDED = ("excluded", "#a8a8a8", 1.0)
EARTH_M = 6371008.8


def cross_section(sheet):
    """The drawing inside the sheet, as a file of its own."""
    inner = re.search(r'<svg x=.*?</svg>', sheet, re.S).group(0)
    return re.sub(r'^<svg x="\d+" y="\d+"', "<svg", inner) + "\n"


def vaults(geopackage):
    """Longitudes and latitudes of the layer 'vaults'; the header of a GeoPackage's point is read by OGC 12-128r19, 2.1.3."""
    places = []
    with sqlite3.connect(geopackage) as base:
        for (blob,) in base.execute("select geom from vaults"):
            envelope = (0, 32, 48, 48, 64)[(blob[3] >> 1) & 7]
            point = 8 + envelope
            order = "<" if blob[point] == 1 else ">"
            places.append(struct.unpack(order + "dd", blob[point + 5:point + 21]))
    return places


def lines(feature):
    shape = feature["geometry"]
    return shape["coordinates"] if shape["type"] == "MultiLineString" else [shape["coordinates"]]


class Plane:
    """Longitude and latitude to pixels: one scale, degrees of longitude shortened by the cosine of the middle latitude."""

    def __init__(self, places):
        west, east = min(p[0] for p in places), max(p[0] for p in places)
        south, north = min(p[1] for p in places), max(p[1] for p in places)
        self.shrink = math.cos(math.radians((south + north) / 2))
        self.west, self.north = west, north
        wide, high = (east - west) * self.shrink, north - south
        self.px = min((WIDTH_PX - 2 * MARGIN_PX) / wide, (MAP_PX - 2 * MARGIN_PX) / high)
        self.left = (WIDTH_PX - wide * self.px) / 2
        self.bottom_px = MARGIN_PX + high * self.px
        self.m_per_px = math.radians(1 / self.px) * EARTH_M

    def at(self, place):
        return (self.left + (place[0] - self.west) * self.shrink * self.px,
                MARGIN_PX + (self.north - place[1]) * self.px)


def steps_of(points):
    """A path's start and its moves, in tenths of a pixel; points that would fall on the same place are left out."""
    x, y = (round(10 * v) for v in points[0])
    out = "M%g %gl" % (x / 10, y / 10)
    for i, point in enumerate(points[1:], 1):
        dx, dy = round(10 * point[0]) - x, round(10 * point[1]) - y
        if abs(dx) + abs(dy) >= 5 or i == len(points) - 1:
            out += ("%g %g " % (dx / 10, dy / 10))
            x, y = x + dx, y + dy
    return out.rstrip()


def path(plane, members, color, width):
    steps = []
    for feature in members:
        for line in lines(feature):
            steps.append(steps_of([plane.at(p) for p in line]))
    return '<path fill="none" stroke="%s" stroke-width="%s" stroke-linecap="round" d="%s"/>' % (color, width, "".join(steps))


def city_map(spans, places):
    plane = Plane([p for f in spans for line in lines(f) for p in line])
    ranked = sorted((f for f in spans if f["properties"]["rank"]), key=lambda f: f["properties"]["rank"])
    excluded = [f for f in spans if not f["properties"]["rank"]]
    groups, first = [], 0
    for share, words, color, width in CLASSES:
        last = round(share * len(ranked))
        groups.append((words, color, width, ranked[first:last]))
        first = last
    legend_y = plane.bottom_px + 62
    height = legend_y + 44
    out = ['<svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%.0f" viewBox="0 0 %d %.0f" '
           'font-family="sans-serif" font-size="13">' % (WIDTH_PX, height, WIDTH_PX, height),
           "<title>Ranked spans of the demo city</title>",
           '<rect width="100%" height="100%" fill="#ffffff"/>',
           path(plane, excluded, *EXCLUDED[1:])]
    for words, color, width, members in reversed(groups):
        out.append(path(plane, reversed(members), color, width))
    for place in places:
        out.append('<circle cx="%.1f" cy="%.1f" r="2.2" fill="#ffffff" stroke="#202020"/>' % plane.at(place))
    out += legend(groups, len(excluded), len(places), legend_y)
    out += marks(plane, legend_y)
    return "\n".join(out + ["</svg>"]) + "\n"


def legend(groups, excluded, vault_count, y):
    out = ['<text x="%d" y="%.1f">Ranked spans by rank; of spans along one line the best is on top</text>' % (MARGIN_PX, y - 26)]
    entries = [("%s (%s)" % (words, format(len(members), ",")), color, width) for words, color, width, members in groups]
    entries.append(("%s (%s)" % (EXCLUDED[0], format(excluded, ",")), EXCLUDED[1], EXCLUDED[2]))
    for i, (words, color, width) in enumerate(entries):
        x, row = MARGIN_PX + (i % 3) * 235, y + (i // 3) * 24
        out.append('<line x1="%d" y1="%.1f" x2="%d" y2="%.1f" stroke="%s" stroke-width="%s"/>'
                   % (x, row - 4, x + 26, row - 4, color, max(width, 1.2)))
        out.append('<text x="%d" y="%.1f">%s</text>' % (x + 34, row, words))
    x, row = MARGIN_PX + 2 * 235, y + 24
    out.append('<circle cx="%d" cy="%.1f" r="3.2" fill="#ffffff" stroke="#202020"/>' % (x + 13, row - 4))
    out.append('<text x="%d" y="%.1f">vault (%d)</text>' % (x + 34, row, vault_count))
    return out


def marks(plane, y):
    bar_m = 500
    bar = bar_m / plane.m_per_px
    right = WIDTH_PX - 70
    x = WIDTH_PX - 30
    return ['<line x1="%.1f" y1="%.1f" x2="%.1f" y2="%.1f" stroke="#202020" stroke-width="3"/>' % (right - bar, y + 20, right, y + 20),
            '<text x="%.1f" y="%.1f" text-anchor="middle">%d m</text>' % (right - bar / 2, y + 10, bar_m),
            '<line x1="%d" y1="%.1f" x2="%d" y2="%.1f" stroke="#202020" stroke-width="2"/>' % (x, y + 24, x, y + 4),
            '<polygon points="%d,%.1f %d,%.1f %d,%.1f" fill="#202020"/>' % (x, y - 6, x - 6, y + 7, x + 6, y + 7),
            '<text x="%d" y="%.1f" text-anchor="middle">N</text>' % (x, y - 12)]


def main(sheet, run, folder):
    run, folder = Path(run), Path(folder)
    spans = json.loads((run / "spans.geojson").read_text(encoding="utf-8"))["features"]
    (folder / "cross-section.svg").write_text(cross_section(Path(sheet).read_text(encoding="utf-8")), encoding="utf-8")
    (folder / "demo-map.svg").write_text(city_map(spans, vaults(run / "spanroom.gpkg")), encoding="utf-8")


if __name__ == "__main__":
    main(*sys.argv[1:])
