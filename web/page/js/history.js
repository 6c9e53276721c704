// The address follows the app: one entry of the browser's history for each level that is open, so that Back closes a sheet, then
// a place, then leaves. The entry's state holds how many of our entries lie below it.
let path = '';
let going = false;

const home = '#/cut';
const levels = (p) => p.split('/').length - 2 + (p.startsWith(home) ? 0 : 1);
const below = () => history.state?.below || 0;

/** Make the history as deep as the app is. */
function settle() {
  if (going || !path) {
    return;
  }
  const steps = levels(path) - below();
  if (steps > 0 && location.hash !== path && location.hash) {
    history.pushState({ below: below() + 1 }, '', path);
  } else if (steps < 0) {
    going = true; // answered by popstate
    history.go(Math.max(steps, -below()));
  } else if (location.hash !== path || !history.state) {
    history.replaceState({ below: below() }, '', path);
  }
}

function place(to) {
  path = to;
  settle();
}

window.addEventListener('popstate', () => {
  if (location.hash.startsWith('#q=')) {
    again(); // a quote followed from here: the customer's page takes over
  } else if (going) {
    going = false;
    if (location.hash !== path) {
      history.replaceState({ below: below() }, '', path);
    }
    settle();
  } else if (history.state) {
    call('torchside_back'); // the frame that follows settles what the app made of it
  } else {
    call('torchside_notice', 'route', location.hash); // an address typed or followed by hand
  }
});
