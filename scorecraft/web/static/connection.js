// Whether the server answers: says so when it stops, knocks until it does again, and says that too.

const KNOCK_MS = 1500;

class Connection extends EventTarget {
  constructor() {
    super();
    this.lost = false;
  }

  /** Nothing came back from the server. */
  missed() {
    if (this.lost) return;
    this.lost = true;
    this.dispatchEvent(new Event("lost"));
    this.knock();
  }

  /** Something came back, whatever it says. */
  heard() {
    if (!this.lost) return;
    this.lost = false;
    this.dispatchEvent(new Event("back"));
  }

  knock() {
    setTimeout(async () => {
      if (!this.lost) return;
      try {
        await fetch("/api/guest", { credentials: "same-origin" });
        this.heard();
      } catch {
        this.knock();
      }
    }, KNOCK_MS);
  }
}

export const connection = new Connection();
