"""Every rule of thumb scorecraft uses, each with what it says and where it comes from.

Nothing here is a measured law of bread: there is no published measurement that links the depth,
angle or spacing of cuts to how a loaf opens. A rule marked `COMMON` is a habit of the trade.
"""

from dataclasses import dataclass

COMMON = "common practice, no source"
OURS = "a limit of this program"


@dataclass(frozen=True, slots=True)
class Rule:
    """A number with its unit, what it says in a sentence, and its source."""

    value: float
    unit: str
    says: str
    source: str


# --- limits of the program ------------------------------------------------------------------
MOST_BYTES = Rule(1_000_000, "bytes", "the largest pattern file that is read", OURS)
MOST_CUTS = Rule(20_000, "cuts", "the most cuts a pattern may expand to", OURS)
MOST_COPIES = Rule(2_000, "copies", "the most copies one placing may make", OURS)
MOST_NESTING = Rule(40, "levels", "the deepest nesting of blocks and rules", OURS)
MOST_LEVELS = Rule(150, "levels", "the deepest nesting of blocks, counted through rules", OURS)
MOST_OPERATIONS = Rule(100, "operations", "the most operations of one expression", OURS)
MOST_NAMES = Rule(500, "names", "the most names (knob, let, define) of one pattern", OURS)
MOST_PROBLEMS = Rule(100, "problems", "the most problems that are told in one run", OURS)
MOST_STEPS = Rule(100_000, "statements", "the most statements one run may execute", OURS)
MOST_POINTS = Rule(500_000, "points", "the most points one run may draw", OURS)
MOST_CUT_MM = Rule(1e6, "mm", "the greatest length of all cuts together: a kilometre", OURS)
MOST_MARKS = Rule(1_000, "strings", "the most string lines of one pattern", OURS)
LARGEST_SIZE_MM = Rule(10_000, "mm", "the greatest length a pattern may ask for", OURS)
FARTHEST_MM = Rule(10_000, "mm", "how far from the crown a cut may reach", OURS)
LARGEST_TURN_DEG = Rule(36_000, "deg", "the greatest angle a pattern may ask for", OURS)
LARGEST_SHARE = Rule(10.0, "of the reach", "the greatest share a length may be", OURS)
SCALE_LIMITS = (
    Rule(1e-9, "", "the least scale of a frame within frames", OURS),
    Rule(1e6, "", "the greatest scale of a frame within frames", OURS),
)
SHORTEST_STROKE_MM = Rule(0.1, "mm", "no blade makes a shorter stroke: it is dropped", OURS)

# --- cuts -----------------------------------------------------------------------------------
EXPANSION_DEPTH_MM = Rule(
    8.0, "mm", "depth of an expansion cut where none is given (6-13 mm is usual)", COMMON
)
DECORATIVE_DEPTH_MM = Rule(
    3.0, "mm", "depth of a decorative cut where none is given (2-4 mm is usual)", COMMON
)
EXPANSION_BLADE_DEG = Rule(
    40.0, "deg", "blade angle to the dough for a cut that should raise an ear (30-45)", COMMON
)
DECORATIVE_BLADE_DEG = Rule(
    90.0, "deg", "blade straight down for fine lines and cuts that open evenly", COMMON
)

EXPANSION_FROM_MM = Rule(
    5.0, "mm", "a cut this deep or deeper is an expansion cut unless the pattern says not", COMMON
)

