"""The page's help: a course in pictures, designing by hand, the words used, the cautions."""

from scorecraft.drawing.paper.cautions import BLADE, FILM, OVEN, STICKING
from scorecraft.frozen import dataclass
from scorecraft.glossary import GROUPS, Group, Term


@dataclass(frozen=True, slots=True)
class Lesson:
    """A picture of static/help by its name, what it shows, and what it teaches."""

    name: str
    title: str
    picture: str
    text: str


LESSONS = (
    Lesson(
        "strings",
        "String lines",
        (
            "A round loaf from above: strings pressed across it mark eight spokes, and one string "
            "is held taut by its two ends."
        ),
        (
            "Pull a string taut over the crown and press it in lightly. Four string lines through "
            "the crown give eight even spokes to score by. They are guides only: do not cut along "
            "them unless the pattern does."
        ),
    ),
    Lesson(
        "light-first",
        "Shallow cuts first",
        (
            "Two loaves from above: first the shallow veins of six leaves, then the deep leaf "
            "outlines."
        ),
        (
            "Make the shallow, decorative cuts first and the deep expansion cuts last. A deep cut "
            "lets the skin go slack, and a blade drags on slack skin. A cold loaf cuts cleanest."
        ),
    ),
    Lesson(
        "blade",
        "Blade angle",
        (
            "A blade upright in the dough, whose cut opens evenly, beside a blade at 40°, whose "
            "cut lifts an ear."
        ),
        (
            "Held upright, at 90°, the blade makes a cut that opens evenly and gives no ear. Held "
            "at 30° to 45° it slides under the skin, and the flap it leaves can lift into an ear. "
            "Keep one angle through the whole stroke."
        ),
    ),
    Lesson(
        "depth",
        "Depth",
        (
            "A loaf seen from the cut side: decorative cuts 2 to 4 mm deep beside an expansion "
            "cut 6 to 13 mm deep."
        ),
        (
            "Decorative cuts are about 2 to 4 mm deep (⅛ in): they draw a figure and open little. "
            "Expansion cuts are about 6 to 13 mm deep (¼ to ½ in) and give the loaf room to "
            "spring. Past about 15 mm (0.6 in) little is gained and the loaf may sag."
        ),
    ),
    Lesson(
        "order",
        "Order of cuts",
        (
            "A loaf on a turntable before you: a stroke is pulled toward you, and the table turns "
            "for the next."
        ),
        (
            "Pull each stroke toward yourself, then turn the loaf to the next one; do not reach "
            "around it. So your hand stays clear of finished cuts. The bench card and the Bench "
            "view give every cut in its order."
        ),
    ),
    Lesson(
        "steam",
        "Steam",
        "A loaf in a covered pot full of steam, then the lid is off and the loaf browns.",
        (
            "Steam keeps the skin supple while the loaf springs: the cuts open wider and an ear "
            "lifts better. Without it the skin sets early: cuts open less, and the growth that is "
            "left may burst at the side or the foot. A covered pot holds the loaf’s own steam. "
            "Then take the lid off, or vent the steam, and the crust can brown."
        ),
    ),
    Lesson(
        "card",
        "Reading the bench card",
        (
            "One row of a bench card: the step, which cut, how deep, the blade angle, how many, "
            "and the turn to the next."
        ),
        (
            "Read one row at a time, from left to right. It shows the cut on the loaf, how deep "
            "it goes, the blade angle, how many to make and how far to turn. Cuts have the same "
            "numbers on the guide, the card and this page."
        ),
    ),
    Lesson(
        "measure",
        "Measuring your loaf",
        (
            "A loaf from above with its width and length, and from the side with its height and "
            "its reach over the dough."
        ),
        (
            "Measure the proofed loaf: its width and length seen from above, its height from the "
            "bench to the crown, and its reach, a tape laid over the dough from the crown to the "
            "rim. Enter them under Loaf. When the baked loaf is cold, measure the greatest width "
            "of some cuts and compare them with the model."
        ),
    ),
)
HAND = (
    Term(
        "hand-place",
        "Put a figure on the dough",
        "Drag a figure from the tray onto the loaf, or tap it and then tap the place. Free stroke "
        "lets you draw with a finger; set Repeat first and every copy is drawn with it.",
    ),
    Term(
        "hand-select",
        "Select a cut",
        "Tap it on the loaf, or in the list under Score. Its copies turn faint. The trail below "
        "the loaf, “around 8 › leaf”, takes you to what it stands in.",
    ),
    Term(
        "hand-move",
        "Move, turn, resize",
        "Drag the cut itself to move it and its handles to turn or size it. It clicks in at the "
        "crown, at string lines, at the tips of other cuts and every 15°; hold your finger still "
        "before you drag, or hold Alt, and it does not.",
    ),
    Term(
        "hand-chips",
        "Copies, depth, blade",
        "The chips below the loaf set how many copies there are, whether they are mirrored, how "
        "deep the blade goes or how wide the cut should open, and the blade’s angle.",
    ),
    Term(
        "hand-zoom",
        "Look closer",
        "Pinch, turn the mouse wheel, or tap + and −. Drag beside the cuts to move the loaf.",
    ),
    Term(
        "hand-keys",
        "With the keyboard",
        "In the list under Score the arrow keys move a cut by 1 mm, with Shift by 5 mm; [ and ] "
        "turn it by 5°, Delete removes it, Enter opens its exact numbers.",
    ),
    Term(
        "hand-undo",
        "Change your mind",
        "Every drag is one step of Undo. The text is changed only where it has to be: your own "
        "comments stay.",
    ),
)
CAUTIONS = (
    Term("caution-blade", "Blade", f"{BLADE} {STICKING}"),
    Term("caution-pot", "Pot and steam", OVEN),
    Term(
        "caution-paper",
        "Paper and plastic",
        f"Keep paper and ink off the dough: look at a sheet, do not lay it on dough. {FILM}",
    ),
    Term(
        "caution-food",
        "Food",
        "Raw flour and raw dough are not ready to eat. List allergens, and follow your local rules "
        "when you bake to sell or give away.",
    ),
    Term(
        "caution-model",
        "The model",
        "Openings, tension and room come from a model and are estimates. Compare designs by them, "
        "then trust your own bakes.",
    ),
)


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the help: heading, the word that leads to it, lessons or groups of terms."""

    name: str
    title: str
    link: str
    lessons: tuple[Lesson, ...] = ()
    groups: tuple[Group, ...] = ()


PARTS = (
    Part("course", "Scoring in eight pictures", "Course", lessons=LESSONS),
    Part("hand", "Designing on the loaf", "By hand", groups=(Group("", HAND),)),
    Part("glossary", "Words used here", "Words", groups=GROUPS),
    Part("safety", "Before you cut and bake", "Safety", groups=(Group("", CAUTIONS),)),
    Part("language", "The pattern language", "Language"),
)
"""What the help consists of, in order; templates/help.html sets it."""
