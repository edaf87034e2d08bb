"""Finite elements for real slits in a stretched sheet: makes `slits.json` beside this file.

Run by hand, `python tests/published/tables/make_slits.py`, with scikit-fem 12 on the path; the
tests read the table only. The sheet is thin, incompressible and neo-Hookean, tied at its rim, with
W = (tr C + 1 / det C - 3) / 6 in units of E, and is given by distances: it lies on a surface of
revolution (the reference), its points are carried to another one (the loaf after the bake) and may
slide there. Both are known by rho(s), the distance from the axis over the distance along the skin;
a flat disc has rho = s. Six-node triangles over a quarter, Newton's method.
"""

import json
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from scipy.interpolate import CubicSpline
from scipy.sparse.linalg import splu
from scipy.spatial import Delaunay, cKDTree
from skfem import Basis, BilinearForm, ElementTriP2, ElementVector, LinearForm, MeshTri, asm
from skfem.element import DiscreteField

SIZE, FINE, GROW = 10.0, 0.25, 0.25
LEFT, SPRING = 0.85, 1.4
WIDTH, HEIGHT = 220.0, 95.0


class Flat:
    """A flat disc."""

    def __init__(self, reach):
        self.reach = reach

    def ratio(self, s):
        """rho / s, and its slope."""
        return np.ones_like(s), np.zeros_like(s)


class Dome:
    """Half an ellipsoid of base radius and height (mm)."""

    def __init__(self, radius, height):
        u = np.linspace(0, np.pi / 2, 20_001)
        speed = np.hypot(radius * np.cos(u), height * np.sin(u))
        s = np.concatenate([[0], np.cumsum((speed[1:] + speed[:-1]) / 2 * np.diff(u))])
        self.reach = float(s[-1])
        self.rho = CubicSpline(s, radius * np.sin(u), bc_type=((1, 1.0), (1, 0.0)))

    def ratio(self, s):
        """rho / s, and its slope."""
        s = np.maximum(s, 1e-6)
        ratio = self.rho(s) / s
        return ratio, (self.rho(s, 1) - ratio) / s


@dataclass
class Case:
    """Half lengths (mm) of slits along x and along y through the crown; 0 for none."""

    x: float
    y: float = 0.0

    @property
    def tips(self):
        """The tips on the axes of the quarter."""
        return np.array(
            [tip for tip in ((self.x, 0.0), (0.0, self.y)) if any(tip)] or [[40.0, 0.0]]
        )


def mesh(reach, tips, coarse):
    """A quarter disc, fine at the tips."""

    def size(points):
        away = np.min([np.hypot(*(points - tip).T) for tip in tips], axis=0)
        return np.minimum(SIZE * coarse, FINE * coarse**3 + GROW * away)

    def march(path, length, stops):
        at = [0.0]
        for stop in [*sorted(s for s in stops if 0 < s < length), length]:
            while True:
                step = float(size(np.atleast_2d(path(at[-1])))[0])
                if at[-1] + 1.4 * step >= stop:
                    break
                at.append(at[-1] + step)
            at.append(stop)
        return np.array([path(s) for s in at])

    edges = [
        march(lambda s: np.array([s, 0.0]), reach, tips[:, 0]),
        march(lambda s: np.array([0.0, s]), reach, tips[:, 1]),
        march(
            lambda s: reach * np.array([np.cos(s / reach), np.sin(s / reach)]),
            reach * np.pi / 2,
            (),
        ),
    ]
    fixed = np.unique(np.round(np.vstack(edges), 9), axis=0)
    rings = []
    for tip in tips:
        r = FINE
        while r < 2.2 * reach:
            h = min(SIZE * coarse, FINE * coarse**3 + GROW * r)
            turn = np.arange(max(6, int(2 * np.pi * r / h))) + 0.3
            turn *= 2 * np.pi / len(turn)
            rings.append(tip + r * np.column_stack([np.cos(turn), np.sin(turn)]))
            r += 0.87 * h
    free = np.vstack(rings)
    h = size(free)
    inside = np.minimum(free[:, 0], free[:, 1]) > 0.5 * h
    inside &= reach - np.hypot(*free.T) > 0.5 * h
    inside &= cKDTree(fixed).query(free)[0] > 0.6 * h
    free, h = free[inside], h[inside]
    kept = []
    tree = cKDTree(free)
    gone = np.zeros(len(free), bool)
    for k in np.argsort(h, kind="stable"):
        if not gone[k]:
            kept.append(k)
            gone[tree.query_ball_point(free[k], 0.75 * h[k])] = True
    points = np.vstack([fixed, free[kept]])
    triangles = Delaunay(points).simplices
    one, other = (points[triangles[:, k]] - points[triangles[:, 0]] for k in (1, 2))
    area = np.abs(one[:, 0] * other[:, 1] - one[:, 1] * other[:, 0]) / 2
    return MeshTri(points.T.copy(), triangles[area > 1e-6 * FINE**2].T.copy())


