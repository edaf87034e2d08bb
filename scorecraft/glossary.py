"""The words of the trade and of scorecraft, for the page's help and `words`."""

from scorecraft.drawing.paper.cautions import FILM
from scorecraft.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Term:
    """A word: its short `name`, as a baker writes it, and what it means."""

    name: str
    title: str
    text: str


@dataclass(frozen=True, slots=True)
class Group:
    """Words about one thing."""

    title: str
    terms: tuple[Term, ...]


GROUPS = (
    Group(
        "Loaf and dough",
        (
            Term(
                "boule",
                "Boule",
                "A round loaf.",
            ),
            Term(
                "batard",
                "Batard",
                "A loaf shaped longer than wide, plump in the middle: an oval loaf here.",
            ),
            Term(
                "banneton",
                "Banneton, or proofing basket",
                "The basket a shaped loaf rises in. Its size tells how large the loaf is when "
                "you turn it out.",
            ),
            Term(
                "proof",
                "Proof",
                "The last rise before the oven. A sourdough is ready at 1.5 to 2 times its "
                "mixed volume, a yeasted dough at about double. Underproofed dough springs "
                "most and tears where it is not cut. Overproofed dough springs little: its "
                "cuts barely open and the loaf may sag, so make them fewer and shallower.",
            ),
            Term(
                "hydration",
                "Hydration",
                "Water as a share of the flour’s weight. Wetter dough spreads faster: the "
                "loaf stands lower and leaves less time to score.",
            ),
            Term(
                "crown",
                "Crown",
                "The top of the loaf, in the middle. Patterns are measured from it.",
            ),
            Term(
                "rim",
                "Rim",
                "The outline of the loaf, where it meets the bench.",
            ),
            Term(
                "reach",
                "Reach",
                "The way over the dough from the crown to the rim, measured with a tape or a "
                "string. A size such as 60% is that share of it, so a pattern grows and "
                "shrinks with the loaf.",
            ),
            Term(
                "spring",
                "Oven spring",
                "The loaf’s growth in the oven, as baked volume over proofed volume. About "
                "1.4 is common for a ready loaf, more for an underproofed one.",
            ),
            Term(
                "spread",
                "Sideways spread",
                "How much of the oven spring goes sideways and not up. At 0% the loaf only "
                "rises; at 100% it only widens. A wet or slack dough spreads more.",
            ),
            Term(
                "pot",
                "Dutch oven, or covered pot",
                "A heavy pot with a lid. It traps the loaf’s own steam for the first part of "
                "the bake.",
            ),
            Term(
                "skin",
                "Skin",
                "The drier outside of the proofed loaf. It stretches as the loaf springs "
                "until the crust sets, and the cuts open in it.",
            ),
            Term(
                "crumb",
                "Crumb",
                "The inside of the baked loaf.",
            ),
        ),
    ),
    Group(
        "Cuts and blade",
        (
            Term(
                "lame",
                "Lame",
                "The baker’s blade: a razor blade on a handle, straight or curved. Say “lahm”.",
            ),
            Term(
                "upright",
                "Upright",
                "The blade at 90° to the dough. Any other angle is given with the side the "
                "handle leans to.",
            ),
            Term(
                "expansion",
                "Expansion cut",
                "A deep cut that opens in the oven and gives the loaf room to spring.",
            ),
            Term(
                "decorative",
                "Decorative cut",
                "A shallow cut that draws a figure and opens little.",
            ),
            Term(
                "ear",
                "Ear",
                "The crisp flap that lifts along one edge of a slanted cut.",
            ),
            Term(
                "mouth",
                "Mouth",
                "The gap a cut opens to in the oven. Its greatest width is what you measure.",
            ),
            Term(
                "string-line",
                "String line",
                "A line pressed lightly into the dough with a taut string before the first "
                "cut. A string over the crown marks two spokes.",
            ),
            Term(
                "turntable",
                "Turntable",
                "A stand that turns the loaf under your hand. Degrees on its dial run "
                "clockwise from 12 o’clock, the side away from you.",
            ),
        ),
    ),
    Group(
        "Forms and stencils",
        (
            Term(
                "tin",
                "Tin",
                "What holds a pan loaf’s sides. The dough grows up and a little along, "
                "and its crown stands above the tin’s rim: only the top is scored.",
            ),
            Term(
                "hole",
                "Hole",
                "The open middle of a ring loaf, or couronne. The dough closes part of it "
                "in the oven: shape it wider than you want it. No cut may cross it.",
            ),
            Term(
                "through",
                "Cut right through",
                "A cut down to the board, as in a fougasse, made with a dough cutter or a "
                "knife pressed down.",
            ),
            Term(
                "pulled",
                "Pulled open",
                "How wide a cut right through is opened by hand, on the peel, before it "
                "bakes. Pulled too far, the strips beside it tear.",
            ),
            Term(
                "snip",
                "Snip",
                "A cut with scissors held at 30–45° that leaves a few millimetres uncut "
                "at the bottom, as for an épi, the ear of wheat.",
            ),
            Term(
                "hinge",
                "Hinge",
                "What a snip leaves uncut. Too thin, it tears when the piece is laid to "
                "its side; too thick, the piece does not lie.",
            ),
            Term(
                "fill",
                "Filled figure",
                "In a stencil, a figure opened as a whole shape instead of a slot along "
                "its outline. One that encloses nothing keeps its slots.",
            ),
            Term(
                "layer",
                "Layer",
                "One dusting, through a plate of its own: say flour first, then cocoa.",
            ),
            Term(
                "plate",
                "Plate",
                "The sheet a stencil is cut from. Where it is larger than your bed, it is "
                "turned, or made in parts that are joined letter to letter.",
            ),
            Term(
                "bridge",
                "Bridge",
                "A strip left across a slot so that what lies inside does not fall out. "
                "Wider is stronger; narrower shows less.",
            ),
            Term(
                "web",
                "Strip left standing",
                "What is left of the plate between two slots. Thinner than about 1.5 mm, it tears.",
            ),
        ),
    ),
    Group(
        "In scorecraft",
        (
            Term(
                "knob",
                "Knob",
                "A number of the pattern with a slider: how many leaves, how deep a cut.",
            ),
            Term(
                "room",
                "Room",
                "The share of the oven spring that the cuts can take up. With enough room the "
                "loaf opens where you scored it; with too little it bursts, often at the "
                "side. Room is a model estimate: use it to compare designs.",
            ),
            Term(
                "tension",
                "Tension",
                "The pull left in the skin once the cuts have opened, as a share of the pull "
                "in an uncut loaf. The darker a place, the less room it has, and the likelier "
                "a burst starts there. It is always high at the tip of a cut, which may tear "
                "further. Tension is a model estimate.",
            ),
            Term(
                "guide",
                "Guide",
                "A sheet with the loaf at full size and its cuts numbered and listed. Keep it "
                "beside the loaf: look at it, do not lay it on dough.",
            ),
            Term(
                "card",
                "Bench card",
                "The cuts in order, one row a turn of the table, to read at arm’s length.",
            ),
            Term(
                "stencil",
                "Stencil",
                f"A sheet with slots, to dust flour or cocoa through. {FILM}",
            ),
            Term(
                "drape",
                "Drape",
                "The pattern at its true length on paper that folds along its darts, so that "
                "it lies on the dome as no flat sheet can. Trace it onto clean baking paper "
                "along a clean edge, and lay that on the loaf pencil side up, away from the "
                "dough.",
            ),
            Term(
                "dart",
                "Dart",
                "A wedge that is folded or cut out of a drape, so that flat paper follows the "
                "dome.",
            ),
            Term(
                "ring",
                "Turntable ring",
                "A paper ring of degrees that shows where each figure begins. It lies on the "
                "turntable under the baking paper; remove it before the loaf goes into the "
                "oven.",
            ),
            Term(
                "practise",
                "Practice sheets",
                "Strokes at full size, to trace and then to do freehand: straight ones, "
                "bends, leaves and blade angles, and the hardest strokes of your pattern. "
                "Start with a pen; put a board under the paper before you take a blade.",
            ),
            Term(
                "cutter",
                "Cutter file",
                "Plain lines in millimetres for a craft cutter or a laser: SVG, or DXF, whose "
                "numbers are millimetres too.",
            ),
        ),
    ),
    Group(
        "Designing on the loaf",
        (
            Term(
                "tray",
                "Tray",
                "The row of figures below the loaf: drag one onto the dough, or tap it and then "
                "tap the place where it should go.",
            ),
            Term(
                "handle",
                "Handle",
                "A ringed dot beside a selected cut. Drag it to change one thing: a length, a "
                "width, the direction, a point of a free stroke. A grey one is locked; tap it to "
                "read why.",
            ),
            Term(
                "chip",
                "Chips",
                "The buttons below the loaf while a cut is selected: Repeat, Mirror, Depth, Opens, "
                "Blade, Duplicate, Delete. Each shows the value it has now.",
            ),
            Term(
                "copies",
                "Copies",
                "Cuts that Repeat or Mirror draws from one. Change one and all of them change; "
                "“Free this copy” makes one its own.",
            ),
        ),
    ),
)
TERMS = {term.name: term for group in GROUPS for term in group.terms}
"""Every term by its name."""
