"""Who may ask, from where, and what a browser may do with the answer.

The server is for one baker's own browser. A foreign page that the browser has open must not be
able to use it: so the Host must be ours (a foreign name may point at this machine), the Origin
too, and data comes as JSON only, which no form of a foreign page can send. The one form is at the
door for guests, and brings nothing but the secret in its address.
"""

from collections.abc import Collection

from flask import Flask, Request, Response, abort, request

from scorecraft.web.answer import JSON
from scorecraft.web.guests import DOOR, Guests
from scorecraft.web.telling import OTHER_NAME, OTHER_PAGE

MOST_BODY_BYTES = 300_000
FORM = "application/x-www-form-urlencoded"
POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "font-src 'self'",
        "img-src 'self' data: blob:",
        "connect-src 'self'",
        "manifest-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'none'",
    )
)
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cache-Control": "no-store",
    "Cross-Origin-Resource-Policy": "same-origin",
    "X-Frame-Options": "DENY",
}
AT_THE_DOOR = {
    "Content-Security-Policy": POLICY.replace("form-action 'none'", "form-action 'self'"),
    "Referrer-Policy": "same-origin",  # without one a browser gives a form's origin as "null"
}
"""The button at the door is a form: who has not been let in gets no script."""

KEPT = "private, max-age=604800"
"""Fonts are kept by the browser for a week: nothing of the baker is in them."""


def guard(app: Flask, hosts: Collection[str], guests: Guests) -> None:
    """Have every request checked and every answer sent with strict headers."""
    app.config["MAX_CONTENT_LENGTH"] = MOST_BODY_BYTES
    app.before_request(lambda: check(request, hosts))
    app.before_request(lambda: None if is_local(request) else guests.check(request))
    app.after_request(strict)


def check(asked: Request, hosts: Collection[str]) -> None:
    """Refuse a request that no page of ours has sent."""
    if asked.host not in hosts:
        abort(400, OTHER_NAME)
    origin = asked.headers.get("Origin")
    if origin is not None and origin not in {f"http://{host}" for host in hosts}:
        abort(403, OTHER_PAGE)
    site = asked.headers.get("Sec-Fetch-Site", "none")
    if site not in ("same-origin", "none") and not opened_by_link(asked):
        abort(403, OTHER_PAGE)
    if asked.method == "POST" and asked.mimetype != kind_wanted(asked):
        abort(415, f"send {kind_wanted(asked)}")


def kind_wanted(asked: Request) -> str:
    """Give the type of data a request must bring: JSON, but at the door, where a button is."""
    return FORM if asked.path.startswith(DOOR) else JSON


def opened_by_link(asked: Request) -> bool:
    """Tell whether this is a person following a link to the page itself."""
    return asked.method == "GET" and asked.headers.get("Sec-Fetch-Mode") == "navigate"


def strict(response: Response) -> Response:
    """Add the strict headers to an answer."""
    for name, value in HEADERS.items():
        response.headers[name] = value
    if response.status_code == 200 and request.path.startswith("/static/fonts/"):
        response.headers["Cache-Control"] = KEPT
    if request.path.startswith(DOOR):
        response.headers.update(AT_THE_DOOR)
    return response


def is_local(asked: Request) -> bool:
    """Tell whether the request comes from this machine."""
    return asked.remote_addr in ("127.0.0.1", "::1")
