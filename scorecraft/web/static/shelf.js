// The shelf: every shipped pattern as a picture, and the baker's own.

import { fetched, tellWhy } from "./api.js";
import { question } from "./dialog.js";
import { button, h, icon, refill } from "./dom.js";
import { fresh, open } from "./files.js";
import { hush } from "./messages.js";
import { discard, unsaved } from "./rescue.js";
import { store } from "./store.js";
import { words } from "./words.js";

const told = words.shelf;

export class ShelfRoom {
  /** `opened` is called when a pattern was opened. */
  constructor(opened) {
    this.opened = opened;
    this.own = h("div", { class: "cards" });
    this.rescued = h("ul", { class: "rescued" });
    this.rescue = h("section", { "aria-labelledby": "rescued", hidden: true }, h("h2", { id: "rescued" }, told.rescued), h("p", { class: "quiet" }, told.rescuedHint), this.rescued);
    this.shipped = h("div", { class: "forms" });
    this.path = h("p", { class: "quiet path" });
    this.element = h(
      "div",
      { class: "shelf room" },
      h("div", { class: "room-head" }, h("h1", {}, told.title), h("p", { class: "lead" }, told.lead)),
      this.rescue,
      h("section", { "aria-labelledby": "own" }, h("h2", { id: "own" }, told.own), this.path, this.own),
      h("section", { "aria-labelledby": "shipped" }, h("h2", { id: "shipped" }, told.shipped), this.shipped),
    );
    store.on("file", () => this.enter());
  }

  /** List anew: files may have come and gone. */
  async enter() {
    await this.showRescued();
    try {
      const { shelf, folder, path } = await fetched("/api/shelf");
      this.path.textContent = path;
      refill(this.shipped, ...this.byForm(shelf));
      refill(this.own, this.freshCard(), ...folder.map((entry) => this.card(entry, "folder")));
    } catch (error) {
      tellWhy(error);
    }
  }

  /** The cards of each form of loaf under its name. */
  byForm(shelf) {
    const forms = [...new Set(shelf.map((entry) => entry.shape))];
    return forms.map((form) => {
      const cards = shelf.filter((entry) => entry.shape === form).map((entry) => this.card(entry, "shelf"));
      return h("section", { class: "form", "aria-label": told.form(shapeOf(form)) }, h("h3", {}, shapeOf(form)), h("div", { class: "cards" }, ...cards));
    });
  }

  /** List the work that was not saved and that no open tab has. */
  async showRescued() {
    const found = await unsaved();
    hush("unsaved");
    this.rescue.hidden = found.length === 0;
    this.rescued.replaceChildren(...found.map((work) => this.rescuedRow(work)));
  }

  rescuedRow(work) {
    const name = `${work.name || words.unnamed}, ${when(work.time)}`;
    const restore = () => (store.restore(work), this.opened());
    const drop = async () => {
      if ((await question(told.discardTitle, told.discardAsk(name), { yes: told.discard, no: told.keepIt })) !== "yes") return;
      discard(work.id);
      this.showRescued();
    };
    return h(
      "li",
      {},
      h("span", { class: "rescued-name" }, name),
      h("button", { type: "button", class: "main", "aria-label": told.restoreNamed(name), onclick: restore }, told.restore),
      h("button", { type: "button", class: "plain", "aria-label": told.discardNamed(name), onclick: drop }, told.discard),
    );
  }

  card(entry, place) {
    const address = `/picture/${place}/${encodeURIComponent(entry.name)}?${Date.now()}`;
    const picture = entry.problem
      ? h("span", { class: "no-picture" }, icon("warning"))
      : h("img", { src: address, alt: "", loading: "lazy", width: 200, height: 200 });
    const about = entry.problem ? `${told.broken}: ${entry.problem}` : told.levels[entry.level] || shapeOf(entry.shape);
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

/** A form of loaf by its name on the page. */
function shapeOf(shape) {
  return words.design.shapes[shape] || shape;
}

/** Write a time: of today the hour is enough. */
function when(time) {
  const then = new Date(time);
  const hour = { hour: "2-digit", minute: "2-digit" };
  const day = then.toDateString() === new Date().toDateString() ? {} : { day: "numeric", month: "short" };
  return then.toLocaleString([], { ...day, ...hour });
}
