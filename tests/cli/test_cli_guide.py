"""`guide`: files by suffix, whole or not at all, the same bytes twice, papers that fit."""

import os

import ezdxf.recover
import pypdf
import pytest

import scorecraft


def test_a_pdf_is_the_same_bytes_twice(run, tmp_path):
    assert run("guide", "swirl", "-o", "a.pdf").code == 0
    assert run("guide", "swirl", "-o", "b.pdf").code == 0
    first = (tmp_path / "a.pdf").read_bytes()
    assert first.startswith(b"%PDF-")
    assert first == (tmp_path / "b.pdf").read_bytes()


def test_the_name_is_the_patterns_where_none_is_given(run, tmp_path):
    ran = run("guide", "swirl")
    assert ran.err.splitlines()[-1] == "wrote swirl-guide.pdf"
    assert (tmp_path / "swirl-guide.pdf").exists()


def test_a_form_asked_for_is_in_the_name_where_none_is_given(run, tmp_path):
    ran = run("guide", "swirl", "--as", "svg")
    assert ran.err.splitlines()[-1] == "wrote swirl-guide.svg"
    assert (tmp_path / "swirl-guide.svg").read_bytes().startswith(b"<svg")


@pytest.mark.parametrize(("name", "start"), [("g.svg", b"<svg"), ("g.png", b"\x89PNG")])
def test_the_suffix_says_the_form(run, tmp_path, name, start):
    assert run("guide", "swirl", "-o", name, "-q").err == ""
    assert (tmp_path / name).read_bytes().startswith(start)


def test_standard_output_takes_svg_or_what_is_asked_for(run):
    assert run("guide", "swirl", "-o", "-").out.startswith("<svg")
    assert run("guide", "swirl", "-o", "-", "--as", "pdf").out.startswith("%PDF-")


def test_a_paper_too_small_is_tiled_and_one_that_holds_it_is_named(run, tmp_path):
    ran = run("guide", "swirl", "--paper", "A4", "-o", "g.pdf")
    assert ran.code == 0
    assert "too large for one sheet, so it is on 3 pages" in ran.err
    assert "--paper A3 holds it on one" in ran.err
    assert len(pypdf.PdfReader(tmp_path / "g.pdf").pages) == 3
    assert run("guide", "swirl", "--paper", "A4", "-o", "g.pdf", "-q").err == ""
    small = run(
        "guide", "swirl", "--paper", "a4", "-o", "g.pdf",
        "--loaf", "round width 160mm height 70mm",
    )  # fmt: skip
    assert small.code == 0 and "sheet" not in small.err


def test_too_large_for_any_paper_it_is_tiled_or_one_sheet_of_its_own(run, tmp_path):
    loaf = ("--loaf", "round width 420mm height 120mm")
    ran = run("guide", "swirl", *loaf, "-o", "g.pdf")
    assert ran.code == 0 and "pages: page 1 shows how to join" in ran.err
    assert "--paper" not in ran.err
    assert len(pypdf.PdfReader(tmp_path / "g.pdf").pages) > 3
    assert run("guide", "swirl", *loaf, "-o", "g.svg").code == 0
    assert scorecraft.design("swirl", loaf=loaf[1]).guide(tmp_path / "p.pdf").exists()
    assert len(pypdf.PdfReader(tmp_path / "p.pdf").pages) > 3


@pytest.mark.parametrize(
    ("target", "message"),
    [
        ("g.docx", "end it in one of .svg, .pdf, .png"),
        ("no-such-folder/g.pdf", "cannot write"),
        ("folder.pdf", "it is a folder"),
    ],
)
def test_what_cannot_be_written_is_told_and_leaves_nothing(run, tmp_path, target, message):
    (tmp_path / "folder.pdf").mkdir()
    ran = run("guide", "swirl", "-o", target)
    assert ran.code == 2
    assert message in ran.err
    assert sorted(path.name for path in tmp_path.iterdir()) == ["folder.pdf"]


def test_a_failed_print_leaves_the_old_file(run, pattern, tmp_path):
    (tmp_path / "g.pdf").write_bytes(b"old")
    assert run("guide", pattern("slash 3mm\n"), "-o", "g.pdf").code == 2
    assert (tmp_path / "g.pdf").read_bytes() == b"old"
    assert sorted(os.listdir(tmp_path)) == ["g.pdf", "mine.score"]


def test_a_character_that_cannot_be_printed_is_told(run, pattern):
    text = 'title "麦の葉"\nloaf round width 160mm height 70mm\nslash 90mm depth 9mm\n'
    for command in ("guide", "card"):
        ran = run(command, pattern(text), "-o", "g.svg")
        assert ran.code == 0
        assert "麦" in ran.err and "cannot be printed" in ran.err


def test_tiled_it_fits_any_paper(run, tmp_path):
    ran = run("guide", "swirl", "--paper", "A4", "--tiled", "-o", "g.pdf")
    assert ran.code == 0
    pages = pypdf.PdfReader(tmp_path / "g.pdf").pages
    assert len(pages) >= 3
    assert {tuple(sorted(round(float(s) / 72 * 25.4) for s in p.mediabox[2:])) for p in pages} == {
        (210, 297)
    }
    one_page = run("guide", "swirl", "--paper", "A4", "--tiled", "-o", "g.svg")
    assert one_page.code == 2 and ".pdf" in one_page.err


def test_the_cuts_alone_for_a_cutter(run, tmp_path):
    assert run("guide", "leaf-crown", "-o", "cuts.dxf").code == 0
    drawing, auditor = ezdxf.recover.readfile(tmp_path / "cuts.dxf")
    assert not auditor.errors and len(drawing.modelspace()) > 100
    assert run("guide", "leaf-crown", "--cutter", "-o", "cuts.svg").code == 0
    text = (tmp_path / "cuts.svg").read_text()
    assert "dasharray" not in text and "transform" not in text and "<path" in text


def test_the_guide_tells_openings_and_room(run):
    text = run("guide", "leaf-crown", "-o", "-").out
    for piece in ("Enough room to spring (model estimate)", "of the oven spring", "opens"):
        assert piece in text
