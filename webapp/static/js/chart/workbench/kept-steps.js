// Undo survives a reload: the steps are left in this tab when the page goes, and taken up where the pattern is still the same.

import { readHistory, writeHistory } from "../craft/written-history.js";

export function keptSteps(root, store) {
  const place = `ropewright steps ${root.dataset.pattern}`;
  store.set({ history: readHistory(sessionStorage.getItem(place), store.state.pattern) });
  addEventListener("pagehide", () => {
    const { history, pattern } = store.state;
    try {
      sessionStorage.setItem(place, writeHistory(history, pattern));
    } catch {
      sessionStorage.removeItem(place);      // the tab has no room; then a reload begins without steps
    }
  });
}
