// The shelf: every shipped pattern as a picture, and the baker's own.

import { ask, fetched, tellWhy } from "./api.js";
import { choicesOf } from "./choices.js";
import { prompted, question } from "./dialog.js";
import { beside, button, h, icon, iconButton, keep, kept, named, refill } from "./dom.js";
import { fresh, open, said } from "./files.js";
import { shapeName } from "./loaf_shape.js";
import { hush, tell } from "./messages.js";
import { discard, unsaved } from "./rescue.js";
import { store } from "./store.js";
import { words } from "./words.js";

const told = words.shelf;
const LOOK = "scorecraft.shelf";

export class ShelfRoom {
  /** `opened` is called when a pattern was opened. */
  constructor(opened) {
    this.opened = opened;
    this.own = h("div", { class: "cards" });
    this.rescued = h("ul", { class: "rescued" });
    this.rescue = h("section", { "aria-labelledby": "rescued", hidden: true }, h("h2", { id: "rescued" }, told.rescued), h("p", { class: "quiet" }, told.rescuedHint), this.rescued);
    this.shipped = h("div", { class: "by-form" });
    this.path = h("p", { class: "quiet path" });
    this.none = h("p", { class: "quiet", role: "status", hidden: true }, told.noneFound);
    this.baking = 0;
    this.menu = this.fileMenu();
    this.element = h(
      "div",
      { class: "shelf room" },
      h("div", { class: "room-head" }, h("h1", {}, told.title), h("p", { class: "lead" }, told.lead)),
      this.tools(),
      this.none,
      this.menu,
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
      this.listed = await fetched("/api/shelf");
      this.show();
    } catch (error) {
      tellWhy(error);
    }
  }

  /** Show what is listed and looked for. */
  show() {
    if (!this.listed) return;
    const { shelf, folder, path } = this.listed;
    const looked = this.search.value.trim().toLowerCase();
    const fits = ({ title, name, shape }) => [title, name, shapeName(shape)].some((each) => each.toLowerCase().includes(looked));
    const own = folder.filter(fits);
    const byDate = (one, other) => other.changed - one.changed;
    own.sort(this.sort === "date" ? byDate : (one, other) => stem(one).localeCompare(stem(other)));
    const shipped = shelf.filter(fits);
    this.path.textContent = path;
    this.none.hidden = own.length + shipped.length > 0;
    refill(this.shipped, ...this.byForm(shipped));
    refill(this.own, ...(looked ? [] : [this.freshCard()]), ...own.map((entry) => this.ownCard(entry)));
    if (this.baked.checked) this.bake();
  }

  /** Search, the order of one's own, and pictures as baked. */
  tools() {
    const look = kept(LOOK) || {};
    this.sort = look.sort === "date" ? "date" : "name";
    const remember = () => keep(LOOK, { sort: this.sort, baked: this.baked.checked });
    this.search = h("input", { id: "shelf-search", type: "search", placeholder: told.searchHint, autocomplete: "off", oninput: () => this.show() });
    this.baked = h("input", { id: "shelf-baked", type: "checkbox", props: { checked: look.baked === true }, onchange: () => (remember(), this.show()) });
    const sort = choicesOf("sort", told.sort, told.sorts, this.sort, (each) => ((this.sort = each), remember(), this.show()));
    return h("div", { class: "shelf-tools", role: "search" }, h("label", { class: "field", for: "shelf-search" }, h("span", {}, told.search), this.search), sort, h("label", { class: "check", for: "shelf-baked" }, this.baked, told.baked));
  }

  /** Fetch pictures as baked one after the other: each takes the model a moment. */
  async bake() {
    const turn = (this.baking += 1);
    for (const picture of this.element.querySelectorAll(".card img")) {
      if (turn !== this.baking || !this.element.isConnected) return;
      const next = new Image();
      next.src = `${picture.src}&baked`;
      if (await next.decode().then(() => true, () => false)) picture.src = next.src;
    }
  }

