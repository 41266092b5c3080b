// Answers while one types: sends the editor to be checked, shows what the beads come to or what is wrong.
// The sentence is said aloud only when it is a new one.

import { piece } from "./server.js";

const PAUSE = 350;

for (const form of document.querySelectorAll("[data-checked-by]")) watch(form);

function watch(form) {
  const result = form.querySelector("[data-check]"), announced = form.querySelector("[data-heard]");
  let waiting = 0, asking = new AbortController();
  form.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(ask, PAUSE);
  });
  if (form.querySelector("textarea").value.trim()) ask();  // typed before this module was there

  async function ask() {
    asking.abort();
    asking = new AbortController();
    try {
      show(await piece(form.dataset.checkedBy, { form, signal: asking.signal }));
    } catch (error) {
      if (error.name !== "AbortError") announced.textContent = "The beads could not be checked just now; saving checks them again.";
    }
  }

  function show(text) {
    result.innerHTML = text;
    const sentence = result.querySelector("[data-said]").textContent.trim().replace(/\s+/g, " ");
    if (announced.textContent !== sentence) announced.textContent = sentence;
  }
}
