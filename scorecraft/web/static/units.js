// Lengths and temperatures as the baker likes to read them; everything stays mm and °C inside.

import { keep, kept } from "./dom.js";

const KEY = "scorecraft.units";
const INCH = 25.4;
export const chosen = { length: "mm", heat: "C", ...kept(KEY) };
const listeners = [];

/** Choose a unit; those who listen show everything anew. */
export function choose(kind, unit) {
  chosen[kind] = unit;
  keep(KEY, chosen);
  for (const listener of listeners) listener();
}

export function onUnits(listener) {
  listeners.push(listener);
}

/** Write a length given in mm. */
export function length(mm, digits = 1) {
  if (chosen.length === "in") return `${trimmed(mm / INCH, 2)} in`;
  return `${trimmed(mm, digits)} mm`;
}

/** Write a temperature given in °C. */
export function heat(celsius) {
  return chosen.heat === "F" ? `${Math.round((celsius * 9) / 5 + 32)} °F` : `${Math.round(celsius)} °C`;
}

/** Numbers for a field: °C to the unit shown, and back. */
export const toHeat = (celsius) => Math.round(chosen.heat === "F" ? (celsius * 9) / 5 + 32 : celsius);
export const fromHeat = (value) => (chosen.heat === "F" ? ((Number(value) - 32) * 5) / 9 : Number(value));

/** Write a value of the pattern with its own unit. */
export function valued(value, unit) {
  if (unit === "mm") return length(value, 2);
  const shown = { deg: "°", "%": "%", C: " °C" }[unit] ?? (unit ? ` ${unit}` : "");
  return `${trimmed(value, 3)}${shown}`;
}

/** Turn the lengths and temperatures in a sentence of the server into the baker's units. */
export function said(text) {
  const one = text.replace(/([\d–]+ °C) \/ ([\d–]+ °F)/g, (_, celsius, fahrenheit) => (chosen.heat === "F" ? fahrenheit : celsius));
  const warm = chosen.heat === "F" ? converted(one, /(-?[\d.]+)(?:–([\d.]+))? °C/g, toHeat, " °F") : one;
  return chosen.length === "in" ? converted(warm, /(-?[\d.]+)(?:–([\d.]+))? mm\b/g, (mm) => trimmed(mm / INCH, 2), " in") : warm;
}

/** Turn numbers, and ranges of them, into another unit. */
function converted(text, found, to, unit) {
  return text.replace(found, (_, low, high) => `${to(Number(low))}${high === undefined ? "" : `–${to(Number(high))}`}${unit}`);
}

/** Numbers for a field: mm to the unit shown, and back. */
export const toField = (mm) => (chosen.length === "in" ? trimmed(mm / INCH, 2) : trimmed(mm, 1));
export const fromField = (value) => (chosen.length === "in" ? Number(value) * INCH : Number(value));
export const fieldUnit = () => chosen.length;

export function trimmed(value, digits) {
  return String(Number(value.toFixed(digits)));
}
