// What the room at the bench draws: the ring that shows a turn.

import { part } from "./dom.js";

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
