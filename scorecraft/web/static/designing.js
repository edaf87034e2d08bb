// Keeps the design in step with the text: asks the server, takes what it says, tells the rooms.

import { Latest } from "./api.js";
import { connection } from "./connection.js";
import { later } from "./dom.js";
import { store } from "./store.js";
import { working } from "./working.js";

const SLIDING_MS = 15;
const TYPING_MS = 180;

const asking = new Latest("/api/design", answered, failed);
const seeing = new Latest("/api/sight", saw, look, Infinity);
const soon = later(() => look(), TYPING_MS);
let busy = false;

function look() {
  wait(true);
  asking.ask(store.asked);
}

/** The picture comes before the rest where a hand waits for it. */
function saw(answer) {
  if (answer.ok && answer.asked === store.stamp) store.say("sight", answer);
  look();
}

function answered(answer) {
  wait(asking.running !== null);
  store.take(answer);
}

function failed(error, { asked }) {
  wait(asking.running !== null);
  if (error.status) store.take({ ok: false, asked, problems: [{ message: error.message, hint: error.hint }] });
}

function wait(yes) {
  if (yes === busy) return;
  busy = yes;
  if (yes) working.begin();
  else working.end();
}

/** Follow the text from now on. */
export function follow() {
  store.on("text", ({ kind }) => (kind.startsWith("hand ") ? seeing.ask(store.asked) : soon(kind === "typing" ? TYPING_MS : SLIDING_MS)));
  connection.addEventListener("back", () => store.text && look());
  if (store.text) soon(0);
}
