// The dough and its basket as forms: how far proofed, what makes it rise, how wet, how warm.

import { choices } from "./choices.js";
import { h } from "./dom.js";
import { change } from "./edits.js";
import { numberField } from "./fields.js";
import { chosen, fromHeat, toHeat, trimmed } from "./units.js";
import { whatIs } from "./what.js";
import { words } from "./words.js";

const told = words.design;
const LINES = ["dough", "loaf", "bench"]; // which may say something of the dough
const MM = { mm: 1, cm: 10, in: 25.4 };

/** The dough of a design; each change goes into the line that says it already. */
export function doughForm({ dough, forms, limits }) {
  const write = (key, value, refused) => change(LINES.find((line) => forms[line] && key in forms[line].keys) || "dough", { [key]: value }, refused);
  const pick = (key, names) => choices(`dough-${key}`, told[key], Object.keys(names), dough[key], (each) => names[each], (each) => write(key, each));
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
    pick("proof", told.proofs),
    pick("culture", told.cultures),
    h("p", { class: "quiet" }, told.times(trimmed(dough.times, 1))),
    h("div", { class: "fields" }, warm("temperature", dough.temperature_c), warm("kitchen", dough.kitchen_c), wet),
  );
}

/** The common baskets of a form with the dough they take, and the one that is written. */
export function basketField({ basket = "", by = "" }, shape, baskets) {
  const even = shape === "round" || shape === "square";
  const fitting = baskets.filter((each) => (each.length_mm === each.width_mm) === even);
  const now = [inMm(basket), inMm(by)];
  const same = (each) => each.length_mm === now[0] && (even || each.width_mm === now[1]);
  const chosenOne = fitting.find(same);
  const option = (value, text, selected) => h("option", { value, props: { selected } }, text);
  const rows = fitting.map((each, number) => option(String(number), called(each, even), each === chosenOne));
  const own = basket && !chosenOne ? [option("own", [basket, by].filter(Boolean).join(" × "), true)] : [];
  const pick = ({ target: { value } }) => {
    const each = fitting[Number(value)];
    if (value === "") change("loaf", { basket: "", by: "" });
    else if (each) change("loaf", { basket: `${each.length_mm}mm`, by: even ? "" : `${each.width_mm}mm` });
  };
  const select = h("select", { id: "loaf-basket", onchange: pick }, option("", told.noBasket, !basket), ...own, ...rows);
  return h("div", { class: "field" }, h("label", { for: "loaf-basket" }, told.basket), select);
}

function called({ length_mm: long, width_mm: wide, least_g: least, most_g: most }, even) {
  const [factor, unit] = chosen.length === "in" ? [25.4, "in"] : [10, "cm"]; // as baskets are sold
  const sides = (even ? [long] : [long, wide]).map((mm) => trimmed(mm / factor, 1));
  return told.basketTakes(`${sides.join(" × ")} ${unit}`, least, most);
}

/** Read a plain length of the text; NaN for what is worked out there. */
function inMm(text) {
  const [, value, unit] = /^([\d.]+)\s*(mm|cm|in)$/.exec(text) || [];
  return Number(value) * MM[unit];
}
