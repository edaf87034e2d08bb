"""What the page asks the server for, and what it gets."""

import base64
import io
import re
from xml.etree import ElementTree

import numpy as np
import pypdf
import pytest
from PIL import Image
from support.web_patterns import SLASH

from scorecraft.designing import make
from scorecraft.errors import Place
from scorecraft.language import reference
from scorecraft.language.words import WORDS
from scorecraft.prints import PRINTS
from scorecraft.shelf import shelf
from scorecraft.tune.bake import openings, tune
from scorecraft.tune.log import earlier, read
from scorecraft.tune.measured import Measured
from scorecraft.tune.predict import predictor
from scorecraft.web.telling import HANDLE
from scorecraft.web.word_list import word_list

LEANING = r"\d+° (to the left|to the right|away|toward you)"
SVG = "{http://www.w3.org/2000/svg}"


def test_the_page_and_its_parts_are_served(asking):
    page = asking.get("/").text
    for address in re.findall(r'(?:href|src)="(/static/[^"]+)"', page):
        assert asking.get(address).status_code == 200, address


def test_the_shelf_lists_every_shipped_pattern_and_the_folders_own(asking, folder):
    (folder.path / "mine.score").write_text(SLASH)
    (folder.path / "broken.score").write_text("loaf round widht 200mm\n")
    (folder.path / "notes.txt").write_text("no pattern")
    told = asking.get("/api/shelf").get_json()
    assert sorted(each["name"] for each in told["shelf"]) == [f"{name}.score" for name in shelf()]
    assert {each["level"] for each in told["shelf"]} == {"first", "steady", "show"}
    assert all(each["title"] and each["shape"] and not each["problem"] for each in told["shelf"])
    broken, mine = told["folder"]
    assert (mine["title"], mine["shape"], mine["problem"]) == ("Mine", "round", "")
    assert broken["problem"].startswith("line 1: ")


def test_pictures_of_the_shelf_are_drawn(asking, folder):
    (folder.path / "mine.score").write_text(SLASH)
    for address in ("/picture/shelf/sun.score", "/picture/folder/mine.score"):
        answer = asking.get(address)
        assert answer.mimetype == "image/svg+xml"
        assert ElementTree.fromstring(answer.data).tag == f"{SVG}svg"


def test_a_shipped_pattern_is_drawn_once_and_ones_own_as_it_is_now(
    asking, folder, crew, monkeypatch
):
    drawn, do = [], crew.do

    def counted(task, data, **more):
        drawn.append(data["name"])
        return do(task, data, **more)

    monkeypatch.setattr(crew, "do", counted)
    shipped = [asking.get(f"/picture/shelf/{name}.score").data for name in ("sun", "fern", "sun")]
    assert shipped[0] == shipped[2] != shipped[1]
    for width in (200, 150):
        (folder.path / "mine.score").write_text(SLASH.replace("200mm", f"{width}mm"))
        shipped.append(asking.get("/picture/folder/mine.score").data)
    assert shipped[3] != shipped[4]
    assert drawn == ["sun.score", "fern.score", "mine.score", "mine.score"]


@pytest.mark.parametrize("name", ["leaf-crown", "fern"])
def test_a_design_is_told_as_the_command_line_tells_it(asking, name):
    opened = asking.told("/api/open", {"place": "shelf", "name": f"{name}.score"})
    told = asking.told("/api/design", {"text": opened["text"], "name": name, "place": "shelf"})
    design = make(name)
    assert told["title"] == design.layout.title
    assert len(told["cuts"]) == len(design.cuts)
    assert [each["message"] for each in told["findings"]] == [
        f.message for f in design.drawn_findings
    ]
    drawn = ElementTree.fromstring(told["svg"]).iter(f"{SVG}path")
    assert {path.get("data-cut") for path in drawn} >= {str(k) for k in range(len(design.cuts))}


def test_knobs_tell_their_value_and_range(asking):
    (knob,) = asking.told("/api/design", {"text": SLASH})["knobs"]
    assert (knob["value"], knob["low"], knob["high"], knob["unit"]) == (8, 6, 11, "mm")
    assert knob["turns"] is True


