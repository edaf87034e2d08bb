// What the page says: in passing in the corner, or lasting in a bar until its reason is over.

import { h, iconButton } from "./dom.js";
import { words } from "./words.js";

const PASSING_MS = 5000;
const MOST = 3;
const bar = h("div", { id: "lasting", class: "lasting", role: "alert" });
document.getElementById("top").after(bar);
new ResizeObserver(() => document.documentElement.style.setProperty("--bar", `${bar.offsetHeight}px`)).observe(bar);

/** Say something; readers hear it too. What is `lasting` stays until it is closed or hushed. */
export function tell(text, { lasting = false, about = "" } = {}) {
  if (lasting) return last(text, about || text);
  const line = h("p", {}, text);
  document.getElementById("told").replaceChildren(line);
  setTimeout(() => line.remove(), PASSING_MS);
}

/** Take away what was said about something: its reason is over. */
export function hush(about) {
  for (const line of bar.querySelectorAll("p")) if (line.dataset.about === about) line.remove();
}

function last(text, about) {
  hush(about);
  const line = h("p", { "data-about": about }, h("span", {}, text), iconButton("close", words.closeMessage, () => line.remove()));
  bar.append(line);
  while (bar.childElementCount > MOST) bar.firstElementChild.remove();
}
