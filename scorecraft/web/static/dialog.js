// Questions in the middle of the page; the browser's own dialog keeps the keyboard inside.

import { button, h, icon } from "./dom.js";
import { words } from "./words.js";

/** Ask with a few answers; gives the key of the one chosen, or null. */
export function question(title, text, answers) {
  return new Promise((done) => {
    const dialog = frame(title, () => done(null));
    const buttons = Object.entries(answers).map(([key, label], index) =>
      button(index ? "plain" : "main", () => finish(dialog, done, key), label),
    );
    dialog.append(h("p", {}, text), h("div", { class: "buttons" }, ...buttons));
    dialog.showModal();
  });
}

/**
 * Ask for a text and do something with it: `tried` gives "" when it is done, or says what is wrong
 * with the text, which is told at the field. Gives whether it was done.
 */
export function prompted({ title, label, hint, value, yes }, tried) {
  return new Promise((done) => {
    const dialog = frame(title, () => done(false));
    const wrong = h("p", { class: "fault", id: "prompted-fault", role: "alert" });
    let busy = false;
    const send = async (event) => {
      event.preventDefault();
      if (busy) return;
      busy = true;
      try {
        wrong.textContent = await tried(input.value);
      } finally {
        busy = false;
      }
      if (!wrong.textContent) return finish(dialog, done, true);
      input.setAttribute("aria-invalid", true);
      input.focus();
    };
    const input = h("input", { id: "prompted", type: "text", required: true, maxlength: 80, autocomplete: "off", "aria-describedby": "prompted-fault prompted-hint", props: { value } });
    const form = h(
      "form",
      { method: "dialog", onsubmit: send },
      h("label", { class: "field", for: "prompted" }, h("span", {}, label), input),
      wrong,
      h("p", { class: "quiet", id: "prompted-hint" }, hint),
      h("div", { class: "buttons" }, h("button", { class: "main" }, yes), button("plain", () => dialog.close(), words.cancel)),
    );
    dialog.append(form);
    dialog.showModal();
    input.select();
  });
}

/** Whether a question is on the table. */
export function isAsking() {
  return document.querySelector("dialog[open]") !== null;
}

/** Open a dialog with anything in it. */
export function frame(title, closed = () => {}) {
  const dialog = h(
    "dialog",
    { class: "dialog", "aria-labelledby": "dialog-title", onclose: () => (dialog.remove(), closed()) },
    h("h2", { id: "dialog-title" }, title),
    h("button", { type: "button", class: "quiet-button dialog-close", "aria-label": words.close, onclick: () => dialog.close() }, icon("close")),
  );
  document.body.append(dialog);
  return dialog;
}

function finish(dialog, done, answer) {
  done(answer);
  dialog.close();
}
