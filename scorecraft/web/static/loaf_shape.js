// The forms of a loaf as buttons, and the tin of one that bakes in it: rows of the server's tables.

import { choices } from "./choices.js";
import { h, part } from "./dom.js";
import { change } from "./edits.js";
import { words } from "./words.js";

const told = words.design;
const AREA = [30000, 45000]; // mm²: another form covers as much of the bench, if that is usual
const PAN = "two_pound"; // a household's tin

/** What a form is called on the page. */
export function shapeName(shape) {
  return told.shapes[shape] || shape.slice(0, 1).toUpperCase() + shape.slice(1);
}

/** The row of a form; a traced rim has none. */
export function formOf({ kinds, loaf }, name = loaf.shape) {
  return kinds.forms.find((each) => each.name === name);
}

/** The forms of a loaf; another one has its usual length, and about as much dough. */
export function shapes(design) {
  const names = design.kinds.forms.map((each) => each.name);
  const drawn = (name) => [icon(formOf(design, name).icon), shapeName(name)];
  return choices("loaf-shape", told.loafForm, names, design.loaf.shape, drawn, (next) => change("loaf", (now) => changed(now, next)));
}

function changed(design, next) {
  const to = formOf(design, next);
  const from = formOf(design);
  const keys = (design.forms.loaf && design.forms.loaf.keys) || {};
  const bare = { shape: next, length: "", hole: "", pan: "", taper: "" };
  if (keys.dough) return to.dough_g ? { ...bare, dough: `${to.dough_g[1]}g`, basket: "", by: "" } : bare;
  if (to.dough_g) return { ...bare, width: "", height: "" };
  if (to.held) return { ...bare, width: "", height: "", pan: PAN };
  const alike = from && from.stands === to.stands && keys.width;
  const area = Math.min(Math.max(design.loaf.width_mm * design.loaf.length_mm, AREA[0]), AREA[1]);
  const width = alike ? design.loaf.width_mm : Math.round(Math.sqrt(area / to.longer) / 5) * 5;
  const length = to.even || to.longer === 1 ? "" : `${Math.round(width * to.longer)}mm`;
  return { ...bare, length, ...(alike ? {} : { width: `${width}mm`, height: "" }) };
}

/** The common tins with the dough they take, and none of them. */
export function panField({ kinds, forms }) {
  const { pan = "" } = forms.loaf.keys;
  const option = (value, text) => h("option", { value, props: { selected: value === pan } }, text);
  const rows = kinds.pans.map((each) => option(each.name, told.panTakes(each.says.replace(/^an? /, ""), ...each.dough_g)));
  const pick = ({ target: { value } }) => change("loaf", ({ loaf }) => (value ? { pan: value, width: "", length: "", height: "" } : sized(loaf)));
  const sized = (loaf) => ({ pan: "", width: mm(loaf.width_mm), length: mm(loaf.length_mm), height: mm(loaf.height_mm) });
  const select = h("select", { id: "loaf-pan", onchange: pick }, option("", told.ownPan), ...rows);
  return h("div", { class: "field wide" }, h("label", { for: "loaf-pan" }, told.pan), select);
}

function mm(size) {
  return `${Math.round(size)}mm`;
}

/** Draw a form's own icon, an ornament. */
function icon(path) {
  return part("svg", { viewBox: "0 0 24 24", class: "icon", "aria-hidden": "true" }, part("path", { d: path }));
}
