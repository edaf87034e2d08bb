"""Files read with care: ordinary files only, and never more bytes than agreed."""

import errno
import os
import stat
from pathlib import Path

from scorecraft.errors import Place, UsageError, lines_of

FLAGS = sum(getattr(os, name, 0) for name in ("O_NONBLOCK", "O_NOCTTY", "O_CLOEXEC", "O_BINARY"))
"""How a file is opened: a pipe that took its name a moment ago must not hold us up."""


def read_bytes(path: str | Path, most: int, what: str, hint: str = "check its name") -> bytes:
    """Read an ordinary file of at most so many bytes.

    `what` says what it should be ("a drawing"); `hint` is the way out where it cannot be read.
    Raises UsageError for a missing, unreadable or too large file, and for whatever is not a
    file on the disk: folders, pipes, devices, links to nowhere.
    """
    try:
        _check_ordinary(path, os.stat(path))
        with open(path, "rb", opener=lambda name, flags: os.open(name, flags | FLAGS)) as file:
            _check_ordinary(path, os.fstat(file.fileno()))
            data = file.read(most + 1)
    except OSError as error:
        raise UsageError(f'cannot read "{path}": {_reason(path, error)}', None, hint) from error
    except ValueError as error:  # a name with a NUL, or with half a letter
        shown = ascii(str(path))
        raise UsageError(f"no file can be called {shown}", None, "check its name") from error
    check_size(data, most, str(path), what)
    return data


def read_text(path: str | Path, most: int, what: str, hint: str = "check its name") -> str:
    """Read an ordinary UTF-8 file, with or without a byte-order mark.

    Raises UsageError as `read_bytes` does, and with the place of the first byte that is no text.
    """
    return decoded(read_bytes(path, most, what, hint), str(path))


def check_size(data: bytes, most: int, name: str, what: str) -> None:
    """Raise UsageError where there are more bytes than agreed."""
    if len(data) > most:
        message = f'"{name}" is too large to be {what}: more than {most:,} bytes'
        raise UsageError(message, None, "is this the right file?")


def decoded(data: bytes, name: str) -> str:
    """Turn UTF-8 into text, without a byte-order mark; raises UsageError at what is none."""
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = lines_of(error.object[: error.start].decode("utf-8"))
        place = Place(name, len(before), len(before[-1]) + 1)
        raise UsageError("this is not UTF-8 text", place, "save the file as UTF-8") from error


def _check_ordinary(path: str | Path, found: os.stat_result) -> None:
    if stat.S_ISDIR(found.st_mode):
        raise UsageError(f'"{path}" is a folder', None, "name a file in it")
    if not stat.S_ISREG(found.st_mode):
        hint = "save it as a file first"
        raise UsageError(f'"{path}" is a pipe or a device, not a file on the disk', None, hint)


def _reason(path: str | Path, error: OSError) -> str:
    if error.errno in (errno.ENOENT, errno.ELOOP) and os.path.islink(path):
        return "it is a link that leads nowhere"
    return (error.strerror or str(error)).lower()
