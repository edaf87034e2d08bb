// Ways to look at the loaf: from above with the oven's slider, from the side, as its guide.

import { ask, Latest, Lost, tellWhy } from "./api.js";
import { h, later } from "./dom.js";
import { choices } from "./choices.js";
import { store } from "./store.js";
import { whatIs } from "./what.js";
import { words } from "./words.js";

const told = words.design;
const SETTLED_MS = 40;
const BLOOM_MS = 350;

export class Looking {
  constructor(stage) {
    this.stage = stage;
    this.look = "top";
    this.share = 0;
    this.opening = null;
    this.asking = new Latest("/api/opening", (answer) => this.opened(answer), () => this.unknown(), Infinity);
    this.askSoon = later(() => store.current && this.asking.ask(store.asked), SETTLED_MS);
    this.bloomSoon = later(() => this.fetchBloom(), BLOOM_MS);
    this.views = new Latest("/api/view", (answer, data) => this.seen(answer, data), (error) => tellWhy(error, "view"));
    this.viewSoon = later(() => this.askView(), 60);
    this.oven = this.ovenSlider();
    this.elevation = this.elevationSlider();
    this.element = h(
      "div",
      { class: "looking" },
      h("div", { class: "sliders" }, this.oven.element, this.elevation.element),
      h(
        "div",
        { class: "views" },
        choices("look", told.viewsLabel, Object.keys(told.views), "top", (each) => told.views[each], (look) => this.choose(look)),
        whatIs("tension"),
      ),
    );
    this.choose("top");
  }

  /** Show a new design. */
  show(design) {
    this.design = design;
    this.opening = this.mouths = null;
    if (this.look === "top") this.showTop();
    else this.viewSoon();
    this.waits(true);
    this.asking.drop();
    if (store.current) this.askSoon();
  }

  /** Show no loaf, and say why. */
  clear(title, hint) {
    this.design = this.opening = this.mouths = null;
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

  /** The widest opening of a cut as its least and most in mm, or null while it is not known. */
  widest(cut) {
    return this.opening ? this.opening.widest_mm[cut] : null;
  }

  opened(answer) {
    if (!answer.ok || answer.asked !== store.stamp || !store.current) return;
    this.opening = answer;
    if (this.look === "top") this.stage.pointAt(answer.pointers);
    store.say("opening", answer);
    this.waits(false);
    if (this.share > 0) this.fetchMouths();
  }

  /** The mouths are needed once the slider is moved, and not for every edit. */
  async fetchMouths() {
    const asked = store.asked;
    if (!this.opening || this.asked === asked.asked || this.mouths) return;
    this.asked = asked.asked;
    try {
      const answer = await ask("/api/mouths", asked);
      if (!answer.ok || answer.asked !== store.stamp || !store.current) return;
      this.mouths = answer;
      this.apply();
      if (this.share > 0) this.bloomSoon(0);
    } catch (error) {
      if (!(error instanceof Lost || error.status)) throw error;
      this.unknown();
    } finally {
      this.asked = null;
    }
  }

  apply() {
    if (this.look !== "top" || !this.design) return;
    if (this.opening) this.stage.pointAt(this.opening.pointers);
    if (!this.mouths) return;
    const ready = this.bloom && this.bloom.about === subject(store.asked) ? this.bloom : null;
    this.stage.take(this.mouths, this.design.frame, ready);
    this.stage.bake(this.share);
  }

  async fetchBloom() {
    const asked = store.asked;
    const about = subject(asked);
    if ((this.bloom && this.bloom.about === about) || this.fetching === about) return;
    this.fetching = about;
    try {
      const answer = await ask("/api/bloom", asked);
      if (!answer.ok || answer.asked !== store.stamp) return;
      if (this.bloom) URL.revokeObjectURL(this.bloom.address);
      const [width, height] = answer.size;
      const address = URL.createObjectURL(new Blob([answer.svg], { type: "image/svg+xml" }));
      this.bloom = { about, address, width, height };
      this.apply();
    } catch (error) {
      // the mouths do without it; the slider's next move asks again
      if (!(error instanceof Lost || error.status)) throw error;
    } finally {
      this.fetching = null;
    }
  }

  choose(look) {
    this.look = look;
    this.oven.element.hidden = look !== "top";
    this.elevation.element.hidden = look !== "side";
    if (!this.design) return;
    if (look === "top") this.showTop();
    else this.askView();
  }

  askView() {
    if (this.look === "top" || !this.design) return;
    this.views.ask({ ...store.asked, look: this.look, elevation: Number(this.elevation.slider.value) });
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
  }

  waits(waiting) {
    this.oven.note.textContent = waiting ? told.working : "";
    this.oven.slider.disabled = waiting && !this.opening && this.share === 0;
  }

  ovenSlider() {
    const note = h("span", { class: "quiet note", role: "status" });
    const slider = h("input", {
      id: "oven",
      type: "range",
      min: 0,
      max: 100,
      step: 1,
      disabled: true,
      props: { value: 0 },
      "aria-label": told.bloom,
      onfocus: () => this.fetchMouths(),
      onpointerenter: () => this.fetchMouths(),
      oninput: () => {
        this.turned();
        if (!this.mouths) this.fetchMouths();
        else if (this.share > 0) this.bloomSoon();
      },
    });
    slider.style.setProperty("--share", "0%");
    return { slider, note, element: ends(told.before, slider, [told.after, h("small", {}, told.estimate)], note) };
  }

  elevationSlider() {
    const slider = h("input", {
      id: "elevation",
      type: "range",
      min: 0,
      max: 85,
      step: 5,
      props: { value: 25 },
      "aria-label": told.elevation,
      oninput: () => {
        slider.style.setProperty("--share", `${(slider.value / 85) * 100}%`);
        this.viewSoon();
      },
    });
    slider.style.setProperty("--share", `${(25 / 85) * 100}%`);
    return { slider, element: ends(told.elevationLow, slider, told.elevationHigh) };
  }
}

/** What a picture of the baked loaf hangs on. */
function subject({ text, baker }) {
  return `${baker} ${text}`;
}

function ends(from, slider, to, note = "") {
  return h("div", { class: "ends" }, h("span", {}, from), slider, h("span", {}, ...[to].flat()), note);
}
