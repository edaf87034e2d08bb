// The free stroke: points of a finger or pen, and all its copies drawn while it moves.

import { part } from "../dom.js";
import { far, minus, on, turn } from "./plane.js";

const LEAST_PX = 2;
const MOST_POINTS = 400;
const LEAST_POINTS = 3;

export class Stroke {
  constructor(view) {
    this.view = view;
    this.element = part("g", { class: "strokes" });
    this.points = [];
  }

  begin(event, copies) {
    this.points = [];
    this.pressures = event.pointerType === "pen" ? [] : null;
    const turns = Array.from({ length: copies }, (_, k) => (360 / copies) * k);
    this.copies = turns.map((degrees) => ({ change: turn(degrees, [0, 0]), line: part("polyline", { fill: "none", stroke: degrees ? "#8a94c6" : "#34427a", "stroke-width": 3 }) }));
    this.element.replaceChildren(...this.copies.map(({ line }) => line));
    this.add(event);
  }

  /** Take the places a pointer has been at since the last event. */
  add(event) {
    const since = event.getCoalescedEvents ? event.getCoalescedEvents() : [];
    for (const each of since.length ? since : [event]) {
      const here = this.view.here(each);
      if (this.last && this.points.length && far(minus(here, this.last)) < LEAST_PX) continue;
      this.last = here;
      this.points.push(this.view.planAt(here));
      if (this.pressures) this.pressures.push(each.pressure);
    }
    for (const { change, line } of this.copies) {
      line.setAttribute("points", this.points.map((place) => this.view.hereOf(on(change, place)).map((each) => each.toFixed(1)).join(",")).join(" "));
    }
  }

  /** What was drawn: its points in the plan, thinned, and how hard a pen was pressed (0 to 1); null for a dot. */
  get drawn() {
    if (this.points.length < LEAST_POINTS) return null;
    const every = Math.ceil(this.points.length / MOST_POINTS);
    const kept = this.points.filter((_, at) => at % every === 0 || at === this.points.length - 1);
    const points = kept.map((place) => place.map((each) => Math.round(each * 100) / 100));
    return { points, pressure: this.pressures };
  }

  drop() {
    this.points = [];
    this.last = null;
    this.element.replaceChildren();
  }
}
