// Follows the way through the score on the audio clock, and plans sounds a little ahead. A tab in the background gets its turn only about once a second,
// so a little more than that is planned.
const makePlayer = (score, sound, choices, onEnd) => {
  const { lines, notes, beats } = score;
  const ahead = 1.6, turn = 200, lead = 0.08;
  let isPlaying = false, timer = 0, over = Infinity, way = null;
  let spans = [];       // passes on the audio clock: from "at" on the score goes from "start" at "rate"
  let nextNote = 0, nextBeat = 0, countedTo = 0;

  const clockOf = (time) => {
    const span = spans[spans.length - 1];
    return span.at + (time - span.start) / span.rate;
  };

  const spanAt = (now) => {
    let found = spans[0];
    for (const span of spans) if (span.at <= now) found = span;
    return found;
  };

  const seek = (time) => {
    nextNote = firstFrom(notes, time);
    nextBeat = firstFrom(beats, time);
  };

  const guideSounds = (note, pass) => pass.sings && guides[choices.sounds](note, pass, lines[note.line]);

  const plan = () => {
    const now = sound.now(), until = now + ahead;
    sound.playDrone(until);
    for (over = Infinity; ;) {
      const span = spans[spans.length - 1];
      const note = notes[nextNote], beat = beats[nextBeat];
      const sings = note && note.start < span.end ? note.start : Infinity;
      const clicks = beat && beat.start < span.end ? beat.start : Infinity;
      const next = Math.min(sings, clicks, span.end);
      if (clockOf(next) > until) break;
      if (next === span.end) {
        const pass = way.pass(span.k + 1);
        if (!pass) {
          over = clockOf(span.end);
          break;
        }
        spans.push({ ...pass, k: span.k + 1, at: clockOf(span.end), rate: span.rate });
        seek(pass.start);
      } else if (sings <= clicks) {
        if (guideSounds(note, span)) sound.sing(note, clockOf);
        nextNote++;
      } else {
        sound.click(clockOf(beat.start), beat.accent);
        nextBeat++;
      }
    }
    const current = spanAt(now);
    spans = spans.filter((span) => span.at >= current.at);
    sound.forget();
    if (now >= over) {
      stop();
      onEnd();
    }
  };

  // From the beginning of the way, with the count-in.
  const begin = () => {
    const now = sound.now(), at = now + lead;
    sound.startTake();
    if (!isPlaying) {
      sound.startDrone(at);
      timer = setInterval(plan, turn);
    }
    isPlaying = true;
    way = makeWay(score, choices);
    const pass = way.pass(0);
    const counted = choices.countIn ? score.countIn : 0;
    const akshara = 60 / lines[choices.loop?.[0] ?? 0].tempo / choices.rate;
    for (let beat = 0; beat < counted; beat++) sound.click(at + beat * akshara, 0);
    countedTo = at + counted * akshara;
    spans = [{ ...pass, k: 0, at: countedTo, rate: choices.rate }];
    seek(pass.start);
    plan();
  };

  // After a new tempo, a new guide or a new way: what has begun goes on to its new end, what was only planned is planned anew.
  const replan = (isNewWay = false) => {
    if (!isPlaying) return;
    const now = sound.now();
    if (now < countedTo) {
      begin();
      return;
    }
    const time = timeAt(now), span = spanAt(now);
    if (isNewWay) way = makeWay(score, choices);
    const k = isNewWay ? way.passAt(time) : span.k;
    spans = [{ ...(isNewWay ? way.pass(k) : span), k, at: now, start: time, rate: choices.rate }];
    const begun = sound.replan(clockOf);
    seek(time);
    while (begun.has(notes[nextNote])) nextNote++;
    plan();
  };

  const timeAt = (now) => {
    const span = spanAt(now);
    return span.start + Math.max(0, now - span.at) * span.rate;
  };

  const stop = () => {
    clearInterval(timer);
    sound.stop();
    isPlaying = false;
  };

  // What is heard now, after the delay of the loudspeakers: null while the count-in lasts.
  const moment = () => {
    const now = sound.now() - sound.latency();
    if (now < countedTo) return null;
    const span = spanAt(now), time = Math.min(timeAt(now), span.end);
    const note = notes[firstFrom(notes, time + 1e-6) - 1] ?? null;
    const line = Math.max(0, firstFrom(lines, time + 1e-6) - 1);
    const sounds = note && time < note.end && note.start >= way.pass(span.k).start - 1e-6 ? note : null;
    return { time, line, note: sounds, k: span.k, isMine: !span.sings || time >= lines[line].answer, way };
  };

  return { begin, replan, stop, moment, isPlaying: () => isPlaying };
};
