// The room at the bench: one step fills the screen, for floury hands and eyes at arm's length.

import { ask, Watched } from "./api.js";
import { ringParts } from "./bench_pictures.js";
import { placeIn, screensOf, shortest } from "./bench_plan.js";
import { Clock } from "./clock.js";
import { frame, isAsking } from "./dialog.js";
import { button, drawing, h, icon, iconButton, keep, kept, part, wrapped } from "./dom.js";
import { store } from "./store.js";
import { steadied, swipes } from "./touch.js";
import { onUnits, said } from "./units.js";
import { words } from "./words.js";

const told = words.bench;
const KEPT = "scorecraft.bench";
const WAIT_MS = 3000; // between a guest’s looks at what is laid out
const SMALL = 0.32; // of the loaf's radius: a smaller figure is shown through a lens too
const FORWARD = ["ArrowRight", "ArrowDown", "PageDown", " ", "Enter"];
const BACK = ["ArrowLeft", "ArrowUp", "PageUp", "Backspace"];

export class BenchRoom {
  /** A guest looks at what the baker has laid out; `leave` goes back, `measure` on to the bake. */
  constructor({ guest, welcome, leave, measure }) {
    Object.assign(this, { guest, welcome, measure });
    this.laid = new Watched("/api/laid");
    this.clock = new Clock(() => this.plan && (this.keep(), this.tick()));
    this.bar = h("div", { class: "bench-bar" });
    this.turn = h("p", { class: "turn" });
    this.stage = h("div", { class: "bench-stage" });
    this.text = h("div", { class: "bench-text" });
    this.back = button("bench-back", steadied(() => this.go(-1)), icon("back"), h("span", {}, told.back));
    this.next = button("bench-next", steadied(() => (this.done ? this.measure() : this.go(1))), h("span", {}), icon("next"));
    const head = h(
      "div",
      { class: "bench-head" },
      guest ? null : iconButton("close", told.leave, leave),
      this.bar,
      guest ? null : button("plain phone", () => this.invite(), told.phone),
      this.clock.element,
      iconButton("what", words.help.title, () => (location.hash = "help")),
    );
    const live = { class: "bench-told", "aria-live": "polite", "aria-atomic": "true" };
    this.element = h("div", { class: "bench" }, head, this.stage, h("div", live, this.turn, this.text), h("div", { class: "bench-go" }, this.back, this.next));
    this.listen();
    setInterval(() => this.tick(), 500);
    if (guest) setInterval(() => document.visibilityState === "visible" && this.follow(), WAIT_MS);
    onUnits(() => this.plan && this.show());
  }

