"""What the practice sheets say."""

TITLE = "practice sheets"
UNDER = (
    "Full size, as the strokes lie before you. Begin at the dot, pull toward you to the bar, in "
    "one go: over the grey lines first, then by the fading guides, then freehand in the frame."
)
CAUTIONS = (
    "Begin with a pen. With a razor blade: lay the sheet on a cutting mat or board, cut away from "
    "your other hand and keep its fingers out of the line of the blade.",
    "Used blades go into a rigid sharps container. A blade that has cut paper is blunt and not "
    "clean: never take it to dough, and keep this sheet off the dough.",
)
TRACE, FADING, FREE = "trace", "fading guides", "freehand"
TURN_SHEET = "At the bench the table turns under the blade: turn the sheet."
KEEP_CLEAR = "The thin black lines are cut already: keep clear of them."
PART = "This sheet holds {part_mm:.0f} mm of its {whole_mm:.0f} mm; larger paper holds more."
BASICS = "Basics"
OWN = "The hardest strokes of this pattern"


def dough_words(depths_mm: tuple[float, float, float], blade_deg: float, side: str) -> str:
    """Say how a stroke is cut in dough: how deep, and the blade; `side` is where its handle leans.

    Depths (mm), told to a half, are those where it begins, in its middle and where it ends.
    """
    first, middle, last = (f"{round(2 * depth) / 2:g}" for depth in depths_mm)
    even = abs(depths_mm[0] - depths_mm[1]) < 0.1 and abs(depths_mm[2] - depths_mm[1]) < 0.1
    ends = "" if even else f" (start {first} mm, finish {last} mm)"
    blade = f"blade at {blade_deg:.0f}°, handle to the {side}" if side else "blade upright"
    return f"In dough {middle} mm deep{ends}, {blade}."


def own_name(number: int, key: str, count: int) -> str:
    """Name a stroke of the pattern by its number on the guide."""
    copies = f", {count} in the pattern" if count > 1 else ""
    return f"No. {number} on the guide: {key}{copies}"
