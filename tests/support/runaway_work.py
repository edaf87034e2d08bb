"""Work for a crew that may never come to an end, and what tells of it.

A text with `hang` in it is worked on for ever; who does so leaves a file named after its process.
One with `slow` in it takes longer than what is quick in the tests.
"""

import os
import time
from pathlib import Path

from scorecraft.web.answer import json_answer


def work(task, request):
    if "hang" in request.get("text", ""):
        (Path(request["folder"]) / f"at-work-{os.getpid()}").touch()
        while True:
            time.sleep(60)
    if "slow" in request.get("text", ""):
        time.sleep(1)
    if "die" in request.get("text", ""):
        raise SystemExit
    return json_answer({"ok": True, "task": task})


def workers(folder):
    """List the processes that have begun what never ends."""
    return [int(path.name.rpartition("-")[2]) for path in Path(folder).glob("at-work-*")]


def alive(process):
    """Tell whether a process is there; one that only waits to be counted has ended."""
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    status = Path(f"/proc/{process}/stat")
    return not status.exists() or status.read_text().rpartition(")")[2].split()[0] != "Z"


def until(true):
    """Wait for something to come true; what never does fails the test."""
    for _ in range(6000):
        if true():
            return
        time.sleep(0.01)
    raise AssertionError("it never came true")
