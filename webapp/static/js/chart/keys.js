// The keys of the chart, in one table: what is pressed, what it does in words, and the name of the action. No page in here.

export const KEYS = [
  [["ArrowUp", "ArrowDown"], "↑ ↓", "to the next bead across", "move"],
  [["ArrowLeft", "ArrowRight"], "← →", "along the rope", "move"],
  [["PageUp", "PageDown"], "Page up, Page down", "ten rows along", "move"],
  [["Home", "End"], "Home, End", "to the first and the last bead", "move"],
  [["Shift+Arrow"], "Shift and an arrow", "select a patch", "select"],
  [["Enter"], "Enter", "use the tool, or put a copy down", "use"],
  [[" "], "Space", "use the tool; held down, drag to pan", "use"],
  [[], "A … ZZ", "choose a bead by its code", "code"],
  [["1"], "1", "Place", "tool"], [["2"], "2", "Line", "tool"], [["3"], "3", "Flood", "tool"], [["4"], "4", "Take colour", "tool"],
  [["5"], "5", "Patch", "tool"], [["6"], "6", "Add rounds", "tool"], [["7"], "7", "Remove rounds", "tool"], [["8"], "8", "Slide", "tool"],
  [["9"], "9", "Exchange colours", "tool"], [["0"], "0", "Refit", "tool"],
  [["Ctrl+z"], "Ctrl Z", "undo", "undo"], [["Ctrl+Shift+z", "Ctrl+y"], "Ctrl Shift Z", "redo", "redo"],
  [["Ctrl+c"], "Ctrl C", "copy the patch", "copy"], [["Ctrl+x"], "Ctrl X", "cut it", "cut"], [["Ctrl+v"], "Ctrl V", "paste", "paste"],
  [["Delete", "Backspace"], "Delete", "clear the patch", "clear"], [["Escape"], "Escape", "drop the copy, the line or the patch", "drop"],
  [["+", "="], "+", "larger", "larger"], [["-"], "−", "smaller", "smaller"],
  [["."], ".", "fit", "fit"], [["/"], "/", "the cursor's bead in the middle", "centre"],
  [["[", "]"], "[ ]", "turn the rope", "turn"], [["?"], "?", "this list", "keys"],
];

const ACTIONS = new Map(KEYS.flatMap(([keys, , , action]) => keys.map(key => [key, action])));

/** The action of a key event: its name, and the key itself. */
export function actionOf({ key, shiftKey, ctrlKey, metaKey, altKey }) {
  if (altKey) return "";
  if (ctrlKey || metaKey) return ACTIONS.get(`Ctrl+${shiftKey ? "Shift+" : ""}${key.toLowerCase()}`) ?? "";
  if (shiftKey && key.startsWith("Arrow")) return "select";
  return ACTIONS.get(key) ?? (/^[a-zA-Z]$/.test(key) ? "code" : "");
}

export const TOOL_KEYS = ["place", "line", "flood", "take", "patch", "add", "remove", "slide", "exchange", "refit"];
