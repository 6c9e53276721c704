// The worker that reads one drawing, so that the app stays awake: asked with {bytes, unit, wasm}, it answers {share} now and then,
// and at last {numbers}, {fault} in words, or {why} it could not read at all. To stop it, the page ends it. wasm: the module's address,
// or its bytes; table: the words of another language than English.
self.onmessage = async ({ data }) => {
  const { bytes, unit, wasm, table } = data;
  self.postMessage({ share: 0 }); // it runs
  try {
    let module = wasm;
    if (typeof wasm === 'string') {
      const answer = await fetch(wasm);
      if (!answer.ok) {
        throw new Error(`HTTP ${answer.status}`);
      }
      module = await answer.arrayBuffer();
    }
    const { instance } = await WebAssembly.instantiate(module, {
      env: { emscripten_notify_memory_growth: () => {}, torchside_progress: (share) => { self.postMessage({ share }); return 1; } },
      wasi_snapshot_preview1: { proc_exit: () => { throw new Error('exit'); } },
    });
    const { exports } = instance;
    exports._initialize();
    const lend = (sent) => {
      const room = exports.torchside_room(sent.byteLength);
      new Uint8Array(exports.memory.buffer).set(new Uint8Array(sent), room);
    };
    if (table) {
      lend(table);
      exports.torchside_words();
    }
    lend(bytes);
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
    self.postMessage({ why: e.message });
  }
};
