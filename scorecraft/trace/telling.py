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
NO_STROKES = Slip("{path} draws no strokes", "draw the cuts as paths")
NO_RIM = Slip("{path} has no closed path for the rim", "draw the rim as one closed path")
HOLES = Slip(
    "{path}: {count} closed lines lie inside the rim",
    "draw the rim and at most one hole in it; delete what else is inside the rim",
)
NOT_SVG = Slip("not an SVG file: {why}", SAVE_PLAIN)
NOT_ALLOWED = Slip("{what} is not allowed", DELETE)
NOT_READ = Slip("<{tag}> is not read", "{way_out}")
REFERENCE = Slip("a reference to {value!r:.60} is not allowed", DELETE)
NOT_LENGTH = Slip(
    "{key}={text!r:.40} is not a length", "use a number, or one in px, mm, cm, in, pt or pc"
)
NOT_BOX = Slip("viewBox={box!r:.40} is not four numbers of a box", SAVE_PLAIN)
NOT_ABOVE_ZERO = Slip("the drawing's {key} must be above 0", "give the drawing a size")
NOT_TRANSFORM = Slip("transform {text!r:.60} cannot be read", SAVE_PLAIN)
TOO_MANY = Slip("the drawing has too many {what}", "at most {most:,.0f}: simplify its paths")
PATH_DATA = Slip("path data cannot be read at {what} (character {character})", SAVE_PLAIN)
BEYOND = Slip("the drawing reaches beyond {most_mm:,.0f} mm", "check its width, height and viewBox")
NEGATIVE = Slip("{key} must not be negative", "give it a size of 0 or more")
