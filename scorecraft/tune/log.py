"""The bake log: one line of JSON a bake, added so that no bake is ever lost.

A line is written in one piece under a lock and forced to the disk. Where a crash has left a line
without its end, the next bake begins on a line of its own.
"""

import contextlib
import json
import os
import time
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from scorecraft.errors import UsageError

WAIT_S = 20.0
"""How long to wait for another run that is writing."""
PAUSE_S = 0.02


@dataclass(frozen=True, slots=True)
class Logged:
    """The bakes of a log in order, and the numbers of the lines that cannot be read."""

    bakes: tuple[Mapping[str, Any], ...]
    unreadable: tuple[int, ...]


def add(path: Path, bake: Mapping[str, Any]) -> None:
    """Add a bake to the log; raises UsageError where it cannot be written."""
    line = json.dumps(bake, ensure_ascii=False, allow_nan=False, sort_keys=True)
    try:
        with _locked(path) as file:
            start = b"" if _ends_whole(file) else b"\n"
            _written(file, start + line.encode("utf-8") + b"\n")
            os.fsync(file)
        _sync_folder(path)
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise UsageError(f'cannot write "{path}": {reason}', None, "choose another file") from error


def read(path: Path) -> Logged:
    """Read all bakes of a log; raises UsageError where there is none."""
    try:
        data = path.read_bytes()
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        hint = "scorecraft tune --measured adds to it"
        raise UsageError(f'cannot read "{path}": {reason}', None, hint) from error
    bakes, unreadable = [], []
    for number, line in enumerate(data.split(b"\n"), start=1):
        if not line.strip():
            continue
        try:
            bake = json.loads(line.decode("utf-8"))
        except ValueError:
            unreadable.append(number)
            continue
        if isinstance(bake, dict):
            bakes.append(bake)
        else:
            unreadable.append(number)
    return Logged(tuple(bakes), tuple(unreadable))


def _ends_whole(file: int) -> bool:
    """Whether the file is empty or ends with a line end."""
    size = os.lseek(file, 0, os.SEEK_END)
    if size == 0:
        return True
    os.lseek(file, size - 1, os.SEEK_SET)
    return os.read(file, 1) == b"\n"


def _written(file: int, data: bytes) -> None:
    """Write all of the data at the end: a system call may take only a part."""
    while data:
        data = data[os.write(file, data) :]


@contextlib.contextmanager
def _locked(path: Path) -> Iterator[int]:
    """Open the log for adding, alone."""
    flags = os.O_RDWR | os.O_CREAT | os.O_APPEND | getattr(os, "O_BINARY", 0)
    file = os.open(path, flags, 0o666)
    try:
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
                raise OSError(f"another run holds it; if none does, delete {lock.name}") from None
            time.sleep(PAUSE_S)
    try:
        yield
    finally:
        lock.unlink(missing_ok=True)


def _sync_folder(path: Path) -> None:
    """Force a new file's name to the disk, where the system lets a folder be opened."""
    with contextlib.suppress(OSError):
        folder = os.open(path.parent or Path("."), os.O_RDONLY)
        try:
            os.fsync(folder)
        finally:
            os.close(folder)
