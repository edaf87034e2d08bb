// The loaf in the middle: draws it, lights up cuts, tells which cut is under the pointer.

import { drawing, h } from "./dom.js";

const SPACE = "http://www.w3.org/2000/svg";
const TOUCH_MM = 9;

export class Stage {
  /** `pointed` hears of the cut under the pointer (or null), `picked` of one that is chosen. */
  constructor({ pointed = () => {}, picked = () => {} } = {}) {
    Object.assign(this, { pointed, picked });
    this.element = h("div", { class: "stage" });
    this.svg = null;
    this.lit = new Set();
    this.element.addEventListener("pointerover", (event) => this.point(event));
    this.element.addEventListener("pointerleave", () => this.pointed(null));
    this.element.addEventListener("click", (event) => {
      const cut = this.cutAt(event.target);
      if (cut !== null) this.picked(cut);
    });
  }

  /** Show a picture of the server; `live` pictures have cuts to point at. */
  show(text, label, { live = false } = {}) {
    const next = drawing(text, label);
    next.removeAttribute("width");
    next.removeAttribute("height");
    for (const title of next.querySelectorAll("path > title")) title.remove();
    this.paths = new Map();
    if (live) this.prepare(next);
    this.element.replaceChildren(next);
    this.svg = next;
    this.relight();
  }

  prepare(svg) {
    const touch = document.createElementNS(SPACE, "g");
    touch.setAttribute("class", "touch");
    for (const path of svg.querySelectorAll("[data-layer=cuts] [data-cut]")) {
      const wide = document.createElementNS(SPACE, "path");
      wide.setAttribute("d", path.getAttribute("d"));
      wide.setAttribute("data-cut", path.dataset.cut);
      wide.setAttribute("stroke-width", TOUCH_MM);
      touch.append(wide);
      this.paths.set(Number(path.dataset.cut), path);
    }
    svg.append(touch);
  }

  /** Light up cuts by number, and what a finding points at. */
  light(cuts, finding = null) {
    this.lit = new Set(cuts);
    this.finding = finding;
    this.relight();
  }

  relight() {
    if (!this.svg) return;
    this.svg.classList.toggle("some-lit", this.lit.size > 0);
    for (const [number, path] of this.paths) path.classList.toggle("lit", this.lit.has(number));
    for (const pointer of this.svg.querySelectorAll(".pointer")) {
      pointer.classList.toggle("lit", pointer.dataset.finding === String(this.finding));
    }
  }

  point(event) {
    this.pointed(this.cutAt(event.target));
  }

  cutAt(target) {
    const cut = target.dataset ? target.dataset.cut : undefined;
    return cut === undefined ? null : Number(cut);
  }
}
