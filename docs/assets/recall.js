// What this device remembers of its reader: units, the last values of each sheet, pages. Nothing of
// it leaves the device. Where the browser keeps nothing, nothing is remembered and all else works.
// Tabs share it: each name is written whole, so that none can leave half a value to another.

import { part } from "./parts.js";

const MINE = "lugwise.";
const LINK = /^v=\d+(&[\w.-]+=[^&#\s]*)*$/;

export function recall(name) {
  try {
    return JSON.parse(localStorage.getItem(MINE + name));
  } catch {
    return null;
  }
}

export function remember(name, what) {
  try {
    if (!what) localStorage.removeItem(MINE + name);
    else localStorage.setItem(MINE + name, JSON.stringify(what));
  } catch {
    // refused, or full
  }
}

// The names of all that is remembered.
export function remembered() {
  try {
    const names = Object.keys(localStorage).filter((name) => name.startsWith(MINE));
    return names.map((name) => name.slice(MINE.length));
  } catch {
    return [];
  }
}

export const forget = () => remembered().forEach((name) => remember(name, null));

// How the reader writes numbers, for Python to answer in kind.
export const habits = () => (recall("comma") === true ? { comma: true } : {});

export function noteHabit({ type, value }) {
  const [, sign] = (type === "text" && /^[^\d]*\d+([.,])\d*\D*$/.exec(value)) || [];
  const isUnclear = /^\d{1,3},\d{3}\D*$/.test(value); // may be a thousand
  if (sign && !isUnclear) remember("comma", sign === ",");
}

// The last values of a sheet: offered on a quiet line, and opened by a press as a link is.
export function lastValues(sheet, goTo) {
  const name = `last.${sheet.dataset.sheet}`;
  const line = part(sheet, "last");
  const [words, use, end] = ["last-words", "last-use", "last-end"].map((one) => part(line, one));
  let last = recall(name); // also where the browser keeps nothing

  function say(sentence, isUsed) {
    words.textContent = sentence;
    [use.hidden, end.hidden, line.hidden] = [isUsed, !isUsed, false];
  }

  use.addEventListener("click", () => {
    goTo(last.link);
    say("These are your last values.", true);
  });
  return {
    offer() {
      const { link, told } = last ?? {};
      const isOurs = typeof told === "string" && typeof link === "string" && LINK.test(link);
      if (isOurs) say(`Your last values: ${told}.`, false);
    },
    hide: () => (line.hidden = true),
    keep(now, changed) {
      last = changed ? { link: now, told: changed } : null;
      remember(name, last);
    },
  };
}
