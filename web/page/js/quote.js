// The customer's page: the address ends in a quote. The small module makes the page's inside of it; nothing of the app is asked for.
// On the shop's own device, which holds its key, the page says too whether the quote is one that was issued here.
// The quote says which language its customer reads: that table of words is fetched then. Where it does not come, all stays English.
window.torchsideRuns = 1;
const html = document.documentElement;
const quoteWasm = document.getElementById('quote-wasm');
const policy = window.trustedTypes?.createPolicy('torchside', {
  createHTML: (text) => text, // of our own module, which escapes every text
  createScriptURL: () => 'sw.js?quote',
});

const wordFiles = '@quote-words-files@'.split(' ');
const carried = [...document.querySelectorAll('script[id^=quote-]')]; // the one-file page has the tables inside itself
const patience = 3000; // ms that the page stays empty for its words; they come into it later, too
const texts = ['print', 'back', 'no_crypto', 'no_seal', 'newer', 'not_ours', 'altered'];
let say; // (which of the texts) as the module has it, in the quote's language
let titled; // () => the page's title

/** The words of the quote's language, taken by the module: true, or false when it goes on in English. */
async function takeWords(module, code) {
  try {
    const inside = carried.find(({ id }) => id === 'quote-' + code);
    let bytes;
    if (inside) {
      bytes = Uint8Array.from(atob(inside.textContent), (c) => c.charCodeAt(0));
    } else {
      const file = wordFiles.find((name) => name.replace(/-[^-]+$/, '') === 'quote-' + code);
      const answer = file && await fetch(file);
      if (!answer?.ok) {
        return false; // a language without a table, or another host's page
      }
      bytes = new Uint8Array(await answer.arrayBuffer());
    }
    return module.text('torchside_quote_words', bytes) === code;
  } catch {
    return false; // no such language, no network
  }
}

async function showQuote() {
  const main = document.createElement('main');
  const paper = document.createElement('article');
  paper.className = 'sheet';
  main.append(paper);
  html.classList.add('quote');
  document.body.replaceChildren(main);
  let opened;
  let read; // () => the page's inside, in the language whose words are here
  let came; // a promise: whether the words of another language did
  try {
    const module = await smallModule(quoteWasm);
    read = () => module.text('torchside_quote', location.hash, today());
    say = (name) => module.text('torchside_quote_says', '', texts.indexOf(name));
    titled = () => module.text('torchside_quote_title');
    read();
    opened = { module, body: module.text('torchside_quote_body'), seal: module.text('torchside_quote_seal') };
    const code = module.text('torchside_quote_language');
    came = code ? takeWords(module, code).then((took) => took && code) : Promise.resolve(false);
    html.lang = await Promise.race([came, new Promise((late) => setTimeout(late, patience, 'en'))]) || 'en';
  } catch {
    torchsideStopped(words.page_quote.not_loaded);
    return;
  }
  const whole = write(paper, read());
  performance.mark('torchside-quote');
  if (whole) {
    finish(main, paper, opened);
    came.then((code) => {
      if (code && html.lang !== code) { // too late for the first look
        html.lang = code;
        write(paper, read());
        finish(main, paper, opened);
      }
    });
  }
  keepQuote();
}

/** The inside of the page, whose title it gives, too; false when the link was refused. */
function write(paper, text) {
  const refused = text.startsWith('!');
  const inside = refused ? text.slice(1) : text;
  paper.innerHTML = policy ? policy.createHTML(inside) : inside;
  document.title = titled();
  return !refused;
}

/** What stands around the paper: the button to print, and on the shop's own device whose quote it is. */
async function finish(main, paper, opened) {
  main.replaceChildren(paper, bar());
  const own = await ownShop();
  if (own.keys.length) {
    await sayWhose(main, opened, own);
  }
}

function bar() {
  const row = document.createElement('p');
  row.className = 'bar';
  const button = document.createElement('button');
  button.textContent = say('print');
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
  back.textContent = say('back');
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
