"""Reads DXF files by ezdxf and prints what it finds as JSON: what the audit says, the
layers, what lies on each, circles, texts, the box around the shapes, and the area
in closed lines with their bulges."""
import json
import math
import sys

try:
    import ezdxf
    from ezdxf import bbox
    from ezdxf.lldxf.encoding import decode_dxf_unicode
except ImportError:
    sys.exit("ezdxf is missing, and this check needs it: apt-get install python3-ezdxf")


def area(line):
    """Shoelace, and for each bulge the segment between arc and chord."""
    corners = list(line.get_points("xyb"))
    total = 0
    for (x0, y0, bulge), (x1, y1, _) in zip(corners, corners[1:] + corners[:1]):
        total += (x0 * y1 - x1 * y0) / 2
        if bulge:
            turn = 4 * math.atan(bulge)
            radius = math.hypot(x1 - x0, y1 - y0) / (2 * math.sin(abs(turn) / 2))
            total += radius**2 / 2 * (turn - math.sin(turn))
    return total


def reading(path):
    document = ezdxf.readfile(path)
    auditor = document.audit()
    model = document.modelspace()
    marks, circles, texts, closed = {}, [], [], 0.0
    for e in model:
        kind = e.dxftype()
        on_layer = marks.setdefault(e.dxf.layer, {})
        on_layer[kind] = on_layer.get(kind, 0) + 1
        if kind == "CIRCLE":
            circles.append([e.dxf.center.x, e.dxf.center.y, e.dxf.radius])
        if kind == "LWPOLYLINE" and e.closed:
            closed += area(e)
        if kind == "TEXT":
            texts.append({
                "text": decode_dxf_unicode(e.dxf.text), "height": e.dxf.height, "turn": e.dxf.rotation,
                "align": e.dxf.halign, "at": list(e.dxf.align_point if e.dxf.halign else e.dxf.insert)[:2],
            })
    box = bbox.extents(model.query("CIRCLE LWPOLYLINE"), flatten=0)
    return {
        "version": document.dxfversion,
        "units": document.header["$INSUNITS"],
        "audit": [f"{e.code} {e.message}" for e in auditor.errors + auditor.fixes],
        "layers": {l.dxf.name: {"colour": l.dxf.color, "line": l.dxf.linetype, "weight": l.dxf.lineweight} for l in document.layers},
        "lines": {l.dxf.name: list(map(float, (t.value for t in l.pattern_tags.tags if t.code == 49))) for l in document.linetypes},
        "marks": marks,
        "circles": circles,
        "texts": texts,
        "closed": closed,
        "box": [box.extmin.x, box.extmin.y, box.extmax.x, box.extmax.y] if box.has_data else [],
        "colours": [list(ezdxf.colors.aci2rgb(i)) for i in range(1, 10)],
    }


json.dump([reading(path) for path in sys.argv[1:]], sys.stdout)
