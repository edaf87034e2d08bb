// “What is this?”: a small button whose answer, taken from the help, stands beside it.

import { tellWhy } from "./api.js";
import { h, icon } from "./dom.js";
import { termOf } from "./helped.js";
import { words } from "./words.js";

const told = words.help;
const GAP_PX = 8;

/** Make the button for a term of the glossary, with its answer; nothing for what is no term of it. */
export function whatIs(name) {
  const place = h("span", { class: "what-is" });
  termOf(name).then((term) => term && place.append(...asked(term)), tellWhy);
  return place;
}

function asked({ name, title, text }) {
  const id = `answer-${name}`;
  const label = told.whatIs(title);
  const ask = h("button", { id: `ask-${name}`, type: "button", class: "what", popovertarget: id, "aria-label": label, title: label }, icon("what"));
  const answer = h(
    "div",
    { id, class: "answer", popover: "auto", role: "dialog", "aria-labelledby": `${id}-title`, onbeforetoggle: ({ newState }) => newState === "open" && requestAnimationFrame(() => place(answer, ask)) },
    h("b", { id: `${id}-title` }, title),
    h("p", {}, text),
    h("a", { href: `#help-${name}` }, told.more),
  );
  return [ask, answer];
}

/** Put an answer below its button, or above it where there is more room, and within the window. */
export function place(answer, ask) {
  const { left, top, bottom } = ask.getBoundingClientRect();
  const { offsetWidth: wide, offsetHeight: high } = answer;
  const below = bottom + GAP_PX + high <= innerHeight;
  const y = below ? bottom + GAP_PX : Math.max(GAP_PX, top - GAP_PX - high);
  answer.style.left = `${Math.max(GAP_PX, Math.min(left, innerWidth - wide - GAP_PX))}px`;
  answer.style.top = `${y}px`;
}

/** An answer stays with its button. */
function follow() {
  const answer = document.querySelector(".what-is .answer:popover-open");
  if (answer) place(answer, answer.previousElementSibling);
}

addEventListener("scroll", follow, { capture: true, passive: true });
addEventListener("resize", follow);
