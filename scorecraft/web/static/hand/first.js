// The first design: six steps to a small wreath, shown once, on an empty loaf.

import { button, h, keep, kept } from "../dom.js";
import { store } from "../store.js";
import { words } from "../words.js";

const told = words.hand.first;
const SEEN = "scorecraft.first";

export class FirstDesign {
  constructor(hand) {
    Object.assign(this, { at: -1, steps: [] });
    this.title = h("b", {});
    this.text = h("p", {});
    this.next = button("main", () => this.go(this.at + 1), "");
    this.skip = button("plain", () => this.go(this.steps.length), told.skip);
    this.element = h("section", { class: "first", "aria-label": told.label, hidden: true }, h("div", { role: "status" }, this.title, " ", this.text), h("div", { class: "buttons" }, this.next, this.skip));
    hand.addEventListener("made", ({ detail }) => this.at >= 0 && this.steps[this.at].done === detail.kind && this.go(this.at + 1));
    store.on("text", ({ kind }) => kind === "open" && this.opened());
    hand.addEventListener("filled", ({ detail }) => ((this.steps = detail), this.opened()));
  }

  opened() {
    const begins = this.steps.length > 0 && store.text === words.freshText && !kept(SEEN);
    if (begins || this.at >= 0) this.go(begins ? 0 : -1);
  }

  go(step) {
    this.at = step < this.steps.length ? step : -1;
    if (step >= this.steps.length) keep(SEEN, true);
    this.element.hidden = this.at < 0;
    if (this.at < 0) return;
    this.title.textContent = told.title(step + 1, this.steps.length);
    this.text.textContent = this.steps[step].text;
    const last = step === this.steps.length - 1;
    this.next.textContent = last ? told.end : told.next;
    this.skip.hidden = last;
  }
}
