// Programs in (a JSON list of texts), what they do out: one list a program of {line, motion, torch, feed, units, from, to,
// centre} for a move (mm), {line, dwell, torch}, {line, torch} when the torch is switched, {line, height}, {line, end}.
// Reading, modes, places and arcs are the library's; feed, dwell and switching are read
// from the words that it has taken apart; the torch of a move is the library's own state.
const fs = require("fs");
const library = require("gcode-toolpath");
const Toolpath = library.default || library;

function interpret(program) {
  const done = [];
  let moves = [];
  let feed = null;
  let torch = "M5";
  const step = (modal, from, to, centre) =>
    moves.push({ motion: modal.motion, torch: modal.spindle, units: modal.units, plane: modal.plane, distance: modal.distance,
                 mode: modal.feedrate, from: { ...from }, to: { ...to }, centre: centre && { ...centre } });
  const path = new Toolpath({ addLine: (m, a, b) => step(m, a, b, null), addArcCurve: step });
  path.loadFromStringSync(program, ({ line, words }) => {
    const word = (letter) => words.filter((w) => w[0] === letter).map((w) => w[1]);
    if (word("F").length) feed = word("F")[0];
    for (const move of moves) done.push({ line, ...move, feed: move.units === "G20" ? feed * 25.4 : feed });
    moves = [];
    if (word("G").includes(4)) done.push({ line, dwell: word("P")[0], torch });
    const spindle = word("M").filter((m) => m >= 3 && m <= 5).map((m) => `M${m}`)[0];
    if (spindle && spindle !== torch) {
      torch = spindle;
      done.push({ line, switched: torch });
    }
    if (word("M").some((m) => m >= 60)) done.push({ line, other: word("M")[0], torch });
    if (word("M").some((m) => m === 2 || m === 30)) done.push({ line, end: true, torch });
  });
  return done;
}

process.stdout.write(JSON.stringify(JSON.parse(fs.readFileSync(0, "utf8")).map(interpret)));
