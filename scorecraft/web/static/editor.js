// The pattern's text: a plain text field with line numbers, and marks behind the letters.

import { h } from "./dom.js";
import { indexOf, lineAt } from "./pattern_text.js";
import { words } from "./words.js";

const INDENT = "    ";

export class Editor {
  /** `typed` hears of a new text, `moved` of the line the caret is in. */
  constructor({ typed, moved }) {
    Object.assign(this, { typed, moved });
    this.problems = [];
    this.lit = new Set();
    this.numbers = h("div", { class: "numbers", "aria-hidden": "true" });
    this.marks = h("div", { class: "marks", "aria-hidden": "true" });
    this.field = h("textarea", {
      id: "pattern-text",
      wrap: "off",
      spellcheck: "false",
      autocapitalize: "off",
      autocomplete: "off",
      "aria-describedby": "pattern-help",
      oninput: () => this.input(),
      onscroll: () => this.scrolled(),
      onkeydown: (event) => this.key(event),
      onkeyup: () => this.move(),
      onclick: () => this.move(),
    });
    this.element = h(
      "div",
      { class: "editor" },
      this.numbers,
      h("div", { class: "sheet" }, this.marks, this.field),
    );
  }

  /** Show a text; the caret stays where it is if it can. */
  show(text) {
    if (this.field.value !== text) {
      const { selectionStart, selectionEnd, scrollTop } = this.field;
      this.field.value = text;
      this.field.setSelectionRange(selectionStart, selectionEnd);
      this.field.scrollTop = scrollTop;
    }
    this.draw();
  }

  /** Mark problems at their places. */
  mark(problems) {
    this.problems = problems.filter((problem) => problem.line);
    this.field.setAttribute("aria-invalid", this.problems.length > 0);
    this.draw();
  }

  /** Light up lines by number. */
  light(lines) {
    this.lit = new Set(lines);
    this.draw();
  }

  /** Put the caret at a place and show it. */
  goTo(line, column = 1, length = 0) {
    const start = indexOf(this.field.value, line, column);
    this.field.focus();
    this.field.setSelectionRange(start, start + length);
    this.reveal(line);
  }

  reveal(line) {
    const high = parseFloat(getComputedStyle(this.field).lineHeight);
    const top = (line - 1) * high;
    const { scrollTop, clientHeight } = this.field;
    if (top < scrollTop || top + 2 * high > scrollTop + clientHeight) {
      this.field.scrollTop = top - clientHeight / 3;
    }
    this.scrolled();
  }

  input() {
    this.typed(this.field.value);
    this.draw();
  }

  move() {
    this.moved(lineAt(this.field.value, this.field.selectionStart));
  }

  /** A new line starts where the one before does, one step deeper after a colon. */
  key(event) {
    if (event.key !== "Enter" || event.isComposing || event.ctrlKey || event.metaKey) return;
    const { value, selectionStart, selectionEnd } = this.field;
    const line = value.slice(value.lastIndexOf("\n", selectionStart - 1) + 1, selectionStart);
    const indent = /^ */.exec(line)[0] + (/:\s*(#.*)?$/.test(line) ? INDENT : "");
    if (!indent) return;
    event.preventDefault();
    this.field.setRangeText(`\n${indent}`, selectionStart, selectionEnd, "end");
    this.input();
  }

  draw() {
    const lines = this.field.value.split("\n");
    const wrong = new Map(this.problems.map((problem) => [problem.line, problem]));
    this.numbers.replaceChildren(
      ...lines.map((_, index) => h("div", { class: this.classOf(index + 1, wrong) }, String(index + 1))),
    );
    this.marks.replaceChildren(
      ...lines.map((line, index) => {
        const problem = wrong.get(index + 1);
        const inner = problem ? underlined(line, problem) : [line || " "];
        return h("div", { class: this.classOf(index + 1, wrong) }, ...inner);
      }),
    );
    this.scrolled();
  }

  classOf(line, wrong) {
    if (wrong.has(line)) return "wrong";
    return this.lit.has(line) ? "lit" : null;
  }

  scrolled() {
    this.marks.style.transform = `translate(${-this.field.scrollLeft}px, ${-this.field.scrollTop}px)`;
    this.numbers.scrollTop = this.field.scrollTop;
  }
}

function underlined(line, problem) {
  const letters = [...line];
  const from = Math.min(problem.column - 1, letters.length);
  const to = Math.max(from + 1, from + problem.length);
  const part = letters.slice(from, to).join("") || " ";
  return [letters.slice(0, from).join(""), h("u", {}, part), letters.slice(to).join("")];
}

/** The text field with its label. */
export function editorPanel(editor) {
  return [
    h("label", { class: "panel-title", for: "pattern-text" }, words.design.text),
    h("p", { id: "pattern-help", class: "hidden" }, words.design.textHelp),
    editor.element,
  ];
}