  /** The cards of each form of loaf under its name. */
  byForm(shelf) {
    const forms = [...new Set(shelf.map((entry) => entry.shape))];
    return forms.map((form) => {
      const cards = shelf.filter((entry) => entry.shape === form).map((entry) => this.card(entry, "shelf"));
      return h("section", { class: "form", "aria-label": told.form(shapeName(form)) }, h("h3", {}, shapeName(form)), h("div", { class: "cards" }, ...cards));
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
      named(button("main", restore, told.restore), told.restoreNamed(name)),
      named(button("plain", drop, told.discard), told.discardNamed(name)),
    );
  }

  card(entry, place) {
    const address = `/picture/${place}/${encodeURIComponent(entry.name)}?${Date.now()}`;
    const picture = entry.problem
      ? h("span", { class: "no-picture" }, icon("warning"))
      : h("img", { src: address, alt: "", loading: "lazy", width: 200, height: 200 });
    const about = entry.problem ? `${told.broken}: ${entry.problem}` : told.levels[entry.level] || shapeName(entry.shape);
    const card = button("card", () => this.open(place, entry.name), picture, h("span", { class: "card-title" }, entry.title), h("span", { class: "card-about" }, about));
    card.id = `${place}/${entry.name}`;
    return named(card, told.open(entry.title));
  }

  /** A file of one's own can be renamed, copied and deleted too. */
  ownCard(entry) {
    const more = iconButton("more", told.moreFor(entry.title), () => this.openMenu(entry, more));
    more.id = `more/${entry.name}`;
    const when = h("span", { class: "card-about" }, `${stem(entry)}, ${dayOf(entry.changed * 1000)}`);
    const card = this.card(entry, "folder");
    card.append(when);
    return h("div", { class: "own-card" }, card, more);
  }

  fileMenu() {
    const item = (label, act) => button("menu-item", () => (this.menu.hidePopover(), act(this.chosen)), label);
    return h("div", { class: "answer file-menu", popover: "auto" }, item(told.rename, (entry) => this.rename(entry)), item(told.duplicate, (entry) => this.duplicate(entry)), item(told.delete, (entry) => this.remove(entry)));
  }

  openMenu(entry, more) {
    this.chosen = entry;
    this.menu.showPopover();
    beside(this.menu, more);
    this.menu.firstElementChild.focus();
  }

  async rename({ name }) {
    const tried = async (next) => {
      try {
        store.moved(name, (await ask("/api/rename", { name, new: next })).name);
      } catch (error) {
        return said(error);
      }
      return "";
    };
    if (await prompted({ title: told.renameTitle, label: words.saving.name, hint: words.saving.hint, value: stem({ name }), yes: words.saving.button }, tried)) this.enter();
  }

  async duplicate({ name }) {
    await this.change(async () => tell(told.duplicated((await ask("/api/duplicate", { name })).name)));
  }

  async remove({ name }) {
    await this.change(async () => {
      const { where } = await ask("/api/delete", { name });
      store.moved(name, null);
      tell(told.deleted(where));
    });
  }

  async change(act) {
    try {
      await act();
    } catch (error) {
      tellWhy(error);
    }
    this.enter();
  }

  freshCard() {
    return button(
      "card fresh",
      async () => (await fresh()) && this.opened(),
      h("span", { class: "no-picture" }, icon("plus")),
      h("span", { class: "card-title" }, told.fresh),
      h("span", { class: "card-about" }, told.freshAbout),
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

/** Write a time: of today the hour is enough. */
function when(time) {
  const then = new Date(time);
  const hour = then.toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
  return then.toDateString() === new Date().toDateString() ? hour : `${dayOf(time)}, ${hour}`;
}

function stem({ name }) {
  return name.replace(/\.score$/, "");
}

function dayOf(time) {
  return new Date(time).toLocaleDateString([], { day: "numeric", month: "short", year: "numeric" });
}
