"""Every rule of thumb scorecraft goes by, each with what it says and where it comes from.

Nothing here is a measured law of bread: we know of no published measurement that links the depth,
angle or spacing of cuts to how a loaf opens. A rule without a source is a habit of the trade
(`COMMON`), one marked `SET` was chosen by us on drawings. `scorecraft rules` prints the table.
Limits of the program stand beside their use, or in `limits` where rooms share them.
"""

from collections.abc import Iterator

from scorecraft import baking
from scorecraft.rules import COMMON as COMMON
from scorecraft.rules import SET as SET
from scorecraft.rules import Rule as Rule
from scorecraft.rules import Subject

CUTS = Subject("cuts")
EXPANSION_DEPTH_MM = Rule(
    8.0, "mm", "depth of an expansion cut where none is given (6-13 mm is usual)"
)
DECORATIVE_DEPTH_MM = Rule(
    3.0, "mm", "depth of a decorative cut where none is given (2-4 mm is usual)"
)
EXPANSION_BLADE_DEG = Rule(
    40.0, "deg", "blade angle to the dough for a cut that should raise an ear (30-45)"
)
DECORATIVE_BLADE_DEG = Rule(90.0, "deg", "blade upright for fine lines and cuts that open evenly")
FLATTEST_BLADE_DEG = Rule(5.0, "deg", "a flatter blade slides over the skin")
EXPANSION_FROM_MM = Rule(
    5.0, "mm", "a cut this deep or deeper is an expansion cut unless the pattern says otherwise"
)
DEPTH_STEP_MM = Rule(0.5, "mm", "a hand is no more exact than this; depths are rounded to it")
FLATTEST_DEG = Rule(10, "deg", "lines that cross or branch flatter than this run together")

SEVERED = Subject("cuts right through, and with scissors")
SNIP_HINGE_MM = Rule(6.0, "mm", "what scissors leave uncut under an ear of wheat")
LEAST_SNIP_HINGE_MM = Rule(3.0, "mm", "a thinner hinge tears when the piece is laid aside")
MOST_SNIP_HINGE = Rule(0.4, "of the height", "a thicker hinge does not let the piece be laid aside")
SNIP_BLADE_DEG = Rule(40.0, "deg", "scissors to the dough for an ear of wheat (30-45)")
SNIP_FLATTEST_DEG = Rule(30.0, "deg", "flatter scissors cut tongues too thin to be laid")
SNIP_STEEPEST_DEG = Rule(45.0, "deg", "steeper scissors cut blunt pieces, not grains")
LAID_DEG = Rule(38.0, "deg", "how far a piece cut with scissors is laid to its side")
LEAST_STRIP_MM = Rule(
    15.0, "mm", "a narrower strip between cuts right through tears when they are pulled"
)
PULLED_SHARE = Rule(
    0.45, "of the length", "a cut right through tears at its ends if it is pulled wider"
)

LOAF = Subject("loaf")
HEIGHT_PER_WIDTH = Rule(0.43, "", "height of a proofed loaf over its width")
RIM_POWER = Rule(2.0, "", "power q of every dome: it rises straight up from the bench")

TIN_CROWN = Rule(0.18, "of the width", "the crown of dough that fills its tin, above the rim")
TIN_SIDES = Rule(
    0.5, "", "share of the rise by which dough climbs the sides of its tin, up to the rim", SET
)
RING_RUNS = Rule(
    0.25, "", "share of the sideways growth (of its logarithm) by which a ring grows longer", SET
)

