"""The server's routes: each reads its request, makes one call, and answers."""

from collections.abc import Collection
from typing import Any

from flask import Flask, Response, g, request
from werkzeug.exceptions import Forbidden, HTTPException, NotFound

from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.shelf import from_file, shelf
from scorecraft.web.answer import Answer, file_names, internal, json_answer, marked, refusal
from scorecraft.web.asked import LONGEST_MARK, asked, text_of, words_of
from scorecraft.web.crew import Crew, TooBusyError, TooLongError
from scorecraft.web.folder import ChangedError, Folder, Opened
from scorecraft.web.guards import guard, is_local
from scorecraft.web.guests import COOKIE, Guests, code
from scorecraft.web.listing import listing

EDIT_S = 10.0
"""So long an edit may take; what the model or a print needs may take `MODEL_S`."""
MODEL_S = 40.0


def make_app(
    folder: Folder, crew: Crew, hosts: Collection[str], guests: Guests | None = None
) -> Flask:
    """Make the server for a folder; `hosts` are the names it answers to, with their ports."""
    app = Flask(__name__, static_folder="static", static_url_path="/static")
    guests = guests or Guests()
    guard(app, hosts, guests)
    app.register_error_handler(ScorecraftError, failed)
    app.register_error_handler(HTTPException, not_served)
    app.register_error_handler(Exception, unforeseen)
    app.add_url_rule("/", view_func=lambda: app.send_static_file("index.html"), endpoint="page")
    add_files(app, folder)
    add_work(app, folder, crew)
    add_bench(app, folder, crew, guests)
    return app


def add_files(app: Flask, folder: Folder) -> None:
    """Add what has to do with files."""

    @app.get("/api/shelf")
    def shelf_list() -> Response:
        return sent(json_answer(listing(folder)))

    @app.post("/api/open")
    def open_file() -> Response:
        data = body()
        name = text_of(data, "name")
        opened = shipped(name) if data.get("place") == "shelf" else folder.open(name)
        return sent(json_answer(opened_data(opened)))

    @app.post("/api/save")
    def save_file() -> Response:
        data = body()
        text = text_of(data, "text", limit=None)
        saved = folder.save(text_of(data, "name"), text, words_of(data, "mark"))
        return sent(json_answer(opened_data(saved)))

    @app.get("/api/bakes")
    def bakes_list() -> Response:
        from scorecraft.web.measuring import bakes

        return sent(json_answer(bakes(folder.path)))


def add_work(app: Flask, folder: Folder, crew: Crew) -> None:
    """Add what the workers do."""

    @app.post("/api/<any(design, edit):task>")
    def edit(task: str) -> Response:
        return sent(done(crew, folder, task, body(), EDIT_S))

    @app.post("/api/<any(opening, mouths, bloom, view, print, measure):task>")
    def draw(task: str) -> Response:
        return sent(done(crew, folder, task, body(), MODEL_S))

    @app.get("/picture/<any(shelf, folder):place>/<name>")
    def picture(place: str, name: str) -> Response:
        opened = shipped(name) if place == "shelf" else folder.open(name)
        data = {"text": opened.text, "name": opened.name, "place": place}
        return sent(done(crew, folder, "picture", data, EDIT_S))


def add_bench(app: Flask, folder: Folder, crew: Crew, guests: Guests) -> None:
    """Add the bench: what is laid out there, and the way in for a phone."""
    laid = [json_answer({"ok": False, "problems": []})]

    @app.post("/api/bench")
    def lay() -> Response:
        laid[0] = done(crew, folder, "bench", body(), MODEL_S)
        return sent(laid[0])

    @app.get("/api/laid")
    def look() -> Response:
        return sent(laid[0])

    @app.get("/api/guest")
    def guest() -> Response:
        return sent(json_answer({"guest": not is_local(request), "welcome": guests.welcome}))

    @app.post("/api/invite")
    def invite() -> Response:
        if not guests.welcome:
            hint = "start the page with --share"
            raise UsageError("this page is for this computer only", None, hint)
        link = guests.invite()
        return sent(json_answer({"link": link, "code": code(link)}))

    @app.get("/join/<secret>")
    def join(secret: str) -> Response:
        token = guests.enter(secret)
        if not token:
            raise Forbidden("this link was used already; ask the baker for a new one")
        response = Response(status=303, headers={"Location": "/#bench"})
        response.set_cookie(COOKIE, token, httponly=True, samesite="Lax")
        return response


def done(crew: Crew, folder: Folder, task: str, data: dict[str, Any], seconds: float) -> Answer:
    """Have a worker do a task about a pattern."""
    request = data | {"folder": str(folder.path)}
    return crew.do(task, request, about=asked(data), seconds=seconds)


def body() -> dict[str, Any]:
    """Read the JSON of a request, which must be an object.

    Its `asked`, any short text, is sent back with the answer, whatever that is: so a page knows
    which of its texts an answer is about.
    """
    try:
        data = request.get_json()
    except RecursionError as error:
        raise UsageError("the JSON is nested too deep") from error
    if not isinstance(data, dict):
        raise UsageError("send a JSON object")
    g.asked = text_of(data, "asked", default="", limit=LONGEST_MARK)
    return data


def shipped(name: str) -> Opened:
    """Read a shipped pattern."""
    path = shelf().get(name.removesuffix(".score"))
    if path is None:
        raise NotFound(f'no shipped pattern is called "{name}"')
    return Opened(path.name, from_file(path).text, "")


def opened_data(opened: Opened) -> dict[str, str]:
    """Tell an opened file as data."""
    return {"name": opened.name, "text": opened.text, "mark": opened.mark}


def sent(answer: Answer) -> Response:
    """Send an answer, with the mark of its question."""
    answer = marked(answer, g.get("asked", ""))
    response = Response(answer.body, answer.status, content_type=answer.type)
    if answer.name:
        response.headers.set("Content-Disposition", "attachment", **file_names(answer.name))
    return response


def failed(error: ScorecraftError) -> Response:
    """Answer a request that cannot be met, in the user's words."""
    if isinstance(error, ChangedError):
        told = {"message": error.message, "hint": error.hint}
        return sent(json_answer({"error": told, "mark": error.mark}, 409))
    status = {TooLongError: 504, TooBusyError: 503}.get(type(error), 400)
    return sent(refusal(error, status))


def not_served(error: HTTPException) -> Response:
    """Answer what the server does not serve, as JSON like every other answer."""
    told = UsageError(error.description or error.name)
    return sent(refusal(told, error.code or 500))


def unforeseen(error: Exception) -> Response:
    """Answer what nobody has foreseen in words; where it happened goes to the terminal."""
    return sent(internal(error))
