// The memory of a Python that has started, as build_scripts/runtime_memory.py writes it: only the
// pages that are not empty. For the worker.

import { digest } from "./place.js";

const PAGE = 4096;

// A whole gzip file in one piece; it tells its length at its end.
async function inflated(bytes) {
  const whole = new Uint8Array(new DataView(bytes).getUint32(bytes.byteLength - 4, true));
  const reader = new Response(bytes).body.pipeThrough(new DecompressionStream("gzip")).getReader();
  let at = 0;
  for (let read; !(read = await reader.read()).done; at += read.value.length) whole.set(read.value, at);
  return whole;
}

// A memory out of its packed bytes. Restored from others than the listed ones, Python would run
// into anything, so they are compared; that goes on beside the inflating.
async function unpacked(bytes, hash) {
  const [whole, found] = await Promise.all([inflated(bytes), digest(bytes)]);
  if (found !== hash) throw new Error("the saved memory is not the listed one");
  const [length, count, more, sum] = new Uint32Array(whole.buffer, 0, 4);
  const numbers = new Uint32Array(whole.buffer, 16, count).slice();
  const shared = new Uint32Array(whole.buffer, 16 + 4 * count, more).slice();
  return { length, numbers, shared, sum, pages: whole.subarray(Math.ceil((16 + 4 * (count + more)) / PAGE) * PAGE) };
}

// What is saved under this hash, on its way, or null. Nothing else is found: no memory of another edition.
export async function find(hash, site) {
  const packed = await (await caches.open("lugwise-files")).match(new URL(`_b/${hash}`, site));
  return packed ? { coming: packed.arrayBuffer().then((bytes) => unpacked(bytes, hash)) } : null;
}

// Writes the pages to where they were, beside those that a new module holds; what else that has put below
// `fresh` goes.
function fill(heap, { length, numbers, shared, sum, pages }, fresh) {
  const words = new Uint32Array(heap.buffer, 0, fresh >> 2);
  let found = 0;
  for (const page of shared)
    for (let at = (page * PAGE) >> 2, end = at + (PAGE >> 2); at < end; at += 1) found = Math.imul(found ^ words[at], 0x01000193);
  if (found >>> 0 !== sum) throw new Error("Python's program begins otherwise than it did where its memory was saved");
  const taken = new Uint8Array(Math.ceil(heap.length / PAGE));
  for (const page of [...numbers, ...shared]) taken[page] = 1;
  for (let page = 0; page * PAGE < fresh; page += 1) if (!taken[page]) heap.fill(0, page * PAGE, (page + 1) * PAGE);
  for (let from = 0, to; from < numbers.length; from = to) {
    for (to = from + 1; numbers[to] === numbers[to - 1] + 1; ) to += 1; // pages that lie side by side
    const start = numbers[from] * PAGE;
    const end = Math.min(start + (to - from) * PAGE, length);
    heap.set(pages.subarray(from * PAGE, from * PAGE + end - start), start);
  }
}

// Options for the loader. It is given no more than the `head` of the memory, which says whose it is, and
// makes a new module while the rest is still `coming`; the pages are put into that, without another copy
// of the whole. Python's memory may be larger than the one that a new module begins with.
export function restoring(head, coming, create) {
  const createPyodideModule = async (settings) => {
    const [made, memory] = await Promise.all([create(settings), coming]);
    if (made.HEAP8.length < memory.length) made.growMemory(memory.length);
    fill(made.HEAP8, memory, made._sbrk(0));
    return made;
  };
  return { createPyodideModule, _loadSnapshot: new Uint8Array([...atob(head)].map((byte) => byte.charCodeAt(0))) };
}

// A restored Python is believed once it has given an answer that is `told`: that to a page's own request, which
// mostly is that of a sheet as it opens, or else to the sample that is `told`. What it says to the request is returned.
export async function proved(ask, request, told) {
  const isRight = async (reply) => told.replies.includes(await digest(new TextEncoder().encode(reply)));
  let reply;
  try {
    if (request) reply = ask(request);
  } catch {} // whatever it is, it is told when that is asked again
  if (!(reply && (await isRight(reply))) && !(await isRight(ask(told.sample)))) {
    throw new Error("the saved memory does not answer as it should");
  }
  return reply;
}
