// What the hand asks the server: what there is to take, what is picked, and each gesture in its turn.

import { ask, Latest, Lost, tellWhy } from "../api.js";
import { question } from "../dialog.js";
import { hush, tell } from "../messages.js";
import { store } from "../store.js";
import { words } from "../words.js";

const told = words.hand;

export class Talk {
  /** `looked` and `picked` hear answers, `made` of a gesture that was written, `failed` of one that was not. */
  constructor({ looked, picked, made, failed }) {
    Object.assign(this, { looked, picked, made, failed });
    this.queue = [];
    this.running = null;
    this.mark = { stamp: "", mark: "" };
    this.looks = this.latest("look", () => this.looked);
    this.picks = this.latest("pick", () => this.picked);
    this.previews = new Latest("/api/hand/do", (answer) => answer.ok && answer.asked === store.stamp && this.shown(answer.lines), (error) => this.missed(error), Infinity);
    store.on("text", ({ kind }) => kind === "open" && (this.queue = []));
  }

  latest(what, heard) {
    const take = (answer) => {
      if (answer.asked !== store.stamp || !answer.ok) return;
      this.mark = { stamp: answer.asked, mark: answer.mark };
      heard()(answer);
    };
    return new Latest(`/api/hand/${what}`, take, (error) => this.missed(error), Infinity);
  }

  look() {
    this.looks.ask(store.asked);
  }

  pick({ statement, copy }) {
    this.picks.ask({ ...store.asked, statement, copy });
  }

  missed(error) {
    if (!(error instanceof Lost)) tellWhy(error, "hand");
  }

  /** Ask for the lines that a gesture makes while it goes on; `shown` hears of the newest. */
  preview(gesture, shown) {
    if (this.mark.stamp !== store.stamp) return;
    this.shown = shown;
    this.previews.ask({ ...store.asked, mark: this.mark.mark, preview: true, gesture });
  }

  /**
   * Make a gesture: `worked` gives it at its turn. It is about the text it began on; what is written
   * meanwhile drops it, with a word. `step` names its step of undo, `about` is the selection it is about.
   */
  make(worked, step, about) {
    const stamp = this.queue.length ? this.queue.at(-1).stamp : store.stamp;
    this.queue.push({ worked, stamp, step, about });
    this.running ||= this.run().finally(() => (this.running = null));
  }

  async run() {
    while (this.queue.length) await this.one(this.queue[0]);
  }

  async one(next) {
    try {
      const mark = await this.markOf(next.stamp);
      if (next.stamp !== store.stamp || mark === null) return this.refuse({ message: told.dropped });
      const gesture = next.worked();
      const answer = await ask("/api/hand/do", { ...store.asked, mark, gesture });
      if (this.queue[0] !== next) return;
      if (answer.dropped || answer.asked !== store.stamp) return this.refuse({ message: told.dropped });
      if (!answer.ok && answer.ways && answer.ways.length) return await this.askWay(next, gesture, answer);
      this.queue.shift();
      if (answer.ok) this.take(answer, next);
      else this.refuse(answer.problems[0]);
    } catch (error) {
      if (error instanceof Lost) return this.stop();
      if (!error.status) throw error;
      this.refuse(error);
    }
  }

  /** The mark of the text as it is; null where it cannot be read. */
  async markOf(stamp) {
    if (this.mark.stamp === stamp) return this.mark.mark;
    const answer = await ask("/api/hand/look", store.asked);
    if (!answer.ok || answer.asked !== stamp) return null;
    this.mark = { stamp, mark: answer.mark };
    return answer.mark;
  }

  take(answer, { step, about }) {
    hush("hand");
    this.made(answer, about);
    store.write(answer.text, `hand ${step}`);
    this.mark = { stamp: store.stamp, mark: answer.mark };
    for (const each of this.queue) each.stamp = store.stamp;
  }

  /** A value that is worked out, or shared, changes only in a way that the baker chooses. */
  async askWay(next, gesture, { ways, problems: [{ message, hint }] }) {
    const answers = Object.fromEntries(ways.map(({ way, said }) => [way, said]));
    const way = await question(message, hint || told.chooseWay, { ...answers, "": words.cancel });
    if (this.queue[0] !== next) return;
    if (way) next.worked = () => ({ ...gesture, way });
    else this.stop();
  }

  stop() {
    this.queue = [];
    this.failed();
  }

  refuse({ message, hint }) {
    this.stop();
    tell([message, hint].filter(Boolean).join(". "), { lasting: true, about: "hand" });
  }
}
