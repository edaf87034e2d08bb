"""Nothing but the baker's own page may use the server, and only within its folder."""

import threading
import urllib.error
import urllib.request

import pytest
from support.web_patterns import HOST, LAN, SLASH

from scorecraft.errors import UsageError
from scorecraft.web.app import make_app
from scorecraft.web.guards import FORM, MOST_BODY_BYTES
from scorecraft.web.guests import COOKIE
from scorecraft.web.measuring import kept

ASKED = {"text": SLASH, "name": "mine.score"}


def test_a_foreign_host_is_refused(asking):
    answer = asking.client.get("/api/shelf", base_url="http://evil.example:29571")
    assert answer.status_code == 400
    assert asking.client.get("/", base_url="http://127.0.0.1:9").status_code == 400


@pytest.mark.parametrize(
    "origin", ["http://evil.example", "null", "http://127.0.0.1:9", f"https://{HOST}"]
)
def test_another_pages_origin_is_refused(asking, origin):
    assert asking.post("/api/design", ASKED, headers={"Origin": origin}).status_code == 403
    assert (
        asking.post("/api/design", ASKED, headers={"Origin": f"http://{HOST}"}).status_code == 200
    )


def test_another_page_cannot_fetch_but_a_person_may_follow_a_link(asking):
    fetching = {"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "no-cors"}
    following = {"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate"}
    assert asking.get("/picture/shelf/sun.score", headers=fetching).status_code == 403
    assert asking.get("/", headers=following).status_code == 200


@pytest.mark.parametrize(
    "kind", ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data"]
)
def test_a_form_of_another_page_is_refused(asking, folder, kind):
    body = '{"name": "mine", "text": "x", "mark": null}'
    answer = asking.client.post(
        "/api/save", base_url=f"http://{HOST}", data=body, content_type=kind
    )
    assert answer.status_code == 415
    assert folder.names() == []


@pytest.mark.parametrize(
    "body",
    [
        "",
        "{",
        "[]",
        '"text"',
        "null",
        '{"text": 1}',
        '{"text": ["a"]}',
        '{"text": "\\ud800"}',
        '{"text": "x", "knobs": [1]}',
        '{"text": "x", "place": "etc"}',
        '{"text": "x", "loaf": "round\\nslash 1mm"}',
        '{"text": "x", "name": 7}',
        '{"text": "x", "baker": "../baker.toml"}',
        '{"text": "x", "knobs": ' + "[" * 100_000 + "]" * 100_000 + "}",
        '{"text": "x", "knobs": {"n": ' + "9" * 5000 + "}}",
        '{"text": "x", "place": ["shelf"]}',
        '{"text": "x", "asked": ["7"]}',
    ],
)
def test_wrong_questions_are_refused_in_words(asking, body):
    answer = asking.client.post(
        "/api/design", base_url=f"http://{HOST}", data=body, content_type="application/json"
    )
    assert answer.status_code == 400
    assert answer.get_json()["error"]["message"]


ODD_VALUES = [
    None, True, 0, -1, 1e308, "", "x", "\0", "\x1b[31m", "\u202e", "a\nb", "\U0001f35e" * 80,
    [], [1], [[]], {}, {"x": {}}, "x" * 401, "nan", "1e999", "../x", "page7", 7.5,
]  # fmt: skip
FIELDS = {
    "open": ("name", "place"),
    "save": ("name", "text", "mark"),
    "design": ("text", "name", "place", "loaf", "bake", "knobs", "baker", "asked", "folder"),
    "edit": ("text", "knob", "value", "word", "keys"),
    "view": ("look", "elevation"),
    "print": ("what", "form", "paper", "slot_mm", "mirrored", "follow", "name"),
    "measure": ("rows", "note", "keep"),
    "bench": ("name",),
    "invite": ("link",),
}


@pytest.mark.parametrize("task", FIELDS)
def test_whatever_stands_in_a_field_is_answered_in_words(asking, task):
    """Every field in turn holds what it should not; the answer is data or says what is wrong."""
    base = {"text": SLASH, "name": "mine.score"}
    base |= {"what": "cutter", "follow": "cuts"}  # the quickest print
    odd = ODD_VALUES[::3] if task == "print" else ODD_VALUES  # what is fit makes a print each time
    told = [
        asking.post(f"/api/{task}", base | {field: value})
        for field in FIELDS[task]
        for value in odd
    ]
    assert {answer.status_code for answer in told} <= {200, 400, 404, 409}
    for answer in told:
        if answer.is_json and answer.status_code != 200:
            assert answer.get_json()["error"]["message"]


@pytest.mark.parametrize("value", [*ODD_VALUES, {"number": [1], "width_mm": 3},
                                   {"number": True, "width_mm": 3}, {"number": 1, "width_mm": [3]},
                                   {"number": {}, "width_mm": {}}])  # fmt: skip
def test_a_measured_row_of_another_kind_is_refused(asking, value):
    answer = asking.post("/api/measure", {"text": SLASH, "rows": [value]})
    assert answer.status_code == 400 and answer.get_json()["error"]["message"]


ADDRESSES = [
    "/", "/nowhere", "/api/", "/api/design", "/api/nothing", "/picture/shelf/nothing", "/join/x",
    "/picture/folder/%00", "/picture/folder/%ff", "/picture/shelf/%1b", "/picture/etc/passwd",
    "/picture/folder/" + "%F0%9F%8D%9E" * 80, "/static/", "/api/guest", "/api/laid", "/api/bakes",
]  # fmt: skip


@pytest.mark.parametrize("method", ["GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS", "PATCH"])
def test_no_address_and_no_method_makes_the_server_fail(asking, method):
    for address in ADDRESSES:
        for headers in ({}, {"Cookie": "scorecraft_guest=\xff\xfe"}, {"If-None-Match": '"x'}):
            answer = asking.client.open(
                address, method=method, base_url=f"http://{HOST}", headers=headers, buffered=True
            )
            assert answer.status_code < 500, (method, address)


def test_what_nobody_has_foreseen_is_answered_in_words(folder, crew, capfd):
    """The traceback goes to the terminal, where nothing in it can steer the terminal."""
    app = make_app(folder, crew, {HOST})

    @app.get("/fails")
    def fails():
        raise ZeroDivisionError("by \x1b[31mzero")

    answer = app.test_client().get("/fails", base_url=f"http://{HOST}")
    assert answer.status_code == 500
    assert "ZeroDivisionError" in answer.get_json()["error"]["message"]
    told = capfd.readouterr().err
    assert "in fails" in told and "\\x1b[31mzero" in told and "\x1b" not in told


def test_a_large_body_is_refused(asking):
    answer = asking.post("/api/design", {"text": "#" * 1_000_000})
    assert answer.status_code == 413
    assert MOST_BODY_BYTES < 1_000_000


NAMES = ["../out", "/etc/passwd", "a/b", "..\\out", "C:out", ".hidden", "con", "nul.score", ".."]


@pytest.mark.parametrize("name", [*NAMES, "", "a\x00b", "a\nb", "x" * 200])
def test_no_path_leads_out_of_the_folder(asking, folder, name):
    for task, data in (
        ("save", {"name": name, "text": "x", "mark": None}),
        ("open", {"name": name}),
    ):
        assert asking.post(f"/api/{task}", data).status_code == 400, task
    assert list(folder.path.parent.glob("out*")) == []


def test_a_link_out_of_the_folder_is_neither_listed_nor_followed(asking, folder, tmp_path_factory):
    secret = tmp_path_factory.mktemp("else") / "secret.score"
    secret.write_text("a secret")
    (folder.path / "link.score").symlink_to(secret)
    assert folder.names() == []
    assert asking.post("/api/open", {"name": "link.score"}).status_code == 400
    asking.post("/api/save", {"name": "link.score", "text": "x", "mark": None})
    assert secret.read_text() == "a secret"


def test_a_link_to_a_new_file_elsewhere_makes_none(asking, folder, tmp_path_factory):
    there = tmp_path_factory.mktemp("else")
    (folder.path / "link.score").symlink_to(there / "new.score")
    saved = asking.post("/api/save", {"name": "link.score", "text": "x", "mark": None})
    assert saved.status_code == 400
    assert list(there.iterdir()) == []


@pytest.mark.parametrize("name", ["baker.toml", "bakes.jsonl"])
def test_a_bake_is_not_kept_behind_a_link_out_of_the_folder(folder, tmp_path_factory, name):
    there = tmp_path_factory.mktemp("else") / "file"
    there.write_text("")
    (folder.path / name).symlink_to(there)
    with pytest.raises(UsageError, match="not an ordinary file in the folder"):
        kept(None, "sun", "", folder.path)
    assert there.read_text() == ""


@pytest.mark.parametrize(
    "path",
    [
        "/static/../app.py",
        "/static/%2e%2e/app.py",
        "/static//etc/passwd",
        "/picture/shelf/..%2fREADME.md",
        "/picture/folder/%2e%2e%2fsecret.score",
    ],
)
def test_addresses_lead_to_nothing_else(asking, path):
    assert asking.get(path).status_code in (400, 404, 308)


@pytest.mark.parametrize("file", ["../secret.svg", "/etc/passwd", "..\\secret.svg"])
def test_a_pattern_names_no_file_outside(asking, folder, file):
    text = f'loaf round width 200mm\ntrace "{file}"\n'
    told = asking.told("/api/design", {"text": text, "place": "folder"})
    assert told["ok"] is False and told["problems"][0]["line"] == 2


def test_hostile_text_stays_text(asking):
    text = SLASH.replace("Mine", "<script>alert(1)</script><svg onload=alert(1)> &amp;")
    told = asking.told("/api/design", {"text": text})
    assert "<script" not in told["svg"] and "onload=alert(1)>" not in told["svg"]
    for task in ("bench", "view"):
        assert "<script" not in asking.told(f"/api/{task}", {"text": text})["svg"]
    page = asking.told("/api/print", {"text": text})["pages"][0]
    assert "<script" not in page["svg"]


ROOT = '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm">'
DRAWINGS = [
    f'{ROOT}<script>alert(1)</script><path d="M0,0L9,9" onclick="alert(1)"/></svg>',
    f'<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>{ROOT}<path d="&b;"/></svg>',
    f'<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]>{ROOT}<title>&a;</title></svg>',
]


@pytest.mark.parametrize("drawing", DRAWINGS)
def test_a_hostile_drawing_does_no_harm(asking, folder, drawing):
    (folder.path / "bad.svg").write_text(drawing)
    told = asking.told(
        "/api/design", {"text": 'loaf round width 200mm\ntrace "bad.svg"\n', "place": "folder"}
    )
    assert "alert" not in str(told) and "root:" not in str(told)


def test_every_answer_has_strict_headers(asking):
    answers = [
        asking.get("/"),
        asking.get("/nowhere"),
        asking.get("/static/app.js"),
        asking.post("/api/design", ASKED),
    ]
    for answer in answers:
        policy = answer.headers["Content-Security-Policy"]
        assert "default-src 'none'" in policy and "unsafe" not in policy
        assert answer.headers["X-Content-Type-Options"] == "nosniff"
        assert answer.headers["Cache-Control"] == "no-store"
        assert answer.headers["Referrer-Policy"] == "no-referrer"


def test_the_page_has_no_inline_script_or_style(asking):
    page = asking.get("/").text
    assert "<style" not in page and "style=" not in page and "javascript:" not in page
    assert page.count("<script") == page.count('<script type="module" src="/static/')


def test_svg_has_no_style_attribute(asking):
    assert "style=" not in asking.told("/api/design", ASKED)["svg"]


class TestGuests:
    """A phone on the network sees the bench and nothing else, and only after it was let in."""

    def visit(self, asking, path, method="GET", **more):
        return asking.client.open(
            path,
            method=method,
            base_url=f"http://{LAN}",
            buffered=True,
            environ_overrides={"REMOTE_ADDR": "192.168.7.9"},
            **more,
        )

    def test_a_stranger_sees_nothing(self, asking):
        for path in ("/", "/api/shelf", "/api/laid", "/static/app.js", "/join/guess"):
            assert self.visit(asking, path).status_code == 403, path

    def test_a_link_lets_one_phone_in_to_look(self, asking):
        asking.told("/api/bench", ASKED)
        invited = asking.told("/api/invite", {})
        assert invited["link"].startswith(f"http://{LAN}/join/") and "<svg" in invited["code"]
        path = invited["link"].removeprefix(f"http://{LAN}")
        for method in ("GET", "HEAD", "GET"):  # looking at the link does not use it up
            seen = self.visit(asking, path, method)
            assert seen.status_code == 200 and "Set-Cookie" not in seen.headers
        assert '<form method="post"><button>' in seen.text and "<script" not in seen.text
        assert "form-action 'self'" in seen.headers["Content-Security-Policy"]
        joined = self.enter(asking, path)
        assert joined.status_code == 303 and joined.headers["Location"] == "/#bench"
        assert "HttpOnly" in joined.headers["Set-Cookie"]
        for allowed in ("/", "/static/app.js", "/api/guest", "/api/laid", "/api/help"):
            assert self.visit(asking, allowed).status_code == 200, allowed
        assert self.visit(asking, "/api/laid").get_json()["title"] == "Mine"
        assert self.visit(asking, "/api/guest").get_json() == {"guest": True, "welcome": True}
        for refused in ("/api/shelf", "/api/prints", "/api/bakes", "/picture/shelf/sun.score"):
            assert self.visit(asking, refused).status_code == 403, refused
        save = {"name": "x", "text": "x", "mark": None}
        for task in ("save", "design", "invite", "open"):
            assert self.visit(asking, f"/api/{task}", "POST", json=save).status_code == 403, task
        for again in (self.visit(asking, path), self.enter(asking, path)):
            assert again.headers["Location"] == "/#bench", "who is in need not come in again"
        asking.client.delete_cookie(COOKIE, domain=LAN.split(":")[0])
        for again in (self.visit(asking, path), self.enter(asking, path)):
            assert again.status_code == 403 and again.mimetype == "text/html"
            assert "Open on a phone" in again.text and "<form" not in again.text

    def enter(self, asking, path, **more):
        return self.visit(asking, path, "POST", content_type=FORM, **more)

    def test_the_door_takes_no_form_of_another_page(self, asking):
        link = asking.told("/api/invite", {})["link"].removeprefix(f"http://{LAN}")
        foreign = {"Origin": "http://evil.example"}
        assert self.enter(asking, link, headers=foreign).status_code == 403
        assert self.visit(asking, link, "POST", json={}).status_code == 415
        assert self.enter(asking, "/api/invite").status_code == 415
        own = {"Origin": f"http://{LAN}", "Sec-Fetch-Site": "same-origin"}
        assert self.enter(asking, link, headers=own).status_code == 303

    def test_a_stranger_is_told_what_to_do(self, asking):
        told = self.visit(asking, "/")
        assert told.mimetype == "text/html" and "was not let in" in told.text
        assert self.visit(asking, "/api/laid").mimetype == "application/json"
        assert self.visit(asking, "/static/join.css").status_code == 200

    def test_a_phone_hears_of_a_changed_plan_and_of_nothing_else(self, asking):
        asking.told("/api/bench", ASKED)
        first = asking.get("/api/laid")
        mark = {"If-None-Match": first.headers["ETag"]}
        same = asking.get("/api/laid", headers=mark)
        assert (same.status_code, same.data) == (304, b"")
        asking.told("/api/bench", {"text": "slush\n"})
        assert asking.get("/api/laid", headers=mark).status_code == 304, "a slip takes nothing away"
        asking.told("/api/bench", {"text": SLASH.replace("100mm", "90mm")})
        changed = asking.get("/api/laid", headers=mark)
        assert changed.status_code == 200 and changed.headers["ETag"] != first.headers["ETag"]

    def test_a_forged_token_is_refused(self, asking):
        asking.client.set_cookie(COOKIE, "forged", domain=LAN.split(":")[0])
        assert self.visit(asking, "/").status_code == 403

    def test_without_share_there_is_no_way_in(self, folder, crew):
        app = make_app(folder, crew, {HOST})
        answer = app.test_client().post("/api/invite", base_url=f"http://{HOST}", json={})
        assert answer.status_code == 400


def test_fifty_requests_at_once_are_all_answered(live):
    address, _ = live
    answers = []

    def ask(number):
        text = SLASH.replace("100mm", f"{60 + number}mm")
        body = (
            '{"text": ' + repr(text).replace("'", '"').replace('"Mine"', '\\"Mine\\"') + "}"
        ).encode()
        question = urllib.request.Request(
            f"{address}api/design", body, {"Content-Type": "application/json"}
        )
        try:
            with urllib.request.urlopen(question, timeout=30) as answer:
                answers.append(
                    (answer.status, f'"length_mm":{60 + number}.0' in answer.read().decode())
                )
        except urllib.error.HTTPError as error:
            answers.append((error.code, False))

    threads = [threading.Thread(target=ask, args=(number,)) for number in range(50)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert answers == [(200, True)] * 50
