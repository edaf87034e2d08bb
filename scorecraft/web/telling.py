"""What the server of the page says: in the terminal, to the page, and at a phone's door.

The page's own texts are in static/words.js, those of its help in help.py and the glossary.
"""

from scorecraft.arrays import Floats
from scorecraft.errors import Slip
from scorecraft.loaf.dough import Dough
from scorecraft.tune.bake import Tuned
from scorecraft.tune.fit import Bounds
from scorecraft.units import mm_range, mm_words, plain

# The terminal

AT = "The page is at {address}"
SHOWS = "It shows the patterns in {folder}. Press Ctrl-C to stop it."
PHONE_LINK = "To follow the cuts on a phone on this network, open {link}"
PHONE_ONCE = "The link lets one phone in, once; the page's bench makes more, and shows a QR code."
NO_NETWORK = Slip("this computer is not on a network", "join one first, or leave out --share")
NO_PORT = Slip(
    "port {port} cannot be used: {why}", "choose another with --port, or let 0 find a free one"
)
NO_FOLDER = Slip('"{path}" is not a folder', "name a folder of patterns")


# Answers to the page

BUSY = Slip("the server is busy", "wait a moment and try again")
NOT_STARTED = Slip("a worker did not start", BUSY.hint)
CLOSING = Slip("the server is closing")
ENDED = Slip("the work came to a sudden end", "try once more")
UNWANTED = Slip("nobody is waiting for this any more")
LOCAL_ONLY = Slip("this page is for this computer only", "start it with --share")
NEST = Slip("the JSON is nested too deeply")
NO_OBJECT = Slip("send a JSON object")
NEW_LINK = "ask the baker for a new link"
OTHER_NAME = "this server has another name"
OTHER_PAGE = "another page may not ask this server"
INTERNAL_HINT = "the terminal shows where; save your text, then try another way"
NOTHING_MEASURED = Slip("there are no openings to compare", "measure at least one cut")
FIX_FIRST = Slip("fix the text first", "then change the shape here")
NO_ROW = Slip("an opening needs its cut and its width")
REMOVE_WIDTH = "remove its width"
OPEN_AS_BAKED = "open the pattern as it was baked, or remove its width"
TOO_LONG = Slip(
    "this took longer than {seconds:g} s and was stopped",
    "make the pattern simpler: fewer copies, fewer or larger fills",
)
NO_FILE_NAME = Slip('"{name}" is not a file name', "use letters, digits, spaces, - and _")
NAME_TOO_LONG = Slip("the file name is too long", "use fewer letters")
NAME_OVER = Slip(NAME_TOO_LONG.message, "at most {most} letters")
NO_PLAIN_FILE = Slip('"{name}" is not an ordinary file in the folder')
NO_SUCH_FILE = Slip(
    'there is no "{name}" in the folder', "it may have been moved; reload the shelf"
)
NAME_TAKEN = Slip('"{name}" exists already', "choose another name")
NO_TRASH = Slip('"{path}" cannot be used as the trash folder', "move what is there, or its link")
NOT_MOVED = Slip('"{name}" could not be moved: {why}', "check who may write to the folder")


def changed_on_disk(name: str, new: bool) -> Slip:
    """Refuse to write over what somebody else has written."""
    what = "exists already" if new else "has changed on disk"
    return Slip(f'"{name}" {what}', "open it to see, save under another name, or overwrite it")


GONE = Slip('"{key}" is no longer in the pattern', REMOVE_WIDTH)
CHANGED = Slip('"{key}" has changed since it was measured', OPEN_AS_BAKED)
INTERNAL = Slip("internal error: {kind}: {error}", INTERNAL_HINT)


# The bench

DEPTH, BLADE, HANDLE, SCISSORS = "Depth", "Blade", "Handle", "Scissors"
UPRIGHT = "upright"
TURN, TURN_MARK, STAY = "Turn", "Turn the mark to", "Don’t turn"
CLOCKWISE, COUNTER = "clockwise", "counter-clockwise"
MARK_TO = "· mark to {angle}"
SPIN = "· turn it {degrees:.0f}° under the blade"
TIME_OF = "{time} of {times}"


