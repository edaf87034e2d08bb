// The help: a view over the others that leaves each as it was. Its address is #help, or #help-TERM.

import { fetched, Lost } from "./api.js";
import { button, h, icon } from "./dom.js";
import { words } from "./words.js";

const told = words.help;
const ADDRESS = /^help(?:-(.+))?$/;

/** The term an address asks help about, "" for all of it; null for an address that asks for none. */
export function helpAt(address) {
  const found = ADDRESS.exec(address);
  return found && (found[1] || "");
}

export class Help {
  /** `closed` hears that the help went away; a guest has no use for the pattern language. */
  constructor({ guest, closed }) {
    this.language = guest ? null : h("div", {}, h("p", { class: "quiet" }, told.language.loading));
    const sections = [course(), glossary(), safety(), this.language && part("language", this.language)].filter(Boolean);
    this.element = h(
      "dialog",
      { class: "help", "aria-labelledby": "help-title", onclose: () => this.left(closed) },
      h("div", { class: "help-top" }, button("plain help-back", () => this.close(), icon("back"), told.back), h("h1", { id: "help-title" }, told.title), this.contents(sections)),
      ...sections,
    );
    document.body.append(this.element);
  }

  contents(sections) {
    const link = (section) => {
      const name = section.id.replace("help-", "");
      return button("help-link", () => this.show(name), told[name].link);
    };
    return h("nav", { "aria-label": told.contents }, ...sections.map(link));
  }

  get isOpen() {
    return this.element.open;
  }

  /** Open it at a term, or at its beginning. */
  open(term) {
    if (!this.isOpen) {
      this.from = leaving.from || whence();
      this.element.showModal();
    }
    this.show(term);
    if (this.language && !this.listed) this.list();
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

  /** List the words of the pattern language, as the server tells them. */
  async list() {
    this.listed = true;
    try {
      const { groups, attributes, terms, about } = await fetched("/api/words");
      const listed = terms.map(({ name, title, text }) => [name, [title, text]]);
      this.element.querySelector(".terms").append(explained(told.glossary.forms, listed));
      const every = h("details", {}, h("summary", {}, told.language.attributes), h("dl", {}, ...attributes.flatMap(key)));
      this.language.replaceChildren(h("p", {}, told.language.lead), ...groups.map(group), every, h("p", { class: "quiet" }, about));
    } catch (error) {
      if (!(error instanceof Lost || error.status)) throw error;
      this.listed = false;
      this.language.replaceChildren(h("p", { class: "quiet" }, error instanceof Lost ? told.language.away : error.message));
    }
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

function part(name, ...inside) {
  return h("section", { id: `help-${name}`, class: `help-part ${name}`, "aria-labelledby": `help-of-${name}` }, h("h2", { id: `help-of-${name}` }, told[name].title), ...inside);
}

function course() {
  const lesson = ([name, { name: title, picture, text }]) =>
    h("li", { id: `help-lesson-${name}` }, h("img", { src: `/static/help/${name}.svg`, alt: picture, width: 320, height: 200 }), h("h3", {}, title), h("p", {}, text));
  return part("course", h("ol", { class: "lessons" }, ...Object.entries(told.course.lessons).map(lesson)));
}

function explained(title, terms) {
  const term = ([name, [title, text]]) => h("div", { id: `help-${name}` }, h("dt", {}, title), h("dd", {}, text));
  return h("div", {}, h("h3", {}, title), h("dl", {}, ...terms.map(term)));
}

function glossary() {
  const parts = told.glossary.groups.map(({ title, terms }) => explained(title, Object.entries(terms)));
  return part("glossary", h("div", { class: "terms" }, ...parts));
}

function safety() {
  const caution = ([title, text]) => h("div", {}, h("dt", {}, title), h("dd", {}, text));
  return part("safety", h("dl", {}, ...told.safety.cautions.map(caution)));
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
