// Frames only when something asked for one: no running loop. A hidden page asks for none and catches up when it is shown.
const counters = (window.torchsideCounters = { requested: 0, drawn: 0 });
let pending = false;
let owed = false;
let timer = 0;

function drawNow() {
  if (drawing) {
    requestFrame();
    return;
  }
  if (!whole && counters.drawn) {
    owed = true;
    return;
  }
  counters.drawn++;
  drawing = true;
  try {
    app._torchside_frame();
  } catch (e) {
    stopped(words.page.own_error);
    throw e;
  } finally {
    drawing = false;
  }
  callWaiting();
  settle();
}

function requestFrame() {
  started();
  if (document.hidden) {
    owed = true;
  } else if (!pending) {
    pending = true;
    counters.requested++;
    requestAnimationFrame(() => {
      pending = false;
      drawNow();
    });
  }
}

/** One timer, for the next change that time brings: a caret, a press that shows after 60 ms. */
function wake(ms) {
  clearTimeout(timer);
  if (ms >= 0) {
    timer = setTimeout(requestFrame, ms);
  }
}

function catchUp() {
  if (!document.hidden && owed) {
    owed = false;
    requestFrame();
  }
}
document.addEventListener('visibilitychange', catchUp);

/** A window moved to another screen, or zoomed: the drawing is made again at the new density. */
function watchDensity() {
  matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener('change', () => {
    window.dispatchEvent(new Event('resize'));
    call('torchside_notice', 'resize', '');
    watchDensity();
  }, { once: true });
}
watchDensity();
