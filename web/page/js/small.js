// The small module: a quote as HTML, any text as a QR code. It has no glue; this is all that it needs of the browser.
let small;

/** The day where the user is, as the number of days since 1970-01-01. */
function today() {
  const now = new Date();
  return Math.round(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 864e5);
}

function smallModule(link) {
  small ||= loadSmall(link);
  small.catch(() => { small = null; }); // a later call may find the network again
  return small;
}

async function loadSmall(link) {
  const never = () => { throw new Error(words.page.module_stopped); };
  const imports = { env: { emscripten_notify_memory_growth: () => {} }, wasi_snapshot_preview1: { proc_exit: never } };
  let bytes;
  if (link.href) {
    const answer = await fetch(link.href);
    if (!answer.ok) {
      throw new Error(words.page.answered({ status: answer.status }));
    }
    bytes = await answer.arrayBuffer();
  } else { // the one-file page carries it inside itself
    bytes = Uint8Array.from(atob(link.textContent), (c) => c.charCodeAt(0));
  }
  const { instance } = await WebAssembly.instantiate(bytes, imports);
  const { exports } = instance;
  exports._initialize();
  return {
    /** Calls one of its functions with a text or bytes, if any, and a number, if it wants one; the answer is a text. */
    text(name, given = '', number = 0) {
      const sent = typeof given === 'string' ? new TextEncoder().encode(given + '\0') : given;
      const room = exports.torchside_room(sent.length);
      new Uint8Array(exports.memory.buffer).set(sent, room);
      const at = exports[name](room, number);
      const memory = new Uint8Array(exports.memory.buffer);
      return new TextDecoder().decode(memory.subarray(at, memory.indexOf(0, at)));
    },
  };
}
