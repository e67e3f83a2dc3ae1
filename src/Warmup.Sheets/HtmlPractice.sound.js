// What the page sounds with: the browser's own oscillators. "at", "end" and "now" are the audio clock's seconds. Levels, edges and spectra are the
// project's own settings.
const levels = { guide: 1, drone: 1, beat: 0.14 };

// How loud the guide is, in LKFS as Recommendation ITU-R BS.1770-5 (2023) measures it; the drone lies below it as the score says.
const loudness = -20;

// What the recommendation multiplies the power at a frequency by: the filters of its tables 1 and 2, which are for 48 kHz.
const weight = (hz) => {
  const w = 2 * Math.PI * Math.min(hz, 24000) / 48000;
  const squared = (a, b, c) => (a + b * Math.cos(w) + c * Math.cos(2 * w)) ** 2 + (b * Math.sin(w) + c * Math.sin(2 * w)) ** 2;
  return squared(1.53512485958697, -2.69169618940638, 1.19839281085285) / squared(1, -1.69065929318241, 0.73248077421585)
    * squared(1, -2, 1) / squared(1, -1.99004745483398, 0.99007225036621);
};

// The weighted power of a wave at a pitch, for a peak of 1, which browsers give a wave by themselves.
const powerOf = ({ amplitudes, peak }, hz) => amplitudes.reduce((sum, height, i) => sum + height * height / 2 * weight((i + 1) * hz), 0) / (peak * peak);

// The height at which a power of a peak of 1 has a loudness.
const heightFor = (power, lkfs) => power > 0 ? Math.min(0.5, Math.sqrt(10 ** ((lkfs + 0.691) / 10) / power)) : 0;

// The level at both ends of a note that swells, and how long a note that has slid lets go while the next one begins.
const soft = 0.25, letGo = 0.025;

// A change begins this much later than it is asked for, so that the browser has not yet played beyond it.
const soon = 0.01;

// A level that knows its own course, in straight lines between points [time, height]. Browsers do not agree on the value of a parameter that moves, and
// letting one go in the middle of a fade can drop it to 0: a click. So a new course starts from the height that is computed here.
const makeCourse = (param, height) => {
  let points = [[0, height]];
  param.value = height;
  param.setValueAtTime(height, 0);
  const heightAt = (time) => {
    const next = points.findIndex(([at]) => at > time);
    if (next <= 0) return next < 0 ? points[points.length - 1][1] : points[0][1];
    const [[t0, h0], [t1, h1]] = [points[next - 1], points[next]];
    return h0 + (h1 - h0) * (time - t0) / (t1 - t0);
  };
  // From a time on, and from the height it has then, the level goes through the points.
  const turn = (time, next) => {
    const from = heightAt(time);
    param.cancelScheduledValues(time);
    param.linearRampToValueAtTime(from, time);
    for (const [at, to] of next) param.linearRampToValueAtTime(to, at);
    points = [[time, from], ...next];
  };
  return { turn };
};

