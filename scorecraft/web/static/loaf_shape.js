// The forms of a loaf as buttons, and the tin of one that bakes in it: rows of the server's tables.

import { choices } from "./choices.js";
import { h, part } from "./dom.js";
import { reform } from "./edits.js";
import { words } from "./words.js";

const told = words.design;

/** What a form is called on the page. */
export function shapeName(shape) {
  return told.shapes[shape] || shape.slice(0, 1).toUpperCase() + shape.slice(1);
}

/** The row of a form; a traced rim has none. */
export function formOf({ kinds, loaf }, name = loaf.shape) {
  return kinds.forms.find((each) => each.name === name);
}

/** The forms of a loaf. */
export function shapes(design) {
  const names = design.kinds.forms.map((each) => each.name);
  const drawn = (name) => [icon(formOf(design, name).icon), shapeName(name)];
  return choices("loaf-shape", told.loafForm, names, design.loaf.shape, drawn, (form) => reform({ form }));
}

/** The common tins with the dough they take, and none of them. */
export function panField({ kinds, forms }) {
  const { pan = "" } = forms.loaf.keys;
  const option = (value, text) => h("option", { value, props: { selected: value === pan } }, text);
  const rows = kinds.pans.map((each) => option(each.name, each.title));
  const select = h("select", { id: "loaf-pan", onchange: ({ target }) => reform({ pan: target.value }) }, option("", told.ownPan), ...rows);
  return h("div", { class: "field wide" }, h("label", { for: "loaf-pan" }, told.pan), select);
}

/** Draw a form's own icon, an ornament. */
function icon(path) {
  return part("svg", { viewBox: "0 0 24 24", class: "icon", "aria-hidden": "true" }, part("path", { d: path }));
}
