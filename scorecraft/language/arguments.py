"""Arguments of one line: keys and values, regions, textures, paths and points."""

from collections.abc import Container, Mapping, Sequence

from scorecraft.errors import Place, Problem, nearest
from scorecraft.language import slips
from scorecraft.language.evaluate import FUNCTIONS
from scorecraft.language.expressions import MOST_OPERATIONS, LineError, TokenReader, joined
from scorecraft.language.keys import Key, Word
from scorecraft.language.kinds import DIMENSIONS, check_literal
from scorecraft.language.tokens import Report, Token
from scorecraft.language.tree import (
    Argument,
    Broken,
    Expression,
    Figure,
    Join,
    Measure,
    Name,
    Points,
    Region,
    Value,
)
from scorecraft.language.words import ATTRIBUTES, WORDS, keys_of
from scorecraft.units import SPELLINGS, UNITS

SORTS = {"region": "region", "texture": "texture", "path": "motif"}

CLOSE = 0.8
"""How like a choice a word must be that was written without its key."""


class LineReader(TokenReader):
    """Reads the arguments of one line, its word already known."""

    def __init__(
        self, tokens: Sequence[Token], rules: Mapping[str, tuple[Key, ...]], report: Report
    ) -> None:
        super().__init__(tokens, self.telling)
        self.tell = report
        self.rules = rules
        self.figures: list[tuple[Token, list[Argument]]] = []
        self.clean = all(token.kind != "broken" for token in tokens)

    def telling(self, problem: Problem) -> None:
        """Report a problem of the line."""
        self.clean = False
        self.tell(problem)

    def arguments(self, word: str) -> tuple[Argument, ...]:
        """Read all arguments of the line; what cannot be read is reported once and left out."""
        found: list[Argument] = []
        try:
            if word == "define":
                self.definition(found)
            else:  # a word of the table, or a rule of the file
                row = WORDS.get(word) or Word(word, "rule", "", self.rules[word], attributes=True)
                self.pairs(row, found, whole_line=True)
            self.finish(word)
        except LineError:
            return tuple(found)
        if self.clean:
            self.miss(self.tokens[0], found)
        for figure, given in self.figures if self.clean else ():
            self.miss(figure, given)
        return tuple(found)

    def finish(self, word: str) -> None:
        """Make sure that nothing but the colon of a block is left.

        Raises LineError for anything else.
        """
        if self.sees(":") and self.at == len(self.tokens) - 1:
            return
        if (token := self.peek()) is not None:
            raise self.fail(slips.NOT_EXPECTED(text=token.text, word=word))

    def miss(self, word: Token, found: Sequence[Argument]) -> None:
        """Report the arguments that a word cannot do without."""
        row = WORDS.get(word.text)
        given = {argument.key for argument in found}
        keys = row.keys if row else ()
        wanted = " and ".join(f'"{k.name}"' for k in keys if k.needed and k.name not in given)
        if row and wanted:
            like = row.example.splitlines()[0]
            self.report(slips.LACKING(word=word.text, wanted=wanted, example=like).at(word.place))

    def pairs(
        self, row: Word, found: list[Argument], *, whole_line: bool, until: Container[str] = ()
    ) -> None:
        """Read `key value` pairs while they belong to `row`; a name of `until` ends them.

        Raises LineError for what is no key of it.
        """
        keys = keys_of(row)
        mains = list(row.mains)
        while (token := self.peek()) is not None and not self.ends(token):
            if token.kind == "name" and token.text in until and token.text not in keys:
                return
            key = keys.get(token.text) if token.kind == "name" else None
            if key is not None:
                self.at += 1
                mains.clear()
                self.one(row, key, token.place, found)
            elif mains:
                key = keys[mains.pop(0)]
                if self.looks_like_key(token, key, keys):
                    raise self.unexpected(row, token, keys)
                self.one(row, key, token.place, found)
            elif whole_line:
                raise self.unexpected(row, token, keys)
            else:
                return

    def looks_like_key(self, token: Token, key: Key, keys: Mapping[str, Key]) -> bool:
        """Tell whether a name in a main value's place is a mistyped key: a value follows it."""
        after = self.peek(1)
        if token.kind != "name" or after is None or key.choices or key.kind not in DIMENSIONS:
            return False
        if after.text == "(" and token.text in FUNCTIONS:
            return False
        if after.kind == "name":
            return after.text not in keys and after.text not in ("and", "less")
        return after.kind in ("number", "text") or after.text == "("

    def ends(self, token: Token) -> bool:
        """Tell whether a token is the colon that ends the line."""
        return token.kind == "sign" and token.text == ":" and self.at == len(self.tokens) - 1

    def unexpected(self, row: Word, token: Token, keys: Mapping[str, Key]) -> LineError:
        """Report something that is no key of the word."""
        own = ", ".join(name for name in keys if name not in {key.name for key in ATTRIBUTES})
        if token.kind != "name":
            return self.fail(slips.WITHOUT_KEY(text=token.text, word=row.name, keys=own))
        close = chosen(token.text, keys) or nearest(token.text, list(keys))
        slip = slips.NO_KEY(word=row.name, text=token.text, keys=own or "none").meant(close)
        about = token.text if row.name in self.rules else ""
        self.report(slip.at(token.place, trails=True, about=about))
        return LineError()

    def one(self, row: Word, key: Key, place: Place, found: list[Argument]) -> None:
        """Read the value of one key and keep it unless the key was there before."""
        start = self.at
        value = self.value(row, key)
        span = self.since(start) if self.at > start else place
        if isinstance(value, Measure) and not value.unit and self.parted(row):
            value = Broken(place)
        if any(argument.key == key.name for argument in found):
            self.report(slips.GIVEN_TWICE(key=key.name).at(place, trails=True))
            return
        if problem := check_literal(row.name, key, value):
            self.report(problem)
            value = Broken(place)
        found.append(Argument(key.name, value, place, span))

    def since(self, start: int) -> Place:
        """Give the place of the tokens that were read since one."""
        return joined(self.tokens[start].place, self.tokens[max(start, self.at - 1)].place)

    def parted(self, row: Word) -> bool:
        """Tell whether a unit follows after a space; report it, and pass over it."""
        token = self.peek()
        if token is None or token.kind != "name" or token.text in keys_of(row):
            return False
        if SPELLINGS.get(token.text, token.text) not in UNITS:
            return False
        self.at += 1
        number = self.tokens[self.at - 2].text
        self.report(slips.SPACE_BEFORE_UNIT(together=f"{number}{token.text}").at(token.place))
        return True

    def value(self, row: Word, key: Key) -> Value:
        """Read a value of the kind a key takes; raises LineError where there is none."""
        if key.kind == "region":
            return self.region({*keys_of(row), "and", "less"})
        if key.kind in ("texture", "path"):
            return self.figure(key.kind, keys_of(row))
        if key.kind in ("points", "pair") and self.sees("("):
            return self.points(many=key.kind == "points")
        token = self.peek()
        done = token is None or self.ends(token)
        if key.kind == "flag" and (done or (token and token.text in keys_of(row))):
            return Name("yes", self.tokens[self.at - 1].place)  # a flag that stands alone is meant
        if done:
            raise self.fail(slips.NEEDS_VALUE(key=key.name, word=row.name))
        return self.short()

    def short(self) -> Expression:
        """Read a value that stands alone: a signed number, a name, a text, or (an expression)."""
        if self.sees("-") or self.sees("+"):
            return self.signed()
        return self.single()

    def region(self, until: Container[str]) -> Region:
        """Read a region: figures joined by `and` and `less`.

        Raises LineError where it has too many parts.
        """
        left: Region = self.figure("region", until)
        joined = 0
        while (token := self.peek()) is not None and token.text in ("and", "less"):
            joined += 1
            if joined > MOST_OPERATIONS:
                raise self.fail(slips.MANY_PARTS(most=MOST_OPERATIONS))
            self.at += 1
            left = Join(token.text, left, self.figure("region", until), token.place)
        return left

    def figure(self, kind: str, until: Container[str]) -> Figure:
        """Read a word with its arguments, used as a value; keys of the line end it.

        Raises LineError for any other word.
        """
        token = self.peek()
        group = SORTS[kind]
        names = [name for name, word in WORDS.items() if word.group == group]
        if token is None or token.kind != "name":
            raise self.fail(slips.EXPECTED_SORT(sort=group, names=", ".join(names)))
        if token.text not in names:
            slip = slips.NOT_SORT(text=token.text, sort=group, names=", ".join(names))
            raise self.fail(slip.meant(nearest(token.text, names)))
        self.at += 1
        row = WORDS[token.text]
        row = Word(row.name, row.group, row.help, row.keys, row.mains)
        found: list[Argument] = []
        self.pairs(row, found, whole_line=False, until=until)
        self.figures.append((token, found))
        return Figure(token.text, tuple(found), token.place)

    def points(self, many: bool) -> Points:
        """Read one (x, y) pair, or as many as follow."""
        place = self.tokens[self.at].place
        pairs: list[tuple[Expression, Expression]] = []
        spans: list[tuple[Place, Place]] = []
        while self.sees("(") and (many or not pairs):
            self.at += 1
            x, x_span = self.spanned()
            self.expect(",", slips.POINT)
            y, y_span = self.spanned()
            self.expect(")", slips.CLOSE_POINT)
            pairs.append((x, y))
            spans.append((x_span, y_span))
        return Points(tuple(pairs), place, tuple(spans))

    def spanned(self) -> tuple[Expression, Place]:
        """Read an expression, and tell the place of all of it."""
        start = self.at
        found = self.expression(1)
        return found, self.since(start)

    def definition(self, found: list[Argument]) -> None:
        """Read `define NAME key=default key=default`; raises LineError for anything else."""
        name = self.peek()
        if name is None or name.kind != "name":
            raise self.fail(slips.DEFINE_NAME)
        self.at += 1
        if name.text in WORDS:
            self.report(slips.WORD_OF_LANGUAGE(name=name.text).at(name.place))
        found.append(Argument("name", Name(name.text, name.place), name.place, name.place))
        while (token := self.peek()) is not None and not self.ends(token):
            if token.kind != "name" or not self.sees("=", 1):
                raise self.fail(slips.DEFAULT)
            self.at += 2
            if self.peek() is None:
                raise self.fail(slips.NEEDS_DEFAULT(key=token.text))
            start = self.at
            value = self.short()
            found.append(Argument(token.text, value, token.place, self.since(start)))


def chosen(text: str, keys: Mapping[str, Key]) -> str:
    """Name the key and its choice that stand without the key, as in `facing in`, or ""."""
    bare = text.removesuffix("s").removesuffix("ward")
    for key in keys.values():
        close = nearest(bare, key.choices, CLOSE)
        if close[:1] == bare[:1] != "":
            return f"{key.name} {close}"
    return ""
