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


def no_statement(line: int) -> Slip:
    """Say that the text has no statement there."""
    return Slip(f"no statement begins in line {line}", "the text has changed: select again")


def never_drawn(word: str) -> Slip:
    """Say that a statement has drawn nothing."""
    return Slip(f'this "{word}" draws nothing on this loaf', "change it in the text")


def locked(form: str, what: str, shown: str) -> Slip:
    """Say why a handle does not turn."""
    if form == "named":
        return Slip(
            f'the {what} is "{shown}", which may be used elsewhere', "change it in the text"
        )
    return Slip(f"the {what} is worked out in the text: {shown}", "change it in the text")


def knob_ends(name: str, value: float) -> Slip:
    """Say that a knob does not go so far."""
    return Slip(
        f'the knob "{name}" ends at {plain(value)}',
        "give this one its own value, or widen the range in the text",
    )


def no_factor(what: str, shown: str) -> Slip:
    """Say that a factor cannot carry a value past nought."""
    return Slip(f"the {what} cannot be multiplied to get there: {shown}", "give it its own value")


def stays(word: str) -> Slip:
    """Say that the loaf itself says where a figure lies."""
    return Slip(f"the {word} lies where the loaf has it", "change its sizes instead")


def in_itself(name: str) -> Slip:
    """Say that a rule that uses itself is changed at its first use."""
    return Slip(f'this is drawn by "{name}" within "{name}"', "take hold of the first one")


def draws_more(word: str, line: int) -> Slip:
    """Say that a statement draws other cuts too."""
    return Slip(
        f'the "{word}" in line {line} draws other cuts too', "free the copy, then delete it"
    )


def no_end(word: str) -> Slip:
    """Say that the end of a figure cannot be set by itself."""
    return Slip(f"the ends of a {word} cannot be set apart", "change its sizes")


def knob_is(name: str, value: float, unit: str, ends: bool) -> str:
    """Say where a knob stands now, and whether that is as far as it goes."""
    return f'the knob "{name}" is {plain(value)}{unit}' + (", as far as it goes" if ends else "")


def not_freed(word: str) -> Slip:
    """Say that copies of such a placing cannot stand alone."""
    return Slip(f'copies of "{word}" cannot stand alone', "copy the lines in the text instead")


def too_many_to_free(count: int, most: int) -> Slip:
    """Say that so many copies are too many to write out."""
    return Slip(f"{count} copies are too many to write out", f"up to {most} can be freed")


def rule_counts(name: str) -> Slip:
    """Say that a rule counts the copies."""
    return Slip(f'"{name}" uses the number of the copy', "copy the lines in the text instead")


def not_in_tray(word: str) -> Slip:
    """Refuse a figure that is not there."""
    return Slip(f'there is no figure called "{word}" in the tray')


def no_block(word: str) -> Slip:
    """Say that nothing can stand within a statement."""
    return Slip(f'"{word}" has no block to put a figure in')


def no_handle(name: str, word: str) -> Slip:
    """Say that there is no such handle."""
    return Slip(f'"{word}" has no handle for "{name}"', "type the number instead")


def not_deleted(word: str) -> Slip:
    """Refuse to delete what is no drawing."""
    return Slip(f'"{word}" is not something on the loaf', "remove it in the text")


def spoilt(message: str) -> Slip:
    """Say that a change would make the text unreadable."""
    return Slip(f"this cannot be done here: {message}", "change it in the text")


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
    return (
        f'changing "{name}" changes {uses} uses'
        if uses != 1
        else f'changing "{name}" changes its one use'
    )


def from_crown(lies: str, far: str) -> str:
    """Say in which direction something lies, and how far out."""
    return f"{lies}, {far} from the crown"


def copies(count: int) -> str:
    """Say how many copies there are."""
    return f"{count} copies"
