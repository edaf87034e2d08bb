"""After the bake: measured openings against predicted ones, and the log of bakes."""

import os
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path, PurePath

from scorecraft.check_data import rounded
from scorecraft.designing import Design
from scorecraft.drawing.svg import svg
from scorecraft.drawing.tune_plot import tune_plot
from scorecraft.errors import Place
from scorecraft.groups import Group
from scorecraft.json_data import JsonObject
from scorecraft.limits import MOST_MEASURED, WIDEST_MEASURED_MM
from scorecraft.tune.bake import Tuned, openings, record, tune
from scorecraft.tune.baker import baker_of, baker_text
from scorecraft.tune.log import Bake, Earlier, add, earlier, read
from scorecraft.tune.measured import Measured
from scorecraft.tune.predict import predictor
from scorecraft.tune.telling import skin_words
from scorecraft.web import telling as say
from scorecraft.web.asked import BAKER, Data, flag_of, number_of, text_of, words_of
from scorecraft.web.folder import is_within
from scorecraft.writing import write_whole

LOG = "bakes.jsonl"


def measured(design: Design, request: Data, folder: Path) -> JsonObject:
    """Fit the model to measured openings, together with the bakes of the folder's log.

    With `keep` the bake is added to it.
    """
    layout, told, name = design.layout, design.groups, PurePath(design.source.name).stem
    rows = rows_of(design, request)
    note, keep = words_of(request, "note") or "", flag_of(request, "keep")
    tuned = tune(layout, told, rows, predictor(layout, told), before(folder, name, told, rows))
    if keep:
        kept(tuned, name, note, folder)
    return {"ok": True, "kept": keep, **tuned_data(tuned)}


def before(
    folder: Path, name: str, told: Sequence[Group], rows: Sequence[Measured]
) -> list[Earlier]:
    """Take the bakes of the folder's log; this very one, kept today already, counts only once."""
    log, today = folder / LOG, date.today().isoformat()
    if not log.exists():
        return []
    sizes = [(group.key, [row.width_mm for row in rows if row.key == group.key]) for group in told]
    this = today, name, [each for each in sizes if each[1]]
    found = read(log)
    others = tuple(bake for bake in found.bakes if _marks(bake) != this)
    return earlier(replace(found, bakes=others))


def _marks(bake: Bake) -> tuple[str | None, str | None, list[tuple[str | None, list[float]]]]:
    """Tell what a logged bake is known by: its day, its pattern, and what was measured."""
    cuts = [(cut.get("key"), cut.get("measured_mm", [])) for cut in bake.get("cuts", [])]
    return bake.get("date"), bake.get("pattern"), [each for each in cuts if each[1]]


def kept(tuned: Tuned, name: str, note: str, folder: Path) -> None:
    """Add a bake to the log, and write what it has taught.

    Raises UsageError for a file it may not write.
    """
    for path in (folder / LOG, folder / BAKER):
        if os.path.lexists(path) and not is_within(folder, path):
            raise say.NO_PLAIN_FILE(name=path.name).usage()
    today = date.today().isoformat()
    baker = baker_text(baker_of(tuned.fit, pattern=name, date=today)).encode()
    add(folder / LOG, record(tuned, pattern=name, date=today, note=note))
    write_whole(folder / BAKER, baker)


def rows_of(design: Design, request: Data) -> tuple[Measured, ...]:
    """Read the measured openings; raises UsageError where one cannot be.

    A row tells the key of its cuts, and the mark of the statement they were measured on.
    """
    rows = request.get("rows")
    if not isinstance(rows, list) or not 0 < len(rows) <= MOST_MEASURED:
        raise say.NOTHING_MEASURED.usage()
    found: list[Measured] = []
    for row in rows:
        if not isinstance(row, Mapping):
            raise say.NO_ROW.usage()
        key = text_of(row, "key")
        if key not in design.fingerprints:
            raise say.GONE(key=key).usage()
        if text_of(row, "mark") != design.fingerprints[key]:
            raise say.CHANGED(key=key).usage()
        width = number_of(row, "width_mm", -1.0, 0.0, WIDEST_MEASURED_MM)
        found.append(Measured(key, width, Place("page", len(found) + 1, 1)))
    return tuple(found)


def tuned_data(tuned: Tuned) -> JsonObject:
    """Tell what a fit has taught, its openings beside the measured ones, and its plot."""
    pairs = openings(tuned)
    numbers = {group.key: group.number for group in tuned.groups}
    plot = tune_plot(pairs, tuned.layout.title, skin_words(tuned))
    return {
        "rows": [
            {
                "key": each.key,
                "number": numbers[each.key],
                "measured_mm": wide,
                "predicted_mm": rounded(predicted),
            }
            for each, (wide, predicted) in zip(tuned.measured, pairs, strict=True)
        ],
        "learned": list(say.learned(tuned)),
        "plot": svg(plot, text="text", ids="plot"),
    }


def bakes(folder: Path) -> JsonObject:
    """List the bakes of the folder's log, the newest first."""
    log = folder / LOG
    if not log.exists():
        return {"bakes": [], "unreadable": []}
    found = read(log)
    return {
        "bakes": [bake_data(bake) for bake in reversed(found.bakes)],
        "unreadable": list(found.unreadable),
    }


def bake_data(bake: Bake) -> dict[str, str]:
    """Tell one bake of the log; what another program wrote into it may be anything."""
    skin = bake.get("skin_mm")
    best = skin.get("best") if isinstance(skin, Mapping) else None
    told = {key: str(bake.get(key, ""))[:200] for key in ("date", "pattern", "title", "note")}
    return told | {"skin_mm": f"{best:.1f}" if isinstance(best, int | float) else ""}
