// The page: its head, its rooms, and the keys that work everywhere.

import { fetched, tellWhy } from "./api.js";
import { BenchRoom } from "./bench.js";
import { connection } from "./connection.js";
import { DesignRoom } from "./design.js";
import { follow } from "./designing.js";
import { frame, isAsking } from "./dialog.js";
import { save, saveAs } from "./files.js";
import { choicesOf } from "./choices.js";
import { Help, helpAt } from "./help.js";
import { helped } from "./helped.js";
import { MeasureRoom } from "./measure.js";
import { hush, tell } from "./messages.js";
import { PrintRoom } from "./print.js";
import { unsaved } from "./rescue.js";
import { ShelfRoom } from "./shelf.js";
import { store } from "./store.js";
import { choose, chosen } from "./units.js";
import { words } from "./words.js";

const ROOMS = {
  shelf: () => new ShelfRoom(() => go("design")),
  design: () => new DesignRoom(),
  print: () => new PrintRoom(),
  bench: () => new BenchRoom({ ...visit, leave: () => go("design"), measure: () => go("measure") }),
  measure: () => new MeasureRoom(),
};
const visit = { guest: false, welcome: false, help: null, stepped: false };
const rooms = new Map();
const main = document.getElementById("main");
const pageHead = document.getElementById("top");
const links = new Map();
const shown = { room: null, name: "" };

/** Go to a room by its name in the address. */
function go(name) {
  if (location.hash === `#${name}`) enter();
  else location.hash = name;
}

/** Follow the address; the room that was left for the help is as it was. */
function enter(fromHelp = false) {
  const address = location.hash.slice(1);
  const term = helpAt(address);
  if (term !== null) return enterHelp(term);
  if (visit.help) visit.help.close();
  const name = roomAt(address);
  if (!fromHelp || name !== shown.name) show(name);
}

/** The room an address stands for, as far as there is something to show in it. */
function roomAt(address) {
  if (visit.guest) return "bench";
  if (address in ROOMS && (store.text || address === "shelf")) return address;
  return store.text ? "design" : "shelf";
}

/** Lay the help over the room that is shown. */
function enterHelp(term) {
  visit.help ||= new Help({ closed: leaveHelp });
  if (!visit.help.isOpen) visit.stepped = shown.room !== null;
  if (!shown.room) show(roomAt(""));
  visit.help.open(term);
  document.title = `${words.help.title} · ${words.name}`;
}

/** The help was closed: the address goes back to the room, unless it has gone on already. */
function leaveHelp() {
  document.title = `${nameOf(shown.name)} · ${words.name}`;
  if (helpAt(location.hash.slice(1)) === null) return;
  if (visit.stepped) history.back();
  else history.replaceState(null, "", `#${shown.name}`);
}

function show(name) {
  if (!rooms.has(name)) rooms.set(name, ROOMS[name]());
  const room = rooms.get(name);
  if (main.firstElementChild !== room.element) {
    const before = [...rooms.values()].find((each) => each.element === main.firstElementChild);
    if (before && before.leave) before.leave();
    main.replaceChildren(room.element);
    scrollTo(0, 0);
  }
  const came = room !== shown.room && shown.room !== null;
  Object.assign(shown, { room, name });
  document.body.dataset.room = name;
  document.title = `${nameOf(name)} · ${words.name}`;
  for (const [each, link] of links) {
    if (each === name) link.setAttribute("aria-current", "page");
    else link.removeAttribute("aria-current");
  }
  if (room.enter) room.enter();
  if (came) catchKeyboard(room);
}

/** What a view is called in the head. */
function nameOf(room) {
  return document.querySelector(`.rooms a[href="#${room}"]`).textContent;
}

/** The keyboard stays on what is still seen, else it goes to the room's first thing or heading. */
function catchKeyboard(room) {
  const { activeElement: at } = document;
  if (at && at !== document.body && at.checkVisibility()) return;
  const next = room.first || room.element.querySelector("h1") || main;
  if (next.localName === "h1") next.tabIndex = -1;
  next.focus({ preventScroll: true });
}

/** Let the head of the page act, which a guest does not see. */
function head() {
  const [undo, redo, keep, keepAs, gear] = ["undo", "redo", "save", "save-as", "gear"].map((id) => document.getElementById(id));
  const [name, dot] = ["file-name", "file-dot"].map((id) => document.getElementById(id));
  const acts = new Map([[undo, () => store.step(-1)], [redo, () => store.step(1)], [keep, save], [keepAs, saveAs], [gear, settings]]);
  for (const [each, act] of acts) each.addEventListener("click", act);
  document.querySelector(".skip").addEventListener("click", (event) => (event.preventDefault(), main.focus()));
  const update = () => {
    undo.disabled = !store.canUndo;
    redo.disabled = !store.canRedo;
    keep.disabled = keepAs.disabled = !store.text;
    name.textContent = store.text ? store.name || words.unnamed : "";
    dot.hidden = !store.text || !store.unsaved;
  };
  for (const what of ["text", "file"]) store.on(what, update);
  update();
  for (const link of document.querySelectorAll(".rooms a")) links.set(link.hash.slice(1), link);
  pageHead.hidden = false;
}

function settings() {
  const dialog = frame(words.settings);
  dialog.append(
    choicesOf("length", words.lengths, words.lengthUnits, chosen.length, (unit) => choose("length", unit)),
    choicesOf("heat", words.heats, words.heatUnits, chosen.heat, (unit) => choose("heat", unit)),
  );
  dialog.showModal();
}

function keys(event) {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  const elsewhere = event.target instanceof HTMLInputElement && event.target.type === "text";
  if (isAsking()) return key === "s" && event.preventDefault();
  if (key === "s") event.shiftKey ? saveAs() : save();
  else if (key === "z" && !elsewhere) store.step(event.shiftKey ? 1 : -1);
  else if (key === "y" && !elsewhere) store.step(1);
  else return;
  event.preventDefault();
}

/** Find out whether bakes have taught something in this folder. */
async function learn() {
  try {
    store.learn((await fetched("/api/shelf")).baker);
  } catch (error) {
    tellWhy(error);
  }
}

/** A guest sees the bench alone; the baker everything, as it was left. */
async function begin() {
  connection.addEventListener("lost", () => tell(words.lost, { lasting: true, about: "lost" }));
  connection.addEventListener("back", () => hush("lost"));
  try {
    Object.assign(visit, await fetched("/api/guest"));
  } catch {
    visit.guest = location.hash === "#bench";
  }
  helped().catch(tellWhy); // it is there when the server is not
  addEventListener("hashchange", ({ oldURL }) => enter(helpAt(new URL(oldURL).hash.slice(1)) !== null));
  if (visit.guest) return enter();
  head();
  if (await store.recover()) {
    if (store.unsaved) tell(words.found);
  }
  if ((await unsaved()).length) tell(words.foundMore, { lasting: true, about: "unsaved" });
  learn().then(follow);
  addEventListener("keydown", keys);
  addEventListener("beforeunload", () => store.keep());
  enter();
}

begin();
