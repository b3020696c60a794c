// Another clip beside the one in question, stride on stride: it starts at a sit when the first does, and plays faster or slower so that the sits fall together.
import * as api from "./api.js";
import * as copies from "./copies.js";
import * as overlay from "./overlay.js";
import * as player from "./player.js";

const el = (id) => document.getElementById(id);
const own = el("video"), other = el("beside-video");
const drawing = overlay.over(other, el("beside-overlay"));
const kinds = { earlier: "earlier", later: "later", best: "best of" };
const farSeconds = 0.15; // further off than this it is set, nearer it is caught up with
let question = null, list = null, pairs = [], shownId = null, shownUrl = null;

export const isOpen = () => Boolean(list);

/** Opens the list for a question and shows the first of it. */
export async function open(shown) {
  const found = await api.beside(shown.id);
  if (found.lines.length === 0) return "There is no other spell with this measure to look at beside it.";
  [question, list] = [shown, found];
  el("beside-choice").replaceChildren(...found.lines.map((line) => {
    const option = document.createElement("option");
    option.value = line.id;
    option.textContent = `${kinds[line.kind]} ${[line.kind === "best" ? line.rider : null, line.date].filter(Boolean).join(", ")}: ${line.value} ${found.unit}`;
    return option;
  }));
  seen(true);
  return await show(found.lines[0].id);
}

export function close() {
  if (!list) return;
  [question, list, pairs, shownId] = [null, null, [], null];
  drawing.use(null);
  other.pause();
  other.removeAttribute("src");
  other.load();
  player.setLoop(null);
  seen(false);
}

/** Shows the spell of the list that was chosen. */
export async function show(id) {
  const [asked, wanted] = [question, id];
  const beside = await api.besideOne(asked.id, id);
  if (asked !== question) return "";
  shownId = wanted;
  el("beside-choice").value = id;
  const line = list.lines.find((l) => l.id === id), measure = list.measure.toLowerCase();
  pairs = beside.pairs;
  drawing.use(beside.tracks, beside.isMirrored);
  other.classList.toggle("mirrored", beside.isMirrored);
  el("own-name").textContent = `${asked.spell.rider ?? "this rider"}, ${asked.spell.date ?? "no day"}: ${measure} ${list.own} ${list.unit}`;
  el("beside-name").textContent = `${line.rider ?? "rider"}, ${line.date ?? "no day"}: ${measure} ${line.value} ${list.unit}${beside.isMirrored ? "; mirrored" : ""}`;
  el("beside-text").textContent = `${pairs.length ? `${pairs.length} stride${pairs.length > 1 ? "s" : ""}, sit on sit` : "No whole strides to lay side by side"}; ± from stride to stride alone`;
  el("no-beside").hidden = !beside.clip.refusal;
  el("no-beside").textContent = beside.clip.refusal ?? "";
  if (beside.clip.refusal) {
    other.removeAttribute("src");
    other.load();
  } else {
    shownUrl = beside.clip.url;
    other.src = copies.sourceOf(shownUrl);
  }
  player.setLoop(pairs.length ? { from: pairs[0].ownStartSeconds, to: pairs.at(-1).ownEndSeconds } : null);
  return "";
}

/** The next of the list. */
export function next() {
  const at = list.lines.findIndex((l) => l.id === shownId);
  return show(list.lines[(at + 1) % list.lines.length].id);
}

export const toggleOverlay = () => drawing.toggle();

/** Called with each picture of the first clip. */
export function follow(seconds) {
  if (!list || pairs.length === 0 || other.readyState < 1) return;
  const pair = pairs.find((p) => seconds < p.ownEndSeconds) ?? pairs.at(-1);
  const stretch = (pair.otherEndSeconds - pair.otherStartSeconds) / (pair.ownEndSeconds - pair.ownStartSeconds);
  const first = pairs[0], last = pairs.at(-1);
  const wanted = Math.max(first.otherStartSeconds, Math.min(last.otherEndSeconds, pair.otherStartSeconds + (seconds - pair.ownStartSeconds) * stretch));
  const late = wanted - other.currentTime;
  if (own.paused) {
    other.pause();
    if (Math.abs(late) > 0.002) other.currentTime = wanted;
    return;
  }
  if (Math.abs(late) > farSeconds) {
    if (!other.seeking) other.currentTime = wanted;
  }
  other.playbackRate = Math.max(0.1, own.playbackRate * stretch * (1 + Math.max(-0.4, Math.min(0.4, late * 4))));
  if (other.paused) other.play().catch(() => {});
}

function seen(isSeen) {
  el("stage").classList.toggle("two", isSeen);
  for (const id of ["beside-half", "beside-bar", "own-name"]) el(id).hidden = !isSeen;
  el("beside").setAttribute("aria-pressed", String(isSeen));
}

el("beside-choice").addEventListener("change", () => show(el("beside-choice").value).catch((e) => { el("beside-text").textContent = e.message; }));
other.addEventListener("error", async () => {
  if (!list || !other.getAttribute("src")) return;
  const [words, url] = [el("no-beside"), shownUrl];
  words.hidden = false;
  words.textContent = "This browser cannot play the clip; a copy that it can is being made.";
  try {
    if (!(await copies.make(url))) words.textContent = "This browser cannot play the clip, nor a copy of it.";
    else if (shownUrl === url) {
      words.hidden = true;
      other.src = copies.sourceOf(url);
    }
  } catch (e) {
    words.textContent = e.message;
  }
});
other.addEventListener("seeked", () => drawing.draw(other.currentTime));
if ("requestVideoFrameCallback" in other) {
  const each = (_, frame) => { drawing.draw(frame.mediaTime); other.requestVideoFrameCallback(each); };
  other.requestVideoFrameCallback(each);
} else {
  const each = () => { if (!other.paused) drawing.draw(other.currentTime); requestAnimationFrame(each); };
  requestAnimationFrame(each);
}
