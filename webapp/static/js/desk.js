// Says a new answer aloud, and marks the fields that it finds wrong; what may be copied of it can be copied at once.

import { show } from "./copy.js";

document.addEventListener("htmx:afterSwap", () => {
  show();
  mark(document.querySelector("#question"));
  const notice = document.querySelector("[data-said]");
  document.querySelector("#heard").textContent = notice ? notice.textContent : "";
});

function mark(form) {
  for (const said of form.querySelectorAll(".wrong")) said.remove();
  for (const field of form.querySelectorAll("[aria-invalid]")) {
    field.removeAttribute("aria-invalid");
    field.setAttribute("aria-describedby", described(field).filter(id => id !== `${field.id}-wrong`).join(" "));
  }
  for (const sentence of document.querySelectorAll("#answer [data-wrong]")) {
    const field = form.elements.namedItem(sentence.dataset.wrong);
    if (!field?.matches?.(".input")) continue;
    const said = Object.assign(document.createElement("span"), { className: "wrong", id: `${field.id}-wrong` });
    said.textContent = sentence.querySelector("span").textContent;
    field.setAttribute("aria-invalid", "true");
    field.setAttribute("aria-describedby", [...described(field), said.id].join(" "));
    field.closest(".field").append(said);
  }
}

function described(field) {
  return (field.getAttribute("aria-describedby") ?? "").split(" ").filter(Boolean);
}
