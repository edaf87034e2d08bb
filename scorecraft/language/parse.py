"""Pattern text to tree, line by line; every problem of a file is reported in one run."""

from collections.abc import Mapping
from contextlib import suppress
from itertools import pairwise

from scorecraft.errors import EnoughError, PatternError, Place, Problems, nearest
from scorecraft.language import slips
from scorecraft.language.arguments import LineReader
from scorecraft.language.doubt import doubt_of, like_define
from scorecraft.language.expressions import joined
from scorecraft.language.keys import Key
from scorecraft.language.names import check_names
from scorecraft.language.tokens import Report, SourceLine, source_lines
from scorecraft.language.tree import Pattern, Statement
from scorecraft.language.untangle import untangled
from scorecraft.language.words import WORDS, starts_statement
from scorecraft.limits import MOST_BYTES, MOST_NESTING, MOST_PROBLEMS


def parse(text: str, file: str = "pattern") -> Pattern:
    """Read a pattern text into its tree.

    Raises PatternError with every problem of the text, in the order of its lines.
    """
    if len(text.encode("utf-8", "surrogatepass")) > MOST_BYTES:
        raise PatternError([slips.TOO_LARGE(most_bytes=MOST_BYTES).at(Place(file, 1, 1))])
    text = text.removeprefix("\ufeff")
    problems = Problems(MOST_PROBLEMS)
    pattern = Pattern(())
    with suppress(EnoughError):  # the last problem says that there are more
        pattern = read_pattern(text, file, problems)
    if problems.found:
        raise PatternError(untangled(problems.found), text)
    return pattern


def read_pattern(text: str, file: str, problems: Problems) -> Pattern:
    """Read a pattern text into its tree, reporting every problem."""
    lines = source_lines(text, file, problems.report)
    if not lines and not problems.found:
        problems.report(slips.EMPTY.at(Place(file, 1, 1)))
    parser = Parser(lines, problems.report)
    pattern = Pattern(parser.block(0, 0))
    doubt = doubt_of(lines, problems.found)
    problems.found = [problem for problem in problems.found if not doubt.covers(problem)]
    if not (doubt.any_name or parser.misplaced):
        check_names(pattern, parser.rules, problems.report, doubt.names)
    return pattern


class Parser:
    """Walks the lines of one file, turning indentation into blocks."""

    def __init__(self, lines: list[SourceLine], report: Report) -> None:
        self.lines = lines
        self.report = report
        self.next = 0
        self.misplaced = False
        self.rules = find_rules(lines)

    def block(self, indent: int, depth: int) -> tuple[Statement, ...]:
        """Read the statements at one indentation, until it falls back."""
        found = []
        stray_told = False
        while self.next < len(self.lines):
            line = self.lines[self.next]
            if line.indent < indent:
                break
            if line.indent > indent and not stray_told:
                stray_told = True
                self.stray(line, depth)
            if line.indent == indent:
                stray_told = False
            found.append(self.statement(line, depth))
        return tuple(found)

    def stray(self, line: SourceLine, depth: int) -> None:
        """Report an indentation that no line opened."""
        self.misplaced = True
        place = line.tokens[0].place
        before = self.lines[self.next - 1].tokens[-1].text if self.next else ""
        slip = slips.LINE_UP if depth and before != ":" else slips.NO_COLON
        self.report(slip.at(place))

    def statement(self, line: SourceLine, depth: int) -> Statement:
        """Read one line, and the block below it."""
        self.next += 1
        head = line.tokens[0]
        reader = LineReader(line.tokens, self.rules, self.report)
        if head.kind != "name":
            if head.kind != "broken":
                self.report(slips.NO_WORD.at(head.place, trails=True))
            known = False
        else:
            known = self.known(head.text, head.place)
        if known and depth and at_head(head.text):
            self.report(slips.HEAD_IN_BLOCK(word=head.text).at(head.place))
        arguments = reader.arguments(head.text) if known else ()
        body = self.body(line, head.text if known else "", depth)
        span = joined(head.place, line.tokens[-1].place)
        return Statement(head.text, arguments, body, head.place, span)

    def known(self, word: str, place: Place) -> bool:
        """Tell whether a line may start with `word`; report it if not."""
        if starts_statement(word) or word in self.rules:
            return True
        if word in WORDS:
            row = WORDS[word]
            slip = slips.NO_STATEMENT(
                word=word, sort=row.group, example=row.example.splitlines()[0]
            )
            self.report(slip.at(place, trails=True))
            return False
        close = nearest(word, [w for w in WORDS if starts_statement(w)] + list(self.rules))
        self.report(slips.UNKNOWN_WORD(word=word).meant(close).at(place, trails=True, about=word))
        return False

    def body(self, line: SourceLine, word: str, depth: int) -> tuple[Statement, ...]:
        """Read the block below a line that opens one; `word` is "" where it is not known."""
        opens = line.tokens[-1].text == ":" and line.tokens[-1].kind == "sign"
        deeper = self.next < len(self.lines) and self.lines[self.next].indent > line.indent
        takes = word in WORDS and WORDS[word].body
        end = line.tokens[-1].place
        if opens and word and not takes:
            self.report(slips.TAKES_NO_BLOCK(word=word).at(end, trails=True))
        elif takes and not opens:
            self.report(slips.NEEDS_BLOCK(word=word).at(end, trails=True))
        elif takes and not deeper:
            self.report(slips.EMPTY_BLOCK(word=word).at(end, trails=True))
        if not deeper or not (opens or takes):
            return ()
        if depth + 1 > MOST_NESTING:
            place = self.lines[self.next].tokens[0].place
            self.report(slips.NESTED_BLOCKS(most=MOST_NESTING).at(place))
            self.skip(line.indent)
            return ()
        return self.block(self.lines[self.next].indent, depth + 1)

    def skip(self, indent: int) -> None:
        """Pass over all lines deeper than `indent`."""
        while self.next < len(self.lines) and self.lines[self.next].indent > indent:
            self.next += 1


def at_head(word: str) -> bool:
    """Tell whether a word stands only at the outermost level of a file."""
    row = WORDS.get(word)
    return word == "define" or (row is not None and row.group == "header" and word != "let")


def find_rules(lines: list[SourceLine]) -> Mapping[str, tuple[Key, ...]]:
    """Collect the rules a file defines, with their keys, wherever they stand."""
    rules: dict[str, tuple[Key, ...]] = {}
    for line in lines:
        texts = [token.text for token in line.tokens]
        if len(texts) < 2 or line.tokens[1].kind != "name" or not like_define(texts[0]):
            continue
        keys = [a for a, b in pairwise(texts[2:]) if b == "="]
        rules[texts[1]] = tuple(Key(name, "any") for name in keys)
    return rules
