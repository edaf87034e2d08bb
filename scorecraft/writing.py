"""Files that are written whole or not at all.

The data goes into a temporary file in the same folder, is forced to the disk, and takes the name
in one step. Links are followed to the file that is replaced. A file with another name too (a hard
link) is written in place, so that both stay one file. Pipes and devices get the data as it is.

A temporary file is locked while its run lives, where the system has such locks; one that is not
was left by a run that was killed, and the next run takes it away.
"""

import contextlib
import os
import stat
from importlib.util import find_spec
from pathlib import Path

from scorecraft.errors import UsageError

LEFT = ".scorecraft-*.tmp"
"""What temporary files are called."""
LOCKS = find_spec("fcntl") is not None
FLAGS = sum(getattr(os, name, 0) for name in ("O_BINARY", "O_CLOEXEC", "O_NOCTTY", "O_NOFOLLOW"))


def write_whole(path: Path, data: bytes) -> None:
    """Write a file whole or not at all, also where a run is killed half way.

    Only a hard-linked file can be left mixed, by a kill while the data, which lies on the disk
    beside it already, is copied over it. Raises UsageError if it cannot be done.
    """
    try:
        if path.is_dir():
            raise UsageError(f'cannot write "{path}": it is a folder', None, "give a file name")
        _write(path, data)
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        hint = "choose a folder you may write to"
        raise UsageError(f'cannot write "{path}": {reason}', None, hint) from error
    except ValueError as error:  # a name with a NUL, or with half a letter
        shown = ascii(str(path))
        raise UsageError(f"no file can be called {shown}", None, "check its name") from error


def sync_folder(folder: Path) -> None:
    """Force the names in a folder to the disk, where the system lets a folder be opened."""
    with contextlib.suppress(OSError):
        file = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(file)
        finally:
            os.close(file)


def sweep(folder: Path) -> None:
    """Take away the temporary files of runs that were killed, never those of one that lives."""
    if not LOCKS:
        return
    import fcntl

    for path in folder.glob(LEFT):
        with contextlib.suppress(OSError):  # somebody else's, or gone by now
            file = os.open(path, os.O_RDWR | FLAGS)
            try:
                fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
                path.unlink()
            finally:
                os.close(file)


def _write(path: Path, data: bytes) -> None:
    found = _found(path)
    if found is not None and (_is_stream(path) or not stat.S_ISREG(found.st_mode)):
        with open(os.open(path, os.O_WRONLY | os.O_APPEND), "wb") as stream:
            stream.write(data)
        return
    target = Path(os.path.realpath(path))
    sweep(target.parent)
    file, temporary = _claimed(target.parent, 0o666 if found is None else found.st_mode & 0o777)
    try:
        with open(file, "wb", closefd=not LOCKS) as out:
            _forced(out.fileno(), data)
        if found is not None and found.st_nlink > 1:
            with target.open("r+b") as out:
                _forced(out.fileno(), data)
        else:
            if found is not None:
                os.chmod(temporary, found.st_mode & 0o777)
            os.replace(temporary, target)
    finally:
        temporary.unlink(missing_ok=True)
        if LOCKS:
            os.close(file)
    sync_folder(target.parent)


def _found(path: Path) -> os.stat_result | None:
    """Tell of the file that is there, at the end of all links; None where there is none."""
    with contextlib.suppress(FileNotFoundError):
        return os.stat(path)
    return None


def _is_stream(path: Path) -> bool:
    """Whether a path is another name of a file that is open, like /dev/stdout."""
    while path.is_symlink():
        if os.path.realpath(path.parent).startswith("/proc/"):
            return True
        path = path.parent / os.readlink(path)
    return False


def _claimed(folder: Path, mode: int) -> tuple[int, Path]:
    """Make a temporary file that no other run sweeps away, and open it."""
    while True:
        path = folder / LEFT.replace("*", os.urandom(8).hex())
        file = os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY | FLAGS, mode)
        if not LOCKS:
            return file, path
        import fcntl

        with contextlib.suppress(OSError):  # a disk without locks: nobody can sweep it either
            fcntl.flock(file, fcntl.LOCK_EX)
        if os.fstat(file).st_nlink:
            return file, path
        os.close(file)  # another run was quicker than the lock


def write_all(file: int, data: bytes) -> None:
    """Write all of the data: a system call may take only a part."""
    left = memoryview(data)
    while left:
        left = left[os.write(file, left) :]


def _forced(file: int, data: bytes) -> None:
    """Write a file's whole content, and force it to the disk."""
    write_all(file, data)
    os.ftruncate(file, len(data))
    os.fsync(file)
