// The keyboard's way to a cut: a list that is heard and steers the lights on the loaf.

import { h } from "./dom.js";
import { words } from "./words.js";

export class CutList {
  /** `pointed` hears of the cut that is chosen (or null), `picked` of one that is wanted in the text. */
  constructor({ pointed, picked }) {
    this.element = h("select", {
      class: "cut-list hidden",
      size: 2, // a list, not a menu that opens
      "aria-label": words.design.cutList,
      onfocus: () => pointed(this.chosen()),
      oninput: () => pointed(this.chosen()),
      onblur: () => pointed(null),
      onkeydown: (event) => {
        if (event.key !== "Enter") return;
        event.preventDefault(); // else the line break lands in the text, where the caret goes
        picked(this.chosen());
      },
    });
  }

  /** List the numbered cuts, each told as the caption tells it. */
  show({ cuts, groups }, told) {
    const { value } = this.element;
    const first = new Map();
    cuts.forEach((cut, index) => first.has(cut.group) || first.set(cut.group, index));
    const options = groups.map(({ number }) => h("option", { value: number, "data-cut": first.get(number) }, told(cuts[first.get(number)])));
    this.element.replaceChildren(...options);
    this.element.value = value || (groups.length ? groups[0].number : "");
    this.element.disabled = !groups.length;
  }

  chosen() {
    const [option] = this.element.selectedOptions;
    return option ? Number(option.dataset.cut) : null;
  }
}
