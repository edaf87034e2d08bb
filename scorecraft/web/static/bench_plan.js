// A plan of the bench as screens, where to go on in it, and how the table is turned between two.

import { h } from "./dom.js";
import { tell } from "./messages.js";
import { words } from "./words.js";

const told = words.bench;
const MOST_NAMES = 3;

/** Strokes of one depth and blade are told in one line. */
export function together(strokes) {
  const lines = [];
  for (const stroke of strokes) {
    const name = stroke.count > 1 ? `${stroke.count} × ${stroke.name}` : stroke.name;
    const last = lines.at(-1);
    const same = last && ["depth_mm", "blade_deg", "lean"].every((key) => last[key] === stroke[key]);
    if (same && last.names.length < MOST_NAMES) last.names.push(name);
    else lines.push({ ...stroke, names: [name] });
  }
  return lines;
}

/** The screens of a plan: what comes before, every step with its number, and the end. */
export function screensOf(plan) {
  const still = { number: null, turn: 0, table: 0, pulls: [], strokes: [] };
  const steps = plan.steps.map((step) => ({ ...step, kind: "cut", turn: step.turn_deg, table: step.table_deg }));
  const end = { ...still, kind: "end", table: steps.length ? steps.at(-1).table : 0 };
  return [{ ...still, kind: "start" }, ...(plan.marks ? [{ ...still, kind: "marks" }] : []), ...steps, end];
}

/**
 * Where to go on in a plan: where it was left. A guest stays with the cuts when the plan of the same
 * loaf was changed meanwhile: at the same step, or at the same number where it is there no more.
 */
export function placeIn(plan, before, guest) {
  const beginning = { at: 0 };
  if (!before || !before.plan) return beginning;
  const read = (each) => JSON.stringify([each.title, each.steps]);
  if (read(before.plan) === read(plan)) return before;
  if (!guest || !before.at || before.plan.title !== plan.title) return beginning;
  const shown = (screen) => JSON.stringify({ ...screen, number: 0 });
  const here = shown(screensOf(before.plan)[before.at]);
  const found = screensOf(plan).findIndex((screen) => shown(screen) === here);
  tell(told.changed, { lasting: true });
  return { ...before, at: found < 0 ? before.at : found, ended: null };
}

/** Turn by the way that is told; a step back turns the shortest way. */
export function shortest(by, turn) {
  const turned = ((by % 360) + 540) % 360 - 180;
  const same = Math.abs(((turned - turn) % 360 + 540) % 360 - 180) < 1;
  return same ? turn : turned;
}

/** How the table is turned: by an exact turn, or to the mark, since rounded turns would add up. */
export function turnWords(screen) {
  if (screen.kind !== "cut") return [];
  const parts = [];
  if (screen.turn_words === "0°") parts.push(told.stay);
  else if (screen.exact) parts.push(told.turn, h("b", {}, screen.turn_words), screen.turn > 0 ? told.clockwise : told.counter, h("span", { class: "times" }, told.mark(screen.mark_words)));
  else parts.push(told.turnMark, h("b", {}, screen.mark_words), screen.turn > 0 ? told.clockwise : told.counter);
  if (screen.spin_deg) parts.push(` · ${told.spin(Math.round(screen.spin_deg))}`);
  if (screen.times > 1) parts.push(h("span", { class: "times" }, told.times(screen.time, screen.times)));
  return parts;
}
