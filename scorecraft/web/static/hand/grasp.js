// What fingers take on the loaf, and what is drawn over it meanwhile: handles, lines in hand, loupe.

import { h, part } from "../dom.js";
import { frameOf, moving, origin, pointing, sizing, turning } from "./drag.js";
import { Fingers } from "./fingers.js";
import { Ghost } from "./ghost.js";
import { Handles } from "./handles.js";
import { isKnown } from "./known.js";
import { Carry, Drag, Draw, Look } from "./holds.js";
import { Loupe } from "./loupe.js";
import { alike, shift } from "./plane.js";
import { linesOf, Snaps } from "./snap.js";
import { Stroke } from "./stroke.js";

export class Grasp {
  constructor(hand) {
    Object.assign(this, { hand, view: hand.view, stage: hand.stage, touched: null, grabbed: null, hovered: null });
    this.ghost = new Ghost(this.view);
    this.stroke = new Stroke(this.view);
    this.snaps = new Snaps(this.view);
    this.loupe = new Loupe(this.view);
    this.handles = new Handles(this.view, (handle) => (this.grabbed = handle));
    this.hitMark = part("circle", { class: "hit", r: 9 });
    const inHand = part("g", { id: "in-hand" }, this.ghost.element, this.stroke.element);
    const layer = part("svg", { class: "hand-layer", "aria-hidden": "true" }, this.handles.leaders, inHand, this.hitMark);
    this.element = h("div", { class: "hand" }, hand.stage.element, layer, this.handles.element, this.loupe.element);
    new Fingers(this.element, this.view, { begin: (event) => this.begin(event), pinch: (factor, middle, way) => (this.view.by(factor, middle), this.view.pan(way)) });
    this.element.addEventListener("pointermove", (event) => this.hover(event));
  }

  get picked() {
    return this.hand.picked;
  }

  /** What was in the hand lies on the loaf now. */
  lay() {
    this.ghost.drop();
    this.stroke.drop();
    this.element.classList.remove("holding");
  }

  begin(event) {
    const handle = this.grabbed;
    this.grabbed = null;
    if (!this.hand.usable || !this.hand.top) return null;
    if (handle) return this.holdHandle(handle, event);
    if (this.hand.tool === "stroke") return new Draw(this, event);
    if (this.hand.tool) return new Carry(this, this.hand.figure, event);
    const cut = this.stage.cutAt(event.target);
    return cut === null ? new Look(this, event, () => this.hand.pick(null)) : this.holdCut(cut, event);
  }

  holdHandle(handle, event) {
    if (handle.locked && !handle.ways.length) {
      this.hand.say(handle.locked);
      return null;
    }
    this.hand.say([handle.said, handle.also].filter(Boolean).join(". "));
    const works = handle.name === "turn" ? turning : handle.kind === "size" ? sizing : pointing;
    return new Drag(this, () => works(handle, this.picked), event);
  }

  /** A cut that is touched is picked; one that is picked, or that a mouse takes, moves along. */
  holdCut(cut, event) {
    if (!isKnown(this.hand.seen)) {
      this.touched = cut; // picked once it is known
      this.hand.ask();
      return null;
    }
    const mine = this.picked && this.picked.own.includes(cut);
    const whose = this.hand.seen.cuts[cut];
    if (!mine && event.pointerType !== "mouse") return new Look(this, event, () => this.hand.pick(whose));
    if (!mine) this.hand.pick(whose);
    return new Drag(this, () => this.movable(), event);
  }

  /** A handle was tapped, not dragged: what lies under it is meant. */
  tapped({ clientX, clientY }) {
    const under = document.elementsFromPoint(clientX, clientY).map((each) => this.stage.cutAt(each));
    const cut = under.find((each) => each !== null);
    if (cut !== undefined && isKnown(this.hand.seen) && !this.picked?.own.includes(cut)) this.hand.pick(this.hand.seen.cuts[cut]);
  }

  movable() {
    const { locked, ways = [] } = this.picked.move;
    if (!locked || ways.length) return moving(this.picked, this.tips());
    this.hand.say(locked);
    return null;
  }

  /** The places of the picked copy that click in: where it stands, and the ends of its cuts. */
  tips() {
    const { crown } = this.view;
    const ends = this.picked.own.flatMap((cut) => linesOf(this.stage.paths.get(cut)).flatMap((line) => [line[0], line.at(-1)]));
    return [origin(this.picked), ...ends.map(([x, y]) => [x - crown[0], crown[1] - y])];
  }

  /** Take the picked copies up: they follow the finger on the overlay. */
  takeUp() {
    const { own, siblings, frames, copy } = this.picked;
    this.snaps.read(this.stage.svg, new Set([...own, ...siblings]));
    const line = (path) => ({ d: path.getAttribute("d"), width: path.getAttribute("stroke-width") });
    const linesOf = (cuts) => cuts.map((cut) => this.stage.paths.get(cut)).filter(Boolean).map(line);
    this.ghost.take(frames.map((each) => ({ copy: each.copy, own: each.copy === copy, lines: linesOf(each.cuts) })));
    this.element.classList.add("holding");
  }

  draw({ change, tip, gesture, said: value, at, hit }, touch) {
    if (tip) this.hand.talk.preview({ ...gesture, ...this.hand.selection }, (lines) => this.ghost.isEmpty || this.ghost.become(lines));
    const frame = frameOf(this.picked, this.picked.copy);
    this.ghost.move((copy) => alike(change, frame, frameOf(this.picked, copy)));
    this.handles.follow(tip ? shift(tip) : change);
    this.showHit(hit);
    this.hand.say(value);
    if (touch) this.lookClosely(this.view.hereOf(at));
  }

  showHit(place) {
    this.hitMark.classList.toggle("shown", Boolean(place));
    const [x, y] = this.view.hereOf(place || [0, 0]);
    this.hitMark.setAttribute("cx", x);
    this.hitMark.setAttribute("cy", y);
  }

  lookClosely(here) {
    this.stage.svg.querySelector(".growing").id = "loaf-looked-at";
    this.loupe.show(here, { picture: "loaf-looked-at", inHand: "in-hand" });
  }

  release({ gesture }) {
    this.showHit(null);
    this.hand.make(gesture);
  }

  /** Nothing is in the hand any more. */
  letGo() {
    this.hovered = null;
    this.loupe.hide();
    this.lay();
    this.showHit(null);
    this.handles.follow(null);
  }

  isOver({ clientX, clientY }) {
    const { left, right, top, bottom } = this.element.getBoundingClientRect();
    return clientX > left && clientX < right && clientY > top && clientY < bottom;
  }

  hover(event) {
    if (!this.hand.figure || this.hand.tool !== this.hand.figure.word || event.pointerType !== "mouse" || event.buttons) return;
    if (this.hovered) this.hovered.move(event);
    else this.hovered = new Carry(this, this.hand.figure, event);
  }
}
