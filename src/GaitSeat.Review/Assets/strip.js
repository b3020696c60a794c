// The strip of strides: drawn by the program, with a line here that goes with the clip. A click jumps there.
import * as api from "./api.js";
import * as player from "./player.js";

const box = document.getElementById("strip");
const history = document.getElementById("history");
let svg = null, now = null, id = null, waits = 0;

export async function show(shown) {
  id = shown.id;
  box.setAttribute("aria-label", `Strip of ${Math.max(0, shown.spell.sitSeconds.length - 1)} strides of spell ${shown.spell.number}, with seat motion, thigh angle and stirrup drift; the keys [ and ] jump from sit to sit`);
  await draw();
}

async function draw() {
  const wanted = id;
  const [strip, past] = await Promise.all([api.drawing(wanted, "strip", box.clientWidth - 2), api.drawing(wanted, "history", history.clientWidth)]);
  if (wanted !== id) return;
  svg = strip;
  box.replaceChildren(svg);
  history.replaceChildren(past);
  now = document.createElementNS("http://www.w3.org/2000/svg", "line");
  now.setAttribute("class", "strip-now");
  now.setAttribute("y1", "0");
  now.setAttribute("y2", svg.getAttribute("height"));
  now.setAttribute("x1", "-9");
  now.setAttribute("x2", "-9");
  svg.append(now);
}

const number = (name) => Number(svg.dataset[name]);

export function tell(seconds) {
  if (!svg || !now) return;
  const share = (seconds - number("start")) / (number("end") - number("start"));
  const x = share < 0 || share > 1 ? -9 : number("left") + share * (number("right") - number("left"));
  now.setAttribute("x1", x.toFixed(1));
  now.setAttribute("x2", x.toFixed(1));
}

box.addEventListener("click", (event) => {
  if (!svg) return;
  const x = event.clientX - svg.getBoundingClientRect().left;
  const share = Math.max(0, Math.min(1, (x - number("left")) / (number("right") - number("left"))));
  player.jump(number("start") + share * (number("end") - number("start")));
});

new ResizeObserver(() => {
  clearTimeout(waits);
  if (svg && Math.abs(box.clientWidth - 2 - Number(svg.getAttribute("width"))) > 4) waits = setTimeout(() => draw().catch(() => {}), 150);
}).observe(box);
