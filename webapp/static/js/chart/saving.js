// Keeps the pattern at the server while one draws: what was changed is sent within a second, one save at a time, again and
// again while nobody answers; a save from an older state is refused and waits for a choice. No page in here.

export const PAUSE = 300, WAIT = [400, 800, 1500, 3000];

/** `send(document, sequence)` and `load()` answer { status, …, body }, or throw where nobody answers. `tell` is told the
 *  state: kept, changed, sending, offline, refused (with a sentence), stale or gone. */
export class Saving {
  constructor({ send, load, tell, sequence, same, pause = wait => new Promise(done => setTimeout(done, wait)) }) {
    Object.assign(this, { send, load, tell, sequence, same, pause });
    this.state = "kept";
    this.waiting = null;      // what is still to be sent
    this.unanswered = [];     // what was sent without an answer: one of these may stand at the server
    this.wrote = false;
  }

  get safe() { return this.state === "kept"; }

  /** There is something new to keep; `write` makes its document when it is time. */
  changed(write) {
    this.waiting = write;
    if (this.state === "stale" || this.state === "gone") return;
    if (this.state !== "offline" && this.state !== "sending") this.#say("changed");
    this.#run();
  }

  /** Everything is kept, or it is known why not. */
  async settled() {
    while (this.running) await this.running;
  }

  /** Goes on after a choice, from the state that stands at the server. */
  goOn(sequence) {
    this.sequence = sequence;
    this.waiting = null;
    this.#say("kept");
  }

  #run() {
    this.running ??= this.#loop().finally(() => { this.running = null; });
  }

  async #loop() {
    for (let failures = 0; this.waiting;) {
      if (!failures) await this.pause(PAUSE);
      const write = this.waiting;
      if (!write) return;      // a choice has settled it meanwhile
      const document = write();
      if (this.state !== "offline") this.#say("sending");
      try {
        const goes = await this.#once(document);
        failures = 0;
        if (!goes) return;
        if (this.waiting === write) this.waiting = null;
        this.#say(this.waiting ? "changed" : "kept");
      } catch {
        this.#say("offline");
        await this.pause(WAIT[Math.min(failures++, WAIT.length - 1)]);
      }
    }
  }

  async #once(document) {
    const answer = await this.send(document, this.sequence).catch(error => {
      this.unanswered.push(document);
      throw error;
    });
    if (answer.status >= 500) throw new Error("the server failed");
    if (answer.status === 200) return this.#taken(answer.body.sequence);
    if (answer.status === 409) return this.#settle(document);
    this.#say(answer.status === 404 ? "gone" : "refused", answer.body?.error?.message);
    if (answer.status !== 404) this.waiting = null;
    return false;
  }

  /** A save whose answer was lost stands at the server already: then its number is taken over and one goes on. */
  async #settle(document) {
    const { status, body } = await this.load();
    if (status === 200 && this.unanswered.some(sent => this.same(body, sent))) {
      this.unanswered = [];
      this.sequence = body.sequence;
      return this.#once(document);
    }
    this.#say("stale");
    return false;
  }

  #taken(sequence) {
    this.sequence = sequence;
    this.unanswered = [];
    this.wrote = true;
    return true;
  }

  #say(state, sentence = "") {
    this.state = state;
    this.tell(state, sentence);
  }
}
