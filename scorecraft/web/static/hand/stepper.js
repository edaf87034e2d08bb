// A number of what is picked, changed by taps or typed; one visit is one step of undo.

import { beside, button, h, named } from "../dom.js";
import { words } from "../words.js";

const told = words.hand;
let visits = 0;

export class Stepper {
  constructor(make) {
    this.make = make;
    this.title = h("b", { id: "stepper-title" });
    this.input = h("input", { id: "stepper", type: "text", autocomplete: "off", "aria-labelledby": "stepper-title", onchange: () => this.set(this.input.value.trim()) });
    const less = named(button("plain round", () => this.step(-1), "−"), told.less);
    const more = named(button("plain round", () => this.step(1), "+"), told.greater);
    this.often = h("div", { class: "often" });
    this.element = h("div", { id: "stepper-pop", class: "answer stepper", popover: "auto", role: "dialog", "aria-labelledby": "stepper-title" }, this.title, h("div", { class: "step-row" }, less, this.input, more), this.often);
    this.name = null;
  }

  open({ name, value, steps }, from) {
    Object.assign(this, { name, steps });
    this.visit = `number ${(visits += 1)}`;
    this.title.textContent = told.chips[name];
    this.input.value = value === "" ? "" : String(value);
    this.often.replaceChildren(...steps.often.map((each) => button("chip", () => this.set(String(each)), name === "repeat" ? `× ${each}` : each)));
    this.element.showPopover();
    beside(this.element, from, true);
    this.input.focus();
  }

  close() {
    if (this.element.matches(":popover-open")) this.element.hidePopover();
  }

  /** Take the value that acts now. */
  follow(chips) {
    const chip = chips.find(({ name }) => name === this.name);
    if (chip && this.element.matches(":popover-open")) this.input.value = String(chip.value);
  }

  step(way) {
    const { by, unit, least, most = Infinity, first } = this.steps;
    const now = /^\s*(-?[\d.]+)\s*(\D*)$/.exec(this.input.value);
    const own = now && now[2].trim();
    const fine = own === "in" ? by / 16 : by;
    const next = now ? Math.min(most, Math.max(own === "in" ? 0 : least, Number(now[1]) + way * fine)) : first;
    this.set(`${Number(next.toFixed(4))}${own || unit}`);
  }

  set(value) {
    if (!value && this.name === "repeat") return;
    this.input.value = value;
    const gesture = this.name === "repeat" ? { kind: "repeat", count: Number(value) } : { kind: "set", key: this.name, value };
    this.make(gesture, this.visit);
  }
}
