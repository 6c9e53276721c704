// Print: a copy of what the app marked 'printable', alone on white paper. Made when the browser is about to print, by whichever
// way that was asked for, and thrown away after.
const paper = document.getElementById('paper');

function bare(el) {
  const copy = el.cloneNode(true);
  for (const part of [copy, ...copy.querySelectorAll('*')]) {
    ['id', 'style', 'data-id', 'inert', 'aria-labelledby'].forEach((name) => part.removeAttribute(name));
  }
  return copy;
}

window.addEventListener('beforeprint', () => {
  const marked = [...root.querySelectorAll('.printable')].filter((el) => !el.parentNode.closest('.printable'));
  const parts = marked.length ? marked : [...root.querySelectorAll('main, [role=dialog]')];
  const example = root.querySelector('[data-id="example/what"]'); // whatever is printed of the example shop says so
  paper.replaceChildren(...(example ? [example] : []).concat(parts).map(bare));
});
window.addEventListener('afterprint', () => paper.replaceChildren());
