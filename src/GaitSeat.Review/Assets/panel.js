// The side panel: what is asked, why, and what is known around it. All text goes in as text.
const el = (id) => document.getElementById(id);

const drawnWords = { ranked: "flagged", uncertain: "unsure", random: "at random", chosen: "chosen" };
export const answerWords = { agrees: "agreed", does_not: "does not", cannot_tell: "cannot tell" };

export function show(q) {
  const s = q.spell;
  el("who").textContent = [s.rider ?? "rider not in the sheet", s.horse, s.date, s.rein && `${s.rein} rein`, `spell ${s.number}`].filter(Boolean).join(" · ");
  el("title").textContent = q.title;
  el("asked").textContent = q.asked;
  el("progress").textContent = `${q.position} of ${q.total}, ${q.judged} judged`;
  el("choice").hidden = q.choices.length === 0;
  el("fault").replaceChildren(...[{ term: "", label: "choose the fault" }, ...q.choices].map((c) => option(c)));
  el("why").textContent = q.reasons.why;
  lines(el("rule"), q.reasons.rule);
  lines(el("model"), q.reasons.model);
  el("model-head").hidden = q.reasons.model.length === 0;
  el("history-text").textContent = q.historyText;
  el("card-box").hidden = !q.card;
  if (q.card) {
    el("card-title").textContent = `Once you agree: ${q.card.title}`;
    el("card").replaceChildren(...q.card.sections.flatMap((c) => [text("h3", c.heading), text("p", c.text, "card-text")]));
  }
  answered(q.answer);
}

export function others(q, go) {
  if (q.others.length === 0) {
    el("others").replaceChildren(text("li", "Nothing else is flagged."));
    return;
  }
  el("others").replaceChildren(...q.others.map((o) => {
    const item = text("li", o.id ? "" : `${o.label}: ${o.text}`);
    if (o.id) {
      const button = text("button", `${o.label}: ${o.text}`);
      button.type = "button";
      button.addEventListener("click", () => go(o.id));
      item.append(button);
    }
    return item;
  }));
}

export function answered(a) {
  for (const b of document.querySelectorAll("[data-answer]")) b.setAttribute("aria-pressed", String(a?.answer === b.dataset.answer));
  el("note").value = a?.note ?? "";
}

export function state(words, bad = false) {
  el("state").textContent = words;
  el("state").classList.toggle("bad", bad);
}

/** One page of the queue. */
export function queue(page, current, go) {
  el("queue-count").textContent = `${page.judged} of ${page.total} judged.` + (page.hidden ? ` ${page.hidden} not shown: no consent.` : "");
  el("queue-lines").replaceChildren(...page.lines.map((l) => {
    const item = document.createElement("li");
    const button = document.createElement("button");
    button.type = "button";
    button.append(text("span", String(l.position)), text("span", l.rider ?? "–", "line-rider"), text("span", `${l.fault}${l.drawn === "ranked" ? "" : ` (${drawnWords[l.drawn]})`}`), text("span", l.answer ? answerWords[l.answer] : "open"));
    button.setAttribute("aria-current", String(l.id === current));
    button.addEventListener("click", () => go(l.id));
    item.append(button);
    return item;
  }));
}

function lines(box, all) {
  box.replaceChildren(...all.map((l) => text("p", l)));
}

function option(choice) {
  const o = text("option", choice.label);
  o.value = choice.term;
  return o;
}

function text(tag, words, look) {
  const e = document.createElement(tag);
  e.textContent = words;
  if (look) e.className = look;
  return e;
}
