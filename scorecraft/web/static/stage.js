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
    Object.assign(this, { svg: null, opening: null, growing: null, baked: null });
    this.element.replaceChildren(h("div", { class: "no-loaf" }, h("p", { class: "lead" }, title), h("p", { class: "quiet" }, hint)));
  }

  /** Show a picture of the server; `live` pictures have cuts to point at. */
  show(text, label, { live = false, look = "top" } = {}) {
    const next = drawing(text, label, false);
    next.dataset.look = look;
    if (!live) layOnPaper(next);
    for (const title of next.querySelectorAll("path > title")) title.remove();
    this.paths = new Map();
    Object.assign(this, { opening: null, growing: null, baked: null });
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

  /** Take in how the cuts open, and the picture of the baked loaf when there is one. */
  take(opening, frame, bloom = null) {
    if (!this.svg || !this.growing) return;
    for (const old of this.svg.querySelectorAll(".opened, .baked")) old.remove();
    Object.assign(this, { opening, crown: frame.crown });
    const group = part("g", { class: "opened" });
    this.mouths = opening.lenses.map((lens) => [lens, part("path", { "data-cut": lens.cut })]);
    group.append(...this.mouths.map(([, path]) => path));
    this.cuts.after(group);
    this.baked = bloom && this.bakedImage(bloom);
    if (this.baked) this.growing.append(this.baked);
    this.growing.append(this.svg.querySelector(".touch"));
  }

  /** The baked loaf lies over the other with its crown on the crown, at the size it ends with. */
  bakedImage({ address, width, height }) {
    const [x, y] = this.crown;
    const scale = 1 / this.opening.sideways;
    const size = { width: width * scale, height: height * scale };
    return part("image", { class: "baked", href: address, x: x - size.width / 2, y: y - size.height / 2, ...size });
  }

  /** Show the loaf at a share of its time in the oven: 0 on the bench, 1 baked. */
  bake(share) {
    if (!this.opening || !this.growing) return;
    const [x, y] = this.crown;
    const scale = 1 + (this.opening.sideways - 1) * share;
    this.growing.setAttribute("transform", `translate(${x} ${y}) scale(${scale}) translate(${-x} ${-y})`);
    for (const [lens, path] of this.mouths) path.setAttribute("d", share > 0 ? mouth(lens, share) : "");
    if (this.baked) this.baked.setAttribute("opacity", eased((share - 0.25) / 0.75));
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

/** The outline of a cut's mouth, open by a share of its width. */
function mouth({ middle, aside }, share) {
  const one = [];
  const other = [];
  for (let at = 0; at < middle.length; at += 2) {
    const [x, y, dx, dy] = [middle[at], middle[at + 1], aside[at] * share, aside[at + 1] * share];
    one.push(`${(x + dx).toFixed(2)},${(y + dy).toFixed(2)}`);
    other.unshift(`${(x - dx).toFixed(2)},${(y - dy).toFixed(2)}`);
  }
  return `M${one.join(" ")} ${other.join(" ")}Z`;
}

function eased(share) {
  const t = Math.min(1, Math.max(0, share));
  return t * t * (3 - 2 * t);
}