# --- loaf -----------------------------------------------------------------------------------
HEIGHT_PER_WIDTH = Rule(0.43, "", "height of a proofed loaf over its width", COMMON)
LENGTH_PER_WIDTH = {
    "round": Rule(1.0, "", "length over width of a round loaf", "by definition"),
    "square": Rule(1.0, "", "length over width of a square loaf", "by definition"),
    "oval": Rule(1.6, "", "length over width of an oval loaf", COMMON),
    "long": Rule(2.6, "", "length over width of a long loaf", COMMON),
}
SMALLEST_LOAF_MM = Rule(20.0, "mm", "the least width, length or height of a loaf", OURS)
LARGEST_LOAF_MM = Rule(1500.0, "mm", "the greatest width, length or height of a loaf", OURS)
LEAST_PROFILE = Rule(1.0, "", "the least power of a dome's profile: a cone", OURS)
MOST_PROFILE = Rule(12.0, "", "the greatest power of a dome's profile: almost a box", OURS)
OVAL_POWER = Rule(2.0, "", "power of an oval loaf's rim: an ellipse", COMMON)
LONG_POWER = Rule(2.6, "", "power of a long loaf's rim: blunter ends than an ellipse", COMMON)
SQUARE_POWER = Rule(4.0, "", "power of a square loaf's rim: well rounded corners", COMMON)
FLATNESS = {
    "round": Rule(2.0, "", "power p of a round loaf's dome: half an ellipsoid", COMMON),
    "oval": Rule(2.3, "", "power p of an oval loaf's dome: a little flat on top", COMMON),
    "long": Rule(2.5, "", "power p of a long loaf's dome: flat along the back", COMMON),
    "square": Rule(2.5, "", "power p of a square loaf's dome: flat on top", COMMON),
}
RIM_POWER = Rule(2.0, "", "power q of every dome: it rises upright from the bench", COMMON)
LEAST_DOUGH_G = Rule(20.0, "g", "the least dough that is shaped into a loaf", OURS)
MOST_DOUGH_G = Rule(20_000.0, "g", "the most dough that is shaped into a loaf", OURS)
DOUGH_DENSITY = Rule(
    1.2,
    "g/cm3",
    "mixed dough: 1.25 free of gas, less the 4-10 % of gas that mixing leaves in it",
    "method: Campbell, Rielly, Fryer & Sadd, Cereal Chem. 70 (1993) 517-521; the numbers recalled, "
    "page not checked; 173.5 g in 145 cm3 (1.197) in a laboratory loaf, quoted without title",
)
PROOFED = {
    "under": Rule(2.0, "", "volume when cut over mixed volume, proofed too little", COMMON),
    "right": Rule(2.6, "", "volume when cut over mixed volume, a hearth loaf", COMMON),
    "over": Rule(3.2, "", "volume when cut over mixed volume, proofed too far", COMMON),
}
STANDS = {
    "under": Rule(1.1, "", "an underproofed loaf stands this much higher than usual", COMMON),
    "right": Rule(1.0, "", "a well proofed loaf stands as usual", COMMON),
    "over": Rule(0.87, "", "an overproofed loaf stands this much lower than usual", COMMON),
}
LEAST_PROOF = Rule(1.0, "", "the least growth of the dough before it is cut", "by definition")
MOST_PROOF = Rule(
    5.0,
    "",
    "the greatest growth of the dough before it is cut (3.55 in a laboratory loaf)",
    OURS,
)
LOAF_PER_BASKET = Rule(
    1.0, "", "width of the loaf turned out over the basket's width across the top", COMMON
)
SPREADS_FROM_BASKET = Rule(
    1.05, "", "a loaf turned out spreads to no more than this much of its basket", COMMON
)
LOWEST_STAND = Rule(0.3, "of the width", "a loaf lower than this did not fill its basket", COMMON)
HIGHEST_STAND = Rule(0.55, "of the width", "a loaf turned out stands no higher", COMMON)

# --- bake -----------------------------------------------------------------------------------
OVEN_SPRING = Rule(
    1.4,
    "",
    "volume of the baked loaf over that of the proofed loaf",
    "laboratory loaf of lean dough, 515 cm3 at the end of proof and 220 cm3 more in the oven "
    "(1.43; quoted without title in a data base of abstracts); 'by as much as half its initial "
    "volume', McGee, On Food and Cooking, 2004",
)
SPREAD = Rule(0.5, "", "share of the growth (of its logarithm) that goes sideways", COMMON)
MOST_SPRING = Rule(3.0, "", "the greatest oven spring that is believed", OURS)
SKIN_GIVES_WITH_STEAM = Rule(
    0.15,
    "",
    "share of the growth that a skin kept soft by steam follows before it sets",
    "that steam delays setting is general teaching; the number is " + COMMON,
)
SKIN_GIVES_DRY = Rule(
    0.05,
    "",
    "share of the growth that the skin follows before it sets in a dry oven",
    COMMON,
)

