// The room for designing: the loaf in the middle, what can be turned beside it, the text.

import { connection } from "./connection.js";
import { button, h } from "./dom.js";
import { edits } from "./edits.js";
import { Editor, editorPanel } from "./editor.js";
import { Findings } from "./findings.js";
import { LoafForm } from "./forms.js";
import { FirstDesign } from "./hand/first.js";
import { Hand } from "./hand/hand.js";
import { Knobs } from "./knobs.js";
import { shapeName } from "./loaf_shape.js";
import { Looking } from "./looking.js";
import { Stage } from "./stage.js";
import { store } from "./store.js";
import { length, onUnits, said } from "./units.js";
import { words } from "./words.js";
import { working } from "./working.js";

const told = words.design;

export class DesignRoom {
  constructor() {
    this.stage = new Stage({ pointed: (cut) => this.pointCut(cut), drawn: () => this.hand.viewed() });
    this.findings = new Findings({
      pointed: (finding, number) => this.pointFinding(finding, number),
      picked: (finding) => this.pick(finding),
      fixed: (changes) => this.hand.fix(changes),
    });
    this.editor = new Editor({
      typed: (text) => store.write(text, "typing"),
      moved: (line) => this.pointLine(line),
    });
    this.knobs = new Knobs({ pointed: (line) => this.editor.light(line ? [line] : []) });
    this.form = new LoafForm();
    this.title = h("h1", { class: "loaf-title" }, store.name || words.unnamed);
    this.caption = h("p", { class: "caption" });
    this.work = h("p", { class: "working", hidden: true }, told.working);
    this.hand = new Hand({
      stage: this.stage,
      say: (text) => (this.caption.textContent = text),
      showText: (line) => this.pick({ line }),
      onTop: () => this.looking.onTop(),
    });
    this.firstDesign = new FirstDesign(this.hand);
    this.looking = new Looking(this.stage, (look, share) => this.hand.looking(look, share));
    this.element = this.layout();
    store.on("text", ({ kind }) => this.follow(kind));
    store.on("taught", () => store.design && this.form.show(store.design));
    store.on("unmoved", () => this.showControls(true));
    store.on("sight", (sight) => this.looking.see(sight));
    store.on("design", () => this.showDesign());
    store.on("opening", (opening) => this.showFindings(opening));
    store.on("problems", () => this.showProblems());
    onUnits(() => store.design && this.showDesign());
    working.addEventListener("change", () => this.showWork());
    connection.addEventListener("lost", () => this.findings.outdate(told.lost));
    connection.addEventListener("back", () => store.current && this.showFindings(store.design));
    if (store.text) this.editor.show(store.text);
    if (store.design) this.showDesign();
    else if (store.problems.length) this.showProblems();
    else this.clear();
  }

  /** The text is another one; of another file nothing that was shown is left. */
  follow(kind) {
    this.editor.show(store.text);
    if (kind !== "open") return;
    this.clear();
    if (store.text === words.freshText) this.showPanel("score");
  }

  /** Show that a newer design takes its time, and that the findings are about an older one. */
  showWork() {
    this.work.hidden = !working.shown;
    if (working.shown && store.design && !store.current) this.findings.outdate(told.outdated);
  }

  /** Show no loaf: what is open is not read yet, or cannot be. */
  clear() {
    const broken = store.problems.length > 0;
    this.element.classList.remove("stale");
    this.element.classList.add("bare");
    this.title.textContent = store.name || words.unnamed;
    this.caption.textContent = "";
    this.looking.clear(broken ? told.unreadable : "", broken ? told.unreadableHint : "");
    this.knobs.clear(broken ? told.noneYet : "");
    this.form.clear(broken ? told.noneYet : "");
    this.findings.clear();
    this.count(0);
    this.editor.mark([]);
  }

  layout() {
    this.panels = {
      score: panel("score", told.cutsTitle, this.hand.list.element),
      knobs: panel("knobs", told.panels.knobs, this.knobs.element),
      loaf: panel("loaf", told.panels.loaf, this.form.element),
      findings: panel("findings", told.panels.findings, this.findings.element),
      text: h("section", { class: "panel", id: "panel-text" }, ...editorPanel(this.editor)),
    };
    const tabs = this.tabs();
    return h(
      "div",
      { class: "design" },
      h("div", { class: "centre" }, h("div", { class: "head" }, this.title, this.caption, this.work), this.firstDesign.element, this.hand.element, this.hand.bar.element, this.looking.element),
      tabs,
      h("div", { class: "side left" }, this.panels.knobs, this.panels.loaf, this.panels.score),
      h("div", { class: "side right" }, this.panels.findings, this.panels.text),
    );
  }

