// Pointers on the stage: one that takes, moves and lets go, or two that pinch.

import { far, minus } from "./plane.js";

const MOVED_PX = { mouse: 3, pen: 4, touch: 8 };

export class Fingers {
  /** `begin` gives a hold (`move`, `end`, `cancel`) or null; `pinch` hears of a factor, a middle and a way. */
  constructor(element, view, { begin, pinch }) {
    Object.assign(this, { element, view, begin, pinch });
    this.down = new Map();
    this.hold = null;
    element.addEventListener("pointerdown", (event) => this.press(event));
    element.addEventListener("pointermove", (event) => this.move(event));
    element.addEventListener("pointerup", (event) => this.lift(event));
    element.addEventListener("pointercancel", (event) => this.lose(event));
  }

  press(event) {
    if (event.button !== 0 || event.target.closest("button, a, input")) return;
    this.down.set(event.pointerId, this.view.here(event));
    if (this.down.size === 2) return this.drop();
    if (this.down.size > 2) return;
    this.start = { here: this.view.here(event), slack: MOVED_PX[event.pointerType] ?? MOVED_PX.mouse };
    this.moved = false;
    this.hold = this.begin(event);
    if (this.hold) this.element.setPointerCapture(event.pointerId);
  }

  move(event) {
    if (!this.down.has(event.pointerId)) return;
    const before = this.down.get(event.pointerId);
    const here = this.view.here(event);
    if (this.down.size === 2) return this.pinched(event.pointerId, before, here);
    this.down.set(event.pointerId, here);
    if (!this.hold) return;
    this.moved ||= far(minus(here, this.start.here)) > this.start.slack;
    if (this.moved) this.hold.move(event);
  }

  pinched(id, before, here) {
    const other = [...this.down].find(([each]) => each !== id)[1];
    const [was, is] = [far(minus(before, other)), far(minus(here, other))];
    this.down.set(id, here);
    const middle = [0, 1].map((axis) => (here[axis] + other[axis]) / 2);
    this.pinch(was > 1 ? is / was : 1, middle, minus(here, before).map((each) => each / 2));
  }

  lift(event) {
    if (!this.down.delete(event.pointerId) || !this.hold) return;
    const { hold } = this;
    this.hold = null;
    hold.end(event, this.moved);
  }

  lose(event) {
    this.down.delete(event.pointerId);
    this.drop();
  }

  drop() {
    if (this.hold && this.hold.cancel) this.hold.cancel();
    this.hold = null;
  }
}
