// The page on which a set of questions is picked: the form and the address tell the same, and Python
// makes the questions from either.

import { part, whileHere } from "./parts.js";
import { practise, remember, tend } from "./practice.js";
import { reason } from "./standing.js";

const LONGEST_LINK = 4_096; // a stranger may send megabytes

export function arrive(place) {
  if ("live" in place.dataset) return;
  place.dataset.live = "";
  const form = part(place, "pick");
  const said = part(place, "said");
  const { target } = place.dataset;
  const tell = (words) => {
    said.textContent = words;
    said.hidden = !words;
  };
  form.hidden = false;
  remember(place);

  function make(request) {
    tell("Making the set …");
    practise({ do: "set", target, ...request }, take, (why, words) => tell(`No set yet. ${reason(why, words)}`));
  }

  function take(reply) {
    if (reply.problems) return tell(reply.problems.map((one) => one.message).join(" "));
    tell("");
    const { sheets, count, seed } = reply.picked;
    for (const box of form.querySelectorAll("[type=checkbox]")) box.checked = sheets.includes(box.value);
    form.querySelector("[name=count]").value = count;
    form.querySelector("[name=seed]").value = seed;
    const questions = part(place, "questions");
    questions.innerHTML = reply.html;
    for (const one of questions.querySelectorAll("[data-nr]")) tend(place, one);
    part(place, "share").hidden = false;
    if (place.isConnected) history.replaceState(history.state, "", `#${reply.link}`);
    document.documentElement.dataset.lugwise = "ready";
  }

  const open = () => location.hash.includes("sheets=") && make({ link: location.hash.slice(0, LONGEST_LINK) });

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const sheets = [...form.querySelectorAll("[type=checkbox]:checked")].map((box) => box.value);
    make({ sheets, count: form.querySelector("[name=count]").value, seed: form.querySelector("[name=seed]").value });
  });
  part(form, "new-seed").addEventListener("click", () => {
    form.querySelector("[name=seed]").value = String(Math.trunc(Math.random() * 1e6));
    form.requestSubmit();
  });
  part(place, "copy").addEventListener("click", async () => {
    const done = await navigator.clipboard?.writeText(location.href).then(() => true, () => false);
    part(place, "copied").textContent = done ? "Copied." : "Not copied: copy the address of this page.";
  });
  place.addEventListener("click", ({ target: pressed }) => {
    const paper = pressed.closest?.("[data-print]")?.dataset.print;
    if (!paper) return;
    document.documentElement.dataset.paper = paper;
    setTimeout(() => window.print());
  });
  const signal = whileHere(place);
  window.addEventListener("afterprint", () => delete document.documentElement.dataset.paper, { signal });
  window.addEventListener("hashchange", () => place.isConnected && open(), { signal });
  open();
}
