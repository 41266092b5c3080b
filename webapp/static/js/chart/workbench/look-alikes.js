// Says in the bead's dialog which bead of the palette looks like the colour that is chosen, and to whose eyes.

import { ask } from "../../server.js";
import { plain } from "../craft/words.js";

const PAUSE = 200;
const EYES = { plain: "in plain sight", protan: "to eyes weak in red", deutan: "to eyes weak in green",
  tritan: "to eyes weak in blue" };

/** Follows a colour field; `others()` are the entries of the palette beside the one that is changed. */
export function lookAlikes(root, field, words, others) {
  let asked = 0, waiting = 0;

  async function look() {
    const mine = ++asked, beside = others();
    if (!beside.length) { words.textContent = ""; return; }
    const query = new URLSearchParams([field.value, ...beside.map(({ colour }) => colour)].map(colour => ["colour", colour]));
    const { status, body } = await ask(`${root.dataset.lookAlikes}?${query}`).catch(() => ({}));
    if (mine === asked) words.textContent = status === 200 ? told(body, beside) : "";
  }

  field.addEventListener("input", () => { clearTimeout(waiting); waiting = setTimeout(look, PAUSE); });
  return look;
}

/** The nearest look-alike of the first colour, in a sentence. */
function told({ threshold, pairs }, beside) {
  const near = pairs.find(({ first }) => first === 0);
  if (!near) return "";
  const { code, name } = beside[near.second - 1];
  return `Looks like ${code} ${name} ${EYES[near.sight]}: ${plain(near.difference, 1)} apart, from ${plain(threshold, 0)} on two are told apart.`;
}
