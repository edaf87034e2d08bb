// Keeps the design in step with the text: asks the server, drops what is stale, tells the rooms.

import { Latest } from "./api.js";
import { later, tell } from "./dom.js";
import { store } from "./store.js";
import { words } from "./words.js";

const SLIDING_MS = 15;
const TYPING_MS = 180;

const asking = new Latest("/api/design", answered, failed);
const soon = later(() => asking.ask(store.asked), TYPING_MS);

function answered(answer) {
  if (answer.ok) {
    store.design = answer;
    store.problems = [];
    store.say("design");
  } else {
    store.problems = answer.problems;
    store.say("problems");
  }
}

function failed(error) {
  if (error.status) {
    answered({ ok: false, problems: [{ message: error.message, hint: error.hint }] });
  } else tell(words.lost, { lasting: true });
}

/** Follow the text from now on. */
export function follow() {
  store.on("text", ({ kind }) => soon(kind === "typing" ? TYPING_MS : SLIDING_MS));
  if (store.text) soon(0);
}
