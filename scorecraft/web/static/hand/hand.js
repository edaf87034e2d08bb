// The hand: what is picked on the loaf, and what a finger or the keyboard does to it.

import { fetched, tellWhy } from "../api.js";
import { h, iconButton } from "../dom.js";
import { store } from "../store.js";
import { said } from "../units.js";
import { words } from "../words.js";
import { Bar } from "./bar.js";
import { exactForm } from "./exact.js";
import { Grasp } from "./grasp.js";
import { Carry } from "./holds.js";
import { isKnown } from "./known.js";
import { plus } from "./plane.js";
import { Statements } from "./statements.js";
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
    this.grasp = new Grasp(this);
    this.talk = new Talk({ looked: (answer) => this.looked(answer), picked: (answer) => this.known(answer), made: (answer, about) => this.made(answer, about), failed: () => (this.grasp.letGo(), this.busy(false)) });
    this.bar = new Bar(this);
    this.list = new Statements(this);
    this.element = this.layout();
    this.view.addEventListener("change", () => this.viewed());
    store.on("text", ({ kind }) => this.textChanged(kind));
    store.on("sight", ({ frame }) => this.landed(frame));
    store.on("design", () => this.designed());
    store.on("problems", () => this.broken());
    this.fillTray();
  }

  layout() {
    this.hint = h("p", { class: "hand-hint", hidden: true });
    this.live = h("p", { class: "hidden", role: "status" });
    this.whole = iconButton("whole", told.whole, () => this.view.whole());
    const zoom = h("div", { class: "zoom", role: "group", "aria-label": told.zoom }, iconButton("plus", told.closer, () => this.view.by(1.5)), iconButton("minus", told.farther, () => this.view.by(1 / 1.5)), this.whole);
    const { element } = this.grasp;
    element.append(zoom, this.hint, this.live);
    element.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
    return element;
  }

  async fillTray() {
    try {
      const { figures, first } = await fetched("/api/tray");
      this.bar.fill(figures);
      this.dispatchEvent(new CustomEvent("filled", { detail: first }));
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
    this.grasp.lay();
  }

  designed() {
    this.able(true);
    if (!store.current) return;
    this.landed(store.design.frame);
    if (isKnown(this.seen)) this.settle();
    else this.ask();
  }

  broken() {
    this.grasp.letGo();
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
    const touched = answer.cuts[this.grasp.touched];
    this.grasp.touched = null;
    if (touched) this.pick(touched);
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
    this.grasp.letGo();
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
    this.grasp.handles.show([]); // they come with the answer; the marks are known
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
    this.grasp.handles.show(handles);
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
    this.grasp.letGo();
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
    return new Carry(this.grasp, figure, event);
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

function lines(text) {
  return text.split("\n").length;
}
