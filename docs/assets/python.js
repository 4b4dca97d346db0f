// The one worker with Python in it, kept for the whole visit. Requests and replies are JSON text.

const START_LIMIT = 60_000; // a refused wasm makes the loader wait for ever, so the page holds the clock

let worker = null;
let ready = false;
let clock = 0;
let asked = 0;
const waiting = new Map(); // id of an ask -> [what to do with its reply, what to do without one]
const newest = new Map(); // key -> id: an ask that was overtaken gets no reply

export const isReady = () => ready;

export function start() {
  if (worker) return;
  worker = new Worker(new URL("worker.js", import.meta.url), { type: "module" });
  clock = setTimeout(stop, START_LIMIT);
  worker.onmessage = ({ data }) => {
    if (data.type === "ready") {
      ready = true;
      clearTimeout(clock);
    } else if (data.type === "answer") settle(data.id, 0, JSON.parse(data.response));
    else if (!ready) stop();
    else settle(data.id, 1, data.message);
  };
  worker.onerror = () => ready || stop();
}

function settle(id, which, what) {
  const acts = waiting.get(id);
  waiting.delete(id);
  acts?.[which](what);
}

// Ends a start that failed; the next ask tries again.
function stop() {
  clearTimeout(clock);
  worker?.terminate();
  [worker, ready] = [null, false];
  for (const id of [...waiting.keys()]) settle(id, 1, "");
}

// Of asks with one key only the newest gets a reply. `refuse` gets Python's own words, or none
// where Python could not start.
export function ask(key, request, take, refuse) {
  start();
  waiting.delete(newest.get(key));
  newest.set(key, ++asked);
  waiting.set(asked, [take, refuse]);
  worker.postMessage({ type: "ask", id: asked, key, request: JSON.stringify(request) });
}
