
// The card at work: where one is, what comes next, and what was pressed.

const SETTINGS = "ropewright-card", FEW = 4, SOME = 12, TEN = 10, SHOWN_NEXT = 5, SWIPE = 48;

const card = readCard(), own = `${SETTINGS} ${card.key}`;
const looks = { look: "auto", side: "right", speak: "no", by: "round", view: "string", ...kept(SETTINGS, {}) };
if (looks.view !== "crochet") looks.view = "string";
let state = keptPieces(card, own), removed = null, aside = "";
const choices = document.querySelectorAll(".views button, .choose button");
const by = id => document.getElementById(id);
const piece = () => state.pieces[state.chosen];
const number = value => value.toLocaleString("en");
const counted = (value, noun) => `${number(value)} ${noun}${value === 1 ? "" : "s"}`;
const entry = ([beads, code]) => `${beads} ${code}`;
const entries = runs => runs.map(entry).join(", ");
const show = (element, shown) => { element.hidden = !shown; };

// ---- where one is

const stringing = () => looks.view !== "crochet";
const thread = () => card.threads[piece().place.thread];
const strungOnThread = () => thread().list.upto[piece().place.step];

/** Beads strung on all threads so far. */
function strung() {
  const before = card.threads.slice(0, piece().place.thread).reduce((sum, { list }) => sum + list.beads, 0);
  return before + strungOnThread();
}

/** The runs of the rope from one bead to before another, in working order. */
function workedRuns(first, last) {
  const runs = [];
  for (let bead = first; bead < last; bead++) {
    const { code } = card.entries[card.rope[bead]];
    if (runs.length && runs.at(-1)[1] === code) runs.at(-1)[0]++;
    else runs.push([1, code]);
  }
  return runs;
}

/** Where the beads end that are crocheted next: after a bead, after those of one colour, with the round or the thread. */
function nextWorked(from) {
  const { first, list } = card.threads[threadOf(from)];
  const end = Math.min(first + list.beads, (Math.floor(from / card.around) + 1) * card.around);
  if (looks.by === "round" || from >= card.rope.length) return end;
  let last = from + 1;
  if (looks.by === "run") while (last < end && card.rope[last] === card.rope[from]) last++;
  return last;
}

/** Where the step before began. */
function lastWorked(from) {
  let at = looks.by === "bead" ? from - 1 : Math.floor((from - 1) / card.around) * card.around;
  while (nextWorked(at) < from) at = nextWorked(at);
  return at;
}

/** In which part of the rope a bead stands, and where in its chart. */
function spotOf(bead) {
  const part = card.parts.find(({ first, beads }) => bead >= first && bead < first + beads);
  if (!part) return "";
  const at = bead - part.begin, pass = Math.floor(at / part.chart);
  const inChart = at - pass * part.chart, which = at < 0 ? "A pass that is cut" : `Pass ${number(pass + 1)}`;
  const spot = `${which}, bead ${number(inChart + 1)} of ${number(part.chart)} in the chart`;
  return `${spot} of part ${number(card.parts.indexOf(part) + 1)}, “${part.name}”.`;
}

function threadOf(bead) {
  let found = 0;
  while (found + 1 < card.threads.length && card.threads[found + 1].first <= bead) found++;
  return found;
}

// ---- what is shown

function drawRun([beads, code]) {
  const run = document.createElement("span"), many = document.createElement("b"), letter = document.createElement("b");
  run.className = "run";
  letter.className = "code";
  many.textContent = beads;
  letter.textContent = code;
  run.append(many, card.beads.get(code).sign.cloneNode(true), letter);
  return run;
}

function drawName([, code]) {
  const name = document.createElement("span");
  name.className = "name";
  name.textContent = card.beads.get(code).name;
  return name;
}

/** The runs very large: one alone with its name, several side by side. */
function showRuns(runs) {
  const field = by("runs");
  const alone = runs.length === 1, letters = runs[0].join("").length;
  if (alone) field.className = letters < 3 ? "alone" : letters < 4 ? "alone long" : "alone longer";
  else field.className = runs.length <= FEW ? "few" : runs.length <= SOME ? "some" : "many";
  field.replaceChildren(...runs.map(drawRun), ...(alone ? [drawName(runs[0])] : []));
}

function showWords(words) {
  by("runs").className = "few";
  by("runs").textContent = words;
}

