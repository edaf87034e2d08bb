"""The words that sheets share, and those of the guide: every text that is no caution."""

from collections.abc import Sequence, Sized

from scorecraft.cuts import Cut, Layout
from scorecraft.groups import Group, spans
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.telling import size_words

FULL_SIZE = "full size"
SCALE = "Measure this rule. Print at 100%, never “fit to page”"
JOIN = "Trim along the frame where one sheet overlaps another, line up the crosses, and tape."
SPREAD = (
    "Too large for one sheet of {paper}, so it is spread over {sheets} sheets, laid out as on "
    f"this map. {JOIN}"
)
PULL = "pull this way; see the bench card for each copy"
LEAN = "slanted blade: handle to the side of the bar"
SCISSORS = "scissors: handles to the side of the bar, tips to the other"
IN_ORDER = "cut numbers, in the order of cutting"
STRING_LINE = "string line: press it in first, do not cut it"
ESTIMATE = "model estimate"
LAY = "Lay each piece to its side as soon as it is cut, its tip outward."
PULL_OPEN = "Once it lies on the peel or the baking paper, pull open"
Hands = tuple[str, str]
"""What hands make of the dough, and how."""
HEADS = {
    "number": "no.",
    "cut": "cut",
    "line": "line",
    "count": "count",
    "length": "length mm",
    "depth": "depth mm",
    "blade": "blade",
    "opens": "opens mm",
}
"""The heads of the table of cuts."""
NOT_LISTED = "not listed here"
MORE_CUTS = f"and {{count}} more kinds of cut, {NOT_LISTED}"
FINDING = "{severity}: {message}"
MORE_FINDINGS = "and {count} more: run scorecraft check"


def loaf_words(loaf: Loaf, scale: str = FULL_SIZE) -> str:
    """Say a loaf's shape and size, and at what scale it is drawn, if it is."""
    said = f"{loaf.called.capitalize()}, {size_words(loaf)}"
    return f"{said}, {scale}" if scale else said


def blade_words(degrees: float) -> str:
    """Say how the blade stands to the dough: upright, or an angle."""
    return "upright" if round(degrees) == 90 else f"{degrees:.0f}°"


def parted_words(cut: Cut, unit: str = "") -> str:
    """Say in short how deep a cut goes that parts the dough: through, or what stays below it."""
    if cut.hinge_mm is not None:
        return f"{cut.hinge_mm:.3g}{unit} uncut"
    return "through" if cut.through else ""


def hands_words(layout: Layout, numbered: Sequence[Group], size: tuple[float, float]) -> Hands:
    """Say what hands do after the cuts, and how large (mm) the dough is then."""
    wide, long = size
    then = f"Then about {long:.0f} mm long and {wide:.0f} mm wide: see that peel and stone hold it."
    if any(cut.hinge_mm is not None for cut in layout.cuts):
        return "Laid aside", f"{LAY} {then}"
    wide_open = {
        f"{group.key} (no. {group.number})": {round(layout.cuts[i].pulled_mm) for i in group.cuts}
        for group in numbered
        if layout.cuts[group.cuts[0]].pulled_mm
    }
    same = set().union(*wide_open.values())
    pulled = [f"{name} to {spans(each)} mm" for name, each in wide_open.items()]
    if len(same) == 1:
        pulled = [f"every cut to {spans(same)} mm"]
    return "Pulled open", f"{PULL_OPEN} {', '.join(pulled)}. {then}"


def estimate_words(verdict: str) -> str:
    """Say that openings and room are estimates, unless the verdict says so."""
    return "" if ESTIMATE in verdict else f"Openings and room are {ESTIMATE}s."


def joined_words(pages: Sized) -> str:
    """Say that a print is on several pages; nothing of a single one."""
    if len(pages) < 2:
        return ""
    many = f"too large for one sheet, so it is on {len(pages)} pages"
    return f"{many}: page 1 shows how to join the others"
