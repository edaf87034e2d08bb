// Elements made in one call, and SVG put into the page as elements, never as markup.

const SVG_TEXT = "image/svg+xml";

/** Make an element: attributes by name, `on…` listeners, properties in `props`; texts as text. */
export function h(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) set(element, name, value);
  element.append(...children.flat().filter((child) => child !== null && child !== undefined && child !== false));
  return element;
}

/** Make a button. */
export function button(look, onclick, ...children) {
  return h("button", { type: "button", class: look, onclick }, ...children);
}

/** Make a button that shows an icon, with a label for those who do not see it. */
export function iconButton(name, label, onclick) {
  return h("button", { type: "button", class: "quiet-button", "aria-label": label, title: label, onclick }, icon(name));
}

function set(element, name, value) {
  if (value === null || value === undefined || value === false) return;
  if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
  else if (name === "props") Object.assign(element, value);
  else element.setAttribute(name, value === true ? "" : value);
}

/** Read an SVG text of the server into an element of this page; without its size it fills its place. */
export function drawing(text, label = "", sized = true) {
  const parsed = new DOMParser().parseFromString(text, SVG_TEXT).documentElement;
  const element = document.importNode(parsed, true);
  if (!sized) for (const size of ["width", "height"]) element.removeAttribute(size);
  if (label) element.setAttribute("aria-label", label);
  return element;
}

/** Listeners for what happens while a thing is pointed at, with the pointer or the keyboard. */
export function pointedAt(begin, end) {
  return { onmouseenter: begin, onmouseleave: end, onfocus: begin, onblur: end };
}

/** Make an SVG element. */
export function part(tag, attributes, ...children) {
  const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  element.append(...children);
  return element;
}

/** Put all that a picture draws into one group, which can then grow or turn. */
export function wrapped(svg, name) {
  const group = part("g", { class: name });
  group.append(...[...svg.children].filter((child) => !["title", "desc", "defs"].includes(child.localName)));
  svg.append(group);
  return group;
}

/** What this browser keeps under a key, or null. */
export function kept(key) {
  try {
    return JSON.parse(localStorage.getItem(key));
  } catch {
    return null;
  }
}

export function keep(key, value) {
  localStorage.setItem(key, JSON.stringify(value));
}

/** A small picture of our own set: lines on a 24 × 24 field. */
const ICONS = {
  undo: "M9 6 4 11l5 5M4 11h9a6 6 0 0 1 0 12",
  redo: "m15 6 5 5-5 5M20 11h-9a6 6 0 0 0 0 12",
  gear: "M12 8.5a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7M12 2v4M12 18v4M2 12h4M18 12h4M5 5l2.8 2.8M16.2 16.2 19 19M5 19l2.8-2.8M16.2 7.8 19 5",
  zero: "M5 5v5h5M5.5 9.5A7.5 7.5 0 1 1 4.5 13",
  close: "M6 6l12 12M18 6 6 18",
  stop: "M8 3h8l5 5v8l-5 5H8l-5-5V8zM12 7v6M12 16.2v.6",
  warning: "M12 3.5 22 20H2zM12 10v5M12 17.2v.5",
  note: "M12 3a9 9 0 1 0 0 18 9 9 0 0 0 0-18M12 11v6M12 7.3v.6",
  what: "M12 3a9 9 0 1 0 0 18 9 9 0 0 0 0-18M9.4 9.7a2.6 2.6 0 1 1 3.9 2.3c-.9.5-1.3 1-1.3 1.9M12 16.7v.5",
  back: "M15 5 8 12l7 7",
  next: "m9 5 7 7-7 7",
  plus: "M12 5v14M5 12h14",
  more: "M5 12h.01M12 12h.01M19 12h.01",
  minus: "M5 12h14",
  whole: "M5 9V5h4M15 5h4v4M19 15v4h-4M9 19H5v-4",
  print: "M7 9V3h10v6M7 18H4V9h16v9h-3M7 14h10v7H7z",
  down: "M12 3v12M7 11l5 5 5-5M4 20h16",
  shelf: "M4 4h7v7H4zM13 4h7v7h-7zM4 13h7v7H4zM13 13h7v7h-7z",
  design: "M4 20l4-1L20 7l-3-3L5 16zM14 7l3 3",
  bench: "M12 4a8 8 0 1 0 8 8M12 12V6M12 12l4 3M20 4v5h-5",
  measure: "M3 16 16 3l5 5L8 21zM7 12l2 2M10 9l3 3M13 6l2 2",
};

/** Draw an icon; it is only an ornament, so readers skip it. */
export function icon(name) {
  return part("svg", { viewBox: "0 0 24 24", class: `icon icon-${name}`, "aria-hidden": "true" }, part("path", { d: ICONS[name] }));
}

/** Put other things into an element; the keyboard stays on the one with the same id. */
export function refill(element, ...children) {
  const at = element.contains(document.activeElement) ? document.activeElement.id : "";
  element.replaceChildren(...children);
  const again = at && document.getElementById(at);
  if (again) again.focus({ preventScroll: true });
}

/** Wait until nothing has happened for a while; `soon()` starts the wait again. */
export function later(act, wait) {
  let timer = 0;
  return (other = wait) => {
    clearTimeout(timer);
    timer = setTimeout(act, other);
  };
}
