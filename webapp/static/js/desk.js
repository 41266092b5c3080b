// Says a new answer aloud; what may be copied of it can be copied at once.

import { show } from "./copy.js";

document.addEventListener("htmx:afterSwap", () => {
  show();
  const notice = document.querySelector("[data-said]");
  document.querySelector("#heard").textContent = notice ? notice.textContent : "";
});
