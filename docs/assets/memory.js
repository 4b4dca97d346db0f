// The memory of a Python that has started, as build_scripts/runtime_memory.py writes it: only the
// pages that are not empty; and the program that it is the memory of. For the workers.

import { digest, hex } from "./place.js";

const PAGE = 4096;
const HEADER = 12 + 32; // bytes: three numbers and a hash

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
  const [length, count, more] = new Uint32Array(whole.buffer, 0, 3);
  const numbers = new Uint32Array(whole.buffer, HEADER, count).slice();
  const shared = new Uint32Array(whole.buffer, HEADER + 4 * count, more).slice();
  const pages = whole.subarray(Math.ceil((HEADER + 4 * (count + more)) / PAGE) * PAGE);
  return { length, numbers, shared, sum: hex(whole.subarray(12, HEADER)), pages };
}

// What is saved under these two hashes, of a memory and of its program: each on its way, or null where one is
// not. Nothing else is found: no memory of another edition. The program is waited for first.
export async function find(hash, ofProgram, site) {
  const cache = await caches.open("lugwise-files");
  const [packed, wasm] = await Promise.all([hash, ofProgram].map((one) => cache.match(new URL(`_b/${one}`, site))));
  if (!packed || !wasm) return null;
  const unpacking = wasm.body.pipeThrough(new DecompressionStream("gzip"));
  const program = WebAssembly.compileStreaming(new Response(unpacking, { headers: { "Content-Type": "application/wasm" } }));
  const coming = program.then(() => packed.arrayBuffer()).then((bytes) => unpacked(bytes, hash));
  return { program, coming };
}

// Writes the pages to where they were, beside those that a new module holds; what else that has put below
// `fresh` goes. Returns the hash of those that it holds.
function fill(heap, { length, numbers, shared, pages }, fresh) {
  const held = new Uint8Array(shared.length * PAGE);
  const taken = new Uint8Array(Math.ceil(heap.length / PAGE));
  shared.forEach((page, at) => {
    held.set(heap.subarray(page * PAGE, (page + 1) * PAGE), at * PAGE);
    taken[page] = 1;
  });
  for (const page of numbers) taken[page] = 1;
  for (let page = 0; page * PAGE < fresh; page += 1) if (!taken[page]) heap.fill(0, page * PAGE, (page + 1) * PAGE);
  for (let from = 0, to; from < numbers.length; from = to) {
    for (to = from + 1; numbers[to] === numbers[to - 1] + 1; ) to += 1; // pages that lie side by side
    const start = numbers[from] * PAGE;
    const end = Math.min(start + (to - from) * PAGE, length);
    heap.set(pages.subarray(from * PAGE, from * PAGE + end - start), start);
  }
  return digest(held);
}

// Options for the loader. It is given no more than the `head` of the memory, which says whose it is, and
// makes a new module while the rest is still coming; the pages are put into that, without another copy
// of the whole. Python's memory may be larger than the one that a new module begins with.
export function restoring(head, found, create) {
  const createPyodideModule = async (settings) => {
    const [made, memory] = await Promise.all([create(settings), found.coming]);
    if (made.HEAP8.length < memory.length) made.growMemory(memory.length);
    found.isItsOwn = fill(made.HEAP8, memory, made._sbrk(0)).then((sum) => sum === memory.sum);
    return made;
  };
  return { createPyodideModule, _loadSnapshot: new Uint8Array([...atob(head)].map((byte) => byte.charCodeAt(0))) };
}

// A restored Python is believed once it has given an answer that is `told`: that to a page's own request, which
// mostly is that of a sheet as it opens, or else to the sample that is `told`, and once it is known that its program
// began as the one whose memory was saved. What it says to the request is returned.
export async function proved(ask, request, told, found) {
  const isRight = async (reply) => told.replies.includes(await digest(new TextEncoder().encode(reply)));
  let reply;
  try {
    if (request) reply = ask(request);
  } catch {} // whatever it is, it is told when that is asked again
  if (!(reply && (await isRight(reply))) && !(await isRight(ask(told.sample)))) {
    throw new Error("the saved memory does not answer as it should");
  }
  if (!(await found.isItsOwn)) throw new Error("Python's program begins otherwise than it did where its memory was saved");
  return reply;
}
