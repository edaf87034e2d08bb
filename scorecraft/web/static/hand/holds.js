// What a finger that is down does until it is lifted: drag what is picked, lay a figure, draw, look elsewhere.

import { words } from "../words.js";
import { minus, shift } from "./plane.js";

const told = words.hand;
const LONG_MS = 550;
const LIFT_PX = 56;

/** Drag the picked cut by what `workedOut` gives once it is known; a long press, or Alt, leaves snapping out. */
export class Drag {
  constructor(grasp, workedOut, event) {
    Object.assign(this, { grasp, workedOut, worked: null, result: null, free: false });
    this.from = grasp.view.planAt(grasp.view.here(event));
    this.touch = event.pointerType !== "mouse";
    this.timer = this.touch ? setTimeout(() => this.loosen(), LONG_MS) : 0;
  }

  loosen() {
    this.free = true;
    this.grasp.hand.say(told.free);
  }

  move(event) {
    clearTimeout(this.timer);
    if (!this.grasp.picked) return; // what was touched is not known yet
    this.worked ||= this.workedOut();
    if (!this.worked) return;
    if (!this.result) this.grasp.takeUp();
    const here = this.grasp.view.here(event);
    this.result = this.worked(this.from, this.grasp.view.planAt(here), this.free || event.altKey ? null : this.grasp.snaps);
    this.grasp.draw(this.result, this.touch);
  }

  end(event, moved) {
    clearTimeout(this.timer);
    this.grasp.loupe.hide();
    if (!moved) return this.grasp.tapped(event);
    this.grasp.hand.whenPicked(() => {
      this.move(event);
      if (this.result) this.grasp.release(this.result);
    });
  }

  cancel() {
    clearTimeout(this.timer);
    this.grasp.letGo();
  }
}

/** Carry a new figure to its place. */
export class Carry {
  constructor(grasp, figure, event) {
    Object.assign(this, { grasp, figure });
    const [x, y, wide, high] = figure.box;
    const middle = [x + wide / 2, y + high / 2]; // a new figure's middle comes to lie at its place
    this.lift = event.pointerType === "touch" ? LIFT_PX : 0; // the figure stands above the finger
    grasp.ghost.take([{ copy: 0, own: true, lines: [{ d: figure.path, width: 1.2 }] }], minus(grasp.view.crown, middle));
    grasp.snaps.read(grasp.stage.svg, new Set());
    this.move(event);
  }

  move(event) {
    const [x, y] = this.grasp.view.here(event);
    const place = this.grasp.view.planAt([x, y - this.lift]);
    const hit = event.altKey ? null : this.grasp.snaps.near(place);
    this.at = hit ? hit.at : place;
    this.grasp.ghost.move(() => shift(this.at));
    this.grasp.showHit(hit && hit.at);
  }

  end() {
    this.grasp.hand.lay(this.figure, this.at);
  }

  cancel() {
    this.grasp.letGo();
  }
}

/** Draw a free stroke. */
export class Draw {
  constructor(grasp, event) {
    this.grasp = grasp;
    this.touch = event.pointerType === "touch";
    grasp.stroke.begin(event, grasp.hand.repeat);
  }

  move(event) {
    this.grasp.stroke.add(event);
    if (this.touch) this.grasp.lookClosely(this.grasp.view.here(event));
  }

  end() {
    this.grasp.loupe.hide();
    const { drawn } = this.grasp.stroke;
    if (!drawn) return this.cancel();
    this.grasp.hand.make({ kind: "stroke", repeat: this.grasp.hand.repeat > 1 ? this.grasp.hand.repeat : 0, ...drawn });
  }

  cancel() {
    this.grasp.letGo();
  }
}

/** Look elsewhere; a tap picks what lies there, or nothing. */
export class Look {
  constructor(grasp, event, tapped) {
    Object.assign(this, { grasp, tapped });
    this.last = grasp.view.here(event);
  }

  move(event) {
    const here = this.grasp.view.here(event);
    this.grasp.view.pan([here[0] - this.last[0], here[1] - this.last[1]]);
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
      if (hold) next.type === "pointerup" && hold.grasp.isOver(next) ? hold.end(next) : hold.cancel();
    };
    tile.addEventListener("pointermove", move);
    for (const name of ["pointerup", "pointercancel"]) tile.addEventListener(name, stop);
  });
}

function leaves(begun, next) {
  const [dx, dy] = [Math.abs(next.clientX - begun.clientX), begun.clientY - next.clientY];
  return begun.pointerType === "touch" ? dy > 8 && dy > dx : Math.hypot(dx, dy) > 6;
}