  listen() {
    swipes(this.element, (by) => this.go(by));
    addEventListener("keydown", (event) => this.key(event));
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible" && this.element.isConnected) this.enter();
    });
  }

  /** What gets the keyboard when the room is entered. */
  get first() {
    return this.next;
  }

  async enter() {
    this.stayAwake();
    const before = kept(KEPT);
    try {
      const plan = this.guest ? await this.laid.fetch() : await ask("/api/bench", store.asked);
      if (!plan) return; // what is laid out is what lies here
      if (!plan.ok) return this.nothing(plan.problems);
      this.lay(plan, before);
    } catch (error) {
      if (error.status) this.nothing([error]);
      else if (before && before.plan && !this.plan) this.lay(before.plan, before);
    }
  }

  /** A guest takes up what the baker has laid out meanwhile; what lies here stays if nobody answers. */
  async follow() {
    try {
      const plan = await this.laid.fetch();
      if (plan && plan.ok) this.lay(plan, kept(KEPT));
    } catch (error) {
      if (error.status && !this.plan) this.nothing([error]);
    }
  }

  leave() {
    if (this.lock) this.lock.release();
    this.lock = null;
  }

  /** Take up a plan where it was left; another one begins at its beginning. */
  lay(plan, before) {
    const place = placeIn(plan, before, this.guest);
    this.plan = plan;
    this.screens = screensOf(plan);
    this.at = Math.min(place.at, this.screens.length - 1);
    this.loaf = Math.min(place.loaf || 0, this.loaves - 1);
    this.clock.take(place);
    this.svg = drawing(plan.svg, plan.title, false);
    this.prepare();
    this.lens = h("div", { class: "lens", "aria-hidden": "true" });
    this.stage.replaceChildren(this.svg, this.lens);
    this.show();
  }

  /** Show a small figure larger in the corner. */
  magnify(screen) {
    this.lens.replaceChildren();
    const boxes = screen.pulls.map((pull) => this.paths.get(pull.cut).getBBox());
    if (!boxes.length) return;
    const left = Math.min(...boxes.map((box) => box.x));
    const top = Math.min(...boxes.map((box) => box.y));
    const wide = Math.max(...boxes.map((box) => box.x + box.width)) - left;
    const high = Math.max(...boxes.map((box) => box.y + box.height)) - top;
    const reach = Math.hypot(wide, high) / 2 + 3;
    if (reach > SMALL * this.plan.radius_mm) return;
    const [x, y] = this.plan.crown;
    const turn = (this.angle * Math.PI) / 180;
    const [dx, dy] = [left + wide / 2 - x, top + high / 2 - y];
    const [cx, cy] = [x + dx * Math.cos(turn) - dy * Math.sin(turn), y + dx * Math.sin(turn) + dy * Math.cos(turn)];
    this.lens.classList.toggle("aside", cx > x && cy > y); // it must not lie on what it shows
    const near = this.svg.cloneNode(true);
    near.setAttribute("viewBox", `${cx - reach} ${cy - reach} ${2 * reach} ${2 * reach}`);
    near.setAttribute("class", "near");
    this.lens.append(near);
  }

  nothing(problems) {
    this.plan = null;
    this.stage.replaceChildren();
    this.turn.textContent = "";
    const why = problems.length ? problems[0].message : told.nothing;
    this.text.replaceChildren(h("h1", {}, told.title), h("p", { class: "lead" }, why));
  }

  /** Put all that turns into one group, with a ring that shows how far. */
  prepare() {
    const [x, y] = this.plan.crown;
    this.table = wrapped(this.svg, "table");
    this.radius = this.plan.radius_mm + 6;
    const room = this.radius + 8;
    this.svg.setAttribute("viewBox", `${x - room} ${y - room} ${2 * room} ${2 * room}`);
    this.ring = part("g", { class: "ring" });
    this.arrows = part("g", { class: "arrows" });
    this.table.append(this.arrows, part("path", { class: "edge-mark", d: `M${x} ${y - this.radius + 1}l-2.5-8h5z` }));
    this.table.before(this.ring);
    this.paths = new Map([...this.svg.querySelectorAll(".cut[data-cut]")].map((path) => [Number(path.dataset.cut), path]));
  }

  show() {
    const screen = this.screens[this.at];
    const { last, done, guest, loaves } = this;
    this.bar.replaceChildren(
      ...(loaves > 1 ? [h("span", { class: "loaf" }, told.loaf(this.loaf + 1, loaves))] : []),
      h("span", { class: "count" }, told.step(screen.number, this.plan.count)),
      h("progress", { max: this.screens.length - 1, value: this.at, "aria-label": told.progress }),
    );
    this.turnTable(screen);
    this.lightCuts(screen);
    this.turn.replaceChildren(...(screen.turn_said || []).map(([text, weight]) => h(weight === "strong" ? "b" : "span", { class: weight }, text)));
    this.text.replaceChildren(...this.wordsOf(screen));
    this.back.setAttribute("aria-disabled", this.at === 0 && this.loaf === 0); // it keeps the keyboard, unlike one disabled
    this.next.hidden = done && guest;
    this.next.firstElementChild.textContent = done ? words.measure.title : last ? told.nextLoaf : this.at === 0 ? told.start : told.next;
    this.keep();
    this.tick();
  }

  /** Turn the loaf as the table stands, and show on the ring how far it was turned. */
  turnTable(screen) {
    const [x, y] = this.plan.crown;
    const before = this.angle || 0;
    this.angle = before + shortest(screen.table - before, screen.turn);
    this.table.style.setProperty("transform-origin", `${x}px ${y}px`);
    this.table.style.setProperty("transform", `rotate(${this.angle}deg)`);
    this.ring.replaceChildren(...ringParts(this.plan.crown, this.radius, screen.turn));
  }

  get last() {
    return this.at === this.screens.length - 1;
  }

  get loaves() {
    return this.plan.boards.reduce((sum, each) => sum + each, 0);
  }

  /** Whether the last loaf is cut. */
  get done() {
    return Boolean(this.plan) && this.last && this.loaf === this.loaves - 1;
  }

  /** Whether the loaf that is shown is the last one of its board. */
  get boardCut() {
    let ends = 0;
    return this.plan.boards.some((each) => (ends += each) === this.loaf + 1);
  }

  lightCuts(screen) {
    const now = new Set(screen.pulls.map((pull) => pull.cut));
    const done = new Set(this.screens.slice(0, this.at).flatMap((each) => each.pulls.map((pull) => pull.cut)));
    for (const [cut, path] of this.paths) {
      path.classList.toggle("now", now.has(cut));
      path.classList.toggle("done", done.has(cut) && !now.has(cut));
    }
    this.svg.classList.toggle("marking", screen.kind === "marks");
    this.svg.classList.toggle("whole", screen.kind === "start" || screen.kind === "end");
    this.arrows.replaceChildren(...screen.pulls.flatMap((pull) => this.pullParts(pull)));
    this.magnify(screen);
  }

  /** Show where a stroke starts, and which way it is pulled. */
  pullParts({ cut, backward }) {
    const path = this.paths.get(cut);
    const long = path.getTotalLength();
    const at = (share) => path.getPointAtLength(long * (backward ? 1 - share : share));
    const start = at(0);
    const [from, to] = [at(0.55), at(0.6)];
    const turn = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
    const size = Math.min(3.4, 0.7 + long / 16);
    path.style.setProperty("--wide", Math.min(2.4, 0.7 + long / 30));
    return [
      part("circle", { cx: start.x, cy: start.y, r: size * 0.62 }),
      part("path", { d: `M${-size},${-size} L${size},0 L${-size},${size}Z`, transform: `translate(${to.x} ${to.y}) rotate(${turn})` }),
    ];
  }

  wordsOf(screen) {
    if (screen.kind === "start") return this.startWords(this.plan);
    if (screen.kind === "marks") return [h("h1", { class: "sentence" }, this.plan.marks_words), h("p", { class: "lead" }, told.marksHow)];
    if (screen.kind === "end") return this.endWords();
    return screen.lines.map((line) => this.lineWords(line));
  }

  /** What is to be known before the first cut: how to hold the blade safely comes first. */
  startWords({ title, start, notes, cautions }) {
    return [
      h("h1", {}, title),
      caution(cautions.blade),
      ...[...start, ...notes, told.edge].map((text) => h("p", {}, said(text))),
      h("p", { class: "quiet" }, this.canStayAwake() ? told.awake : told.notAwake),
    ];
  }

  /** What is to be known once a loaf is cut: of a batch which one comes next; then how they bake. */
  endWords() {
    const { cautions, hands, oven } = this.plan;
    const next = this.done ? [] : [h("p", { class: "lead" }, this.boardCut ? told.nextBoard : told.sameBoard)];
    const head = [h("h1", {}, told.end), hands && h("p", {}, hands), caution(cautions.oven), ...next];
    if (!this.boardCut) return head;
    const way = ({ name, steps }) => h("div", {}, h("h2", {}, name), h("ol", {}, ...steps.map((step) => h("li", {}, said(step)))));
    const bake = [h("p", {}, said(oven.first)), h("div", { class: "oven-ways" }, ...oven.ways.map(way)), h("p", {}, said(oven.done))];
    return [...head, ...bake, ...(this.done ? [cautions.used && h("p", {}, cautions.used), h("p", { class: "lead" }, told.endHow)] : [])];
  }

  lineWords({ names, facts, blade, aside }) {
    const last = facts.length - 1;
    const picture = (at) => at === last && blade && h("span", { class: "blade", "aria-hidden": "true" }, drawing(blade, "", false));
    const fact = ([name, value], at) => h("div", {}, h("dt", {}, name), h("dd", {}, said(value), picture(at)));
    return h("div", { class: "stroke" }, h("h1", {}, names), h("dl", {}, ...facts.map(fact)), aside && h("p", {}, said(aside)));
  }

  go(by) {
    if (!this.plan) return;
    if (by === 1 && this.last && !this.done) return this.nextLoaf();
    if (by === -1 && this.at === 0 && this.loaf > 0) Object.assign(this, { loaf: this.loaf - 1, at: this.screens.length });
    const next = Math.min(this.screens.length - 1, Math.max(0, this.at + by));
    if (next === this.at) return;
    this.clock.step(this.at === 0 && by > 0, next === this.screens.length - 1);
    this.at = next;
    if ("vibrate" in navigator && this.guest) navigator.vibrate(12);
    this.show();
  }

  /** Go on with the next loaf, at its first cut; the clock counts for a board. */
  nextLoaf() {
    const anew = this.boardCut;
    Object.assign(this, { loaf: this.loaf + 1, at: 1 });
    if (anew) this.clock.take({ started: Date.now() });
    else this.clock.step(false, false);
    this.show();
  }

  key(event) {
    if (!this.element.isConnected || isAsking() || event.ctrlKey || event.metaKey || event.altKey) return;
    const onButton = event.target.closest("button, a") && (event.key === " " || event.key === "Enter");
    if (onButton) return;
    if (event.repeat && [...FORWARD, ...BACK].includes(event.key)) return event.preventDefault();
    if (FORWARD.includes(event.key)) this.go(1);
    else if (BACK.includes(event.key)) this.go(-1);
    else if (event.key === "Home") this.go(-this.screens.length);
    else return;
    event.preventDefault();
  }

  tick() {
    if (this.element.isConnected && this.plan) this.clock.show(this.plan.allowed_seconds);
  }

  keep() {
    const { plan, at, loaf } = this;
    keep(KEPT, { plan, at, loaf, ...this.clock.kept });
  }

  canStayAwake() {
    return "wakeLock" in navigator;
  }

  async stayAwake() {
    if (!this.canStayAwake()) return;
    try {
      this.lock = await navigator.wakeLock.request("screen");
    } catch {
      this.lock = null; // the phone saves its battery: nothing is lost, the step is kept
    }
  }

  async invite() {
    const dialog = frame(told.phone);
    dialog.classList.add("invite");
    if (!this.welcome) dialog.append(h("p", {}, told.notShared), h("code", {}, told.shareCommand));
    else {
      const { link, code } = await ask("/api/invite");
      dialog.append(h("p", {}, told.scan), h("div", { class: "code" }, drawing(code, told.code)), h("code", {}, link), h("p", { class: "quiet" }, told.once));
    }
    dialog.showModal();
  }
}

function caution(text) {
  return h("p", { class: "caution" }, icon("warning"), h("span", {}, text));
}
