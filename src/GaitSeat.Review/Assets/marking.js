// Marking by hand on a still: handles over the picture that are dragged, or moved with the arrow keys, and saved as marks. A drag beside the handles moves the one that is chosen, so that no finger lies over the point and
// handles that lie close can be told apart.
import * as api from "./api.js";
import { pictureIn } from "./overlay.js";
import * as player from "./player.js";

const el = (id) => document.getElementById(id);
const video = el("video"), canvas = el("overlay"), layer = el("handles");
const fills = 0.72, leastNear = 1.5, mostNear = 5; // how much of what is seen the rider's points fill when they are brought near, and how much larger the picture may get
const parkLeft = 0.03, parkTop = 0.12, parkStep = 0.095; // where handles wait, shares of what is seen
let zoom = 1, question = null, shown = null, began = "tool", places = new Map(), handles = new Map(), chosen = null;

export const isOpen = () => Boolean(question);

/** Stops on the frame that is shown and lays the handles over it. */
export async function open(q) {
  player.pause();
  const frame = await api.marks(q.id, video.currentTime);
  if (!question) {
    began = "tool";
    seen(true);
    zoomTo(nearness(frame), frame);
  }
  question = q;
  use(frame);
  player.jumpToFrame(frame.timeSeconds);
}

export function close() {
  if (!question) return;
  [question, chosen] = [null, null];
  layer.replaceChildren();
  handles.clear();
  zoomTo(1);
  seen(false);
}

export async function save() {
  const points = shown.points.filter((p) => places.get(p.point)?.isMoved).map((p) => ({ point: p.point, x: places.get(p.point).x, y: places.get(p.point).y }));
  if (points.length === 0) return tell("Move a handle first, or press Enter on one that is right as it is.");
  use(await api.saveMarks({ id: question.id, timeSeconds: shown.timeSeconds, began, points }));
}

/** Takes the judge's marks of this frame back. */
export async function takeBack() {
  const points = shown.points.filter((p) => p.own).map((p) => ({ point: p.point, x: null, y: null }));
  if (points.length === 0) return tell("Nothing of yours is saved on this frame.");
  use(await api.saveMarks({ id: question.id, timeSeconds: shown.timeSeconds, began, points }));
}

/** From the tool's points, or without having them shown. */
export function setBegan(word) {
  began = word;
  use({ ...shown, said: null });
}

/** Nearer to the rider, or the whole picture again. */
export function toggleZoom() {
  zoomTo(zoom === 1 ? nearness(shown) : 1, shown);
  use({ ...shown, said: null });
}

/** Chooses the next point in the order of the body; the arrow keys and a drag beside it move it. */
export function chooseNext() {
  const points = [...handles.keys()];
  handles.get(points[(points.indexOf(chosen) + 1) % points.length]).focus();
}

const knownOf = (frame) => frame.points.map((p) => p.own ?? p.tool).filter(Boolean);

/** How much nearer the rider's points fill what is seen; the middle of what is allowed where none is known. */
function nearness(frame) {
  const known = knownOf(frame), picture = pictureIn(video, canvas);
  if (known.length < 2) return (leastNear + mostNear) / 2;
  const span = (axis) => Math.max(0.02, Math.max(...known.map((p) => p[axis])) - Math.min(...known.map((p) => p[axis])));
  return Math.max(leastNear, Math.min(mostNear, fills * canvas.clientWidth / (span("x") * picture.width), fills * canvas.clientHeight / (span("y") * picture.height)));
}

/** All three layers grow alike, so that what is told in shares of the picture stays right. */
function zoomTo(factor, frame) {
  zoom = 1;
  for (const layered of [video, canvas, layer]) Object.assign(layered.style, { width: "", height: "", left: "", top: "", right: "", bottom: "" });
  zoom = factor;
  el("mark-zoom").setAttribute("aria-pressed", String(factor > 1));
  if (factor === 1) return;
  const picture = pictureIn(video, canvas), known = knownOf(frame);
  const middle = (axis) => (known.length ? (Math.min(...known.map((p) => p[axis])) + Math.max(...known.map((p) => p[axis]))) / 2 : 0.5);
  const shift = (at, size) => Math.max(1 - factor, Math.min(0, 0.5 - (at / size) * factor)) * 100;
  const left = shift(picture.left + middle("x") * picture.width, canvas.clientWidth), top = shift(picture.top + middle("y") * picture.height, canvas.clientHeight);
  for (const layered of [video, canvas, layer]) Object.assign(layered.style, { width: `${factor * 100}%`, height: `${factor * 100}%`, left: `${left}%`, top: `${top}%`, right: "auto", bottom: "auto" });
}

