import re

from scorecraft.loaf.forms import FORMS
from scorecraft.loaf.tin import PANS
from scorecraft.web.loaf_forms import loaf_forms


def test_the_page_has_every_form_and_tin():
    told = loaf_forms()
    assert [each["name"] for each in told["forms"]] == list(FORMS)
    assert [each["name"] for each in told["pans"]] == list(PANS)
    for each in told["forms"]:
        assert re.fullmatch(r"M[-MLHVCSQTAmlhvcsqtazZ0-9. ]*", each["icon"]), each["name"]
        assert each["help"]
    ring = next(each for each in told["forms"] if each["name"] == "ring")
    assert ring["ring"] and not ring["held"]


def test_a_design_tells_its_hole(asking):
    told = asking.told(
        "/api/design", {"text": "loaf ring width 280mm hole 90mm\nat y 90mm:\n    slash 20mm\n"}
    )
    assert told["loaf"]["shape"] == "ring" and told["loaf"]["hole_mm"] == 90
    assert told["kinds"]["forms"]


def test_the_loaf_takes_another_form_as_the_page_asks(asking):
    text = "loaf roll dough 80g  # mine\nslash 20mm\n"
    told = asking.told("/api/reform", {"text": text, "form": "epi"})
    assert told["text"] == text.replace("roll", "epi")
    broken = asking.told("/api/reform", {"text": "slush\n", "by": "dough"})
    assert "fix the text first" in broken["problems"][0]["message"].lower()
