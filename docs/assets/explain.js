// From a sheet to the page that explains its answer to a client.

import { part } from "./parts.js";
import { ask } from "./python.js";
import { inForm } from "./rows.js";

export function explain(sheet) {
  const tell = (words) => (part(sheet, "copied").textContent = words);
  const refuse = () => tell("This could not be explained: the calculation did not answer.");
  const take = ({ problem, fragment }) => {
    if (problem) return tell(`Correct this first: ${problem}`);
    const link = document.createElement("a"); // so that the theme keeps the Python that has started
    link.href = `../../client/#${fragment}&.mine=1`;
    document.body.append(link);
    link.click();
    link.remove();
  };
  const client = { do: "make", sheet: sheet.dataset.sheet, ...inForm(part(sheet, "form")) };
  ask("client", { client }, { take, refuse, needs: "client" });
}
