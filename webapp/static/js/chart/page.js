// The chart editor: asks for the pattern, puts the state together, then each part sees to itself.

import { ask } from "../server.js";
import { fromDocument } from "./craft/pattern.js";
import { begin, Store } from "./state.js";
import { chartView } from "./desk/chart-view.js";
import { dialogs } from "./desk/dialogs.js";
import { facts } from "./desk/facts.js";
import { history } from "./desk/history.js";
import { keyboard } from "./desk/keyboard.js";
import { marks } from "./desk/marks.js";
import { overview } from "./desk/overview.js";
import { overView } from "./desk/over-view.js";
import { palette } from "./desk/palette.js";
import { patchBar } from "./desk/patch-bar.js";
import { pointer } from "./desk/pointer.js";
import { rail } from "./desk/rail.js";
import { refitting } from "./desk/refitting.js";
import { ringView } from "./desk/ring-view.js";
import { ropeView } from "./desk/rope-view.js";
import { roundsBar } from "./desk/rounds-bar.js";
import { rulers } from "./desk/rulers.js";
import { runList } from "./desk/run-list.js";
import { saved } from "./desk/saved.js";
import { stage } from "./desk/stage.js";
import { status } from "./desk/status.js";
import { tray } from "./desk/tray.js";
import { views } from "./desk/views.js";

const PARTS = [dialogs, stage, chartView, overView, ropeView, rulers, overview, tray, facts, status, rail, views, history, patchBar, roundsBar, palette,
               marks, refitting, ringView, runList, pointer, keyboard];

const root = document.querySelector("[data-draw]"), data = root.dataset;
const symbols = [...root.querySelectorAll("[data-symbol]")].map(path => [path.dataset.symbol, path.getAttribute("d")]);
const { body } = await ask(data.pattern);
const store = new Store(begin(fromDocument(body), { symbols, workingMm: Number(data.workingMm), source: data.source }));
for (const part of PARTS) part(root, store);
saved(root, store, body);
root.store = store;
root.dataset.ready = "yes";
