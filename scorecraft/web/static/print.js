// The room for printing: what, on which paper, with its pages to look at before.

import { askFile, Latest } from "./api.js";
import { drawing, h, icon, later, tell } from "./dom.js";
import { choices } from "./forms.js";
import { store } from "./store.js";
import { words } from "./words.js";

const told = words.print;
const PAPERS = ["A4", "A3", "Letter", "Tabloid"];

export class PrintRoom {
  constructor() {
    this.what = Object.keys(told.prints)[0];
    this.paper = "";
    this.asking = new Latest("/api/print", (answer) => this.show(answer), (error) => this.refused(error));
    this.soon = later(() => this.asking.ask(this.asked("pages")), 80);
    this.pages = h("div", { class: "pages", tabindex: 0, role: "region", "aria-label": told.pagesLabel });
    this.about = h("p", { class: "quiet", role: "status" });
    this.papers = h("div", {});
    this.element = h("div", { class: "print" }, this.choosing(), this.pages);
    store.on("text", () => this.element.isConnected && this.soon());
  }

  enter() {
    this.soon(0);
  }

  choosing() {
    const pick = (what) => {
      this.what = what;
      this.hint.textContent = told.hints[what];
      this.soon(0);
    };
    this.hint = h("p", { class: "quiet" }, told.hints[this.what]);
    return h(
      "div",
      { class: "print-side" },
      h("h1", {}, told.title),
      choices("what", told.what, Object.keys(told.prints), this.what, (each) => told.prints[each], pick),
      this.hint,
      this.papers,
      this.about,
      h(
        "div",
        { class: "buttons" },
        h("button", { type: "button", class: "main", onclick: () => this.keep("pdf") }, icon("down"), told.pdf),
        h("button", { type: "button", class: "plain", onclick: () => print() }, icon("print"), told.browser),
      ),
      h("p", { class: "quiet" }, told.scale),
    );
  }

  asked(form) {
    const paper = this.paper ? { paper: this.paper } : {};
    return { ...store.asked, what: this.what, form, ...paper };
  }

  show(answer) {
    if (!answer.ok) return this.refused(answer.problems[0]);
    const pick = (paper) => {
      this.paper = paper;
      this.soon(0);
    };
    if (this.shownPaper !== answer.paper) {
      this.shownPaper = answer.paper;
      this.papers.replaceChildren(choices("paper", told.paper, PAPERS, answer.paper, (each) => each, pick));
    }
    this.about.textContent = told.sheets(answer.pages.length);
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

  refused(error) {
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
      tell(told.kept(file.name));
    } catch (error) {
      tell(error.status === 501 ? told.noCairo : `${error.message}. ${error.hint || ""}`, { lasting: true });
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
