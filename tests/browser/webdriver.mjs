// A browser over the W3C WebDriver protocol, as far as a walk needs it: a session, a window, pointer and keys, scripts.
import { spawn } from 'node:child_process';
import { createServer } from 'node:net';

const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf'; // the protocol's own word for a reference to an element
export const KEYS = { Enter: '\uE007', Tab: '\uE004', Escape: '\uE00C', Backspace: '\uE003', ArrowLeft: '\uE012', ArrowRight: '\uE014', Space: ' ' };

function freePort() {
  return new Promise((found) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => found(port));
    });
  });
}

async function ask(url, method, body) {
  const answer = await fetch(url, { method, body: body && JSON.stringify(body), headers: { 'content-type': 'application/json' } });
  const { value } = await answer.json();
  if (!answer.ok) {
    throw new Error(`${method} ${url.replace(/.*\/session/, '')}: ${value.error}: ${value.message}`);
  }
  return value;
}

/** Start a driver and one window of its browser. `environment` is what both run in. */
export async function session(driver, capabilities, environment) {
  const port = await freePort();
  const server = spawn(driver, [`--port=${port}`], { env: environment, stdio: 'ignore' });
  const ended = new Promise((done) => { server.on('exit', done); server.on('error', done); });
  const base = `http://127.0.0.1:${port}`;
  for (let tries = 0; ; tries++) {
    try {
      await ask(base + '/status', 'GET');
      break;
    } catch (e) {
      if (tries > 100 || server.exitCode !== null || server.pid === undefined) {
        throw new Error(`${driver} does not answer (run tools/setup test): ${e.message}`);
      }
      await new Promise((done) => { setTimeout(done, 100); });
    }
  }
  const { sessionId } = await ask(base + '/session', 'POST', { capabilities: { alwaysMatch: capabilities } });
  const at = `${base}/session/${sessionId}`;
  const post = (path, body = {}) => ask(at + path, 'POST', body);
  const act = (source) => post('/actions', { actions: [source] });
  const pointer = (type, actions) => act({ type: 'pointer', id: type, parameters: { pointerType: type }, actions });
  const move = ([x, y], duration = 0) => ({ type: 'pointerMove', origin: 'viewport', x: Math.round(x), y: Math.round(y), duration });
  const down = { type: 'pointerDown', button: 0 };
  const up = { type: 'pointerUp', button: 0 };
  return {
    post,
    go: (url) => post('/url', { url }),
    evaluate: (source, args = []) => post('/execute/sync', { script: `return (${source}).apply(null, arguments)`, args }),
    press: (type, place) => pointer(type, [move(place), down, up]),
    drag: (type, from, to) => pointer(type, [move(from), down, ...[0.25, 0.5, 0.75, 1, 1].map((part) =>
      move([from[0] + (to[0] - from[0]) * part, from[1] + (to[1] - from[1]) * part], 16)), up]),
    key: (...names) => act({ type: 'key', id: 'keys', actions: [...names.map((n) => ({ type: 'keyDown', value: KEYS[n] || n })),
      ...names.reverse().map((n) => ({ type: 'keyUp', value: KEYS[n] || n }))] }),
    upload: async (selector, files) => {
      const element = (await post('/element', { using: 'css selector', value: selector }))[ELEMENT];
      await post(`/element/${element}/value`, { text: files.join('\n') });
    },
    screenshot: async () => Buffer.from(await ask(at + '/screenshot', 'GET'), 'base64'),
    close: async () => {
      await ask(at, 'DELETE').catch(() => {}); // it may have gone down already: the server goes next
      server.kill();
      await ended;
    },
  };
}