function showSums(done, all, total, of) {
  by("bar").max = Math.max(1, all);
  by("bar").value = done;
  by("done").textContent = `${number(done)} ${stringing() ? "strung" : "worked"}, ${number(all - done)} left`;
  by("total").textContent = of === all ? "" : `${number(total)} of ${number(of)} in all`;
}

function showCheck(words) {
  by("check").textContent = words;
  show(by("check"), words);
}

/** What is strung after an item: the next runs, or that the group comes again. */
function thenStrung(items, step) {
  const { runs } = items[step], next = items[step + 1];
  if (!next) return "Then this thread is strung.";
  if (next.runs === runs) return "Then the same group again.";
  const after = items.slice(step + 1, step + 1 + SHOWN_NEXT), group = after.findIndex(item => item.runs.length > 1);
  const some = group < 0 ? after : after.slice(0, group + 1);
  return `Then ${some.map(item => entries(item.runs)).join(", ")}`;
}

const tapWhen = (runs, done) => runs.length > 1 ? `Tap when ${done}, in this order` : `Tap when it is ${done}`;

function showStringing() {
  const { place } = piece(), { list } = thread(), item = list.items[place.step], threads = card.threads.length;
  const last = place.thread === threads - 1;
  by("where").textContent = `Thread ${number(place.thread + 1)} of ${number(threads)}`;
  by("place").textContent = item ? item.label : "Strung";
  if (item) showRuns(item.runs);
  else showWords(last ? "All is strung" : `Thread ${number(place.thread + 1)} is strung`);
  by("hint").textContent = item ? tapWhen(item.runs, "strung") : last ? "Go on with Crochet, above" : `Tap for thread ${number(place.thread + 2)}`;
  by("then").textContent = item ? thenStrung(list.items, place.step) : last ? "" : "Or go on with Crochet: thread 1 is crocheted first.";
  const before = list.items[place.step - 1];
  const due = place.step && (!item || before.tenth);
  const sum = due ? `Check: ${number(strungOnThread())} beads are on thread ${number(place.thread + 1)} by now.` : "";
  showCheck(aside || sum);
  showSums(strungOnThread(), list.beads, strung(), card.rope.length);
  return item ? `${item.runs.length > 1 ? `${item.label}: ` : ""}${spoken(item.runs)}` : by("runs").textContent;
}

function showCrochet() {
  const { worked } = piece().place, all = card.rope.length, next = worked < all ? nextWorked(worked) : all;
  const round = Math.floor(worked / card.around), rounds = Math.ceil(all / card.around), first = round * card.around;
  const beads = Math.min(card.around, all - first), at = threadOf(Math.min(worked, all - 1)), on = card.threads[at];
  by("where").textContent = worked < all ? `Round ${number(round + 1)} of ${number(rounds)}` : "Crocheted";
  by("place").textContent = worked < all ? `bead ${worked - first + 1} of ${beads}` : "";
  const runs = workedRuns(worked, next);
  if (runs.length) showRuns(runs);
  else showWords("All is crocheted");
  by("hint").textContent = runs.length ? tapWhen(runs, "crocheted") : "The booklet says how to finish the ends";
  const then = workedRuns(next, Math.min(all, next + card.around));
  by("then").textContent = then.length ? `Then ${entries(then.slice(0, SHOWN_NEXT + 1))}` : "";
  const joins = worked && worked < all && on.first === worked;
  const due = worked && worked % (TEN * card.around) === 0;
  const sum = due ? `Check: ${number(worked / card.around)} rounds, ${number(worked)} beads.` : "";
  showCheck(joins ? `Thread ${number(at)} is used up: join thread ${number(at + 1)}.` : sum);
  showSums(worked - on.first, on.list.beads, worked, all);
  const holds = card.threads.length > 1 ? `Thread ${number(at + 1)} of ${number(card.threads.length)}. ` : "";
  by("spot").textContent = holds + (worked < all ? spotOf(worked) : "");
  by("chart").setAttribute("aria-label", `The chart round bead ${number(worked + 1)}; next ${entries(runs) || "nothing"}`);
  drawChart(by("chart"), card, worked, next);
  return runs.length ? `${by("where").textContent}: ${spoken(runs)}` : by("runs").textContent;
}

const spoken = runs => runs.map(([beads, code]) => `${beads} ${code}${runs.length === 1 ? `, ${card.beads.get(code).name}` : ""}`).join(", ");

