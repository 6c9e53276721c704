// The worker that reads one drawing, so that the app stays awake: asked with {bytes, unit, wasm}, it answers {share} now and then,
// and at last {numbers} or {fault}. To stop it, the page ends it. wasm: the module's address, or its bytes.
self.onmessage = async ({ data }) => {
  const { bytes, unit, wasm } = data;
  self.postMessage({ share: 0 }); // it runs
  try {
    let module = wasm;
    if (typeof wasm === 'string') {
      const answer = await fetch(wasm);
      if (!answer.ok) {
        throw new Error(words.page.answered({ status: answer.status }));
      }
      module = await answer.arrayBuffer();
    }
    const { instance } = await WebAssembly.instantiate(module, {
      env: { emscripten_notify_memory_growth: () => {}, torchside_progress: (share) => { self.postMessage({ share }); return 1; } },
      wasi_snapshot_preview1: { proc_exit: () => { throw new Error(words.page.module_stopped); } },
    });
    const { exports } = instance;
    exports._initialize();
    const room = exports.torchside_room(bytes.byteLength);
    new Uint8Array(exports.memory.buffer).set(new Uint8Array(bytes), room);
    const count = exports.torchside_read(unit);
    if (count) {
      const numbers = new Float64Array(exports.memory.buffer, exports.torchside_numbers(), count).slice();
      self.postMessage({ numbers }, [numbers.buffer]);
      return;
    }
    const at = exports.torchside_fault();
    const memory = new Uint8Array(exports.memory.buffer);
    self.postMessage({ fault: new TextDecoder().decode(memory.subarray(at, memory.indexOf(0, at))) });
  } catch (e) {
    self.postMessage({ fault: words.page.unread({ why: e.message }) });
  }
};