const makeSound = (score, volumeOf) => {
  const longestWait = 3000;
  let audio = null, parts = null, waves = null;
  let take = null;      // what sounds in time with the score: its guide and its clicks, each through a gain of its own, so that all end together
  let strings = null;   // the same for the drone, which keeps its own clock
  let cents = 0;        // how far the tonic is moved

  const waveOf = (amplitudes) => {
    let peak = 0;
    for (let n = 0; n < 512; n++) peak = Math.max(peak, Math.abs(amplitudes.reduce((sum, height, i) => sum + height * Math.sin(2 * Math.PI * (i + 1) * n / 512), 0)));
    return { amplitudes, peak, wave: audio.createPeriodicWave(new Float32Array(amplitudes.length + 1), new Float32Array([0, ...amplitudes])) };
  };

  const harmonics = (count, height) => Array.from({ length: count }, (_, i) => height(i + 1));

  // A sung vowel near an "a": a source that falls by 6 dB an octave through four resonances (centre and width in Hz).
  const vowel = (hz) => waveOf(harmonics(Math.max(1, Math.min(64, Math.floor(0.45 * audio.sampleRate / hz))), (h) => {
    const f = h * hz;
    return [[700, 140], [1150, 170], [2600, 260], [3400, 380]].reduce(
      (height, [centre, width]) => height * centre * centre / Math.hypot(centre * centre - f * f, width * f), 1 / h);
  }));

  const waveFor = (hz) => {
    const sung = hz * 2 ** (cents / 1200);
    if (!waves.vowels.has(sung)) {
      const made = vowel(sung);
      waves.vowels.set(sung, { ...made, height: heightFor(powerOf(made, sung), loudness) });
    }
    return waves.vowels.get(sung);
  };

  const open = async () => {
    if (!audio) {
      audio = new (window.AudioContext || window.webkitAudioContext)();
      parts = {};
      for (const name of Object.keys(levels)) {
        const node = audio.createGain();
        node.part = name;
        node.connect(audio.destination);
        parts[name] = { node, course: makeCourse(node.gain, volumeOf(name)) };
      }
      waves = {
        vowels: new Map(),
        body: waveOf(harmonics(48, (h) => Math.abs(Math.sin(Math.PI * h * 0.14)) / h ** 1.5)),
        shine: waveOf(harmonics(48, (h) => h < 5 ? 0 : 1 / h)),
        reed: waveOf(harmonics(48, (h) => h ** -1.3)),
      };
    }
    await Promise.race([audio.resume(), new Promise((done) => setTimeout(done, longestWait))]);
    if (audio.state !== "running") throw new Error("no sound");
  };

  const now = () => audio.currentTime;

  // ---- groups that end together ----

  const makeGroup = (...names) => {
    const outs = {};
    for (const name of names) {
      const node = audio.createGain();
      node.connect(parts[name].node);
      outs[name] = { node, course: makeCourse(node.gain, 1) };
    }
    return { outs, sounds: [] };
  };

  const fade = (group, seconds) => {
    const from = now() + soon, end = from + seconds;
    for (const { course } of Object.values(group.outs)) course.turn(from, [[end, 0]]);
    for (const sound of group.sounds) {
      if (sound.at > now()) cancel(sound); else sound.source.stop(Math.min(end, sound.end));
    }
  };

  // A sound that has not begun is stopped where it would begin, and so never heard.
  const cancel = (sound) => sound.source.stop(sound.at);

  const forget = (group) => { group.sounds = group.sounds.filter((sound) => sound.end > now() - 1); };

  // ---- voices ----

  const voice = (group, part, hz, wave, at, end) => {
    const source = audio.createOscillator(), gain = audio.createGain();
    if (wave) source.setPeriodicWave(wave.wave);
    source.frequency.value = hz;
    gain.gain.value = 0;
    source.connect(gain);
    gain.connect(group.outs[part].node);
    source.onended = () => { source.disconnect(); gain.disconnect(); };
    const sound = { source, gain: gain.gain, at, end, isTuned: part !== "beat" };
    if (sound.isTuned) source.detune.value = cents;
    source.start(at);
    if (end < Infinity) source.stop(end);
    group.sounds.push(sound);
    return sound;
  };

  // The course of a note's level from a time on: up, level, and down again at its end. Edges are a quarter of what is left at most. A note that swells
  // is loudest in its middle; one that slides lets go while the next begins.
  const shape = ({ note, level }, from, middle, end) => {
    const edge = (end - from) / 4, rise = from + Math.min(0.025, edge), fall = note.slide ? end : end - Math.min(0.035, edge);
    const height = (time) => level * (note.swells ? soft + (1 - soft) * Math.max(0, 1 - Math.abs(time - middle) / (end - middle)) : 1);
    const top = note.swells && rise < middle && middle < fall ? [[middle, height(middle)]] : [];
    return [[rise, height(rise)], ...top, [fall, height(fall)], [note.slide ? end + letGo : end, 0]];
  };

  // Evenly in cents from the middle of a note to the next pitch.
  const slide = (sound, from, middle, end) => {
    const { hz, slide: to } = sound.note, { frequency } = sound.source;
    const way = sound.slid ? Math.min(1, Math.max(0, (from - sound.slid.middle) / (sound.slid.end - sound.slid.middle))) : 0;
    frequency.cancelScheduledValues(from);
    frequency.setValueAtTime(hz * (to / hz) ** way, way > 0 ? from : Math.max(from, middle));
    frequency.exponentialRampToValueAtTime(to, end);
    sound.slid = { middle, end };
  };

  const sing = (note, clockOf) => {
    const [at, middle, end] = [note.start, note.middle, note.end].map(clockOf);
    const wave = waveFor(Math.max(note.hz, note.slide || 0));
    const sound = voice(take, "guide", note.hz, wave, at, note.slide ? end + letGo : end);
    sound.note = note;
    sound.level = levels.guide * wave.height;
    sound.course = makeCourse(sound.gain, 0);
    sound.course.turn(at, shape(sound, at, middle, end));
    if (note.slide) slide(sound, at, middle, end);
  };

  const click = (at, accent) => {
    const sound = voice(take, "beat", [900, 1200, 1600][accent], null, at, at + 0.03);
    makeCourse(sound.gain, 0).turn(at, [[at + 0.012, levels.beat * [0.5, 0.7, 1][accent]], [at + 0.03, 0]]);
  };

  // A plucked string: its body and its shine, each with its share of the height, its rise and the time in which it falls to 1/e.
  const stringParts = () => [[waves.body, 0.75, 0.012, 3], [waves.shine, 0.25, 0.2, 1.2]];

  // The height of a string or a reed at which the whole drone is as loud as it shall be. A string's power is its mean over a cycle.
  const droneHeight = () => {
    if (waves.drone) return waves.drone;
    const { held, hz, cycle, below } = score.drone;
    const mean = (fall) => fall / (2 * cycle) * (1 - Math.exp(-2 * cycle / fall));
    const power = held
      ? [...new Set(hz)].reduce((sum, each) => sum + powerOf(waves.reed, each), 0)
      : hz.reduce((sum, each) => sum + stringParts().reduce((part, [wave, share, , fall]) => part + share * share * powerOf(wave, each) * mean(fall), 0), 0);
    waves.drone = levels.drone * heightFor(power, loudness - below);
    return waves.drone;
  };

  const pluck = (hz, at, length) => {
    for (const [wave, level, rise, fall] of stringParts()) {
      const { gain } = voice(strings, "drone", hz, wave, at, at + length);
      const top = Math.min(rise, length / 4), damp = Math.min(0.06, length / 4);
      gain.setValueAtTime(0, at);
      gain.linearRampToValueAtTime(droneHeight() * level, at + top);
      gain.setTargetAtTime(0, at + top, fall);
      gain.setTargetAtTime(0, at + length - damp, damp / 6);
    }
  };

  const blow = (hz, at, height) => {
    const { gain } = voice(strings, "drone", hz, waves.reed, at, Infinity);
    gain.setValueAtTime(0, at);
    gain.linearRampToValueAtTime(height, at + 0.5);
  };

  // ---- the drone's own time ----

  let droneAt = 0, nextStroke = 0;

  const startDrone = (at) => {
    droneAt = at;
    nextStroke = 0;
    strings = makeGroup("drone");
  };

  // Plans the drone's strokes up to a time.
  const playDrone = (until) => {
    if (!score.drone) return;
    const { held, hz, stroke, cycle } = score.drone;
    if (held) {
      const reeds = [...new Set(hz)];
      if (nextStroke++ === 0) for (const each of reeds) blow(each, droneAt, droneHeight());
      return;
    }
    for (;;) {
      const string = nextStroke % hz.length;
      const at = droneAt + Math.floor(nextStroke / hz.length) * cycle + string * stroke;
      if (at > until) return;
      pluck(hz[string], at, cycle);
      nextStroke++;
    }
  };

  // ---- changes while it sounds ----

  // A new take: what sounds of the one before fades.
  const startTake = () => {
    if (take) fade(take, 0.03);
    take = makeGroup("guide", "beat");
  };

  // What was planned and has not begun is taken back; a note that has begun goes on to a new end. Gives the notes that have begun.
  const replan = (clockOf) => {
    const at = now();
    const begun = take.sounds.filter((sound) => sound.at <= at);
    for (const sound of take.sounds) if (sound.at > at) cancel(sound);
    take.sounds = begun;
    const sung = begun.filter((sound) => sound.note && sound.end > at);
    for (const sound of sung) {
      const end = Math.max(clockOf(sound.note.end), at + 0.001), middle = clockOf(sound.note.middle);
      const from = Math.min(at + soon, (at + end) / 2);
      sound.end = sound.note.slide ? end + letGo : end;
      sound.course.turn(from, shape(sound, from, middle, end));
      if (sound.note.slide) slide(sound, from, middle, end);
      sound.source.stop(sound.end);
    }
    return new Set(sung.map((sound) => sound.note));
  };

  const stop = () => {
    fade(take, 0.03);
    fade(strings, 0.4);
    take = strings = null;
  };

  const setVolume = (name) => parts?.[name].course.turn(now() + soon, [[now() + soon + 0.03, volumeOf(name)]]);

  // Everything that has a pitch goes to the moved tonic at once, what is planned included.
  const setTonic = (semitones) => {
    cents = 100 * semitones;
    for (const group of [take, strings]) {
      for (const sound of group?.sounds ?? []) if (sound.isTuned) sound.source.detune.setTargetAtTime(cents, now(), 0.015);
    }
  };

  return {
    open, now, sing, click, startDrone, playDrone, startTake, replan, stop, setVolume, setTonic,
    forget: () => { forget(take); forget(strings); },
    latency: () => audio.outputLatency || 0,
  };
};
