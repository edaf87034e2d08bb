"""The tray has every figure that can be laid as it is, drawn as it is laid."""

import re

from support.web_patterns import SLASH

from scorecraft.editing.making import tray


def test_every_figure_is_in_the_tray_with_its_lines(asking):
    figures = asking.get("/api/tray").get_json()["figures"]
    assert sorted(each["word"] for each in figures) == sorted(tray())
    assert figures[0]["word"] == "slash"
    for each in figures:
        left, top, width, height = each["box"]
        points = re.findall(r"(-?[\d.]+),(-?[\d.]+)", each["path"])
        assert len(points) > 1 and each["help"]
        assert all(left - 0.01 <= float(x) <= left + width + 0.01 for x, _ in points), each["word"]
        assert all(top - 0.01 <= float(y) <= top + height + 0.01 for _, y in points), each["word"]


def test_the_picture_alone_is_that_of_the_design(asking):
    alone, design = (asking.told(f"/api/{task}", {"text": SLASH}) for task in ("sight", "design"))
    assert alone["frame"] == design["frame"] and design["findings"] == []
    assert alone["svg"] == design["svg"]
    broken = asking.told("/api/sight", {"text": "slush\n"})
    assert not broken["ok"] and broken["problems"][0]["line"] == 1
