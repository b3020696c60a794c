// What the page asks of the program it came from; it asks nothing of anyone else.
const csrf = document.querySelector('meta[name="csrf"]').content;

/** A refusal of the program, with its own words. Gone: what was asked for may not be shown any more. */
export class Refusal extends Error {
  constructor(words, isGone = false) {
    super(words);
    this.isGone = isGone;
  }
}

async function ask(path, options) {
  let response;
  try {
    response = await fetch(path, { cache: "no-store", credentials: "same-origin", ...options });
  } catch {
    throw new Refusal("The program does not answer; was it stopped? Start 'gaitseat review' again and open the new link. Nothing that was saved is lost.");
  }
  if (response.ok) return response;
  const said = await response.json().catch(() => null);
  throw new Refusal(said?.text ?? `The program answers with an error (${response.status}).`, response.status === 410);
}

const post = async (path, body) =>
  (await ask(path, { method: "POST", headers: { "Content-Type": "application/json", "X-GaitSeat-Csrf": csrf }, body: JSON.stringify(body) })).json();

const of = (id) => `/api/questions/${encodeURIComponent(id)}`;

export const queue = async (from) => (await ask(`/api/queue?from=${from}`)).json();
export const question = async (id) => (await ask(of(id))).json();
export const tracks = async (id) => (await ask(`${of(id)}/tracks`)).json();
export const beside = async (id) => (await ask(`${of(id)}/beside`)).json();
export const besideOne = async (id, other) => (await ask(`${of(id)}/beside/${encodeURIComponent(other)}`)).json();
export const marks = async (id, seconds) => (await ask(`${of(id)}/marks?time=${seconds}`)).json();
export const saveMarks = (given) => post("/api/marks", given);
export const answer = (given) => post("/api/answer", given);
export const undo = () => post("/api/undo", {});
export const copy = (clipKey) => post("/api/copy", { clipKey });

export const run = async () => (await ask("/api/run")).json();
export const retry = (clipKey) => post("/api/retry", { clipKey });
export const season = async () => (await ask("/api/season")).json();
export const rider = async (number, widthPx) => (await ask(`/api/season/${number}?width=${Math.round(widthPx)}`)).json();

document.getElementById("log-out")?.addEventListener("click", async () => {
  await post("/logout", {}).catch(() => {});
  location.assign("/");
});

/** A drawing of the program as an element, from its text. */
export const svgOf = (text) => document.importNode(new DOMParser().parseFromString(text, "image/svg+xml").documentElement, true);

/** A drawing of the program as an element; `kind` is strip or history. */
export async function drawing(id, kind, widthPx) {
  return svgOf(await (await ask(`${of(id)}/${kind}?width=${Math.round(widthPx)}`)).text());
}
