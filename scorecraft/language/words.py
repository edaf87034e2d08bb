"""Every word of the pattern language: the one table that parser, reference and page read.

Rules of thumb and limits are taken from `practice` and `limits`, never written here again.

A new motif is a new file in `motifs/` and a row here; a new texture likewise.
"""

from collections.abc import Mapping
from dataclasses import replace

from scorecraft.language.figure_words import FIGURES
from scorecraft.language.header_words import HEADER
from scorecraft.language.keys import (
    FREE,
    LARGEST_SIZE_MM,
    Key,
    Word,
    angle,
    choice,
    count,
    flag,
    length,
    number,
    size,
    slant,
)
from scorecraft.language.texture_words import TEXTURES
from scorecraft.limits import GRID_MARGIN_MM
from scorecraft.practice import FLATTEST_BLADE_DEG, SNIP_HINGE_MM

BLADE_DEG = (FLATTEST_BLADE_DEG.value, 90.0)

ATTRIBUTES = (
    size("depth", "", "how deep below the surface, however the blade is held"),
    size("opens", "", "the width asked for after baking; the model finds the depth"),
    slant("blade", "", "angle between blade and dough; 90deg is upright", *BLADE_DEG),
    Key("kind", "choice", "", "expansion gives the loaf room, decorative is for show",
        choices=("expansion", "decorative")),
    Key("called", "text", "", "its name on the guide and the bench card"),
    flag("through", "", "cut right through the dough, as for a fougasse"),
    size("pulled", "", "how wide a cut right through is pulled open by hand"),
)  # fmt: skip
"""Cut attributes: allowed on any motif, fill or placing, and inherited by what is inside."""

PLACING = (
    Word("at", "placing", "places its block: by x and y, or by radius and angle",
         (length("x", "0mm", "to the right", FREE), length("y", "0mm", "away from you", FREE),
          length("radius", "0mm", "from the crown", 0), angle("angle", "0deg", "on the turntable"),
          choice("facing", "out", "out in along", "with radius: which way its figures face"),
          angle("turn", "0deg", "turns the block clockwise"),
          number("scale", "1", "multiplies every size in the block", 1e-4, 1e4)),
         body=True, attributes=True, example="at radius 50% angle 45deg:\n    leaf length 40mm"),
    Word("around", "placing", "copies its block around the crown",
         (count("count", "", "how many copies"), length("radius", "0mm", "from the crown", 0),
          angle("from", "0deg", "where it starts", "start"),
          replace(angle("to", "0deg", "where it ends; all the way around if not given", "end"),
                  default=""),
          choice("facing", "out", "out in along", "which way each copy faces")),
         ("count",), True, True, example="around 8 radius 26mm:\n    leaf length 58mm"),
    Word("row", "placing", "copies its block along a straight line, centred",
         (count("count", "", "how many copies"), length("spacing", "", "from copy to copy"),
          angle("angle", "90deg", "direction of the row"),
          angle("turn", "0deg", "turns each copy clockwise")),
         ("count",), True, True,
         example="row 5 spacing 45mm angle 0deg:\n    slash length 90mm turn 20deg"),
    Word("grid", "placing", "copies its block onto a grid",
         (choice("lattice", "square", "square diamond hexagon", "how the grid is laid out"),
          length("spacing", "", "from place to place"),
          count("columns", "0", "how many across (0: as many as fit)", 0),
          count("rows", "0", "how many away from you (0: as many as fit)", 0),
          angle("turn", "0deg", "turns the grid clockwise"),
          Key("within", "region", "", "only in this region (otherwise the loaf less a margin)")),
         ("lattice",), True, True,
         example="grid hexagon spacing 24mm:\n    star radius 9mm inner 2mm"),
    Word("wedges", "placing", "draws its block once in each of several equal wedges, trimmed to it",
         (count("count", "", "how many wedges", 2), angle("turn", "0deg", "turns them clockwise")),
         ("count",), True, True,
         example="wedges 4:\n    fill box width 200mm length 200mm with hatch size 8mm"),
    Word("mirror", "placing", "draws its block twice, the second time mirrored",
         (angle("angle", "0deg", "direction of the mirror line; 0deg runs away from you"),),
         body=True, attributes=True,
         example="mirror:\n    at x 30mm:\n        slash length 60mm turn 20deg"),
    Word("repeat", "placing", "repeats its block, each copy a step further on",
         (count("count", "", "how many times"),
          Key("shift", "pair", "(0mm, 0mm)", "moves by this at each step"),
          angle("turn", "0deg", "turns clockwise by this at each step"),
          number("scale", "1", "scales by this at each step", 1e-2, 1e2)),
         ("count",), True, True,
         example="repeat 12 turn 25deg scale 0.9:\n    at radius 60mm:\n        petal length 24mm"),
    Word("along", "placing", "copies its block along a path",
         (Key("line", "path", "", "the first stroke of any motif", True),
          Key("every", "length", "", "from copy to copy; a closed path is shared out evenly",
              most=LARGEST_SIZE_MM),
          count("count", "0", "how many copies, in place of a distance", 0),
          choice("facing", "along", "along left right out in alternate",
                 "which way each copy faces; alternate is left, right, left, as mirror images")),
         ("line",), True, True,
         example="along rim inset 25mm count 24 facing in:\n    leaf length 22mm"),
    Word("inside", "placing", "keeps only what falls in a region",
         (Key("region", "region", "", "where to keep the cuts", True),), ("region",), True, True,
         example="inside disc radius 60mm:\n    row 9 spacing 10mm:\n        slash length 120mm"),
    Word("outside", "placing", "keeps only what falls outside a region",
         (Key("region", "region", "", "where to keep no cuts", True),), ("region",), True, True,
         example="outside disc radius 30mm:\n    around 12:\n        slash length 150mm"),
    Word("vary", "placing", "adds a little of the hand's wobble, the same each time for one seed",
         (number("length", "5%", "how much sizes vary", 0, 0.5),
          angle("turn", "3deg", "how much directions vary"),
          count("seed", "1", "another number gives another wobble", 0)),
         body=True, attributes=True,
         example="vary length 6% turn 3deg:\n    around 24 radius 40%:\n        slash length 20mm"),
    Word("fill", "placing", "fills a region with a texture",
         (Key("region", "region", "", "what to fill", True),
          Key("with", "texture", "", "what to fill it with", True)),
         ("region",), False, True, example="fill disc radius 16mm with scales size 6mm depth 2mm"),
)  # fmt: skip

