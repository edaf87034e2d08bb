// The dough and its basket as forms: how far proofed, what makes it rise, how wet, how warm.

import { choicesOf } from "./choices.js";
import { h } from "./dom.js";
import { change } from "./edits.js";
import { numberField } from "./fields.js";
import { chosen, fromHeat, toHeat, trimmed } from "./units.js";
import { whatIs } from "./what.js";
import { words } from "./words.js";

const told = words.design;
const LINES = ["dough", "loaf", "bench"]; // which may say something of the dough

/** The dough of a design; each change goes into the line that says it already. */
export function doughForm({ dough, forms, limits, choices }) {
  const write = (key, value, refused) => change(LINES.find((line) => forms[line] && key in forms[line].keys) || "dough", { [key]: value }, refused);
  const pick = (key) => choicesOf(`dough-${key}`, told[key], choices[key], dough[key], (each) => write(key, each));
  const warm = (key, celsius) => {
    const [min, max] = limits.dough[key].map(toHeat);
    const wrote = (value, refused) => write(key, `${trimmed(fromHeat(value), 1)}C`, refused);
    return numberField(`dough-${key}`, told[key], toHeat(celsius), `°${chosen.heat}`, { min, max, step: 1 }, wrote);
  };
  const [min, max] = limits.dough.hydration;
  const wet = numberField("dough-hydration", told.hydration, trimmed(100 * dough.hydration, 1), "%", { min, max, step: 1 }, (value, refused) => write("hydration", `${value}%`, refused));
  wet.querySelector("label").after(whatIs("hydration"));
  return h(
    "fieldset",
    { class: "oven" },
    h("legend", {}, told.doughForm),
    pick("proof"),
    pick("culture"),
    h("p", { class: "quiet" }, told.times(trimmed(dough.times, 1))),
    h("div", { class: "fields" }, warm("temperature", dough.temperature_c), warm("kitchen", dough.kitchen_c), wet),
  );
}

/** The common baskets of a form with the dough they take, and the one that is written. */
export function basketField({ basket, by }, baskets) {
  const option = ({ cm, inches, written }, number) => h("option", { value: number, props: { selected: written } }, chosen.length === "in" ? inches : cm);
  const own = basket && !baskets.some(({ written }) => written) ? [h("option", { value: "own", props: { selected: true } }, [basket, by].filter(Boolean).join(" × "))] : [];
  const pick = ({ target: { value } }) => value !== "own" && change("loaf", value === "" ? { basket: "", by: "" } : baskets[value].keys);
  const select = h("select", { id: "loaf-basket", onchange: pick }, h("option", { value: "", props: { selected: !basket } }, told.noBasket), ...own, ...baskets.map(option));
  return h("div", { class: "field" }, h("label", { for: "loaf-basket" }, told.basket), select);
}
