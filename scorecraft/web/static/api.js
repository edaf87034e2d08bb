// Talking to the server: JSON there and back, one question of a kind at a time.

import { connection } from "./connection.js";
import { tell } from "./messages.js";

/** Which page asks: the server drops an older question of it when a newer one of the kind comes. */
const PAGE = Math.random().toString(36).slice(2);

/** What the server refuses, in the user's words. */
export class Refused extends Error {
  constructor(told, status, data) {
    super(told.message);
    this.hint = told.hint || "";
    this.status = status;
    this.data = data;
  }
}

/** Nothing came back: the server is away, which the page tells of by itself. */
export class Lost extends Error {}

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
  return read(await reached(path, {}));
}

/** Data that is fetched again and again: null where it is what it was the last time. */
export class Watched {
  constructor(path) {
    this.path = path;
    this.mark = null;
  }

  async fetch() {
    const headers = this.mark ? { "If-None-Match": this.mark } : {};
    const answer = await reached(this.path, { cache: "no-store", headers });
    if (answer.status === 304) return null;
    const data = await read(answer);
    this.mark = answer.headers.get("ETag");
    return data;
  }
}

function post(path, data, signal) {
  return reached(path, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify({ page: PAGE, ...data }),
    signal,
  });
}

/** Ask, and note whether the server is there. */
async function reached(path, options) {
  try {
    const answer = await fetch(path, { credentials: "same-origin", ...options });
    connection.heard();
    return answer;
  } catch (error) {
    throw missed(error);
  }
}

async function read(answer) {
  let data;
  try {
    data = await answer.json();
  } catch (error) {
    throw missed(error); // it stopped in the middle
  }
  if (!answer.ok) throw new Refused(data.error || { message: answer.statusText }, answer.status, data);
  return data;
}

function missed(error) {
  if (error.name === "AbortError") return error;
  connection.missed();
  return new Lost(error.message, { cause: error });
}

const PATIENCE_MS = 3000;

/**
 * Ask the same question again and again, each time with the newest data.
 *
 * One question is on its way at a time; while it is, only the newest one waits. A question that
 * takes too long is given up for the one that waits, each time with twice the patience until an
 * answer comes: so a slow server gives pictures, and a runaway pattern does not hold up the next.
 */
export class Latest {
  constructor(path, answered, failed, patience = PATIENCE_MS) {
    Object.assign(this, { path, answered, failed, patience, least: patience });
    this.waiting = null;
    this.running = null;
  }

  ask(data) {
    this.waiting = data;
    if (!this.running) this.go();
    else this.hurry(this.running);
  }

  /** Forget what is on its way. */
  drop() {
    this.waiting = null;
    if (this.running) this.running.control.abort();
  }

  hurry(running) {
    if (running.timer || this.patience === Infinity) return;
    const left = running.since + this.patience - performance.now();
    running.timer = setTimeout(() => {
      this.patience *= 2;
      running.control.abort();
    }, Math.max(0, left));
  }

  async go() {
    const data = this.waiting;
    const running = { control: new AbortController(), since: performance.now(), timer: 0 };
    const { signal } = running.control;
    this.waiting = null;
    this.running = running;
    const told = await ask(this.path, data, signal).then(
      (answer) => () => answer.dropped || this.answered(answer, data),
      (error) => () => this.failed(error, data),
    );
    clearTimeout(running.timer);
    this.running = null;
    if (!signal.aborted) this.patience = Math.max(this.least, 2 * (performance.now() - running.since));
    if (this.waiting) this.go();
    if (!signal.aborted) told();
  }
}

/** What was refused and the way out, as sentences. */
export function why({ message, hint }) {
  return [message, hint].map((text) => text && `${text[0].toUpperCase()}${text.slice(1)}.`).filter(Boolean).join(" ");
}

/** Tell in the user's words why something did not work; a server that is away is told of anyway. */
export function tellWhy(error, about = "") {
  if (error instanceof Lost) return;
  if (!error.status) throw error;
  tell(why(error), { lasting: true, about });
}