# --- checks ---------------------------------------------------------------------------------
NEAR_CROWN_SHARE = Rule(0.15, "of the reach", "called 'near the crown' within this", OURS)
NEAR_RIM_SHARE = Rule(0.8, "of the reach", "called 'just above the base' beyond this", OURS)
RIM_MARGIN_MM = Rule(12.0, "mm", "cuts stay this far above the rim, along the dough", COMMON)
OFF_LOAF_MM = Rule(0.5, "mm", "a cut may miss the loaf or a margin by this much", OURS)
SHALLOW_MM = Rule(4.0, "mm", "cuts up to this deep stay in the skin: told as notes", COMMON)
DEEP_MM = Rule(5.0, "mm", "cuts from this deep on part the skin", COMMON)
SAME_LINE_MM = Rule(0.25, "mm", "lines nearer than this are one line on the dough", COMMON)
OVERLAP_MM = Rule(8.0, "mm", "lines that share this much at a stretch overlap", OURS)
OVERLAP_SHARE = Rule(0.6, "of a cut", "a short cut overlaps if it shares this much", OURS)
JOIN_MM = Rule(1.0, "mm", "cuts whose end is this near another cut meet it on purpose", COMMON)
SHARP_CROSSING_DEG = Rule(
    25.0, "deg", "cuts that cross at less leave thin points of dough that tear", COMMON
)
STRIP_PER_DEPTH = Rule(
    1.2, "", "a strip between two cuts is this many times as wide as they are deep", COMMON
)
THINNEST_STRIP_MM = Rule(2.0, "mm", "no strip of dough is narrower, however shallow", COMMON)
STRIP_STOP_SHARE = Rule(0.4, "", "a strip below this share of its width cannot be cut", COMMON)
STRIP_WARN_SHARE = Rule(0.6, "", "between shallow cuts, below this share is a warning", COMMON)
STRIP_RUN_MM = Rule(10.0, "mm", "a strip is told from this length on", OURS)
STRIP_RUN_SHARE = Rule(0.6, "of a cut", "or from this share of the shorter cut on", OURS)
STRIP_SLENDER = Rule(1.5, "", "a strip is at least this many times as long as wide", OURS)
STRIP_PARALLEL_DEG = Rule(
    12.0, "deg", "lines that part by more make a point that the dough holds, no strip", COMMON
)
STATION_MM = Rule(3.0, "mm", "how closely cuts are looked at for their neighbours", OURS)
MOST_BOXES = Rule(1_000_000, "pairs", "the most boxes around cuts that are held together", OURS)
MOST_STATION_BOXES = Rule(2_000_000, "pairs", "the most boxes around stations held together", OURS)
MOST_PAIRS = Rule(100_000, "pairs", "the most pairs of cuts one check looks at", OURS)
MOST_PAIR_POINTS = Rule(
    10_000_000, "points", "the most points that the pairs one check looks at are drawn by", OURS
)
MOST_PAIRS_OF_TWO = Rule(20_000, "pairs", "of two statements no more are looked at", OURS)
MOST_COMPARED = Rule(
    1_200_000, "points", "the most places along cuts that are held against other cuts", OURS
)
MOST_FINDINGS = Rule(50, "findings", "one check tells no more than these", OURS)
MOST_FACINGS = Rule(100_000, "stations", "the most stations found alongside a cut", OURS)
CLEAR_MM = Rule(4.0, "mm", "cures leave this much dough between cuts that met", COMMON)
DENSE_WARN = Rule(1.5, "", "so many times as much as that is a warning", COMMON)
CROWN_ZONE = Rule(1 / 3, "of the reach", "the crown zone ends here", OURS)
RIM_ZONE = Rule(2 / 3, "of the reach", "the rim zone begins here", OURS)
DENSE_MM_PER_CM2 = Rule(
    18.0, "mm/cm2", "more cut than this on a part of the loaf tears the skin to crumbs", COMMON
)
DENSE_FACE = Rule(
    0.7, "", "more cut face (length x depth) than this on an area of skin weakens it", COMMON
)
SOFT_CRACK_DENSITY = Rule(
    0.6,
    "",
    "from this crack density of deep cuts on, the skin keeps about a third of its stiffness: "
    "1 / (1 + pi rho)",
    "non-interacting cracks in random directions: Bristow 1960; Kachanov, Appl. Mech. Rev. 45 "
    "(1992) 304-335; recalled, page not checked; the limit itself is " + COMMON,
)
PIECE_DEPTHS_MM = {
    "stop": Rule(8.0, "mm", "a piece cut all around this deep lifts off", COMMON),
    "warn": Rule(5.0, "mm", "a piece cut all around this deep curls and dries", COMMON),
    "note": Rule(4.0, "mm", "a piece cut all around this deep may curl", COMMON),
}
LID_CM2 = Rule(30.0, "cm2", "a piece larger than this is a lid, cut so on purpose", COMMON)
CRUMB_PIECE_MM2 = Rule(4.0, "mm2", "slivers between lines smaller than this are no pieces", OURS)
HINGE_MM = Rule(8.0, "mm", "a gap in the cuts around a piece that holds it", COMMON)
UNDERCUT_CLEAR_MM = Rule(2.0, "mm", "dough left between a slanted cut and its neighbour", COMMON)
SLANTED_DEG = Rule(75.0, "deg", "a blade held flatter than this cuts under the skin", COMMON)
UNDERCUT_PARALLEL_DEG = Rule(
    20.0, "deg", "a slanted cut and its neighbour run side by side up to this angle", COMMON
)
DEEP_SHARE = Rule(0.25, "of the height", "deeper cuts weaken the loaf", COMMON)
DEEPEST_SHARE = Rule(0.4, "of the height", "deeper cuts make the loaf fall", COMMON)
DEEP_CUT_MM = Rule(19.0, "mm", "about as deep as a cut goes, in wet dough (3/4 in)", COMMON)
DEEPEST_CUT_MM = Rule(25.0, "mm", "deeper is said to risk collapse (1 in)", COMMON)
SHALLOWEST_CUT_MM = Rule(1.0, "mm", "a shallower cut does not part the skin", COMMON)
SHALLOWEST_EXPANSION_MM = Rule(3.0, "mm", "a shallower cut makes little room", COMMON)
ASIDE_NOTE = Rule(0.12, "of the reach", "cuts this far off the middle are noted", COMMON)
ASIDE_WARN = Rule(0.3, "of the reach", "cuts this far off the middle are a warning", COMMON)
ADDED_CUT_SHARE = Rule(0.6, "of the reach", "where a cut is added that evens out others", OURS)
VESSEL_CLEAR_MM = Rule(5.0, "mm", "room between the baked loaf and the wall of its pot", COMMON)

