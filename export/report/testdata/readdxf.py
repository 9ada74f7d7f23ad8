"""Reads a DXF file by ezdxf and prints every circle and closed line as a run of
places, with its layer, and what the audit says."""
import json
import sys

try:
    import ezdxf
    from ezdxf import path
except ImportError:
    sys.exit("ezdxf is missing, and this check needs it: apt-get install python3-ezdxf")

document = ezdxf.readfile(sys.argv[1])
auditor = document.audit()
rims = []
for e in document.modelspace():
    if e.dxftype() == "CIRCLE" or e.dxftype() == "LWPOLYLINE" and e.closed:
        run = [[p.x, p.y] for p in path.make_path(e).flattening(0.001)]
        rims.append({"layer": e.dxf.layer, "run": run})
json.dump({"audit": [f"{e.code} {e.message}" for e in auditor.errors + auditor.fixes], "rims": rims}, sys.stdout)
