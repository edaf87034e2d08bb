// The room after the bake: tap a cut, type its width, compare with the model, keep it in the log.

import { ask, fetched, tellWhy } from "./api.js";
import { button, drawing, h, iconButton, keep, kept, pointedAt } from "./dom.js";
import { fault, fieldLimits, range, usable } from "./fields.js";
import { hush, tell } from "./messages.js";
import { Stage } from "./stage.js";
import { store } from "./store.js";
import { fieldUnit, fromField, length, onUnits, said, toField } from "./units.js";
import { words } from "./words.js";

const told = words.measure;
const KEPT = "scorecraft.measured";

export class MeasureRoom {
  constructor() {
    this.rows = [];
    this.stage = new Stage({ pointed: (cut) => this.point(cut), tapped: (cut) => store.design && this.add(this.groupOf(cut)) });
    this.cuts = h("div", { class: "measure-cuts", role: "group", "aria-label": told.cuts });
    this.list = h("ul", { class: "measured" });
    this.note = h("input", { id: "bake-note", type: "text", maxlength: 200 });
    this.compare = button("main", () => this.send(false), told.compare);
    this.keep = button("plain", () => this.send(true), told.keep);
    this.result = h("div", { class: "result", role: "status" });
    this.log = h("div", { class: "log" });
    this.element = this.layout();
    store.on("design", () => this.element.isConnected && this.showLoaf());
    store.on("text", ({ kind }) => kind === "open" && this.clear());
    onUnits(() => this.element.isConnected && this.showRows());
  }

  layout() {
    return h(
      "div",
      { class: "measure" },
      h("div", { class: "measure-loaf", role: "region", "aria-label": told.loaf }, this.stage.element, this.cuts),
      h(
        "div",
        { class: "measure-side" },
        h("div", { class: "room-head" }, h("h1", {}, told.title), h("p", { class: "lead" }, told.lead)),
        this.list,
        h("label", { class: "field", for: "bake-note" }, h("span", {}, told.note), this.note),
        h("div", { class: "buttons" }, this.compare, this.keep),
        this.result,
        h("section", { "aria-labelledby": "log-title" }, h("h2", { id: "log-title" }, told.log), this.log),
      ),
    );
  }

  enter() {
    this.rows = read(store.name);
    this.result.replaceChildren();
    if (store.design) this.showLoaf();
    else this.clear();
    this.showRows();
    this.showLog();
  }

  /** No loaf is known yet: there is nothing to tap. */
  clear() {
    this.stage.clear("", "");
    this.cuts.replaceChildren();
  }

  showLoaf() {
    const { svg, title, groups } = store.design;
    this.stage.show(svg, title, { live: true });
    this.cuts.replaceChildren(
      ...groups.map((group) =>
        h(
          "button",
          {
            type: "button",
            class: "cut-button",
            "aria-label": told.add(called(group)),
            onclick: () => this.add(group),
            ...pointedAt(() => this.light(group.number), () => this.light(null)),
          },
          called(group),
        ),
      ),
    );
    this.showRows();
  }

  point(cut) {
    this.light(cut === null ? null : store.design.cuts[cut].group);
  }

  light(number) {
    if (!store.design) return;
    this.stage.light(store.design.cuts.flatMap((cut, index) => (cut.group === number ? [index] : [])));
  }

  groupOf(cut) {
    return store.design.groups.find((group) => group.number === store.design.cuts[cut].group);
  }

  add({ key, name, mark }) {
    this.rows.push({ key, name, mark, width_mm: null });
    this.keepRows();
    this.showRows();
    this.list.lastElementChild.querySelector("input").focus();
  }

  showRows() {
    const items = this.rows.map((row) => {
      const group = groupFor(row);
      return group ? this.row(row, group) : this.gone(row);
    });
    const none = h("li", { class: "quiet" }, told.none);
    this.list.replaceChildren(...(!store.design ? [] : items.length ? items : [none]));
    this.update();
  }

  /** A width whose cut was deleted or changed since: it stays in sight, and is not compared. */
  gone(row) {
    const changed = groupsNow().some((group) => group.key === row.key);
    return h(
      "li",
      { class: "gone" },
      h("span", { class: "measured-name" }, h("b", {}, row.key), ` ${changed ? told.changed : told.gone}`),
      h("span", {}, row.width_mm === null ? "" : length(row.width_mm)),
      iconButton("close", told.remove(row.key), () => this.remove(row)),
    );
  }

