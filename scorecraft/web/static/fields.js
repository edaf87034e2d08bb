// Number fields that say at the field, in its own unit, what they do not take.

import { h } from "./dom.js";
import { chosen, fieldUnit } from "./units.js";
import { words } from "./words.js";

/** Limits in mm as the field shows them, never wider than they are. */
export function fieldLimits([least, most]) {
  if (chosen.length !== "in") return { min: least, max: most };
  return { min: Math.ceil((least / 25.4) * 100) / 100, max: Math.floor((most / 25.4) * 100) / 100 };
}

/** Whether a number field holds a number it takes. */
export function usable(input) {
  const { badInput, rangeUnderflow, rangeOverflow } = input.validity;
  return input.value !== "" && !badInput && !rangeUnderflow && !rangeOverflow;
}

/** A place for what is wrong with a field, which points at it; `say("")` takes it away. */
export function fault(input) {
  const line = h("span", { class: "fault", id: `${input.id}-fault`, role: "alert", hidden: true });
  const say = (text) => {
    line.textContent = text;
    line.hidden = !text;
    if (text) input.setAttribute("aria-describedby", line.id);
    else input.removeAttribute("aria-describedby");
    input.setAttribute("aria-invalid", text !== "");
  };
  return { line, say };
}

/** What a field takes, in words. */
export function range({ min, max }, unit) {
  return words.range(min, max, unit);
}

/**
 * A number field with its unit. `changed` hears of a value within the limits, and of a way to say
 * at the field why it cannot be; any other value is told at once and stays to be mended.
 */
export function numberField(id, label, value, unit, limits, changed) {
  const input = h("input", { id, type: "number", inputmode: "decimal", step: fieldUnit() === "in" ? 0.25 : 5, ...limits, props: { value } });
  const { line, say } = fault(input);
  input.addEventListener("input", () => {
    input.dataset.draft = "yes";
    if (usable(input)) say("");
  });
  input.addEventListener("change", () => {
    say(usable(input) ? "" : range(limits, unit));
    if (!usable(input)) return;
    delete input.dataset.draft;
    changed(input.value, (why) => {
      input.dataset.draft = "yes";
      say(why);
    });
  });
  return h("div", { class: "field" }, h("label", { for: id }, label), h("span", { class: "with-unit" }, input, h("i", {}, unit)), line);
}