RULES = (
    Word("define", "rule", "names a block for use as a word of its own; it may use itself",
         (Key("name", "new name", needed=True),), ("name",), True,
         example="define twig size=30mm n=3:\n    slash length size\n"
                 "    when (n > 0):\n        at y (size / 2) turn 30deg:\n"
                 "            twig size (size * 0.6) n (n - 1)"),
    Word("when", "rule", "draws its block only if the condition holds",
         (Key("condition", "condition", "", "a comparison in parentheses", True),),
         ("condition",), True, True,
         example="when (k < 3):\n    slash length 20mm"),
)  # fmt: skip

REGIONS = (
    Word("disc", "region", "a round patch",
         (length("radius", "", ""), length("x", "0mm", "", FREE), length("y", "0mm", "", FREE)),
         ("radius",), example="fill disc radius 20mm with hatch size 4mm"),
    Word("band", "region", "a ring between two radii",
         (length("inner", "", "", 0), length("outer", "", "")),
         example="fill band inner 50mm outer 75mm with hemp_leaf size 14mm"),
    Word("wedge", "region", "a slice between two angles",
         (angle("from", "-22.5deg", "", "start"), angle("to", "22.5deg", "", "end"),
          length("inner", "0mm", "", 0), length("outer", "100%", "")),
         example="fill wedge from 0deg to 90deg outer 80mm with crosshatch size 8mm"),
    Word("box", "region", "a rectangle",
         (length("width", "", "across"), length("length", "", "away from you"),
          length("x", "0mm", "its centre", FREE), length("y", "0mm", "its centre", FREE)),
         example="fill box width 60mm length 60mm with basket size 12mm"),
    Word("whole", "region", "the whole loaf less a margin along the rim",
         (length("margin", f"{GRID_MARGIN_MM:g}mm", "kept free, measured on the dough", 0),),
         example="fill whole margin 20mm with circles size 14mm"),
)  # fmt: skip