  remove(row) {
    const at = this.rows.indexOf(row);
    this.rows.splice(at, 1);
    this.keepRows();
    this.showRows();
    const left = this.list.querySelectorAll("button"); // the keyboard stays among the rows
    (left[Math.min(at, left.length - 1)] || this.cuts.querySelector("button")).focus();
  }

  row(row, group) {
    const id = `width-${this.rows.indexOf(row)}`;
    const limits = fieldLimits(store.design.limits.measured.width);
    const input = h("input", {
      id,
      type: "number",
      inputmode: "decimal",
      ...limits,
      step: "any",
      "aria-label": told.width(called(group)),
      props: { value: row.width_mm === null ? "" : toField(row.width_mm) },
      oninput: () => {
        row.width_mm = usable(input) ? fromField(input.value) : null;
        say(usable(input) || !input.value ? "" : range(limits, fieldUnit()));
        this.keepRows();
        this.update();
      },
      ...pointedAt(() => this.light(group.number), () => this.light(null)),
      onkeydown: (event) => event.key === "Enter" && this.ready().length && this.send(false),
    });
    const { line, say } = fault(input);
    return h(
      "li",
      {},
      h("span", { class: "measured-name" }, h("b", {}, String(group.number)), ` ${group.key}`),
      h("span", { class: "with-unit" }, input, h("i", {}, fieldUnit())),
      iconButton("close", told.remove(called(group)), () => this.remove(row)),
      line,
    );
  }

  ready() {
    return this.rows.filter((row) => row.width_mm !== null && groupFor(row));
  }

  update() {
    this.compare.disabled = this.keep.disabled = !this.ready().length;
  }

  keepRows() {
    keep(KEPT, { name: store.name, rows: this.rows });
  }

  async send(keep) {
    this.result.replaceChildren(h("p", { class: "quiet" }, words.design.working));
    this.compare.disabled = this.keep.disabled = true;
    try {
      const answer = await ask("/api/measure", { ...store.asked, rows: this.ready(), note: this.note.value, keep });
      if (!answer.ok) throw Object.assign(new Error(answer.problems[0].message), { status: 200, hint: "" });
      hush("measure");
      this.show(answer);
      if (keep) {
        tell(told.kept);
        store.learn(true);
        this.showLog();
      }
    } catch (error) {
      this.result.replaceChildren();
      tellWhy(error, "measure");
    } finally {
      this.update();
    }
  }

  show(answer) {
    const rows = answer.rows.map((row) => [
      called(row),
      length(row.measured_mm),
      length(row.predicted_mm),
      `${row.measured_mm >= row.predicted_mm ? "+" : "−"}${length(Math.abs(row.measured_mm - row.predicted_mm))}`,
    ]);
    const learned = answer.learned.map((text, number) => h("p", { class: number ? null : "verdict" }, said(text)));
    const parts = [
      ...learned,
      table([told.cut, told.measured, told.predicted, told.off], rows),
      h("div", { class: "plot" }, drawing(answer.plot, told.plot)),
    ];
    this.result.replaceChildren(...parts);
  }

  async showLog() {
    try {
      const { bakes, unreadable } = await fetched("/api/bakes");
      const rows = bakes.map((bake) => [bake.date, bake.title || bake.pattern, bake.skin_mm && length(Number(bake.skin_mm)), bake.note]);
      const heads = [told.date, told.pattern, told.skinHead, told.noteHead];
      const list = bakes.length ? table(heads, rows) : h("p", { class: "quiet" }, told.logNone);
      const odd = unreadable.length && h("p", { class: "quiet" }, told.logUnreadable(unreadable.join(", ")));
      this.log.replaceChildren(...[list, odd].filter(Boolean));
    } catch (error) {
      tellWhy(error);
    }
  }
}

function table(heads, rows) {
  return h(
    "table",
    {},
    h("thead", {}, h("tr", {}, ...heads.map((head) => h("th", { scope: "col" }, head)))),
    h("tbody", {}, ...rows.map((row) => h("tr", {}, ...row.map((cell) => h("td", {}, cell))))),
  );
}

function called({ number, key }) {
  return `${number} ${key}`;
}

function groupsNow() {
  return store.design ? store.design.groups : [];
}

/** The cuts a width was measured on: those of the same statement, under its name of today. */
function groupFor(row) {
  const same = groupsNow().filter((group) => group.mark === row.mark && group.name === row.name);
  const found = same.length === 1 ? same[0] : same.find((group) => group.key === row.key);
  if (found) row.key = found.key;
  return found;
}

function read(name) {
  const before = kept(KEPT);
  if (!before || before.name !== name || !Array.isArray(before.rows)) return [];
  return before.rows.map((row) => (row.key ? row : { ...row, key: String(row.number) }));
}
