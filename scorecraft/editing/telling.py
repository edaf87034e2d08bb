"""What the hand says: what it did, what it cannot do and why, and where things stand."""

from collections.abc import Mapping

from scorecraft.errors import Slip
from scorecraft.units import plain

NO_WAY_BACK = Slip("this copy is drawn too small to take hold of", "change its scale in the text")
NO_COPIES = Slip("there are no copies here to free", "this statement is drawn once")
SHORT_STROKE = Slip("this stroke is too short to cut", "draw at least 1 cm")
CHANGED = Slip("the text has changed since", "try once more")
MORE_THAN_ONE = Slip("this value would change more than its own place", "change it in the text")
NOT_SO_LARGE = Slip("so large a size does not go", "try a smaller one")
NOTHING = "Nothing changed"
NO_CURE = Slip("this fix is no longer there", "the checks have changed: look again")
NO_GAP = Slip("a gap cannot be written for this cut", "split it in two in the text")
WAYS = {
    "multiply": "Multiply it",
    "own": "Give this one its own value",
}


def handle_name(key: str) -> str:
    """Call a handle as the page shows it while it is dragged."""
    return {"from": "Start", "to": "End"}.get(key, key.replace("_", " ").capitalize())


NO_STATEMENT = Slip("no statement begins in line {line}", "the text has changed: select again")
NEVER_DRAWN = Slip('this "{word}" draws nothing on this loaf', "change it in the text")
NAMED = Slip('the {what} is "{shown}", which may be used elsewhere', "change it in the text")
WORKED_OUT = Slip("the {what} is worked out in the text: {shown}", "change it in the text")
KNOB_ENDS = Slip(
    'the knob "{name}" ends at {value}',
    "give this one its own value, or widen the range in the text",
)
NO_FACTOR = Slip("the {what} cannot be multiplied to get there: {shown}", "give it its own value")
STAYS = Slip("the {word} lies where the loaf has it", "change its sizes instead")
IN_ITSELF = Slip('this is drawn by "{name}" within "{name}"', "take hold of the first one")
DRAWS_MORE = Slip(
    'the "{word}" in line {line} draws other cuts too', "free the copy, then delete it"
)
NO_END = Slip("the ends of a {word} cannot be set apart", "change its sizes")


def knob_is(name: str, value: float, unit: str, ends: bool) -> str:
    """Say where a knob stands now, and whether that is as far as it goes."""
    return f'the knob "{name}" is {plain(value)}{unit}' + (", as far as it goes" if ends else "")


NOT_FREED = Slip('copies of "{word}" cannot stand alone', "copy the lines in the text instead")
TOO_MANY_TO_FREE = Slip("{count} copies are too many to write out", "up to {most} can be freed")
RULE_COUNTS = Slip('"{name}" uses the number of the copy', "copy the lines in the text instead")
NOT_IN_TRAY = Slip('there is no figure called "{word}" in the tray')
NO_BLOCK = Slip('"{word}" has no block to put a figure in')
NO_HANDLE = Slip('"{word}" has no handle for "{name}"', "type the number instead")
NOT_DELETED = Slip('"{word}" is not something on the loaf', "remove it in the text")
SPOILT = Slip("this cannot be done here: {message}", "change it in the text")


def also(lines: Mapping[int, str]) -> str:
    """Say what else a knob changes."""
    if not lines:
        return ""
    told = ", ".join(f"{word} in line {line}" for line, word in sorted(lines.items()))
    return f"also changes {told}"


DELETED = "Deleted"
OFF = "not on the loaf"
NEAR_CROWN = "near the crown"


def changing_rule(name: str, uses: int) -> str:
    """Say what a change of a rule changes."""
    changed = f"{uses} uses" if uses != 1 else "its one use"
    return f'changing "{name}" changes {changed}'


FROM_CROWN = "{lies}, {far} from the crown"
COPIES = "{count} copies"
