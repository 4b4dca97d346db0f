// The memory of a Python that has started, as build_scripts/runtime_memory.py writes it: only the
// pages that are not empty. For the worker.

const PAGE = 4096;

const hex = (bytes) => [...new Uint8Array(bytes)].map((b) => b.toString(16).padStart(2, "0")).join("");

export const digest = async (bytes) => hex(await crypto.subtle.digest("SHA-256", bytes));

// Fills the memory while it is still being inflated.
async function filled(stream) {
  let held = new Uint8Array(0); // the head, until it has come whole
  let memory = null;
  let numbers;
  let page = 0; // the one that is being filled, and how far
  let filledTo = 0;
  const reader = stream.getReader();
  for (let read; !(read = await reader.read()).done; ) {
    let bytes = read.value;
    if (!memory) {
      const joined = new Uint8Array(held.length + bytes.length);
      joined.set(held);
      joined.set(bytes, held.length);
      held = joined;
      if (held.length < 8) continue;
      const [length, count] = new Uint32Array(held.buffer, 0, 2);
      const start = Math.ceil((8 + 4 * count) / PAGE) * PAGE;
      if (held.length < start) continue;
      numbers = new Uint32Array(held.buffer, 8, count);
      memory = new Uint8Array(length);
      bytes = held.subarray(start);
    }
    while (bytes.length) {
      const at = numbers[page] * PAGE + filledTo;
      const now = bytes.subarray(0, PAGE - filledTo);
      memory.set(now.subarray(0, Math.max(0, memory.length - at)), at);
      bytes = bytes.subarray(now.length);
      filledTo += now.length;
      if (filledTo === PAGE) [page, filledTo] = [page + 1, 0];
    }
  }
  if (!memory || page !== numbers.length) throw new Error("the saved memory is not whole");
  return memory;
}

// The memory out of its packed bytes. Restored from others than the listed ones, Python would run
// into anything, so they are compared; that goes on beside the inflating.
export async function unpacked(bytes, hash) {
  const stream = new Response(bytes).body.pipeThrough(new DecompressionStream("gzip"));
  const [memory, found] = await Promise.all([filled(stream), digest(bytes)]);
  if (found !== hash) throw new Error("the saved memory is not the listed one");
  return memory;
}

// Options for the loader. Python's memory may be larger than the one a new module begins with.
export function restoring(memory, create) {
  const heap = memory.length - new Uint32Array(memory.buffer, 0, 2)[1];
  const createPyodideModule = async (settings) => {
    const made = await create(settings);
    if (made.HEAP8.length < heap) made.growMemory(heap);
    return made;
  };
  return { createPyodideModule, _loadSnapshot: memory };
}
