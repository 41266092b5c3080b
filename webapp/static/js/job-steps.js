// Follows a print, or a zip that is taken in: asks for its steps until it is over, then opens the page afresh with what came of it.

import { piece } from "./server.js";

const PAUSE = 350, MOST_FAILURES = 40;

for (const steps of document.querySelectorAll("[data-steps]")) follow(steps);

async function follow(steps, failures = 0) {
  while (failures < MOST_FAILURES) {
    await new Promise(done => setTimeout(done, PAUSE));
    try {
      const text = await piece(steps.dataset.steps);
      const fresh = new DOMParser().parseFromString(text, "text/html").querySelector("[data-state]");
      if (!["waiting", "running"].includes(fresh.dataset.state)) return location.reload();
      if (fresh.innerHTML !== steps.firstElementChild.innerHTML && !steps.contains(document.activeElement)) steps.replaceChildren(fresh);
      failures = 0;
    } catch {
      failures += 1;
    }
  }
}
