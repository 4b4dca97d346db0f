// Review, diagram and lists of a van: worked after each change, the open one shown. The marks beside
// the parts come with the review.

import { part } from "./parts.js";

const STEP = 4; // the box of the diagram grows by a quarter
const MOST_TIMES = 8;

export function viewing(page) {
  const { root, van } = page;
  const shown = {}; // tab -> the text that it shows
  let tab = "parts";
  let marks = {};
  let list = "";
  const panel = (name) => part(root, `panel-${name}`);

  const acts = {
    review: async () => {
      const reply = await ask({ do: "review" });
      marks = reply.marks;
      mark();
      part(root, "verdict").innerHTML = reply.verdict;
      put("review", reply.html);
      page.photos.fill(panel("review"));
    },
    diagram: async () => put("diagram", (await ask({ do: "diagram" })).html),
    lists: async () => put("lists", (await ask({ do: "lists", list })).html),
  };

  async function ask(more) {
    const reply = await page.ask(page.request(more), more.do);
    if (reply.problems) throw new Error(reply.problems.map((one) => one.message).join(" "));
    return reply;
  }

  function put(name, html) {
    const place = panel(name);
    const opened = [...place.querySelectorAll("details[open]")].map((fold) => fold.dataset.fold);
    const times = part(place, "zoom")?.dataset.zoom;
    place.innerHTML = html;
    for (const fold of place.querySelectorAll("details[data-fold]")) {
      fold.open ||= opened.includes(fold.dataset.fold);
    }
    if (times) zoom(Number(times));
  }

  // Works what the marks rest on, then what is open, unless it shows this van already.
  async function work() {
    for (const name of new Set(["review", tab])) {
      const text = van.text;
      if (!acts[name] || shown[name] === text) continue;
      root.dataset.working = name;
      try {
        await acts[name]();
        shown[name] = text;
      } catch (error) {
        console.warn(error);
        page.say(error.message);
      }
      delete root.dataset.working;
      if (van.text !== text) return; // a change has come in between, and asks anew
    }
  }

  function mark() {
    for (const place of panel("parts").querySelectorAll("[data-mark]")) {
      const html = marks[place.dataset.mark] ?? "";
      if (place.innerHTML !== html) place.innerHTML = html;
    }
  }

  function open(name) {
    tab = name;
    for (const button of root.querySelectorAll("[data-tab]")) {
      const mine = button.dataset.tab === name;
      button.setAttribute("aria-selected", String(mine));
      button.tabIndex = mine ? 0 : -1;
      panel(button.dataset.tab).hidden = !mine;
    }
    root.dataset.open = name;
    work();
  }

  function forget() {
    for (const name of Object.keys(shown)) delete shown[name];
    marks = {};
    for (const name of ["review", "diagram", "lists"]) panel(name).replaceChildren();
    part(root, "verdict").replaceChildren();
  }

  // A picture as wide as its box, or some times that: the box is then scrolled with a finger.
  function zoom(times) {
    const box = part(panel("diagram"), "zoom");
    const [across, down] = [box.scrollLeft + box.clientWidth / 2, box.scrollTop + box.clientHeight / 2];
    const before = Number(box.dataset.zoom);
    box.dataset.zoom = times;
    for (const picture of box.querySelectorAll("svg")) picture.style.width = `${(100 * times) / STEP}%`;
    box.scrollTo((across * times) / before - box.clientWidth / 2, (down * times) / before - box.clientHeight / 2);
  }

  const presses = {
    tab: ({ tab: name }) => page.inTurn(async () => open(name)),
    mend: ({ mend }) =>
      page.inTurn(async () => {
        const reply = await page.ask(page.request({ do: "mend", mend }));
        if (page.told(reply)) return;
        page.take(reply);
        await page.parts();
        page.say(`${reply.said} “Undo” takes it back.`);
      }),
    goto: ({ goto }) =>
      page.inTurn(async () => {
        open("parts");
        await page.edits.unfold(goto);
      }),
    list: ({ list: name }) => {
      list = name;
      delete shown.lists;
      work();
    },
    wider: (_, box) => zoom(Math.min(STEP * MOST_TIMES, Math.max(STEP + 1, Math.round((box * (STEP + 1)) / STEP)))),
    narrower: (_, box) => zoom(Math.max(STEP, Math.round((box * STEP) / (STEP + 1)))),
    whole: () => zoom(STEP),
    prints: () => {
      document.documentElement.dataset.printing = "";
      setTimeout(() => window.print());
    },
  };

  root.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (!button) return;
    const times = Number(part(panel("diagram"), "zoom")?.dataset.zoom);
    for (const [name, act] of Object.entries(presses)) if (name in button.dataset) act(button.dataset, times);
  });
  root.addEventListener("keydown", ({ key, target }) => {
    const tabs = [...root.querySelectorAll("[data-tab]")];
    const next = tabs.indexOf(target) + { ArrowRight: 1, ArrowLeft: -1 }[key];
    if (!("tab" in target.dataset) || !tabs[next]) return;
    tabs[next].focus();
    open(tabs[next].dataset.tab);
  });

  return { work, mark, forget, open };
}
