// “What is this?”: a small button whose answer, taken from the help, stands beside it.

import { tellWhy } from "./api.js";
import { beside, h, icon } from "./dom.js";
import { termOf } from "./helped.js";
import { words } from "./words.js";

const told = words.help;

/** Make the button for a term of the glossary, with its answer; nothing for what is no term of it. */
export function whatIs(name) {
  const place = h("span", { class: "what-is" });
  termOf(name).then((term) => term && place.append(...asked(name, ...term)), tellWhy);
  return place;
}

function asked(name, title, text) {
  const id = `answer-${name}`;
  const label = told.whatIs(title);
  const ask = h("button", { id: `ask-${name}`, type: "button", class: "what", popovertarget: id, "aria-label": label, title: label }, icon("what"));
  const answer = h(
    "div",
    { id, class: "answer", popover: "auto", role: "dialog", "aria-labelledby": `${id}-title`, onbeforetoggle: ({ newState }) => newState === "open" && requestAnimationFrame(() => beside(answer, ask)) },
    h("b", { id: `${id}-title` }, title),
    h("p", {}, text),
    h("a", { href: `#help-${name}` }, told.more),
  );
  return [ask, answer];
}

/** An answer stays with its button. */
function follow() {
  const answer = document.querySelector(".what-is .answer:popover-open");
  if (answer) beside(answer, answer.previousElementSibling);
}

addEventListener("scroll", follow, { capture: true, passive: true });
addEventListener("resize", follow);
