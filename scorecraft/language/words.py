"""Every word of the pattern language: the one table that parser, reference and page read.

Rules of thumb and limits are taken from `practice` and `limits`, never written here again.

A new motif is a new file in `motifs/` and a row here; a new texture likewise.
"""

from collections.abc import Mapping
from dataclasses import replace

from scorecraft.baking import (
    LEAST_PROOF,
    OVEN_SPRINGS,
    READY_TIMES,
    SPREAD,
    USUAL_C,
    USUAL_WATER,
)
from scorecraft.language.figure_words import FIGURES
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
    share,
    size,
    slant,
)
from scorecraft.language.texture_words import TEXTURES
from scorecraft.limits import (
    GRID_MARGIN_MM,
    LEAST_DOUGH_G,
    LEAST_PROFILE,
    MOST_DOUGH_G,
    MOST_LOAVES,
    MOST_PROFILE,
    MOST_PROOF,
    MOST_SPRING,
)
from scorecraft.loaf.forms import FORMS
from scorecraft.loaf.tin import PANS
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

PROOF = Key(
    "proof", "number", "ready", "how far proofed; a number is times the mixed volume",
    False, LEAST_PROOF.value, MOST_PROOF, ("under", "ready", "over", "right"),
)  # fmt: skip
DOUGH_C = Key("temperature", "temperature", f"{USUAL_C.value:g}C",
              "of the dough when it is scored", False, -5.0, 45.0)  # fmt: skip
WATER = number("hydration", share(USUAL_WATER), "water over flour, by weight", 0.4, 1.2)
"""What there is to say of the dough that other lines may say too, as in older files."""


def _as_in_dough(key: Key) -> Key:
    """Let a line say this of the dough; it has no default there."""
    return replace(key, default="", help="as in dough, for older files")


HEADER = (
    Word("title", "header", "the name of the pattern", (Key("text", "text", needed=True),),
         ("text",), example='title "Leaf crown"'),
    Word("note", "header", "a remark printed on the guide",
         (Key("text", "text", needed=True),), ("text",), example='note "Chill for 30 minutes."'),
    Word("loaf", "header", "the proofed loaf: its form, and its size or the weight of its dough",
         (choice("shape", "round", " ".join(FORMS), "its form"),
          size("width", "", "across, 3 to 9 o'clock"),
          size("length", "", "12 to 6 o'clock; round, square and star have none of their own"),
          size("height", "", "from bench to crown"),
          size("hole", "", "width of a ring's hole"),
          Key("taper", "number", "", "how much narrower an oval or long loaf is toward 12 o'clock",
              False, 0, 0.4),
          Key("pan", "choice", "", "the tin of a tin loaf", choices=tuple(PANS)),
          Key("dough", "mass", "", "weight of the dough: the size is estimated from it",
              False, LEAST_DOUGH_G, MOST_DOUGH_G),
          _as_in_dough(PROOF),
          size("basket", "", "proofing basket (banneton): across the top, an oval one lengthwise"),
          size("by", "", "width of an oval or long basket"),
          size("vessel", "", "inside width of the covered pot; of an oval one its length"),
          Key("profile", "number", "", "2 is a dome; higher is flatter on top",
              False, LEAST_PROFILE, MOST_PROFILE),
          Key("outline", "text", "", "an SVG file with your own rim, seen from above")),
         ("shape",), example="loaf round width 220mm height 95mm"),
    Word("dough", "header", "the dough when it is scored: how far proofed, how wet, how warm",
         (PROOF,
          choice("culture", "sourdough", " ".join(READY_TIMES),
                 "what makes it rise; sourdough is ready at less volume"),
          WATER, DOUGH_C,
          Key("kitchen", "temperature", f"{USUAL_C.value:g}C", "temperature of the kitchen",
              False, -5.0, 50.0)),
         ("proof",), example="dough over culture yeasted hydration 75% temperature 5C"),
    Word("bake", "header", "how the loaf grows in the oven",
         (Key("spring", "number", "",
              f"baked volume over proofed volume ({OVEN_SPRINGS['ready'].value:g} when ready)",
              False, 1, MOST_SPRING),
          number("spread", share(SPREAD), "share of the oven spring that goes sideways", 0, 1),
          flag("steam", "yes", "without it the skin sets early: cuts open less")),
         example="bake spring 1.5 steam yes"),
    Word("bench", "header", "who cuts, and in what order",
         (choice("hand", "right", "right left", "the hand that holds the blade"),
          choice("order", "planned", "planned file", "the quickest order, or that of the file"),
          _as_in_dough(DOUGH_C), _as_in_dough(WATER),
          choice("skill", "steady", "new steady quick", "how quick the hand is: times go by it"),
          count("loaves", "1", "equal loaves that are scored in a row", 1, MOST_LOAVES)),
         example="bench hand left skill new"),
    Word("stencil", "header", "how its stencil is made, where nothing else is asked for",
         (size("slot", "", "width of the slots"), size("bridge", "", "thinnest bridge"),
          size("web", "", "thinnest strip left standing"),
          Key("fill", "text", "", "figures opened as whole shapes, with commas between"),
          Key("layers", "text", "", "a plate for each dusting, like flour=leaf; cocoa=star"),
          Key("plate", "text", "", "the largest plate, like 300x300mm")),
         example='stencil slot 3mm fill "heart" plate "300x300mm"'),
    Word("knob", "header", "a number to adjust: a slider on the page, --set on the command line",
         (Key("name", "new name", needed=True), Key("value", "any", needed=True),
          Key("min", "any", "", "lowest value (half if not given)"),
          Key("max", "any", "", "highest value (double if not given)"),
          Key("step", "any", "", "smallest step")),
         ("name", "value"), example="knob leaves 8 min 5 max 12"),
    Word("let", "header", "gives a value a name",
         (Key("name", "new name", needed=True), Key("value", "any", needed=True)),
         ("name", "value"), example="let tip (reach - 20mm)"),
    Word("marks", "header", "string lines marked on the dough first, as guides",
         (choice("what", "spokes", "spokes ring lines", "what to mark with a string"),
          count("count", "8", "how many spokes or lines"),
          length("radius", "60%", "of a ring"),
          length("spacing", "20mm", "between lines"),
          angle("turn", "0deg", "turns them clockwise")),
         ("what", "count"), example="marks spokes 8"),
)  # fmt: skip

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
