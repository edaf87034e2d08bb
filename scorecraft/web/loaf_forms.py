"""The forms of loaves and the sizes of tins as data for the page: rows of their tables."""

from scorecraft.json_data import JsonObject
from scorecraft.loaf.forms import ROWS
from scorecraft.loaf.tin import PANS, Pan


def loaf_forms() -> JsonObject:
    """List every form with its icon, and every tin."""
    return {
        "forms": [
            {
                "name": form.name,
                "help": form.help,
                "icon": form.icon,
                "even": form.even,
                "ring": bool(form.hole),
                "held": form.held,
            }
            for form in ROWS
        ],
        "pans": [{"name": pan.name, "title": titled(pan)} for pan in PANS.values()],
    }


def titled(pan: Pan) -> str:
    """Call a tin, with the dough it takes."""
    low, high = pan.dough_g
    return f"{pan.says.removeprefix('an ').removeprefix('a ')} ({low:g}–{high:g} g)"
