// The loaf and the oven as forms; both write their line of the text anew.

import { h, icon } from "./dom.js";
import { withHeader } from "./pattern_text.js";
import { store } from "./store.js";
import { fieldUnit, fromField, length, toField, trimmed } from "./units.js";
import { words } from "./words.js";

const SHAPES = ["round", "oval", "long", "square"];
const STRETCH = { round: 1, square: 1, oval: 1.6, long: 2.6 };
const told = words.design;

/** Write one key of a header line into the text. */
function change(word, form, keys) {
  const all = { ...(form ? form.keys : {}), ...keys };
  store.write(withHeader(store.text, word, form && form.line, all), `${word} ${Object.keys(keys)[0]}`);
}

export class LoafForm {
  constructor() {
    this.element = h("div", { class: "forms" });
  }

  /** Show the loaf and oven of a design; a field in use is left alone. */
  show(design) {
    const using = this.element.contains(document.activeElement) ? document.activeElement.id : "";
    const { loaf, bake, bench } = design.forms;
    const rows = loaf && loaf.keys.outline ? [h("p", { class: "quiet" }, told.traced)] : this.loaf(design, loaf);
    this.element.replaceChildren(...rows, this.oven(bake), this.hand(bench));
    const again = using && this.element.querySelector(`#${using}`);
    if (again) again.focus();
  }

  loaf(design, form) {
    const shape = design.loaf.shape;
    const byDough = Boolean(form && form.keys.dough);
    const size = (key, label, mm) =>
      field(`loaf-${key}`, label, toField(mm), fieldUnit(), (value) => change("loaf", form, { [key]: `${trimmed(fromField(value), 2)}mm` }));
    const sizes = [size("width", told.width, design.loaf.width_mm)];
    if (shape === "oval" || shape === "long") sizes.push(size("length", told.length, design.loaf.length_mm));
    sizes.push(size("height", told.height, design.loaf.height_mm));
    const sizing = choices("loaf-sizing", told.sizing, ["size", "dough"], byDough ? "dough" : "size", (each) => told.sizings[each], (by) => this.sizeBy(by, form, design));
    return [this.shapes(shape, form, design), sizing, byDough ? this.dough(form, design) : h("div", { class: "fields" }, ...sizes)];
  }

  /** Size the loaf by its dough from now on, or by the sizes it has. */
  sizeBy(by, form, { loaf }) {
    const sizes = { width: `${trimmed(loaf.width_mm, 0)}mm`, height: `${trimmed(loaf.height_mm, 0)}mm` };
    sizes.length = STRETCH[loaf.shape] > 1 ? `${trimmed(loaf.length_mm, 0)}mm` : "";
    const none = { width: "", length: "", height: "" };
    change("loaf", form, by === "dough" ? { ...none, dough: "900g" } : { ...sizes, dough: "", proof: "", basket: "", by: "" });
  }

  shapes(shape, form, design) {
    const pick = (next) => {
      const width = design.loaf.width_mm;
      const long = STRETCH[next] > 1;
      const keys = { shape: next, length: long ? `${Math.round(width * STRETCH[next])}mm` : "" };
      if (form && form.keys.dough) keys.length = "";
      change("loaf", form, keys);
    };
    return choices("loaf-shape", told.loafForm, SHAPES, shape, (each) => [icon(each), told.shapes[each]], pick);
  }

  dough(form, { loaf }) {
    const [, mass, unit] = /^([\d.]+)\s*(g|kg|oz|lb)$/.exec(form.keys.dough) || [0, "900", "g"];
    const proof = ["under", "right", "over"].includes(form.keys.proof) ? form.keys.proof : form.keys.proof ? "" : "right";
    const size = [loaf.width_mm, loaf.length_mm, loaf.height_mm].map((mm) => length(mm, 0));
    return h(
      "div",
      { class: "fields" },
      field("loaf-dough", told.dough, mass, unit, (value) => change("loaf", form, { dough: `${value}${unit}` }), { step: unit === "g" ? 50 : 0.25 }),
      choices("loaf-proof", told.proof, Object.keys(told.proofs), proof, (each) => told.proofs[each], (each) => change("loaf", form, { proof: each })),
      h("p", { class: "quiet" }, told.sized(...size)),
    );
  }

  oven(form) {
    const keys = form ? form.keys : {};
    const spring = Number(keys.spring || 1.4);
    const spread = parseFloat(keys.spread || "50%");
    const steam = (keys.steam || "yes") === "yes";
    return h(
      "fieldset",
      { class: "oven" },
      h("legend", {}, told.oven),
      h(
        "div",
        { class: "fields" },
        field("bake-spring", told.spring, spring, "×", (value) => change("bake", form, { spring: value }), { min: 1, max: 3, step: 0.05 }),
        field("bake-spread", told.spread, spread, "%", (value) => change("bake", form, { spread: `${value}%` }), { min: 0, max: 100, step: 5 }),
      ),
      check("bake-steam", told.steam, steam, (yes) => change("bake", form, { steam: yes ? "yes" : "no" })),
      store.taught && check("bake-baker", told.baker, store.baker, (yes) => store.useBaker(yes)),
    );
  }

  hand(form) {
    const { hand = "right" } = form ? form.keys : {};
    return choices("bench-hand", told.hand, ["right", "left"], hand, (each) => told.hands[each], (each) => change("bench", form, { hand: each }));
  }
}

/** A number field with its unit. */
function field(id, label, value, unit, changed, limits = {}) {
  const input = h("input", {
    id,
    type: "number",
    inputmode: "decimal",
    step: fieldUnit() === "in" ? 0.25 : 5,
    ...limits,
    props: { value },
    onchange: () => usable(input) && changed(input.value),
  });
  return h("label", { class: "field", for: id }, h("span", {}, label), h("span", { class: "with-unit" }, input, h("i", {}, unit)));
}

/** A box to tick. */
export function check(id, label, checked, changed) {
  const box = h("input", { id, type: "checkbox", props: { checked }, onchange: () => changed(box.checked) });
  return h("label", { class: "check", for: id }, box, label);
}

/** A few choices of which one holds. */
export function choices(name, label, all, chosen, shown, picked) {
  return h(
    "fieldset",
    { class: "choices" },
    h("legend", {}, label),
    ...all.map((each) =>
      h(
        "label",
        { class: "choice" },
        h("input", { type: "radio", name, id: `${name}-${each}`, props: { checked: each === chosen }, onchange: () => picked(each) }),
        h("span", {}, ...[shown(each)].flat()),
      ),
    ),
  );
}

function usable(input) {
  return input.value !== "" && !input.validity.rangeUnderflow && !input.validity.rangeOverflow;
}