def test_a_knob_worked_out_in_the_text_has_no_number_to_slide(asking):
    text = SLASH.replace("knob deep 8mm", "knob deep (2 * 4mm)")
    (knob,) = asking.told("/api/design", {"text": text})["knobs"]
    assert knob["value"] == 8 and knob["turns"] is False


def test_knobs_loaf_and_bake_can_be_set_from_outside(asking):
    asked = {
        "text": SLASH,
        "knobs": {"deep": "10mm"},
        "loaf": "oval width 150mm",
        "bake": "spring 1.2",
    }
    told = asking.told("/api/design", asked)
    assert told["cuts"][0]["depth_mm"] == 10
    assert told["loaf"]["shape"] == "oval"


def test_problems_of_a_text_have_their_places(asking):
    told = asking.told("/api/design", {"text": "loaf round width 200mm\nleef 30mm\nslash 3mmm\n"})
    assert told["ok"] is False
    assert [(each["line"], each["column"]) for each in told["problems"]] == [(2, 1), (3, 8)]
    assert all(each["message"] and each["length"] for each in told["problems"])


def test_findings_point_at_their_cuts(asking):
    told = asking.told("/api/design", {"text": SLASH.replace("slash 100mm", "slash 300mm")})
    finding = next(each for each in told["findings"] if each["check"] == "rim")
    assert finding["cuts"] == [0]
    assert finding["line"] == 6


def test_openings_are_told_for_every_cut(asking):
    told = asking.told("/api/opening", {"text": SLASH})
    assert [each["message"] for each in told["findings"]] == [
        each.message for each in make(SLASH).findings
    ]
    assert told["room"] and told["verdict"]
    ((least, most),) = told["widest_mm"]
    assert 2 < least < most < 40


def test_the_bench_can_be_set_as_a_form(asking):
    assert asking.told("/api/design", {"text": SLASH})["forms"]["bench"] is None
    told = asking.told("/api/design", {"text": SLASH.replace("knob", "bench hand left\nknob", 1)})
    assert told["forms"]["bench"] == {"keys": {"hand": "left"}}


def test_the_dough_is_told_as_it_is_and_set_as_a_form(asking):
    told = asking.told("/api/design", {"text": SLASH})
    assert told["forms"]["dough"] is None and told["dough"]["proof"] == "ready"
    assert told["bake"] == {"spring": 1.4, "spread": 0.5, "steam": True}
    keys = {"proof": "over", "temperature": "5C"}
    text = asking.told("/api/edit", {"text": SLASH, "word": "dough", "keys": keys})["text"]
    assert "\ndough over temperature 5C\n" in text
    told = asking.told("/api/design", {"text": text})
    assert told["forms"]["dough"] == {"keys": keys}
    assert (told["dough"]["temperature_c"], told["bake"]["spring"]) == (5.0, 1.15)


def test_the_loaf_in_the_oven_is_pictured_see_through(asking):
    half, baked, dark = (
        asking.told("/api/bloom", {"text": SLASH, **wish})
        for wish in ({"share": 0.5}, {}, {"crust": "dark", "flour": "none"})
    )
    assert half["size"][0] < baked["size"][0] and baked["sideways"] > 1
    photos = []
    for told in (half, baked, dark):
        kind, held = told["image"].split(",")
        assert kind == "data:image/webp;base64"
        photos.append(np.asarray(Image.open(io.BytesIO(base64.b64decode(held)))))
        assert photos[-1].shape[2] == 4 and max(photos[-1].shape) == 600
    middle = [photo[250:350, 200:400, :3].mean() for photo in photos]
    assert middle[0] > middle[1] > middle[2]
    for wish in ({"share": 2}, {"crust": "burnt"}, {"flour": 3}):
        assert asking.post("/api/bloom", {"text": SLASH, **wish}).status_code == 400


def test_other_views_are_drawn(asking):
    for look in ("side", "guide", "tension"):
        seen = asking.told("/api/view", {"text": SLASH, "look": look})
        assert ElementTree.fromstring(seen["svg"]).tag == f"{SVG}svg"
    assert asking.post("/api/view", {"text": SLASH, "elevation": 500}).status_code == 400


