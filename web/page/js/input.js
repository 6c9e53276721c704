// Fingers, keys and assistive technology on the mirror. The canvas takes the finger (SDL); the page adds what only a page can do:
// give a real input the focus inside the gesture, so that a keyboard, paste and the caret work.
const SLOP = 8; // px a finger may wander and still tap
const TAP_MS = 500;
let byKeys = true;
let press = null;

const inKeypad = (el) => Boolean(el?.closest?.('[data-id="keypad"]'));
const changed = (node) => node.field.value !== node.start;

const typed = (node) => node.field.value.slice(0, longest);

const DONE = 1;
const LEFT = 2; // the user went elsewhere: what is refused stays in the field, marked
const DROPPED = 3;

/** Done with a field: hand over what was typed, and let the app take it before anything else happens. */
function finish(node, how) {
  call('torchside_enter', node.id, typed(node), how);
  if (ready) {
    drawNow();
  }
}

function showLive() {
  for (const el of root.querySelectorAll('input.live')) {
    el.classList.remove('live');
  }
  const node = nodeOf(document.activeElement);
  if (node?.field && has(node, 'focused')) {
    node.field.classList.add('live');
  }
}

function afterEdits(ended) {
  for (const node of ended) {
    if (!byKeys && document.activeElement === node.field) {
      node.field.blur(); // puts a phone's keyboard away; a keyboard user's place stays
    }
  }
  showLive();
}

// ---- the canvas --------------------------------------------------------------------------------------------------------

function inside(node, x, y) {
  for (let n = node; n; n = nodes.get(n.parent)) {
    if (n.w && n.h && (x < n.x || y < n.y || x >= n.x + n.w || y >= n.y + n.h)) {
      return false;
    }
  }
  return true;
}

/** The app knows what is scrolled away under what. */
const idAt = (x, y) => app.ccall('torchside_at', 'string', ['number', 'number'], [x, y]);

/** The text field a finger touches, when nothing lies over it. */
function fieldAt(x, y) {
  if (app._torchside_at) {
    const node = nodes.get(idAt(x, y));
    return node?.field ? node : null;
  }
  const hit = [...nodes.values()].reverse().find((n) => (n.field || PRESSABLE.includes(n.role)) && inside(n, x, y));
  return hit?.field && !has(hit, 'disabled') ? hit : null;
}

canvas.addEventListener('pointerdown', (e) => {
  press = e.isPrimary && e.button === 0 ? { x: e.clientX, y: e.clientY, at: e.timeStamp } : null;
  call('torchside_focus', '');
});
canvas.addEventListener('pointerup', (e) => {
  const tap = press && Math.hypot(e.clientX - press.x, e.clientY - press.y) <= SLOP && e.timeStamp - press.at < TAP_MS;
  press = null;
  const node = tap && fieldAt(e.clientX, e.clientY);
  if (node) {
    node.field.focus({ preventScroll: true });
    node.field.select();
  }
});
canvas.addEventListener('pointercancel', () => { press = null; });

/** A mouse over the canvas: the app is told, and draws, only when another control lies under it. */
let hovered = '';
function hover(id) {
  if (id !== hovered) {
    hovered = id;
    canvas.style.cursor = nodes.get(id)?.field ? 'text' : nodes.get(id)?.role === 'separator' ? 'col-resize' : id ? 'pointer' : 'default';
    call('torchside_hover', id);
  }
}
canvas.addEventListener('pointermove', (e) => {
  if (e.pointerType === 'mouse' && !e.buttons && ready && whole && !drawing && app._torchside_at) {
    hover(idAt(e.clientX, e.clientY));
  }
});
canvas.addEventListener('pointerleave', () => hover(''));

// A press on the canvas takes no focus from a field that the app's own keypad is filling.
canvas.addEventListener('mousedown', (e) => e.preventDefault());
canvas.addEventListener('contextmenu', (e) => e.preventDefault());
// Zoom belongs to the browser: SDL must not see a wheel that zooms.
window.addEventListener('wheel', (e) => { if (e.ctrlKey) e.stopPropagation(); }, { capture: true, passive: true });
window.addEventListener('pointerdown', () => { byKeys = false; }, true);
window.addEventListener('keydown', () => { byKeys = true; }, true);

// ---- the mirror --------------------------------------------------------------------------------------------------------