function placeInWords({ thread, step, worked }) {
  const beads = card.threads[thread].list.upto[step];
  return `thread ${number(thread + 1)}, ${counted(beads, "bead")} strung on it, ${number(worked)} crocheted`;
}

function showRest() {
  const { rest, place } = piece();
  const here = rest && ["thread", "step", "worked"].every(name => rest[name] === place[name]);
  by("rest").textContent = here ? "Rest is marked" : "Mark a rest";
  by("rest").setAttribute("aria-pressed", Boolean(here));
  show(by("to-rest"), !here);
  show(by("rested"), rest);
  by("rested-words").textContent = rest ? `Rest mark of ${rest.on}: ${placeInWords(rest)}.` : "";
}

function showPieces() {
  by("of").textContent = `${piece().name}, begun ${piece().begun}`;
  by("name").value = piece().name;
  by("pieces").replaceChildren(...state.pieces.map((one, at) => {
    const [line, choose, name, remove] = ["li", "button", "bdi", "button"].map(tag => document.createElement(tag));
    choose.type = remove.type = "button";
    name.textContent = one.name;
    choose.append(name, `: ${placeInWords(one.place)}`);
    choose.setAttribute("aria-pressed", at === state.chosen);
    remove.textContent = "Remove";
    remove.setAttribute("aria-label", `Remove ${one.name}`);
    choose.addEventListener("click", () => change(() => { state.chosen = at; }));
    remove.addEventListener("click", () => removePiece(at));
    line.append(choose, remove);
    return line;
  }));
  show(by("removed"), removed);
  by("removed-words").textContent = removed ? `${removed.piece.name} is removed.` : "";
}

/** Shows everything; says the run aloud, and to a screen reader, where one has moved. */
function showAll(moved = false) {
  const { look, side, view } = looks, working = view === "string" || view === "crochet";
  Object.assign(document.documentElement.dataset, { look, side, view });
  show(by("work"), working);
  show(by("working"), view === "crochet");
  show(by("chart"), view === "crochet");
  show(by("more"), view === "more");
  show(by("plain"), view === "list");
  for (const button of choices)
    button.setAttribute("aria-pressed", Object.entries(button.dataset).every(([name, value]) => looks[name] === value));
  showRest();
  showPieces();
  if (!working) return;
  const next = stringing() ? showStringing() : showCrochet();
  const words = by("check").hidden ? next : `${by("check").textContent} ${next}`;
  by("undo").disabled = !piece().past.length;
  by("back").disabled = stringing() ? !piece().place.step && !piece().place.thread : !piece().place.worked;
  by("next").disabled = stringing() ? strung() === card.rope.length : piece().place.worked === card.rope.length;
  if (!moved) return;
  by("heard").textContent = words;
  if (looks.speak === "yes") voiced(words);
}

function voiced(words) {
  const silent = !say(words);
  const [none, some] = ["This device has no voice of its own, so the card stays silent.", "A voice of this phone says the run."];
  by("voice").textContent = silent ? none : `${some} The card listens to nothing and sends nothing.`;
}

// ---- what is pressed

/** Chooses how the card looks, for all cards of this device; what is shown then is shown from its top. */
function choose(chosen) {
  if (chosen.view) scrollTo(0, 0);
  Object.assign(looks, chosen);
  keep(SETTINGS, looks);
}

/** Changes the pieces, keeps them, and shows them; `said` stands at the place until something else is pressed. */
function change(how, moved = false, said = "") {
  aside = said;
  how();
  show(by("refused"), !keep(own, state));
  showAll(moved);
}

/** Goes to a place; where one was can be come back to by Undo. */
function move(place, said = "") {
  change(() => {
    const { past } = piece();
    past.push(piece().place);
    past.splice(0, past.length - MOST_STEPS_BACK);
    piece().place = placeIn(card, { ...piece().place, ...place });
  }, true, said);
}

function goOn() {
  const { thread: at, step, worked } = piece().place;
  if (!stringing()) {
    if (worked < card.rope.length) move({ worked: nextWorked(worked) });
  } else if (step < thread().list.items.length) move({ step: step + 1 });
  else if (at + 1 < card.threads.length) move({ thread: at + 1, step: 0 });
}

function goBack() {
  const { thread: at, step, worked } = piece().place;
  if (!stringing()) {
    if (worked) move({ worked: lastWorked(worked) });
  } else if (step) move({ step: step - 1 });
  else if (at) move({ thread: at - 1, step: card.threads[at - 1].list.items.length });
}

