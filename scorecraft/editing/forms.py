"""Another form for the loaf of a pattern, or another way to size it: the keys its line has then."""

from collections.abc import Iterator, Mapping

from scorecraft.cuts import Layout
from scorecraft.errors import ScorecraftError
from scorecraft.expand.drawings import Drawings
from scorecraft.expand.header import loaf_of, spoken
from scorecraft.loaf.forms import FORMS, Form, form_of
from scorecraft.loaf.sizing import grams_of

Keys = dict[str, str]
"""Keys of the loaf with their values as written; an empty one takes its key away."""

AREA_MM2 = (30_000.0, 45_000.0)
"""Another form covers as much of the bench as the loaf does, if that is usual."""
TIN = "two_pound"
"""A household's tin."""
USUAL_G = (900, 350, 80)
"""The dough of a loaf, a baguette and a roll."""


def keys_of_form(layout: Layout, written: Mapping[str, str], name: str) -> Keys:
    """Give the keys that make a loaf one of another form.

    It keeps its width, or its dough, and has the usual measures of the form where the old ones do
    not fit it. Raises UsageError for a form that there is not.
    """
    tried = list(_tries(layout, written, form_of(name)))
    sound = [keys for keys in tried if _doubts(layout, written, keys) is not None]
    return next((keys for keys in sound if not _doubts(layout, written, keys)), (sound or tried)[0])


def keys_by_dough(layout: Layout, written: Mapping[str, str]) -> Keys:
    """Give the keys that size a loaf by the dough it has."""
    form = FORMS[layout.loaf.shape]
    grams = form.dough_g[1] if form.dough_g else round(grams_of(layout.loaf, layout.dough), -1)
    return {"width": "", "length": "", "height": "", "dough": f"{grams:g}g"}


def keys_by_size(layout: Layout, written: Mapping[str, str]) -> Keys:
    """Give the keys that size a loaf by the measures it has; in a tin those of the tin stay."""
    plain = {"dough": "", "basket": "", "by": ""}
    return plain if "pan" in written else plain | measures(layout)


def keys_of_pan(layout: Layout, name: str) -> Keys:
    """Give the keys for a tin by its common name, or for none: by the measures it has."""
    if name:
        return {"pan": name, "width": "", "length": "", "height": ""}
    return {"pan": ""} | measures(layout)


def measures(layout: Layout) -> Keys:
    """Write the measures a loaf has, in whole mm."""
    loaf = layout.loaf
    length = "" if FORMS[loaf.shape].even else f"{loaf.length_mm:.0f}mm"
    return {
        "width": f"{loaf.width_mm:.0f}mm",
        "length": length,
        "height": f"{loaf.height_mm:.0f}mm",
    }


def _tries(layout: Layout, written: Mapping[str, str], to: Form) -> Iterator[Keys]:
    """Yield keys for another form, those that keep most first."""
    loaf = layout.loaf
    now = FORMS.get(loaf.shape)
    bare = {"shape": to.name, "length": "", "hole": "", "pan": "", "taper": ""}
    free = bare | {"width": "", "height": ""}
    alike = now is not None and now.stands == to.stands
    if "dough" in written:
        same = now is not None and now.even == to.even and not to.held
        basket = {} if same else {"basket": "", "by": ""}
        yield free | basket
    elif to.held:
        yield free | {"pan": TIN}
    elif not to.dough_g:
        if alike and "width" in written:
            yield bare | {"length": _length(loaf.width_mm, to)}
        area = min(max(loaf.width_mm * loaf.length_mm, AREA_MM2[0]), AREA_MM2[1])
        width = 5 * round((area / to.longer) ** 0.5 / 5)
        yield free | {"width": f"{width}mm", "length": _length(width, to)}
    grams = (to.dough_g[1],) if to.dough_g else USUAL_G
    yield from (free | {"basket": "", "by": "", "dough": f"{each:g}g"} for each in grams)


def _length(width_mm: float, form: Form) -> str:
    even = form.even or form.longer == 1.0
    return "" if even else f"{width_mm * form.longer:.0f}mm"


def _doubts(layout: Layout, written: Mapping[str, str], keys: Keys) -> int | None:
    """Count what speaks against a loaf with these keys; None for one that cannot be."""
    said = {key: value for key, value in {**written, **keys}.items() if value}
    shape = said.pop("shape")
    line = " ".join([shape, *(f"{key} {value}" for key, value in said.items())])
    try:
        return len(loaf_of(spoken("loaf", line), Drawings(None), layout.dough)[1].doubts)
    except ScorecraftError:
        return None
