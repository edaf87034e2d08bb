"""Whole lines: statements are wrapped, unwrapped, added and removed; comments stay."""

from collections.abc import Sequence

from scorecraft.editing.written import INDENT, Edit, Written, indent_of, walked
from scorecraft.language.tree import Statement


def wrapped(written: Written, statement: Statement, heads: Sequence[str]) -> list[Edit]:
    """Put a statement into new blocks, the outermost first; its lines move to the right."""
    own = indent_of(statement)
    new = "".join(
        f"{own}{INDENT * depth}{head}:{written.ending}" for depth, head in enumerate(heads)
    )
    start = written.starts[statement.place.line - 1]
    return [Edit(start, start, new), *shifted(written, written.lines(statement), len(heads))]


def shifted(written: Written, lines: range, levels: int) -> list[Edit]:
    """Move lines to the right; blank ones stay as they are."""
    starts = [written.starts[number - 1] for number in lines if written.line(number).strip()]
    return [Edit(start, start, INDENT * levels) for start in starts]


def unwrapped(written: Written, statement: Statement) -> list[Edit]:
    """Take a block's head away; its lines move back to where it stood."""
    lines = written.lines(statement)
    by = statement.body[0].place.column - statement.place.column
    found = [dropped_line(written, statement)]
    for number in lines[1:]:
        line, start = written.line(number), written.starts[number - 1]
        blanks = len(line) - len(line.lstrip(" "))
        found.append(Edit(start, start + (min(by, blanks) if line.strip() else 0), ""))
    return found


def removed(written: Written, statements: Sequence[Statement]) -> list[Edit]:
    """Remove statements, and the blocks around them that are left empty."""
    gone = {each.place.line for one in statements for each, _ in walked((one,), None)}
    for line in sorted(written.statements, reverse=True):  # a block comes before its head
        body = written.statements[line].body
        if body and all(each.place.line in gone for each in body):
            gone.add(line)
    return [dropped_line(written, written.statements[line]) for line in sorted(gone)]


def dropped_line(written: Written, statement: Statement) -> Edit:
    """Remove the line of one statement; a comment at its end stays, as a line of its own."""
    start, end = written.span(statement.span)
    first, last = written.starts[statement.place.line - 1], written.starts[statement.place.line]
    rest = written.text[end:last]
    if not rest.strip():
        return Edit(first, last, "")
    return Edit(start, end + len(rest) - len(rest.lstrip(" \t")), "")


def added(written: Written, block: Statement | None, statement: Statement) -> Edit:
    """Write a new statement at the end of a block, or of the text."""
    margin = indent_of(block.body[0]) if block else ""
    lines = [margin + line for line in str(statement).split("\n")]
    at = written.after(block)
    before = "" if written.text[:at].endswith(("\n", "\r")) or not at else written.ending
    return Edit(at, at, before + "".join(line + written.ending for line in lines))
