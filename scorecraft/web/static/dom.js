// Elements made in one call, and SVG put into the page as elements, never as markup.

const GAP_PX = 8;
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

/** Give an element the name that readers hear. */
export function named(element, label) {
  element.setAttribute("aria-label", label);
  return element;
}

/** Make a button that shows an icon, with a label for those who do not see it. */
export function iconButton(name, label, onclick) {
  const made = named(button("quiet-button", onclick, icon(name)), label);
  made.title = label;
  return made;
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

/** Draw an icon of the page's own set; it is only an ornament, so readers skip it. */
export function icon(name) {
  return part("svg", { viewBox: "0 0 24 24", class: `icon icon-${name}`, "aria-hidden": "true" }, part("use", { href: `#icon-${name}` }));
}

/** Put other things into an element; the keyboard stays on the one with the same id. */
export function refill(element, ...children) {
  const at = element.contains(document.activeElement) ? document.activeElement.id : "";
  element.replaceChildren(...children);
  const again = at && document.getElementById(at);
  if (again) again.focus({ preventScroll: true });
}

/** Put what popped up below what asked for it, or above where there is more room, and within the window. */
export function beside(popped, asker, above = false) {
  const { left, top, bottom } = asker.getBoundingClientRect();
  const { offsetWidth: wide, offsetHeight: high } = popped;
  const [over, under] = [top - GAP_PX - high, bottom + GAP_PX];
  const below = above ? over < 0 : under + high <= innerHeight;
  popped.style.left = `${Math.max(GAP_PX, Math.min(left, innerWidth - wide - GAP_PX))}px`;
  popped.style.top = `${Math.max(GAP_PX, below ? Math.min(under, innerHeight - high - GAP_PX) : over)}px`;
}

/** Wait until nothing has happened for a while; `soon()` starts the wait again. */
export function later(act, wait) {
  let timer = 0;
  return (other = wait) => {
    clearTimeout(timer);
    timer = setTimeout(act, other);
  };
}
