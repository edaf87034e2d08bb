// Ways to look at the loaf: from above with the oven's slider, from the side, as its guide.

import { ask, Latest, Lost, tellWhy } from "./api.js";
import { h, later } from "./dom.js";
import { choicesOf } from "./choices.js";
import { store } from "./store.js";
import { whatIs } from "./what.js";
import { words } from "./words.js";

const told = words.design;
const SETTLED_MS = 40;
/** Shares of the time in the oven that are pictured, in the order in which they are asked for. */
const SHARES = [1, 0.5, 0.25, 0.75];

export class Looking {
  /** `looked` hears of another look, or of another share of the time in the oven. */
  constructor(stage, looked = () => {}) {
    Object.assign(this, { stage, looked });
    this.look = "top";
    this.share = 0;
    this.opening = null;
    this.asking = new Latest("/api/opening", (answer) => this.opened(answer), () => this.unknown(), Infinity);
    this.askSoon = later(() => store.current && this.asking.ask(store.asked), SETTLED_MS);
    this.blooms = [];
    this.crust = "golden";
    this.flour = "";
    this.views = new Latest("/api/view", (answer, data) => this.seen(answer, data), (error) => tellWhy(error, "view"));
    this.viewSoon = later(() => this.askView(), 60);
    this.oven = this.ovenSlider();
    this.elevation = this.elevationSlider();
    this.baking = this.bakingChoices();
    this.element = h(
      "div",
      { class: "looking" },
      h("div", { class: "sliders" }, this.oven.element, this.elevation.element),
      this.baking,
      h(
        "div",
        { class: "views" },
        choicesOf("look", told.viewsLabel, told.views, "top", (look) => this.choose(look)),
        whatIs("tension"),
      ),
    );
    this.choose("top");
  }

  /** Show a new design. */
  show(design) {
    this.design = design;
    this.opening = null;
    if (this.look === "top") this.showTop();
    else this.viewSoon();
    this.waits(true);
    this.asking.drop();
    if (store.current) this.askSoon();
  }

  /** Show a newer picture than that of the design, which is still on its way. */
  see({ svg }) {
    if (this.look !== "top" || !this.design) return;
    this.opening = null;
    this.stage.show(svg, this.stage.svg.getAttribute("aria-label"), { live: true });
  }

  /** Show no loaf, and say why. */
  clear(title, hint) {
    this.design = this.opening = null;
    this.asking.drop();
    this.views.drop();
    this.stage.clear(title, hint);
    this.oven.note.textContent = "";
    this.oven.slider.disabled = true;
    this.oven.slider.value = 0;
    this.turned();
  }

  showTop() {
    const { svg, title, cuts } = this.design;
    this.stage.show(svg, told.loafLabel(title, cuts.length), { live: true });
    this.apply();
  }

  opened(answer) {
    if (!answer.ok || answer.asked !== store.stamp || !store.current) return;
    this.opening = answer;
    if (this.look === "top") this.stage.pointAt(answer.pointers);
    store.say("opening", answer);
    this.waits(false);
    if (this.share > 0) this.fetchBlooms();
  }

  apply() {
    if (this.look !== "top" || !this.design) return;
    this.stage.pointAt((this.opening ?? this.design).pointers);
    if (!this.opening || !this.blooms.length || this.about !== this.subject()) return;
    this.stage.take(this.blooms, this.design.frame);
    this.stage.bake(this.share);
  }

  /** The pictures of the bake are needed once the slider is moved, and not for every edit. */
  async fetchBlooms() {
    const asked = store.asked;
    const about = this.subject();
    if (!this.opening || this.fetching === about) return;
    if (this.about !== about) Object.assign(this, { about, blooms: [] });
    this.fetching = about;
    try {
      for (const share of SHARES.slice(this.blooms.length)) {
        const answer = await ask("/api/bloom", { ...asked, share, crust: this.crust, flour: this.flour });
        if (!answer.ok || answer.asked !== store.stamp || this.about !== about) return;
        this.blooms.push({ ...answer, share });
        this.apply();
      }
    } catch (error) {
      if (!(error instanceof Lost || error.status)) throw error;
      this.unknown();
    } finally {
      if (this.fetching === about) this.fetching = null;
    }
  }

