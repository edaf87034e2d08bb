"""Writers of a log of bakes, each in a process of its own.

They stand here and not beside their test: a process finds `support`, while one of the packages that
scorecraft needs brings a `tests` of its own.
"""

import os
import sys

from scorecraft.tune import log


def write_many(path, writer):
    for number in range(25):
        log.add(path, {"writer": writer, "number": number, "note": "x" * 3000})


def without_fcntl(path, writer):
    sys.modules["fcntl"] = None  # type: ignore[assignment]
    write_many(path, writer)


def in_small_pieces(path, writer):
    """As on a disk that takes only a few bytes a call: without a lock the lines would mix."""
    whole = os.write
    log.os.write = lambda file, data: whole(file, data[:600])
    write_many(path, writer)
