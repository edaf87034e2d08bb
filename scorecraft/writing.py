"""Files that are written whole or not at all."""

import contextlib
import os
import tempfile
from pathlib import Path

from scorecraft.errors import UsageError


def write_whole(path: Path, data: bytes) -> None:
    """Write a file through a temporary one beside it; raises UsageError if it cannot be done."""
    if path.is_dir():
        raise UsageError(f'cannot write "{path}": it is a folder', None, "give a file name")
    temporary = ""
    try:
        number, temporary = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent or ".")
        with os.fdopen(number, "wb") as file:
            file.write(data)
        os.chmod(temporary, mode_for(path))
        os.replace(temporary, path)
    except OSError as error:
        if temporary:
            with contextlib.suppress(FileNotFoundError):
                os.unlink(temporary)
        reason = (error.strerror or str(error)).lower()
        hint = "choose a folder you may write to"
        raise UsageError(f'cannot write "{path}": {reason}', None, hint) from error


def mode_for(path: Path) -> int:
    """Keep the mode of a file that is replaced; a new one gets what is usual here."""
    try:
        return path.stat().st_mode & 0o777
    except FileNotFoundError:
        mask = os.umask(0)
        os.umask(mask)
        return 0o666 & ~mask
