// Work that is kept in this browser, one entry for each file in each tab, so that none is lost.

import { kept } from "./dom.js";
import { hush, tell } from "./messages.js";
import { words } from "./words.js";

const WORK = "scorecraft.work.";
const HERE = "scorecraft.here";
const MOST = 20;
let release = null;

/** Make the name of a piece of work. */
export function newId() {
  return Date.now().toString(36) + Math.random().toString(36).slice(2, 10);
}

/** This tab works on a piece of work: it is not offered to others while the tab lives. */
export function hold(id) {
  sessionStorage.setItem(HERE, id);
  if (release) release();
  const held = new Promise((done) => (release = done));
  if (navigator.locks) navigator.locks.request(WORK + id, () => held);
}

/** Keep a piece of work; where the browser has no room the user is told. */
export function put(id, work) {
  try {
    localStorage.setItem(WORK + id, JSON.stringify(work));
    hush("rescue");
  } catch (error) {
    if (error.name !== "QuotaExceededError") throw error;
    tell(words.noRoom, { lasting: true, about: "rescue" });
  }
}

export function discard(id) {
  localStorage.removeItem(WORK + id);
}

/** Work with changes that no open tab has, the newest first. */
export async function unsaved() {
  return (await loose()).filter((work) => work.text !== work.saved);
}

/** What this tab goes on with: its own work after a reload, else the newest that no tab has. */
export async function lastWork() {
  const found = await loose();
  const here = sessionStorage.getItem(HERE);
  const mine = found.find((work) => work.id === here) || found[0] || null;
  const [changed, same] = [[], []];
  for (const work of found) if (work !== mine) (work.text === work.saved ? same : changed).push(work);
  for (const work of [...same, ...changed.slice(MOST)]) discard(work.id);
  return mine;
}

async function loose() {
  const locks = navigator.locks ? (await navigator.locks.query()).held : [];
  const held = new Set(locks.map((lock) => lock.name));
  return Object.keys(localStorage)
    .filter((key) => key.startsWith(WORK) && !held.has(key))
    .map((key) => ({ ...kept(key), id: key.slice(WORK.length) }))
    .filter((work) => work.text)
    .sort((one, other) => other.time - one.time);
}
