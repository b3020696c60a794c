// The review screen: one question after the other, each answer saved before the next is shown.
import * as api from "./api.js";
import * as beside from "./beside.js";
import * as copies from "./copies.js";
import * as marking from "./marking.js";
import * as overlays from "./overlay.js";
import * as panel from "./panel.js";
import * as player from "./player.js";
import * as strip from "./strip.js";

const el = (id) => document.getElementById(id);
const overlay = overlays.over(el("video"), el("overlay"));
const pageLines = 50;
let current = null, busy = false, queueFrom = 0;

async function go(id) {
  const shown = await api.question(id);
  if (el("queue").open) el("queue").close();
  el("empty").hidden = true;
  el("screen").hidden = false;
  current = shown;
  beside.close();
  marking.close();
  history.replaceState(null, "", `#${id}`);
  panel.show(shown);
  panel.others(shown, (other) => run(() => go(other)));
  el("previous").disabled = !shown.previousId;
  el("next").disabled = !shown.nextId;
  el("no-clip").hidden = !shown.clip.refusal;
  el("no-clip").textContent = shown.clip.refusal ?? "";
  overlay.use(null);
  el("overlay-switch").disabled = !shown.clip.hasTracks;
  el("overlay-switch").title = shown.clip.hasTracks ? "" : "The run kept no tracks: measure with output.tracks: true";
  player.show(shown);
  el("reading").scrollTop = 0;
  const [tracks] = await Promise.all([shown.clip.hasTracks ? api.tracks(id) : null, strip.show(shown)]);
  if (current !== shown || !tracks) return;
  overlay.use(tracks);
  player.useTimes(tracks.timeSeconds);
}

async function answer(word) {
  const shown = current;
  const fault = el("fault").value;
  if (shown.choices.length && word === "agrees" && !fault) {
    panel.state("Choose which fault is there, then agree.", true);
    el("fault").focus();
    return;
  }
  const after = await api.answer({ id: shown.id, answer: word, fault: shown.choices.length ? fault : null, note: el("note").value });
  panel.answered(after.answer);
  const said = `Saved: ${shown.title}, ${shown.spell.rider ?? "rider"}: ${panel.answerWords[word]}.`;
  if (after.nextId) await go(after.nextId);
  else await finish();
  panel.state(said);
}

async function undo() {
  const undone = await api.undo();
  if (undone.id) await go(undone.id);
  panel.state(undone.text);
}

/** At the end: the first that is still open, or the word that all is done. */
async function finish() {
  const page = await api.queue(0);
  if (page.nextOpen) await go(page.nextOpen);
  else empty(page);
}

/** Away from what may not be shown any more, to what is still open. */
async function leave(words) {
  player.show({ clip: { refusal: "-" }, spell: {} });
  await finish();
  panel.state(words, true);
  if (!current) el("empty-text").prepend(`${words} `);
}

function empty(page) {
  beside.close();
  marking.close();
  player.show({ clip: { refusal: "-" }, spell: {} });
  current = null;
  el("screen").hidden = true;
  el("empty").hidden = false;
  el("progress").textContent = page.total ? `${page.judged} of ${page.total} judged` : "";
  el("empty-title").textContent = page.total ? "All done." : "Nothing to review.";
  el("empty-text").textContent = page.total
    ? "Every question of this queue is answered, and each answer is in the dataset. U takes the latest back; the queue shows them all. You may close this page and stop the program."
    : "The run holds no spell that asks for a coach's eye" + (page.hidden ? `, or none that may be shown: ${page.hidden} lack consent.` : ". Measure more clips, then start the review again.");
}

async function openQueue(from) {
  const page = await api.queue(from);
  queueFrom = from;
  panel.queue(page, current?.id, (id) => run(() => go(id)));
  el("queue-before").disabled = from === 0;
  el("queue-after").disabled = from + pageLines >= page.total;
  if (!el("queue").open) el("queue").showModal();
  el("queue-lines").scrollTop = 0;
}

const openAtCurrent = () => openQueue(current ? Math.floor((current.position - 1) / pageLines) * pageLines : 0);

function sit(direction) {
  const now = el("video").currentTime;
  const sits = current.spell.sitSeconds;
  const target = direction > 0 ? sits.find((s) => s > now + 0.02) : sits.findLast((s) => s < now - 0.05);
  if (target !== undefined) player.jump(target);
}

/** One act at a time: a key pressed while an answer is being saved does nothing. */
async function run(act) {
  if (busy) return;
  busy = true;
  el("screen").setAttribute("aria-busy", "true");
  panel.state("");
  try {
    await act();
  } catch (e) {
    if (e.isGone) await leave(e.message).catch((later) => panel.state(later.message, true));
    else panel.state(e instanceof api.Refusal ? e.message : `Something went wrong on the page: ${e.message}`, true);
    if (!current && !e.isGone) { el("empty").hidden = false; el("empty-title").textContent = "Not open"; el("empty-text").textContent = e.message; }
  } finally {
    busy = false;
    el("screen").setAttribute("aria-busy", "false");
  }
}

function switchOverlay() {
  if (el("overlay-switch").disabled) return;
  beside.toggleOverlay();
  el("overlay-switch").setAttribute("aria-pressed", String(overlay.toggle()));
}

/** Another clip beside this one, or this one alone again. */
function lookBeside() {
  if (beside.isOpen()) beside.close();
  else run(async () => panel.state(await beside.open(current)));
}

