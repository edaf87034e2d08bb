// The handles of what is picked: each stands beyond the place it moves, so that a finger hides nothing.

import { h, part } from "../dom.js";
import { far, minus, on, plus, times, unit } from "./plane.js";

const SIZE_PX = 44;
const AWAY_PX = 34;
const APART_PX = 46;
const INSIDE_PX = 24;

export class Handles {
  /** `held` hears of a handle and the pointer that takes it. */
  constructor(view, held) {
    Object.assign(this, { view, held });
    this.element = h("div", { class: "handles" });
    this.leaders = part("g", { class: "leaders" });
    this.list = [];
    this.change = null;
    view.addEventListener("change", () => this.place());
  }

  show(handles) {
    this.change = null;
    this.list = handles.map((handle) => this.one(handle));
    this.element.replaceChildren(...this.list.map(({ grip }) => grip));
    this.leaders.replaceChildren(...this.list.flatMap(({ leader, dot }) => [leader, dot]));
    this.place();
  }

  /** Draw the handles where a transform of the plan takes their places; null draws them at rest. */
  follow(change) {
    this.change = change;
    this.place();
  }

  one(handle) {
    const reason = handle.locked || "";
    const label = [handle.said, reason || handle.also].filter(Boolean).join(". ");
    // a handle is for a pointer; the keyboard has the list and the form
    const grip = h("div", {
      class: `grip grip-${handle.name}${reason ? " locked" : ""}`,
      title: label,
      "aria-hidden": "true",
      onpointerdown: (event) => this.held(handle, event),
    });
    grip.append(h("i", {}));
    return { handle, grip, leader: part("line", {}), dot: part("circle", { r: 3.5 }) };
  }

  place() {
    const taken = [];
    const last = [this.view.element.clientWidth, this.view.element.clientHeight].map((each) => each - INSIDE_PX);
    for (const { handle, grip, leader, dot } of this.list) {
      const at = this.view.hereOf(this.moved([handle.x, handle.y]));
      const stand = this.stand(handle, at, taken, last);
      taken.push(stand);
      grip.style.transform = `translate(${stand[0] - SIZE_PX / 2}px, ${stand[1] - SIZE_PX / 2}px)`;
      set(leader, { x1: at[0], y1: at[1], x2: stand[0], y2: stand[1] });
      set(dot, { cx: at[0], cy: at[1] });
    }
  }

  moved(place) {
    return this.change ? on(this.change, place) : place;
  }

  /** Find a stand for a handle: outward from its place, free of the others and within the stage. */
  stand(handle, at, taken, last) {
    const [x, y] = this.outward(handle);
    const ways = [0, 45, -45, 90, -90, 135, -135, 180].map((degrees) => {
      const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      return [c * x - s * y, s * x + c * y];
    });
    const tries = [AWAY_PX, AWAY_PX + APART_PX].flatMap((away) => ways.map((way) => plus(at, times(way, away))));
    const free = (place) => taken.every((other) => far(minus(place, other)) >= APART_PX);
    const within = (place) => place.every((each, axis) => each >= INSIDE_PX && each <= last[axis]);
    return tries.find((place) => free(place) && within(place)) || tries.find(free) || tries[0];
  }

  /** The way a handle stands out, on the screen. */
  outward(handle) {
    const from = handle.along || (handle.about ? minus([handle.x, handle.y], handle.about) : [1, 0.4]);
    const origin = this.view.hereOf(this.moved([handle.x, handle.y]));
    const ahead = this.view.hereOf(this.moved(plus([handle.x, handle.y], unit(from))));
    return unit(minus(ahead, origin));
  }
}

function set(element, attributes) {
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value.toFixed(1));
}
