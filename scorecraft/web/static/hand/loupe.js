// A loupe beside the finger: what lies under it, twice as large.

import { h, part } from "../dom.js";

const SIZE_PX = 112;
const LARGER = 2;
const AWAY_PX = 92;

export class Loupe {
  constructor(view) {
    this.view = view;
    this.svg = part("svg", { width: SIZE_PX, height: SIZE_PX });
    this.cross = part("path", { class: "cross", d: crossAt(SIZE_PX / 2) });
    this.element = h("div", { class: "loupe", hidden: true, "aria-hidden": "true" }, this.svg);
  }

  /** Show what lies under a place of the stage: the loaf and what is in the hand. */
  show(here, drawn) {
    if (this.element.hidden) this.copy(drawn);
    const { scale, offset } = this.view;
    const zoom = scale * LARGER;
    const [x, y] = here.map((each, axis) => SIZE_PX / 2 - ((each - offset[axis]) / scale) * zoom);
    this.loaf.setAttribute("transform", `translate(${x} ${y}) scale(${zoom})`);
    this.inHand.setAttribute("transform", `translate(${SIZE_PX / 2 - here[0] * LARGER} ${SIZE_PX / 2 - here[1] * LARGER}) scale(${LARGER})`);
    const above = here[1] - AWAY_PX - SIZE_PX / 2 > 0;
    const aside = here[0] > this.view.element.clientWidth / 2 ? -AWAY_PX : AWAY_PX;
    const [left, top] = above ? [here[0], here[1] - AWAY_PX] : [here[0] + aside, Math.max(SIZE_PX / 2, here[1])];
    const most = this.view.element.clientWidth - SIZE_PX / 2;
    this.element.style.transform = `translate(${Math.min(most, Math.max(SIZE_PX / 2, left)) - SIZE_PX / 2}px, ${top - SIZE_PX / 2}px)`;
    this.element.hidden = false;
  }

  hide() {
    this.element.hidden = true;
    this.svg.replaceChildren();
  }

  /** The picture is used again, not copied: it is drawn as it is at that moment. */
  copy({ picture, inHand }) {
    this.loaf = part("use", { href: `#${picture}` });
    this.inHand = part("use", { href: `#${inHand}` });
    this.svg.replaceChildren(this.loaf, this.inHand, this.cross);
  }
}

function crossAt(middle) {
  return `M${middle - 9} ${middle}h6M${middle + 3} ${middle}h6M${middle} ${middle - 9}v6M${middle} ${middle + 3}v6`;
}
