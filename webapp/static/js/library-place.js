// The place of a piece, kept in the library: one small save at a time, in order, and none over what another page has saved.

import { ask } from "./server.js";

const UNHEARD = "Your place is not kept: the program does not answer. It is tried again with the next run.";

/** The place that the page came with, and how it is kept; `words` says whether that was done. */
export function placeInLibrary({ save, sequence, thread, strung, earlier = 0 }, words) {
  let seen = Number(sequence), waiting = null, sending = false, refused = false;
  return { kept: Number(strung) - Number(earlier), keep };

  function keep(at) {
    waiting = at + Number(earlier);
    if (!sending && !refused) send();
  }

  async function send() {
    sending = true;
    while (waiting !== null && !refused) {
      const strung = waiting;
      waiting = null;
      try {
        const { status, body } = await ask(save, { method: "PUT", json: { thread: Number(thread), strung, sequence: seen } });
        refused = status !== 200;
        if (refused) words.textContent = body?.error?.message ?? UNHEARD;
        else {
          seen = body.sequence;
          words.textContent = "Your place is kept in the library.";
        }
      } catch {
        words.textContent = UNHEARD;
        break;
      }
    }
    sending = false;
  }
}
