// What a walk asks of the page. Each of these is sent to the page as text and runs there: it may use nothing from outside itself.

/**
 * Wait until nothing is drawn any more, two pictures of the screen in a row without a frame of the app's, and until the history has
 * gone where a Close has sent it (tame): a Back pressed before that would leave the app.
 */
export async function rest() {
  const counts = window.torchsideCounters;
  for (let still = 0, frames = 0; still < 2; frames++) {
    const before = counts?.drawn;
    const from = scrollY; // the plain page is scrolled by the browser, which goes on for a while: a tap would only stop it
    await new Promise((next) => { requestAnimationFrame(() => setTimeout(next, 0)); });
    still = counts && counts.drawn === before && scrollY === from && !window.stepping ? still + 1 : 0;
    if (frames > 300) {
      return false;
    }
  }
  return true;
}

/**
 * What leaves the page for the system (print, a file to pick, a mail to write) would hold the walk up: it is counted instead. Steps
 * of the history that the app itself makes are counted until they are answered.
 */
export function tame() {
  window.stepping = 0;
  const go = history.go;
  history.go = function step(by) {
    window.stepping++;
    addEventListener('popstate', () => { window.stepping--; }, { once: true });
    go.call(this, by);
  };
  window.left = [];
  window.print = () => { window.left.push('print'); };
  window.open = (address) => { window.left.push('open ' + address); return null; };
  const click = HTMLElement.prototype.click;
  HTMLElement.prototype.click = function press() {
    if (this.type === 'file' || this.download) {
      window.left.push(this.type === 'file' ? 'pick a file' : 'save ' + this.download);
    } else {
      click.call(this);
    }
  };
}

/** The page stands and all of the program is there. */
export async function opened() {
  for (const end = Date.now() + 20000; Date.now() < end;) {
    const later = document.getElementById('later-wasm');
    if (document.getElementById('first')?.hidden && document.querySelector('#mirror > *') && (!later || performance.getEntriesByName('torchside-whole').length)) {
      return '';
    }
    await new Promise((next) => { setTimeout(next, 30); });
  }
  return 'the page never stood: ' + (document.getElementById('first')?.textContent ?? 'no first text');
}

/** One step back in the browser's history, and the answer to it. */
export async function stepBack() {
  await new Promise((next) => {
    addEventListener('popstate', () => setTimeout(next, 0), { once: true });
    setTimeout(next, 2000);
    history.back();
  });
}

/** Everything on screen, in reading order: {id, role, name, value, state, box [x, y, w, h], shown}. `shown`: a press on its middle reaches it. */
export async function look() {
  const plain = document.documentElement.classList.contains('plain');
  const at = (x, y) => (plain ? document.elementFromPoint(x, y)?.closest('[data-id]')?.dataset.id : Module.ccall('torchside_at', 'string', ['number', 'number'], [x, y]));
  const nodes = [...document.querySelectorAll('#mirror [data-id]')].map((el) => {
    const field = el.tagName === 'LABEL' ? el.querySelector('input') : null;
    const { x, y, width, height } = (field ?? el).getBoundingClientRect();
    const [name, value] = [el.firstChild.firstChild?.textContent ?? '', el.firstChild.querySelector?.('b')?.textContent];
    const middle = [x + width / 2, y + height / 2];
    const control = el.tagName === 'BUTTON' || field !== null;
    return {
      id: el.dataset.id, control, role: el.getAttribute('role') || (field ? 'textbox' : el.tagName.toLowerCase()),
      parent: el.parentElement.closest('[data-id]')?.dataset.id ?? '',
      name: value === undefined ? name : name.replace(/: $/, ''), value: field ? field.value : value ?? '', label: el.getAttribute('aria-label') || '',
      state: ['disabled', 'expanded', 'checked', 'pressed', 'current', 'invalid'].map((s) => [s, (field ?? el).getAttribute('aria-' + s)]).filter(([, v]) => v).map(([s, v]) => s + '=' + v).join(' '),
      box: [x, y, width, height], shown: control && width > 0 && height > 0 && !el.closest('[inert]') && at(...middle) === el.dataset.id,
    };
  });
  // What is kept, by what changes with every write: a counter at one end, a checksum at the other.
  const base = await new Promise((done) => {
    const ask = indexedDB.open('torchside.' + (location.protocol === 'file:' ? '' : new URL('.', location.href).pathname + '.'));
    ask.onsuccess = () => done(ask.result);
  });
  const slots = await new Promise((done) => {
    const ask = base.transaction('kept').objectStore('kept').getAll();
    ask.onsuccess = () => done(ask.result);
  });
  base.close();
  const kept = slots.map((text) => text.slice(0, 80) + text.slice(-80)).join();
  return { plain, kept, left: window.left, hash: location.hash, title: document.title, below: history.state?.below || 0, width: innerWidth, height: innerHeight, nodes,
    focus: document.activeElement?.closest?.('[data-id]')?.dataset.id ?? '' };
}