# --- opening --------------------------------------------------------------------------------
SKIN_MM = Rule(
    12.0,
    "mm",
    "thickness of the skin that holds the loaf, until a baker's own bakes tell (`tune` fits it)",
    OURS,
)
CURE_DEPTH_MM = Rule(10.0, "mm", "depth of an expansion cut that is advised for room", COMMON)
OPENING_JOIN = Rule(
    0.05, "panels", "cuts that come closer than this to one another are taken to meet", OURS
)
OPENING_LEAST_PANELS = Rule(
    6.0, "panels", "the fewest panels a line is cut into; its opening is then good to 3 %", OURS
)
OPENING_FEWEST_PANELS = Rule(
    3.0, "panels", "the fewest panels of a line shorter than so many panels", OURS
)
OPENING_STRETCH = Rule(
    0.1,
    "of the cut",
    "the widest mouth is a mean over this, or half the skin if that is less",
    OURS,
)
OPENING_FINEST_PANEL_MM = Rule(1.0, "mm", "finer panels than this change no opening", OURS)
OPENING_COARSEST_PANEL_MM = Rule(
    8.0, "mm", "the longest panels a pattern is cut into, however many cuts it has", OURS
)
OPENING_PANELS_AIMED = Rule(
    1_950.0, "panels", "long patterns are cut into about this many panels, to stay quick", OURS
)
OPENING_PANELS_ROUGH = Rule(
    1_100.0, "panels", "about so many do for a first look, while a pattern is being changed", OURS
)
OPENING_MOST_PANELS = Rule(
    3_000.0, "panels", "the most panels without a turn: 576 MB with their factors", OURS
)
OPENING_MOST_PRESSED_MB = Rule(
    200.0, "MB", "the most that panels pressed shut may take, beside the equations", OURS
)
ROOM_ENOUGH = Rule(
    0.20,
    "of the growth",
    "cuts that take up this share of what the skin should grow leave enough room; chosen so that "
    "a 180 mm slash 10 mm deep along an oval (0.31), a 150 mm cross 8 mm deep on a 220 mm round "
    "(0.23) and a crown of eight leaves cut 8 mm deep (0.27) have enough; set on these drawings, "
    "not on bakes",
    OURS,
)
ROOM_BURSTS = Rule(
    0.14,
    "of the growth",
    "cuts that take up less than this share leave the skin to burst; chosen so that no cuts (0), "
    "rows of chevrons 2.5 mm deep (0.02) and a 20 mm crosshatch all over, 3 mm deep (0.13), "
    "burst; set on these drawings, not on bakes",
    OURS,
)
ROOM_CLEAR_MM = Rule(
    20.0, "mm", "nearer to a cut a high tension makes the cut run on, not the skin burst", OURS
)
ROOM_GRID_MM = Rule(8.0, "mm", "how closely the skin is looked over for its highest tension", OURS)
AT_CROWN = Rule(0.1, "of the reach", "a place this near is called the crown itself", OURS)
OPENING_WISH_ROUNDS = Rule(
    60.0, "rounds", "rounds in which depths for wished openings must be found", OURS
)
OPENING_WISH_ERROR = Rule(
    0.005, "of the opening", "how near an opening comes to the wish before the search ends", OURS
)
OPENING_WISH_ROUGH = Rule(
    0.05, "of the opening", "an opening that misses the wish by more than this is told", OURS
)
OPENING_WISH_PANELS = Rule(
    1_000.0, "panels", "patterns are cut into about this many panels while depths are sought", OURS
)
OPENING_WISH_MOST_PANELS = Rule(
    1_500.0, "panels", "with more panels than this, without a turn, no depths are sought", OURS
)
OPENING_WISH_WORK = Rule(
    6.0,
    "solves",
    "the work of a search for depths, in solves of 1000 panels: some 3 s on one core",
    OURS,
)
OPENING_SHALLOWEST_MM = Rule(0.1, "mm", "no wish makes a cut shallower than this", OURS)
DEPTH_STEP_MM = Rule(0.5, "mm", "a hand cuts to about this; depths are rounded to it", COMMON)
OPENING_MOST_ROUNDS = Rule(
    60.0, "rounds", "contact rounds before the opening model gives up, and one a panel", OURS
)
OPENING_DEEPEST_LIGAMENT = Rule(
    0.98, "of the skin", "a deeper cut that is not through holds no less than this one", OURS
)

