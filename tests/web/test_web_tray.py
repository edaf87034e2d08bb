"""The tray has every motif of the language, drawn from its row in the table of words."""

import re

from scorecraft.language.words import MOTIFS
from scorecraft.web.tray import NOT_LAID


def test_every_motif_is_in_the_tray_with_its_lines(asking):
    figures = asking.get("/api/tray").get_json()["figures"]
    assert {each["word"] for each in figures} == {word.name for word in MOTIFS} - set(NOT_LAID)
    for each in figures:
        left, top, width, height = each["box"]
        points = re.findall(r"(-?[\d.]+),(-?[\d.]+)", each["path"])
        assert len(points) > 1 and each["help"]
        assert all(left - 0.01 <= float(x) <= left + width + 0.01 for x, _ in points), each["word"]
        assert all(top - 0.01 <= float(y) <= top + height + 0.01 for _, y in points), each["word"]
