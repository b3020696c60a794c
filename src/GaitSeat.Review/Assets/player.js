// The clip: looped over the flagged seconds, slow, frame by frame.
import { sourceOf } from "./copies.js";

const video = document.getElementById("video");
const playButton = document.getElementById("play");
const clock = document.getElementById("clock");
const margin = 0.15; // s shown before and after, so that the first and the last frame are seen in motion
let flagged = { from: 0, to: 0 }, from = 0, to = 0, times = null, frameSeconds = 1 / 25, speed = 0.5, wants = true;
const listeners = [];

/** Called with the time of each picture shown, s. */
export const onPicture = (listener) => listeners.push(listener);

export function show(shown) {
  flagged = { from: Math.max(0, shown.spell.flagStartSeconds - margin), to: shown.spell.flagEndSeconds + margin };
  ({ from, to } = flagged);
  times = null;
  frameSeconds = shown.clip.frameRateHz ? 1 / shown.clip.frameRateHz : 1 / 25;
  const url = new URL(sourceOf(shown.clip.url), location.href).href;
  if (shown.clip.refusal) {
    video.removeAttribute("src");
    video.load();
    return;
  }
  if (video.src !== url) {
    video.src = url;
    video.addEventListener("loadedmetadata", begin, { once: true });
  } else begin();
}

/** Loops over other seconds than the flagged ones; null for these again. */
export function setLoop(loop) {
  ({ from, to } = loop ?? flagged);
  if (video.readyState > 0 && loop) video.currentTime = from;
}

export const useTimes = (frameTimes) => { times = frameTimes; };

function begin() {
  if (Number.isFinite(video.duration)) to = Math.min(to, video.duration);
  video.playbackRate = speed;
  video.currentTime = from;
  if (wants) video.play().catch(told);
  told();
}

export function jump(seconds) {
  video.currentTime = Math.max(0, Math.min(seconds, Number.isFinite(video.duration) ? video.duration : seconds));
}

export function pause() {
  wants = false;
  video.pause();
  told();
}

/** Into the middle of the frame of that time, so that rounding shows no other. */
export const jumpToFrame = (seconds) => jump(seconds + frameSeconds / 2);

export function toggle() {
  wants = video.paused;
  if (wants) video.play().catch(told);
  else video.pause();
  told();
}

/** By the true times of the frames where they are known, into the middle of the frame, so that rounding shows no other. */
export function step(frames) {
  pause();
  const now = video.currentTime;
  if (times?.length) {
    let at = times.findIndex((t) => t > now + 1e-4);
    at = (at < 0 ? times.length : at) - 1;
    const target = times[Math.max(0, Math.min(times.length - 1, at + frames))];
    jumpToFrame(target);
  } else jump(now + frames * frameSeconds);
  told();
}

export function setSpeed(value) {
  speed = value;
  video.playbackRate = value;
  told();
}

function told() {
  playButton.textContent = video.paused ? "Play" : "Pause";
  for (const b of document.querySelectorAll("[data-speed]")) b.setAttribute("aria-pressed", String(Number(b.dataset.speed) === speed));
}

function picture(seconds) {
  clock.value = `${seconds.toFixed(2)} s`;
  if (!video.paused && (seconds >= to || seconds < from - 1)) video.currentTime = from;
  for (const listener of listeners) listener(seconds);
}

video.addEventListener("play", told);
video.addEventListener("pause", told);
video.addEventListener("ended", () => { video.currentTime = from; if (wants) video.play().catch(told); });
video.addEventListener("seeked", () => picture(video.currentTime));
if ("requestVideoFrameCallback" in video) {
  const each = (_, frame) => { picture(frame.mediaTime); video.requestVideoFrameCallback(each); };
  video.requestVideoFrameCallback(each);
} else {
  const each = () => { if (!video.paused) picture(video.currentTime); requestAnimationFrame(each); };
  requestAnimationFrame(each);
}