# --- bench ----------------------------------------------------------------------------------
PULL_ASIDE_DEG = Rule(
    15.0, "deg", "a pull toward the cutter drifts to the side of the hand by this", COMMON
)
EYE_DEG = Rule(50.0, "deg", "the cutter looks down on the loaf at this angle to the bench", COMMON)
LEAST_SIGHT = Rule(
    0.25, "", "least share of its true size that a slope seen aslant counts with", OURS
)
DEEP_SIGHT_POWER = Rule(
    1.3, "", "a deep stroke suffers from a poor sight by this power of it", COMMON
)
PULL_COST = {
    "decorative": Rule(0.5, "", "a light stroke square to the pull takes half more", COMMON),
    "expansion": Rule(30.0, "", "a deep stroke square to the pull is dragged, not cut", COMMON),
}
PUSH_COST = Rule(0.02, "", "care added where a stroke goes against its drawn direction", OURS)
PLACE_BLADE_S = Rule(0.9, "s", "to set the blade down where a stroke begins", COMMON)
STROKE_MM_PER_S = {
    "decorative": Rule(50.0, "mm/s", "speed of a light stroke", COMMON),
    "expansion": Rule(100.0, "mm/s", "speed of a deep stroke: slow blades drag", COMMON),
}
TURN_TABLE_S = Rule(1.0, "s", "to let go, turn the table and take aim again", COMMON)
TURN_DEG_PER_S = Rule(90.0, "deg/s", "speed of the turntable", COMMON)
TURN_BACK_COST = Rule(1.3, "", "a turn against the usual way counts so many times", OURS)
SPIN_DEG_PER_S = Rule(60.0, "deg/s", "speed of the table while it turns under the blade", COMMON)
CHANGE_DEPTH_S = Rule(1.0, "s", "to change to another depth or blade angle", COMMON)
LEAST_TURN_DEG = Rule(4.0, "deg", "a smaller turn of the table is not made", COMMON)
SAME_AIM_DEG = Rule(12.0, "deg", "figures this close in direction need no turn", COMMON)
MOST_COPIES_AIMED = Rule(
    16.0, "copies", "of up to so many copies each is turned to the cutter; more share turns", COMMON
)
NEXT_FIGURE_S = Rule(2.0, "s", "to look at the card and find where the next figure goes", COMMON)
SAME_DEPTH_MM = Rule(0.75, "mm", "depths closer than this feel the same to the hand", COMMON)
SAME_BLADE_DEG = Rule(7.5, "deg", "blade angles closer than this feel the same", COMMON)
STRING_MARK_S = Rule(3.0, "s", "to press one string line into the dough", COMMON)
EXACT_ORDER_SETTINGS = Rule(
    12.0, "settings", "up to so many settings of the table a pass, the best order is proven", OURS
)
CURVED_BELOW_DEG = Rule(
    60.0, "deg", "a blade held flatter than this is best a curved one: it lifts an ear", COMMON
)
LEVEL_TILT_DEG = Rule(8.0, "deg", "a handle tilted less than this is called upright", OURS)
MOST_TILT_DEG = Rule(
    75.0, "deg", "a handle tilted more than this meets the bench: it leans the other way", COMMON
)
STEEP_SIDE_DEG = Rule(
    12.0, "deg", "where the dough falls off sideways by this, the handle leans that way", COMMON
)
START_DEPTH_SHARE = Rule(0.6, "", "depth of an expansion cut where it begins", COMMON)
END_DEPTH_SHARE = Rule(0.5, "", "depth of an expansion cut where the blade lifts off", COMMON)
BENCH_TIME_S = Rule(
    300.0, "s", "how long a proofed loaf at 24 C with 70 % water may be cut", COMMON
)
BENCH_TIME_AT_C = Rule(24.0, "C", "the dough temperature the bench time is told for", COMMON)
BENCH_TIME_HALVES_C = Rule(10.0, "C", "so much warmer dough leaves half the time", COMMON)
BENCH_TIME_AT_WATER = Rule(0.7, "", "water per flour the bench time is told for", COMMON)
BENCH_TIME_PER_WATER = Rule(
    2.5, "", "share of the time lost per unit of water more: 5 % more water, an eighth less", COMMON
)
BENCH_TIME_LIMITS_S = (
    Rule(60.0, "s", "the least bench time", COMMON),
    Rule(1200.0, "s", "the most bench time, also of a chilled loaf: its skin warms up", COMMON),
)
CHILLED_C = Rule(5.0, "C", "temperature of a loaf from the refrigerator", COMMON)
PREHEAT_MIN = Rule(45.0, "min", "the oven heats up with its pot or stone for this long", COMMON)
POT_C = Rule(245.0, "C", "the oven as the loaf goes into a covered pot", COMMON)
POT_COVERED_MIN = Rule(20.0, "min", "the lid stays on for this long", COMMON)
POT_OPEN_C = Rule(225.0, "C", "the oven once the lid is off", COMMON)
POT_OPEN_MIN = Rule(20.0, "min", "the loaf bakes without the lid for about this long", COMMON)
STONE_C = Rule(240.0, "C", "the oven as the loaf goes onto a stone with steam", COMMON)
STONE_STEAM_MIN = Rule(12.0, "min", "steam is kept in for this long", COMMON)
STONE_AFTER_C = Rule(220.0, "C", "the oven once the steam is let out", COMMON)
STONE_AFTER_MIN = Rule(25.0, "min", "the loaf bakes without steam for about this long", COMMON)
DONE_C = (
    Rule(96.0, "C", "a lean loaf is done when its centre is at least this warm", COMMON),
    Rule(
        99.0, "C", "the centre gets no warmer than this",
        "the crumb tends to 100 C: Zanoni, Peri & Pierucci, J. Food Eng. 19 (1993) 389-398",
    ),
)  # fmt: skip

