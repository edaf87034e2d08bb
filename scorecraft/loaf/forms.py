"""The table of the forms that loaves have: one row each.

Language, sizing, page and reference all read it here. A rim that is no superellipse is drawn by
the function of the form's name in `loaf/rims`.
"""

from collections.abc import Iterator

from scorecraft.frozen import dataclass
from scorecraft.loaf import telling as say
from scorecraft.loaf.tin import PANS
from scorecraft.practice import COMMON, HEIGHT_PER_WIDTH, SET, Rule


@dataclass(frozen=True, slots=True)
class Form:
    """A form: its name, what it is in a few words, its icon, and its usual measures.

    `longer`, `stands` and `hole` are shares of the width: length, height, and what is open in the
    middle. `flat` is the power p of its profile; `power` that of its superellipse, or None for a
    rim with a drawing of its own. One that is `even` is always as long as it is wide; one that is
    `held` stands in a tin. `icon` is an SVG path on a field of 24 by 24; `bakes` is its kind in
    the oven table, where its weight does not tell; `dough_g` the least, the usual and the most
    dough of a form that is made in one size; `own_name` what it is called, if not a loaf.
    """

    name: str
    help: str
    icon: str
    longer: float = 1.0
    flat: float = 2.0
    power: float | None = 2.0
    stands: float = HEIGHT_PER_WIDTH.value
    even: bool = False
    hole: float = 0.0
    held: bool = False
    bakes: str = ""
    dough_g: tuple[float, float, float] | None = None
    own_name: str = ""

    @property
    def tapers(self) -> bool:
        """Whether it can be narrower at one end."""
        return self.power is not None and not (self.even or self.held or self.hole)

    @property
    def called(self) -> str:
        """Call it as a baker does: a ring loaf, but a baguette."""
        return self.own_name or f"{self.name} loaf"


ROWS = (
    Form("round", "a boule", "M12 4a8 8 0 1 0 0 16 8 8 0 0 0 0-16", even=True),
    Form("oval", "a batard", "M12 3c3.6 0 6 4 6 9s-2.4 9-6 9-6-4-6-9 2.4-9 6-9", 1.6, 2.3),
    Form("long", "a long batard, or a baguette",
         "M12 2c2.6 0 3.8 2 3.8 10S14.6 22 12 22s-3.8-2-3.8-10S9.4 2 12 2", 2.6, 2.5, 2.6),
    Form("baguette", "thin and long",
         "M12 1.5c1.6 0 2.3 1.5 2.3 10.5s-.7 10.5-2.3 10.5S9.7 21 9.7 12 10.4 1.5 12 1.5",
         8.5, 2.3, 3.0, 0.5, bakes="baguette", dough_g=(200, 350, 450), own_name="baguette"),
    Form("roll", "a small round one", "M12 7.5a4.5 4.5 0 1 0 0 9 4.5 4.5 0 0 0 0-9",
         stands=0.48, even=True, bakes="roll", dough_g=(40, 80, 120), own_name="roll"),
    Form("square", "with rounded corners", "M7 4h10q3 0 3 3v10q0 3-3 3H7q-3 0-3-3V7q0-3 3-3",
         1.0, 2.5, 4.0, even=True),
    Form("tin", "a pan loaf: straight sides held by the tin, the crown above its rim",
         "M8 3h8v18H8zM10.5 5.5v13M13.5 5.5v13", 1.8, 2.5, 10.0, 0.7, held=True, bakes="tin"),
    Form("ring", "a couronne: a loaf with a hole",
         "M12 3a9 9 0 1 0 0 18 9 9 0 0 0 0-18M12 9a3 3 0 1 0 0 6 3 3 0 0 0 0-6",
         1.0, 2.0, 2.0, 0.18, hole=0.34, bakes="ring"),
    Form("fougasse", "a flat leaf of dough, cut right through and pulled open",
         "M12 2c5 4 8 9 7 14-1 4-4 6-7 6s-6-2-7-6C4 11 7 6 12 2M12 7v10M9 10l-1.5 4M15 10l1.5 4",
         1.35, 6.0, None, 0.1, bakes="flat", own_name="fougasse"),
    Form("epi", "an ear of wheat: a long loaf cut with scissors, laid left and right",
         "M12 22V7M12 7c-2-2-2-4 0-5 2 1 2 3 0 5M12 12c-3 0-5-2-5-4 3 0 5 1 5 4M12 12c3 0 5-2 5-4"
         "-3 0-5 1-5 4M12 18c-3 0-5-2-5-4 3 0 5 1 5 4M12 18c3 0 5-2 5-4-3 0-5 1-5 4",
         7.0, 2.3, 3.0, 0.5, bakes="baguette", own_name="épi"),
    Form("heart", "a heart with rounded lobes and tip",
         "M12 21C6 16 3 12 3 8.5 3 5.5 5.2 4 7.5 4 9.5 4 11 5 12 6.5 13 5 14.5 4 16.5 4"
         " 18.8 4 21 5.5 21 8.5 21 12 18 16 12 21", 0.95, 2.5, None, 0.34),
    Form("triangle", "with rounded corners", "M10 5q2-3 4 0l7 12q1.5 3-2 3H5q-3.5 0-2-3z",
         0.92, 2.5, None, 0.34),
    Form("star", "five rounded points",
         "M12 3l2.7 5.9 6.3.7-4.7 4.3 1.3 6.300L12 17l-5.6 3.2 1.3-6.300L3 9.600l6.3-.7z",
         1.0, 2.5, None, 0.3, even=True),
)  # fmt: skip

FORMS = {row.name: row for row in ROWS}
"""Every form by name."""


def called(shape: str) -> str:
    """Call a loaf by the name of its shape, which may be a traced one."""
    return FORMS[shape].called if shape in FORMS else f"{shape} loaf"


def form_of(name: str) -> Form:
    """Find a form; raises UsageError for a name that none has."""
    if name not in FORMS:
        *others, last = FORMS
        raise say.UNKNOWN_FORM(name=name, others=", ".join(others), last=last).usage()
    return FORMS[name]


def table() -> Iterator[tuple[str, Rule]]:
    """Yield the usual measures of every form as rules, each with its subject."""
    for form in ROWS:
        named = say.with_article(form.called)
        source = SET if form.power is None else COMMON
        if form.even:
            yield "forms", Rule(1.0, "", f"length over width of {named}", "by definition")
        else:
            yield "forms", Rule(form.longer, "", f"usual length over width of {named}", source)
        yield "forms", Rule(form.stands, "", f"usual height over width of {named}", source)
        yield "forms", Rule(form.flat, "", f"power p of {named}'s dome; higher is flatter", source)
        if form.power is not None:
            says = f"power of {named}'s rim; 2 is an ellipse, more is squarer"
            yield "forms", Rule(form.power, "", says, source)
        if form.hole:
            yield "forms", Rule(form.hole, "", f"usual hole over width of {named}", source)
    for pan in PANS.values():
        low, high = pan.dough_g
        says = f"of dough for {pan.says}, {low:g} to {high:g} g"
        yield "forms", Rule((low + high) / 2, "g", says, COMMON)
