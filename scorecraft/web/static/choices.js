// Boxes to tick, and a few choices of which one holds.

import { h } from "./dom.js";

/** A box to tick. */
export function check(id, label, checked, changed) {
  const box = h("input", { id, type: "checkbox", props: { checked }, onchange: () => changed(box.checked) });
  return h("label", { class: "check", for: id }, box, label);
}

/** Choices of which one holds: the keys of a table, called as it calls them. */
export function choicesOf(name, label, table, chosen, picked) {
  return choices(name, label, Object.keys(table), chosen, (each) => table[each], picked);
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
