// A plan of the bench as screens, where to go on in it, and how the table is turned between two.

import { tell } from "./messages.js";
import { words } from "./words.js";

const told = words.bench;

/** The screens of a plan: what comes before, every step with its number, and the end. */
export function screensOf(plan) {
  const still = { number: null, turn: 0, table: 0, pulls: [] };
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
