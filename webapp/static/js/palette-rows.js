// Adds and removes rows of the palette without asking the server; without script the same buttons send the form.

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

for (const palette of document.querySelectorAll("[data-palette]")) {
  const rows = palette.querySelector("[data-rows]"), blank = palette.querySelector("[data-blank]");
  const colours = palette.dataset.colours.split(" ");

  palette.addEventListener("click", event => {
    const button = event.target.closest("[data-add], [data-remove]");
    if (!button) return;
    event.preventDefault();
    if (button.matches("[data-add]")) add(); else remove(button.closest("[data-row]"));
    rows.dispatchEvent(new Event("input", { bubbles: true }));
  });

  function add() {
    const row = blank.content.firstElementChild.cloneNode(true);
    const taken = new Set([...rows.querySelectorAll("[name=bead_code]")].map(code => code.value.toUpperCase()));
    row.querySelector("[name=bead_code]").value = [...LETTERS].find(letter => !taken.has(letter)) ?? "";
    row.querySelector("[name=bead_colour]").value = colours[rows.children.length % colours.length];
    rows.append(row);
    number();
    row.querySelector("[name=bead_name]").focus();
  }

  function remove(row) {
    const next = row.nextElementSibling ?? row.previousElementSibling;
    row.remove();
    number();
    (next?.querySelector("[data-remove]") ?? palette.querySelector("[data-add]")).focus();
  }

  function number() {
    [...rows.children].forEach((row, place) => {
      row.setAttribute("aria-label", `Bead ${place + 1}`);
      const button = row.querySelector("[data-remove]");
      button.value = place;
      button.querySelector(".unheard").textContent = ` bead ${place + 1}`;
    });
  }
}
