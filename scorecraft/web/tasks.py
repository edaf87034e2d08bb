"""The heavy work, each a task that a worker does: a request in, an answer out."""

from collections.abc import Callable
from functools import lru_cache
from pathlib import Path

from scorecraft.designing import Design
from scorecraft.editing.scene import Scene
from scorecraft.errors import PatternError, ScorecraftError, UsageError
from scorecraft.web import telling as say
from scorecraft.web.answer import (
    SVG,
    Answer,
    internal,
    json_answer,
    problems_answer,
    refusal,
)
from scorecraft.web.asked import BAKER, Asked, Data, asked, designed, files_folder

KEPT = 8
"""So many of the last designs a worker remembers."""


def work(task: str, request: Data) -> Answer:
    """Do a task. What is wrong with the pattern is an answer; a wrong request is refused."""
    try:
        return TASKS[task](request)
    except UsageError as error:
        return refusal(error, 400)
    except ScorecraftError as error:
        return problems_answer(error.problems)
    except Exception as error:
        return internal(error)


def design_of(request: Data) -> Design:
    """Make the design a request is about, or remember it."""
    folder = folder_of(request)
    wanted = asked(request)
    return remembered(wanted, folder, newest(folder))


def folder_of(request: Data) -> str | None:
    """Read the folder that the desk has written into a request."""
    folder = request.get("folder")
    return folder if isinstance(folder, str) else None


def newest(folder: str | None) -> int:
    """Give the time of the last change to a file that a design may hang on besides its text."""
    if folder is None:
        return 0
    files = [*Path(folder).glob("*.svg"), *Path(folder).glob(BAKER)]
    return max((changed(path) for path in files), default=0)


def changed(path: Path) -> int:
    """Give the time of a file's last change; 0 for a link to nowhere, or a file just deleted."""
    try:
        return path.stat().st_mtime_ns
    except OSError:
        return 0


@lru_cache(maxsize=KEPT)
def remembered(wanted: Asked, folder: str | None, changed: int) -> Design:
    """Make a design; the same one again is not made twice."""
    return designed(wanted, Path(folder) if folder else None)


def sight(request: Data) -> Answer:
    """Answer with the loaf's picture alone, before anything is checked: a hand waits for it."""
    from scorecraft.web.design_data import sight_data

    return json_answer(sight_data(design_of(request)))


def design(request: Data) -> Answer:
    """Answer with the design: picture, knobs, form and findings."""
    from scorecraft.web.design_data import design_data

    return json_answer(design_data(design_of(request)))


def tray(request: Data) -> Answer:
    """Answer with the figures that can be laid on a loaf."""
    from scorecraft.web.tray import tray_data

    return json_answer(tray_data())


def picture(request: Data) -> Answer:
    """Answer with a small picture of the loaf, for the shelf."""
    from scorecraft.drawing.loafview import loaf_picture
    from scorecraft.drawing.svg import svg

    made = loaf_picture(design_of(request).layout, width_mm=120.0)
    return Answer(svg(made).encode(), SVG)


def baked(request: Data) -> Answer:
    """Answer with a small picture of the baked loaf, for the shelf."""
    from scorecraft.web.opened import bloom_file

    return Answer(bloom_file(design_of(request)), "image/webp")


def opening(request: Data) -> Answer:
    """Answer with how the cuts open."""
    from scorecraft.web.opened import opened_data

    return json_answer(opened_data(design_of(request)))


def bloom(request: Data) -> Answer:
    """Answer with the loaf as it is at a share of its time in the oven."""
    from scorecraft.web.opened import bloom_data

    return json_answer(bloom_data(design_of(request), request))


def view(request: Data) -> Answer:
    """Answer with the loaf seen another way: from the side, its guide, its map of tension."""
    from scorecraft.drawing.svg import svg
    from scorecraft.web.views import seen

    drawn = seen(design_of(request), request)
    return json_answer({"ok": True, "svg": svg(drawn, text="text", ids="view")})


def reform(request: Data) -> Answer:
    """Answer with the text whose loaf has another form or size.

    Raises ScorecraftError where it cannot be read.
    """
    from scorecraft.web.edits import reformed

    try:
        made = design_of(request)
    except PatternError as error:
        raise say.FIX_FIRST.error(error.problems[0].place) from error
    return json_answer(reformed(made, request))


def prints(request: Data) -> Answer:
    """Answer with a print: its pages to look at, or a file to keep."""
    from scorecraft.web.prints import printed

    return printed(design_of(request), request)


def bench(request: Data) -> Answer:
    """Answer with the steps at the bench."""
    from scorecraft.web.bench_data import bench_data

    return json_answer(bench_data(design_of(request)))


def measure(request: Data) -> Answer:
    """Answer with measured openings against predicted ones."""
    from scorecraft.web.measuring import measured

    folder = Path(folder_of(request) or ".")
    return json_answer(measured(design_of(request), request, folder))


def hand_of(request: Data) -> tuple[Scene, Path | None]:
    """Lay out the pattern of a request for the hand, or remember it; give its files' folder too."""
    from scorecraft.web import hand

    folder, wanted = folder_of(request), asked(request)
    own = Path(folder) if folder else None
    return hand.remembered(wanted, folder, newest(folder)), files_folder(wanted, own)


def look(request: Data) -> Answer:
    """Answer with what lies on the loaf, statement by statement."""
    from scorecraft.web.hand import looked

    return json_answer(looked(hand_of(request)[0]))


def pick(request: Data) -> Answer:
    """Answer with what a selected statement can do."""
    from scorecraft.web.hand import picked

    return json_answer(picked(hand_of(request)[0], request))


def do(request: Data) -> Answer:
    """Answer with the text that a gesture makes."""
    from scorecraft.web.hand import gestured

    found, folder = hand_of(request)
    return json_answer(gestured(found, request, folder))


TASKS: dict[str, Callable[[Data], Answer]] = {
    "sight": sight,
    "design": design,
    "tray": tray,
    "picture": picture,
    "baked": baked,
    "opening": opening,
    "bloom": bloom,
    "view": view,
    "print": prints,
    "reform": reform,
    "bench": bench,
    "measure": measure,
    "look": look,
    "pick": pick,
    "do": do,
}
"""Every task by its name."""
