from scorecraft.motifs.chevron import chevron


def test_a_chevron_points_forward():
    left, right = chevron(length=20, width=40)
    assert left.line.tolist() == [[0, 10], [-20, -10]]
    assert right.line.tolist() == [[0, 10], [20, -10]]
    assert left.part == right.part == "arm"