root.addEventListener('focusin', (e) => {
  const node = nodeOf(e.target);
  if (node?.field && !changed(node)) {
    node.field.select(); // what is typed replaces it, whoever gave it the focus
  }
  const ring = byKeys && node && (node.field || PRESSABLE.includes(node.role));
  call('torchside_focus', ring ? node.id : '');
  showLive();
});
root.addEventListener('focusout', (e) => {
  if (!document.hasFocus()) {
    return; // the window went, not the user's place in it
  }
  const node = nodeOf(e.target);
  const to = e.relatedTarget;
  if (!root.contains(to)) {
    call('torchside_focus', '');
  }
  e.target.classList.remove('live');
  if (node?.field && node.el.isConnected && !inKeypad(to)) {
    if (changed(node)) {
      finish(node, LEFT);
    } else if (has(node, 'focused') && to) {
      call('torchside_back'); // untouched: leave it as it was, for its rounded figure is not what is stored
    }
  }
});
root.addEventListener('click', (e) => {
  const node = nodeOf(e.target);
  if (!node || has(node, 'disabled')) {
    return;
  }
  if (PRESSABLE.includes(node.role) || (e.target === node.field && !has(node, 'focused'))) {
    call('torchside_activate', node.id);
  }
});
root.addEventListener('input', (e) => {
  const node = nodeOf(e.target);
  if (node?.field) {
    call('torchside_enter', node.id, typed(node), 0);
  }
});
root.addEventListener('compositionstart', (e) => { composing = e.target; });
root.addEventListener('compositionend', () => { composing = null; });
// The mirror never scrolls by itself: the app scrolls its canvas to a focused control, and places follow.
root.addEventListener('scroll', () => { if (!html.classList.contains('plain')) root.scrollTo(0, 0); }, true);

function enterKey(node) {
  if (changed(node)) {
    finish(node, DONE);
  } else if (has(node, 'focused')) {
    call('torchside_back');
  } else {
    call('torchside_activate', node.id);
  }
}

function arrow(node, step) {
  const choice = [...nodes.values()].filter((n) => n.role === 'radio' && n.parent === node.parent);
  const at = choice.indexOf(node) + step;
  choice[(at + choice.length) % choice.length].el.focus({ preventScroll: true });
}

/** The figure of a chart that an arrow leads to. */
function inChart(node, key) {
  const cell = node.el.closest('td');
  const row = cell.parentNode;
  const rows = [...row.parentNode.children].filter((el) => el.tagName === 'TR');
  const to = {
    ArrowLeft: () => cell.previousElementSibling,
    ArrowRight: () => cell.nextElementSibling,
    ArrowUp: () => rows[rows.indexOf(row) - 1]?.cells[cell.cellIndex],
    ArrowDown: () => rows[rows.indexOf(row) + 1]?.cells[cell.cellIndex],
    Home: () => row.querySelector('td'),
    End: () => row.lastElementChild,
  }[key]();
  const button = to?.querySelector('button');
  if (button) {
    node.el.tabIndex = -1;
    button.tabIndex = 0;
    button.focus({ preventScroll: !html.classList.contains('plain') });
  }
}

/** What a single key does, unless somebody is typing. */
function keyed(key, node) {
  const typing = node?.field || [...nodes.values()].some((n) => has(n, 'focused'));
  const to = typing ? null : [...nodes.values()].find((n) => keyOf(n) === key);
  return to && !to.el.closest('[inert]') ? to : null;
}

window.addEventListener('keydown', (e) => {
  if (e.isComposing || e.ctrlKey || e.metaKey || e.altKey) {
    return;
  }
  const node = nodeOf(e.target);
  const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[e.key];
  if (e.key === 'Escape' && node?.field && (has(node, 'focused') || has(node, 'invalid'))) {
    finish(node, DROPPED);
  } else if (e.key === 'Escape') {
    call('torchside_back');
  } else if (e.key === 'Enter' && node?.field) {
    enterKey(node);
  } else if (step && node?.role === 'radio') {
    arrow(node, step);
  } else if ((step || e.key === 'Home' || e.key === 'End') && node?.el.closest('td')) {
    inChart(node, e.key);
  } else if (keyed(e.key, node)) {
    call('torchside_activate', keyed(e.key, node).id);
  } else {
    return;
  }
  e.preventDefault();
});
