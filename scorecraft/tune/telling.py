"""What a bake has taught, and the log of bakes, in words."""

from collections.abc import Iterator

import numpy as np

from scorecraft.practice import SKIN_MM
from scorecraft.tune.bake import Tuned
from scorecraft.tune.baker import TO_SETTLE
from scorecraft.tune.fit import Bounds
from scorecraft.tune.log import Bake, Logged


def tuned_text(tuned: Tuned) -> str:
    """Report a fit: measured against predicted row by row, then what it comes to."""
    return "\n".join(_report(tuned)) + "\n"


def _report(tuned: Tuned) -> Iterator[str]:
    found = tuned.fit
    numbers = {group.key: group.number for group in tuned.groups}
    yield f"{'':>3}  {'cut':<22}{'measured':>10}{'predicted':>12}{'off':>9}"
    count = len(tuned.measured)
    rows = zip(tuned.measured, found.predicted_mm[:count], found.residual_mm[:count], strict=True)
    for each, predicted, residual in rows:
        yield (
            f"{numbers[each.key]:>3}  {each.key:<22}{each.width_mm:>7.1f} mm{predicted:>9.1f} mm"
            f"{residual:>+6.1f} mm"
        )
    yield ""
    if tuned.earlier:
        bakes = "1 earlier bake" if tuned.earlier == 1 else f"{tuned.earlier} earlier bakes"
        yield f"fitted together with {bakes} of the log"
    yield ("" if found.settled else "best guess so far: ") + skin_words(tuned)
    yield inside_words(tuned)
    yield f"growth {_bounded(found.growth, 'times what the pattern assumes', 2)}"
    yield f"narrow openings differ from the prediction by {found.spread_mm:.1f} mm, give or take"
    yield "these ranges allow for scatter in the measurements, not for what the model leaves out"
    if not found.settled:
        yield (
            "these openings are too few, or differ too much, to be sure of the skin: "
            f"the default of {SKIN_MM.value:g} mm is kept; to be sure, {TO_SETTLE}"
        )


def skin_words(tuned: Tuned) -> str:
    """Say the fitted skin, its bounds, and how sure they are."""
    return f"skin thickness {_bounded(tuned.fit.skin_mm, 'mm', 1)}, {tuned.fit.sure:.0%} sure"


def inside_words(tuned: Tuned) -> str:
    """Say the fitted inside, its bounds, and whether the openings told it from the skin."""
    found = f"dough under it {_bounded(tuned.fit.inside, 'times as stiff as the skin', 3)}"
    return found if tuned.fit.apart else f"{found}: these openings hardly tell it from the skin"


def _bounded(bounds: Bounds, unit: str, digits: int) -> str:
    low = "less than " if bounds.open_below else ""
    high = " or more" if bounds.open_above else ""
    return (
        f"{bounds.best:.{digits}f} {unit} "
        f"({low}{bounds.low:.{digits}f} to {bounds.high:.{digits}f}{high})"
    )


def log_text(logged: Logged) -> str:
    """List the bakes of a log, one a line, the newest last."""
    lines = [f"{'date':<12}{'pattern':<22}{'openings':>9}{'off by':>9}{'skin':>10}  note"]
    lines += [_bake_line(bake) for bake in logged.bakes]
    for number in logged.unreadable:
        lines.append(f"line {number} cannot be read and is left as it is")
    return "\n".join(lines) + "\n"


def _bake_line(bake: Bake) -> str:
    pairs = measured_and_predicted(bake)
    off = f"{np.sqrt(np.mean([(m - p) ** 2 for m, p in pairs])):.1f} mm" if pairs else ""
    skin = bake.get("skin_mm")
    best = f"{skin['best']:.1f} mm" if skin and "best" in skin else ""
    return (
        f"{bake.get('date', ''):<12}{bake.get('pattern', ''):<22}{len(pairs):>9}{off:>9}"
        f"{best:>10}  {bake.get('note', '')}"
    ).rstrip()


def measured_and_predicted(bake: Bake) -> list[tuple[float, float]]:
    """List the openings of a logged bake: measured and predicted width (mm) of each."""
    return [
        (float(measured), float(cut["predicted_mm"]))
        for cut in bake.get("cuts", [])
        if "predicted_mm" in cut
        for measured in cut.get("measured_mm", [])
    ]
