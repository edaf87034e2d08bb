"""Expressions of one line: precedence climbing over its tokens."""

from collections.abc import Sequence

from scorecraft.errors import Place, Slip, nearest
from scorecraft.language import sums
from scorecraft.language.evaluate import FUNCTIONS
from scorecraft.language.tokens import Report, Token
from scorecraft.language.tree import (
    PRECEDENCE,
    Binary,
    Broken,
    Call,
    Expression,
    Measure,
    Name,
    Text,
    Unary,
)
from scorecraft.limits import MOST_NESTING

MOST_OPERATIONS = 100
"""The most operations of one expression."""


class LineError(Exception):
    """The rest of a line cannot be read; the problem has been reported."""


class TokenReader:
    """Reads expressions from the tokens of one line."""

    def __init__(self, tokens: Sequence[Token], report: Report) -> None:
        self.tokens = tokens
        self.report = report
        self.at = 1  # the line's word has been read
        self.depth = 0
        self.operations = 0

    def peek(self, ahead: int = 0) -> Token | None:
        """Look at a coming token, None past the end."""
        index = self.at + ahead
        return self.tokens[index] if index < len(self.tokens) else None

    def sees(self, sign: str, ahead: int = 0) -> bool:
        """Tell whether a coming token is this sign."""
        token = self.peek(ahead)
        return token is not None and token.kind == "sign" and token.text == sign

    def fail(self, slip: Slip) -> LineError:
        """Report a problem at the coming token, unless that is told already; raise what comes."""
        token = self.peek()
        if token is None or token.kind != "broken":
            self.report(slip.at(token.place if token else self.end(), trails=True))
        return LineError()

    def end(self) -> Place:
        """Give the place just after the line's last token."""
        last = self.tokens[-1].place
        return Place(last.file, last.line, last.column + last.length)

    def expect(self, sign: str, hint: str) -> None:
        """Pass over a sign that must come now; raises LineError without it."""
        if not self.sees(sign):
            raise self.fail(sums.SIGN(wanted=sign, hint=hint))
        self.at += 1

    def inside(self) -> Expression:
        """Read an expression in parentheses; the opening one comes next."""
        self.expect("(", sums.IN_PARENTHESES)
        found = self.expression(1)
        self.expect(")", sums.CLOSE)
        return found

    def expression(self, rank: int) -> Expression:
        """Read an expression whose operators bind at least as tightly as `rank`.

        Raises LineError for what is none.
        """
        self.operations = self.operations if self.depth else 0
        self.deeper(sums.NESTED)
        left = self.operand()
        while (token := self.peek()) is not None:
            own = PRECEDENCE.get(token.text, 0) if token.kind in ("sign", "name") else 0
            if own < rank or token.text == "not":
                break
            self.operations += 1
            if self.operations > MOST_OPERATIONS:
                raise self.fail(sums.TOO_LONG(most=MOST_OPERATIONS))
            self.at += 1
            left = Binary(token.text, left, self.expression(own + 1), token.place)
            if own == PRECEDENCE["<"]:
                rank = max(rank, 1)
                if (after := self.peek()) is not None and PRECEDENCE.get(after.text) == own:
                    raise self.fail(sums.CHAIN)
        self.depth -= 1
        return left

    def deeper(self, message: str) -> None:
        """Go one level down in an expression; there is a limit to that.

        Raises LineError beyond it.
        """
        self.depth += 1
        if self.depth > MOST_NESTING:
            raise self.fail(sums.LEVELS(message=message, most=MOST_NESTING))

    def operand(self) -> Expression:
        """Read a sign or `not` with what follows, or a single value.

        Raises LineError at the end of the line.
        """
        token = self.peek()
        if token is None:
            raise self.fail(sums.ENDS)
        if token.kind == "name" and token.text == "not":
            self.at += 1
            return Unary("not", self.expression(PRECEDENCE["not"] + 1), token.place)
        if token.kind == "sign" and token.text in "+-":
            return self.signed()
        return self.single()

    def signed(self) -> Expression:
        """Read a signed value; a sign before a number belongs to the number."""
        sign = self.tokens[self.at]
        self.at += 1
        token = self.peek()
        if token is not None and token.kind == "number":
            self.at += 1
            value = -token.value if sign.text == "-" else token.value
            return Measure(value, token.unit, joined(sign.place, token.place))
        self.deeper(sums.SIGNS)
        found = self.operand()
        self.depth -= 1
        return found if sign.text == "+" else Unary("-", found, sign.place)

    def single(self) -> Expression:
        """Read a number, a name, a text, a call or something in parentheses.

        Raises LineError for anything else.
        """
        token = self.peek()
        assert token is not None
        if token.kind == "number":
            self.at += 1
            return Measure(token.value, token.unit, token.place)
        if token.kind == "text":
            self.at += 1
            return Text(token.text, token.place)
        if token.kind == "name" and token.text not in PRECEDENCE:
            self.at += 1
            calls = self.sees("(") and (self.depth > 0 or token.text in FUNCTIONS)
            return self.call(token) if calls else Name(token.text, token.place)
        if token.kind == "broken":
            self.at += 1
            return Broken(token.place)
        if token.kind == "sign" and token.text == "(":
            return self.inside()
        about = token.text if token.kind == "name" else ""
        self.report(sums.NO_VALUE(text=token.text).at(token.place, trails=True, about=about))
        raise LineError

    def call(self, name: Token) -> Expression:
        """Read the arguments of a function."""
        arguments = []
        self.at += 1
        while not self.sees(")"):
            arguments.append(self.expression(1))
            if not self.sees(","):
                break
            self.at += 1
        self.expect(")", sums.CLOSE_CALL)
        if name.text not in FUNCTIONS:
            close = nearest(name.text, FUNCTIONS)
            slip = sums.UNKNOWN_FUNCTION(name=name.text, known=", ".join(FUNCTIONS)).meant(close)
            self.report(slip.at(name.place))
            return Broken(name.place)
        takes = FUNCTIONS[name.text]
        if (takes is not None and len(arguments) != takes) or not arguments:
            slip = sums.TAKES_ONE if takes == 1 else sums.TAKES_SOME
            self.report(slip(name=name.text).at(name.place))
            return Broken(name.place)
        return Call(name.text, tuple(arguments), name.place)


def joined(first: Place, last: Place) -> Place:
    """Make the place from the start of one to the end of another on the same line."""
    length = last.column + last.length - first.column
    return Place(first.file, first.line, first.column, length)
