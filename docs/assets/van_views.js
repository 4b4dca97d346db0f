// Review, diagram and lists of a van: worked after each change, the open one shown. The marks beside
// the parts come with the review.

import { button, part, steadily } from "./parts.js";
import { toClient } from "./to_client.js";
import "./zoom.js";

export function viewing(page) {
  const { root, van } = page;
  const shown = {}; // tab -> the text that it shows
  let tab = "parts";
  let marks = {};
  const panel = (name) => part(root, `panel-${name}`);

  const acts = {
    review: async () => {
      const reply = await ask({ do: "review" });
      marks = reply.marks;
      part(root, "verdict").innerHTML = reply.verdict;
      put("review", reply.html);
      for (const [where, html] of Object.entries(reply.lines)) page.edits.redraw(where, html);
      mark();
      page.photos.fill(panel("review"));
      if (tab === "review") best();
    },
    diagram: async () => put("diagram", (await ask({ do: "diagram" })).html),
    lists: async () => put("lists", (await ask({ do: "lists", start: location.href.split("#")[0] })).html),
  };

  // What would help most takes a review of every change that is tried: it comes when all else is there.
  async function best() {
    const reply = await ask({ do: "best" }).catch(() => null);
    const place = part(panel("review"), "best");
    if (place && reply) steadily(panel("review"), () => (place.innerHTML = reply.html));
  }

  async function ask(more) {
    const reply = await page.ask(page.request(more), more.do);
    if (reply.problems) throw new Error(reply.problems.map((one) => one.message).join(" "));
    return reply;
  }

  function put(name, html) {
    const place = panel(name);
    const opened = [...place.querySelectorAll("details[open]")].map((fold) => fold.dataset.fold);
    const drawn = [...place.querySelectorAll("[data-zoom]")];
    const seen = drawn.map((box) => [box.dataset.zoom, box.scrollLeft, box.scrollTop]);
    steadily(place, () => {
      place.innerHTML = html;
      for (const fold of place.querySelectorAll("details[data-fold]")) {
        fold.open ||= opened.includes(fold.dataset.fold);
      }
    });
    [...place.querySelectorAll("[data-zoom]")].slice(0, seen.length).forEach((box, which) => {
      box.dataset.zoom = seen[which][0];
      box.scrollTo(seen[which][1], seen[which][2]);
    });
  }

  // What was worked of the van as it was before is no answer to the van as it is.
  function unworked(name, words) {
    delete shown[name];
    const places = name === "review" ? [panel(name), part(root, "verdict")] : [panel(name)];
    for (const place of places) place.replaceChildren(`${words} `, button("Try again", work));
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
        unworked(name, error.message);
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
    if (panel(name).getBoundingClientRect().y < 0) panel(name).scrollIntoView();
    const ready = shown.review === van.text;
    work();
    if (name === "review" && ready) best();
    if (name === "review") page.photos.fill(panel(name));
  }

  function forget() {
    for (const name of Object.keys(shown)) delete shown[name];
    marks = {};
    for (const name of ["review", "diagram", "lists"]) panel(name).replaceChildren();
    part(root, "verdict").replaceChildren();
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
    wayOut: async ({ wayOut }, pressed) => {
      const reply = await ask({ do: "ways", finding: wayOut });
      if (pressed.isConnected) pressed.outerHTML = reply.html;
    },
    seasons: async (_, pressed) => {
      const reply = await ask({ do: "seasons" });
      if (pressed.isConnected) pressed.parentElement.outerHTML = reply.html;
    },
    explains: async () => {
      const start = new URL("../client/#", location.href).href;
      const { fragment } = await ask({ do: "client-make", start });
      toClient(`../client/#${fragment}&.mine=1`);
    },
    prints: () => {
      document.documentElement.dataset.printing = "";
      setTimeout(() => window.print());
    },
  };

  root.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (!button) return;
    for (const [name, act] of Object.entries(presses)) {
      if (name in button.dataset) act(button.dataset, button)?.catch((error) => page.say(error.message));
    }
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
