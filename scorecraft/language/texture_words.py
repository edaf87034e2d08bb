"""The textures of the language: the rows of the table that a fill takes."""

from scorecraft.language.keys import Key, Word, angle, count, length, number, size, slant
from scorecraft.limits import CRUMB_MM

CRUMB = size("shortest", f"{CRUMB_MM:g}mm", "shorter scraps at the edge are left out")

TEXTURE_ROWS = (
    ("hatch", "parallel lines", "8mm", "between lines", ()),
    ("crosshatch", "two families of parallel lines", "10mm", "between lines",
     (slant("angle", "90deg", "between the two families", 10, 170),)),
    ("herringbone", "columns of strokes that lean left and right in turn", "14mm", "of a column",
     (length("gap", "6mm", "between strokes"), slant("lean", "45deg", "to the column", 10, 80))),
    ("basket", "basket weave: squares of strokes, lengthwise and crosswise in turn", "16mm",
     "side of a square", (count("strokes", "3", "in each square", 1, 100),)),
    ("hemp_leaf", "six-pointed hemp-leaf stars", "22mm", "side of the big triangles", ()),
    ("waves", "overlapping waves of concentric arcs", "14mm", "radius of a wave",
     (count("rings", "3", "arcs in a wave", 1, 20),)),
    ("circles", "interlocked circles", "14mm", "radius of a circle", ()),
    ("tortoiseshell", "hexagons", "10mm", "side of a hexagon", ()),
    ("bamboo", "woven bamboo: hexagons and triangles from three families of lines", "10mm",
     "side of the small triangles", ()),
    ("triangles", "triangles", "14mm", "side of a triangle", ()),
    ("key_fret", "running key frets in rows", "5mm", "width of a step", ()),
    ("lozenges", "linked lozenges, each with a smaller one inside", "16mm", "side of a lozenge",
     (slant("angle", "60deg", "at the tips", 10, 170),
      number("inner", "0.5", "size of the inner one; 0 for none", 0, 0.9))),
    ("running_stitch", "stepped lines of running stitches", "8mm", "of a stitch",
     (Key("rows", "text", '"0110"', "how each line across starts: 0 or 1"),
      Key("columns", "text", '"01"', "how each line away from you starts"))),
    ("scales", "fish scales", "8mm", "radius of a scale", ()),
)  # fmt: skip

TEXTURES = tuple(
    Word(
        name,
        "texture",
        help,
        (
            length("size", normal, of),
            angle("turn", "0deg", "turns it clockwise"),
            Key("shift", "pair", "(0mm, 0mm)", "moves it"),
            CRUMB,
            *own,
        ),
        ("size",),
        example=f"fill disc radius 60mm with {name} size {normal} depth 2.5mm",
    )
    for name, help, normal, of, own in TEXTURE_ROWS
)
