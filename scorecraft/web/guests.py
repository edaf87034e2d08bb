"""Guests from the same network: a phone at the bench that follows the cuts, and no more."""

import hmac
import secrets
import socket
import threading

from flask import Request, abort

from scorecraft.web.telling import NEW_LINK

COOKIE = "scorecraft_guest"
DOOR = "/join/"
OPEN_TO_STRANGERS = (DOOR, "/static/join.css", "/static/icon.svg")
OPEN_TO_GUESTS = ("/static/", "/api/guest", "/api/laid", "/api/help")


class Guests:
    """Who was let in: each link lets one guest in, and is then used up."""

    def __init__(self, address: str = "") -> None:
        self.address = address
        self.lock = threading.Lock()
        self.secret = ""
        self.tokens: set[str] = set()

    @property
    def welcome(self) -> bool:
        """Tell whether guests are let in at all."""
        return bool(self.address)

    def invite(self) -> str:
        """Make a new link; the one before it is no longer good."""
        with self.lock:
            self.secret = secrets.token_urlsafe(18)
            return f"{self.address.rstrip('/')}{DOOR}{self.secret}"

    def opens(self, secret: str) -> bool:
        """Tell whether a link would let a guest in."""
        return bool(self.secret) and hmac.compare_digest(secret.encode(), self.secret.encode())

    def enter(self, secret: str) -> str:
        """Let a guest in who has the link; give the token to show from now on, or ""."""
        with self.lock:
            if not self.opens(secret):
                return ""
            self.secret = ""
            token = secrets.token_urlsafe(24)
            self.tokens.add(token)
            return token

    def knows(self, asked: Request) -> bool:
        """Tell whether a request comes from a guest that was let in."""
        return asked.cookies.get(COOKIE, "") in self.tokens

    def check(self, asked: Request) -> None:
        """Refuse what is not for guests."""
        if asked.path.startswith(OPEN_TO_STRANGERS):
            return
        open_to_guests = asked.path == "/" or asked.path.startswith(OPEN_TO_GUESTS)
        if asked.method not in ("GET", "HEAD") or not open_to_guests or not self.knows(asked):
            abort(403, NEW_LINK)


def network_address() -> str:
    """Find this machine's address on its network; nothing is sent for it.

    Raises OSError where there is no network.
    """
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as line:
        line.connect(("192.0.2.1", 9))  # a documentation address (RFC 5737)
        return str(line.getsockname()[0])


def code(link: str) -> str:
    """Draw a link as a QR code, SVG."""
    import io

    import segno

    out = io.BytesIO()
    segno.make(link, error="m", micro=False).save(
        out, kind="svg", xmldecl=False, omitsize=True, border=3, light="#ffffff", svgclass=None,
        lineclass=None,
    )  # fmt: skip
    return out.getvalue().decode()
