// The pitches as bars over time, which move under a fixed mark with the sound; for those who want less motion they turn like pages. It shows what
// stands in the score, also where the guide is silent.
const makePicture = (svg, score, letters, still) => {
  const { notes, lines } = score;
  const markAt = 0.2;                                  // where the mark stands, in widths
  const across = 480 / lines[0].tempo;                 // the seconds of a width: 8 aksharas of the first line
  const narrowest = 9;                                 // pixels; letters that stand closer would run into each other
  const pitches = notes.map((note) => Math.log2(note.hz));
  const low = pitches.reduce((a, b) => Math.min(a, b)), high = pitches.reduce((a, b) => Math.max(a, b));
  let drawn = null, lit = null;

  const make = (name, attributes, parent) => {
    const element = document.createElementNS(svg.namespaceURI, name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
    parent.append(element);
    return element;
  };

  const heightOf = (pitch, height) => height - 8 - (height - 32) * (high > low ? (pitch - low) / (high - low) : 0.5);

  // Draws what comes from a moment on, through as many passes as two widths hold.
  const draw = ({ k, time, way }) => {
    const { clientWidth: width, clientHeight: height } = svg;
    const scale = width / across;
    svg.replaceChildren();
    for (let octave = -3; octave <= 3; octave++) {
      const tonic = Math.log2(score.tonicHz) + octave;
      if (tonic < low - 0.01 || tonic > high + 0.01) continue;
      const y = heightOf(tonic, height);
      make("line", { class: "tonic", x1: 0, x2: width, y1: y, y2: y }, svg);
    }
    const moving = make("g", {}, svg);
    const bars = [];
    const begin = way.pass(k).start, until = time + 2 * across;
    let offset = -begin;
    for (let at = k, pass = way.pass(k); pass && pass.start + offset < until - begin; pass = way.pass(++at)) {
      const from = at === k ? Math.max(pass.start, time - across) : pass.start;
      for (let i = firstFrom(notes, from - across); i < notes.length && notes[i].start < pass.end; i++) {
        const note = notes[i];
        if (note.start < pass.start - 1e-6 || note.end < from) continue;
        const x = (note.start + offset) * scale, y = heightOf(pitches[i], height);
        const bar = make("line", { class: pass.sings ? "bar" : "bar mine", x1: x + 3, x2: Math.max(x + 3, (note.end + offset) * scale - 3), y1: y, y2: y }, moving);
        if ((note.end - note.start) * scale > narrowest) make("text", { x, y: y - 6 }, moving).textContent = letters[note.cell];
        bars.push({ bar, note, k: at });
      }
      offset += pass.end - (way.pass(at + 1)?.start ?? 0);
    }
    const x = width * markAt;
    if (!still.matches) make("line", { class: "mark", x1: x, x2: x, y1: 16, y2: height }, svg);
    drawn = { k, way, width, height, scale, begin, from: time - across, until, moving, bars };
  };

  const show = (moment) => {
    const { k, time, way, note } = moment;
    const isStale = !drawn || drawn.way !== way || drawn.k !== k || drawn.width !== svg.clientWidth || drawn.height !== svg.clientHeight
      || time < drawn.from || time + across > drawn.until;
    if (isStale) draw(moment);
    const since = (time - drawn.begin) * drawn.scale;
    const left = still.matches ? -Math.floor(since / drawn.width) * drawn.width : drawn.width * markAt - since;
    drawn.moving.setAttribute("transform", `translate(${left.toFixed(2)} 0)`);
    const bar = note && drawn.bars.find((each) => each.note === note && each.k === k)?.bar;
    if (bar === lit) return;
    lit?.classList.remove("sounding");
    bar?.classList.add("sounding");
    lit = bar ?? null;
  };

  return { show };
};
