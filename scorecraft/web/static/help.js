// The help: a view over the others that leaves each as it was. Its address is #help, or #help-TERM.

import { fetched, Lost } from "./api.js";
import { button, h, icon } from "./dom.js";
import { helped } from "./helped.js";
import { words } from "./words.js";

const told = words.help;
const ADDRESS = /^help(?:-(.+))?$/;

/** The term an address asks help about, "" for all of it; null for an address that asks for none. */
export function helpAt(address) {
  const found = ADDRESS.exec(address);
  return found && (found[1] || "");
}

export class Help {
  /** `closed` hears that the help went away. */
  constructor({ closed }) {
    this.links = h("nav", { "aria-label": told.contents });
    this.text = h("div", {});
    this.element = h(
      "dialog",
      { class: "help", "aria-labelledby": "help-title", onclose: () => this.left(closed) },
      h("div", { class: "help-top" }, button("plain help-back", () => this.close(), icon("back"), told.back), h("h1", { id: "help-title" }, told.title), this.links),
      this.text,
    );
    document.body.append(this.element);
  }

  get isOpen() {
    return this.element.open;
  }

  /** Open it at a term, or at its beginning. */
  async open(term) {
    if (!this.isOpen) {
      this.from = leaving.from || whence();
      this.element.showModal();
    }
    if (!this.links.childElementCount) await this.fill(this.text, helped(), (help) => this.parts(help));
    this.show(term);
    if (this.language && !this.language.querySelector("details")) this.fill(this.language, fetched("/api/words"), languageParts);
  }

  /** Fill a place with what the server tells, or say why it cannot. */
  async fill(place, asked, shown) {
    const say = (text) => place.replaceChildren(h("p", { class: "quiet" }, text));
    say(told.loading);
    try {
      place.replaceChildren(...shown(await asked));
    } catch (error) {
      if (!(error instanceof Lost || error.status)) throw error;
      say(error instanceof Lost ? told.away : error.message);
    }
  }

  parts({ parts }) {
    this.language = h("div", {});
    this.links.replaceChildren(...parts.map(({ name, link }) => button("help-link", () => this.show(name), link)));
    return parts.map((each) => part(each, each.name === "language" ? this.language : null));
  }

  /** Bring a term into sight and let the keyboard go on from there. */
  show(term) {
    const at = term && this.element.querySelector(`[id="help-${CSS.escape(term)}"]`);
    if (!at) return;
    at.tabIndex = -1;
    at.focus({ preventScroll: true });
    at.scrollIntoView({ block: "start" });
  }

  close() {
    if (this.isOpen) this.element.close();
  }

  /** The keyboard goes back to where it came from. */
  left(closed) {
    if (this.from && this.from.isConnected) this.from.focus({ preventScroll: true });
    closed();
  }
}

/** Where the keyboard was at a link to the help: going to a place of this page takes it away before we hear of it. */
const leaving = { from: null };
addEventListener("click", ({ target }) => (leaving.from = target.closest('a[href^="#help"]') && whence()), { capture: true });

/** What the keyboard is at; in a small answer that goes away it is the button that asked for it. */
function whence() {
  const { activeElement: at } = document;
  const answer = at.closest("[popover]");
  return answer ? document.querySelector(`[popovertarget="${answer.id}"]`) : at;
}

function part({ name, title, lessons, groups }, other) {
  const inside = lessons.length ? h("ol", { class: "lessons" }, ...lessons.map(lesson)) : h("div", { class: groups.length > 1 ? "terms" : "" }, ...groups.map(explained));
  return h("section", { id: `help-${name}`, class: `help-part ${name}`, "aria-labelledby": `help-of-${name}` }, h("h2", { id: `help-of-${name}` }, title), other || inside);
}

function lesson({ name, title, picture, text }) {
  return h("li", { id: `help-lesson-${name}` }, h("img", { src: `/static/help/${name}.svg`, alt: picture, width: 320, height: 200 }), h("h3", {}, title), h("p", {}, text));
}

function explained({ title, terms }) {
  const term = ({ name, title: word, text }) => h("div", { id: `help-${name}` }, h("dt", {}, word), h("dd", {}, text));
  return h("div", {}, title && h("h3", {}, title), h("dl", { class: "explanations" }, ...terms.map(term)));
}

function languageParts({ lead, more, groups, attributes, about }) {
  const every = h("details", {}, h("summary", {}, more), h("dl", {}, ...attributes.flatMap(key)));
  return [h("p", {}, lead), ...groups.map(group), every, h("p", { class: "quiet" }, about)];
}

function group({ title, words: all }) {
  return h("details", {}, h("summary", {}, title), ...all.map(word));
}

function word({ name, help, keys, example }) {
  return h(
    "div",
    { class: "word" },
    h("h3", {}, h("code", {}, name)),
    h("p", {}, help),
    h("pre", {}, h("code", {}, example)),
    keys.length > 0 && h("dl", {}, ...keys.flatMap(key)),
  );
}

function key({ name, notes }) {
  return [h("dt", {}, h("code", {}, name)), h("dd", {}, notes)];
}
