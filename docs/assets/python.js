// The one worker with Python in it, kept for the whole visit. Requests and replies are JSON text.
// The page holds the clock, of a start and of each stage of a reply: a refused wasm makes the
// loader wait for ever, and a worker that the system has ended says nothing at all.

const START_LIMIT = 60_000;
const MEMORY_LIMIT = 15_000;
const STAGE_LIMIT = 10_000;
const ASIDE_LIMIT = 5_000;
const TICK = 1_000;
const RESTARTS = 2; // until an ask is answered in full

// How the next start goes about: by a memory that is saved with the site, or, where there is none
// or it failed once in this tab, from the files.
const NO_MEMORY = "lugwise-start-from-files";
let first = window.lugwiseFirst; // a worker that the head of a saved page has made (first.html)
delete window.lugwiseFirst; // it is ours alone
const boot = document.querySelector("meta[name=lugwise-boot]").content; // of the edition that may answer to this page
let memory = first ? first.rung === "memory" : Boolean(navigator.serviceWorker?.controller) && !remembered();

let failed = false; // the memory, in this page

function remembered() {
  try {
    return sessionStorage.getItem(NO_MEMORY);
  } catch {
    return null; // refused: each page tries for itself
  }
}

function withoutMemory() {
  memory = false;
  failed = true;
  end();
  start();
  for (const [id, { request }] of waiting) send(id, request);
}

let worker = null;
let ready = false;
let restarts = 0;
let asked = 0;
const waiting = new Map(); // id of an ask -> {key, request, needs, take, refuse, again}
const newest = new Map(); // key -> id: an ask that was overtaken gets no reply

export const isReady = () => ready;

export function start() {
  if (worker) return;
  try {
    const made = { type: "module", name: `${memory ? "memory" : "files"} ${boot}` };
    worker = first?.worker ?? new Worker(new URL("worker.js", import.meta.url), made);
  } catch (error) {
    console.error(error);
    return stop("start"); // a browser that has no workers, or allows none here
  }
  const mine = worker;
  const current = (act) => (event) => mine === worker && act(event);
  setClock(memory ? MEMORY_LIMIT : START_LIMIT, notStarted);
  const acts = {
    message: current(({ data }) => hear(data)),
    error: current(() => ready || notStarted()),
  };
  [worker.onmessage, worker.onerror] = [acts.message, acts.error];
  const heard = first?.heard ?? [];
  first = null;
  for (const event of heard) acts[event.type](event);
}

async function notStarted(why) {
  if (memory) return withoutMemory();
  end();
  const found = why ?? (await whyNot());
  if (!worker) return stop(found);
  for (const [id, { request }] of waiting) send(id, request); // one has been asked meanwhile
}

// A browser that cannot, or a connection that broke on the way.
async function whyNot() {
  const given = new AbortController();
  const clock = setTimeout(() => given.abort(), ASIDE_LIMIT);
  const options = { cache: "no-store", signal: given.signal };
  const isThere = (name) => fetch(new URL(`./runtime/${name}`, import.meta.url), options).then(({ ok }) => ok, () => false);
  const found = await Promise.all(["boot.json", "pyodide.js", "pyodide.asm.js"].map(isThere));
  clearTimeout(clock);
  given.abort(); // what has come of them is enough
  return found.every(Boolean) ? "start" : "file";
}

function hear(data) {
  if (data.type === "ready") begin(data.rung);
  else if (data.type === "loading") return setClock(START_LIMIT, restart); // more code is fetched
  else if (data.type === "answer") reply(data.id, data.response);
  else if (data.id) fail(data.id, data.reason ?? "failed", data.message);
  else if (data.reason === "edition") return stop("edition");
  else return ready ? restart() : notStarted(data.reason); // Python itself is broken
  if (waiting.size) setClock(STAGE_LIMIT, restart);
  else stopClock();
}

let ticking = 0;

function begin(rung) {
  ready = true;
  document.documentElement.dataset.python = rung; // for whoever asks how it started
  if (failed) note();
}

// Once Python has come the other way: of a page that is being left, some browsers break off what its worker loads.
function note() {
  try {
    sessionStorage.setItem(NO_MEMORY, "1");
  } catch {} // as above
}

// Counts its own ticks, so that it stands still with a page that is hidden or a device that sleeps.
function setClock(limit, act) {
  stopClock();
  let left = limit;
  ticking = setInterval(() => {
    if (!document.hidden) left -= TICK;
    if (left > 0) return;
    stopClock();
    act();
  }, TICK);
}

function stopClock() {
  clearInterval(ticking);
  ticking = 0;
}

function reply(id, response) {
  const ask = waiting.get(id);
  if (!ask) return;
  try {
    const said = JSON.parse(response);
    ask.take(said);
    const more = said.shut ? { shut: true } : said.rest < 1 && { rest: true };
    if (more) return send(id, { ...ask.request, ...more });
    waiting.delete(id);
    restarts = 0;
  } catch (error) {
    console.error(error);
    fail(id, "unshown");
  }
}

function fail(id, why, words) {
  const ask = waiting.get(id);
  waiting.delete(id);
  ask?.refuse(why, words);
}

function send(id, request) {
  const { key, needs } = waiting.get(id);
  worker?.postMessage({ type: "ask", id, key, request: JSON.stringify(request), needs });
}

function end() {
  stopClock();
  worker?.terminate();
  [worker, ready] = [null, false];
}

// The next ask tries again.
function stop(why) {
  end();
  for (const id of [...waiting.keys()]) fail(id, why);
}

// Another Python knows nothing of a reply that was under way: each ask begins anew.
function restart() {
  if (restarts === RESTARTS) return stop("silent");
  restarts += 1;
  end();
  start();
  for (const [id, ask] of waiting) {
    send(id, ask.request);
    ask.again?.();
  }
}

// Of asks with one key only the newest gets a reply: `take` gets it, and where it comes in stages,
// each of them. `again` is told when Python had to be restarted, and `refuse` why no reply can come:
// "start", "file" if one did not come, "edition" if it is of another one, "silent", "unshown" if `take` threw, or "failed" with Python's own words. `needs` names
// the archive of code that the ask needs beyond the one that every page has.
export function ask(key, request, { take, refuse, again, needs }) {
  waiting.delete(newest.get(key));
  newest.set(key, ++asked);
  waiting.set(asked, { key, request, needs, take, refuse, again });
  const id = asked;
  start();
  if (!worker) return;
  send(id, request);
  if (ready && !ticking) setClock(STAGE_LIMIT, restart);
}
