// The hand: what is picked on the loaf, and what a finger or the keyboard does to it.

import { fetched, tellWhy } from "../api.js";
import { h, iconButton, part } from "../dom.js";
import { store } from "../store.js";
import { said } from "../units.js";
import { words } from "../words.js";
import { Bar } from "./bar.js";
import { frameOf, moving, origin, pointing, sizing, turning } from "./drag.js";
import { exactForm } from "./exact.js";
import { Fingers } from "./fingers.js";
import { Ghost } from "./ghost.js";
import { Handles } from "./handles.js";
import { Carry, Drag, Draw, Look } from "./holds.js";
import { Loupe } from "./loupe.js";
import { alike, plus, shift } from "./plane.js";
import { linesOf, Snaps } from "./snap.js";
import { Statements } from "./statements.js";
import { Stroke } from "./stroke.js";
import { Talk } from "./talk.js";
import { View } from "./view.js";

const told = words.hand;
const MOST_COPIES = 24;
let steps = 0;

export class Hand extends EventTarget {
  /** `say` shows a word in passing, `showText` goes to a line of the text, `onTop` shows the loaf as it is scored. */
  constructor({ stage, say, showText, onTop }) {
    super();
    Object.assign(this, { stage, say, showText, onTop, tool: null, figure: null, repeat: 1, top: true, usable: false });
    Object.assign(this, { seen: null, selection: null, picked: null, waiting: [], nudged: null });
    this.view = new View(stage.element);
    this.ghost = new Ghost(this.view);
    this.stroke = new Stroke(this.view);
    this.snaps = new Snaps(this.view);
    this.loupe = new Loupe(this.view);
    this.handles = new Handles(this.view, (handle) => (this.grabbed = handle));
    this.talk = new Talk({ looked: (answer) => this.looked(answer), picked: (answer) => this.known(answer), made: (answer, about) => this.made(answer, about), failed: () => (this.letGo(), this.busy(false)) });
    this.bar = new Bar(this);
    this.list = new Statements(this);
    this.element = this.layout();
    new Fingers(this.element, this.view, { begin: (event) => this.begin(event), pinch: (factor, middle, way) => (this.view.by(factor, middle), this.view.pan(way)) });
    this.view.addEventListener("change", () => this.viewed());
    store.on("text", ({ kind }) => this.textChanged(kind));
    store.on("sight", ({ frame }) => this.landed(frame));
    store.on("design", () => this.designed());
    store.on("problems", () => this.broken());
    this.fillTray();
  }

  layout() {
    this.hitMark = part("circle", { class: "hit", r: 9 });
    const inHand = part("g", { id: "in-hand" }, this.ghost.element, this.stroke.element);
    const layer = part("svg", { class: "hand-layer", "aria-hidden": "true" }, this.handles.leaders, inHand, this.hitMark);
    this.hint = h("p", { class: "hand-hint", hidden: true });
    this.live = h("p", { class: "hidden", role: "status" });
    this.whole = iconButton("whole", told.whole, () => this.view.whole());
    const zoom = h("div", { class: "zoom", role: "group", "aria-label": told.zoom }, iconButton("plus", told.closer, () => this.view.by(1.5)), iconButton("minus", told.farther, () => this.view.by(1 / 1.5)), this.whole);
    const element = h("div", { class: "hand" }, this.stage.element, layer, this.handles.element, this.loupe.element, zoom, this.hint, this.live);
    element.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
    element.addEventListener("pointermove", (event) => this.hover(event));
    return element;
  }

  async fillTray() {
    try {
      this.bar.fill((await fetched("/api/tray")).figures);
      this.bar.able(this.usable);
      this.showBar();
    } catch (error) {
      tellWhy(error, "tray");
    }
  }

  // what the server says

  textChanged(kind) {
    if (kind === "open") {
      Object.assign(this, { selection: null, picked: null, seen: null, tool: null });
      this.view.whole();
      this.list.show([]);
      this.showPicked();
    }
  }

  /** The picture is of the text as it is: what was in the hand lies there now. */
  landed(frame) {
    this.view.take(frame);
    this.ghost.drop();
    this.stroke.drop();
    this.element.classList.remove("holding");
  }

  designed() {
    this.able(true);
    if (!store.current) return;
    this.landed(store.design.frame);
    if (isKnown(this.seen)) this.settle();
    else this.ask();
  }

  broken() {
    this.letGo();
    this.able(false);
  }

  /** With a text that cannot be read the hand rests, and says why. */
  able(yes) {
    this.usable = yes;
    this.element.classList.toggle("off", !yes);
    this.bar.able(yes);
    this.showHint();
  }

  ask() {
    this.talk.look();
    if (this.selection) this.talk.pick(this.selection);
  }

  looked(answer) {
    const wordOf = (seen) => seen?.statements.find(({ id }) => id === this.selection?.statement)?.word;
    const [was, is] = [wordOf(this.seen), wordOf(answer)];
    const strange = !is || (was && was !== is && !this.expected); // another statement stands there now
    Object.assign(this, { seen: answer, expected: false });
    if (this.selection && strange) this.pick(null);
    if (answer.cuts[this.touched]) this.pick(answer.cuts[this.touched]);
    this.touched = null;
    this.settle();
  }

