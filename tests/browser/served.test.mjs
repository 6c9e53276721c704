// What tools/serve sends: the packed copy to whoever takes it, the same bytes to all, and nothing outside the folder.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import http from 'node:http';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { clean, launch, open, PHONE, ROOT, settled, SITE } from './harness.mjs';

let server;
let port;
before(async () => {
  server = spawn('/usr/bin/python3', [path.join(ROOT, 'tools/static_server'), SITE, '--port', '0', '--address', '127.0.0.1', '--quiet'], { stdio: ['ignore', 'pipe', 'inherit'] });
  port = await new Promise((found) => { server.stdout.once('data', (text) => found(Number(/listening on (\d+)/.exec(text)[1]))); });
});
after(() => { server.kill('SIGINT'); });

/** One request, its path as it is: no browser would send some of them. */
const ask = (name, headers = {}) => new Promise((done, failed) => {
  http.get({ port, host: '127.0.0.1', path: name, headers }, (answer) => {
    const parts = [];
    answer.on('data', (part) => parts.push(part));
    answer.on('end', () => done({ status: answer.statusCode, headers: answer.headers, body: Buffer.concat(parts) }));
  }).on('error', failed);
});

const names = () => ['/', ...new Set(readFileSync(path.join(SITE, 'sw.js'), 'utf8').match(/[\w/.-]+\.(?:js|css|wasm|svg|txt|webmanifest)(?=")/g))].map((name) => (name === '/' ? name : '/' + name));

test('each file is sent packed to whoever takes it, and is the same file', async () => {
  const unpack = { br: brotliDecompressSync, gzip: gunzipSync };
  let whole = 0;
  let sent = 0;
  for (const name of names()) {
    const plain = readFileSync(path.join(SITE, name === '/' ? 'index.html' : name));
    for (const [wish, encoding] of [['br', 'br'], ['gzip, deflate, br', 'br'], ['gzip', 'gzip'], ['br;q=0, gzip', 'gzip'], ['identity', undefined], ['', undefined]]) {
      const answer = await ask(name, wish ? { 'accept-encoding': wish } : {});
      assert.equal(answer.status, 200, name);
      assert.equal(answer.headers['content-encoding'], encoding, `${name} for ${wish}`);
      assert.equal(answer.headers.vary, 'Accept-Encoding');
      assert.ok((encoding ? unpack[encoding](answer.body) : answer.body).equals(plain), `${name} for ${wish}`);
      if (wish === 'gzip, deflate, br') {
        whole += plain.length;
        sent += answer.body.length;
      }
    }
  }
  console.log(`# ${names().length} files, ${whole} bytes, sent as ${sent}`);
  assert.ok(names().length > 8 && sent < 0.5 * whole);
});

test('the type is that of the file, and an unchanged one is not sent again', async () => {
  const first = await ask('/', { 'accept-encoding': 'br' });
  assert.equal(first.headers['content-type'], 'text/html; charset=utf-8');
  const again = await ask('/', { 'accept-encoding': 'br', 'if-modified-since': first.headers['last-modified'] });
  assert.deepEqual([again.status, again.body.length], [304, 0]);
  const program = names().find((name) => /torchside-.*\.wasm$/.test(name));
  assert.equal((await ask(program, { 'accept-encoding': 'br' })).headers['content-type'], 'application/wasm');
});

test('what is missing or outside is not there, and says so in plain bytes', async () => {
  for (const name of ['/nothing.js', '/../CMakeLists.txt', '/%2e%2e/CMakeLists.txt', '/icons/', '/index.html/']) {
    const answer = await ask(name, { 'accept-encoding': 'br' });
    assert.equal(answer.status, 404, name);
    assert.equal(answer.headers['content-encoding'], undefined);
  }
});

test('the page starts from it', async () => {
  const browser = await launch();
  const page = await open(browser, PHONE);
  await page.goto(`http://127.0.0.1:${port}/`);
  await settled(page);
  await clean(page);
  await browser.close();
});
