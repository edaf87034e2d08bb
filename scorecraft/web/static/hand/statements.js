// The list of all that is cut: the way in for the keyboard and for who does not see the loaf.

import { h } from "../dom.js";
import { words } from "../words.js";
import { said } from "../units.js";
import { times } from "./plane.js";

const told = words.hand;
const WAYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
const FINE_MM = 1;
const COARSE_MM = 5;
const TURN_DEG = 5;

export class Statements {
  constructor(hand) {
    this.hand = hand;
    this.rows = new Map();
    this.hold = 0;
    this.none = h("p", { class: "quiet" }, told.nothingCut);
    this.list = h("ul", { class: "statements", "aria-describedby": "statements-help" });
    this.help = h("p", { class: "quiet", id: "statements-help" }, told.listHelp);
    this.element = h("div", { class: "statement-list" }, this.none, this.list, this.help);
    this.list.addEventListener("keydown", (event) => this.key(event));
    this.list.addEventListener("keyup", () => (this.hold += 1));
  }

  /** List statements; the row that has the keyboard keeps it. */
  show(statements) {
    const focused = this.list.contains(document.activeElement);
    const { selection } = this.hand;
    const rows = new Map();
    for (const each of statements) rows.set(each.id, this.rows.get(each.id) || this.row(each.id));
    for (const each of statements) {
      const row = rows.get(each.id);
      row.name.textContent = each.name;
      row.about.textContent = said(each.about);
    }
    this.rows = rows;
    const items = [...rows.values()].map(({ item }) => item);
    if (items.length !== this.list.childElementCount || items.some((item, at) => item !== this.list.children[at])) this.list.replaceChildren(...items);
    this.none.hidden = rows.size > 0;
    this.help.hidden = rows.size === 0;
    const next = focused && (rows.get(selection?.statement) || [...rows.values()].at(-1));
    if (next) next.button.focus({ preventScroll: true });
  }

  /** Show which statement is picked. */
  mark(id) {
    for (const [each, { button }] of this.rows) button.setAttribute("aria-pressed", each === id);
  }

  row(id) {
    const name = h("span", { class: "statement-name" });
    const about = h("span", { class: "statement-about" });
    const pick = () => this.hand.selection?.statement === id || this.hand.pick({ statement: id, copy: 0 });
    const button = h("button", { type: "button", class: "statement", "aria-pressed": false, onfocus: pick, onclick: pick }, name, about);
    return { item: h("li", {}, button), button, name, about };
  }

  key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const act = this.actOf(event);
    if (!act) return;
    event.preventDefault();
    act();
  }

  actOf({ key, shiftKey }) {
    const { hand, hold } = this;
    if (key in WAYS) return () => hand.nudge("move", times(WAYS[key], shiftKey ? COARSE_MM : FINE_MM), hold);
    if (key === "[" || key === "]") return () => hand.nudge("turn", key === "]" ? TURN_DEG : -TURN_DEG, hold);
    if (key === "Delete" || key === "Backspace") return () => hand.remove();
    if (key === "Enter") return () => hand.form();
    if (key === "Escape") return () => hand.pick(null);
    return hand.zooming(key);
  }
}