/** A place at the left of what is seen, for a point that is nowhere yet. */
function parked(i) {
  const picture = pictureIn(video, canvas), [w, h] = [canvas.clientWidth / zoom, canvas.clientHeight / zoom];
  const within = (v) => Math.max(0.01, Math.min(0.99, v));
  return { x: within((parkLeft * w - canvas.offsetLeft - picture.left) / picture.width), y: within(((parkTop + parkStep * i) * h - canvas.offsetTop - picture.top) / picture.height) };
}

function use(frame) {
  shown = frame;
  places = new Map(frame.points.map((p, i) => {
    const start = p.own ?? (began === "tool" ? p.tool : null);
    return [p.point, start ? { ...start, isMoved: false, isSaved: Boolean(p.own), isParked: false } : { ...parked(i), isMoved: false, isSaved: false, isParked: true }];
  }));
  layer.replaceChildren(...frame.points.map(handle));
  choose(frame.points.some((p) => p.point === chosen) ? chosen : null);
  place();
  for (const b of document.querySelectorAll("[data-began]")) b.setAttribute("aria-pressed", String(b.dataset.began === began));
  tell([frame.said, ...frame.angles].filter(Boolean).join(" ") || "Drag a handle to its point, or choose one with N and drag beside it. Arrow keys move it by one pixel, with Shift by ten; Enter says that it is right as it is.");
}

function handle(point) {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "handle";
  button.append(Object.assign(document.createElement("span"), { className: "handle-name", textContent: point.label }));
  button.setAttribute("aria-label", point.label);
  button.addEventListener("focus", () => choose(point.point));
  button.addEventListener("pointerdown", (event) => {
    event.preventDefault();
    event.stopPropagation();
    button.focus();
    button.setPointerCapture(event.pointerId);
  });
  button.addEventListener("pointermove", (event) => {
    if (!button.hasPointerCapture(event.pointerId)) return;
    const box = layer.getBoundingClientRect(), picture = pictureIn(video, canvas);
    move(point.point, (event.clientX - box.left - picture.left) / picture.width, (event.clientY - box.top - picture.top) / picture.height);
  });
  button.addEventListener("keydown", (event) => {
    const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
    const at = places.get(point.point), far = event.shiftKey ? 10 : 1;
    if (event.key === "Enter") move(point.point, at.x, at.y);
    else if (steps[event.key]) move(point.point, at.x + steps[event.key][0] * far / video.videoWidth, at.y + steps[event.key][1] * far / video.videoHeight);
    else return;
    event.preventDefault();
    event.stopPropagation();
  });
  handles.set(point.point, button);
  return button;
}

function choose(point) {
  chosen = point;
  for (const [name, button] of handles) button.classList.toggle("chosen", name === point);
}

let held = null;
layer.addEventListener("pointerdown", (event) => {
  if (!chosen) return;
  event.preventDefault();
  layer.setPointerCapture(event.pointerId);
  held = { x: event.clientX, y: event.clientY, from: places.get(chosen) };
});
layer.addEventListener("pointermove", (event) => {
  if (!held || !layer.hasPointerCapture(event.pointerId)) return;
  const picture = pictureIn(video, canvas);
  move(chosen, held.from.x + (event.clientX - held.x) / picture.width, held.from.y + (event.clientY - held.y) / picture.height);
});
layer.addEventListener("lostpointercapture", () => { held = null; });

function move(point, x, y) {
  const within = (v) => Math.max(0, Math.min(1, v));
  places.set(point, { x: within(x), y: within(y), isMoved: true, isSaved: false, isParked: false });
  place();
}

function place() {
  if (!question || !video.videoWidth) return;
  const picture = pictureIn(video, canvas);
  for (const [point, button] of handles) {
    const at = places.get(point);
    if (!at) continue;
    button.style.left = `${picture.left + at.x * picture.width}px`;
    button.style.top = `${picture.top + at.y * picture.height}px`;
    button.classList.toggle("moved", at.isMoved);
    button.classList.toggle("saved", at.isSaved);
    button.classList.toggle("parked", at.isParked);
    button.setAttribute("aria-label", `${button.textContent}: ${at.isMoved ? "placed, not saved" : at.isSaved ? "saved" : at.isParked ? "not placed" : "as the tool has it"}, ${Math.round(at.x * video.videoWidth)}, ${Math.round(at.y * video.videoHeight)} pixels`);
  }
}

function tell(words) {
  el("mark-text").textContent = words;
}

function seen(isSeen) {
  el("mark-bar").hidden = !isSeen;
  el("transport").hidden = isSeen;
  layer.hidden = !isSeen;
  el("mark").setAttribute("aria-pressed", String(isSeen));
  canvas.classList.toggle("away", isSeen);
  el("stage").classList.toggle("near", isSeen);
}

new ResizeObserver(place).observe(layer);
