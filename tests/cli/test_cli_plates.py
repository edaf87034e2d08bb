import re
import xml.etree.ElementTree as ET

import pypdfium2
import pytest

RING = 'title "Ring"\nloaf round width 160mm height 70mm\nring 50% depth 3mm\n'


@pytest.fixture
def ring(pattern):
    return pattern(RING)


@pytest.mark.parametrize(
    ("command", "suffix"), [("stencil", "svg"), ("drape", "pdf"), ("ring", "png")]
)
def test_the_suffix_says_the_form(run, ring, tmp_path, command, suffix):
    ran = run(command, ring, "-o", f"out.{suffix}")
    assert ran.code == 0, ran.err
    data = (tmp_path / f"out.{suffix}").read_bytes()
    assert data.startswith({"svg": b"<svg", "pdf": b"%PDF", "png": b"\x89PNG"}[suffix])


def test_the_default_name_and_dash(run, ring, tmp_path):
    assert run("ring", ring).code == 0
    assert (tmp_path / "mine-ring.pdf").exists()
    assert ET.fromstring(run("stencil", ring, "-o", "-").out).get("width") == "297mm"


def test_a_cutter_file_is_plain_lines(run, ring, tmp_path):
    ran = run("stencil", ring, "--cutter", "-o", "a.svg")
    assert ran.code == 0 and "food-contact film" in ran.err and "fumes" in ran.err
    text = (tmp_path / "a.svg").read_text()
    assert "cut slots" in text and "check 100 mm" in text and "<text" not in text
    assert run("stencil", ring, "-o", "a.dxf").code == 0
    assert b"AC1009" in (tmp_path / "a.dxf").read_bytes()
    assert run("stencil", ring, "--cutter", "-o", "a.png").code == 2


def test_sizes_are_lengths_with_units(run, ring):
    assert run("stencil", ring, "-o", "a.svg", "--slot", "1/8in", "--bridge", "4mm").code == 0
    for wrong in ("3", "30deg", "wide", "50%", ""):
        ran = run("stencil", ring, "-o", "a.svg", "--slot", wrong)
        assert ran.code == 2 and "is not a length" in ran.err


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (["--slot", "70mm"], "use 0.8 mm to 40 mm"),
        (["--bridge", "0.2mm"], "bridge"),
        (["--only", "leaf"], "there are: ring"),
        (["--paper", "A9"], "not a paper"),
    ],
)
def test_slips_are_told_and_nothing_is_written(run, ring, tmp_path, options, told):
    ran = run("stencil", ring, "-o", "a.pdf", *options)
    assert ran.code == 2 and told in ran.err
    assert not (tmp_path / "a.pdf").exists()


def test_left_out_parts_are_told(run, pattern):
    fine = RING + "fill disc radius 12% with hatch size 2mm depth 2mm\n"
    ran = run("stencil", pattern(fine), "-o", "a.svg")
    assert ran.code == 0 and "left out: hatch" in ran.err
    assert "left out" not in run("stencil", pattern(fine), "-q", "-o", "a.svg").err
    ran = run("stencil", pattern(fine), "-o", "a.svg", "--slot", "3mm", "--only", "hatch")
    assert ran.code == 2 and "hatch" in ran.err
    ran = run("stencil", pattern(fine), "-o", "a.svg", "--only", "ring")
    assert ran.code == 0 and "left out" not in ran.err


def test_a_large_drape_is_spread_over_sheets(run, tmp_path):
    ran = run("drape", "swirl", "-o", "a.pdf")
    assert ran.code == 0
    pages = int(re.search(r"(\d+) pages", ran.err).group(1))
    document = pypdfium2.PdfDocument(tmp_path / "a.pdf")
    assert len(document) == pages > 2
    assert run("drape", "swirl", "-o", "b.svg").code == 0


def test_a_fit_that_cannot_be(run, ring):
    ran = run("drape", ring, "-o", "a.pdf", "--fit", "0.001mm")
    assert ran.code == 2 and "--fit" in ran.err
