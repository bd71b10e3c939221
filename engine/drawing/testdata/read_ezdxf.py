#!/usr/bin/python3
"""Reads cutting files, runs the auditor, and prints what is drawn, a thing a line."""
import sys

import ezdxf

for name in sys.argv[1:]:
    doc = ezdxf.readfile(name)
    audit = doc.audit()
    print("file", doc.dxfversion, "units", doc.units, "errors", len(audit.errors), "fixes", len(audit.fixes))
    for e in doc.modelspace():
        kind, layer = e.dxftype(), e.dxf.layer
        if kind == "CIRCLE":
            print("circle %s %.9f %.9f %.9f" % (layer, e.dxf.center.x, e.dxf.center.y, e.dxf.radius))
        elif kind == "LINE":
            print("line %s %.9f %.9f %.9f %.9f" % (layer, e.dxf.start.x, e.dxf.start.y, e.dxf.end.x, e.dxf.end.y))
        elif kind == "LWPOLYLINE":
            print("contour", layer, int(e.closed), "".join("; %.9f %.9f %.9f" % (x, y, b) for x, y, b in e.get_points("xyb")))
        elif kind == "POLYLINE":
            print("contour", layer, int(e.is_closed), "".join("; %.9f %.9f %.9f" % (v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)) for v in e.vertices))
        elif kind == "TEXT":
            print("text %s %.9f %.9f %.9f" % (layer, e.dxf.insert.x, e.dxf.insert.y, e.dxf.height))
        else:
            print("something else:", kind, layer)
