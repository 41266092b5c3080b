// Shows the look that is chosen at once; it is kept with the other settings.

for (const radio of document.querySelectorAll("[name=look]")) {
  radio.addEventListener("change", () => {
    if (radio.value === "system") delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = radio.value;
  });
}
