/** Nothing can be shown, or nothing more: a sentence and a way on, over everything else. */
window.torchsideStopped = (what) => {
  if (!document.body) { // a style sheet is asked for before there is a page
    document.addEventListener('DOMContentLoaded', () => torchsideStopped(what));
    return;
  }
  const box = document.createElement('div');
  const line = document.createElement('p');
  const link = document.createElement('a');
  line.setAttribute('role', 'alert');
  link.href = location.href;
  link.onclick = () => location.reload(); // the address alone may be the same but for what follows #
  link.textContent = 'Load the page again';
  line.append(what + ' ', link);
  box.append(line);
  document.getElementById('first')?.remove();
  box.id = 'first';
  document.documentElement.classList.remove('quote');
  document.body.append(box);
  box.scrollIntoView();
};
