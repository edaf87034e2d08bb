// Which part of the loaf is looked at: zoom and pan, and where a place of the plan lies on the screen.

const MOST = 12;

/**
 * Three kinds of places: `plan` (mm from the crown, y away from the baker), `picture` (mm as the
 * server draws it, y down) and `here` (px from the stage's upper left corner).
 */
export class View extends EventTarget {
  constructor(element) {
    super();
    this.element = element;
    this.crown = [0, 0];
    this.size = [1, 1];
    this.whole();
    new ResizeObserver(() => this.changed()).observe(element);
  }

  /** Take the frame of a design: where the crown lies on its picture, and how large that is. */
  take({ crown, size }) {
    const same = size.every((each, axis) => Math.abs(each - this.size[axis]) < 1);
    Object.assign(this, { crown, size });
    if (!same) this.whole();
  }

  /** Look at the whole loaf again. */
  whole() {
    this.zoom = 1;
    this.middle = null;
    this.changed();
  }

  get isWhole() {
    return this.zoom === 1;
  }

  /** What of the picture is seen: left, top, width, height in mm. */
  get box() {
    const [wide, high] = this.size.map((each) => each / this.zoom);
    const [x, y] = this.middle || this.size.map((each) => each / 2);
    return [x - wide / 2, y - high / 2, wide, high];
  }

  /** Pixels a millimetre. */
  get scale() {
    const [, , wide, high] = this.box;
    return Math.min(this.element.clientWidth / wide, this.element.clientHeight / high) || 1;
  }

  /** Zoom by a factor; what lies at a place of the screen stays there. */
  by(factor, here = this.centre) {
    const at = this.pictureAt(here);
    this.zoom = Math.min(MOST, Math.max(1, this.zoom * factor));
    if (this.zoom < 1.02) return this.whole();
    const { scale } = this;
    const [x, y] = this.centre;
    this.look([at[0] - (here[0] - x) / scale, at[1] - (here[1] - y) / scale]);
  }

  /** Move what is seen by pixels. */
  pan([dx, dy]) {
    if (this.isWhole) return;
    const { scale, middle } = this;
    this.look([middle[0] - dx / scale, middle[1] - dy / scale]);
  }

  /** Look at a place of the picture, never past the loaf. */
  look(at) {
    this.middle = at.map((each, axis) => Math.min(this.size[axis], Math.max(0, each)));
    this.changed();
  }

  get centre() {
    return [this.element.clientWidth / 2, this.element.clientHeight / 2];
  }

  /** How a picture lies on the screen: px = offset + scale · mm. */
  get offset() {
    const [x, y, wide, high] = this.box;
    const [cx, cy] = this.centre;
    return [cx - (x + wide / 2) * this.scale, cy - (y + high / 2) * this.scale];
  }

  pictureAt([x, y]) {
    const [left, top] = this.offset;
    return [(x - left) / this.scale, (y - top) / this.scale];
  }

  planAt(here) {
    const [x, y] = this.pictureAt(here);
    return [x - this.crown[0], this.crown[1] - y];
  }

  hereOf([x, y]) {
    const [left, top] = this.offset;
    return [left + (this.crown[0] + x) * this.scale, top + (this.crown[1] - y) * this.scale];
  }

  /** Where a pointer is on the stage. */
  here({ clientX, clientY }) {
    const { left, top } = this.element.getBoundingClientRect();
    return [clientX - left, clientY - top];
  }

  /** Show a picture of the loaf from above as it is looked at. */
  apply(svg) {
    svg.setAttribute("viewBox", this.box.map((each) => each.toFixed(3)).join(" "));
  }

  changed() {
    this.dispatchEvent(new Event("change"));
  }
}
