"""Map of what 'connect' does in the demo city: called by src/bench/pictures.sh; only Python's own library and pictures.py beside it.

    connections_map.py CONNECT_FOLDER RUN FILE.svg

Gray: all spans. Thin blue: sections where free positions are used. Thick: ducts that are recovered (orange) and new ducts (red).
"""
import json
import sqlite3
import struct
import sys
from pathlib import Path

from pictures import MARGIN_PX, WIDTH_PX, Plane, lines, marks, path, steps_of

FREE = ("free positions used", "#1f78b4", 2.4)
RECOVER = ("duct recovered", "#e07b00", 6)
BUILD = ("new duct built", "#c1121f", 6)
GROUPS = {"free": FREE, "recover": RECOVER, "build": BUILD}


def line_of(blob):
    """Longitudes and latitudes of a line; the header is read by OGC 12-128r19, 2.1.3, the rest is WKB."""
    at = 8 + (0, 32, 48, 48, 64)[(blob[3] >> 1) & 7]
    order = "<" if blob[at] == 1 else ">"
    count = struct.unpack(order + "I", blob[at + 5:at + 9])[0]
    values = struct.unpack(order + "%dd" % (2 * count), blob[at + 9:at + 9 + 16 * count])
    return list(zip(values[::2], values[1::2]))


def sections(folder):
    with sqlite3.connect(folder / "connect.gpkg") as base:
        return [(action, line_of(blob)) for action, blob in base.execute("select action, geom from connection_sections")]


def ends(folder):
    """First and last place of the way of each connection that is served."""
    with sqlite3.connect(folder / "connect.gpkg") as base:
        return [(name, line_of(blob)) for name, blob in base.execute("select name, geom from connections where served")]


def drawn(plane, members, color, width):
    steps = "".join(steps_of([plane.at(p) for p in line]) for line in members)
    return ('<path fill="none" stroke="%s" stroke-width="%s" stroke-linecap="round" stroke-linejoin="round" d="%s"/>'
            % (color, width, steps))


def city(folder, run):
    spans = json.loads((run / "spans.geojson").read_text(encoding="utf-8"))["features"]
    plane = Plane([p for f in spans for line in lines(f) for p in line])
    height = plane.bottom_px + 110
    out = ['<svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%.0f" viewBox="0 0 %d %.0f" '
           'font-family="sans-serif" font-size="13">' % (WIDTH_PX, height, WIDTH_PX, height),
           "<title>Connections of the demo city</title>",
           '<rect width="100%" height="100%" fill="#ffffff"/>',
           path(plane, spans, "#cfcfcf", 1.0)]
    used = sections(folder)
    for action in ("free", "recover", "build"):
        out.append(drawn(plane, [line for kind, line in used if kind == action], *GROUPS[action][1:]))
    for number, (name, line) in enumerate(ends(folder), 1):
        for place in (line[0], line[-1]):
            x, y = plane.at(place)
            out.append('<circle cx="%.1f" cy="%.1f" r="9" fill="#ffffff" stroke="#202020"/>' % (x, y))
            out.append('<text x="%.1f" y="%.1f" text-anchor="middle" font-size="12">%d</text>' % (x, y + 4, number))
    y = plane.bottom_px + 40
    for i, (words, color, width) in enumerate((FREE, RECOVER, BUILD)):
        x = MARGIN_PX + i * 190
        out.append('<line x1="%d" y1="%.1f" x2="%d" y2="%.1f" stroke="%s" stroke-width="%s"/>' % (x, y - 4, x + 26, y - 4, color, width))
        out.append('<text x="%d" y="%.1f">%s</text>' % (x + 34, y, words))
    names = ["%d %s" % (number, name) for number, (name, _) in enumerate(ends(folder), 1)]
    half = (len(names) + 1) // 2
    for i, row in enumerate((names[:half], names[half:])):
        out.append('<text x="%d" y="%.1f">%s</text>' % (MARGIN_PX, y + 26 + 20 * i, " &#160; ".join(row)))
    out += marks(plane, y - 10)
    return "\n".join(out + ["</svg>"]) + "\n"


if __name__ == "__main__":
    Path(sys.argv[3]).write_text(city(Path(sys.argv[1]), Path(sys.argv[2])), encoding="utf-8")
