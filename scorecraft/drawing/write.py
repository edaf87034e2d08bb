"""Pictures to bytes: SVG, PDF or PNG, told apart by a file's suffix."""

from collections.abc import Sequence

from scorecraft.drawing.pdf import flattened, pdf, png
from scorecraft.drawing.photo import encoded_photo
from scorecraft.drawing.picture import Label, Picture, walk
from scorecraft.drawing.svg import svg
from scorecraft.drawing.text import missing
from scorecraft.errors import UsageError

FORMS = ("svg", "pdf", "png", "jpg", "webp")


def encoded(pictures: Sequence[Picture], form: str) -> bytes:
    """Encode pictures in a form (`pdf` or a suffix such as `.pdf`).

    Only a PDF holds more than one page. Raises UsageError for another form or too many pages.
    """
    form = form.lower().lstrip(".")
    if form == "pdf":
        return pdf(pictures, pictures[0].title)
    if form not in FORMS:
        hint = f"end the file in .{', .'.join(FORMS[:-1])} or .{FORMS[-1]}"
        raise UsageError(f'"{form}" is an unsupported file type', None, hint)
    if len(pictures) > 1:
        hint = "give a file that ends in .pdf"
        raise UsageError(f"one {form} file holds one page; this makes {len(pictures)}", None, hint)
    if form == "svg":
        return svg(pictures[0]).encode()
    return png(pictures[0]) if form == "png" else encoded_photo(flattened(pictures[0]), form)


def unprintable(pictures: Sequence[Picture]) -> tuple[str, ...]:
    """List the characters of the labels that the printed letters do not have."""
    found: dict[str, None] = {}
    for picture in pictures:
        for item in walk(picture.items):
            if isinstance(item, Label):
                found.update(dict.fromkeys(missing(item.text)))
    return tuple(found)
