// Puts queries to the theme's own search worker, as the page does: node ask.mjs WORKER INDEX < queries.json
import { readFileSync } from "node:fs";
import vm from "node:vm";
const [worker, index] = process.argv.slice(2);
const queries = JSON.parse(readFileSync(0, "utf8"));
let hear, reply;
const context = vm.createContext({ console, addEventListener: (_, f) => { hear = f; }, postMessage: (data) => reply(data) });
context.self = context;
vm.runInContext(readFileSync(worker, "utf8"), context);
const ask = (data) => new Promise((resolve) => { reply = resolve; hear({ data }); });
const { config, docs } = JSON.parse(readFileSync(index, "utf8"));
await ask({ type: 0, data: { config, docs, options: {} } });
const found = [];
for (const query of queries) {
  const { data } = await ask({ type: 2, data: query });
  found.push(data.items.slice(0, 5).map((sections) => sections.find((s) => !s.location.includes("#"))?.location ?? sections[0].location.split("#")[0]));
}
console.log(JSON.stringify(found));