# --- tune -----------------------------------------------------------------------------------
SKIN_LIMITS_MM = (
    Rule(3.0, "mm", "the thinnest skin that is looked for", OURS),
    Rule(40.0, "mm", "the thickest skin that is looked for", OURS),
)
RULER_SD_MM = Rule(
    0.3, "mm", "a ruler read to a whole mm is off by this (1/sqrt(12), by definition)", OURS
)
LONE_SD_MM = Rule(1.5, "mm", "how far a single measured opening may be off", COMMON)
SURE = Rule(0.9, "", "how often the stated bounds hold the truth", OURS)
SKIN_SPREAD = Rule(
    0.35, "", "the skin of a baker differs from the usual one by this (of its logarithm)", OURS
)
GROWTH_SPREAD = Rule(0.2, "", "the growth of a loaf differs from the assumed one by this", OURS)
ERRORS_KNOWN = Rule(
    3.0, "openings", "what is thought of the errors beforehand counts like so many", OURS
)
SETTLED_FROM_ROWS = Rule(4.0, "openings", "fewer do not settle the skin", OURS)
SETTLED_FROM_CUTS = Rule(2.0, "cuts", "openings of fewer different cuts do not settle it", OURS)
SETTLED_SHARE = Rule(
    0.5, "", "settled is a skin whose error is at most this share of what is thought before", OURS
)
WIDEST_MEASURED_MM = Rule(150.0, "mm", "no cut opens wider than this", OURS)
MOST_LOG_BYTES = Rule(50_000_000, "bytes", "the largest log of bakes that is read", OURS)
MOST_BAKER_BYTES = Rule(100_000, "bytes", "the largest baker file that is read", OURS)
MOST_MEASURED = Rule(500.0, "rows", "the most measured openings of a bake", OURS)

