# Writes DXF files of each kind of entity with ezdxf, a general DXF library.
# Usage: entities.py FOLDER
import json
import math
import sys

import ezdxf
from ezdxf import units

folder = sys.argv[1]


def save(name, draw, version="R2000", unit=units.MM):
    doc = ezdxf.new(version)
    if version != "R12":
        doc.units = unit
    draw(doc, doc.modelspace())
    doc.saveas(f"{folder}/{name}.dxf")


def circle(doc, msp):
    msp.add_circle((10, 5), 3)


def chain(doc, msp):
    # A slot: two lines and two half circles, out of order and turned about.
    msp.add_line((10, 4), (0, 4))
    msp.add_arc((10, 0), 4, -90, 90)
    msp.add_line((0, -4), (10, -4))
    msp.add_arc((0, 0), 4, 90, 270)


def bulges(doc, msp):
    msp.add_lwpolyline([(0, 0, 1), (10, 0, 0), (10, 8, -0.5), (0, 8, 0)], format="xyb", close=True)


def heavy(doc, msp):
    msp.add_polyline2d([(0, 0, 1), (10, 0, 0), (10, 8, -0.5), (0, 8, 0)], format="xyb", close=True)


def ellipse(doc, msp):
    msp.add_ellipse((20, 10), major_axis=(6, 8), ratio=0.3)


def ellipses(doc, msp):
    # Two halves with their chord.
    msp.add_ellipse((0, 0), major_axis=(5, 0), ratio=0.5, start_param=0, end_param=math.pi)
    msp.add_line((-5, 0), (5, 0))


def spline(doc, msp):
    # A circle of radius 7 as nine points of a rational B-spline of degree 2.
    w = math.sqrt(0.5)
    points = [(7, 0), (7, 7), (0, 7), (-7, 7), (-7, 0), (-7, -7), (0, -7), (7, -7), (7, 0)]
    msp.add_rational_spline(
        [(x + 1, y + 2) for x, y in points], weights=[1, w, 1, w, 1, w, 1, w, 1], degree=2,
        knots=[0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
    )


def cubic(doc, msp):
    # y = x·(6 − x)/3 from 0 to 6, closed by a line: 12 square millimetres.
    msp.add_open_spline([(0, 0), (2, 4), (4, 4), (6, 0)], degree=3)
    msp.add_line((0, 0), (6, 0))


def uniform(doc, msp):
    # The knots are spread evenly, so the ends are not clamped.
    s = msp.add_spline()
    s.set_closed([(0, 0, 0), (10, 0, 0), (10, 10, 0), (0, 10, 0)], degree=3)
    points = list(s.construction_tool().approximate(20000))
    area = sum(a.x * b.y - a.y * b.x for a, b in zip(points, points[1:] + points[:1])) / 2
    print(json.dumps({"uniform": area}))


def nested(doc, msp):
    msp.add_lwpolyline([(0, 0), (30, 0), (30, 20), (0, 20)], close=True, dxfattribs={"layer": "A"})
    msp.add_circle((10, 10), 6, dxfattribs={"layer": "A"})
    msp.add_circle((10, 10), 2, dxfattribs={"layer": "A"})
    msp.add_circle((22, 10), 3, dxfattribs={"layer": "A"})
    msp.add_circle((22, 10), 3, dxfattribs={"layer": "A"})
    msp.add_circle((15, 10), 1, dxfattribs={"layer": "B"})


def crossing(doc, msp):
    msp.add_lwpolyline([(0, 0), (10, 0), (10, 10), (0, 10)], close=True)
    msp.add_lwpolyline([(5, 5), (15, 5), (15, 15), (5, 15)], close=True)


def blocks(doc, msp):
    b = doc.blocks.new("DOT", base_point=(1, 1))
    b.add_circle((1, 1), 0.5)
    b.add_lwpolyline([(3, 0), (4, 0), (4, 1)], close=True)
    row = doc.blocks.new("ROW")
    row.add_blockref("DOT", (0, 0))
    row.add_blockref("DOT", (10, 0), dxfattribs={"xscale": 2, "yscale": 2, "rotation": 90})
    msp.add_blockref("ROW", (5, 5), dxfattribs={"layer": "X", "column_count": 3, "row_count": 2, "column_spacing": 40, "row_spacing": 30, "rotation": 30})
    msp.add_blockref("DOT", (0, -50), dxfattribs={"xscale": 3, "yscale": 1})


def below(doc, msp):
    msp.add_circle((10, 5), 3, dxfattribs={"extrusion": (0, 0, -1)})
    msp.add_lwpolyline([(0, 0), (4, 0), (4, 3)], close=True, dxfattribs={"extrusion": (0, 0, -1)})


def open_lines(doc, msp):
    msp.add_line((0, 0), (10, 0))
    msp.add_line((10, 0), (10, 10))
    msp.add_line((10, 10), (0, 0.35))
    msp.add_line((20, 0), (30, 0))
    msp.add_line((30, 0.004), (25, 8))
    msp.add_line((25, 8), (20, 0))
    msp.add_text("not an outline")


def solid(doc, msp):
    msp.add_solid([(0, 0), (10, 0), (0, 5), (10, 5)])


def hidden(doc, msp):
    doc.layers.add("OFF").off()
    doc.layers.add("ICE").freeze()
    for i, layer in enumerate(["0", "OFF", "ICE"]):
        msp.add_circle((10 * i, 0), 2, dxfattribs={"layer": layer})
    doc.layout("Layout1").add_circle((0, 0), 4) if "Layout1" in doc.layout_names() else None


for name, draw in list(globals().items()):
    if callable(draw) and getattr(draw, "__code__", None) and draw.__code__.co_varnames[:2] == ("doc", "msp"):
        save(name, draw)
for version in ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"]:
    save("version-" + version, chain, version)
for unit in [units.IN, units.MM, units.CM, units.DM]:
    save(f"unit-{unit}", circle, unit=unit)
save("unit-0", circle, unit=0)
