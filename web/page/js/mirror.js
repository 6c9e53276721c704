// The mirror: what the canvas shows, as real HTML. Records come in reading order; elements are kept by id, so that focus, caret
// and a screen reader's place survive every update. Text goes in by textContent only.
const longest = 2000; // letters in a field: far more than any takes, so that no paste is more than the page can draw
const TAGS = {
  main: 'main', navigation: 'nav', text: 'p', button: 'button', tab: 'button', radio: 'button', switch: 'button',
  textbox: 'label', table: 'table', row: 'tr', columnheader: 'th', rowheader: 'th', cell: 'td', status: 'p', alert: 'p',
  list: 'ul', listitem: 'li',
};
// Absolute places take a table apart for some browsers; a role that is written down stays.
const ROLES = {
  dialog: 'dialog', figure: 'group', radio: 'radio', switch: 'switch', table: 'table', row: 'row', cell: 'cell',
  columnheader: 'columnheader', rowheader: 'rowheader', status: 'status', alert: 'alert', list: 'list', listitem: 'listitem',
  img: 'img', separator: 'separator',
};
const PRESSABLE = ['button', 'tab', 'radio', 'switch', 'separator'];
const NAMED = ['main', 'navigation', 'dialog', 'group', 'figure', 'table', 'row', 'list', 'img', 'separator'];

/** id -> {el, outer, field, text, tag, raw, role, parent, name, value, words, x, y, w, h, start}, in reading order. */
let nodes = new Map();
let opener = '';
let composing = null;
let placeName = '';

function parse(raw) {
  const f = raw.split('\x1f');
  const [x, y, w, h] = f.slice(6, 10).map(Number);
  return { raw, id: f[0], parent: f[1], role: f[2], name: f[3], value: f[4], words: f[5].split(' '), x, y, w, h, about: f[10] || '' };
}

const nodeOf = (el) => nodes.get(el?.closest?.('[data-id]')?.dataset.id);
const has = (node, word) => node.words.includes(word);
const keyOf = (node) => node.words.find((word) => word.startsWith('key-'))?.slice(4); // that does the same
const target = (node) => node.field || node.el;

function tagOf(r, mains) {
  if (r.role === 'main' && mains > 1) {
    return 'section'; // a second column: a page has one main part
  }
  return r.role === 'heading' ? 'h' + (/level([1-3])/.exec(r.words)?.[1] || 2) : TAGS[r.role] || 'div';
}

function set(el, name, value) {
  if (value === '' || value === false || value === undefined) {
    el.removeAttribute(name);
  } else if (el.getAttribute(name) !== String(value)) {
    el.setAttribute(name, value);
  }
}

function say(el, text) {
  if (el.textContent !== text) {
    el.textContent = text;
  }
}

/** What a control says: its name, and its value where the plain page can set it apart. */
function sayBoth(el, name, value) {
  if (el.textContent !== name + ': ' + value) {
    const strong = document.createElement('b');
    strong.textContent = value;
    el.replaceChildren(name + ': ', strong);
  }
}

function create(r, tag) {
  const el = document.createElement(tag);
  el.dataset.id = r.id;
  el.id = 'm-' + r.id;
  if (tag === 'button') {
    el.type = 'button';
  }
  const text = document.createElement('span');
  el.append(text);
  const node = { el, outer: el, text, tag, start: '' };
  if (r.role === 'textbox') {
    const field = (node.field = document.createElement('input'));
    field.maxLength = longest;
    field.autocomplete = 'off';
    field.spellcheck = false;
    field.autocapitalize = 'off';
    field.enterKeyHint = 'done';
    el.append(field);
  }
  if (r.role === 'dialog') {
    el.tabIndex = -1;
  }
  return node;
}

function dressField(node, r) {
  const { field } = node;
  const editing = r.words.includes('focused');
  const ended = node.words && has(node, 'focused') && !editing;
  const keypad = r.words.includes('mode-keypad') && !html.classList.contains('plain');
  set(field, 'inputmode', keypad ? 'none' : r.words.includes('mode-text') ? 'text' : 'decimal');
  set(field, 'aria-invalid', r.words.includes('invalid'));
  set(field, 'aria-description', r.about);
  field.readOnly = r.words.includes('disabled');
  if (field.value !== r.value && composing !== field) {
    field.value = r.value;
    if (document.activeElement === field) {
      field.setSelectionRange(r.value.length, r.value.length);
    }
  }
  if (!editing) {
    node.start = r.value; // what the field said before anybody typed
  }
  return ended;
}

