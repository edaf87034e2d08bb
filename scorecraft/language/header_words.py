"""The words of a pattern's header: title, loaf, dough, oven, bench, stencil, and its names."""

from dataclasses import replace

from scorecraft.baking import (
    LEAST_PROOF,
    OVEN_SPRINGS,
    READY_TIMES,
    SPREAD,
    USUAL_C,
    USUAL_WATER,
)
from scorecraft.language.keys import (
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
)
from scorecraft.limits import (
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
