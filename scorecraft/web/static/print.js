// The room for printing: what, on which paper, with its pages to look at before.

import { askFile, fetched, Latest, tellWhy } from "./api.js";
import { connection } from "./connection.js";
import { button, drawing, h, icon, later, refill } from "./dom.js";
import { check, choices } from "./choices.js";
import { hush, tell } from "./messages.js";
import { store } from "./store.js";
import { whatIs } from "./what.js";
import { words } from "./words.js";

const told = words.print;
const PAPERS = ["A4", "A3", "Letter", "Tabloid"];

export class PrintRoom {
  constructor() {
    this.row = null;
    this.options = { paper: "" };
    this.asking = new Latest("/api/print", (answer, data) => this.show(answer, data), (error, data) => this.missed(error, data));
    this.wanted = null;
    this.soon = later(() => this.look(), 80);
    this.pages = h("div", { class: "pages", tabindex: 0, role: "region", "aria-label": told.pagesLabel });
    this.about = h("p", { class: "quiet", role: "status" });
    this.extra = h("div", { class: "print-extra" });
    this.papers = h("div", {});
    this.buttons = h("div", { class: "buttons" });
    this.kinds = h("div", {});
    this.hint = h("p", { class: "quiet explained" });
    this.element = h("div", { class: "print" }, this.choosing(), this.pages);
    for (const what of ["text", "file"]) store.on(what, () => this.element.isConnected && this.renew());
    connection.addEventListener("back", () => this.element.isConnected && this.enter());
  }

  enter() {
    if (this.row) this.renew(0);
    else this.learn();
  }

  /** Learn from the server what there is to print. */
  async learn() {
    try {
      const { prints } = await fetched("/api/prints");
      if (this.row) return;
      this.kinds.replaceChildren(
        choices("what", told.what, prints.map((row) => row.name), prints[0].name, (each) => named(prints, each).title, (each) => this.pick(named(prints, each))),
      );
      this.pick(prints[0]);
    } catch (error) {
      tellWhy(error, "print");
    }
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
    return h(
      "div",
      { class: "print-side" },
      h("h1", {}, told.title),
      this.kinds,
      this.hint,
      this.papers,
      this.extra,
      this.buttons,
      this.about,
      h("p", { class: "quiet scale-note" }, told.scale),
    );
  }

  pick(row) {
    this.row = row;
    this.hint.replaceChildren(...[h("span", {}, row.help), whatIs(row.name)].filter(Boolean));
    this.extra.replaceChildren(...row.options.map((option) => this.option(option)));
    this.papers.hidden = !row.paper;
    const keep = (form, first) => button(first ? "main" : "plain", () => this.keep(form), icon("down"), told[form]);
    const browser = button("plain", () => print(), icon("print"), told.browser);
    this.buttons.replaceChildren(...row.forms.map((form, number) => keep(form, number === 0)), ...(row.paper ? [browser] : []));
    this.pages.dataset.what = row.name;
    this.renew(0);
  }

  /** Offer an option: a box to tick, choices, the first of which is what is usual, or a field. */
  option({ key, name, kind, label, like, choices: all, default: usual }) {
    const change = (value) => this.change(key, kind === "length" && value ? Number(value) : value);
    if (kind === "flag") return check(name, label, this.options[key], change);
    if (!all.length) {
      const input = h("input", { id: name, type: "text", placeholder: like, autocomplete: "off", autocapitalize: "off", spellcheck: "false", props: { value: this.options[key] ?? "" }, onchange: () => change(input.value.trim()) });
      return h("div", { class: "field" }, h("label", { for: name }, label), input);
    }
    const shown = (each) => told.values[each] || (kind === "length" ? `${each} mm` : each);
    return choices(name, label, usual ? all : ["", ...all], `${this.options[key] ?? usual ?? ""}`, shown, change);
  }

  change(key, value) {
    this.options[key] = value;
    this.renew(0);
  }

  look() {
    if (!this.element.isConnected || !this.row) return;
    this.wanted = this.asked("pages");
    this.asking.ask(this.wanted);
  }

  asked(form) {
    const chosen = Object.fromEntries(Object.entries(this.options).filter(([, value]) => value !== ""));
    return { ...store.asked, what: this.row.name, form, ...chosen };
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
    const count = this.row.paper ? told.sheets(answer.pages.length) : "";
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

function named(rows, name) {
  return rows.find((row) => row.name === name);
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
