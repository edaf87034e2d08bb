// The loaf, the oven and the bench as forms; each change is written into their line of the text.

import { check, choicesOf } from "./choices.js";
import { button, h } from "./dom.js";
import { basketField, doughForm } from "./dough_form.js";
import { change, reform } from "./edits.js";
import { fieldLimits, numberField } from "./fields.js";
import { formOf, panField, shapes } from "./loaf_shape.js";
import { store } from "./store.js";
import { fieldUnit, fromField, length, toField, trimmed } from "./units.js";
import { whatIs } from "./what.js";
import { words } from "./words.js";

const told = words.design;

export class LoafForm {
  constructor() {
    this.element = h("div", { class: "forms" });
  }

  /** Nothing is open that could be read; say why. */
  clear(why) {
    this.element.replaceChildren(h("p", { class: "quiet" }, why));
  }

  /** Show the loaf and oven of a design; what is being typed stays. */
  show(design) {
    const using = this.element.contains(document.activeElement) ? document.activeElement.id : "";
    const drafts = [...this.element.querySelectorAll("[data-draft]")];
    const { loaf, bake, bench } = design.forms;
    const rows = loaf && loaf.keys.outline ? [h("p", { class: "quiet" }, told.traced)] : this.loaf(design, loaf);
    this.element.replaceChildren(...rows, doughForm(design), this.oven(bake, design), this.hand(bench, design));
    for (const draft of drafts) {
      const now = this.element.querySelector(`#${draft.id}`);
      if (now) now.closest(".field").replaceWith(draft.closest(".field"));
    }
    const again = using && this.element.querySelector(`#${using}`);
    if (again) again.focus();
  }

  loaf(design, form) {
    const row = formOf(design);
    const byDough = Boolean(form && form.keys.dough);
    const size = (key, label, mm) =>
      field("loaf", key, label, toField(mm), fieldUnit(), fieldLimits(design.limits.loaf[key]), (value) => `${trimmed(fromField(value), 2)}mm`);
    const inPan = Boolean(form && form.keys.pan);
    const sizes = row.held ? [panField(design)] : [];
    if (!inPan) sizes.push(size("width", told.width, design.loaf.width_mm));
    if (!inPan && !row.even) sizes.push(size("length", told.length, design.loaf.length_mm));
    const hole = row.ring && size("hole", told.hole, design.loaf.hole_mm);
    sizes.push(hole, size("height", told.height, design.loaf.height_mm));
    const sizing = choicesOf("loaf-sizing", told.sizing, told.sizings, byDough ? "dough" : "size", (by) => reform({ by }));
    return [shapes(design), sizing, byDough ? this.dough(form, design, hole) : h("div", { class: "fields" }, ...sizes)];
  }

  dough(form, design, hole) {
    const { loaf, baskets } = design;
    const row = formOf(design);
    const [, mass, unit] = /^([\d.]+)\s*(g|kg|oz|lb)$/.exec(form.keys.dough) || [0, "900", "g"];
    const size = [loaf.length_mm, loaf.width_mm, loaf.height_mm].map((mm) => length(mm, 0));
    return h(
      "div",
      { class: "fields" },
      field("loaf", "dough", told.dough, mass, unit, { min: 0, step: unit === "g" ? 50 : 0.25 }, (value) => `${value}${unit}`),
      hole,
      row.held ? panField(design) : basketField(form.keys, baskets),
      h("p", { class: "quiet" }, told.sized(...size)),
    );
  }

  oven(form, { bake, limits: { bake: limits } }) {
    const { spring, spread, steam } = bake;
    const own = form && form.keys.spring;
    return h(
      "fieldset",
      { class: "oven" },
      h("legend", {}, told.oven),
      h(
        "div",
        { class: "fields" },
        field("bake", "spring", told.spring, trimmed(spring, 2), "×", { ...ends(limits.spring), step: 0.05 }),
        explained("spread", field("bake", "spread", told.spread, trimmed(100 * spread, 1), "%", { ...ends(limits.spread), step: 5 }, (value) => `${value}%`)),
      ),
      own && button("plain", () => change("bake", { spring: "" }), told.springByDough),
      check("bake-steam", told.steam, steam, (yes) => change("bake", { steam: yes ? "yes" : "no" })),
      store.taught && check("bake-baker", told.baker, store.baker, (yes) => store.useBaker(yes)),
    );
  }

  hand(form, { choices, limits: { bench: limits } }) {
    const { hand = "right", skill = "steady", loaves = "1" } = form ? form.keys : {};
    return h(
      "div",
      { class: "forms" },
      choicesOf("bench-hand", told.hand, choices.hand, hand, (each) => change("bench", { hand: each })),
      choicesOf("bench-skill", told.skill, choices.skill, skill, (each) => change("bench", { skill: each })),
      h("div", { class: "fields" }, field("bench", "loaves", told.loaves, loaves, "", { ...ends(limits.loaves), step: 1 })),
    );
  }
}

/** A number field of a key of a header line; `written` is its value as it stands in the text. */
function field(word, key, label, value, unit, limits, written = String) {
  return numberField(`${word}-${key}`, label, value, unit, limits, (typed, refused) => change(word, { [key]: written(typed) }, refused));
}

/** A field with the answer to what it is beside its label. */
function explained(term, field) {
  field.querySelector("label").after(whatIs(term));
  return field;
}

function ends([min, max]) {
  return { min, max };
}
