"""Words that must not come back: what sounds translated, or has one right name of its own.

Every text a user can meet is looked at: the strings of the package, the shipped patterns, and the
scripts and the page of the browser. Docstrings and comments of code are not.
"""

import ast
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
STATIC = ROOT / "scorecraft" / "web" / "static"

BANNED = {  # a pattern, what to write instead, and a text that it must catch
    r"here again": ("restored", "Your work from before is here again."),
    r"pleases you": ("you like", "Start from one that pleases you."),
    r"sideways share": ("sideways spread", "Sideways share"),
    r"ha(s|ve) taught": ("use my own bakes; has learned", "As my own bakes have taught"),
    r"\bmend(s|ed)?\b": ("fix", "3 things to mend"),
    r"\bslips?\b": ("error", "before the last slip"),
    r"worry about": ("no problems found by the checks", "Nothing to worry about."),
    r"how high you look": ("viewing height", "How high you look from"),
    r"\stold\b(?! apart)": ("given, listed, shown", "numbered and told in a table"),
    r"\btells? of\b": ("see", "the card tells of each copy"),
    r"\btells? the most\b": ("say most", "A few deep ones tell the most."),
    r"^as usual$": ("default", "As usual"),
    r"print from here": ("print", "Print from here"),
    r"\blies? on the bench": ("sent to the bench", "Nothing lies on the bench yet."),
    r"\blies? on one another": ("run over each other", "two cuts lie on one another"),
    r"steps of the turntable": ("turntable positions", "12 steps of the turntable"),
    r"table stays": ("don't turn", "Table stays"),
    r"\balike$": ("3 of 8", "3 of 8 alike"),
    r"\bpress to (set|start|pause|let)": ("tap to", "Press to set it back"),
    r"take it to a phone": ("open on a phone", "Take it to a phone"),
    r"stands? open": ("opens", "how wide it stands open at its widest"),
    r"at its widest": ("its greatest width", "how wide it stands open at its widest"),
    r"\btake [^.:;]*\baway$": ("remove", "Take the leaf vein away"),
    r"(not|to) settle\b|settles? (it|the|nothing)": (
        "too few to be sure",
        "These openings do not settle it.",
    ),
    r"another one now": ("changed on disk", "The file is another one now"),
    r"\bwrite over (it|the)\b": ("overwrite", "Write over it"),
    r"as it will be after baking": ("as the model predicts", "the loaf as it will be after baking"),
    r"what must be said": ("only warnings and errors", "Say only what must be said."),
    r"bakes of yours": ("calibration file from tune", "What tune learned from bakes of yours."),
    r"another oven": ("different baking conditions", "Another oven"),
    r"\bthe form, for\b": ("format for standard output", "The form, for -"),
    r"the bench out\b": ("skip the cutting plan", "Leave the bench out."),
    r"least width of all": ("thinnest strip left standing", "Least width of all that stays."),
    r"has to fit\b": ("allowed misfit", "How closely it has to fit."),
    r"turns no knob": ("is not KNOB=VALUE", '"a" turns no knob'),
    r"\bis no (kind|print|proof|hand|width|pair|value|number|name|list|key|such)\b": (
        "is not a",
        '"soft" is no proof',
    ),
    r", and look\b": ("then run …", "now change it, and look"),
    r"\broom enough": ("enough room to spring", "Room enough"),
    r"\bhardly (enough|room)": ("barely", "Hardly room enough"),
    r"% of the growth|takes? up (too|so|\d)": (
        "absorb … of the oven spring",
        "the cuts take up 36% of the growth",
    ),
    r"hold at that depth": ("leave … between cuts this deep", "7.2 mm hold at that depth"),
    r"\bsooner\b": ("shorten by", "end the ring 70 mm sooner"),
    r"to (bits|crumbs)\b": ("shred", "the skin may tear to bits"),
    r"loaf (may )?falls?\b": ("may collapse", "the loaf may fall"),
    r"one by one": ("are not listed", "are not told one by one"),
    r"\bwish(es|ed)?\b": ("ask for", "wish for 9 mm or less"),
    r"% water\b": ("hydration", "dough with 80% water"),
    r"proofed right\b": ("fully proofed", "proofed right, 2.6 times that is 1950 cm3"),
    r"cm.? when cut\b": ("at scoring", "1950 cm3 when cut"),
    r"dough holds": ("aim to finish within", "the dough holds 5 min"),
    r"\bsteam out\b": ("vent the steam", "Steam out"),
    r"°C in the centre": ("internal temperature", "96 °C in the centre"),
    r"begin at\b.*\bend at\b": ("start 4 mm, finish 3 mm deep", "begin at 4, end at 3"),
    r"\bpress in\b": ("mark", "press in 8 strings"),
    r"string marks?\b": ("string lines", "8 string marks"),
    r"crosses whole": ("line up the crosses", "make the crosses whole"),
    r"bursts, bursts there|\btears on\b": ("may tear further", "bursts there, and tears on"),
    r"until a placing": ("unless a placing", "until a placing turns it"),
    r"shield one another": ("relieve one another", "cuts shield one another"),
    r"held by the dough below": ("restrained by uncut dough", "tips held by the dough below"),
    r"fits any loaf": ("adapts to most loaves", "a pattern fits any loaf"),
    r"(?<!know of )\bno (published )?measurement (that )?links": (
        "we know of no published measurement that links",
        "No published measurement links depth to opening.",
    ),
    r"bakers know": ("chosen by us on drawings", "drawings that bakers know to work"),
    r"\btowards\b": ("toward", "towards you"),
    r"\b(the|its|your|a|hot) vessels?\b": ("covered pot", "Hot vessels burn."),
    r"^warn\b": ("warning", "warn  the strip is narrow"),
    r"\bhigher loaf\b": ("taller loaf", "bake a higher loaf"),
    r"\bcures?\b": ("fix, advice", "no single cut cures it"),
    r"\banew\b": ("again", "drawing it anew"),
    r"straight (in|down)$|straight down\b": ("upright", "90deg is straight down"),
    r"\bhalf way\b": ("halfway", "half way down the side"),
    r"\b(neighbor|millimeter|centimeter)s?\b|\bin the center\b": (
        "British spelling",
        "beside its neighbor",
    ),
}
ALLOWED = {  # a file and a text in it that means something else
    ("scorecraft/language/words.py", "vessel"),
    ("scorecraft/web/gestured.py", "cure"),  # likewise
    ("scorecraft/web/static/hand/hand.js", "cure"),  # a gesture's kind, not a word on the page
}