  /** What the pictures of the bake hang on. */
  subject() {
    const { text, baker } = store.asked;
    return `${baker} ${this.crust} ${this.flour} ${text}`;
  }

  choose(look) {
    this.look = look;
    this.oven.element.hidden = this.baking.hidden = look !== "top" && look !== "side";
    this.elevation.element.hidden = look !== "side";
    this.looked(look, this.share);
    if (!this.design) return;
    if (look === "top") this.showTop();
    else this.askView();
  }

  /** Show the loaf from above as it is scored, to be worked on. */
  onTop() {
    if (this.look !== "top") document.getElementById("look-top").click();
    if (this.share === 0) return;
    this.oven.slider.value = 0;
    this.turned();
  }

  askView() {
    if (this.look === "top" || !this.design) return;
    const { look, crust, flour } = this;
    this.views.ask({ ...store.asked, look, crust, flour, baked: this.share >= 0.5, elevation: Number(this.elevation.slider.value) });
  }

  seen(answer, data) {
    if (answer.ok && store.isOurs(answer.asked) && this.look === data.look) this.stage.show(answer.svg, `${this.design.title}: ${told.views[this.look]}`, { look: this.look });
  }

  /** The model has not come to an end: the loaf is shown as it lies on the bench. */
  unknown() {
    this.oven.note.textContent = told.unknown;
    this.oven.slider.disabled = true;
    this.oven.slider.value = 0;
    this.turned();
  }

  turned() {
    const { value, style } = this.oven.slider;
    this.share = value / 100;
    style.setProperty("--share", `${value}%`);
    this.stage.bake(this.share);
    this.looked(this.look, this.share);
  }

  waits(waiting) {
    this.oven.note.textContent = waiting ? told.working : "";
    this.oven.slider.disabled = waiting && !this.opening && this.share === 0;
  }

  ovenSlider() {
    const note = h("span", { class: "quiet note", role: "status" });
    const slide = () => {
      this.turned();
      this.fetchBlooms();
      if (this.look === "side") this.viewSoon();
    };
    const slider = range("oven", told.bloom, { max: 100, step: 1, disabled: true, onfocus: () => this.fetchBlooms(), onpointerenter: () => this.fetchBlooms() }, 0, slide);
    return { slider, note, element: ends(told.before, slider, [told.after, h("small", {}, told.estimate)], note) };
  }

  /** How dark the oven bakes the loaf, and how much flour lies on it. */
  bakingChoices() {
    const menu = (name, all, shown) =>
      h(
        "label",
        { class: "field", for: name },
        h("span", {}, told[name]),
        h("select", { id: name, onchange: ({ target }) => this.bakeAs({ [name]: target.value }) }, ...all.map((each) => h("option", { value: each }, shown[each || "usual"]))),
      );
    return h("div", { class: "baking" }, menu("crust", ["golden", "light", "dark"], told.crusts), menu("flour", ["", "none", "light", "heavy"], told.flours));
  }

  bakeAs(wish) {
    Object.assign(this, wish);
    if (this.look === "side") this.viewSoon();
    else if (this.share > 0) this.fetchBlooms();
  }

  elevationSlider() {
    const slider = range("elevation", told.elevation, { max: 85, step: 5 }, 25, () => this.viewSoon());
    return { slider, element: ends(told.elevationLow, slider, told.elevationHigh) };
  }
}

/** A slider from 0 on; what it has passed is coloured. */
function range(id, label, limits, value, slid) {
  const fill = () => slider.style.setProperty("--share", `${(slider.value / limits.max) * 100}%`);
  const slider = h("input", { id, type: "range", min: 0, ...limits, "aria-label": label, oninput: () => (fill(), slid()) });
  slider.value = value;
  fill();
  return slider;
}

function ends(from, slider, to, note = "") {
  return h("div", { class: "ends" }, h("span", {}, from), slider, h("span", {}, ...[to].flat()), note);
}
