"""Reads a DXF with ezdxf and prints what it holds as JSON: errors of its audit, units, layers, lines, points, texts."""
import json
import sys

import ezdxf
from ezdxf.lldxf.encoding import decode_dxf_unicode

drawing = ezdxf.readfile(sys.argv[1])
audit = drawing.audit()
space = drawing.modelspace()
print(json.dumps({
    "version": drawing.dxfversion,
    "errors": [error.message for error in audit.errors],
    "fixes": [error.message for error in audit.fixes],
    "units": drawing.units,
    "layers": [layer.dxf.name for layer in drawing.layers],
    "lines": [{"layer": line.dxf.layer, "closed": bool(line.closed), "height": line.dxf.get("thickness", 0),
               "points": [[x, y] for x, y in line.get_points("xy")]} for line in space.query("LWPOLYLINE")],
    "points": [{"layer": point.dxf.layer, "at": list(point.dxf.location)} for point in space.query("POINT")],
    "texts": [{"layer": text.dxf.layer, "text": decode_dxf_unicode(text.plain_text()), "at": list(text.dxf.align_point)} for text in space.query("TEXT")],
}))
