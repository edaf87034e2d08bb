// The clock at the bench: a tap lets it run or rest; only while it rests can it be set to zero.

import { button, h, iconButton } from "./dom.js";
import { steadied } from "./touch.js";
import { words } from "./words.js";

const told = words.bench;

export class Clock {
  /** `changed` hears that it was started, stopped or set back. */
  constructor(changed) {
    this.changed = changed;
    this.button = button("clock", steadied(() => this.toggle()));
    this.zero = iconButton("zero", told.timerZero, () => this.take({}));
    this.element = h("div", { class: "clock-box" }, this.zero, this.button);
    this.take({});
  }

  /** Take up a clock where it was left; without one it stands at zero. */
  take({ started = null, paused = null, ended = null }) {
    const focused = document.activeElement === this.zero;
    Object.assign(this, { started, paused, ended });
    this.changed();
    if (focused) this.button.focus();
  }

  get kept() {
    const { started, paused, ended } = this;
    return { started, paused, ended };
  }

  /** The first cut starts it; at the end it stands, and going back lets it run on. */
  step(begun, over) {
    if (begun && !this.started) this.started = Date.now();
    this.ended = over ? this.ended || this.paused || Date.now() : null;
  }

  toggle() {
    if (this.ended) return;
    const now = Date.now();
    if (!this.started) this.started = now;
    else if (this.paused) Object.assign(this, { started: this.started + now - this.paused, paused: null });
    else this.paused = now;
    this.changed();
  }

  get seconds() {
    return this.started ? ((this.ended || this.paused || Date.now()) - this.started) / 1000 : 0;
  }

  show(allowed) {
    const text = `${minutes(this.seconds)} / ${minutes(allowed)}`;
    const does = this.ended ? "" : !this.started ? told.timerStart : this.paused ? told.timerOn : told.timerRest;
    if (this.button.textContent !== text) this.button.textContent = text;
    this.button.classList.toggle("late", this.seconds > allowed);
    this.button.classList.toggle("rests", Boolean(this.paused));
    this.button.setAttribute("aria-label", `${told.timer}: ${text}. ${does}`.trim());
    this.zero.hidden = !this.paused;
  }
}

function minutes(seconds) {
  const whole = Math.max(0, Math.round(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}
