// Inside a page of another site a finger could be led to touch here what it does not see: nothing starts there, and the page says where it
// works. A host's header keeps browsers from showing it in such a frame at all (DEVELOPERS.md, "Headers"); this holds without one.
function foreignFrame() {
  try {
    for (let at = window; at !== at.parent; at = at.parent) {
      if (at.parent.location.origin !== location.origin) {
        return true;
      }
    }
    return false;
  } catch {
    return true; // a page of another origin does not let itself be asked
  }
}

if (foreignFrame()) {
  const say = () => {
    const first = document.getElementById('first');
    const line = document.createElement('p');
    line.setAttribute('role', 'alert');
    line.textContent = words.page.framed + ' ';
    const alone = document.createElement('a');
    Object.assign(alone, { href: location.href, target: '_blank', rel: 'noopener', textContent: words.page.by_itself });
    line.append(alone);
    first.replaceChildren(line);
    document.body.replaceChildren(first);
  };
  if (document.body) {
    say();
  } else {
    document.addEventListener('DOMContentLoaded', say);
  }
  return;
}
