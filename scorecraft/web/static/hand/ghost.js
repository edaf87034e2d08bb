// What is in the hand: the lines of cuts as they move, drawn over the loaf's picture.

import { part } from "../dom.js";
import { back, then } from "./plane.js";

const STRONG = "#34427a";
const FAINT = "#8a94c6";

/** Lines on the overlay, in mm of the picture. */
export class Ghost {
  constructor(view) {
    this.view = view;
    this.element = part("g", { class: "ghost" });
    this.copies = [];
    view.addEventListener("change", () => this.place());
  }

  /** Take lines up: `[{lines, copy, own}]`, each `{d, width}` in mm around a place of the picture. */
  take(copies, from = [0, 0]) {
    this.copies = copies.map(({ lines, copy, own }) => {
      const group = part("g", {}, ...lines.map(({ d, width }) => part("path", { d, fill: "none", stroke: own ? STRONG : FAINT, "stroke-width": width, transform: `translate(${from.join(" ")})` })));
      return { copy, group };
    });
    this.element.replaceChildren(...this.copies.map(({ group }) => group));
    this.place();
  }

  /** Have other lines in the stead of those that were taken up. */
  become(copies) {
    const width = this.element.querySelector("path").getAttribute("stroke-width");
    this.take(copies.map(({ lines, ...copy }) => ({ ...copy, lines: lines.map((d) => ({ d, width })) })));
  }

  /** Move each copy by a transform of the plan. */
  move(changeOf) {
    const { crown } = this.view;
    const paper = [1, 0, 0, -1, ...crown];
    for (const { copy, group } of this.copies) {
      const change = then(then(back(paper), changeOf(copy)), paper);
      group.setAttribute("transform", `matrix(${change.map((each) => each.toFixed(5)).join(" ")})`);
    }
  }

  drop() {
    this.copies = [];
    this.element.replaceChildren();
  }

  get isEmpty() {
    return this.copies.length === 0;
  }

  place() {
    if (this.isEmpty) return;
    const { scale, offset } = this.view;
    this.element.setAttribute("transform", `translate(${offset.join(" ")}) scale(${scale})`);
  }
}
