// Loads the door: bytes of the module in, a function from request text to answer text out. Works wherever
// WebAssembly does; nothing here belongs to Node or to a browser.

const kBadDescriptor = 8;

export async function loadDoor(moduleBytes) {
  let memory;
  const said = [];
  const imports = {
    env: { emscripten_notify_memory_growth() {} },
    wasi_snapshot_preview1: {
      // The core prints nothing; what a failed assertion says on its way out is kept for the error.
      fd_write(_descriptor, vectors, count, writtenAt) {
        const view = new DataView(memory.buffer);
        let written = 0;
        for (let index = 0; index < count; index++) {
          const address = view.getUint32(vectors + 8 * index, true);
          const size = view.getUint32(vectors + 8 * index + 4, true);
          said.push(new TextDecoder().decode(new Uint8Array(memory.buffer, address, size)));
          written += size;
        }
        view.setUint32(writtenAt, written, true);
        return 0;
      },
      fd_close: () => kBadDescriptor,
      fd_seek: () => kBadDescriptor,
      proc_exit(status) {
        throw new Error(`the core stopped with status ${status}: ${said.join("").trim()}`);
      },
    },
  };
  const { instance } = await WebAssembly.instantiate(moduleBytes, imports);
  const core = instance.exports;
  memory = core.memory;
  core._initialize?.();

  return function run(request) {
    const bytes = new TextEncoder().encode(request);
    const address = core.malloc(bytes.length);
    new Uint8Array(memory.buffer, address, bytes.length).set(bytes);
    try {
      const answerAt = core.run(address, bytes.length);
      return new TextDecoder().decode(new Uint8Array(memory.buffer, answerAt, core.answer_size()));
    } finally {
      core.free(address);
    }
  };
}
