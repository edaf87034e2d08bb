// The room for printing: what, on which paper, with its pages to look at before.

import { askFile, Latest, tellWhy } from "./api.js";
import { connection } from "./connection.js";
import { button, drawing, h, icon, later, refill } from "./dom.js";
import { check, choices } from "./forms.js";
import { hush, tell } from "./messages.js";
import { store } from "./store.js";
import { whatIs } from "./what.js";
import { words } from "./words.js";

const told = words.print;
const PAPERS = ["A4", "A3", "Letter", "Tabloid"];

export class PrintRoom {
  constructor() {
    this.what = "guide";
    this.options = { paper: "", slot_mm: "", mirrored: false, follow: "stencil" };
    this.asking = new Latest("/api/print", (answer, data) => this.show(answer, data), (error, data) => this.missed(error, data));
    this.wanted = null;
    this.soon = later(() => this.look(), 80);
    this.pages = h("div", { class: "pages", tabindex: 0, role: "region", "aria-label": told.pagesLabel });
    this.about = h("p", { class: "quiet", role: "status" });
    this.extra = h("div", { class: "print-extra" });
    this.papers = h("div", {});
    this.buttons = h("div", { class: "buttons" });
    this.element = h("div", { class: "print" }, this.choosing(), this.pages);
    for (const what of ["text", "file"]) store.on(what, () => this.element.isConnected && this.renew());
    connection.addEventListener("back", () => this.element.isConnected && this.renew());
    this.pick("guide");
  }

  enter() {
    this.renew(0);
  }

  /** The pages are out of date until new ones are there: nobody prints or saves them. */
  renew(wait = undefined) {
    this.outdate(true);
    this.about.textContent = this.pages.querySelector(".page") ? told.renewing : told.making;
    this.soon(wait);
  }

  outdate(yes) {
    this.pages.classList.toggle("outdated", yes);
    this.pages.setAttribute("aria-busy", yes);
    for (const each of this.buttons.children) each.disabled = yes;
  }

  choosing() {
    this.hint = h("p", { class: "quiet explained" });
    return h(
      "div",
      { class: "print-side" },
      h("h1", {}, told.title),
      choices("what", told.what, Object.keys(told.prints), this.what, (each) => told.prints[each], (what) => this.pick(what)),
      this.hint,
      this.papers,
      this.extra,
      this.buttons,
      this.about,
      h("p", { class: "quiet scale-note" }, told.scale),
    );
  }

  pick(what) {
    this.what = what;
    this.hint.replaceChildren(h("span", {}, told.hints[what]), whatIs(what));
    const change = (key) => (value) => this.change(key, value);
    const parts = [];
    if (what === "cutter") {
      parts.push(choices("follow", told.follow, Object.keys(told.follows), this.options.follow, (each) => told.follows[each], change("follow")));
    }
    if (what === "stencil" || what === "cutter") {
      const widths = ["", "2", "3", "4"];
      parts.push(choices("slot", told.slot, widths, this.options.slot_mm, (each) => told.slots[each], change("slot_mm")));
      parts.push(check("mirrored", told.mirrored, this.options.mirrored, change("mirrored")));
    }
    this.extra.replaceChildren(...parts);
    this.papers.hidden = what === "cutter";
    const forms = what === "cutter" ? ["svg", "dxf"] : ["pdf"];
    const keep = (form, first) => button(first ? "main" : "plain", () => this.keep(form), icon("down"), told[form]);
    const browser = button("plain", () => print(), icon("print"), told.browser);
    this.buttons.replaceChildren(...forms.map((form, number) => keep(form, number === 0)), ...(what === "cutter" ? [] : [browser]));
    this.pages.dataset.what = what;
    this.renew(0);
  }

  change(key, value) {
    this.options[key] = value;
    this.renew(0);
  }

  look() {
    if (!this.element.isConnected) return;
    this.wanted = this.asked("pages");
    this.asking.ask(this.wanted);
  }

  asked(form) {
    const { paper, slot_mm: slot, mirrored, follow } = this.options;
    const chosen = { mirrored, follow, ...(paper && { paper }), ...(slot && { slot_mm: Number(slot) }) };
    return { ...store.asked, what: this.what, form, ...chosen };
  }

  /** Show the pages that are wanted now; others came too late. */
  show(answer, data) {
    if (data !== this.wanted || answer.asked !== store.stamp) return;
    if (!answer.ok) return this.refused(answer.problems[0]);
    this.outdate(false);
    if (this.shownPaper !== answer.paper) {
      this.shownPaper = answer.paper;
      refill(this.papers, choices("paper", told.paper, PAPERS, answer.paper, (each) => each, (paper) => this.change("paper", paper)));
    }
    const count = this.what === "cutter" ? "" : told.sheets(answer.pages.length);
    this.about.textContent = answer.remark || count;
    this.pages.replaceChildren(...answer.pages.map((page, number) => this.page(page, number, answer.pages.length)));
    sizePages(answer.pages);
  }

  page(page, number, count) {
    const sheet = drawing(page.svg, `${page.title}, ${told.page(number + 1, count)}`);
    const kind = page.width_mm > page.height_mm ? "wide" : "high";
    return h(
      "figure",
      { class: `page ${kind}`, "data-size": sizeName(page) },
      sheet,
      h("figcaption", {}, told.page(number + 1, count)),
    );
  }

  missed(error, data) {
    if (data !== this.wanted) return;
    if (error.status) this.refused(error);
    else this.about.textContent = told.old;
  }

  refused(error) {
    this.pages.classList.remove("outdated");
    this.pages.setAttribute("aria-busy", false);
    this.pages.replaceChildren(h("p", { class: "lead" }, error.message), h("p", { class: "quiet" }, error.hint || ""));
    this.about.textContent = "";
  }

  async keep(form) {
    try {
      const file = await askFile("/api/print", this.asked(form));
      if (file.problem) return this.refused(file.problem.problems[0]);
      const address = URL.createObjectURL(file.content);
      h("a", { href: address, download: file.name }).click();
      setTimeout(() => URL.revokeObjectURL(address), 60000);
      hush("print");
      tell(told.kept(file.name));
    } catch (error) {
      tellWhy(error, "print");
    }
  }
}

const sheetOfSizes = new CSSStyleSheet();
document.adoptedStyleSheets.push(sheetOfSizes);

/** Tell the browser's own print how large each page is, so that it prints at 100 %. */
function sizePages(pages) {
  const rules = new Map(pages.map((page) => [sizeName(page), page]));
  sheetOfSizes.replaceSync(
    [...rules]
      .map(
        ([name, { width_mm: width, height_mm: height }]) =>
          `@page ${name} { size: ${width}mm ${height}mm; margin: 0 }
           @media print { [data-size=${name}] { page: ${name}; width: ${width}mm; height: ${height - 0.1}mm } }`,
      )
      .join("\n"),
  );
}

function sizeName({ width_mm: width, height_mm: height }) {
  return `size${Math.round(width * 10)}x${Math.round(height * 10)}`;
}