def stresses(gradient, y, here, before, after):
    """Derivatives of the energy by the gradient (2, 2) and by the place (2,), and the energy."""
    away, r = np.hypot(*here) + 1e-12, np.hypot(*y) + 1e-12
    n, (c, s) = y / r, here / away
    t = np.stack([-n[1], n[0]])
    wide, _ = before.ratio(away)
    ratio, slope = after.ratio(r)
    along, around = np.stack([c, s]), np.stack([-s, c]) / wide

    def part(v, w):
        return np.einsum("i...,ij...,j...->...", v, gradient, w)

    a, b = part(n, along), part(n, around)
    t1, t2 = part(t, along), part(t, around)
    d, e = ratio * t1, ratio * t2
    grown = a * e - b * d
    k = -1 / (3 * grown**3)
    pa, pb, pd, pe = a / 3 + k * e, b / 3 - k * d, d / 3 - k * b, e / 3 + k * a
    first, second = pa * along + pb * around, ratio * (pd * along + pe * around)
    by_gradient = np.einsum("i...,j...->ij...", n, first) + np.einsum("i...,j...->ij...", t, second)
    turning = (pa * t1 + pb * t2) / r - ratio * (pd * a + pe * b) / r
    by_place = turning * t + slope * (pd * t1 + pe * t2) * n
    energy = (a * a + b * b + d * d + e * e + 1 / grown**2 - 3) / 6
    return by_gradient * wide, by_place * wide, energy * wide


def tangent(gradient, y, here, before, after):
    """Second derivatives (6, 6) of the energy by central differences of the first."""
    stiff = np.zeros((6, 6, *y.shape[1:]))
    for k in range(6):
        step = 1e-6 if k < 4 else 1e-4
        moved = []
        for sign in (1, -1):
            g, p = gradient.copy(), y.copy()
            if k < 4:
                g[k // 2, k % 2] += sign * step
            else:
                p[k - 4] += sign * step
            moved.append(stresses(g, p, here, before, after))
        stiff[:4, k] = ((moved[0][0] - moved[1][0]) / (2 * step)).reshape(4, *y.shape[1:])
        stiff[4:, k] = (moved[0][1] - moved[1][1]) / (2 * step)
    return (stiff + stiff.swapaxes(0, 1)) / 2


@BilinearForm
def _matrix(u, v, p):
    one, two = (np.concatenate([f.grad.reshape(4, *f.grad.shape[2:]), f.value]) for f in (u, v))
    return np.einsum("i...,ij...,j...->...", two, p["K"], one)


@LinearForm
def _force(v, p):
    return np.einsum("ij...,ij...", p["G"], v.grad) + np.einsum("i...,i...", p["g"], v.value)


def solve(case, before, after, scale, coarse=1.0):
    """Widths (mm) at the middle of the slit along x, and the energy of the whole sheet."""
    grid = mesh(before.reach, case.tips, coarse)
    basis = Basis(grid, ElementVector(ElementTriP2()), intorder=4)
    where, component = basis.doflocs, np.zeros(basis.N, int)
    component[basis.split_indices()[1]] = 1
    edge = grid.boundary_facets()
    rim = edge[
        (np.abs(np.hypot(*grid.p[:, grid.facets[:, edge]]) - before.reach) < 1e-6).all(axis=0)
    ]
    fixed = np.zeros(basis.N, bool)
    fixed[basis.get_dofs(facets=rim).all()] = True
    fixed |= (np.abs(where[1]) < 1e-9) & (component == 1) & (where[0] >= case.x - 1e-9)
    fixed |= (np.abs(where[0]) < 1e-9) & (component == 0) & (where[1] >= case.y - 1e-9)
    free = np.flatnonzero(~fixed)
    u = scale * np.where(component == 0, where[0], where[1])
    at = basis.global_coordinates().value
    for _ in range(40):
        field = basis.interpolate(u)
        by_gradient, by_place, energy = stresses(field.grad, field.value, at, before, after)
        stiff = tangent(field.grad.copy(), field.value.copy(), at, before, after)
        matrix = asm(_matrix, basis, K=DiscreteField(stiff)).tocsc()
        force = asm(_force, basis, G=DiscreteField(by_gradient), g=DiscreteField(by_place))
        step = np.zeros(basis.N)
        step[free] = -splu(matrix[free][:, free]).solve(force[free])
        share, whole = 1.0, float((energy * basis.dx).sum())
        while share > 1e-3:
            field = basis.interpolate(u + share * step)
            now = stresses(field.grad, field.value, at, before, after)[2]
            right = np.linalg.det(np.moveaxis(field.grad.reshape(2, 2, -1), -1, 0)).min() > 0
            if right and np.isfinite(now).all() and (now * basis.dx).sum() < whole * (1 + 1e-12):
                break
            share /= 2
        u += share * step
        if np.abs(step).max() < 1e-7:
            break
    middle = (np.abs(where[1]) < 1e-9) & (component == 1) & (where[0] < case.x)
    return (2 * float(u[middle].max()) if case.x else 0.0), whole


CASES = {
    "80": Case(40),
    "120": Case(60),
    "160": Case(80),
    "cross 150": Case(75, 75),
    "40": Case(20),
}


def main():
    """Make the table: width (mm) and share of the energy, by case."""
    dome = Dome(WIDTH / 2, HEIGHT)
    grown = [1 + LEFT * (SPRING**power - 1) for power in (0.25, 0.5)]
    after = Dome(WIDTH / 2 * grown[0], HEIGHT * grown[1])
    flat = Flat(dome.reach)
    surfaces = {"dome": (dome, after, after.reach / dome.reach)}
    surfaces |= {
        f"disc {strain:g}": (flat, flat, 1 + strain) for strain in (1e-4, 0.05, 0.1, 0.15, 0.2)
    }
    table = {}
    for name, surface in surfaces.items():
        whole = solve(Case(0), *surface, coarse=2.0)[1]
        table[name] = {}
        for case, slits in CASES.items():
            width, energy = solve(slits, *surface)
            table[name][case] = [
                round(width, 6 if "0001" in name else 3),
                round(1 - energy / whole, 4),
            ]
            print(name, case, table[name][case], flush=True)
    path = Path(__file__).with_name("slits.json")
    path.write_text(json.dumps(table, indent=1) + "\n")


if __name__ == "__main__":
    main()
