// Changes made with sliders and forms: the server writes each into the text as it is at that moment.

import { ask, Lost, Refused } from "./api.js";
import { connection } from "./connection.js";
import { tell } from "./messages.js";
import { store } from "./store.js";
import { words } from "./words.js";
import { working } from "./working.js";

class Edits {
  constructor() {
    this.queue = [];
    this.running = null;
    store.on("text", ({ kind }) => ["open", "step"].includes(kind) && this.forget());
    connection.addEventListener("lost", () => this.forget());
  }

  /**
   * Make a change: `{knob, value}` or `{word, keys}`, or a function that gives one from the design
   * of the text as it is then. Of changes of one `kind` that wait, the newest is made. `refused`
   * hears in words why a change cannot be made.
   */
  make(kind, change, refused = say) {
    const waiting = this.queue.slice(1).find((each) => each.kind === kind);
    if (waiting) Object.assign(waiting, { change, refused });
    else this.queue.push({ kind, change, refused });
    this.running ||= this.run().finally(() => (this.running = null));
  }

  get pending() {
    return this.queue.length > 0;
  }

  /** Wait until every change is in the text. */
  async settled() {
    await this.running;
  }

  forget() {
    if (!this.pending) return;
    this.queue = [];
    store.say("unmoved");
  }

  async run() {
    working.begin();
    try {
      while (this.pending) await this.one(this.queue[0]);
    } finally {
      working.end();
    }
  }

  /** Make the first change; where the text went on meanwhile, it is made in that one instead. */
  async one(edit) {
    const { change, refused } = edit;
    try {
      const made = typeof change === "function" ? await this.worked(change) : change;
      const answer = await ask("/api/edit", { ...store.asked, ...made });
      if (this.queue[0] !== edit || answer.asked !== store.stamp) return;
      this.queue.shift();
      if (answer.ok) store.write(answer.text, edit.kind);
      else this.refuse(refused, answer.problems[0]);
    } catch (error) {
      if (error instanceof Lost) return this.forget();
      if (this.queue[0] === edit) this.queue.shift();
      if (!error.status) throw error;
      this.refuse(refused, error);
    }
  }

  /** Work a change out from the design of the text as it is, once that is there. */
  async worked(change) {
    while (!store.current && this.pending) {
      if (store.answered === store.stamp) throw new Refused({ message: words.design.fixFirst }, 200);
      await once(["design", "problems", "unmoved"]);
    }
    return change(store.design);
  }

  refuse(refused, { message, hint }) {
    refused([message, hint].filter(Boolean).join(". "));
    if (refused === say) store.say("unmoved");
  }
}

function say(text) {
  tell(text, { lasting: true, about: "edit" });
}

/** Wait until the store says one of these. */
function once(whats) {
  return new Promise((done) => whats.forEach((what) => store.addEventListener(what, done, { once: true })));
}

export const edits = new Edits();

/** Change keys of a header line: given, or worked out from the design of the text as it is then. */
export function change(word, keys, refused) {
  const made = typeof keys === "function" ? (design) => ({ word, keys: keys(design) }) : { word, keys };
  const what = typeof keys === "function" ? "size" : Object.keys(keys)[0];
  edits.make(`${word} ${what}`, made, refused);
}
