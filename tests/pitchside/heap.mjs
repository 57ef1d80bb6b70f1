// How much the app holds: JavaScript's heap of the page and of the door's worker after collecting garbage, and the memory of
// the WebAssembly module, which is in neither.
const kPatienceMilliseconds = 10000;

const inTime = (promise, what) => Promise.race([promise, new Promise((_, late) => setTimeout(() => late(new Error(`${what}: no answer`)), kPatienceMilliseconds))]);

// The module's memory belongs to the worker alone: its making is watched there, before it is told where the door is.
export async function watchMemory(page) {
  await page.addInitScript(() => {
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (message, ...more) {
      if (message?.door === undefined) return post.call(this, message, ...more);
      return void setTimeout(() => post.call(this, message, ...more), 1000);
    };
  });
  page.on("worker", (worker) => {
    void worker.evaluate(() => {
      const make = WebAssembly.instantiate;
      WebAssembly.instantiate = async (...words) => {
        const made = await make(...words);
        self.heldMemory = made.instance.exports.memory;
        return made;
      };
    }).catch(() => {});
  });
}

async function wasmBytes(page) {
  for (const worker of page.workers()) {
    const bytes = await inTime(worker.evaluate(() => self.heldMemory?.buffer.byteLength), "the worker");
    if (bytes) return bytes;
  }
  throw new Error("the module's memory was made before it could be watched");
}

// The door's worker, spoken to through the page's own wire.
async function workerOf(wire) {
  const waiting = new Map();
  let number = 0;
  const attached = new Promise((found) => wire.on("Target.attachedToTarget", ({ sessionId, targetInfo }) => /\/worker-\w+\.js$/.test(targetInfo.url) && found(sessionId)));
  wire.on("Target.receivedMessageFromTarget", ({ message }) => {
    const { id, result } = JSON.parse(message);
    waiting.get(id)?.(result);
    waiting.delete(id);
  });
  await wire.send("Target.setAutoAttach", { autoAttach: true, waitForDebuggerOnStart: false, flatten: false });
  const sessionId = await inTime(attached, "the worker");
  return (method) => inTime(new Promise((heard) => {
    const id = ++number;
    waiting.set(id, heard);
    void wire.send("Target.sendMessageToTarget", { sessionId, message: JSON.stringify({ id, method, params: {} }) });
  }), method);
}

const heapOf = ({ usedSize, embedderHeapUsedSize = 0, backingStorageSize = 0 }) => usedSize + embedderHeapUsedSize + backingStorageSize;

export async function openHeap(phone, page) {
  const wire = await phone.context.newCDPSession(page);
  const worker = await workerOf(wire);
  await wire.send("HeapProfiler.enable");
  return {
    // In bytes.
    async look() {
      // Twice: what the first run finds dead of the document's own is let go by the second.
      for (let time = 0; time < 2; time++) {
        await inTime(wire.send("HeapProfiler.collectGarbage"), "collecting");
        await worker("HeapProfiler.collectGarbage");
      }
      const ofPage = heapOf(await wire.send("Runtime.getHeapUsage"));
      const said = await worker("Runtime.getHeapUsage");
      const wasm = await wasmBytes(page);
      // Where the worker's own heap counts the module's memory as a backing store, it is counted once.
      const ofWorker = heapOf(said) - ((said.backingStorageSize ?? 0) >= wasm ? wasm : 0);
      return { page: ofPage, worker: ofWorker, wasm, all: ofPage + ofWorker + wasm };
    },
  };
}
