// Floury hands: what counts as a swipe, and what as one tap.

const SWIPE_PX = 50;
const ECHO_MS = 300;

/** Act once for taps that follow one another so quickly that one was meant. */
export function steadied(act) {
  let last = -Infinity;
  return (event) => {
    const echo = event.timeStamp - last < ECHO_MS;
    last = event.timeStamp;
    if (!echo) act(event);
  };
}

/** Hear of swipes, 1 to the left and -1 to the right; a press of a button that drags is none. */
export function swipes(element, act) {
  let from = null;
  element.addEventListener("pointerdown", (event) => {
    const free = event.pointerType !== "mouse" && !event.target.closest("button");
    from = from === null && free ? event : null; // a second finger makes it no swipe
  });
  element.addEventListener("pointerup", (event) => {
    const begun = from;
    from = null;
    if (!begun || begun.pointerId !== event.pointerId) return;
    const [x, y] = [event.clientX - begun.clientX, event.clientY - begun.clientY];
    if (Math.abs(x) > Math.max(SWIPE_PX, 2 * Math.abs(y))) act(x < 0 ? 1 : -1);
  });
  element.addEventListener("pointercancel", () => (from = null));
}