CHECKS = Subject("checks")
RIM_MARGIN_MM = Rule(12.0, "mm", "cuts stay this far above the rim, along the dough")
SHALLOW_MM = Rule(4.0, "mm", "cuts up to this deep stay in the skin: what is found there is a note")
DEEP_MM = Rule(5.0, "mm", "cuts from this deep on part the skin")
DEEP_SHARE = Rule(0.25, "of the height", "deeper cuts weaken the loaf")
DEEPEST_SHARE = Rule(0.4, "of the height", "deeper cuts make the loaf collapse")
DEEP_CUT_MM = Rule(19.0, "mm", "about as deep as a cut goes, in wet dough (3/4 in)")
DEEPEST_CUT_MM = Rule(25.0, "mm", "deeper is said to risk collapse (1 in)")
SHALLOWEST_CUT_MM = Rule(1.0, "mm", "a shallower cut does not part the skin")
SHALLOWEST_EXPANSION_MM = Rule(3.0, "mm", "a shallower cut gives the loaf little room")
SAME_LINE_MM = Rule(0.25, "mm", "lines nearer than this are one line on the dough")
JOIN_MM = Rule(1.0, "mm", "cuts whose end is this near another cut meet it on purpose")
SHARP_CROSSING_DEG = Rule(
    25.0, "deg", "cuts that cross at less leave thin points of dough that tear"
)
CLEAR_MM = Rule(4.0, "mm", "advice leaves this much dough between cuts that met")
STRIP_PER_DEPTH = Rule(
    1.2, "", "dough left between two cuts: this many times as wide as they are deep"
)
THINNEST_STRIP_MM = Rule(2.0, "mm", "least width of a strip of dough, however shallow the cuts")
STRIP_STOP_SHARE = Rule(0.4, "", "a strip below this share of its width cannot be cut")
STRIP_WARN_SHARE = Rule(0.6, "", "between shallow cuts, below this share is a warning")
STRIP_PARALLEL_DEG = Rule(
    12.0, "deg", "lines that part at more leave a point, which holds, and not a strip"
)
SLANTED_DEG = Rule(75.0, "deg", "a blade held flatter than this cuts under the skin")
UNDERCUT_CLEAR_MM = Rule(2.0, "mm", "dough left between a slanted cut and its neighbour")
UNDERCUT_PARALLEL_DEG = Rule(
    20.0, "deg", "a slanted cut and its neighbour run side by side up to this angle"
)
PIECE_DEEP_MM = Rule(
    6.0, "mm", "a piece is cut free where all cuts around it part the skin, this deep"
)
PIECE_SHALLOW_MM = Rule(4.0, "mm", "a piece between shallower cuts stays where it is")
PIECE_PER_WIDTH = {
    "stop": Rule(0.6, "of its width", "a piece cut free this deep lifts off"),
    "warning": Rule(0.35, "of its width", "a piece cut free this deep curls and dries"),
    "note": Rule(
        0.2,
        "of its width",
        "a piece cut free this deep may curl; a square of four slashes does not",
    ),
}
PIECE_SHALLOW_PER_WIDTH = Rule(
    0.6,
    "of its width",
    "a piece cut this deep, but not through the skin, may curl; a grid of small squares does not",
)
LID_CM2 = Rule(30.0, "cm2", "a piece larger than this is a lid, cut on purpose")
HINGE_MM = Rule(8.0, "mm", "a gap in the cuts around a piece that holds it")
DENSE_MM_PER_CM2 = Rule(18.0, "mm/cm2", "more cut than this on a part of the loaf shreds the skin")
DENSE_FACE = Rule(0.7, "", "more cut face (length x depth) than this on an area of skin weakens it")
DENSE_WARN = Rule(1.5, "", "this many times the most cut, or cut face, is a warning")
SOFT_CRACK_DENSITY = Rule(
    0.6,
    "",
    "from this crack density of deep cuts on, the skin keeps about a third of its stiffness: "
    "1 / (1 + pi rho)",
    "non-interacting cracks in random directions: Bristow 1960; Kachanov, Appl. Mech. Rev. 45 "
    "(1992) 304-335; recalled, page not checked; the limit itself is " + COMMON,
)
ASIDE_NOTE = Rule(0.12, "of the reach", "cuts this far off the middle are a note")
ASIDE_WARN = Rule(0.3, "of the reach", "cuts this far off the middle are a warning")

