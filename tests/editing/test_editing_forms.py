"""Another form keeps the width or the dough of a loaf, and has its usual measures else."""

import pytest

from scorecraft.designing import make
from scorecraft.editing import forms
from scorecraft.editing.head import keys_as_written, with_keys
from scorecraft.loaf.forms import FORMS
from scorecraft.shelf import find_source

HEADS = (
    "loaf roll dough 80g",
    "loaf round width 220mm height 95mm",
    "loaf round dough 900g basket 220mm",
    "loaf tin pan two_pound",
    "loaf ring width 280mm hole 90mm",
)


def changed(head, act):
    design = make(find_source(f"{head}\nslash 20mm\n"))
    written = keys_as_written(design.tree.statements[0])
    return with_keys(design.source.text, "loaf", act(design.layout, written)).splitlines()[0]


@pytest.mark.parametrize("head", HEADS)
def test_every_form_can_be_chosen_whatever_the_loaf_was(head):
    for name in FORMS:
        line = changed(head, lambda *now, name=name: forms.keys_of_form(*now, name))
        loaf = make(find_source(f"{line}\nslash 20mm\n")).layout.loaf
        assert loaf.shape == name and loaf.height_mm > 10


def test_a_form_keeps_what_fits_it():
    def as_form(head, name):
        return changed(head, lambda *now: forms.keys_of_form(*now, name))

    assert as_form(HEADS[0], "epi") == "loaf epi dough 80g"
    assert as_form(HEADS[0], "baguette") == "loaf baguette dough 350g"
    assert as_form(HEADS[1], "square") == HEADS[1].replace("round", "square")
    assert as_form(HEADS[2], "square") == HEADS[2].replace("round", "square")
    assert as_form(HEADS[2], "oval") == "loaf oval dough 900g"
    assert as_form(HEADS[4], "tin") == "loaf tin pan two_pound"


def test_a_loaf_is_sized_by_its_dough_and_back():
    line = changed(HEADS[1], forms.keys_by_dough)
    assert line.startswith("loaf round dough ")
    assert changed(line, forms.keys_by_size).startswith("loaf round width 220mm height 95mm")
    freed = changed(HEADS[3], lambda layout, _: forms.keys_of_pan(layout, ""))
    assert freed.startswith("loaf tin width 110mm length 210mm")