/** Marks on the frame that is shown; while marking, the keys of answers do nothing. */
function mark() {
  if (marking.isOpen()) marking.close();
  else if (!current.clip.refusal && el("video").videoWidth) run(async () => { beside.close(); await marking.open(current); });
}

/** To another frame, whose marks are shown when it is there. */
async function markFrame(move) {
  move();
  await new Promise((done) => { el("video").addEventListener("seeked", done, { once: true }); setTimeout(done, 1000); });
  await marking.open(current);
}

const markKeys = {
  s: () => run(marking.save),
  z: () => marking.toggleZoom(),
  n: () => marking.chooseNext(),
  k: mark,
  escape: mark,
  ",": () => run(() => markFrame(() => player.step(-1))),
  ".": () => run(() => markFrame(() => player.step(1))),
  "[": () => run(() => markFrame(() => sit(-1))),
  "]": () => run(() => markFrame(() => sit(1))),
};
const keys = {
  a: () => run(() => answer("agrees")),
  d: () => run(() => answer("does_not")),
  c: () => run(() => answer("cannot_tell")),
  n: () => current.nextId && run(() => go(current.nextId)),
  p: () => current.previousId && run(() => go(current.previousId)),
  m: () => el("note").focus(),
  o: switchOverlay,
  b: lookBeside,
  k: mark,
  v: () => beside.isOpen() && run(() => beside.next()),
  " ": player.toggle,
  ",": () => player.step(-1),
  ".": () => player.step(1),
  "[": () => sit(-1),
  "]": () => sit(1),
  1: () => player.setSpeed(0.25),
  2: () => player.setSpeed(0.5),
  3: () => player.setSpeed(0.75),
  4: () => player.setSpeed(1),
};
const always = { u: () => run(undo), q: () => run(openAtCurrent) };

document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey || el("queue").open) return;
  const writes = event.target.matches("textarea, select");
  if (writes) {
    if (event.key === "Escape") event.target.blur();
    return;
  }
  if (event.key === " " && event.target.matches("button, summary")) return;
  if (marking.isOpen()) {
    const marks = markKeys[event.key.toLowerCase()];
    if (marks) {
      event.preventDefault();
      marks();
    }
    return;
  }
  const act = always[event.key.toLowerCase()] ?? (current ? keys[event.key.toLowerCase()] : undefined);
  if (!act || event.repeat && !",.".includes(event.key)) return;
  event.preventDefault();
  act();
});

for (const b of document.querySelectorAll("[data-answer]")) b.addEventListener("click", () => { marking.close(); run(() => answer(b.dataset.answer)); });
for (const b of document.querySelectorAll("[data-speed]")) b.addEventListener("click", () => player.setSpeed(Number(b.dataset.speed)));
el("play").addEventListener("click", player.toggle);
el("back").addEventListener("click", () => player.step(-1));
el("forth").addEventListener("click", () => player.step(1));
el("overlay-switch").addEventListener("click", switchOverlay);
el("beside").addEventListener("click", keys.b);
el("mark").addEventListener("click", mark);
el("mark-close").addEventListener("click", mark);
el("mark-zoom").addEventListener("click", markKeys.z);
el("mark-next").addEventListener("click", markKeys.n);
el("mark-save").addEventListener("click", markKeys.s);
el("mark-back").addEventListener("click", () => run(marking.takeBack));
for (const b of document.querySelectorAll("[data-step]")) b.addEventListener("click", () => run(() => markFrame(() => player.step(Number(b.dataset.step)))));
for (const b of document.querySelectorAll("[data-began]")) b.addEventListener("click", () => marking.setBegan(b.dataset.began));
el("beside-next").addEventListener("click", keys.v);
el("next").addEventListener("click", keys.n);
el("previous").addEventListener("click", keys.p);
el("undo").addEventListener("click", always.u);
el("open-queue").addEventListener("click", always.q);
el("close-queue").addEventListener("click", () => el("queue").close());
el("queue-before").addEventListener("click", () => run(() => openQueue(Math.max(0, queueFrom - pageLines))));
el("queue-after").addEventListener("click", () => run(() => openQueue(queueFrom + pageLines)));
el("video").addEventListener("error", async () => {
  if (!current || current.clip.refusal || !el("video").getAttribute("src")) return;
  const [shown, words] = [current, el("no-clip")];
  words.hidden = false;
  words.textContent = "This browser cannot play the clip's format; a copy that it can is being made, which takes about as long as the clip. You may go on meanwhile: strip and figures are those of the clip.";
  const said = await copies.make(shown.clip.url).then((made) => (made ? "" : "This browser cannot play the clip, nor a copy of it. The strip and the figures are those of the clip all the same."), (e) => e.message);
  if (current?.clip.url !== shown.clip.url) return;
  words.hidden = !said;
  words.textContent = said;
  if (!said) player.show(current);
});
player.onPicture((seconds) => { overlay.draw(seconds); beside.follow(seconds); strip.tell(seconds); });

run(async () => {
  player.setSpeed(0.5);
  const wanted = decodeURIComponent(location.hash.slice(1));
  const page = await api.queue(0);
  if (wanted) {
    try {
      await go(wanted);
      return;
    } catch (e) {
      if (!(e instanceof api.Refusal)) throw e;
    }
  }
  if (page.nextOpen) await go(page.nextOpen);
  else empty(page);
});
