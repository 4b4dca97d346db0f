// Questions that are answered in the page: a reply goes to Python, and what it says comes back. Which
// ones were right is remembered on this device alone.

import { part } from "./parts.js";
import { ask } from "./python.js";
import { reason } from "./standing.js";

const KEY = "lugwise.right";
const MOST = 500; // questions that are remembered

// Anything may stand there: only names of our own questions are read again.
function right() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "[]");
    return kept.filter((name) => /^[a-z-]{1,40} \d{1,7}$/.test(name)).slice(-MOST);
  } catch {
    return [];
  }
}

function keep(names) {
  try {
    if (names.length) localStorage.setItem(KEY, JSON.stringify(names));
    else localStorage.removeItem(KEY);
  } catch {
    // Where the browser keeps nothing, nothing is remembered.
  }
}

const nameOf = ({ dataset }) => `${dataset.of} ${dataset.nr}`;

function score(place) {
  const count = right().length;
  const line = part(place, "progress");
  line.hidden = !count;
  part(line, "score").textContent = `${count} right so far, remembered on this device only.`;
}

export const practise = (request, take, refuse) =>
  ask(`quiz ${request.do}`, { quiz: request }, { take, refuse, needs: "questions" });

// Makes one question ready for replies. `place` is the section it stands in.
export function tend(place, question) {
  const form = part(question, "reply");
  if (!form.hidden) return;
  const box = form.querySelector("input, select");
  const said = part(question, "mark");
  const solved = part(question, "solved");
  let tries = 0;
  let asked = 0;
  form.hidden = false;
  const choices = part(question, "choices");
  if (choices) choices.hidden = true; // they stand in the box
  solved.hidden = true;
  if (right().includes(nameOf(question))) question.dataset.right = "";
  let seen = false; // the answer, so that a reply shows nothing any more
  solved.addEventListener("toggle", () => (seen ||= solved.open));
  part(question, "hint").addEventListener("toggle", () => (solved.hidden = false), { once: true });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const mine = ++asked;
    const { of: sheet, nr } = question.dataset;
    const still = (act) => (...said) => mine === asked && act(...said);
    const waits = setTimeout(() => mine === asked && (said.textContent = "Checking …"), 300);
    const take = still((reply) => {
      clearTimeout(waits);
      if (reply.problems) said.textContent = reply.problems.map((one) => one.message).join(" ");
      else answered(reply);
    });
    const refuse = still((why, words) => {
      clearTimeout(waits);
      said.textContent = `Not checked. ${reason(why, words)} The answer is below.`;
      solved.hidden = false;
    });
    practise({ do: "judge", sheet, nr, reply: box.value, tries }, take, refuse);
  });

  function answered(reply) {
    said.innerHTML = reply.html;
    tries = reply.tries;
    if (reply.open) solved.hidden = false;
    if (!reply.right || "right" in question.dataset) return;
    if (seen) return said.append(" Not counted, because you had seen the answer.");
    question.dataset.right = "";
    keep([...right(), nameOf(question)]);
    score(place);
  }
}

export function remember(place) {
  score(place);
  part(place, "forget").addEventListener("click", () => {
    keep([]);
    for (const one of place.querySelectorAll("[data-right]")) delete one.dataset.right;
    score(place);
  });
}

// The questions of one guide: one at a time, and another for as long as one likes.
export function open(place) {
  const list = place.querySelector("ol");
  const onward = part(place, "another-row");
  if (!onward.hidden) return;
  onward.hidden = false;
  const style = { rel: "stylesheet", href: new URL("practice.css", import.meta.url).href };
  place.prepend(Object.assign(document.createElement("link"), style));
  remember(place);
  const show = (question) => {
    for (const one of list.children) one.hidden = one !== question;
    list.start = [...list.children].indexOf(question) + 1;
    tend(place, question);
  };
  show(list.firstElementChild);
  part(onward, "another").addEventListener("click", () => {
    const here = [...list.children].find((one) => !one.hidden);
    const next = here.nextElementSibling;
    const arrive = (question) => {
      show(question);
      question.querySelector("input, select").focus();
    };
    if (next) return arrive(next);
    const { of: sheet, nr } = here.dataset;
    const take = ({ html }) => {
      if (here.nextElementSibling) return;
      list.insertAdjacentHTML("beforeend", html);
      arrive(list.lastElementChild);
    };
    const refuse = (why, words) => (part(here, "mark").textContent = `No further question. ${reason(why, words)}`);
    practise({ do: "ask", sheet, nr: Number(nr) + 1, target: place.dataset.target }, take, refuse);
  });
}
