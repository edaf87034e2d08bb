"""The server's routes: each reads its request, makes one call, and answers."""

import json
from collections.abc import Callable, Collection

from flask import Flask, Response, g, render_template, request
from werkzeug.exceptions import HTTPException, NotFound

from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.shelf import from_file, shelf
from scorecraft.web import telling as say
from scorecraft.web.answer import SVG, Answer, file_names, internal, json_answer, marked, refusal
from scorecraft.web.asked import LONGEST_MARK, text_of, words_of
from scorecraft.web.crew import Crew, TooLongError, UnwantedError
from scorecraft.web.desk import Desk
from scorecraft.web.edits import edit_answer
from scorecraft.web.folder import ChangedError, Folder, Opened
from scorecraft.web.guards import guard, is_local
from scorecraft.web.guests import COOKIE, Guests, code
from scorecraft.web.help import PARTS
from scorecraft.web.join import door_page, stranger_page, used_page
from scorecraft.web.listing import listing
from scorecraft.web.offered import offered
from scorecraft.web.word_list import word_list
from scorecraft.web.worker import TooBusyError


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
    desk = Desk(crew, folder)
    add_work(app, desk)
    add_bench(app, desk, guests)
    add_door(app, guests)
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

    @app.post("/api/rename")
    def rename_file() -> Response:
        data = body()
        name = folder.rename(text_of(data, "name"), text_of(data, "new"))
        return sent(json_answer({"name": name}))

    @app.post("/api/duplicate")
    def duplicate_file() -> Response:
        return sent(json_answer({"name": folder.duplicate(text_of(body(), "name"))}))

    @app.post("/api/delete")
    def delete_file() -> Response:
        where = folder.delete(text_of(body(), "name"))
        return sent(json_answer({"where": str(where)}))

    @app.get("/api/help")
    def help_pages() -> Response:
        html = render_template("help.html", parts=PARTS, language=word_list())
        return sent(json_answer({"html": html}))

    @app.get("/api/bakes")
    def bakes_list() -> Response:
        from scorecraft.web.measuring import bakes

        return sent(json_answer(bakes(folder.path)))


def add_work(app: Flask, desk: Desk) -> None:
    """Add what the workers do; a shipped pattern is drawn once for the shelf."""
    drawn: dict[str, Answer] = {}

    @app.get("/api/prints")
    def prints_list() -> Response:
        return sent(json_answer(offered()))

    @app.get("/api/tray")
    def tray() -> Response:
        return sent(desk.tray())

    @app.post("/api/edit")
    def change() -> Response:
        return sent(edit_answer(body()))  # a matter of lines: no worker is waited for

    @app.post("/api/<any(sight, design, opening, bloom, view, print, measure, reform):task>")
    def work(task: str) -> Response:
        return sent(desk.done(task, body(), gone()))

    @app.post("/api/hand/<any(look, pick, do):task>")
    def hand(task: str) -> Response:
        return sent(desk.done(task, body(), gone()))

    @app.get("/picture/<any(shelf, folder):place>/<name>")
    def picture(place: str, name: str) -> Response:
        task = "baked" if "baked" in request.args else "picture"
        kept = place == "shelf" and task == "picture"
        if kept and name in drawn:
            return sent(drawn[name])
        opened = shipped(name) if place == "shelf" else desk.folder.open(name)
        data = {"text": opened.text, "name": opened.name, "place": place}
        answer = desk.done(task, data, gone())
        if kept and answer.type == SVG:
            drawn[name] = answer
        return sent(answer)


def add_bench(app: Flask, desk: Desk, guests: Guests) -> None:
    """Add the bench: what is laid out there, and the way in for a phone.

    Asking raises UsageError where the page is not shared.
    """
    laid = [json_answer({"ok": False, "problems": []})]

    @app.post("/api/bench")
    def lay() -> Response:
        answer = desk.done("bench", body(), gone())
        if json.loads(answer.body).get("ok"):  # what cannot be read takes no plan from a phone
            laid[0] = answer
        return sent(answer)

    @app.get("/api/laid")
    def look() -> Response:
        response = sent(laid[0])
        response.add_etag()
        response.make_conditional(request)
        return response

    @app.get("/api/guest")
    def guest() -> Response:
        return sent(json_answer({"guest": not is_local(request), "welcome": guests.welcome}))

    @app.post("/api/invite")
    def invite() -> Response:
        if not guests.welcome:
            raise say.LOCAL_ONLY.usage()
        link = guests.invite()
        return sent(json_answer({"link": link, "code": code(link)}))


def add_door(app: Flask, guests: Guests) -> None:
    """Add the way in for a phone: a page with a button, which uses the link up."""

    @app.get("/join/<secret>")
    def door(secret: str) -> Response:
        if guests.knows(request):
            return redirected("/#bench")
        return sent(door_page() if guests.opens(secret) else used_page())

    @app.post("/join/<secret>")
    def join(secret: str) -> Response:
        token = guests.enter(secret)
        if not token:
            return redirected("/#bench") if guests.knows(request) else sent(used_page())
        response = redirected("/#bench")
        response.set_cookie(COOKIE, token, httponly=True, samesite="Lax")
        return response


def redirected(address: str) -> Response:
    """Send a browser on, to read there."""
    return Response(status=303, headers={"Location": address})


def gone() -> Callable[[], bool]:
    """Give what tells whether the asker of this request has gone away, as far as is known."""
    told: Callable[[], bool] = request.environ.get("waitress.client_disconnected", bool)
    return told


def body() -> dict[str, object]:
    """Read the JSON of a request, which must be an object.

    Its `asked`, any short text, is sent back with the answer, whatever that is: so a page knows
    which of its texts an answer is about. Raises UsageError for anything else.
    """
    try:
        data = request.get_json()
    except RecursionError as error:
        raise say.NEST.usage() from error
    if not isinstance(data, dict):
        raise say.NO_OBJECT.usage()
    g.asked = text_of(data, "asked", default="", limit=LONGEST_MARK)
    return data


def shipped(name: str) -> Opened:
    """Read a shipped pattern; raises NotFound for another name."""
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
    if isinstance(error, UnwantedError):
        return sent(json_answer({"ok": False, "problems": [], "dropped": True}))
    status = {TooLongError: 504, TooBusyError: 503}.get(type(error), 400)
    return sent(refusal(error, status))


def not_served(error: HTTPException) -> Response:
    """Answer what the server does not serve, as JSON like every other answer."""
    if error.code == 403 and request.path == "/" and not is_local(request):
        return sent(stranger_page())
    told = UsageError(error.description or error.name)
    return sent(refusal(told, error.code or 500))


def unforeseen(error: Exception) -> Response:
    """Answer what nobody has foreseen in words; where it happened goes to the terminal."""
    return sent(internal(error))