OPENING = Subject("room and opening")
SKIN_MM = Rule(
    6.0,
    "mm",
    "thickness of the skin that holds the loaf, until your own bakes tell (`tune` fits it): chosen "
    "so that an upright slash of 120 mm opens 12, 20, 30 and 38 mm at depths of 6, 8, 10 and 13 mm",
    "no measurement is known; set on what bakers tell, " + COMMON,
)
INSIDE_PER_SKIN = Rule(
    0.05,
    "",
    "stiffness of the dough under the skin, as a share of the skin's, until your own bakes tell",
    "loose crumb over crumb pressed together five-fold, 11 and 230 kPa: Sapirstein, Fahloul & "
    "Scanlon, J. Cereal Sci. 32 (2000) 235-243, as seen in excerpts",
)
ROOM_ENOUGH = Rule(
    0.13,
    "of the spring",
    "cuts that absorb this share of the oven spring leave enough room: chosen so that a batard "
    "with one full slash 6 mm deep (0.18), five cuts of a baguette (0.55) and an upright slash of "
    "120 mm 10 mm deep on a 220 mm round (0.22) have enough",
    SET,
)
ROOM_BURSTS = Rule(
    0.08,
    "of the spring",
    "cuts that absorb less than this share leave the skin to burst: chosen so that no cuts (0), "
    "a cut of 60 mm 10 mm deep (0.07) and light cuts all over (stars 2 mm deep 0.07, chevrons "
    "2.5 mm deep 0.02) burst, and a crescent 6 mm deep (0.09) just does not",
    SET,
)
MODEL_OFF = Rule(
    0.1,
    "",
    "share by which two openings in three stay within the model's, were skin and depths known",
    "against finer computations of a skin on a dome 8 % (tests/published); that dough is no worse "
    "was " + SET,
)
SKIN_OFF = Rule(
    0.1, "", "share by which the skin may be off until your own bakes tell (`tune`)", SET
)
DEPTH_OFF_MM = {
    "new": Rule(1.5, "mm", "a new hand keeps a depth to within this"),
    "steady": Rule(0.75, "mm", "a steady hand keeps a depth to within this"),
    "quick": Rule(0.5, "mm", "a quick, practised hand keeps a depth to within this"),
}
DEEPEST_USUAL_MM = Rule(
    13.0, "mm", "no advice makes an expansion cut deeper than is usual (1/2 in)"
)
LONE_SD_MM = Rule(1.5, "mm", "how far a single measured opening may be off")
EAR_BLADE_DEG = Rule(
    60.0, "deg", "a blade held lower than this undercuts a flap that lifts as an ear"
)

