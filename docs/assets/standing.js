// How the answer on a sheet stands to its fields: theirs, theirs in part, or that of other values.
// An answer that is not theirs is seen to be stale at once; the reason is told when it lasts.

import { button, part, show } from "./parts.js";
import { isReady } from "./python.js";

const STALE_AFTER = 200;
const SPEAK_AFTER = 800; // a pause in typing, so that no key is commented on

const DEFAULT = "The answer below is for the default values.";
const PREVIOUS = "The answer below is for the previous values.";
const IN_PART = "The answer below is not complete.";
const BY_LINK = "Calculating with the values of this link …";
const NONE_YET = "There is no answer yet: correct the marked values.";
const TO_DO = "Try again, or write your values down and reload the page.";

const REASONS = {
  start: () => ["The calculation could not start in this browser.", "Try again, or use another browser."],
  silent: () => ["The calculation stopped responding, and two restarts did not help.", TO_DO],
  unshown: () => ["The new answer could not be shown.", TO_DO],
  failed: (words) => [`The calculation failed (${words}).`, "Try other values."],
  edition: () => ["There is a newer version of this page.", "Write your values down and reload the page."],
  file: () => ["A file of the calculation could not be loaded.", "Check the connection, then try again."],
};

// Why Python gives no reply, and what to do.
export const reason = (why, words) => REASONS[why](words).join(" ");

// The button beside that. Another edition is not cured by asking once more.
export const remedy = (why, retry) =>
  why === "edition" ? button("Reload", () => location.reload()) : button("Try again", retry);

// `retry` asks once more what was asked last.
export function standing(sheet, retry) {
  const [answer, gist, place] = ["answer", "gist", "standing"].map((name) => part(sheet, name));
  let touched = false; // the reader has changed a value, or has come with those of a link
  let theirs = true; // the answer is that of the fields
  let below = DEFAULT;
  let linked = false; // the fields are a link's, and the answer that stands here is none of its own
  let late = 0;
  let speak = 0;

  function mark(busy) {
    clearTimeout(late);
    clearTimeout(speak);
    late = 0;
    sheet.classList.toggle("is-stale", !theirs && !linked);
    sheet.classList.toggle("is-cold", !theirs && linked);
    answer.setAttribute("aria-busy", String(busy));
  }

  function tell(words) {
    clearTimeout(speak);
    if (touched) speak = setTimeout(() => (part(sheet, "status").textContent = words), SPEAK_AFTER);
  }

  // Why there is no answer to the fields, above the old one and in the strip that stays in view.
  function say(reason, todo = "") {
    const words = [reason, linked ? "" : below, todo].filter(Boolean).join(" ");
    show(place, words);
    if (!theirs) gist.textContent = reason;
    return words;
  }

  function wait(reason) {
    mark(true);
    tell(say(reason));
  }

  // The answer to a link is on its way. Another one, which nobody has asked for, is not shown.
  function expectLinked() {
    mark(true);
    show(place, "");
    gist.textContent = BY_LINK;
    tell(BY_LINK);
  }

  return {
    isTouched: () => touched,
    tell,

    changed() {
      touched = true;
      theirs = false;
      sheet.dataset.behind = ""; // neither answer nor link is that of the fields
      if (below === IN_PART) below = PREVIOUS;
    },

    // The values are those of a link, which another person may have sent.
    linked() {
      linked = true;
      this.changed();
    },

    // Python has been asked for the answer.
    sent() {
      if (theirs || late) return;
      if (!isReady()) return linked ? expectLinked() : wait("Starting the calculation.");
      late = setTimeout(() => {
        if (linked) return expectLinked();
        mark(true);
        speak = setTimeout(() => (part(sheet, "status").textContent = say("Calculating.")), SPEAK_AFTER);
      }, STALE_AFTER);
    },

    // Python had to be started anew for what was asked.
    again() {
      if (touched) wait("The calculation stopped responding and is starting again.");
    },

    // The answer to the fields stands in its place, or its first part.
    put(whole) {
      theirs = true;
      linked = false;
      below = !whole ? IN_PART : touched ? PREVIOUS : DEFAULT;
      delete sheet.dataset.behind;
      mark(false);
      show(place, "");
    },

    // The fields hold what cannot be used, as is said beside them, and why in `words`.
    unusable(words) {
      delete sheet.dataset.behind;
      mark(false);
      show(place, linked ? NONE_YET : below);
      gist.textContent = words;
    },

    refused(why, said) {
      mark(false);
      tell(say(...REASONS[why](said)));
      if (why !== "failed") place.append(" ", remedy(why, retry));
    },
  };
}
