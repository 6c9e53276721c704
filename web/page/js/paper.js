// Print: what the app gives for paper (its chart, or a card of the job), alone on a white page. Made when the browser is about to
// print, by whichever way that was asked for, and thrown away after. Before the whole app is there: what is on screen, as text.
const paper = document.getElementById('paper');

function bare(el) {
  const copy = el.cloneNode(true);
  for (const part of [copy, ...copy.querySelectorAll('*')]) {
    ['id', 'style', 'data-id', 'inert', 'aria-labelledby'].forEach((name) => part.removeAttribute(name));
  }
  return copy;
}

window.addEventListener('beforeprint', () => {
  if (ready && whole && app._torchside_paper) {
    const text = app.ccall('torchside_paper', 'string', [], []);
    paper.innerHTML = policy ? policy.createHTML(text) : text;
    return;
  }
  const marked = [...root.querySelectorAll('.printable')].filter((el) => !el.parentNode.closest('.printable'));
  const parts = marked.length ? marked : [...root.querySelectorAll('main, [role=dialog]')];
  const example = root.querySelector('[data-id="example/what"]'); // whatever is printed of the example shop says so
  paper.replaceChildren(...(example ? [example] : []).concat(parts).map(bare));
});
window.addEventListener('afterprint', () => paper.replaceChildren());
