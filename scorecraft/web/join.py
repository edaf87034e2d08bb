"""The small pages at a phone's way in: one with a button that lets it in, and one that sends it on.

Only the button uses the link up: what looks at links before a person does (a scanner's preview, a
browser that fetches ahead) changes nothing.
"""

from html import escape

from scorecraft.web import telling as say
from scorecraft.web.answer import Answer

HTML = "text/html; charset=utf-8"
FORM = f'<form method="post"><button>{say.DOOR_BUTTON}</button></form>'
PAGE = """<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<meta name="color-scheme" content="light dark">
<meta name="robots" content="noindex">
<title>{title}</title>
<link rel="icon" href="/static/icon.svg" type="image/svg+xml">
<link rel="stylesheet" href="/static/join.css">
</head>
<body>
<main>
<h1>{title}</h1>
<p>{text}</p>
{more}
</main>
</body>
</html>
"""


def door_page() -> Answer:
    """Show a guest who has a good link the button that lets in."""
    return page(say.DOOR_TITLE, say.DOOR, more=FORM)


def used_page() -> Answer:
    """Tell a guest whose link lets nobody in what to do."""
    return page(say.USED_TITLE, say.USED, 403)


def stranger_page() -> Answer:
    """Tell who was not let in what to do."""
    return page(say.STRANGER_TITLE, say.STRANGER, 403)


def page(title: str, text: str, status: int = 200, *, more: str = "") -> Answer:
    """Write a page of a few words."""
    told = PAGE.format(title=escape(title), text=escape(text), more=more)
    return Answer(told.encode(), HTML, status)
