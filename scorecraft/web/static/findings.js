// What is wrong, the weightiest first: problems of the text, or findings about the cuts.

import { button, h, icon, pointedAt } from "./dom.js";
import { said } from "./units.js";
import { whatIs } from "./what.js";
import { words } from "./words.js";

export class Findings {
  /** `pointed` hears of the finding under the pointer or null, `picked` of one that is chosen, `fixed` of the changes of a fix. */
  constructor({ pointed, picked, fixed }) {
    Object.assign(this, { pointed, picked, fixed });
    this.verdict = h("p", { class: "verdict", role: "status" });
    this.list = h("ul", { class: "findings" });
    this.room = h("span", {});
    this.roomLine = h("p", { class: "quiet room-words", hidden: true }, this.room, " ", whatIs("room"));
    this.element = h("div", {}, this.verdict, this.roomLine, this.list);
    this.chosen = null;
  }

  /** Show findings; the room is told once the opening model has come to its end. */
  show({ findings, verdict, room = "" }) {
    this.verdict.textContent = findings.length ? said(verdict) : words.design.nothing;
    this.tellRoom(said(room));
    this.fill(findings.map((finding, number) => this.row(finding, number, finding.severity)));
  }

  /** Show the problems of a text that cannot be read; `about` tells what the loaf shows then. */
  showProblems(problems, about) {
    this.verdict.textContent = [words.design.problems(problems.length), about].filter(Boolean).join(". ");
    this.tellRoom("");
    this.fill(problems.map((problem, number) => this.row(problem, number, "problem")));
  }

  /** Say that what is shown is out of date, and why. */
  outdate(why) {
    this.verdict.textContent = why;
    this.tellRoom("");
    this.element.classList.add("outdated");
  }

  /** Nothing is known yet. */
  clear() {
    this.verdict.textContent = "";
    this.tellRoom("");
    this.fill([]);
  }

  tellRoom(text) {
    this.room.textContent = text;
    this.roomLine.hidden = !text;
  }

  fill(rows) {
    this.element.classList.remove("outdated");
    const at = [...this.list.querySelectorAll("button")].indexOf(document.activeElement);
    this.list.replaceChildren(...rows);
    const again = this.list.querySelectorAll("button")[at];
    if (again) again.focus();
  }

  row(told, number, severity) {
    const sign = severity === "problem" ? words.design.problem : severity;
    const cuts = told.cuts && told.cuts.length ? words.design.cuts(told.cuts.length) : "";
    const where = [told.line && words.design.line(told.line), cuts].filter(Boolean).join(" · ");
    const fixes = told.fixes || [];
    const point = (shown) => () => this.pointed(shown, number);
    return h(
      "li",
      {},
      h(
        "button",
        {
          type: "button",
          class: `finding ${severity}`,
          ...pointedAt(point(told), point(null)),
          onclick: () => this.picked(told, number),
        },
        h("span", { class: "sign" }, icon(severity === "problem" ? "stop" : severity), sign),
        h("span", { class: "message" }, said(told.message)),
        told.hint && h("span", { class: "hint" }, said(told.hint)),
        where && h("span", { class: "where" }, where),
      ),
      fixes.length > 0 && h("div", { class: "fixes" }, ...fixes.map(({ told: advice, changes }) => button("fix", () => this.fixed(changes), said(advice)))),
    );
  }
}
