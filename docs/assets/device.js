// The one place that shows what this device remembers: units are chosen there, and all is erased.

import { forget, recall, remember, remembered } from "./recall.js";
import { part } from "./parts.js";

const count = (name) => recall(name)?.length ?? 0;

function tell(place) {
  const names = remembered();
  const sheets = names.filter((name) => name.startsWith("last.")).length;
  const said = [
    [count("recent"), "pages opened last"],
    [count("pinned"), "pages pinned"],
    [sheets, "sheets with last values"],
    [names.filter((name) => !/^(recent$|pinned$|measures$|last\.)/.test(name)).length, "other choices"],
  ];
  const words = said.filter(([many]) => many).map(([many, what]) => `${what}: ${many}`);
  part(place, "remembered").textContent = `Remembered here: ${words.join(", ") || "nothing"}.`;
  part(place, "erase").disabled = !names.length;
  for (const radio of place.querySelectorAll("input")) radio.checked = radio.value === (recall("measures") ?? "");
}

export function arrive() {
  const place = document.querySelector("[data-device]");
  place.hidden = false;
  tell(place);
  if (place.dataset.device) return;
  place.dataset.device = "tended";
  place.addEventListener("change", ({ target }) => {
    remember("measures", target.value || null);
    const isKept = (recall("measures") ?? "") === target.value;
    part(place, "erased").textContent = isKept ? "" : "Not remembered: this browser keeps nothing here.";
    tell(place);
  });
  part(place, "erase").addEventListener("click", () => {
    forget();
    tell(place);
    part(place, "erased").textContent = "Erased.";
  });
}
