// The one file that talks to the server: asks for a piece of a page and gives its text.

export async function piece(address, { form, signal } = {}) {
  const answer = await fetch(address, form ? { method: "POST", body: new URLSearchParams(new FormData(form)), signal } : { signal });
  if (!answer.ok) throw new Error(`${answer.status} from ${address}`);
  return answer.text();
}
