// The help: a view over the others that leaves each as it was. Its address is #help, or #help-TERM.

import { Lost } from "./api.js";
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
    this.links = null;
    this.head = h("div", { class: "help-top" }, button("plain help-back", () => this.close(), icon("back"), told.back), h("h1", { id: "help-title" }, told.title));
    this.text = h("div", {});
    this.element = h(
      "dialog",
      { class: "help", "aria-labelledby": "help-title", onclose: () => this.left(closed) },
      this.head,
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
    if (!this.links) await this.fill();
    this.show(term);
  }

  /** Show what the server has set, or say why it cannot be. */
  async fill() {
    const say = (text) => this.text.replaceChildren(h("p", { class: "quiet" }, text));
    say(told.loading);
    try {
      const [links, ...parts] = document.importNode((await helped()).body, true).children;
      links.setAttribute("aria-label", told.contents);
      links.addEventListener("click", ({ target }) => this.show(target.dataset.part));
      this.head.append((this.links = links));
      this.text.replaceChildren(...parts);
    } catch (error) {
      if (!(error instanceof Lost || error.status)) throw error;
      say(error instanceof Lost ? told.away : error.message);
    }
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
