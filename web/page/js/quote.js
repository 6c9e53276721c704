// The customer's page: the address ends in a quote. The small module makes the page's inside of it; nothing of the app is asked for.
// On the shop's own device, which holds its key, the page says too whether the quote is one that was issued here.
window.torchsideRuns = 1;
const html = document.documentElement;
const quoteWasm = document.getElementById('quote-wasm');
const policy = window.trustedTypes?.createPolicy('torchside', {
  createHTML: (text) => text, // of our own module, which escapes every text
  createScriptURL: () => 'sw.js?quote',
});

async function showQuote() {
  const main = document.createElement('main');
  const paper = document.createElement('article');
  paper.className = 'sheet';
  main.append(paper);
  html.classList.add('quote');
  document.body.replaceChildren(main);
  let text;
  let opened;
  try {
    const module = await smallModule(quoteWasm);
    text = module.text('torchside_quote', location.hash, today());
    opened = { module, body: module.text('torchside_quote_body'), seal: module.text('torchside_quote_seal') };
  } catch {
    torchsideStopped(words.page_quote.not_loaded);
    return;
  }
  const refused = text.startsWith('!');
  const inside = refused ? text.slice(1) : text;
  paper.innerHTML = policy ? policy.createHTML(inside) : inside;
  document.title = refused ? words.customer.quote : words.customer.quote_from({ shop: paper.querySelector('h1').textContent });
  performance.mark('torchside-quote');
  if (!refused) {
    main.append(bar());
    const own = await ownShop();
    if (own.keys.length) {
      await sayWhose(main, opened, own);
    }
  }
  keepQuote();
}

function bar() {
  const row = document.createElement('p');
  row.className = 'bar';
  const button = document.createElement('button');
  button.textContent = words.page_quote.print;
  button.addEventListener('click', () => window.print());
  row.append(button);
  return row;
}

/** Only the shop has a key: the others get no word of seals. */
async function sayWhose(main, { module, body, seal }, { keys, rows }) {
  const line = document.createElement('p');
  line.className = 'seal';
  line.setAttribute('role', 'status');
  const said = await whatIsWrong(body, seal, keys) || module.text('torchside_quote_standing', rows, today());
  line.dataset.sign = said[0];
  line.textContent = said.slice(1) + ' ';
  const back = document.createElement('a');
  back.href = location.pathname + location.search + '#/quote';
  back.textContent = words.page_quote.back;
  line.append(back);
  main.prepend(line);
}

/** A worker that keeps this page's few files only; a browser that has the app has them already. */
async function keepQuote() {
  const workers = navigator.serviceWorker;
  if (!workers || html.dataset.single || !window.isSecureContext) {
    return;
  }
  try {
    const here = await workers.getRegistration(); // it may be that of a copy in a folder above
    if (here?.scope !== new URL('.', location.href).href) {
      await workers.register(policy ? policy.createScriptURL('') : 'sw.js?quote', { updateViaCache: 'none' });
    }
  } catch {
    // no worker: the page works, with the network
  }
}

window.addEventListener('hashchange', () => location.reload());
showQuote();
