// How coarsely to draw while something moves, so that frames keep up, as they may not without a graphics card. No page in here.

export const REST = 400;      // ms without a frame after which nothing moves
const SLOW = 24, COARSEST = 3, MOST_SLOW = 3, ENOUGH_QUICK = 90;

export class Pace {
  /** Screen pixels, across, to one that is drawn. */
  coarse = 1;
  #slow = 0;
  #quick = 0;

  /** Another frame, that many ms after the last: several slow ones make it coarser, many quick ones finer. */
  frame(gap) {
    if (gap >= REST) return;
    this.#slow = gap > SLOW ? this.#slow + 1 : 0;
    this.#quick = gap > SLOW ? 0 : this.#quick + 1;
    if (this.#slow === MOST_SLOW) this.#become(this.coarse + 1);
    if (this.#quick === ENOUGH_QUICK) this.#become(this.coarse - 1);
  }

  #become(coarse) {
    this.coarse = Math.max(1, Math.min(COARSEST, coarse));
    this.#slow = this.#quick = 0;
  }
}
