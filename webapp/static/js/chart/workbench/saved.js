// Every change goes to the server's working copy; what became of it is said, and a refusal asks what should stand.

import { ask, leave } from "../../server.js";
import { fromDocument, same, toDocument, unchanged } from "../craft/pattern.js";
import { Saving } from "../saving.js";
import { edited } from "../state.js";
import { closed, open } from "./dialogs.js";
import { announce } from "./status.js";

const WORDS = {
  kept: "Saved", changed: "Saving …", sending: "Saving …",
  stale: "Drawn elsewhere meanwhile", refused: "Not saved", gone: "This pattern is gone from the library",
  offline: "The server does not answer; drawing goes on, and is saved as soon as it does",
};

const TROUBLES = ["offline", "refused", "stale", "gone"];      // announced, and that they are over

export function saved(root, store, document_) {
  const data = root.dataset, indicator = document.querySelector("[data-saved]"), words = indicator.querySelector("[data-saved-words]");
  let revision = Number(data.revision);

  const tell = (state, sentence) => {
    const troubled = TROUBLES.includes(indicator.dataset.state);
    indicator.dataset.state = state;
    const text = sentence || (state === "kept" && !saving.wrote ? `Revision ${revision}` : WORDS[state]);
    if (words.textContent !== text) words.textContent = text;
    if (TROUBLES.includes(state) || (troubled && state === "kept")) announce(root, text);
    if (state === "stale" || state === "gone") open("stale", store);
  };
  const saving = new Saving({
    send: (json, sequence) => ask(data.working, { method: "PUT", json: { ...json, sequence } }),
    load: () => ask(data.pattern),
    same: (body, sent) => same(fromDocument(body), fromDocument(sent)),
    tell, sequence: document_.sequence,
  });
  root.saving = saving;
  indicator.dataset.state = saving.state;

  store.listen((state, before) => { if (!unchanged(state.pattern, before.pattern)) saving.changed(() => toDocument(store.state.pattern)); });

  closed("stale", {
    copy: async () => {
      const { pattern } = store.state, title = `Copy of ${pattern.words.title}`.slice(0, 120);
      const { status, body } = await ask(data.patterns, { method: "POST", json: { ...toDocument(pattern), title } });
      if (status !== 201) return tell("refused", body?.error?.message);
      saving.goOn(saving.sequence);
      location.assign(data.chartPage.replace("/0/", `/${body.id}/`));
    },
    theirs: async () => {
      const { status, body } = await ask(data.pattern);
      if (status !== 200) return tell("gone");
      saving.goOn(body.sequence);
      store.set(edited(store.state, "Take theirs", fromDocument(body)));
      saving.goOn(body.sequence);
    },
    "": () => open("stale", store),
  });

  const keep = closed("keep", { ok: async () => {
    await saving.settled();
    const { status, body } = await ask(data.state, { method: "POST", form: { name: keep.querySelector("[name=name]").value } });
    if (status !== 200) return tell("refused", "This state could not be saved");
    revision = body.revision;
    words.textContent = body.kept ? `Saved as revision ${revision}` : `Nothing was changed since revision ${revision}`;
    announce(root, words.textContent);
  } });
  keep.addEventListener("opening", () => { keep.querySelector("[name=name]").value = ""; });

  addEventListener("beforeunload", event => { if (!saving.safe) event.preventDefault(); });
  addEventListener("pagehide", () => { if (saving.wrote) leave(data.left); });
  addEventListener("pageshow", event => { if (event.persisted) location.reload(); });
}