  known(answer) {
    if (answer.statement !== this.selection?.statement) return;
    this.picked = answer;
    this.selection.copy = answer.copy;
    this.settle();
    for (const act of this.waiting.splice(0)) act();
  }

  /** A gesture was written; what it was about, and what is picked now, may stand in another line. */
  made({ selected, said: word, text }, about) {
    if (about && about !== this.selection) this.shift(about.statement, lines(text) - lines(store.text));
    if (about && selected) Object.assign(about, selected);
    if (!about || about === this.selection) this.selection = about && selected ? about : selected;
    this.expected = true;
    if (!this.selection) this.picked = null;
    this.live.textContent = said(word);
    this.say(said(word));
    this.dispatchEvent(new CustomEvent("made", { detail: this.asked }));
  }

  shift(line, by) {
    if (this.selection && this.selection.statement > line) this.selection.statement += by;
  }

  /** Show what is known once the picture is of the same text. */
  settle() {
    if (!store.current || !isKnown(this.seen)) return;
    this.list.show(this.seen.statements.filter(({ draws }) => draws));
    if (this.selection && !isKnown(this.picked)) return;
    this.letGo();
    this.showPicked();
    if (!this.talk.queue.length) this.busy(false);
  }

  /** Whether something is on its way that the hand has asked for. */
  busy(yes) {
    this.element.setAttribute("aria-busy", yes);
  }

  // what is picked

  /** Pick a statement by one of its copies, or nothing. */
  pick(selection) {
    Object.assign(this, { selection: selection && { ...selection }, picked: null, nudged: null });
    if (!selection) return this.busy(this.talk.queue.length > 0), this.showPicked();
    this.tool = null;
    this.busy(true);
    this.onTop();
    this.dispatchEvent(new Event("taken"));
    this.talk.pick(selection);
    this.handles.show([]); // they come with the answer; the marks are known
    this.markCuts(selection);
  }

  markCuts({ statement, copy }) {
    this.list.mark(statement);
    if (!isKnown(this.seen)) return;
    const cuts = [...this.seen.cuts.keys()].filter((cut) => this.seen.cuts[cut].statement === statement);
    const own = cuts.filter((cut) => this.seen.cuts[cut].copy === copy);
    this.stage.pick(own, cuts.filter((cut) => !own.includes(cut)));
  }

  whenPicked(act) {
    if (isKnown(this.picked)) act();
    else this.waiting.push(act);
  }

  showPicked() {
    const { own = [], siblings = [], handles = [], statement = null } = this.picked || {};
    this.stage.pick(own, siblings);
    this.handles.show(handles);
    this.list.mark(statement);
    this.showBar();
    this.showHint();
    this.dispatchEvent(new Event("picked"));
  }

  /** What is picked, in words, or "". */
  get about() {
    return this.picked ? [this.picked.said, this.picked.rule?.said].filter(Boolean).map(said).join(". ") : "";
  }

  showBar() {
    this.bar.show(this);
    this.element.classList.toggle("with-tool", this.tool !== null);
  }

  showHint() {
    const [problem] = store.problems;
    let text = "";
    if (!this.usable) text = problem ? told.broken(problem.line) : "";
    else if (this.tool) text = this.tool === "stroke" ? "" : told.tapPlace;
    else if (store.design && !store.design.cuts.length) text = told.empty;
    this.hint.textContent = text;
    this.hint.hidden = !text;
  }

  // what the bar and the list do

  choose(tool, figure = null) {
    this.letGo();
    Object.assign(this, { tool: tool === this.tool ? null : tool, figure });
    if (this.tool) this.onTop();
    if (this.tool && this.selection) this.pick(null);
    this.showBar();
    this.showHint();
  }

  repeated(by) {
    this.repeat = Math.min(MOST_COPIES, Math.max(1, this.repeat + by));
    this.showBar();
  }

  carry(figure, event) {
    if (!this.usable) return null;
    this.onTop();
    return new Carry(this, figure, event);
  }

  lay({ word }, at) {
    this.tool = null;
    this.showBar();
    this.showHint();
    this.make({ kind: "new", word, at: at.map((each) => Math.round(each * 100) / 100), inside: null });
  }

  /** Make a gesture; one about what is picked is about it as it is at its turn. */
  make(gesture, step = (steps += 1)) {
    if (!this.usable) return this.say(told.broken(store.problems[0]?.line));
    this.busy(true);
    const about = ["new", "stroke", "cure"].includes(gesture.kind) ? null : this.selection;
    this.talk.make(() => ({ ...(this.asked = gesture), ...about }), step, about);
  }

  /** Keys that are held make one step of undo, and wait for each other. */
  nudge(kind, by, hold) {
    if (!this.selection) return;
    const waits = this.nudged?.kind === kind && this.nudged !== this.asked && this.talk.queue.length > 0;
    if (waits) this.nudged.by = kind === "move" ? plus(this.nudged.by, by) : this.nudged.by + by;
    else this.make((this.nudged = { kind, by }), `key ${kind} ${hold}`);
  }