/** Takes back the last step, where it is seen: what was strung under String, what was crocheted under Crochet. */
function undo() {
  const { past, place } = piece(), was = past.at(-1);
  if (!was) return;
  const onThread = was.thread !== place.thread || was.step !== place.step;
  if (onThread !== (was.worked !== place.worked)) choose({ view: onThread ? "string" : "crochet" });
  change(() => { piece().place = past.pop(); }, true);
}

function removePiece(at) {
  change(() => {
    removed = { piece: state.pieces[at], at };
    state.pieces.splice(at, 1);
    if (!state.pieces.length) state.pieces.push(newPiece("Piece 1"));
    state.chosen = Math.max(0, state.chosen - (state.chosen >= at ? 1 : 0));
  });
}

function takeBack() {
  change(() => {
    state.pieces.splice(removed.at, 0, removed.piece);
    state.chosen = removed.at;
    removed = null;
  });
}

function wrong(words) {
  by("gone").textContent = words;
  show(by("gone"), words);
}

/** The whole number in a field, or null, with words that say what was expected. */
function typed(id, least, most, what) {
  const text = by(id).value.trim(), value = /^\d{1,6}$/.test(text) ? Number(text) : -1;
  if (value >= least && value <= most) return value;
  wrong(`“${text}” is not ${what}: expected ${number(least)} to ${number(most)}.`);
  return null;
}

function go() {
  const at = typed("to-thread", 1, card.threads.length, "the number of a thread");
  if (at === null) return;
  const { list } = card.threads[at - 1], beads = typed("to-beads", 0, list.beads, `a number of beads of thread ${at}`);
  if (beads === null) return;
  wrong("");
  choose({ view: "string" });
  const step = list.upto.findLastIndex(upto => upto <= beads), more = beads - list.upto[step];
  move({ thread: at - 1, step }, more && `Of what stands here, ${counted(more, "bead")} ${more === 1 ? "is" : "are"} on the thread already.`);
}

function goWorked() {
  const worked = typed("to-worked", 0, card.rope.length, "a number of beads of this rope");
  if (worked === null) return;
  wrong("");
  choose({ view: "crochet" });
  move({ worked });
}

const presses = {
  next: goOn, back: goBack, undo, go, "go-worked": goWorked, "take-back": takeBack,
  rest: () => change(() => { piece().rest = { ...piece().place, on: new Date().toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" }) }; }),
  "to-rest": () => move(piece().rest),
  "no-rest": () => change(() => { piece().rest = null; }),
  rename: () => change(() => { piece().name = by("name").value.trim() || piece().name; }),
  add: () => change(() => {
    state.pieces.push(newPiece(by("name").value.trim() !== piece().name && by("name").value.trim() || `Piece ${state.pieces.length + 1}`));
    state.chosen = state.pieces.length - 1;
  }),
};
for (const [id, press] of Object.entries(presses)) by(id).addEventListener("click", press);

for (const button of choices)
  button.addEventListener("click", () => {
    choose(button.dataset);
    showAll(looks.speak === "yes" && "speak" in button.dataset);
    if (button.dataset.speak === "yes") voiced("Voice on");
  });

let from = null, swiped = false;
by("now").addEventListener("pointerdown", event => { from = event; swiped = false; });
by("now").addEventListener("pointerup", event => {
  if (!from) return;
  const across = event.clientX - from.clientX, along = Math.abs(event.clientY - from.clientY);
  from = null;
  if (Math.abs(across) < SWIPE || Math.abs(across) < 2 * along) return;
  swiped = true;
  if (across < 0) goOn();
  else goBack();
});
by("now").addEventListener("pointercancel", () => { from = null; });
by("now").addEventListener("click", () => {
  if (!swiped) goOn();
  swiped = false;
});

addEventListener("keydown", event => {
  const working = looks.view === "string" || looks.view === "crochet";
  if (!working || event.altKey || event.ctrlKey || event.metaKey || event.target.matches("input")) return;
  const onButton = event.target.matches("button");
  if (event.key === "ArrowRight" || (event.key === " " && !onButton)) goOn();
  else if (event.key === "ArrowLeft") goBack();
  else return;
  event.preventDefault();
});
addEventListener("storage", event => {
  if (event.key !== own) return;
  state = keptPieces(card, own);
  showAll();
});
addEventListener("resize", () => showAll());

show(by("app"), true);
show(by("refused"), !keepFirst(own, state));
showAll();
