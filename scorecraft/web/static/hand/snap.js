// Where a moved place clicks in: the crown, string lines, tips of other cuts; and angles by 15°.

import { bearing, dot, far, minus, plus, times } from "./plane.js";

const NEAR_PX = 9;
const STEP_DEG = 15;
const NEAR_DEG = 3;

export class Snaps {
  constructor(view) {
    this.view = view;
    this.points = [];
    this.lines = [];
  }

  /** Read the crown, the string lines and the tips of all cuts but those in hand from a picture. */
  read(svg, inHand) {
    const { crown } = this.view;
    const plan = ([x, y]) => [x - crown[0], crown[1] - y];
    this.points = [{ at: [0, 0] }];
    this.lines = [];
    for (const path of svg.querySelectorAll("[data-layer=cuts] [data-cut]")) {
      if (inHand.has(Number(path.dataset.cut))) continue;
      for (const line of linesOf(path)) for (const end of [line[0], line.at(-1)]) this.points.push({ at: plan(end) });
    }
    for (const path of svg.querySelectorAll("[data-layer=marks] path")) {
      for (const line of linesOf(path)) {
        const ends = line.map(plan);
        for (let at = 1; at < ends.length; at++) this.lines.push([ends[at - 1], ends[at]]);
      }
    }
  }

  /** The nearest of what a place of the plan may click into, or null. */
  near(place) {
    const reach = NEAR_PX / this.view.scale;
    const found = this.points.map(({ at }) => ({ at, away: far(minus(at, place)) })).filter(({ away }) => away <= reach);
    if (found.length) return found.reduce((one, other) => (other.away < one.away ? other : one));
    const feet = this.lines.map((line) => foot(place, line)).map((at) => ({ at, away: far(minus(at, place)) }));
    const nearest = feet.filter(({ away }) => away <= reach).sort((one, other) => one.away - other.away);
    return nearest[0] || null;
  }

  /** Correct a move so that one of the places that move clicks in. */
  move(by, places) {
    const hits = places.map((place) => ({ place, hit: this.near(plus(place, by)) })).filter(({ hit }) => hit);
    if (!hits.length) return { by, hit: null };
    const { place, hit } = hits.reduce((one, other) => (other.hit.away < one.hit.away ? other : one));
    return { by: minus(hit.at, place), hit };
  }
}

/** An angle that clicks into steps of 15°. */
export function stepped(degrees) {
  const step = Math.round(degrees / STEP_DEG) * STEP_DEG;
  return Math.abs(degrees - step) <= NEAR_DEG ? step : degrees;
}

/** How far a place has been turned about another, in degrees clockwise. */
export function turned(from, to, around) {
  const by = bearing(minus(to, around)) - bearing(minus(from, around));
  return ((by + 540) % 360) - 180;
}

function foot(place, [from, to]) {
  const way = minus(to, from);
  const part = dot(minus(place, from), way) / (dot(way, way) || 1);
  return plus(from, times(way, Math.min(1, Math.max(0, part))));
}

/** The lines of a path as the server writes them: M and pairs of numbers. */
export function linesOf(path) {
  return path
    .getAttribute("d")
    .split("M")
    .filter((each) => each.trim())
    .map((each) => each.replace(/[A-Za-z]/g, " ").trim().split(/\s+/).map((pair) => pair.split(",").map(Number)));
}
