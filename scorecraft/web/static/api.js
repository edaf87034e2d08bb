// Talking to the server: JSON there and back; answers that came too late are dropped.

import { tell } from "./dom.js";
import { words } from "./words.js";

/** What the server refuses, in the user's words. */
export class Refused extends Error {
  constructor(told, status, data) {
    super(told.message);
    this.hint = told.hint || "";
    this.status = status;
    this.data = data;
  }
}

/** Ask with data and get data. */
export async function ask(path, data = {}, signal = undefined) {
  return read(await post(path, data, signal));
}

/** Ask with data and get a file: its name and content. */
export async function askFile(path, data) {
  const answer = await post(path, data);
  const type = answer.headers.get("Content-Type") || "";
  if (!answer.ok || type.startsWith("application/json")) return { problem: await read(answer) };
  return { name: fileName(answer.headers.get("Content-Disposition") || ""), content: await answer.blob() };
}

/** The name of a file that is sent: in any script where there is one, else in ASCII (RFC 6266). */
function fileName(disposition) {
  const full = /filename\*=UTF-8''([^;\s]+)/i.exec(disposition);
  if (full) return decodeURIComponent(full[1]);
  const plain = /filename=(?:"([^"]*)"|([^;\s]+))/.exec(disposition);
  return plain ? plain[1] || plain[2] : "print";
}

/** Fetch data that needs no question. */
export async function fetched(path) {
  return read(await fetch(path, { credentials: "same-origin" }));
}

function post(path, data, signal) {
  return fetch(path, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(data),
    credentials: "same-origin",
    signal,
  });
}

async function read(answer) {
  const data = await answer.json();
  if (!answer.ok) throw new Refused(data.error || { message: answer.statusText }, answer.status, data);
  return data;
}

/**
 * Ask the same question again and again, each time with the newest data.
 *
 * One question is on its way at a time. While it is, only the newest one waits; a question that
 * takes too long is given up for it. So answers come in order and none overwrites a newer one.
 */
export class Latest {
  constructor(path, answered, failed, patience = 700) {
    Object.assign(this, { path, answered, failed, patience });
    this.waiting = null;
    this.running = null;
  }

  ask(data) {
    this.waiting = data;
    if (!this.running) this.go();
    else if (performance.now() - this.running.since > this.patience) this.running.control.abort();
  }

  /** Forget what is on its way. */
  drop() {
    this.waiting = null;
    if (this.running) this.running.control.abort();
  }

  async go() {
    const data = this.waiting;
    const control = new AbortController();
    this.waiting = null;
    this.running = { control, since: performance.now() };
    try {
      const answer = await ask(this.path, data, control.signal);
      if (!control.signal.aborted) this.answered(answer, data);
    } catch (error) {
      if (!control.signal.aborted) this.failed(error);
    } finally {
      this.running = null;
      if (this.waiting) this.go();
    }
  }
}

/** Tell in the user's words why something did not work. */
export function tellWhy(error) {
  tell(error.status ? `${error.message}. ${error.hint || ""}` : words.lost, { lasting: true });
}
