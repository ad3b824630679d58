"""Builds the drawing of BenchmarkAgainstLibrary with the ezdxf library and writes it.

    write.py R12|R2000 ENTITIES FILE

Prints the seconds that building and writing took, the start of the interpreter and a small
drawing before left out.
"""
import sys
import time

import ezdxf



def draw(version, entities, path):
    drawing = ezdxf.new(version)
    drawing.units = 4
    drawing.layers.add("OPENING")
    drawing.layers.add("EDGE")
    space = drawing.modelspace()
    polyline = space.add_polyline2d if version == "R12" else space.add_lwpolyline
    attribs = {"layer": "OPENING"}
    for i in range(entities - 1):
        x, y = i % 400 * 20, i // 400 * 20
        if i % 2 == 1:
            space.add_circle((x + 10, y + 10), 4, dxfattribs=attribs)
            continue
        corners = [(x + 5, y + 5), (x + 5, y + 15), (x + 15, y + 15), (x + 15, y + 5)]
        polyline(corners, close=True, dxfattribs=attribs)
    width, height = 400 * 20, ((entities - 1) // 400 + 1) * 20
    polyline([(0, 0), (width, 0), (width, height), (0, height)], close=True, dxfattribs={"layer": "EDGE"})
    drawing.saveas(path)


version, entities, path = sys.argv[1], int(sys.argv[2]), sys.argv[3]
draw(version, 100, path)
start = time.perf_counter()
draw(version, entities, path)
print(time.perf_counter() - start)
