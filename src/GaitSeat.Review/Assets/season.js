// The season: riders as rows, weeks as columns. A rider's pictures are asked for when the row comes into view.
import * as api from "./api.js";

const el = (id) => document.getElementById(id);
const narrowestPx = 224, gapPx = 12, shownAt = new Map();

function element(tag, look, ...inside) {
  const e = document.createElement(tag);
  if (look) e.className = look;
  e.append(...inside);
  return e;
}

const plural = (n, word) => `${n} ${word}${n === 1 ? "" : "s"}`;

function row(rider) {
  const section = element("section", "rider-row");
  const head = element("h2", "rider-name", rider.name);
  head.id = `rider-${rider.number}`;
  section.setAttribute("aria-labelledby", head.id);
  section.dataset.rider = rider.number;
  section.append(
    element("div", "rider-head", head, element("p", "quiet", `${plural(rider.clips, "clip")}, ${plural(rider.spells, "spell")}, ${plural(rider.strides, "stride")}`), element("div", "rider-words")),
    element("div", "panels"));
  return section;
}

async function fill(section) {
  const panels = section.querySelector(".panels");
  const columns = Math.max(1, Math.floor((panels.clientWidth + gapPx) / (narrowestPx + gapPx)));
  const width = Math.floor((panels.clientWidth - (columns - 1) * gapPx) / columns) - 2;
  if (shownAt.get(section) === width) return;
  shownAt.set(section, width);
  const shown = await api.rider(section.dataset.rider, width);
  panels.replaceChildren(...shown.panels.map((p) => {
    const picture = element("div", "picture", api.svgOf(p.svg));
    picture.setAttribute("role", "img");
    picture.setAttribute("aria-label", p.words);
    return element("div", "panel", element("h3", "", p.title), picture);
  }));
  const box = section.querySelector(".rider-words");
  box.replaceChildren(...shown.changes.map((c) => element("p", "change-line", c)));
  if (shown.findings.length) box.append(fold(`Flagged: ${shown.findings.length}`, shown.findings.map(finding)));
  if (shown.leftOut.length) box.append(fold("Left out, and why", shown.leftOut.map((l) => element("li", "", l))));
}

function finding(f) {
  const words = `${f.label}: ${f.text}`;
  if (!f.id) return element("li", "", words);
  const link = element("a", "", words);
  link.href = `/#${encodeURIComponent(f.id)}`;
  return element("li", "", link);
}

function fold(title, items) {
  return element("details", "", element("summary", "", title), element("ul", "plain", ...items));
}

const tell = (e) => { el("state").textContent = e.message; el("state").classList.add("bad"); };
const seen = new IntersectionObserver((entries) => {
  for (const entry of entries) if (entry.isIntersecting) fill(entry.target).catch(tell);
}, { rootMargin: "400px" });

let waits = 0;
window.addEventListener("resize", () => {
  clearTimeout(waits);
  waits = setTimeout(() => { for (const section of shownAt.keys()) fill(section).catch(tell); }, 200);
});

try {
  const page = await api.season();
  el("progress").textContent = page.span ? `${plural(page.riders.length, "rider")}, ${plural(page.weeks, "week")}` : "";
  el("span").textContent = page.span ? `${page.span}${page.hidden ? `; ${plural(page.hidden, "clip")} not shown: no consent` : ""}.` : "";
  el("legend").hidden = page.riders.length === 0;
  if (page.riders.length === 0) el("state").textContent = "There is no clip of this run that may be shown.";
  el("riders").replaceChildren(...page.riders.map(row));
  for (const section of el("riders").children) seen.observe(section);
} catch (e) {
  tell(e);
}