/** All that is wrong on the page as it stands now, as sentences: it has stopped, the picture is bare, picture and mirror disagree. */
export function faults() {
  const found = [];
  const first = document.getElementById('first');
  if (!first || !first.hidden || document.getElementById('stopped')) {
    return ['the page has stopped: ' + ((document.getElementById('stopped') ?? first)?.textContent ?? 'its first text is gone')];
  }
  const els = [...document.querySelectorAll('#mirror [data-id]')];
  const plain = document.documentElement.classList.contains('plain');
  const controls = els.map((el) => ({ el, id: el.dataset.id, place: (el.querySelector(':scope > input') ?? el) }))
    .filter(({ el }) => (el.tagName === 'BUTTON' || el.tagName === 'LABEL') && !el.closest('[inert]'))
    .map((c) => ({ ...c, box: c.place.getBoundingClientRect() }));
  // There is always a way on: the places, a sheet's Close, or the key that ends typing. In a low window (web/kit/ui.hpp, low) a sheet of
  // words alone has no other control; in others title or places stand beside it.
  const low = innerHeight < 520;
  const ways = controls.filter(({ id }) => /^place\/|\/close$|^key\/done$/.test(id));
  const whole = ways.some(({ id }) => id.endsWith('/close')); // a sheet that has all of the screen: the chart, the questions, the table
  if (controls.length < (low || whole ? 1 : 5) || !ways.length) {
    return [`there are ${controls.length} controls on the screen, ${ways.length} of them lead on`];
  }
  const heads = controls.filter(({ id }) => /^(place|title)\//.test(id)).length; // five places, and units, metal, plate and current
  if (![0, 4, 9].includes(heads) || (heads === 0 && !low && !whole)) {
    found.push(`${heads} of the nine controls of title and places are there`);
  }
  if (new Set(els.map((el) => el.dataset.id)).size !== els.length) {
    found.push('two things have the same name in the mirror');
  }
  const holds = (b, x, y, by = 2) => x >= b.x - by && y >= b.y - by && x <= b.right + by && y <= b.bottom + by;
  if (plain) {
    for (const { id, box } of controls) {
      if (!id.startsWith('key/') && (box.width < 8 || box.height < 8)) {
        found.push(`${id} has no size on the plain page`);
      }
      if (box.x < -1 && box.right < 1) {
        found.push(`${id} lies outside the plain page`);
      }
    }
    return found;
  }

  // A finger anywhere reaches what the mirror says stands there.
  const at = (x, y) => Module.ccall('torchside_at', 'string', ['number', 'number'], [x, y]);
  const byId = new Map(controls.map((c) => [c.id, c]));
  for (let y = 12; y < innerHeight; y += 24) {
    for (let x = 12; x < innerWidth; x += 24) {
      const id = at(x, y);
      const c = id && byId.get(id);
      if (id && !c && document.querySelector(`#mirror [data-id="${id}"]`)?.getAttribute('role') !== 'separator') {
        found.push(`a finger at ${x}, ${y} reaches ${id}, which is not in the mirror`);
      } else if (c && !holds(c.box, x, y)) {
        found.push(`a finger at ${x}, ${y} reaches ${id}, which the mirror has elsewhere`);
      }
    }
  }
  // In a low window title, places and a sheet's head scroll away with what they lead: upward, over the edge of it.
  const gone = ({ el }, y) => y < Math.max(0, (el.closest('[role="dialog"]') ?? document.querySelector('#mirror main'))?.getBoundingClientRect().y ?? 0);
  const feet = ['start/skip', 'start/back', 'start/next', 'read/log', 'read/swirl'];
  // Each control's middle is its own, unless it is scrolled away under what clips it.
  const shown = [];
  for (const c of controls) {
    const [x, y] = [c.box.x + c.box.width / 2, c.box.y + c.box.height / 2];
    const hit = x >= 0 && y >= 0 && x < innerWidth && y < innerHeight ? at(x, y) : '';
    if (hit === c.id) {
      shown.push(c);
    } else if (c.id.startsWith('part/contour/')) {
      continue; // pieces of a drawing lie within each other; the innermost is on top
    } else if (feet.includes(hit) && y > byId.get(hit).box.y) {
      continue; // scrolled away under the foot of its sheet, which stays
    } else if (hit && byId.get(hit)?.el.parentElement.closest('[data-id]') === c.el.parentElement.closest('[data-id]')) {
      found.push(`${c.id} lies under ${hit}`);
    } else if (c.el.closest('[data-id="keypad"]') || (/^(place|title)\/|\/close$/.test(c.id) && !(low && gone(c, y)))) {
      found.push(`${c.id} cannot be reached` + (hit && `: ${hit} lies there`));
    }
  }
  for (const { id, box } of shown) {
    if (!id.startsWith('part/contour/') && (box.x < -1 || box.right > innerWidth + 1)) { // a drawing is clipped
      found.push(`${id} runs out of the screen: ${Math.round(box.x)} to ${Math.round(box.right)} of ${innerWidth}`);
    }
  }

  // The picture: draw it once more and read it back before the browser takes it away.
  const gl = Module.canvas.getContext('webgl');
  if (!gl || gl.isContextLost()) {
    return [...found, 'there is no WebGL, and the page is not the plain one'];
  }
  Module._torchside_frame();
  const { width, height } = Module.canvas;
  const density = width / innerWidth;
  const [size] = [width * height];
  const pixels = window.walkPixels?.length === size ? window.walkPixels : (window.walkPixels = new Uint32Array(size));
  gl.readPixels(0, 0, width, height, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(pixels.buffer));
  const drawnIn = ({ x, y, width: w, height: h }) => {
    const [left, right] = [Math.max(0, Math.ceil(x * density)), Math.min(width, Math.floor((x + w) * density))];
    const [top, bottom] = [Math.max(0, Math.ceil(y * density)), Math.min(height, Math.floor((y + h) * density))];
    const ground = pixels[(height - 1 - top) * width + left];
    for (let row = top; row < bottom; row += 2) {
      const start = (height - 1 - row) * width;
      for (let i = left; i < right; i++) {
        if (pixels[start + i] !== ground) {
          return true;
        }
      }
    }
    return false;
  };
  if (!drawnIn({ x: 0, y: 0, width: innerWidth, height: innerHeight })) {
    return [...found, 'the picture is bare'];
  }
  for (const { id, box } of shown) {
    const margin = id.startsWith('part/contour/') ? 6 : -2; // what is drawn of a contour is its path, half a kerf beside it
    if (!drawnIn({ x: box.x - margin, y: box.y - margin, width: box.width + 2 * margin, height: box.height + 2 * margin })) {
      found.push(`${id} is in the mirror, but nothing is drawn there`);
    }
  }
  return found;
}
