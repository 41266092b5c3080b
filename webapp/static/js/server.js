// The one file that talks to the server: asks for a piece of a page and gives its text.

const PATIENCE = 10_000;      // milliseconds; who answers later is asked again

export async function piece(address, { form, signal } = {}) {
  const answer = await fetch(address, form ? { method: "POST", body: new URLSearchParams(new FormData(form)), signal } : { signal });
  if (!answer.ok) throw new Error(`${answer.status} from ${address}`);
  return answer.text();
}

/** Asks in JSON: gives status and body, whatever the status is, and throws where nobody answers in time. */
export async function ask(address, { method = "GET", json, form } = {}) {
  const sent = json ? { body: JSON.stringify(json), headers: { "content-type": "application/json" } } : form ? { body: new URLSearchParams(form) } : {};
  const answer = await fetch(address, { method, ...sent, signal: AbortSignal.timeout(PATIENCE) });
  const body = (answer.headers.get("content-type") ?? "").includes("json") ? await answer.json() : null;
  return { status: answer.status, body };
}

/** Says that this page is being left, as it goes. */
export const leave = address => navigator.sendBeacon(address);
