"""`check` of the leaf crown and the page against the bare import of the libraries they stand on.

It runs from another folder, so that the installed package is measured, compiled as pip left it.
"""

import subprocess
import sys
import tempfile

import pytest
from support.timing import by_turns, settled

resource = pytest.importorskip("resource", reason="no processor time of commands on this system")

IMPORTS = ["-c", "import numpy, shapely, click"]
CHECK = ["-m", "scorecraft", "check", "leaf-crown"]
PAGE = ["-u", "-m", "scorecraft", "page", "--no-browser", "--port", "0"]


def children():
    """Give the processor time of all commands that have ended, in seconds."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def cost(arguments):
    """Give the processor time of a command; the page is stopped as soon as it serves."""
    before = children()
    command = [sys.executable, *arguments]
    with subprocess.Popen(command, stdout=subprocess.PIPE, cwd=tempfile.gettempdir()) as process:
        if arguments is PAGE:
            assert b"http://127.0.0.1" in process.stdout.readline()
            process.kill()
        process.communicate()
    assert arguments is PAGE or process.returncode == 0
    return children() - before


def test_commands_cost_a_few_imports():
    """Measured: quick 1.5, whole 2.9, page 2.0; of the whole 0.4 is to load our own modules."""
    commands = (IMPORTS, [*CHECK, "--quick"], CHECK, PAGE)

    def holds(imports, quick, whole, page):
        return quick <= 2.3 * imports and whole <= 3.5 * imports and page <= 2.8 * imports

    assert holds(*settled(lambda: by_turns(*commands, cost=cost), holds))