def test_a_file_is_saved_opened_and_saved_again(asking, folder):
    saved = asking.told("/api/save", {"name": "mine", "text": SLASH, "mark": None})
    assert saved["name"] == "mine.score"
    assert (folder.path / "mine.score").read_text() == SLASH
    opened = asking.told("/api/open", {"place": "folder", "name": "mine.score"})
    assert opened == saved | {"text": SLASH}
    again = asking.told("/api/save", {"name": "mine.score", "text": "x", "mark": opened["mark"]})
    assert (folder.path / "mine.score").read_text() == "x"
    assert again["mark"] != opened["mark"]


def test_a_file_changed_meanwhile_is_not_written_over(asking, folder):
    saved = asking.told("/api/save", {"name": "mine", "text": SLASH, "mark": None})
    (folder.path / "mine.score").write_text("another hand")
    answer = asking.post("/api/save", {"name": "mine", "text": "x", "mark": saved["mark"]})
    assert answer.status_code == 409
    assert (folder.path / "mine.score").read_text() == "another hand"
    forced = {"name": "mine", "text": "x", "mark": answer.get_json()["mark"]}
    assert asking.post("/api/save", forced).status_code == 200


def test_a_new_file_never_replaces_one_that_is_there(asking, folder):
    (folder.path / "mine.score").write_text("old")
    answer = asking.post("/api/save", {"name": "mine", "text": "new", "mark": None})
    assert answer.status_code == 409 and (folder.path / "mine.score").read_text() == "old"


def test_steps_at_the_bench_hold_every_cut_once(asking):
    opened = asking.told("/api/open", {"place": "shelf", "name": "wheat-sheaf.score"})
    asked = {"text": opened["text"], "name": "wheat-sheaf.score", "place": "shelf"}
    told = asking.told("/api/bench", asked)
    cuts = [pull["cut"] for step in told["steps"] for pull in step["pulls"]]
    assert sorted(cuts) == list(range(len(make("wheat-sheaf").cuts)))
    table = 0.0
    for step in told["steps"]:
        table += step["turn_deg"]
        assert (table - step["table_deg"]) % 360 == pytest.approx(0, abs=0.01) or (
            table - step["table_deg"]
        ) % 360 == pytest.approx(360, abs=0.01)
        names = [name for line in step["lines"] for name in line["names"].split(" + ")]
        counts = [int(name.split(" × ")[0]) if " × " in name else 1 for name in names]
        assert sum(counts) == len(step["pulls"])


@pytest.mark.parametrize("name", ["leaf-crown", "leaf-bough"])
def test_the_bench_counts_steps_once_and_only_copies_as_repeats(asking, name):
    opened = asking.told("/api/open", {"place": "shelf", "name": f"{name}.score"})
    asked = {"text": opened["text"], "name": f"{name}.score", "place": "shelf"}
    told = asking.told("/api/bench", asked)
    design = make(name)
    assert told["count"] == len(told["steps"]) == len(list(design.work.steps))
    assert [step["number"] for step in told["steps"]] == list(range(1, told["count"] + 1))
    rows = {run.letter: run for run in design.work.runs}
    for step in told["steps"]:
        run = rows[step["row"]]
        assert step["times"] == (len(run.steps) if run.copies else 1)
        assert 1 <= step["time"] <= step["times"]
        cuts = {design.layout.cuts[pull["cut"]].name for pull in step["pulls"]}
        names = [name for line in step["lines"] for name in line["names"].split(" + ")]
        assert {name.split(" × ")[-1] for name in names} == cuts
    turns = [[said for said, _ in step["turn_said"]] for step in told["steps"]]
    assert name != "leaf-crown" or [
        turns[0][3],
        turns[2][3],
    ] == ["· mark to 112½°", "· mark to 157½°"]


