"""What is wrong with a drawing that is traced, and the way out."""

from scorecraft.errors import Slip

A_DRAWING = "a drawing"
DELETE = "delete it"
SAVE_PLAIN = "save as plain SVG"
NO_DOCTYPE = Slip("a DOCTYPE is not allowed", DELETE)
NO_ENTITIES = Slip("XML entities are not allowed", SAVE_PLAIN)
MANY_ELEMENTS = Slip("too many elements", "simplify the drawing")
NESTED_GROUPS = Slip("groups are nested too deeply", "ungroup the drawing")
NESTED_DRAWING = Slip("a drawing inside the drawing is not read", "ungroup it")
STYLE_OUTSIDE = Slip("a style may not refer to another file", SAVE_PLAIN)
TOO_LARGE = Slip("this is drawn too large", SAVE_PLAIN)
STYLED_TRANSFORM = Slip("a transform in a style is not read", SAVE_PLAIN)
LONG_TRANSFORM = Slip("a transform of too many steps", SAVE_PLAIN)
WAY_OUT = {
    "use": "unlink the clone, so that it becomes a path",
    "image": "trace the picture to paths and delete it",
    "text": "convert the text to paths, or delete it",
    "script": "save the drawing as plain SVG",
}
"""What to do about an element that is not read."""


def no_strokes(path: object) -> Slip:
    """Refuse an empty drawing."""
    return Slip(f"{path} draws no strokes", "draw the cuts as paths")


def no_rim(path: object) -> Slip:
    """Refuse a drawing with no closed line for a rim."""
    return Slip(f"{path} has no closed path for the rim", "draw the rim as one closed path")


def holes(path: object, count: int) -> Slip:
    """Refuse a rim with more than one hole in it."""
    hint = "draw the rim and at most one hole in it; delete what else is inside the rim"
    return Slip(f"{path}: {count} closed lines lie inside the rim", hint)


def not_svg(why: object) -> Slip:
    """Refuse what is not an SVG file."""
    return Slip(f"not an SVG file: {why}", SAVE_PLAIN)


def not_allowed(what: str) -> Slip:
    """Refuse what could run something."""
    return Slip(f"{what} is not allowed", DELETE)


def not_read(tag: str) -> Slip:
    """Refuse an element that no path comes of."""
    return Slip(f"<{tag}> is not read", WAY_OUT.get(tag, ""))


def reference(value: str) -> Slip:
    """Refuse a reference out of the file."""
    return Slip(f"a reference to {value!r:.60} is not allowed", DELETE)


def not_length(key: str, text: str) -> Slip:
    """Refuse a length that cannot be read."""
    hint = "use a number, or one in px, mm, cm, in, pt or pc"
    return Slip(f"{key}={text!r:.40} is not a length", hint)


def not_box(box: str) -> Slip:
    """Refuse a viewBox that cannot be read."""
    return Slip(f"viewBox={box!r:.40} is not four numbers of a box", SAVE_PLAIN)


def not_above_zero(key: str) -> Slip:
    """Refuse a drawing of no size."""
    return Slip(f"the drawing's {key} must be above 0", "give the drawing a size")


def not_transform(text: str) -> Slip:
    """Refuse a transform that cannot be read."""
    return Slip(f"transform {text!r:.60} cannot be read", SAVE_PLAIN)


def too_many(what: str, most: float) -> Slip:
    """Refuse a drawing of too many points or pieces."""
    return Slip(f"the drawing has too many {what}", f"at most {most:,.0f}: simplify its paths")


def path_data(what: str, character: int) -> Slip:
    """Refuse path data that cannot be read."""
    return Slip(f"path data cannot be read at {what} (character {character})", SAVE_PLAIN)


def beyond(most_mm: float) -> Slip:
    """Refuse a drawing that reaches too far."""
    hint = "check its width, height and viewBox"
    return Slip(f"the drawing reaches beyond {most_mm:,.0f} mm", hint)


def negative(key: str) -> Slip:
    """Refuse a size below zero."""
    return Slip(f"{key} must not be negative", "give it a size of 0 or more")
