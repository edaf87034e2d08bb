// The pattern's knobs as sliders; each has its value written into the text.

import { button, h } from "./dom.js";
import { edits } from "./edits.js";
import { TYPING_MS } from "./store.js";
import { trimmed, valued } from "./units.js";
import { words } from "./words.js";

let slides = 0;

export class Knobs {
  /** `pointed` hears of the line of the knob in use, or null. */
  constructor({ pointed = () => {} } = {}) {
    this.pointed = pointed;
    this.element = h("div", { class: "knobs" });
    this.rows = new Map();
    this.first = new Map();
    this.back = button("plain knobs-back", () => this.reset(), words.design.resetKnobs);
  }

  /** Nothing is open that could be read; say why. */
  clear(why) {
    this.names = "";
    this.first.clear();
    this.element.replaceChildren(h("p", { class: "quiet" }, why));
  }

  /** Show the knobs of a design; sliders that are there already keep the hand that holds them. */
  show(knobs, settled) {
    const names = knobs.map(({ name, unit, low, high, step, turns }) => [name, unit, low, high, step, turns].join("|"));
    const others = `${names.length} ${names}` !== this.names;
    if (others) {
      this.names = `${names.length} ${names}`;
      this.rows = new Map(knobs.map((knob) => [knob.name, this.row(knob)]));
      const rows = [...this.rows.values()].map((row) => row.element);
      this.element.replaceChildren(...(rows.length ? [...rows, this.back] : [h("p", { class: "quiet" }, words.design.noKnobs)]));
    }
    for (const { name, value } of knobs) if (!this.first.has(name)) this.first.set(name, value);
    this.knobs = knobs;
    this.back.hidden = this.moved.length === 0;
    if (!others && !settled) return; // a newer value is on its way
    for (const knob of knobs) this.rows.get(knob.name).show(knob);
  }

  /** The knobs that are not as the pattern was opened. */
  get moved() {
    return this.knobs.filter(({ name, value, turns }) => turns && value !== this.first.get(name));
  }

  reset() {
    for (const { name, unit } of this.moved) edits.make(`knob ${name}`, { knob: name, value: trimmed(this.first.get(name), 4) + unit });
  }

  row(first) {
    let knob = first;
    let [held, last] = [false, 0]; // a slider that is held makes one step of undo, however long it rests
    const id = `knob-${first.name}`;
    // the slider itself tells its value; an output would tell it a second time
    const shown = h("output", { for: id, class: "knob-value", "aria-hidden": "true" });
    const tell = (value) => {
      shown.textContent = valued(value, knob.unit);
      slider.setAttribute("aria-valuetext", shown.textContent);
      const share = (value - knob.low) / (knob.high - knob.low || 1);
      slider.style.setProperty("--share", `${share * 100}%`);
    };
    const slider = h("input", {
      id,
      type: "range",
      min: first.low,
      max: first.high,
      step: first.step,
      disabled: !first.turns,
      title: first.turns ? null : words.design.fixedKnob,
      oninput: () => {
        const value = Number(slider.value);
        tell(value);
        if (!held && Date.now() - last > TYPING_MS) slides += 1; // another burst of keys
        last = Date.now();
        edits.make(`knob ${knob.name}`, { knob: knob.name, value: trimmed(value, 4) + knob.unit }, undefined, `slide ${slides}`);
      },
      onpointerdown: () => ((held = true), (slides += 1)),
      onchange: () => (held = false),
      onfocus: () => this.pointed(knob.line),
      onblur: () => this.pointed(null),
    });
    const label = h("label", { for: id }, first.name.replaceAll("_", " "));
    const element = h("div", { class: "knob" }, label, shown, slider);
    const show = (next) => {
      knob = next;
      slider.value = next.value;
      tell(next.value);
    };
    // while the hand is on a slider, an answer that is a little late must not pull it back
    return { element, show: (next) => (slider.matches(":active:focus") ? (knob = next) : show(next)) };
  }
}
