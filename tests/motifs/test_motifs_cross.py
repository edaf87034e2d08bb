from scorecraft.motifs.cross import cross


def test_a_cross_has_a_bar_along_each_axis():
    along, across = cross(length=100, width=60)
    assert along.line.tolist() == [[0, -50], [0, 50]]
    assert across.line.tolist() == [[-30, 0], [30, 0]]
