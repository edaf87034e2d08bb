// What a finger that is down does until it is lifted: drag what is picked, lay a figure, draw, look elsewhere.

import { words } from "../words.js";
import { minus, shift } from "./plane.js";

const told = words.hand;
const LONG_MS = 550;
const LIFT_PX = 56;

/** Drag the picked cut by what `workedOut` gives once it is known; a long press, or Alt, leaves snapping out. */
export class Drag {
  constructor(hand, workedOut, event) {
    Object.assign(this, { hand, workedOut, worked: null, result: null, free: false });
    this.from = hand.view.planAt(hand.view.here(event));
    this.touch = event.pointerType !== "mouse";
    this.timer = this.touch ? setTimeout(() => this.loosen(), LONG_MS) : 0;
  }

  loosen() {
    this.free = true;
    this.hand.say(told.free);
  }

  move(event) {
    clearTimeout(this.timer);
    if (!this.hand.picked) return; // what was touched is not known yet
    this.worked ||= this.workedOut();
    if (!this.worked) return;
    if (!this.result) this.hand.takeUp();
    const here = this.hand.view.here(event);
    this.result = this.worked(this.from, this.hand.view.planAt(here), this.free || event.altKey ? null : this.hand.snaps);
    this.hand.draw(this.result, this.touch);
  }

  end(event, moved) {
    clearTimeout(this.timer);
    this.hand.loupe.hide();
    if (!moved) return this.hand.tapped(event);
    this.hand.whenPicked(() => {
      this.move(event);
      if (this.result) this.hand.release(this.result);
    });
  }

  cancel() {
    clearTimeout(this.timer);
    this.hand.letGo();
  }
}

/** Carry a new figure to its place. */
export class Carry {
  constructor(hand, figure, event) {
    Object.assign(this, { hand, figure });
    const [x, y, wide, high] = figure.box;
    const middle = [x + wide / 2, y + high / 2]; // a new figure's middle comes to lie at its place
    this.lift = event.pointerType === "touch" ? LIFT_PX : 0; // the figure stands above the finger
    hand.ghost.take([{ copy: 0, own: true, lines: [{ d: figure.path, width: 1.2 }] }], minus(hand.view.crown, middle));
    hand.snaps.read(hand.stage.svg, new Set());
    this.move(event);
  }

  move(event) {
    const [x, y] = this.hand.view.here(event);
    const place = this.hand.view.planAt([x, y - this.lift]);
    const hit = event.altKey ? null : this.hand.snaps.near(place);
    this.at = hit ? hit.at : place;
    this.hand.ghost.move(() => shift(this.at));
    this.hand.showHit(hit && hit.at);
  }

  end() {
    this.hand.lay(this.figure, this.at);
  }

  cancel() {
    this.hand.letGo();
  }
}

/** Draw a free stroke. */
export class Draw {
  constructor(hand, event) {
    this.hand = hand;
    this.touch = event.pointerType === "touch";
    hand.stroke.begin(event, hand.repeat);
  }

  move(event) {
    this.hand.stroke.add(event);
    if (this.touch) this.hand.lookClosely(this.hand.view.here(event));
  }

  end() {
    this.hand.loupe.hide();
    const { drawn } = this.hand.stroke;
    if (!drawn) return this.cancel();
    this.hand.make({ kind: "stroke", repeat: this.hand.repeat > 1 ? this.hand.repeat : 0, ...drawn });
  }

  cancel() {
    this.hand.letGo();
  }
}

/** Look elsewhere; a tap picks what lies there, or nothing. */
export class Look {
  constructor(hand, event, tapped) {
    Object.assign(this, { hand, tapped });
    this.last = hand.view.here(event);
  }

  move(event) {
    const here = this.hand.view.here(event);
    this.hand.view.pan([here[0] - this.last[0], here[1] - this.last[1]]);
    this.last = here;
  }

  end(event, moved) {
    if (!moved) this.tapped();
  }
}

/** Let a figure be dragged out of its tile: sideways a finger moves the tray. */
export function draggable(tile, carried) {
  tile.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    const begun = event;
    let hold = null;
    tile.setPointerCapture(event.pointerId);
    const move = (next) => {
      if (hold) return hold.move(next);
      if (!leaves(begun, next) || !(hold = carried(next))) return;
      tile.dataset.dragged = "yes"; // the click that follows is none
    };
    const stop = (next) => {
      tile.removeEventListener("pointermove", move);
      for (const name of ["pointerup", "pointercancel"]) tile.removeEventListener(name, stop);
      setTimeout(() => delete tile.dataset.dragged);
      if (hold) next.type === "pointerup" && hold.hand.isOver(next) ? hold.end(next) : hold.cancel();
    };
    tile.addEventListener("pointermove", move);
    for (const name of ["pointerup", "pointercancel"]) tile.addEventListener(name, stop);
  });
}

function leaves(begun, next) {
  const [dx, dy] = [Math.abs(next.clientX - begun.clientX), begun.clientY - next.clientY];
  return begun.pointerType === "touch" ? dy > 8 && dy > dx : Math.hypot(dx, dy) > 6;
}
