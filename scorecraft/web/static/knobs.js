// The pattern's knobs as sliders; each writes its value into the text.

import { h } from "./dom.js";
import { withKnob } from "./pattern_text.js";
import { store } from "./store.js";
import { trimmed, valued } from "./units.js";
import { words } from "./words.js";

export class Knobs {
  /** `pointed` hears of the line of the knob in use, or null. */
  constructor({ pointed = () => {} } = {}) {
    this.pointed = pointed;
    this.element = h("div", { class: "knobs" });
    this.rows = new Map();
  }

  /** Show the knobs of a design; sliders that are there already keep the hand that holds them. */
  show(knobs) {
    const names = knobs.map((knob) => `${knob.name}|${knob.unit}|${knob.low}|${knob.high}|${knob.step}`);
    if (names.join() !== this.names) {
      this.names = names.join();
      this.rows = new Map(knobs.map((knob) => [knob.name, this.row(knob)]));
      const rows = [...this.rows.values()].map((row) => row.element);
      this.element.replaceChildren(...(rows.length ? rows : [h("p", { class: "quiet" }, words.design.noKnobs)]));
    }
    for (const knob of knobs) this.rows.get(knob.name).show(knob);
  }

  row(first) {
    let knob = first;
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
      disabled: !first.span,
      title: first.span ? null : words.design.fixedKnob,
      oninput: () => {
        const value = Number(slider.value);
        tell(value);
        store.write(withKnob(store.text, knob, trimmed(value, 4) + knob.unit), `knob ${knob.name}`);
      },
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
