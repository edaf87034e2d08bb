// What is being worked on: the text with its history, the file it belongs to, the last design.

import { keep, kept, later } from "./dom.js";
import { discard, hold, lastWork, newId, put } from "./rescue.js";

const BAKER = "scorecraft.baker";
const MOST_STEPS = 300;
export const TYPING_MS = 700;

class Store extends EventTarget {
  constructor() {
    super();
    Object.assign(this, { id: newId(), revision: 0, text: "", name: "", place: "", mark: null, saved: "" });
    Object.assign(this, { design: null, problems: [], steps: [""], at: 0, last: { kind: "", time: 0 } });
    Object.assign(this, { taught: false, baker: kept(BAKER) === true });
    this.rescue = later(() => this.keep(), 150);
  }

  /** Tell listeners that something changed. */
  say(what, detail = {}) {
    this.dispatchEvent(new CustomEvent(what, { detail }));
  }

  on(what, act) {
    this.addEventListener(what, (event) => act(event.detail));
  }

  /** Take another text; what comes quickly one after the other, or is of one gesture, is one step of undo. */
  write(text, kind) {
    if (text === this.text) return;
    this.text = text;
    const now = Date.now();
    const quick = now - this.last.time < TYPING_MS || /^(hand|slide) /.test(kind); // a gesture may pause
    const same = kind === this.last.kind && quick && this.at > 0;
    this.steps.length = this.at + 1;
    if (same) this.steps[this.at] = text;
    else {
      this.steps.push(text);
      if (this.steps.length > MOST_STEPS) this.steps.shift();
      this.at = this.steps.length - 1;
    }
    this.last = { kind, time: now };
    this.changed(kind);
  }

  step(by) {
    const next = this.at + by;
    if (next < 0 || next >= this.steps.length) return;
    this.at = next;
    this.text = this.steps[next];
    this.last = { kind: "", time: 0 };
    this.changed("step");
  }

  get canUndo() {
    return this.at > 0;
  }

  get canRedo() {
    return this.at < this.steps.length - 1;
  }

  get unsaved() {
    return this.text !== this.saved;
  }

  /** The mark of the text as it is now: every question carries it, and so every answer. */
  get stamp() {
    return `${this.id}.${this.revision}`;
  }

  /** Whether an answer is about a text of what is open now, be it an older one. */
  isOurs(stamp) {
    return stamp.startsWith(`${this.id}.`);
  }

  /** Whether the design is that of the text as it is now. */
  get current() {
    return this.design !== null && this.design.asked === this.stamp;
  }

  /** Take in what the server says of a text: a design, or what is wrong. */
  take(answer) {
    const now = answer.asked === this.stamp;
    if (!this.isOurs(answer.asked) || !(answer.ok || now)) return;
    this.problems = answer.ok ? [] : answer.problems;
    if (answer.ok) this.design = answer;
    this.say(answer.ok ? "design" : "problems");
  }

  /** Start with a file; unsaved work on another one stays among the unsaved. */
  open({ name, text, mark, place, saved = text }) {
    this.leave();
    this.begin(newId(), { name, text, mark, place, saved });
  }

  /** Go on with work that was kept. */
  restore({ id, name, text, mark, place, saved }) {
    this.leave();
    this.begin(id, { name, text, mark, place, saved });
  }

  begin(id, file) {
    Object.assign(this, file, { id, design: null, problems: [] });
    this.steps = [file.text];
    this.at = 0;
    hold(id);
    this.changed("open");
  }

  leave() {
    if (!this.text) return;
    if (this.unsaved) this.keep();
    else discard(this.id);
  }

  /** A file was written: it is what is on the disk now. */
  wrote({ name, mark, text }) {
    Object.assign(this, { name, mark, saved: text, place: "folder" });
    this.rescue();
    this.say("file");
  }

  /** The file of this name has another one now, or lies in the trash: what is open belongs to no file then. */
  moved(name, next) {
    if (this.place !== "folder" || this.name !== name) return;
    Object.assign(this, next ? { name: next } : { name: "", place: "", mark: null, saved: "" });
    this.rescue();
    this.say("file");
  }

  /** Take what is in the file now; one's own text is a step of undo away, and kept. */
  giveWay({ text, mark }) {
    put(newId(), this.work);
    Object.assign(this, { saved: text, mark, place: "folder" });
    this.last = { kind: "", time: 0 };
    this.write(text, "file");
    this.say("file");
  }

  changed(kind) {
    this.revision += 1;
    this.rescue();
    this.say("text", { kind });
  }

  /** What a request about this pattern says. */
  get asked() {
    const baker = this.taught && this.baker;
    return { text: this.text, name: this.name || "pattern.score", place: this.place, baker, asked: this.stamp };
  }

  /** Let the model be as the baker's own bakes have taught it, or as it is for everybody. */
  useBaker(yes) {
    this.baker = yes;
    keep(BAKER, yes);
    this.changed("baker");
  }

  /** Bakes have taught something in this folder, or nothing yet. */
  learn(taught) {
    this.taught = taught;
    this.say("taught");
  }

  get work() {
    const { text, name, place, mark, saved } = this;
    return { text, name, place, mark, saved, time: Date.now() };
  }

  keep() {
    if (this.text) put(this.id, this.work);
  }

  /** Take up what was worked on before; tell whether there was something. */
  async recover() {
    const before = await lastWork();
    if (before) this.restore(before);
    return before !== null;
  }
}

export const store = new Store();
