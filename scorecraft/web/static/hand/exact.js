// The small form with the exact numbers of what is picked; what was changed is one gesture.

import { frame } from "../dialog.js";
import { button, h } from "../dom.js";
import { words } from "../words.js";

const told = words.hand;

/** Ask for exact numbers; `done` hears of the keys that changed, with their values as written. */
export function exactForm(title, rows, done) {
  const dialog = frame(title);
  const fields = rows.map((row) => ({ row, ...field(row) }));
  const send = (event) => {
    event.preventDefault();
    const changed = fields.filter(({ row, input }) => input.value.trim() !== row.value);
    dialog.close();
    if (changed.length) done(changed.map(({ row, input }) => ({ key: row.key, value: input.value.trim() })));
  };
  const form = h(
    "form",
    { class: "exact", onsubmit: send },
    ...fields.filter(({ row }) => row.value).map(({ element }) => element),
    h("details", {}, h("summary", {}, told.others), ...fields.filter(({ row }) => !row.value).map(({ element }) => element)),
    h("div", { class: "buttons" }, h("button", { class: "main" }, told.apply), button("plain", () => dialog.close(), words.cancel)),
  );
  dialog.append(form);
  dialog.showModal();
  if (fields.length) fields[0].input.focus();
}

function field({ key, said, value, choices, help }) {
  const id = `exact-${key}`;
  const attributes = { id, "aria-describedby": `${id}-help`, props: { value } };
  const input = choices && choices.length
    ? h("select", attributes, ...["", ...choices].map((each) => h("option", { value: each, selected: each === value }, each)))
    : h("input", { ...attributes, type: "text", autocomplete: "off", spellcheck: "false", autocapitalize: "off" });
  return { input, element: h("div", { class: "field" }, h("label", { for: id }, said), input, h("small", { id: `${id}-help` }, help || "")) };
}
