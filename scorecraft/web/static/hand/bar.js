// Below the loaf: the tray of figures, or what can be done with the one that is picked.

import { button, h, iconButton, named, part } from "../dom.js";
import { said } from "../units.js";
import { words } from "../words.js";
import { draggable } from "./holds.js";
import { Stepper } from "./stepper.js";

const told = words.hand;
const TILE_MM = 8;

export class Bar {
  constructor(hand) {
    this.hand = hand;
    this.tray = h("div", { class: "tray", role: "group", "aria-label": told.tray, onwheel: ({ deltaY }) => (this.tray.scrollLeft += deltaY) });
    this.trail = h("nav", { class: "trail", "aria-label": told.trail });
    this.chips = h("div", { class: "chips", role: "group", "aria-label": told.chipsLabel });
    this.stepper = new Stepper((gesture, step) => hand.make(gesture, step));
    this.pickedFace = h("div", { class: "picked", hidden: true }, this.trail, this.chips, this.stepper.element);
    this.drawing = this.drawingFace();
    this.element = h("div", { class: "hand-bar" }, this.tray, this.pickedFace, this.drawing);
    this.tiles = new Map();
  }

  /** Fill the tray. */
  fill(figures) {
    const free = this.tile("stroke", told.freeStroke, strokePicture(), () => this.hand.choose("stroke"));
    const tiles = figures.map((figure) => this.figureTile(figure));
    this.tray.replaceChildren(free, ...tiles);
  }

  figureTile(figure) {
    const [x, y, wide, high] = figure.box;
    const side = Math.max(wide, high) + 2 * TILE_MM;
    const box = [x + wide / 2 - side / 2, y + high / 2 - side / 2, side, side].join(" ");
    const picture = part("svg", { viewBox: box, "aria-hidden": "true" }, part("path", { d: figure.path, "vector-effect": "non-scaling-stroke" }));
    const tile = this.tile(figure.word, figure.title, picture, (event) => {
      if (tile.dataset.dragged) return;
      if (event.detail === 0) this.hand.lay(figure, [0, 0]); // with the keyboard there is no place to point at
      else this.hand.choose(figure.word, figure);
    });
    tile.title = figure.help;
    draggable(tile, (event) => this.hand.carry(figure, event));
    return tile;
  }

  tile(name, label, picture, onclick) {
    const tile = button("tile", onclick, picture, h("span", {}, label));
    tile.setAttribute("aria-pressed", "false");
    this.tiles.set(name, tile);
    return tile;
  }

  drawingFace() {
    this.times = h("output", { class: "times" });
    const less = named(button("plain round", () => this.hand.repeated(-1), "−"), told.fewer);
    const more = named(button("plain round", () => this.hand.repeated(1), "+"), told.more);
    return h("div", { class: "drawing", hidden: true }, h("p", {}, told.drawHint), h("div", { class: "buttons", role: "group", "aria-label": told.repeat }, h("span", {}, told.repeat), less, this.times, more, button("main", () => this.hand.choose(null), told.done)));
  }

  /** Show which tool is in the hand, and what is picked. */
  show({ tool, repeat, picked }) {
    this.drawing.hidden = tool !== "stroke";
    this.pickedFace.hidden = !picked || tool !== null;
    this.tray.hidden = !this.drawing.hidden || !this.pickedFace.hidden;
    this.times.textContent = repeat === 1 ? told.once : `× ${repeat}`;
    for (const [name, tile] of this.tiles) tile.setAttribute("aria-pressed", String(name === tool));
    if (!this.pickedFace.hidden) this.showPicked(picked);
    else this.stepper.close();
  }

  /** Whether the bar can be used at all. */
  able(yes) {
    for (const tile of this.tiles.values()) tile.disabled = !yes;
  }

  /** What is shown already stays: a button that is replaced under a finger would not hear of its tap. */
  showPicked(picked) {
    const shown = JSON.stringify([picked.statement, picked.copy, picked.trail, picked.chips]);
    if (shown === this.shown) return this.stepper.follow(picked.chips);
    this.shown = shown;
    const steps = picked.trail.map(({ id, said: name }, at) => {
      const last = at === picked.trail.length - 1;
      const step = button("trail-step", () => this.hand.pick({ statement: id, copy: last ? picked.copy : 0 }), name);
      if (id === picked.statement) step.setAttribute("aria-current", "true");
      return step;
    });
    const leave = iconButton("close", told.leave, () => this.hand.pick(null));
    const show = button("chip", () => this.hand.showText(picked.statement), told.chips.show);
    const exact = button("chip exact-open", () => this.hand.form(), told.exact);
    this.trail.replaceChildren(...steps.flatMap((step, at) => (at ? [h("span", { "aria-hidden": "true" }, "›"), step] : [step])), leave);
    const focused = this.chips.contains(document.activeElement) ? document.activeElement.dataset.chip : null;
    this.chips.replaceChildren(...picked.chips.filter(({ name }) => name !== "show").map((chip) => this.chip(chip)), exact, show);
    if (focused) this.chips.querySelector(`[data-chip=${focused}]`)?.focus();
    this.stepper.follow(picked.chips);
  }

  chip(chip) {
    const { name, value, locked } = chip;
    const shown = button("chip", () => this.press(chip, shown), told.chips[name] || name, this.valueOf(name, value));
    shown.dataset.chip = name;
    if (locked) {
      shown.setAttribute("aria-disabled", "true");
      shown.title = locked;
    }
    if (name === "mirror") shown.setAttribute("aria-pressed", String(value === true));
    if (name === "delete") shown.classList.add("grave");
    return shown;
  }

  valueOf(name, value) {
    if (name === "repeat") return value > 1 ? h("b", {}, `× ${value}`) : null;
    return typeof value === "string" && value ? h("b", {}, said(spaced(value))) : null;
  }

  press(chip, from) {
    if (chip.locked) return this.hand.say(said(chip.locked));
    if (chip.steps) return this.stepper.open(chip, from);
    this.hand.make({ kind: chip.name });
  }
}

function strokePicture() {
  return part("svg", { viewBox: "0 0 40 40", "aria-hidden": "true" }, part("path", { d: "M7 31C13 12 17 33 22 20S29 10 33 8", "vector-effect": "non-scaling-stroke" }));
}

/** Put a space between a number and its unit. */
export function spaced(value) {
  return String(value).replace(/(\d)(mm|cm|in)\b/g, "$1 $2").replace(/(\d)deg\b/g, "$1°");
}
