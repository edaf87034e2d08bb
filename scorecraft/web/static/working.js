// A quiet sign of work, once the server takes longer than the eye likes to wait.

const PATIENCE_MS = 300;
const PAUSE_MS = 80;

class Working extends EventTarget {
  constructor() {
    super();
    this.count = 0;
    this.shown = false;
    this.timer = 0;
  }

  begin() {
    this.count += 1;
    if (this.count > 1) return;
    clearTimeout(this.timer);
    if (!this.shown) this.timer = setTimeout(() => this.show(true), PATIENCE_MS);
  }

  /** One answer may bring the next question: the sign waits for it before it goes. */
  end() {
    this.count -= 1;
    if (this.count > 0) return;
    clearTimeout(this.timer);
    if (this.shown) this.timer = setTimeout(() => this.show(false), PAUSE_MS);
  }

  show(yes) {
    this.shown = yes;
    this.dispatchEvent(new Event("change"));
  }
}

export const working = new Working();