function dress(node, r) {
  const { el } = node;
  const on = (word) => r.words.includes(word);
  let role = ROLES[r.role];
  if (r.role === 'group' && r.name) {
    role = node.choice ? 'radiogroup' : r.parent ? 'group' : 'region'; // what stands by itself is a landmark
  }
  set(el, 'role', role);
  set(el, 'aria-label', NAMED.includes(r.role) ? r.role === 'img' ? [r.name, r.value].filter(Boolean).join(' ') : r.name : '');
  const classes = r.words.filter((word) => word === 'printable' || word.startsWith('mark-'));
  set(el, 'class', (r.value && r.role === 'button' ? ['valued', ...classes] : classes).join(' '));
  set(el, 'aria-live', on('live') && r.role !== 'status' && r.role !== 'alert' && 'polite');
  if (r.role === 'dialog') {
    set(el, 'aria-modal', on('modal'));
  }
  let said = r.name;
  if (r.role === 'figure') {
    said = r.value;
  } else if (r.value && r.role !== 'textbox') {
    said = [r.name, r.value].filter(Boolean).join(' ');
  } else if (NAMED.includes(r.role)) {
    said = '';
  }
  if (r.value && PRESSABLE.includes(r.role)) {
    sayBoth(node.text, r.name, r.value);
  } else {
    say(node.text, said);
  }
  if (r.role === 'textbox') {
    set(el, 'data-about', r.about);
    return dressField(node, r);
  }
  set(el, 'aria-description', r.about);
  set(el, 'aria-keyshortcuts', keyOf(r));
  set(el, 'aria-disabled', on('disabled'));
  set(el, 'aria-expanded', on('expanded') ? 'true' : on('collapsed') && 'false');
  if (r.role === 'separator') {
    el.tabIndex = 0;
    set(el, 'aria-orientation', 'vertical');
    set(el, 'aria-valuenow', r.value);
  } else if (r.role === 'radio' || r.role === 'switch') {
    set(el, 'aria-checked', on('checked') || on('selected') ? 'true' : 'false');
  } else if (r.role === 'button') {
    set(el, 'aria-pressed', (on('selected') || on('checked')) && 'true');
  }
  const here = on('current') || (on('selected') && r.role !== 'button');
  set(el, 'aria-current', here && (r.role === 'tab' ? 'page' : 'true'));
  return false;
}

function lay(node, r, parent) {
  const { style } = node.el;
  const place = [r.x - (parent ? parent.x : 0), r.y - (parent ? parent.y : 0), r.w, r.h].map((n) => n + 'px');
  ['left', 'top', 'width', 'height'].forEach((side, i) => {
    if (style[side] !== place[i]) {
      style[side] = place[i];
    }
  });
}

/** One stop of the Tab key for a choice or a chart: where the keyboard is in it, else the chosen one, else its first. Arrows go on. */
function stops(choices) {
  for (const ones of choices.values()) {
    const stop = ones.find((n) => n.el === document.activeElement) || ones.find((n) => has(n, 'checked') || has(n, 'selected')) || ones[0];
    ones.forEach((n) => set(n.el, 'tabindex', n === stop ? '0' : '-1'));
  }
}

/** A sheet that covers everything takes the rest out of reach; one that stands beside it does not. */
function shut(dialog) {
  for (const el of root.querySelectorAll('[inert]')) {
    el.inert = false;
  }
  for (let el = dialog && has(dialog, 'modal') ? dialog.outer : root; el !== root; el = el.parentNode) {
    for (const other of el.parentNode.children) {
      other.inert = other !== el && other.tagName !== 'SPAN';
    }
  }
}

/** The element for a record: the one that is there, unless it has become another kind of thing. */
function nodeFor(r, pass) {
  pass.mains += r.role === 'main';
  const tag = tagOf(r, pass.mains);
  const node = nodes.get(r.id);
  if (node && node.tag === tag && node.role === r.role) {
    return node;
  }
  node?.outer.remove();
  return create(r, tag);
}

/**
 * Put a node where it stands in the reading order, moving nothing that stands there already: a moved element loses focus. Kept is
 * what was hung last, never what comes next: the next one may be removed or hung elsewhere before its turn.
 */