@pytest.mark.parametrize("name", ["leaf-crown", "wheat-sheaf", "swirl"])
def test_the_bench_tells_how_the_handle_leans(asking, name):
    """It says so in the card's words where the handle leans to one side."""
    opened = asking.told("/api/open", {"place": "shelf", "name": f"{name}.score"})
    asked = {"text": opened["text"], "name": f"{name}.score", "place": "shelf"}
    leans = set()
    steps = asking.told("/api/bench", asked)["steps"]
    for step, made in zip(steps, make(name).work.steps, strict=True):
        handles = [said for line in step["lines"] for key, said in line["facts"] if key == HANDLE]
        assert not handles or any(abs(pull.tilt_rad) > 1e-3 for pull in made.pulls)
        leans.update(handles)
    assert leans and all(re.fullmatch(LEANING, each) for each in leans)


def test_the_page_is_told_what_there_is_to_print(asking):
    prints = {each["name"]: each for each in asking.get("/api/prints").get_json()["prints"]}
    assert list(prints) == [row.name for row in PRINTS.values() if row.on_page] + ["cutter"]
    assert [each["name"] for each in prints.values() if not each["paper"]] == ["cutter"]
    assert prints["cutter"]["forms"] == ["svg", "dxf"]
    keys = {name: [each["key"] for each in row["options"]] for name, row in prints.items()}
    plate = [option.key for option in PRINTS["stencil"].options if option.on_page]
    assert keys["cutter"] == ["follow", *plate] and keys["guide"] == []
    assert keys["stencil"] == [key for key in plate if key not in ("layer", "part")]
    assert all(each["help"] and each["title"] for each in prints.values())
    assert prints["card"]["title"] == "Bench card"


def test_a_refused_print_calls_options_as_the_page_does(asking):
    asked = {"text": SLASH, "what": "stencil", "form": "pages", "plate": "90x90mm"}
    told = asking.post("/api/print", asked).get_json()["error"]
    assert "“Split into plates to join" in told["hint"] and "--" not in told["hint"]


@pytest.mark.parametrize("what", ["guide", "card", "stencil", "drape", "ring"])
def test_every_print_has_pages_and_a_pdf_of_their_size(asking, what):
    asked = {"text": SLASH, "name": "mine.score", "what": what, "paper": "A4"}
    told = asking.told("/api/print", asked)
    assert told["paper"] == "A4" and told["pages"]
    answer = asking.post("/api/print", asked | {"form": "pdf"})
    assert answer.mimetype == "application/pdf"
    assert f"mine-{what}.pdf" in answer.headers["Content-Disposition"]
    pages = pypdf.PdfReader(io.BytesIO(answer.data)).pages
    assert len(pages) == len(told["pages"])
    for page, seen in zip(pages, told["pages"], strict=True):
        size = [float(each) * 25.4 / 72 for each in (page.mediabox.width, page.mediabox.height)]
        assert size == pytest.approx([seen["width_mm"], seen["height_mm"]], abs=0.2)


@pytest.mark.parametrize(
    ("name", "plain", "full"),
    [
        ("mine.score", "mine-cutter.svg", None),
        ("żółć.score", "zoc-cutter.svg", "%C5%BC%C3%B3%C5%82%C4%87-cutter.svg"),
        ("葉の輪.score", "cutter.svg", "%E8%91%89%E3%81%AE%E8%BC%AA-cutter.svg"),
        ('a\r\nX-Evil: "1".score', "a_X-Evil_ _1_-cutter.svg", None),
        ("é/../x.score", "x-cutter.svg", None),
    ],
)
def test_a_print_is_named_in_any_script(asking, name, plain, full):
    """RFC 6266: `filename*` in UTF-8 (RFC 5987), and a name in ASCII for those who cannot."""
    asked = {"text": SLASH, "name": name, "what": "cutter", "form": "svg", "follow": "cuts"}
    answer = asking.post("/api/print", asked)
    assert answer.status_code == 200
    told = dict(
        part.strip().split("=", 1) for part in answer.headers["Content-Disposition"].split(";")[1:]
    )
    assert told["filename"].strip('"') == plain
    assert told.get("filename*") == (full and f"UTF-8''{full}")
    assert "X-Evil" not in answer.headers


@pytest.mark.parametrize("what", ["guide", "stencil", "drape", "ring"])
def test_a_print_too_large_for_the_paper_says_that_it_is_on_several_pages(asking, what):
    text = "loaf round width 300mm height 110mm\nslash 90mm depth 9mm\n"
    told = asking.told("/api/print", {"text": text, "what": what, "paper": "A4"})
    assert len(told["pages"]) > 2
    assert f"on {len(told['pages'])} pages" in told["remark"]
    small = {"text": SLASH, "what": "card", "paper": "A4"}
    assert asking.told("/api/print", small)["remark"] == ""


