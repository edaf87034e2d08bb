// The loaf in the middle: draws it, lights up cuts, tells which cut is under the pointer.

import { drawing, h, part, wrapped } from "./dom.js";

const TOUCH_MM = 9;

export class Stage {
  /** `pointed` hears of the cut under the pointer (or null), `tapped` of one that is chosen, `drawn` of a picture. */
  constructor({ pointed = () => {}, tapped = () => {}, drawn = () => {} } = {}) {
    Object.assign(this, { pointed, tapped, drawn, own: new Set(), siblings: new Set() });
    this.element = h("div", { class: "stage" });
    this.svg = null;
    this.lit = new Set();
    this.element.addEventListener("pointerover", (event) => this.point(event));
    this.element.addEventListener("pointerleave", () => this.pointed(null));
    this.element.addEventListener("click", (event) => {
      const cut = this.cutAt(event.target);
      if (cut !== null) this.tapped(cut);
    });
  }

  /** Show no loaf, and say why. */
  clear(title, hint) {
    this.paths = new Map();
    Object.assign(this, { svg: null, growing: null, blooms: null });
    this.element.replaceChildren(h("div", { class: "no-loaf" }, h("p", { class: "lead" }, title), h("p", { class: "quiet" }, hint)));
  }

  /** Show a picture of the server; `live` pictures have cuts to point at. */
  show(text, label, { live = false, look = "top" } = {}) {
    const next = drawing(text, label, false);
    next.dataset.look = look;
    if (!live) layOnPaper(next);
    for (const title of next.querySelectorAll("path > title")) title.remove();
    this.paths = new Map();
    Object.assign(this, { growing: null, blooms: null });
    if (live) this.prepare(next);
    this.element.replaceChildren(next);
    this.svg = next;
    this.drawn();
    this.relight();
  }

  /** Point at what other findings are about. */
  pointAt(pointers) {
    const group = this.svg && this.svg.querySelector("[data-layer=pointers]");
    if (!group) return;
    const drawn = pointers.map(({ finding, path }) =>
      part("path", { d: path, class: "pointer", "data-finding": finding, fill: "none", stroke: "#34427a", "stroke-width": 1.6 }),
    );
    group.replaceChildren(...drawn);
    this.relight();
  }

  prepare(svg) {
    const touch = part("g", { class: "touch" });
    for (const path of svg.querySelectorAll("[data-layer=cuts] [data-cut]")) {
      touch.append(part("path", { d: path.getAttribute("d"), "data-cut": path.dataset.cut, "stroke-width": TOUCH_MM, fill: "none" }));
      this.paths.set(Number(path.dataset.cut), path);
    }
    svg.append(touch);
    this.growing = wrapped(svg, "growing");
    this.cuts = svg.querySelector("[data-layer=cuts]");
  }

  /** Take in pictures of the loaf on its way through the oven, each at a share of its time there. */
  take(blooms, frame) {
    if (!this.svg || !this.growing) return;
    for (const old of this.svg.querySelectorAll(".baked")) old.remove();
    this.crown = frame.crown;
    this.blooms = [...blooms].sort((one, other) => one.share - other.share).map((bloom) => [bloom, this.bakedImage(bloom)]);
    this.growing.append(...this.blooms.map(([, image]) => image), this.svg.querySelector(".touch"));
  }

  /** A loaf lies over the scored one with its crown on the crown, at the size it has by then. */
  bakedImage({ image, size, share, sideways }) {
    const [x, y] = this.crown;
    const [width, height] = size.map((side) => side / (1 + (sideways - 1) * share));
    return part("image", { class: "baked", href: image, x: x - width / 2, y: y - height / 2, width, height, opacity: 0 });
  }

  /** Show the loaf at a share of its time in the oven: 0 on the bench, 1 baked. */
  bake(share) {
    if (!this.blooms || !this.growing) return;
    const [x, y] = this.crown;
    const scale = 1 + (this.blooms[0][0].sideways - 1) * share;
    this.growing.setAttribute("transform", `translate(${x} ${y}) scale(${scale}) translate(${-x} ${-y})`);
    const last = this.blooms.findLastIndex(([bloom]) => bloom.share <= share);
    this.blooms.forEach(([bloom, image], index) => {
      const before = index ? this.blooms[index - 1][0].share : 0;
      const part = index > last + 1 || index < last ? 0 : (share - before) / (bloom.share - before);
      image.setAttribute("opacity", Math.min(1, part));
    });
  }

  /** Light up cuts by number, and what a finding points at. */
  light(cuts, finding = null) {
    this.lit = new Set(cuts);
    this.finding = finding;
    this.relight();
  }

  /** Mark what is picked: the touched copy, and the others of its statement. */
  pick(own, siblings) {
    Object.assign(this, { own: new Set(own), siblings: new Set(siblings) });
    this.relight();
  }

  relight() {
    if (!this.svg) return;
    this.svg.classList.toggle("some-lit", this.lit.size > 0);
    for (const [number, path] of this.paths) {
      path.classList.toggle("lit", this.lit.has(number));
      path.classList.toggle("own", this.own.has(number));
      path.classList.toggle("sibling", this.siblings.has(number));
    }
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

/** Put a sheet of paper under what is drawn to be printed. */
function layOnPaper(svg) {
  const { x, y, width, height } = svg.viewBox.baseVal;
  svg.prepend(part("rect", { class: "paper", x, y, width, height }));
}