BENCH = Subject("bench")
PULL_ASIDE_DEG = Rule(
    15.0, "deg", "a pull toward the cutter drifts to the side of the hand by this"
)
EYE_DEG = Rule(50.0, "deg", "the cutter looks down on the loaf at this angle to the bench")
DEEP_SIGHT_POWER = Rule(1.3, "", "how much a poor view hampers a deep stroke, as a power of it")
PULL_COST = {
    "decorative": Rule(0.5, "", "a light stroke square to the pull takes half more"),
    "expansion": Rule(30.0, "", "a deep stroke square to the pull is dragged, not cut"),
}
AIM_S = Rule(2.3, "s", "to find where the next cut begins, and set the hand for it")
PLACE_BLADE_S = {
    "decorative": Rule(0.6, "s", "to set the blade down for a light stroke"),
    "expansion": Rule(1.2, "s", "to set the blade down for a deep stroke"),
}
STROKE_MM_PER_S = {
    "decorative": Rule(50.0, "mm/s", "speed of a light stroke"),
    "expansion": Rule(80.0, "mm/s", "speed of a deep stroke: slow blades drag"),
}
PACE_LEAST = {
    "new": Rule(1.4, "", "a new hand takes at least this many times the times here"),
    "steady": Rule(0.9, "", "a steady hand's least time over the times here"),
    "quick": Rule(0.5, "", "a quick hand's least time over the times here"),
}
PACE_MOST = {
    "new": Rule(2.2, "", "a new hand takes at most this many times the times here"),
    "steady": Rule(1.1, "", "a steady hand's most time over the times here"),
    "quick": Rule(0.7, "", "a quick hand's most time over the times here"),
}
TURN_TABLE_S = Rule(0.8, "s", "to let go of the loaf and take hold of the table")
TURN_DEG_PER_S = Rule(100.0, "deg/s", "speed of the turntable")
SPIN_DEG_PER_S = Rule(60.0, "deg/s", "speed of the table while it turns under the blade")
SPUN_FROM_DEG = Rule(
    300.0, "deg", "a cut that winds so far is made by turning the table under the blade"
)
CHANGE_DEPTH_S = Rule(1.0, "s", "to change to another depth or blade angle")
LEAST_TURN_DEG = Rule(4.0, "deg", "smaller turns of the table are left out")
SAME_AIM_DEG = Rule(12.0, "deg", "figures this close in direction need no turn")
MOST_COPIES_AIMED = Rule(
    16.0, "copies", "up to this many copies are each turned toward the cutter; more share turns"
)
NEXT_FIGURE_S = Rule(2.0, "s", "to look at the card and find where the next figure goes")
SAME_DEPTH_MM = Rule(0.75, "mm", "depths closer than this feel the same to the hand")
SAME_BLADE_DEG = Rule(7.5, "deg", "blade angles closer than this feel the same")
STRING_MARK_S = Rule(5.0, "s", "to mark one string line on the dough")
NEXT_LOAF_S = Rule(10.0, "s", "to set a scored loaf aside and bring the next one")
CURVED_BELOW_DEG = Rule(
    60.0, "deg", "a blade held flatter than this is best curved: it lifts an ear"
)
UPRIGHT_DEG = Rule(85.0, "deg", "a blade this steep or steeper counts as upright")
MOST_TILT_DEG = Rule(
    95.0, "deg", "a handle tilted more would touch the bench: it leans the other way"
)
SAME_LEAN_DEG = Rule(5.0, "deg", "handles whose lean differs by less feel the same")
START_DEPTH_SHARE = Rule(0.6, "", "depth of an expansion cut where it begins")
END_DEPTH_SHARE = Rule(0.5, "", "depth of an expansion cut where the blade lifts off")
BENCH_TIME_S = Rule(
    300.0,
    "s",
    "how long a proofed loaf at 24 °C and 70% hydration, in a kitchen as warm, may be scored",
)
BENCH_TIME_HALVES_C = Rule(10.0, "C", "so much warmer dough leaves half the time")
BENCH_TIME_HALVES_KITCHEN_C = Rule(20.0, "C", "so much warmer a kitchen leaves half the time")
BENCH_TIME_PER_WATER = Rule(
    2.5, "", "share of the time lost per unit of hydration: 5% wetter, an eighth less"
)
BENCH_TIME_LIMITS_S = (
    Rule(60.0, "s", "the least bench time"),
    Rule(1200.0, "s", "the most bench time, also of a chilled loaf: its skin warms up"),
)
CHILLED_C = Rule(5.0, "C", "temperature of a loaf from the fridge")
COLD_C = Rule(12.0, "C", "dough this cold or colder is scored straight from the cold")

PLATES = Subject("plates")
SLOT_MM = Rule(2.5, "mm", "width of a stencil's slots, so that flour falls through")
LEAST_SLOT_MM = Rule(0.8, "mm", "flour does not fall through a narrower slot")
BRIDGE_MM = Rule(3.0, "mm", "width of the bridges that hold a stencil together")
WEB_MM = Rule(1.6, "mm", "no strip of a stencil is thinner than this")
LEAST_WEB_MM = Rule(0.4, "mm", "thinner strips of card or film tear")

PRINTS = Subject("prints")
PRINTER_MARGIN_MM = Rule(5.0, "mm", "the edge of the paper that most printers leave blank")
LARGEST_PAGE_MM = Rule(
    5080.0, "mm", "the longest page of a PDF, 14400 points", "ISO 32000-1 annex C; recalled"
)


def table() -> Iterator[tuple[str, Rule]]:
    """Yield every rule with the name of its subject: those of this file, then those of `baking`."""
    for names in (globals(), vars(baking)):
        subject = ""
        for value in names.values():
            if isinstance(value, Subject):
                subject = value.name
            elif isinstance(value, Rule):
                yield subject, value
            elif isinstance(value, dict | tuple):
                rules = value.values() if isinstance(value, dict) else value
                yield from ((subject, each) for each in rules if isinstance(each, Rule))
