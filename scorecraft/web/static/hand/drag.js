// What a drag does before the server has written it: a transform of the plan, and the value it gives.

import { length, valued } from "../units.js";
import { words } from "../words.js";
import { bearing, dot, far, minus, plus, shift, still, stretch, then, times, turn, unit } from "./plane.js";
import { stepped, turned } from "./snap.js";

const told = words.hand;
const EVERY_WAY = new Set(["radius", "scale"]);
const LEAST = 0.05;

/**
 * Each gives what a drag from one place of the plan to another does: `change`, the transform of the
 * copy in hand; `gesture`, what the server is asked for; `said`, the value; `at`, the place to look at closely; `hit`,
 * where it clicked in.
 */
export function moving(picked, places) {
  const round = picked.move.turns && picked.move.turns.about;
  return (from, to, snaps) => {
    const { by, hit } = snaps ? snaps.move(minus(to, from), [from, ...places]) : { by: minus(to, from), hit: null };
    const end = plus(from, by);
    return { change: round ? aboutMiddle(round, from, end) : shift(by), gesture: { kind: "move", from: rounded(from), to: rounded(end) }, said: told.moved(length(far(by), 0)), at: end, hit: hit && hit.at };
  };
}

/** Outward from a middle, and round it. */
function aboutMiddle(middle, from, to) {
  const [one, other] = [minus(from, middle), minus(to, middle)];
  if (far(one) < 1) return shift(minus(to, from));
  const out = times(unit(one), far(other) - far(one));
  return then(shift(out), turn(bearing(other) - bearing(one), middle));
}

/** The knob that turns: angles click in by 15°. */
export function turning(handle, picked) {
  const around = handle.about || origin(picked);
  const begun = numbered(handle.value).number || 0;
  return (from, to, snaps) => {
    const free = begun + turned(from, to, around);
    const by = Math.round(snaps ? stepped(free) : free) - begun;
    return { change: turn(by, around), gesture: { kind: "turn", by }, said: told.turned((((begun + by) % 360) + 360) % 360), at: to, hit: null };
  };
}

/** A tip or a side that sets a size. */
export function sizing(handle, picked) {
  const base = handle.about || origin(picked);
  const place = [handle.x, handle.y];
  const along = unit(handle.along || minus(place, base));
  const reach = dot(minus(place, base), along);
  const { number, unit: own } = numbered(handle.value);
  return (from, to, snaps) => {
    const { end, hit } = ended(place, from, to, snaps);
    const free = Math.abs(reach) < 1 ? 1 : Math.max(LEAST, 1 + dot(minus(end, place), along) / reach);
    const value = number && Math.max(1, Math.round(number * free)); // as the server rounds it
    const factor = number ? value / number : free;
    const change = factor === 1 ? still : stretch(factor, base, EVERY_WAY.has(handle.name) ? null : along);
    const shown = number ? valued(value, own) : `${Math.round(100 * factor)}%`;
    return { change, gesture: held(handle, place, end), said: `${handle.title} ${shown}`, at: end, hit };
  };
}

/** What is no size of the whole figure: the handle alone follows the finger. */
export function pointing(handle) {
  const place = [handle.x, handle.y];
  return (from, to, snaps) => {
    const { end, hit } = ended(place, from, to, snaps);
    return { change: still, tip: minus(end, place), gesture: held(handle, place, end), said: handle.title, at: end, hit };
  };
}

function ended(place, from, to, snaps) {
  const end = plus(place, minus(to, from));
  const found = snaps && snaps.near(end);
  return { end: found ? found.at : end, hit: found && found.at };
}

function held({ name }, from, to) {
  return { kind: "handle", name, from: rounded(from), to: rounded(to) };
}

/** Where the picked copy stands in the plan. */
export function origin(picked) {
  return frameOf(picked, picked.copy).slice(4);
}

/** The frame of a copy in the plan, as a transform. */
export function frameOf({ frames }, copy) {
  const { at, axes } = frames.find((each) => each.copy === copy) || frames[0];
  return [...axes, ...at];
}

/** A plain number with its unit; of what is worked out, neither. */
function numbered(value) {
  const [, number, own] = /^(-?[\d.]+)\s*([a-z%]*)$/.exec(value) || [null, NaN, ""];
  return { number: Number(number), unit: own };
}

const rounded = (way) => way.map((each) => Math.round(each * 100) / 100);