# --- placing --------------------------------------------------------------------------------
GRID_MARGIN_MM = Rule(15.0, "mm", "a grid with no region of its own stays this far in", OURS)
CRUMB_MM = Rule(4.0, "mm", "scraps of clipped cuts shorter than this are dropped", OURS)

# --- textures -------------------------------------------------------------------------------
CHORD_MM = Rule(0.04, "mm", "the furthest a drawn chord strays from its curve", OURS)
MOST_TEXTURE_CELLS = Rule(
    40_000, "cells", "the most cells, a texture's size square, that one fill may cover", OURS
)
FLATTEST_DEG = Rule(10, "deg", "lines that cross or branch flatter than this run together", COMMON)
MOST_TRACED_BYTES = Rule(2_000_000, "bytes", "the largest SVG file that is traced", OURS)
MOST_TRACED_ELEMENTS = Rule(20_000, "elements", "the most elements of a traced file", OURS)
MOST_TRACED_DEPTH = Rule(40, "levels", "the deepest nesting of groups in a traced file", OURS)
MOST_TRACED_POINTS = Rule(200_000, "points", "the most points of a traced drawing", OURS)
MOST_TRACED_STEPS = Rule(20_000, "lines and curves", "the most pieces of a traced drawing", OURS)
MOST_TRANSFORMS = Rule(100, "steps", "the most steps of one transform in a traced file", OURS)
LONGEST_NUMBER = Rule(100, "characters", "the longest number that is read in a drawing", OURS)
LARGEST_DRAWING_MM = Rule(10_000, "mm", "how far a traced drawing may reach", OURS)
LEAST_HOLE_MM2 = Rule(25.0, "mm2", "smaller closed lines inside a traced rim are specks", OURS)
MOST_HOLE_SHARE = Rule(
    0.8, "of the rim's area", "a larger closed line in a rim is the other edge of its line", OURS
)
TRACED_GAP_MM = Rule(0.5, "mm", "ends of a traced rim nearer than this meet", OURS)

