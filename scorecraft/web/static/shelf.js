// The shelf: every shipped pattern as a picture, and the baker's own.

import { fetched, tellWhy } from "./api.js";
import { button, h, icon, refill } from "./dom.js";
import { fresh, open } from "./files.js";
import { store } from "./store.js";
import { words } from "./words.js";

const told = words.shelf;

export class ShelfRoom {
  /** `opened` is called when a pattern was opened. */
  constructor(opened) {
    this.opened = opened;
    this.own = h("div", { class: "cards" });
    this.shipped = h("div", { class: "cards" });
    this.path = h("p", { class: "quiet path" });
    this.element = h(
      "div",
      { class: "shelf room" },
      h("div", { class: "room-head" }, h("h1", {}, told.title), h("p", { class: "lead" }, told.lead)),
      h("section", { "aria-labelledby": "own" }, h("h2", { id: "own" }, told.own), this.path, this.own),
      h("section", { "aria-labelledby": "shipped" }, h("h2", { id: "shipped" }, told.shipped), this.shipped),
    );
    store.on("file", () => this.enter());
  }

  /** List anew: files may have come and gone. */
  async enter() {
    try {
      const { shelf, folder, path } = await fetched("/api/shelf");
      this.path.textContent = path;
      refill(this.shipped, ...shelf.map((entry) => this.card(entry, "shelf")));
      refill(this.own, this.freshCard(), ...folder.map((entry) => this.card(entry, "folder")));
    } catch (error) {
      tellWhy(error);
    }
  }

  card(entry, place) {
    const address = `/picture/${place}/${encodeURIComponent(entry.name)}?${Date.now()}`;
    const picture = entry.problem
      ? h("span", { class: "no-picture" }, icon("warn"))
      : h("img", { src: address, alt: "", loading: "lazy", width: 200, height: 200 });
    const about = entry.problem ? `${told.broken}: ${entry.problem}` : words.design.shapes[entry.shape] || entry.shape;
    return h(
      "button",
      { type: "button", id: `${place}/${entry.name}`, class: "card", "aria-label": told.open(entry.title), onclick: () => this.open(place, entry.name) },
      picture,
      h("span", { class: "card-title" }, entry.title),
      h("span", { class: "card-about" }, about),
    );
  }

  freshCard() {
    return button(
      "card fresh",
      async () => (await fresh()) && this.opened(),
      h("span", { class: "no-picture" }, icon("plus")),
      h("span", { class: "card-title" }, told.fresh),
    );
  }

  async open(place, name) {
    try {
      if (await open(place, name)) this.opened();
    } catch (error) {
      tellWhy(error);
    }
  }
}
