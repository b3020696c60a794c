// The run: what the worker does, what was set aside, and a clip tried again.
import * as api from "./api.js";

const el = (id) => document.getElementById(id);
const againSeconds = 15;
const processWords = { running: "running", gone: "stopped", elsewhere: "on another machine" };

function element(tag, look, ...inside) {
  const e = document.createElement(tag);
  if (look) e.className = look;
  e.append(...inside);
  return e;
}

const nothing = (words) => element("p", "quiet", words);

function say(words, bad = false) {
  el("state").textContent = words;
  el("state").classList.toggle("bad", bad);
}

function show(page) {
  el("progress").textContent = `${page.measured} measured, ${page.setAside} set aside, ${page.waiting} waiting`;
  el("workers").replaceChildren(...(page.workers.length ? page.workers.map(worker)
    : [nothing("No worker has written here in the last two days. 'gaitseat watch' starts one; 'gaitseat process' leaves no log.")]));
  el("aside").replaceChildren(...(page.groups.length ? [nothing("Nothing is measured from here. A clip that is set back counts as not done: the next 'gaitseat process' measures it, or a running worker when its window next opens."), ...page.groups.map(group)] : [nothing("No clip that may be shown is set aside.")]));
  if (page.hidden) el("aside").append(nothing(`${page.hidden} more not shown: no consent.`));
  el("off").replaceChildren(...(page.putOff.length ? [element("ul", "plain", ...page.putOff.map((p) => element("li", "", element("strong", "", p.file), ` ${p.reason}: ${p.detail}`)))]
    : [nothing("None in the latest night.")]));
  el("nights").replaceChildren(page.nights.length ? nights(page.nights) : nothing("No night is in the journal yet."));
}

function worker(w) {
  const stopped = w.process === "gone";
  const head = element("p", "", element("strong", "", w.name), ` ${processWords[w.process]}${stopped ? "" : `: ${w.does}`}. Last word ${w.lastWord}.`);
  const box = element("div", stopped ? "card gone" : w.paused ? "card paused" : "card", head);
  if (w.paused) box.append(element("p", "", `Pauses: ${w.paused}`));
  for (const clip of w.inHand) box.append(element("p", "quiet", `${clip.clip}, ${stopped ? "was in hand; begun" : "begun"} ${clip.since}`));
  return box;
}

function group(g) {
  return element("div", "card", element("h3", "", `${g.reason}: ${g.clips.length}`), element("ul", "plain", ...g.clips.map((c) => {
    const button = element("button", "", "Try in the next run");
    button.type = "button";
    button.setAttribute("aria-label", `Try in the next run: ${c.file}`);
    button.addEventListener("click", () => retry(button, c));
    return element("li", "aside-line", element("div", "", element("strong", "", c.file), element("p", "quiet", c.detail)), button);
  })));
}

async function retry(button, clip) {
  button.disabled = true;
  try {
    const done = await api.retry(clip.key);
    show(done.page);
    say(done.text);
  } catch (e) {
    button.disabled = false;
    say(e.message, true);
  }
}

function nights(all) {
  const columns = [["Night", "night"], ["Measured", "measured"], ["Flagged", "flagged"], ["Set aside", "setAside"], ["Put off", "putOff"], ["Strides", "strides"], ["Minutes on clips", "minutes"]];
  const table = element("table", "nights",
    element("thead", "", element("tr", "", ...columns.map(([head]) => { const th = element("th", "", head); th.scope = "col"; return th; }))),
    element("tbody", "", ...all.map((n) => element("tr", "", ...columns.map(([, key]) => element("td", "", String(n[key])))))));
  const box = element("div", "table-box", table);
  box.tabIndex = 0;
  box.setAttribute("role", "region");
  box.setAttribute("aria-label", "Nights");
  return box;
}

/** Looks again by itself, not while a button has the focus: the list would move under it. */
async function look() {
  try {
    show(await api.run());
    if (el("state").classList.contains("bad")) say("");
  } catch (e) {
    say(e.message, true);
  }
}

setInterval(() => { if (!document.hidden && !el("aside").contains(document.activeElement) && !el("aside").matches(":hover")) look(); }, againSeconds * 1000);
look();
