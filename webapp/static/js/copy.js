// Copies what a button names, as text or as a table. Without a clipboard it is selected instead.

document.addEventListener("click", (event) => {
  const button = event.target.closest("[data-copy], [data-copy-table]");
  if (button) copy(button);
});
show();

export function show() {
  for (const button of document.querySelectorAll("[data-copy], [data-copy-table]")) button.hidden = false;
}

async function copy(button) {
  const source = document.getElementById(button.dataset.copy ?? button.dataset.copyTable);
  const outcome = document.querySelector("[data-copied]");
  try {
    await navigator.clipboard.write([new ClipboardItem(button.dataset.copy ? text(source.value) : table(source))]);
    outcome.textContent = button.dataset.copy ? "Copied." : "Copied as a table.";
  } catch {
    select(source);
    outcome.textContent = "The browser did not let it be copied. It is selected: copy it with Ctrl C, on a Mac with ⌘ C.";
  }
}

function text(words) {
  return { "text/plain": new Blob([words], { type: "text/plain" }) };
}

function table(source) {
  const words = (cell) => cell.textContent.replaceAll("\u00a0", " ");
  const rows = [...source.rows].map((row) => [...row.cells].map(words).join("\t")).join("\n");
  const plain = source.cloneNode(true);
  for (const element of [plain, ...plain.querySelectorAll("*")]) {
    for (const name of ["class", "id", "scope"]) element.removeAttribute(name);
  }
  return { ...text(rows), "text/html": new Blob([plain.outerHTML], { type: "text/html" }) };
}

function select(source) {
  source.closest("details")?.setAttribute("open", "");
  if (source.select) source.select();
  else getSelection().selectAllChildren(source);
}
