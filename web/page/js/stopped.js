/** Nothing can be shown, or nothing more: a sentence and a way on, over everything else. */
window.torchsideStopped = (what) => {
  if (document.readyState === 'loading') { // a style sheet is asked for before all of the page is there
    document.addEventListener('DOMContentLoaded', () => torchsideStopped(what));
    return;
  }
  const box = document.createElement('div');
  const line = document.createElement('p');
  const link = document.createElement('a');
  line.setAttribute('role', 'alert');
  link.href = location.href;
  link.onclick = () => location.reload(); // the address alone may be the same but for what follows #
  link.textContent = words.page.again;
  line.append(what + ' ', link);
  box.append(line);
  const first = document.getElementById('first');
  if (first) {
    first.hidden = true; // the app, should it go on all the same, hides it too
  }
  document.getElementById('stopped')?.remove();
  box.id = 'stopped';
  document.documentElement.classList.remove('quote');
  document.body.append(box);
  box.scrollIntoView();
};