  /** On a small screen one panel shows at a time. */
  tabs() {
    this.tabButtons = new Map(
      Object.entries(told.panels).map(([name, label]) => [
        name,
        button("tab", () => this.showPanel(name), label),
      ]),
    );
    queueMicrotask(() => this.showPanel(store.text === words.freshText ? "score" : "knobs"));
    this.hand.addEventListener("picked", () => (this.caption.textContent = this.captionNow()));
    this.hand.addEventListener("taken", () => this.showPanel("score"));
    return h("div", { class: "tabs", role: "group", "aria-label": told.panelsLabel }, ...this.tabButtons.values());
  }

  showPanel(name) {
    for (const [each, button] of this.tabButtons) {
      button.setAttribute("aria-pressed", each === name);
      this.panels[each].classList.toggle("chosen", each === name);
    }
    this.element.classList.toggle("scoring", name === "score");
  }

  showDesign() {
    const design = store.design;
    this.element.classList.remove("stale", "bare");
    this.title.textContent = design.title || store.name || words.unnamed;
    this.caption.textContent = this.captionNow();
    this.looking.show(design);
    this.showControls();
    this.showFindings(design);
    this.editor.mark([]);
  }

  /** Show the values of the design, unless newer ones are on their way. */
  showControls(settled = store.current && !edits.pending) {
    if (!store.design) return;
    this.knobs.show(store.design.knobs, settled);
    if (settled) this.form.show(store.design);
  }

  showFindings(told) {
    this.findings.show(told);
    this.count(told.findings.length);
    this.showWork();
  }

  captionOf(design) {
    const { shape, width_mm: width, length_mm: long } = design.loaf;
    const size = width === long ? length(width, 0) : told.longAndWide(length(long, 0), length(width, 0));
    return `${shapeName(shape)} · ${size} · ${told.cuts(design.cuts.length)}`;
  }

  showProblems() {
    if (!store.design) this.clear();
    this.element.classList.toggle("stale", store.design !== null);
    this.findings.showProblems(store.problems, store.design && told.stale);
    this.editor.mark(store.problems);
    this.count(store.problems.length);
  }

  /** Show on the small screen's tab how many findings there are. */
  count(number) {
    this.tabButtons.get("findings").textContent = number ? `${told.panels.findings} ${number}` : told.panels.findings;
  }

  pointFinding(finding, number) {
    this.stage.light(finding && finding.cuts ? finding.cuts : [], finding ? number : null);
    this.editor.light(finding && finding.line ? [finding.line] : []);
  }

  pick(finding) {
    if (!finding.cuts) this.showPanel("text"); // a problem, or a line that is wanted
    if (finding.line) this.editor.goTo(finding.line, finding.column || 1, finding.length || 0);
  }

  pointCut(cut) {
    const known = store.design && store.design.cuts[cut];
    this.stage.light(known && !this.hand.picked ? this.alike(known) : []);
    this.editor.light(known ? [known.line] : []);
    this.caption.textContent = known ? this.cutTold(known) : this.captionNow();
  }

  /** What is picked in words, else the loaf. */
  captionNow() {
    return this.hand.about || (store.design ? this.captionOf(store.design) : "");
  }

  cutTold(cut) {
    const opens = this.looking.opening && this.looking.opening.opens[store.design.cuts.indexOf(cut)];
    return said([cut.said, opens].filter(Boolean).join(" · "));
  }

  alike(cut) {
    return store.design.cuts.flatMap((each, index) => (each.group === cut.group ? [index] : []));
  }

  /** The caret's line lights up the cuts it makes. */
  pointLine(line) {
    if (!store.design) return;
    const cuts = store.design.cuts.flatMap((each, index) => (each.line === line ? [index] : []));
    this.stage.light(cuts);
  }
}

function panel(name, title, ...inside) {
  return h(
    "section",
    { class: "panel", id: `panel-${name}`, "aria-labelledby": `title-${name}` },
    h("h2", { class: "panel-title", id: `title-${name}` }, title),
    ...inside,
  );
}
