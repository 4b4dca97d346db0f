// From a sheet to the page that explains its answer to a client.

import { part } from "./parts.js";
import { ask } from "./python.js";
import { reason } from "./standing.js";
import { inForm } from "./rows.js";
import { toClient } from "./to_client.js";

export function explain(sheet) {
  const tell = (words) => (part(sheet, "copied").textContent = words);
  const refuse = (why, words) => tell(`Not explained. ${reason(why, words)}`);
  const take = ({ problem, fragment }) => {
    if (problem) return tell(`Correct this first: ${problem}`);
    toClient(`../../client/#${fragment}&.mine=1`);
  };
  const client = { do: "make", sheet: sheet.dataset.sheet, ...inForm(part(sheet, "form")) };
  ask("client", { client }, { take, refuse, needs: "client" });
}
