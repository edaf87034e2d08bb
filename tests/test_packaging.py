"""What is shipped is whole: wheel and source archive are built here, without a network."""

import email
import subprocess
import sysconfig
import tarfile
import tomllib
import venv
import zipfile
from pathlib import Path

import mypy.api
import pytest
from hatchling.builders.sdist import SdistBuilder
from hatchling.builders.wheel import WheelBuilder

import scorecraft
from scorecraft.shelf import shelf

ROOT = Path(__file__).parents[1]
TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "scorecraft", "patterns", "tests", "gallery"}
"""What stands at the top level, besides LICENSE and names that begin with a dot."""
MADE = {"__pycache__", "build", "dist"}
"""What a run or a build leaves behind: never shipped."""


def files(folder):
    """Name the files below a folder as the archive names them, without what runs leave behind."""
    found = [path.relative_to(folder.parent) for path in folder.rglob("*") if path.is_file()]
    return {path.as_posix() for path in found if not MADE & {*path.parts}}


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    """Build the wheel."""
    folder = tmp_path_factory.mktemp("wheel")
    return Path(next(WheelBuilder(str(ROOT)).build(directory=str(folder), versions=["standard"])))


@pytest.fixture(scope="module")
def sources(tmp_path_factory):
    """Build the source archive, and unpack it."""
    folder = tmp_path_factory.mktemp("sources")
    packed = next(SdistBuilder(str(ROOT)).build(directory=str(folder)))
    with tarfile.open(packed) as archive:
        archive.extractall(folder, filter="data")
    return folder / f"scorecraft-{scorecraft.__version__}"


def names(wheel):
    with zipfile.ZipFile(wheel) as archive:
        return {name for name in archive.namelist() if ".dist-info/" not in name}


def metadata(wheel):
    with zipfile.ZipFile(wheel) as archive:
        (name,) = [each for each in archive.namelist() if each.endswith(".dist-info/METADATA")]
        return email.message_from_bytes(archive.read(name)), archive.namelist()


def test_the_wheel_holds_the_whole_program_and_nothing_else(wheel):
    shipped = files(ROOT / "scorecraft") | {
        f"scorecraft/{each}" for each in files(ROOT / "patterns")
    }
    assert names(wheel) == shipped
    for part in ("py.typed", "check.schema.json", "CHANGELOG.md", "patterns/leaf-crown.score",
                 "drawing/fonts/DejaVuSans.ttf", "web/static/index.html",
                 "web/static/fonts/sans.woff2"):  # fmt: skip
        assert f"scorecraft/{part}" in shipped


def test_the_wheel_says_what_it_is(wheel):
    told, packed = metadata(wheel)
    assert told["Version"] == scorecraft.__version__ == "0.4.0"
    assert told["License-Expression"] == "MIT"
    licences = {path.name for path in ROOT.glob("scorecraft/**/LICENSE*")} | {"LICENSE"}
    assert {Path(name).name for name in told.get_all("License-File")} == licences
    assert {Path(name).name for name in packed if "/licenses/" in name} == licences


def test_the_sources_hold_what_the_top_level_holds(sources):
    held = {path.name for path in sources.iterdir() if not path.name.startswith(".")}
    assert held == TOP | {"LICENSE", "PKG-INFO"}
    for name in ("scorecraft", "patterns", "tests", "gallery"):
        assert files(sources / name) == files(ROOT / name)


def test_the_sources_make_the_same_wheel(sources, wheel, tmp_path):
    made = next(WheelBuilder(str(sources)).build(directory=str(tmp_path), versions=["standard"]))
    assert Path(made).read_bytes() == wheel.read_bytes()


def test_nothing_else_stands_at_the_top_level():
    shown = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    made = {name for name in shown if name in MADE or name.endswith(".egg-info")}
    assert shown - made == TOP | {"LICENSE"}


def test_pythons_are_declared_from_the_oldest_that_is_required():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    start = "Programming Language :: Python :: "
    declared = [row.removeprefix(start) for row in project["classifiers"] if row.startswith(start)]
    assert declared == sorted(declared, key=lambda each: int(each.partition(".")[2]))
    assert project["requires-python"] == f">={declared[0]}"


@pytest.fixture(scope="module")
def installed(wheel, tmp_path_factory):
    """Install the wheel where nothing else is; the libraries it needs are those of this Python."""
    home = tmp_path_factory.mktemp("installed") / "env"
    venv.create(home, symlinks=True)
    paths = sysconfig.get_paths("venv", {"base": str(home), "platbase": str(home)})
    site = Path(paths["purelib"])
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(site)
    (site / "libraries.pth").write_text(sysconfig.get_path("purelib"), encoding="utf-8")
    return next(Path(paths["scripts"]).glob("python*"))


def test_an_installed_package_runs_from_any_folder(installed, tmp_path):
    def told(*arguments):
        line = [str(installed), "-I", "-m", "scorecraft", *arguments]
        return subprocess.run(line, cwd=tmp_path, capture_output=True, text=True, check=True).stdout

    assert told("--version") == f"scorecraft, version {scorecraft.__version__}\n"
    rows = [row for row in told("list").splitlines() if row.startswith("  ")]
    assert sorted(row.split()[0] for row in rows) == list(shelf())
    told("guide", "one-slash", "-o", "guide.pdf")
    assert (tmp_path / "guide.pdf").read_bytes().startswith(b"%PDF-")


CLIENT = """
import scorecraft
from scorecraft.checks.finding import Finding

crown = scorecraft.design("leaf-crown", loaf="round width 180mm height 80mm", knobs={"leaves": 9})
found: tuple[Finding, ...] = crown.findings
wide: float = crown.layout.loaf.width_mm
crown.print_to("stencil", "plate.svg", slot_mm=3.0)
"""


def test_types_serve_a_program_that_uses_the_package(installed, tmp_path):
    """With `py.typed` a type checker reads the annotations, and finds what goes against them."""

    def slips(name, text):
        (tmp_path / name).write_text(text, encoding="utf-8")
        python, cache = f"--python-executable={installed}", f"--cache-dir={tmp_path / 'cache'}"
        out, err, _ = mypy.api.run(["--strict", python, cache, str(tmp_path / name)])
        assert not err
        return [row.rpartition("[")[2] for row in out.splitlines() if ": error: " in row]

    assert slips("good.py", CLIENT) == []
    assert slips("bad.py", CLIENT + "lost: int = crown.stops_here\n") == ["attr-defined]"]
