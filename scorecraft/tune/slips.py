"""What is wrong with measured openings, a baker file or a log of bakes, and what to do."""

from collections.abc import Sequence

from scorecraft.errors import Slip
from scorecraft.groups import Group
from scorecraft.limits import WIDEST_MEASURED_MM

MOST_NAMES = 8
"""How many names of cuts are listed where a row names none of them."""
LISTS = "a list of openings"
BAKER = "a baker file"
LOG = "a log of bakes"
WRITES_BAKER = "scorecraft tune writes one"
WRITES_LOG = "scorecraft tune --measured adds to it"
ROW = "write the cut's name, a comma, the width in mm"
LONG_ROW = Slip("this row is too long", ROW)
NO_WIDTH = Slip("this row has no width", ROW)
MANY_VALUES = Slip("this row has more than a cut and a width", "put one opening on each row")
NO_REGULAR_FILE = "it is a pipe or a device, not a file on the disk"
NO_OPENINGS = Slip('"{path}" holds no openings', "write a row such as leaf midrib, 9")
MANY_OPENINGS = Slip('"{path}" holds {count} openings; {most:.0f} are enough', "leave some out")


def bare_number(number: int, width: str, told: Sequence[Group]) -> Slip:
    """Refuse a bare number, which says nothing once the pattern has changed; show the name."""
    meant = next((group.key for group in told if group.number == number), "")
    return Slip(
        f"the number {number} alone does not say which cut: numbers change with the pattern",
        f"if it was the {meant}, write {meant},{width}" if meant else names(told),
    )


def several(cell: str, same: Sequence[Group]) -> Slip:
    """Refuse a name that means several cuts."""
    each = " or ".join(f'"{group.key}" (line {group.place.line})' for group in same)
    return Slip(f'there are {len(same)} kinds of "{cell}"', f"write {each}")


def unknown_cut(cell: str, near: Sequence[str], told: Sequence[Group]) -> Slip:
    """Refuse a name that means no cut."""
    hint = f"did you mean {listed(near)}?" if near else names(told)
    return Slip(f'this pattern has no cut called "{cell}"', hint)


def names(told: Sequence[Group]) -> str:
    """List the first names there are."""
    return f"its cuts are {listed([group.key for group in told[:MOST_NAMES]])}" if told else ""


def listed(each: Sequence[str]) -> str:
    """Write names one after another, in quotes."""
    return ", ".join(f'"{name}"' for name in each)


NO_NUMBER = Slip('"{cell:.40}" is not a width in mm', "like 12 or 12.5")
IMPOSSIBLE_WIDTH = Slip("no cut opens {cell}", f"an opening is 0 to {WIDEST_MEASURED_MM:.0f} mm")


def no_baker(path: object, why: object = "") -> Slip:
    """Refuse a file that is not TOML."""
    return Slip(f'"{path}" is not a baker file' + (f": {why}" if why else ""), WRITES_BAKER)


LACKS_NUMBER = Slip('"{path}" has no number for {key}', "like {key} = 12.0")
OUT_OF_RANGE = Slip('"{path}": {key} = {value:g} is out of range', "use {least:g} to {most:g}")
NO_PAIR = Slip('"{path}": {key} is not a pair of numbers', "like {key} = [9.0, 14.0]")
CANNOT_WRITE = Slip('cannot write "{path}": {reason}', "choose another file")
HELD = "another run is writing to it; if none is, delete {lock}"