function hang(node, r, parent, pass) {
  if (parent?.role === 'list' && r.role !== 'listitem' && node.outer === node.el) {
    node.outer = document.createElement('li');
    node.outer.append(node.el);
  }
  const box = parent ? parent.el : root;
  const last = pass.last.get(box) || parent?.text;
  const here = last ? last.nextSibling : box.firstChild;
  if (node.outer !== here) {
    box.insertBefore(node.outer, here);
  }
  pass.last.set(box, node.outer);
}

function oneStop(whole, node, pass) {
  if (!pass.choices.has(whole)) {
    pass.choices.set(whole, []);
  }
  pass.choices.get(whole).push(node);
}

/** What a node means to the things around it: a choice, a sheet's heading, a new sheet. */
function relate(node, r, parent, pass) {
  if (r.role === 'radio' && parent?.role === 'group') {
    oneStop(parent, node, pass);
    parent.choice = true;
    set(parent.el, 'role', 'radiogroup');
  } else if (parent?.role === 'cell' && PRESSABLE.includes(r.role)) {
    const table = pass.next.get(pass.next.get(parent.parent).parent);
    oneStop(table, node, pass);
    set(parent.el, 'role', 'gridcell');
    set(table.el, 'role', 'grid');
  } else if (r.role === 'heading' && parent?.role === 'dialog' && (!parent.name || parent.name === r.name)) {
    set(parent.el, 'aria-labelledby', node.el.id);
  } else if (r.role === 'dialog') {
    const fresh = nodes.get(r.id) !== node;
    if (fresh || !pass.dialog?.fresh) {
      pass.dialog = Object.assign(node, { fresh });
    }
  }
}

function take(r, pass) {
  const parent = pass.next.get(r.parent);
  const node = nodeFor(r, pass);
  if (r.words.includes('focused') && !(node.words && has(node, 'focused'))) {
    pass.wanted = node;
  }
  if (node.raw !== r.raw) {
    if (dress(node, r)) {
      pass.ended.push(node);
    }
    Object.assign(node, r);
  }
  lay(node, r, parent);
  hang(node, r, parent, pass);
  relate(node, r, parent, pass);
  pass.next.set(r.id, node);
}

/** The window's name: the sheet that is open, the place, and whose page it is. While a field has the screen the place is not on it. */
function entitle(dialog) {
  const here = [...nodes.values()].find((n) => n.role === 'tab' && has(n, 'current'));
  placeName = here ? here.name : placeName;
  document.title = [dialog?.name, placeName, 'Torchside'].filter(Boolean).join(' · ');
}

function mirror(text) {
  const records = text.split('\x1e').filter(Boolean).map(parse);
  const initial = nodes.size === 0;
  const holder = nodeOf(root.contains(document.activeElement) ? document.activeElement : null);
  const pass = { next: new Map(), last: new Map(), choices: new Map(), ended: [], wanted: null, dialog: null, mains: 0 };
  const ids = new Set(records.map((r) => r.id));
  for (const [id, node] of nodes) {
    if (!ids.has(id)) {
      node.outer.remove();
    }
  }
  records.forEach((r) => take(r, pass));
  nodes = pass.next;
  stops(pass.choices);
  shut(pass.dialog);
  entitle(pass.dialog);
  moveFocus(initial, holder, pass.wanted, pass.dialog);
  afterEdits(pass.ended);
  if (initial && records.length) {
    first.hidden = true;
    shown(ids.has('cut/feed'));
  }
}

/** Where focus goes after an update: where the app wants it, into a new sheet, back to what opened it, else where it was. The plain page,
    which the browser scrolls, shows a sheet from its top and goes back to what opened it. */
function moveFocus(initial, holder, wanted, dialog) {
  const plain = html.classList.contains('plain');
  const to = (node) => target(node).focus({ preventScroll: !plain });
  if (wanted) {
    opener = dialog?.fresh && holder ? holder.id : opener;
    if (document.activeElement !== target(wanted)) {
      to(wanted);
      wanted.field?.select();
    }
  } else if (dialog?.fresh && !initial) {
    opener = holder ? holder.id : opener;
    to(dialog);
    if (plain) {
      dialog.el.scrollIntoView();
    }
  } else if (holder && !nodes.has(holder.id)) {
    const back = nodes.get(opener) || dialog || [...nodes.values()].find((n) => PRESSABLE.includes(n.role));
    if (back) {
      to(back);
    }
  } else if (holder && !root.contains(document.activeElement)) {
    to(nodes.get(holder.id)); // made anew, or moved, and so without it
  }
}