MOTIFS = (
    Word("slash", "motif", "one straight or slightly curved stroke",
         (length("length", "80mm"), length("bend", "0mm", "how far it bows to the right", FREE)),
         ("length",), expands=True, origin="middle",
         example="slash 120mm bend 4mm depth 9mm blade 35deg"),
    Word("arc", "motif", "part of a circle around the middle of its place",
         (length("radius", "60mm"), angle("from", "-45deg", "", "start"),
          angle("to", "45deg", "", "end")),
         ("radius",), example="arc 70mm from -40deg to 40deg"),
    Word("wave", "motif", "a stroke that swings from side to side",
         (length("length", "100mm"), length("height", "14mm", "from crest to trough"),
          number("waves", "2", "how many; halves allowed", 0.5, 200)),
         ("length",), origin="middle", example="wave 140mm height 16mm waves 2"),
    Word("leaf", "motif", "a leaf: midrib, two outlines, paired veins",
         (length("length", "60mm", "from base to tip"), length("width", "26mm"),
          count("veins", "4", "pairs", 0, 40),
          slant("vein_angle", "38deg", "to the midrib", 10, 90),
          size("vein_depth", "2.5mm", "veins are cut lightly")),
         ("length",), parts=("midrib", "outline", "vein"),
         origin="base", example="leaf 58mm width 24mm veins 4 depth 6mm"),
    Word("wheat", "motif", "an ear of wheat: stem and leaning grains",
         (length("length", "100mm", "from foot to tip"), length("width", "24mm"),
          count("grains", "6", "pairs", 1, 60)),
         ("length",), parts=("stem", "grain"), origin="base",
         example="wheat 110mm width 26mm grains 7"),
    Word("chevron", "motif", "a V of two strokes, pointing forward",
         (length("length", "20mm"), length("width", "40mm")),
         ("length",), parts=("arm",), origin="middle", example="chevron 18mm width 44mm"),
    Word("cross", "motif", "two strokes at right angles",
         (length("length", "100mm", "away from you"), length("width", "100mm", "across")),
         ("length",), parts=("bar",), expands=True, origin="middle",
         example="cross 110mm width 110mm depth 10mm"),
    Word("star", "motif", "rays from the centre, or the edge of a star",
         (length("radius", "50mm"), count("points", "6", "", 2, 360),
          length("inner", "8mm", "where the rays begin, or the edge's inner corners lie", 0),
          flag("outline", "no", "yes: its edge; no: its rays")),
         ("radius",), parts=("ray", "outline"), origin="middle",
         example="star 60mm points 8 inner 10mm"),
    Word("petal", "motif", "two arcs that meet at base and tip",
         (length("length", "50mm"), length("width", "20mm")),
         ("length",), origin="base", example="petal 55mm width 22mm"),
    Word("ring", "motif", "a full circle", (length("radius", "40mm"),), ("radius",),
         origin="middle", example="ring 35mm"),
    Word("spiral", "motif", "a spiral from the centre outward",
         (length("radius", "80mm"), length("inner", "8mm", "where it begins", 0),
          number("turns", "2.5", "", 0.05, 100), flag("clockwise", "yes")),
         ("radius",), origin="middle", example="spiral 85mm inner 10mm turns 2"),
    Word("polygon", "motif", "a regular polygon, one stroke a side",
         (length("radius", "50mm", "to its corners"), count("sides", "4", "", 3, 360)),
         ("radius",), parts=("side",), origin="middle", example="polygon 60mm sides 4"),
    Word("path", "motif", "a free stroke through points",
         (Key("points", "points", "", "(x, y) pairs from its place", True),
          flag("smooth", "yes", "a curve through the points, or straight between them")),
         ("points",), example="path (0mm, -30mm) (12mm, 0mm) (0mm, 30mm) smooth yes"),
    Word("snip", "motif", "a cut with scissors that goes nearly through, as for an ear of wheat",
         (length("width", "45mm", "across the loaf"),
          size("hinge", f"{SNIP_HINGE_MM.value:g}mm", "left uncut at the bottom"),
          choice("lay", "alternate", "left right alternate straight",
                 "the side to which what it frees is laid; alternate is left, right, left")),
         ("width",), expands=True,
         example="row 5 spacing 55mm angle 0deg:\n    snip 45mm blade 40deg"),
    Word("rim", "motif", "a line that follows the rim; most useful as a path to go along",
         (length("inset", "20mm", "from the rim, measured on the dough", 0),
          choice("of", "outer", "outer hole", "the rim of the loaf, or that of a ring's hole")),
         ("inset",), example="along rim inset 20mm every 18mm facing out:\n    slash 12mm"),
    Word("trace", "motif", "the stroked paths of a plain SVG file of your own",
         (Key("file", "text", "", "beside the pattern file", True),
          length("width", "0mm", "drawn this wide (0mm: as it is)", 0)),
         ("file",), example='trace "swallow.svg" width 60mm'),
)  # fmt: skip

TURN = angle("turn", "0deg", "turns it clockwise")


def _cutting(word: Word) -> Word:
    """Give a motif as it is used: it can be turned, and stand on its base or its middle."""
    stands = choice("from", word.origin, "base middle", "which part of it stands in its place")
    keys = (*word.keys, TURN, *((stands,) if word.origin else ()))
    return replace(word, attributes=True, keys=keys)


CUTTING = tuple(_cutting(word) for word in (*MOTIFS, *FIGURES))
"""The motifs as they are used, with cut attributes."""

WORDS = {w.name: w for w in (*HEADER, *PLACING, *CUTTING, *REGIONS, *TEXTURES, *RULES)}
"""Every word by name."""

AT_HAND = ("width", "length", "height", "reach", "k")
"""Names every pattern may use: the loaf's measures (mm) and the copy number, from 0."""


def starts_statement(name: str) -> bool:
    """Tell whether a word may begin a line."""
    word = WORDS.get(name)
    return word is not None and word.group not in ("region", "texture")


def keys_of(word: Word) -> Mapping[str, Key]:
    """Give every key a word takes: its own, its parts', and the cut attributes."""
    return KEYS[word.name] if WORDS.get(word.name) is word else collect_keys(word)


def collect_keys(word: Word) -> Mapping[str, Key]:
    """Collect every key a word takes."""
    keys = list(word.keys)
    if word.attributes:
        keys += ATTRIBUTES
    for part in word.parts:
        keys.append(size(f"{part}_depth", "", f"depth of each {part}"))
        keys.append(slant(f"{part}_blade", "", f"blade angle of each {part}", *BLADE_DEG))
    found: dict[str, Key] = {}
    for key in keys:
        found.setdefault(key.name, key)
    return found


KEYS = {word.name: collect_keys(word) for word in WORDS.values()}
"""The keys of every word of the table."""