@pytest.mark.parametrize("follow", ["stencil", "cuts"])
def test_cutter_files_are_svg_or_dxf(asking, follow):
    asked = {"text": SLASH, "name": "mine.score", "what": "cutter", "follow": follow}
    drawn = asking.post("/api/print", asked | {"form": "svg"})
    assert ElementTree.fromstring(drawn.data).get("width").endswith("mm")
    lines = asking.post("/api/print", asked | {"form": "dxf"})
    assert lines.data.count(b"POLYLINE") > 1 and lines.data.strip().endswith(b"EOF")
    assert asking.post("/api/print", asked | {"form": "png"}).status_code == 400


def test_a_slot_no_flour_falls_through_is_refused(asking):
    asked = {"text": SLASH, "what": "stencil", "slot_mm": 0.1}
    assert asking.post("/api/print", asked).status_code == 400


def measured_row(asking, text, width_mm, key="slash"):
    """A row as the page keeps it: the cut's key and the mark of its statement."""
    groups = asking.told("/api/design", {"text": text})["groups"]
    (mark,) = [group["mark"] for group in groups if group["key"] == key]
    return {"key": key, "mark": mark, "width_mm": width_mm}


def test_measured_openings_that_cannot_be_are_refused(asking, folder):
    row = measured_row(asking, SLASH, 3)
    slips = ({"key": "leaf"}, {"key": 1}, {"mark": "other"}, {"width_mm": -1}, {"width_mm": 1e9})
    for rows in ([], [7], None, [{"key": "slash"}], *([row | slip] for slip in slips)):
        asked = {"text": SLASH, "rows": rows, "keep": True}
        assert asking.post("/api/measure", asked).status_code == 400, rows
    asked = {"text": SLASH, "rows": [{"number": 1, "width_mm": 9}], "keep": True, "note": "a\nb"}
    assert asking.post("/api/measure", asked).status_code == 400
    assert list(folder.path.iterdir()) == []


def test_a_width_stays_with_its_cut_through_edits_or_is_refused(asking):
    row = measured_row(asking, SLASH, 9.0)
    before = 'at x -40mm:\n    slash 60mm depth 3mm called "mark"\n'
    longer = SLASH.replace("slash 100mm", f"{before}slash 100mm")
    told = asking.told("/api/measure", {"text": longer, "rows": [row]})
    assert [each["key"] for each in told["rows"]] == ["slash"]
    refused = asking.post("/api/measure", {"text": SLASH.replace("100mm", "90mm"), "rows": [row]})
    assert (
        refused.status_code == 400 and "has changed since" in refused.get_json()["error"]["message"]
    )


def predicted(told):
    """What the model predicts of every measured opening (mm)."""
    return [row["predicted_mm"] for row in told["rows"]]


def test_the_fit_is_that_of_the_command_line(asking, folder, tmp_path_factory):
    rows = [measured_row(asking, SLASH, width) for width in (9.0, 11.0)]
    told = asking.told("/api/measure", {"text": SLASH, "name": "mine.score", "rows": rows})
    design = make(SLASH)
    place = Place("", 1, 1)
    known = tune(
        design.layout,
        design.groups,
        [Measured("slash", 9.0, place), Measured("slash", 11.0, place)],
        predictor(design.layout, design.groups),
    )
    assert predicted(told) == pytest.approx([each for _, each in openings(known)], abs=1e-3)
    assert told["kept"] is False and list(folder.path.iterdir()) == []
    asking.told("/api/measure", {"text": SLASH, "rows": rows, "keep": True, "note": "hot"})
    (bake,) = asking.get("/api/bakes").get_json()["bakes"]
    assert bake["note"] == "hot" and bake["title"] == "Mine"
    again = asking.told("/api/measure", {"text": SLASH, "rows": rows})
    note = "Fitted together with the earlier bake of your log."
    assert note not in again["learned"], "the bake that is kept already counts once"
    assert again["learned"] == told["learned"] and predicted(again) == predicted(told)
    more = [measured_row(asking, SLASH, width) for width in (9.0, 10.0)]
    both = asking.told("/api/measure", {"text": SLASH, "rows": more})
    before = earlier(read(folder.path / "bakes.jsonl"))
    measured = [Measured("slash", width, place) for width in (9.0, 10.0)]
    model = predictor(design.layout, design.groups)
    known = tune(design.layout, design.groups, measured, model, before)
    assert note in both["learned"] and known.earlier == 1
    assert predicted(both) == pytest.approx([each for _, each in openings(known)], abs=1e-3)


