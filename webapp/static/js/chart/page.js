// The chart editor: asks for the pattern, puts the state together, then each part sees to itself.

import { ask } from "../server.js";
import { fromDocument } from "./craft/pattern.js";
import { begin, Store } from "./state.js";
import { chartView } from "./workbench/chart-view.js";
import { dialogs } from "./workbench/dialogs.js";
import { facts } from "./workbench/facts.js";
import { history } from "./workbench/history.js";
import { keptSteps } from "./workbench/kept-steps.js";
import { keyboard } from "./workbench/keyboard.js";
import { overview } from "./workbench/overview.js";
import { overlay } from "./workbench/overlay.js";
import { palette } from "./workbench/palette.js";
import { parts } from "./workbench/parts.js";
import { patchBar } from "./workbench/patch-bar.js";
import { pointer } from "./workbench/pointer.js";
import { piece } from "./workbench/piece.js";
import { rail } from "./workbench/rail.js";
import { refitting } from "./workbench/refitting.js";
import { ringView } from "./workbench/ring-view.js";
import { ropeView } from "./workbench/rope-view.js";
import { roundsBar } from "./workbench/rounds-bar.js";
import { rulers } from "./workbench/rulers.js";
import { runList } from "./workbench/run-list.js";
import { saved } from "./workbench/saved.js";
import { stage } from "./workbench/stage.js";
import { status } from "./workbench/status.js";
import { tray } from "./workbench/tray.js";
import { views } from "./workbench/views.js";

// whatever takes room comes before the stage, which measures what it is left
const PARTS = [keptSteps, dialogs, tray, facts, status, rail, parts, stage, chartView, overlay, ropeView, rulers, overview, views, history, patchBar, roundsBar,
               palette, refitting, ringView, runList, pointer, keyboard];

const root = document.querySelector("[data-draw]"), data = root.dataset;
const symbols = [...root.querySelectorAll("[data-symbol]")].map(path => [path.dataset.symbol, path.getAttribute("d")]);
const { body } = await ask(data.pattern);
const store = new Store(begin(fromDocument(body), { symbols, workingMm: Number(data.workingMm), source: data.source }));
for (const part of PARTS) part(root, store);
saved(root, store, body);
piece(root, store);
root.store = store;
root.dataset.ready = "yes";