  /** Do what the checks advise: the changes of one of a finding's fixes. */
  fix(changes) {
    this.make({ kind: "cure", changes });
  }

  remove() {
    if (this.selection) this.make({ kind: "delete" });
  }

  form() {
    if (!this.selection) return;
    this.whenPicked(() =>
      exactForm(this.picked.name, this.picked.form, (changes) => {
        const step = (steps += 1); // all of them are one step of undo
        for (const change of changes) this.make({ kind: "set", ...change }, step);
      }),
    );
  }

  // fingers

  begin(event) {
    const handle = this.grabbed;
    this.grabbed = null;
    if (!this.usable || !this.top) return null;
    if (handle) return this.holdHandle(handle, event);
    if (this.tool === "stroke") return new Draw(this, event);
    if (this.tool) return new Carry(this, this.figure, event);
    const cut = this.stage.cutAt(event.target);
    return cut === null ? new Look(this, event, () => this.pick(null)) : this.holdCut(cut, event);
  }

  holdHandle(handle, event) {
    if (handle.locked && !handle.ways.length) {
      this.say(handle.locked);
      return null;
    }
    this.say([handle.said, handle.also].filter(Boolean).join(". "));
    const works = handle.name === "turn" ? turning : handle.kind === "size" ? sizing : pointing;
    return new Drag(this, () => works(handle, this.picked), event);
  }

  /** A cut that is touched is picked; one that is picked, or that a mouse takes, moves along. */
  holdCut(cut, event) {
    if (!isKnown(this.seen)) {
      this.touched = cut; // picked once it is known
      this.ask();
      return null;
    }
    const mine = this.picked && this.picked.own.includes(cut);
    const whose = this.seen.cuts[cut];
    if (!mine && event.pointerType !== "mouse") return new Look(this, event, () => this.pick(whose));
    if (!mine) this.pick(whose);
    return new Drag(this, () => this.movable(), event);
  }

  /** A handle was tapped, not dragged: what lies under it is meant. */
  tapped({ clientX, clientY }) {
    const under = document.elementsFromPoint(clientX, clientY).map((each) => this.stage.cutAt(each));
    const cut = under.find((each) => each !== null);
    if (cut !== undefined && isKnown(this.seen) && !this.picked?.own.includes(cut)) this.pick(this.seen.cuts[cut]);
  }

  movable() {
    const { locked, ways = [] } = this.picked.move;
    if (!locked || ways.length) return moving(this.picked, this.tips());
    this.say(locked);
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
    if (tip) this.talk.preview({ ...gesture, ...this.selection }, (lines) => this.ghost.isEmpty || this.ghost.become(lines));
    const frame = frameOf(this.picked, this.picked.copy);
    this.ghost.move((copy) => alike(change, frame, frameOf(this.picked, copy)));
    this.handles.follow(tip ? shift(tip) : change);
    this.showHit(hit);
    this.say(value);
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
    this.make(gesture);
  }

  /** Nothing is in the hand any more. */
  letGo() {
    this.hovered = null;
    this.loupe.hide();
    this.ghost.drop();
    this.stroke.drop();
    this.showHit(null);
    this.handles.follow(null);
    this.element.classList.remove("holding");
  }

  isOver({ clientX, clientY }) {
    const { left, right, top, bottom } = this.element.getBoundingClientRect();
    return clientX > left && clientX < right && clientY > top && clientY < bottom;
  }

  hover(event) {
    if (!this.figure || this.tool !== this.figure.word || event.pointerType !== "mouse" || event.buttons) return;
    if (this.hovered) this.hovered.move(event);
    else this.hovered = new Carry(this, this.figure, event);
  }

  // looking

  /** The wheel zooms, unless it has to move the page. */
  wheel(event) {
    if (!this.top || !this.usable) return;
    if (!event.ctrlKey && this.view.isWhole && document.documentElement.scrollHeight > innerHeight + 1) return;
    event.preventDefault();
    this.view.by(Math.exp(-event.deltaY * (event.deltaMode ? 0.05 : 0.0015)), this.view.here(event));
  }

  /** What a key does to the view, or null. */
  zooming(key) {
    if ("+=".includes(key)) return () => this.view.by(1.25);
    return { "-": () => this.view.by(0.8), 0: () => this.view.whole() }[key] || null;
  }

  viewed() {
    if (this.top && this.stage.svg) this.view.apply(this.stage.svg);
    this.element.classList.toggle("zoomed", !this.view.isWhole);
    if (this.whole) this.whole.hidden = this.view.isWhole;
  }

  /** The stage shows another look of the loaf, or it at another share of its time in the oven. */
  looking(look, share) {
    this.top = look === "top";
    this.element.classList.toggle("away", !this.top || share > 0);
    this.viewed();
  }
}

/** Whether an answer is about the text as it is. */
function isKnown(answer) {
  return answer !== null && answer.asked === store.stamp;
}

function lines(text) {
  return text.split("\n").length;
}