def python_texts(source: str) -> Iterator[tuple[int, str]]:
    """Give the strings of a module with their lines; what stands alone is documentation."""
    tree = ast.parse(source)
    alone = {id(n.value) for n in ast.walk(tree) if isinstance(n, ast.Expr)}
    within = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            within |= {id(part) for part in node.values}
            parts = (p.value if isinstance(p, ast.Constant) else "{}" for p in node.values)
            yield node.lineno, "".join(str(part) for part in parts)
    for node in ast.walk(tree):
        own = isinstance(node, ast.Constant) and id(node) not in alone | within
        if own and isinstance(node.value, str):
            yield node.lineno, node.value


STRINGS = re.compile(
    r"""//[^\n]*|/\*.*?\*/|("(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`)""", re.S
)


def script_texts(source: str) -> Iterator[tuple[int, str]]:
    """Give the strings of a script with their lines, without its comments."""
    for found in STRINGS.finditer(source):
        if found[1]:
            text = re.sub(r"\$\{[^{}]*\}", "{}", found[1][1:-1])
            yield source.count("\n", 0, found.start()) + 1, text


class _Page(HTMLParser):
    """Collects what a page shows: its text, and the attributes that are read aloud."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[tuple[int, str]] = []

    def handle_data(self, data: str) -> None:
        self.texts.append((self.getpos()[0], data.strip()))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        shown = (value for key, value in attrs if key in ("title", "aria-label", "content", "alt"))
        self.texts += [(self.getpos()[0], value) for value in shown if value]


def page_texts(source: str) -> Iterator[tuple[int, str]]:
    page = _Page()
    page.feed(source)
    yield from page.texts


def line_texts(source: str) -> Iterator[tuple[int, str]]:
    yield from enumerate(source.splitlines(), start=1)


READERS = {".py": python_texts, ".js": script_texts, ".html": page_texts, ".score": line_texts}
FILES = sorted(
    [
        *(ROOT / "scorecraft").rglob("*.py"),
        *STATIC.rglob("*.js"),
        STATIC / "index.html",
        *(ROOT / "patterns").glob("*.score"),
    ]
)


def faults(name: str, texts: Iterator[tuple[int, str]]) -> list[str]:
    """List the texts that hold a banned word, with what to write instead."""
    found = []
    for line, text in texts:
        for pattern, (better, _) in BANNED.items():
            said = re.search(pattern, text, re.I)
            if said and not any(name == file and part in text for file, part in ALLOWED):
                found.append(f"{name}:{line}: “{said[0]}” in “{text:.80}”: {better}")
    return found


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(ROOT)))
def test_no_word_comes_back(path):
    name = path.relative_to(ROOT).as_posix()
    found = faults(name, READERS[path.suffix](path.read_text(encoding="utf-8")))
    assert not found, "\n".join(found)


@pytest.mark.parametrize("pattern", BANNED)
def test_every_pattern_catches_its_own_text(pattern):
    assert re.search(pattern, BANNED[pattern][1], re.I)


def test_texts_are_found_where_they_stand_and_documentation_is_not():
    code = '"""mend"""\ndef f(n):\n    """mend"""\n    return f"{n} things to mend", "towards"\n'
    assert [fault.split(": ")[0] for fault in faults("a.py", python_texts(code))] == ["a.py:4"] * 2
    script = "// mend\nconst a = `${n} things\nto mend`; /* mend */ say('towards')\n"
    assert [fault.split(": ")[0] for fault in faults("a.js", script_texts(script))] == [
        "a.js:2",
        "a.js:3",
    ]
    page = '<p title="towards">\n<b>mend</b><!-- mend -->'
    assert len(faults("a.html", page_texts(page))) == 2