def before_cutting(steps: int, takes: str, skill: str, dough: Dough, allowed: str) -> str:
    """Say how long the cuts take, and in how long they should be done."""
    positions = "position" if steps == 1 else "positions"
    return (
        f"{steps} turntable {positions}, {takes} for a {skill} hand. "
        f"At {dough.temperature_c:.0f} °C, aim to finish within {allowed}."
    )


# The loaf

CHOICES = {
    "proof": {"under": "Underproofed", "ready": "Ready", "over": "Overproofed"},
    "culture": {"sourdough": "Sourdough", "yeasted": "Yeast"},
    "skill": {"new": "New", "steady": "Steady", "quick": "Quick"},
    "hand": {"right": "Right", "left": "Left"},
}
"""What values of header keys are called on the page."""


def cut_words(group: int, name: str, length_mm: float, depth_mm: float) -> str:
    """Tell a cut that is pointed at: its number, what it is, how long and how deep."""
    return f"{group}: {name}, {length_mm:.0f} mm · {mm_words(depth_mm)} deep"


def opens_words(range_mm: Floats) -> str:
    """Say how wide a cut opens, from the least to the most that is likely (2,), mm."""
    return f"opens {mm_range(*range_mm)} mm"


def baked_words(ranges_mm: Floats) -> str:
    """Say what the picture of a baked loaf shows; its cuts' openings (N, 2) are mm."""
    opened = f"{len(ranges_mm)} cuts have opened"
    if len(ranges_mm):
        opened += f", the widest to {mm_range(*ranges_mm[ranges_mm[:, 1].argmax()])} mm"
    return f"The baked loaf, a model estimate. {opened}."


# After the bake


TOO_FEW = (
    "These are too few to be sure, so the default skin is kept. "
    "Measure four or more cuts, shallow as well as deep."
)


def learned(tuned: Tuned) -> list[str]:
    """Say what measured openings have taught of the dough, or that they are too few."""
    found, with_earlier = tuned.fit, [together(tuned.earlier)] if tuned.earlier else []
    if not found.settled:
        return [TOO_FEW, *with_earlier]
    skin = found.skin_mm
    low = ("less than " if skin.open_below else "") + f"{plain(skin.low)} mm"
    high = f"{plain(skin.high)} mm" + (" or more" if skin.open_above else "")

    def within(bounds: Bounds) -> str:
        return f"({bounds.low:.2f} to {bounds.high:.2f})"

    return [
        f"Your dough’s skin acts as if it were {plain(skin.best)} mm thick ({low} to {high}, "
        f"{found.sure:.0%} sure).",
        f"The dough under it is {found.inside.best:.2f} times as stiff {within(found.inside)}.",
        f"It grew {found.growth.best:.2f} times as much as the pattern assumes "
        f"{within(found.growth)}.",
        f"Measured widths scatter by {plain(found.spread_mm)} mm about the estimate.",
        *with_earlier,
    ]


def together(count: int) -> str:
    """Say how many bakes of the log counted too."""
    bakes = "the earlier bake" if count == 1 else f"the {count} earlier bakes"
    return f"Fitted together with {bakes} of your log."


# A phone's door

DOOR_TITLE = "Follow the cuts"
DOOR = (
    "This phone will show the cuts that are sent to the bench on the computer, one step at a time. "
    "It only looks: it cannot change the pattern."
)
DOOR_BUTTON = "Show the cuts"
USED_TITLE = "This link has been used"
USED = (
    "Each link lets one phone in, once, and this one has been used or replaced. "
    "For a new one, open the bench on the computer and choose “Open on a phone”."
)
STRANGER_TITLE = "This phone was not let in"
STRANGER = (
    "Only a phone that came in by a link may look. "
    "For a link, open the bench on the computer and choose “Open on a phone”."
)
