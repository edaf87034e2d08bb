"""The bake log: one line of JSON a bake, added so that no bake is ever lost.

A line is written in one piece under a lock and forced to the disk. Where a crash has left a line
without its end, the next bake begins on a line of its own.
"""

import contextlib
import json
import os
import stat
import time
from codecs import BOM_UTF8
from collections.abc import Iterator
from pathlib import Path
from typing import TypedDict, TypeGuard

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.json_data import JsonObject
from scorecraft.reading import read_bytes
from scorecraft.tune import slips
from scorecraft.tune.table import knots
from scorecraft.writing import sync_folder, write_all

MOST_LOG_BYTES = 50_000_000
"""The largest log of bakes that is read."""
WAIT_S = 20.0
"""How long to wait for another run that is writing."""
PAUSE_S = 0.02
TEXTS = ("date", "pattern", "title", "note")
"""What of a bake is text."""
MOST_NUMBER = 1e9
"""No size, count or knob of a bake is greater."""


class LoggedCuts(TypedDict, total=False):
    """What is read of the cuts of a logged bake that are told together."""

    key: str
    measured_mm: list[float]
    predicted_mm: float
    model_mm: list[list[float]]


class Bake(TypedDict, total=False):
    """What is read of a logged bake; there may be more in it, and all of it may be missing."""

    date: str
    pattern: str
    title: str
    note: str
    cuts: list[LoggedCuts]
    knots: list[list[float]]
    skin_mm: dict[str, float] | None


@dataclass(frozen=True, slots=True)
class Earlier:
    """What a bake of the log still teaches: openings, and what the model says of their cuts.

    `model_mm` is (skins, insides, cuts); opening k was measured on cut `cuts[k]`.
    """

    model_mm: Floats
    cuts: list[int]
    measured_mm: list[float]


@dataclass(frozen=True, slots=True)
class Logged:
    """The bakes of a log in order, and the numbers of the lines that cannot be read."""

    bakes: tuple[Bake, ...]
    unreadable: tuple[int, ...]


def add(path: Path, bake: JsonObject) -> None:
    """Add a bake to the log; raises UsageError where it cannot be written."""
    line = json.dumps(bake, ensure_ascii=False, allow_nan=False, sort_keys=True)
    try:
        with _locked(path) as file:
            start = b"" if _ends_whole(file) else b"\n"
            write_all(file, start + line.encode("utf-8") + b"\n")
            os.fsync(file)
        sync_folder(path.parent)
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise slips.CANNOT_WRITE(path=path, reason=reason).usage() from error


def read(path: Path) -> Logged:
    """Read all bakes of a log; a line that is none is passed over and stays in the file.

    Raises UsageError where there is no log.
    """
    data = read_bytes(path, MOST_LOG_BYTES, slips.LOG, slips.WRITES_LOG)
    bakes, unreadable = [], []
    for number, line in enumerate(data.removeprefix(BOM_UTF8).split(b"\n"), start=1):
        if not line.strip():
            continue
        bake = _bake(line)
        if bake is None:
            unreadable.append(number)
        else:
            bakes.append(bake)
    return Logged(tuple(bakes), tuple(unreadable))


def earlier(logged: Logged) -> list[Earlier]:
    """Take from a log what can be fitted again; bakes from before that was kept are passed over."""
    at = [each.round(6).tolist() for each in knots()]
    shape = tuple(len(each) for each in at)
    found = []
    for bake in logged.bakes:
        cuts = [cut for cut in bake.get("cuts", []) if "model_mm" in cut and cut.get("measured_mm")]
        models = [np.asarray(cut["model_mm"], dtype=np.float64) for cut in cuts]
        if models and bake.get("knots") == at and all(each.shape == shape for each in models):
            sizes = [(k, float(size)) for k, cut in enumerate(cuts) for size in cut["measured_mm"]]
            rows, measured = (list(each) for each in zip(*sizes, strict=True))
            found.append(Earlier(np.stack(models, axis=2), rows, measured))
    return found


def _bake(line: bytes) -> Bake | None:
    """Read one line; None where it is no bake, or a number in it is none that a bake has."""
    try:
        bake = json.loads(line, parse_constant=_number, parse_float=_number, parse_int=_number)
    except (ValueError, RecursionError):
        return None
    return bake if _is_bake(bake) else None


def _is_bake(bake: object) -> TypeGuard[Bake]:
    """Whether all that is read of a bake is of its kind; what is not there is no fault."""
    if not isinstance(bake, dict):
        return False
    cuts, skin = bake.get("cuts", []), bake.get("skin_mm") or {}
    return (
        all(isinstance(bake.get(key, ""), str) for key in TEXTS)
        and (isinstance(skin, dict) and _all_numbers([skin.get("best", 0.0)]))
        and (isinstance(cuts, list) and all(isinstance(cut, dict) for cut in cuts))
        and all(_all_numbers([cut.get("predicted_mm", 0.0)]) for cut in cuts)
        and all(_all_numbers(cut.get("measured_mm", [])) for cut in cuts)
        and all(_is_table(cut.get("model_mm", [])) for cut in cuts)
    )


def _is_table(values: object) -> bool:
    """Whether these are rows of numbers, all as long."""
    return (
        isinstance(values, list)
        and all(_all_numbers(row) for row in values)
        and len({len(row) for row in values}) < 2
    )


def _all_numbers(values: object) -> bool:
    return isinstance(values, list) and all(type(each) in (int, float) for each in values)


def _number(text: str) -> float:
    """Read a number, a whole one as such; raises ValueError for what no bake has."""
    value = float(text)
    if not abs(value) <= MOST_NUMBER:
        raise ValueError("a bake has no such number")
    return int(value) if text.lstrip("-").isdecimal() else value


def _ends_whole(file: int) -> bool:
    """Whether the file is empty or ends with a line end."""
    size = os.lseek(file, 0, os.SEEK_END)
    if size == 0:
        return True
    os.lseek(file, size - 1, os.SEEK_SET)
    return os.read(file, 1) == b"\n"


@contextlib.contextmanager
def _locked(path: Path) -> Iterator[int]:
    """Open the log for adding, alone."""
    flags = os.O_RDWR | os.O_CREAT | os.O_APPEND | getattr(os, "O_BINARY", 0)
    file = os.open(path, flags, 0o666)
    try:
        if not stat.S_ISREG(os.fstat(file).st_mode):
            raise OSError(slips.NO_REGULAR_FILE)
        with _alone(file, path):
            yield file
    finally:
        os.close(file)


@contextlib.contextmanager
def _alone(file: int, path: Path) -> Iterator[None]:
    """Hold the lock of the file; a system without such locks gets a lock file beside it."""
    try:
        import fcntl
    except ImportError:
        with _lock_file(path.with_name(path.name + ".lock")):
            yield
        return
    fcntl.flock(file, fcntl.LOCK_EX)
    try:
        yield
    finally:
        fcntl.flock(file, fcntl.LOCK_UN)


@contextlib.contextmanager
def _lock_file(lock: Path) -> Iterator[None]:
    """Make a file that can be made only once; raises OSError if it stays there too long."""
    until = time.monotonic() + WAIT_S
    while True:
        try:
            os.close(os.open(lock, os.O_CREAT | os.O_EXCL | os.O_WRONLY))
            break
        except FileExistsError:
            if time.monotonic() > until:
                raise OSError(slips.HELD.format(lock=lock.name)) from None
            time.sleep(PAUSE_S)
    try:
        yield
    finally:
        lock.unlink(missing_ok=True)
