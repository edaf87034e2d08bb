// Changes made with sliders and forms: the server writes each into the text as it is at that moment.

import { ask, Lost, why } from "./api.js";
import { connection } from "./connection.js";
import { tell } from "./messages.js";
import { store } from "./store.js";
import { working } from "./working.js";

class Edits {
  constructor() {
    this.queue = [];
    this.running = null;
    store.on("text", ({ kind }) => ["open", "step"].includes(kind) && this.forget());
    connection.addEventListener("lost", () => this.forget());
  }

  /**
   * Make a change: `{knob, value}`, `{word, keys}`, or of the loaf's `{form}`, `{pan}` or what it
   * is sized `{by}`. Of changes of one `kind` that wait, the newest is made. `refused` hears in
   * words why a change cannot be made; `step` names its step of undo.
   */
  make(kind, change, refused = say, step = kind) {
    const waiting = this.queue.slice(1).find((each) => each.kind === kind);
    if (waiting) Object.assign(waiting, { change, refused, step });
    else this.queue.push({ kind, change, refused, step });
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
      const answer = await ask(change.word || change.knob ? "/api/edit" : "/api/reform", { ...store.asked, ...change });
      if (this.queue[0] !== edit || answer.asked !== store.stamp) return;
      this.queue.shift();
      if (answer.ok) store.write(answer.text, edit.step);
      else this.refuse(refused, answer.problems[0]);
    } catch (error) {
      if (error instanceof Lost) return this.forget();
      if (this.queue[0] === edit) this.queue.shift();
      if (!error.status) throw error;
      this.refuse(refused, error);
    }
  }

  refuse(refused, error) {
    refused(why(error));
    if (refused === say) store.say("unmoved");
  }
}

function say(text) {
  tell(text, { lasting: true, about: "edit" });
}

export const edits = new Edits();

/** Change keys of a header line. */
export function change(word, keys, refused) {
  edits.make(`${word} ${Object.keys(keys)[0]}`, { word, keys }, refused);
}

/** Give the loaf another form, tin, or way to be sized. */
export function reform(wish) {
  edits.make("loaf size", wish);
}