# --- drawing --------------------------------------------------------------------------------
LARGEST_PAGE_MM = Rule(
    5080.0, "mm", "the longest page of a PDF, 14400 points", "ISO 32000-1 annex C; recalled"
)
PNG_DPI = Rule(200.0, "dots per inch", "resolution of a picture where none is asked for", OURS)
PRINTER_MARGIN_MM = Rule(5.0, "mm", "the edge of the paper that most printers leave blank", COMMON)
DEEP_LINE_MM = Rule(6.0, "mm", "a cut this deep or deeper is drawn as a bold line", OURS)
SHALLOW_LINE_MM = Rule(3.0, "mm", "a cut shallower than this is drawn as a dashed line", OURS)
NUMBER_CLEAR_MM = Rule(1.3, "mm", "a number on the plan keeps so far from every line", OURS)
MOST_SHEETS = Rule(40, "sheets", "the most sheets one drawing is spread over", OURS)
TILE_OVERLAP_MM = Rule(12.0, "mm", "neighbouring sheets of one drawing share this much", OURS)

# bloom
LOW_LOOK_DEG = Rule(20.0, "deg", "front and side views look down on the bench so much", OURS)
EAR_BLADE_DEG = Rule(
    60.0, "deg", "a blade held lower than this under-cuts a flap that lifts as an ear", COMMON
)
EAR_OPENING_MM = Rule(4.0, "mm", "a cut that opens less than this lifts no ear", COMMON)

# plates
SLOT_MM = Rule(2.5, "mm", "width of a stencil's slots, so that flour falls through", COMMON)
LEAST_SLOT_MM = Rule(0.8, "mm", "flour does not fall through a narrower slot", COMMON)
MOST_SLOT_MM = Rule(40.0, "mm", "the widest slot that is believed", OURS)
LIGHT_SLOT_MM = Rule(3.0, "mm", "cuts no deeper than this have slots of the plain width", OURS)
DEEP_SLOT_MM = Rule(8.0, "mm", "cuts this deep or deeper have the widest slots", OURS)
DEEP_SLOT_WIDER = Rule(1.4, "", "slot of a deep cut over that of a light one", OURS)
BRIDGE_MM = Rule(3.0, "mm", "width of the bridges that hold a stencil together", COMMON)
WEB_MM = Rule(1.6, "mm", "no strip of a stencil is thinner than this", COMMON)
LEAST_WEB_MM = Rule(0.4, "mm", "thinner strips of card or film tear", COMMON)
BRIDGE_EVERY_MM = Rule(70.0, "mm", "an island is held once in so much of its edge", OURS)
LEAST_BRIDGES = Rule(2, "bridges", "an island is held at so many places, if it can be", OURS)
PLATE_EDGE_MM = Rule(16.0, "mm", "the plate reaches so far beyond the loaf's rim", OURS)
LEAST_KEPT = Rule(
    0.5, "", "a figure that loses more of its slots to webs and bridges is too fine", OURS
)
NARROWEST_SLOT = Rule(
    0.6, "", "a slot may be narrowed to this part of its width to pass by another", OURS
)
HAIRLINE_MM = Rule(0.1, "mm", "line width of the drawings for cutting machines", OURS)
DRAPE_FIT_MM = Rule(
    1.5, "mm", "an edge of a drape, or all around it, may be longer than the dough by this", OURS
)
DART_MM = Rule(0.5, "mm", "a narrower dart is not cut: paper gives that much", OURS)
WHOLE_MIDDLE = Rule(0.1, "", "no dart is cut in this part of the way from crown to rim", OURS)
LEAST_PETALS = Rule(5, "petals", "a drape has no fewer petals", OURS)
MOST_PETALS = Rule(36, "petals", "a drape has no more petals", OURS)
SAME_START_DEG = Rule(0.5, "deg", "figures begin at one mark if they are nearer than this", OURS)
LEAST_CUTS_KEPT = Rule(
    0.7, "", "a figure that loses more of its slots altogether is too fine", OURS
)
LEAST_LOST = Rule(0.1, "", "so much of a pattern may be left out before slots are narrowed", OURS)
