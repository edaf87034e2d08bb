// What the room at the bench draws: the ring that shows a turn, and the blade in the dough.

import { part } from "./dom.js";
import { words } from "./words.js";

/** Ticks of the dial, and an arc with an arrow as long as the turn. */
export function ringParts([x, y], radius, turn) {
  const at = (degrees, far = radius) => {
    const angle = ((degrees - 90) * Math.PI) / 180;
    return [x + far * Math.cos(angle), y + far * Math.sin(angle)];
  };
  const ticks = [];
  for (let degrees = 0; degrees < 360; degrees += 15) {
    const [[x1, y1], [x2, y2]] = [at(degrees, radius - 1.5), at(degrees, radius + (degrees % 45 ? 1 : 3))];
    ticks.push(`M${x1},${y1}L${x2},${y2}`);
  }
  const parts = [part("path", { class: "ticks", d: ticks.join("") })];
  if (Math.abs(turn) < 0.5) return parts;
  const [[x1, y1], [x2, y2]] = [at(0), at(turn)];
  const [large, way] = [Math.abs(turn) > 180 ? 1 : 0, turn > 0 ? 1 : 0];
  parts.push(part("path", { class: "arc", d: `M${x1},${y1}A${radius} ${radius} 0 ${large} ${way} ${x2},${y2}` }));
  parts.push(part("circle", { class: "from", cx: x1, cy: y1, r: 3 }));
  const tip = turn + (turn > 0 ? 90 : -90) - 90;
  parts.push(part("path", { class: "tip", d: "M-5,-5.5 L6,0 L-5,5.5Z", transform: `translate(${x2} ${y2}) rotate(${tip})` }));
  return parts;
}

/**
 * The blade in the dough as the handle leans: to a side as seen by who cuts, away or toward as seen
 * from the side. Where like cuts lean to no one side a slanted blade is drawn to either.
 */
export function bladeGlyph({ blade_deg: angle, upright, tilt_deg: tilt, lean }) {
  const aside = /away|toward/.test(lean);
  const way = /left|toward/.test(lean) ? -1 : 1;
  const blade = upright ? 90 : angle;
  const rises = lean ? 90 - tilt : blade;
  const at = (degrees, far) => {
    const turn = (degrees * Math.PI) / 180;
    return `${20 + way * far * Math.cos(turn)},${20 - far * Math.sin(turn)}`;
  };
  const svg = part("svg", { viewBox: aside ? "-24 0 64 32" : "0 0 40 32", class: aside ? "blade aside" : "blade", "aria-hidden": "true" });
  const skin = rises - blade;
  svg.append(part("path", { class: "skin", d: `M${at(skin + 180, 18)}L${at(skin, 18)}` }));
  if (lean) svg.append(part("path", { class: "plumb", d: "M20,20V1" }));
  for (const turn of lean || upright ? [rises] : [rises, 180 - rises]) svg.append(part("path", { class: "edge", d: `M${at(turn + 180, 5)}L${at(turn, 19)}` }));
  if (aside) svg.append(part("text", { x: -24, y: 24 }, words.bench.you));
  return svg;
}
