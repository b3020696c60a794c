// Clips that this browser cannot play are shown from a copy that the program makes.
import * as api from "./api.js";

const made = new Set();

/** Where a clip is played from, by its address. */
export const sourceOf = (url) => (made.has(url) ? `${url}/copy` : url);

/** Has the copy made; it is played from then on. False where it is played already and cannot be, either. */
export async function make(url) {
  if (made.has(url)) return false;
  const copy = await api.copy(url.split("/").at(-1));
  if (!copy.isMade) throw new api.Refusal(copy.text);
  made.add(url);
  return true;
}
