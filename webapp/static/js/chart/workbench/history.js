// The steps of this visit by name; pressing one goes there.

import { travelled } from "../state.js";

const MOST_LISTED = 300;

export function history(root, store) {
  const panel = root.querySelector("#steps"), list = panel.querySelector("[data-steps]");

  const build = () => {
    const { done, undone } = store.state.history, first = Math.max(0, done.length - MOST_LISTED);
    const names = [...done.slice(first), ...undone.slice(0, MOST_LISTED)].map(step => step.name);
    const opened = first ? `${first} earlier steps` : "As it was opened";
    list.replaceChildren(...[opened, ...names].map((name, i) => entry(name, first + i, done.length)));
  };

  function entry(name, at, now) {
    const item = document.createElement("li"), button = document.createElement("button");
    button.type = "button";
    button.textContent = name;
    if (at === now) button.setAttribute("aria-current", "step");
    if (at > now) button.className = "is-undone";
    button.addEventListener("click", () => {
      store.set(travelled(store.state, at - store.state.history.done.length));
      list.querySelector("[aria-current]")?.focus();
    });
    item.append(button);
    return item;
  }

  panel.addEventListener("toggle", event => {
    if (event.newState !== "open") return;
    build();
    list.querySelector("[aria-current]")?.focus();
  });
  store.listen((state, before) => { if (state.history !== before.history && panel.matches(":popover-open")) build(); });
}
