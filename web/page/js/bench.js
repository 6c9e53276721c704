// At the table: the screen is kept on, and countdowns beep and buzz. A part of the later script (later.js).
{
  const tell = (how) => notice('awake', how);

  // ---- the screen -----------------------------------------------------------------------------------------------------------
  let wanted = false;
  let lock = null;

  /** The browser gives the lock back when the page is hidden: it is asked for again when it is shown. */
  async function hold() {
    if (!wanted || lock || document.hidden) {
      return;
    }
    if (!navigator.wakeLock) {
      tell('none'); // an old browser, or a page that did not come by HTTPS
      return;
    }
    try {
      const got = await navigator.wakeLock.request('screen');
      if (!wanted || lock) {
        got.release();
        return;
      }
      lock = got;
      got.addEventListener('release', () => {
        lock = null;
        if (wanted && !document.hidden) {
          tell('refused'); // the battery is low, say
        }
      });
      tell('on');
    } catch {
      tell('refused');
    }
  }
  document.addEventListener('visibilitychange', hold);

  function keepAwake(on) {
    wanted = on;
    if (on) {
      hold();
    } else {
      lock?.release();
    }
  }

  // ---- bells ----------------------------------------------------------------------------------------------------------------
  let sound = null;
  const bells = [];

  /** A browser makes sound only for a page that was touched: each touch wakes what has fallen asleep. */
  function wakeSound() {
    if (wanted) {
      sound ||= window.AudioContext && new AudioContext();
      if (sound?.state === 'suspended') {
        sound.resume().catch(() => {});
      }
    }
  }
  ['pointerup', 'touchend', 'keydown', 'click'].forEach((kind) => window.addEventListener(kind, wakeSound, { capture: true, passive: true }));

  function beep(last) {
    const tone = sound.createOscillator();
    const volume = sound.createGain();
    const from = sound.currentTime + 0.01;
    const to = from + (last ? 0.5 : 0.12);
    tone.type = 'square'; // carries over a compressor
    tone.frequency.value = last ? 660 : 990;
    volume.gain.setValueAtTime(0.25, from);
    volume.gain.setValueAtTime(0.25, to - 0.02);
    volume.gain.linearRampToValueAtTime(0, to); // no click
    tone.connect(volume).connect(sound.destination);
    tone.start(from);
    tone.stop(to);
  }

  /** One bell: `how` is 1 for sound, 2 for vibration, 4 for the end of something. */
  function strike(how) {
    wakeSound();
    if (how & 1 && sound) {
      beep(how & 4);
    }
    if (how & 2) {
      navigator.vibrate?.(how & 4 ? 400 : 60);
    }
  }

  app.shell.bench = (what, ms, how) => {
    if (what === 0) {
      keepAwake(ms > 0);
      return;
    }
    clearTimeout(bells[what]);
    if (ms === 0) {
      strike(how);
    } else if (ms > 0) {
      bells[what] = setTimeout(strike, ms, how);
    }
  };
}