def test_the_newest_bake_is_listed_first(asking):
    rows = [measured_row(asking, SLASH, 9.0)]
    for note in ("the first", "the second"):
        asking.told("/api/measure", {"text": SLASH, "rows": rows, "keep": True, "note": note})
    told = asking.get("/api/bakes").get_json()["bakes"]
    assert [bake["note"] for bake in told] == ["the second", "the first"]


def widest(told):
    """The most of the widest opening."""
    return max(most for _, most in told["widest_mm"])


def test_the_page_goes_by_the_bakers_skin_and_tells_wishes_out_of_reach(asking, folder):
    (folder.path / "baker.toml").write_text(
        "settled = true\nskin_mm = 20.0\nskin_bounds_mm = [18.0, 22.0]\nopenings = 9\n"
    )
    usual, own = (
        asking.told("/api/opening", {"text": SLASH, "baker": baker}) for baker in (False, True)
    )
    assert widest(own) < 0.9 * widest(usual)
    wish = SLASH.replace("slash 100mm depth deep", "slash 40mm opens 50mm")
    told = asking.told("/api/design", {"text": wish})
    assert "opens" in {finding["check"] for finding in told["findings"]}


ABOUT_A_TEXT = ["design", "opening", "bloom", "view", "print", "bench"]


@pytest.mark.parametrize("task", ABOUT_A_TEXT)
def test_every_answer_carries_the_mark_of_its_question(asking, task):
    """So that the page can tell an answer about another text from one about its own."""
    told = asking.told(f"/api/{task}", {"text": SLASH, "asked": 'page 7 "é"'})
    assert told["ok"] and told["asked"] == 'page 7 "é"'
    assert "asked" not in asking.told(f"/api/{task}", {"text": SLASH})
    broken = asking.told(f"/api/{task}", {"text": "slush\n", "asked": "8"})
    assert broken["problems"] and broken["asked"] == "8"
    refused = asking.post(f"/api/{task}", {"text": 7, "asked": "9"})
    assert (refused.status_code, refused.get_json()["asked"]) == (400, "9")
    assert asking.post(f"/api/{task}", {"text": SLASH, "asked": "x" * 65}).status_code == 400


def test_what_is_laid_out_carries_nobodys_mark(asking):
    asking.told("/api/bench", {"text": SLASH, "asked": "baker"})
    assert "asked" not in asking.get("/api/laid").get_json()


def test_lines_are_counted_as_editors_count_them(asking):
    text = "# a page\fbreak and a separator\u2028 end no line\n" + SLASH
    told = asking.told("/api/design", {"text": text})
    (knob,) = told["knobs"]
    assert text.split("\n")[knob["line"] - 1].startswith("knob deep")
    turned = asking.told("/api/edit", {"text": text, "knob": "deep", "value": "9mm"})["text"]
    assert turned == text.replace("deep 8mm", "deep 9mm")


def test_the_words_of_the_language_are_those_of_the_command_line():
    told = word_list()
    words = [word for group in told["groups"] for word in group["words"]]
    assert sorted(word["name"] for word in words) == sorted(WORDS)
    for word in words:
        entry = reference.entry(WORDS[word["name"]])
        assert word["help"] in entry and word["example"].splitlines()[0] in entry
        assert [key["name"] for key in word["keys"]] == [
            key.name for key in reference.own_keys(WORDS[word["name"]])
        ]
        assert all(key["notes"] for key in word["keys"])
    assert " ".join(told["about"].split()[:5]) in reference.at_hand()
