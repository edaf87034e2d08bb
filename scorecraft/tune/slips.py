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


def no_openings(path: object) -> Slip:
    """Refuse an empty list."""
    return Slip(f'"{path}" holds no openings', "write a row such as leaf midrib, 9")


def many_openings(path: object, count: int, most: int) -> Slip:
    """Refuse an endless list."""
    return Slip(f'"{path}" holds {count} openings; {most:.0f} are enough', "leave some out")


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


def no_number(cell: str) -> Slip:
    """Refuse what is not a width."""
    return Slip(f'"{cell:.40}" is not a width in mm', "like 12 or 12.5")


def impossible_width(cell: str) -> Slip:
    """Refuse a width that no cut has."""
    return Slip(f"no cut opens {cell}", f"an opening is 0 to {WIDEST_MEASURED_MM:.0f} mm")


def no_baker(path: object, why: object = "") -> Slip:
    """Refuse a file that is not TOML."""
    return Slip(f'"{path}" is not a baker file' + (f": {why}" if why else ""), WRITES_BAKER)


def lacks_number(path: object, key: str) -> Slip:
    """Ask for a number in a baker file."""
    return Slip(f'"{path}" has no number for {key}', f"like {key} = 12.0")


def out_of_range(path: object, key: str, value: float, least: float, most: float) -> Slip:
    """Refuse a number that no baker file has."""
    return Slip(f'"{path}": {key} = {value:g} is out of range', f"use {least:g} to {most:g}")


def no_pair(path: object, key: str) -> Slip:
    """Ask for two numbers in a baker file."""
    return Slip(f'"{path}": {key} is not a pair of numbers', f"like {key} = [9.0, 14.0]")


def cannot_write(path: object, reason: str) -> Slip:
    """Say that the log cannot be written."""
    return Slip(f'cannot write "{path}": {reason}', "choose another file")


def held(lock: str) -> str:
    """Say that another run is writing."""
    return f"another run is writing to it; if none is, delete {lock}"
