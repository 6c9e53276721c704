// Words of another language than English: a file of its own, asked for beside the program when this browser spoke that language last, or
// is set to it. It is remembered which.
const tongueKey = slotKey('language');
const tongues = new Map(); // code -> the file's bytes
let taking; // the file that the app was told of

async function fetchWords(code) {
  const element = document.getElementById('words-' + code);
  if (!element) {
    return;
  }
  if (element.href) {
    const answer = await fetch(element.href);
    if (!answer.ok) {
      throw new Error(String(answer.status));
    }
    tongues.set(code, new Uint8Array(await answer.arrayBuffer()));
  } else { // the one-file page carries it inside itself
    tongues.set(code, Uint8Array.from(atob(element.textContent), (c) => c.charCodeAt(0)));
  }
}

const ownTongue = /^en-(?!US|CA)/.test(navigator.language) ? 'en-GB' : navigator.language.slice(0, 2);
const tongue = recall(tongueKey) || ownTongue;
const speaks = Boolean(document.getElementById('words-' + tongue));
const wordsCame = fetchWords(tongue).catch(() => {}); // the first answer is then in English; the app asks once more

/** How many bytes they are; 0 while they are on their way, and where there are none. `spoken`: by the screen, not to a customer. */
function findWords(code, spoken) {
  if (spoken) {
    remember('language', code);
    html.lang = code;
  }
  taking = tongues.get(code);
  if (!taking) {
    fetchWords(code).then(() => tongues.has(code) && call('torchside_notice', 'words', code), () => {});
  }
  return taking ? taking.length : 0;
}

const takeWords = () => taking;
