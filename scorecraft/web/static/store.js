// What is being worked on: the text with its history, the file it belongs to, the last design.

import { keep, kept, later } from "./dom.js";

const RESCUE = "scorecraft.work";
const BAKER = "scorecraft.baker";
const MOST_STEPS = 300;
const TYPING_MS = 700;

class Store extends EventTarget {
  constructor() {
    super();
    this.text = "";
    this.name = "";
    this.place = "";
    this.mark = null;
    this.saved = "";
    this.design = null;
    this.problems = [];
    this.steps = [""];
    this.at = 0;
    this.last = { kind: "", time: 0 };
    this.taught = false;
    this.baker = kept(BAKER) === true;
    this.rescue = later(() => this.keep(), 150);
  }

  /** Tell listeners that something changed. */
  say(what, detail = {}) {
    this.dispatchEvent(new CustomEvent(what, { detail }));
  }

  on(what, act) {
    this.addEventListener(what, (event) => act(event.detail));
  }

  /** Take another text; what comes quickly one after the other is one step of undo. */
  write(text, kind) {
    if (text === this.text) return;
    this.text = text;
    const now = Date.now();
    const same = kind === this.last.kind && now - this.last.time < TYPING_MS && this.at > 0;
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

  /** Start with a file. */
  open({ name, text, mark, place }) {
    Object.assign(this, { name, text, mark, place, saved: text, design: null, problems: [] });
    this.steps = [text];
    this.at = 0;
    this.changed("open");
  }

  /** A file was written: it is what is on the disk now. */
  wrote({ name, mark, text }) {
    Object.assign(this, { name, mark, saved: text, place: "folder" });
    this.rescue();
    this.say("file");
  }

  changed(kind) {
    this.rescue();
    this.say("text", { kind });
  }

  /** What a request about this pattern says. */
  get asked() {
    const baker = this.taught && this.baker;
    return { text: this.text, name: this.name || "pattern.score", place: this.place, baker };
  }

  /** Let the model be as the baker's own bakes have taught it, or as it is for everybody. */
  useBaker(yes) {
    this.baker = yes;
    keep(BAKER, yes);
    this.say("text", { kind: "baker" });
  }

  keep() {
    const { text, name, place, mark, saved } = this;
    keep(RESCUE, { text, name, place, mark, saved });
  }

  /** Take up what was worked on before a reload; tell whether there was something. */
  recover() {
    const before = kept(RESCUE);
    if (!before || !before.text) return false;
    Object.assign(this, before);
    this.steps = [before.text];
    return true;
  }
}

export const store = new Store();
