"use strict";

// Plays the score that stands in this page: guide tone, drone and beat from the browser's own oscillators. Times of the score are in
// seconds at the written tempo; "now" and "at" are the audio clock's seconds. Levels, edges and spectra are the project's own settings.
(() => {
  const score = JSON.parse(document.getElementById("score").textContent);
  const lines = score.lines.map(([start, end, answer, tempo]) => ({ start, end, answer, tempo }));
  const notes = score.notes.map(([hz, start, end, cell, line]) => ({ hz, start, end, cell, line }));
  const beats = score.beats.map(([start, accent]) => ({ start, accent }));
  const cells = document.querySelectorAll(".rows .n");
  const loops = document.querySelectorAll("button.loop");
  const by = (id) => document.getElementById(id);
  const play = by("play"), tempo = by("tempo");
  const still = window.matchMedia("(prefers-reduced-motion: reduce)");

  const idle = by("now").textContent;

  // A tab in the background gets its turn only about once a second, so a little more than that is planned ahead.
  const ahead = 1.6, turn = 200, lead = 0.08;
  const levels = { guide: 0.34, drone: 0.4, beat: 0.14 };

  let audio = null, parts = null, waves = null, timer = 0, frame = 0;
  let playing = false, starting = false, loop = null, rate = 1;
  let spans = [];       // where the score's time lies on the audio clock: from "at" on, the score goes from "start" at "rate"
  let sung = [];        // planned notes, for the light and for changes of tempo
  let clicked = [];     // planned clicks
  let strings = [];     // planned strokes of the drone
  let nextNote = 0, nextBeat = 0, nextStroke = 0, droneAt = 0, over = Infinity;
  let lit = null, litLine = null;

  // ---- time ----

  const clockOf = (time) => {
    const span = spans[spans.length - 1];
    return span.at + (time - span.start) / span.rate;
  };

  const spanAt = (now) => {
    let found = spans[0];
    for (const span of spans) if (span.at <= now) found = span;
    return found;
  };

  const timeAt = (now) => {
    const span = spanAt(now);
    return span.start + Math.max(0, now - span.at) * span.rate;
  };

  const firstFrom = (list, time) => {
    let low = 0, high = list.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (list[middle].start < time) low = middle + 1; else high = middle;
    }
    return low;
  };

  const seek = (time) => {
    nextNote = firstFrom(notes, time);
    nextBeat = firstFrom(beats, time);
  };

  // ---- sound ----

  const waveOf = (amplitudes) => audio.createPeriodicWave(new Float32Array(amplitudes.length + 1), new Float32Array([0, ...amplitudes]));

  const harmonics = (count, height) => Array.from({ length: count }, (_, i) => height(i + 1));

  // A sung vowel near an "a": a source that falls by 6 dB an octave through four resonances (centre and width in Hz).
  const vowel = (hz) => waveOf(harmonics(Math.max(1, Math.min(64, Math.floor(0.45 * audio.sampleRate / hz))), (h) => {
    const f = h * hz;
    return [[700, 140], [1150, 170], [2600, 260], [3400, 380]].reduce(
      (height, [centre, width]) => height * centre * centre / Math.hypot(centre * centre - f * f, width * f), 1 / h);
  }));

  const waveFor = (hz) => {
    if (!waves.vowels.has(hz)) waves.vowels.set(hz, vowel(hz));
    return waves.vowels.get(hz);
  };

  const open = () => {
    audio = new (window.AudioContext || window.webkitAudioContext)();
    const out = audio.createGain();
    out.connect(audio.destination);
    parts = {};
    for (const name of Object.keys(levels)) {
      parts[name] = audio.createGain();
      parts[name].part = name;
      parts[name].gain.value = isOn(name) ? 1 : 0;
      parts[name].connect(out);
    }
    waves = {
      vowels: new Map(),
      body: waveOf(harmonics(48, (h) => Math.abs(Math.sin(Math.PI * h * 0.14)) / h ** 1.5)),
      shine: waveOf(harmonics(48, (h) => h < 5 ? 0 : 1 / h)),
      reed: waveOf(harmonics(48, (h) => h ** -1.3)),
    };
  };

  const voice = (part, hz, wave, at) => {
    const source = audio.createOscillator();
    const gain = audio.createGain();
    if (wave) source.setPeriodicWave(wave);
    source.frequency.value = hz;
    gain.gain.value = 0;
    source.connect(gain);
    gain.connect(parts[part]);
    source.onended = () => { source.disconnect(); gain.disconnect(); };
    source.start(at);
    return { source, gain: gain.gain, at };
  };

  const hush = (sound, now, seconds) => {
    if (sound.at > now) {
      sound.gain.cancelScheduledValues(0);
      sound.source.disconnect();
      sound.source.stop(sound.at);
      return;
    }
    holdLevel(sound.gain, now);
    sound.gain.linearRampToValueAtTime(0, now + seconds);
    sound.source.stop(now + seconds);
  };

  const holdLevel = (gain, now) => {
    if (gain.cancelAndHoldAtTime) {
      gain.cancelAndHoldAtTime(now);
    } else {
      const level = gain.value;
      gain.cancelScheduledValues(now);
      gain.setValueAtTime(level, now);
    }
  };

  const sing = (note) => {
    const at = clockOf(note.start), end = clockOf(note.end);
    const sound = voice("guide", note.hz, waveFor(note.hz), at);
    const edge = (end - at) / 4;
    sound.gain.setValueAtTime(0, at);
    sound.gain.linearRampToValueAtTime(levels.guide, at + Math.min(0.025, edge));
    letGo(sound, end, edge);
    sung.push(Object.assign(sound, { note }));
  };

  const letGo = (sound, end, edge) => {
    sound.gain.setValueAtTime(levels.guide, end - Math.min(0.035, edge));
    sound.gain.linearRampToValueAtTime(0, end);
    sound.source.stop(end);
    sound.end = end;
  };

  const click = (at, accent) => {
    const sound = voice("beat", [900, 1200, 1600][accent], null, at);
    sound.gain.setValueAtTime(0, at);
    sound.gain.linearRampToValueAtTime(levels.beat * [0.5, 0.7, 1][accent], at + 0.012);
    sound.gain.linearRampToValueAtTime(0, at + 0.03);
    sound.end = at + 0.03;
    sound.source.stop(sound.end);
    clicked.push(sound);
  };

  // How much of its full height a string adds when all ring: the earlier ones have faded.
  const share = () => {
    const { hz, stroke, cycle } = score.drone;
    return 1 / Math.max(...hz.map((_, plucked) => hz.reduce(
      (sum, __, i) => sum + Math.exp(-((plucked - i) * stroke + (i > plucked ? cycle : 0)) / 3), 0)));
  };

  const pluck = (hz, at, length) => {
    for (const [wave, level, rise, fade] of [[waves.body, 0.75, 0.012, 3], [waves.shine, 0.25, 0.2, 1.2]]) {
      const sound = voice("drone", hz, wave, at);
      const top = Math.min(rise, length / 4), damp = Math.min(0.06, length / 4);
      sound.gain.setValueAtTime(0, at);
      sound.gain.linearRampToValueAtTime(levels.drone * share() * level, at + top);
      sound.gain.setTargetAtTime(0, at + top, fade);
      sound.gain.setTargetAtTime(0, at + length - damp, damp / 6);
      sound.end = at + length;
      sound.source.stop(sound.end);
      strings.push(sound);
    }
  };

  // The drone keeps its own clock: tempo, loops and jumps leave it alone.
  const playDrone = (until) => {
    if (!score.drone) return;
    const { held, hz, stroke, cycle } = score.drone;
    if (held) {
      const reeds = [...new Set(hz)];
      if (nextStroke++ > 0) return;
      for (const each of reeds) {
        const sound = voice("drone", each, waves.reed, droneAt);
        sound.gain.setValueAtTime(0, droneAt);
        sound.gain.linearRampToValueAtTime(levels.drone / reeds.length, droneAt + 0.5);
        strings.push(sound);
      }
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

  // ---- the score in time ----

  const plan = () => {
    const now = audio.currentTime, until = now + ahead;
    const end = loop === null ? score.seconds : lines[loop].end;
    playDrone(until);
    for (over = Infinity; ;) {
      const note = notes[nextNote], beat = beats[nextBeat];
      const sings = note && note.start < end ? note.start : Infinity;
      const clicks = beat && beat.start < end ? beat.start : Infinity;
      const next = Math.min(sings, clicks, end);
      if (clockOf(next) > until) break;
      if (next === end) {
        if (loop === null) {
          over = clockOf(end);
          break;
        }
        spans.push({ at: clockOf(end), start: lines[loop].start, rate });
        seek(lines[loop].start);
      } else if (sings <= clicks) {
        sing(note);
        nextNote++;
      } else {
        click(clockOf(beat.start), beat.accent);
        nextBeat++;
      }
    }
    const current = spanAt(now);
    spans = spans.filter((span) => span.at >= current.at);
    sung = sung.filter((sound) => sound.end > now - 1);
    clicked = clicked.filter((sound) => sound.end > now);
    strings = strings.filter((sound) => !(sound.end <= now));
    if (now >= over) finish("The end.");
  };

  const begin = () => {
    const now = audio.currentTime;
    quieten(now);
    const line = lines[loop ?? 0];
    const start = loop === null ? 0 : line.start;
    const counted = isOn("count-in") && by("count-in") ? score.countIn : 0;
    const akshara = 60 / line.tempo / rate;
    const at = now + lead;
    if (!playing) droneAt = at;
    playing = true;
    for (let beat = 0; beat < counted; beat++) click(at + beat * akshara, 0);
    spans = [{ at: at + counted * akshara, start, rate }];
    seek(start);
    plan();
  };

  const quieten = (now) => {
    for (const sound of [...sung, ...clicked]) if (sound.end > now) hush(sound, now, 0.03);
    sung = [];
    clicked = [];
  };

  // A new tempo: what has begun goes on to its new end, what was only planned is planned anew.
  const retime = () => {
    if (!playing) return;
    const now = audio.currentTime;
    if (now < spans[0].at) {
      begin();
      return;
    }
    const time = timeAt(now);
    spans = [{ at: now, start: time, rate }];
    const begun = sung.filter((sound) => sound.at <= now);
    for (const sound of [...sung, ...clicked]) if (sound.at > now) hush(sound, now, 0);
    for (const sound of begun) {
      if (sound.end <= now) continue;
      holdLevel(sound.gain, now);
      const end = clockOf(sound.note.end);
      sound.gain.linearRampToValueAtTime(levels.guide, now + Math.min(0.025, (end - now) / 4));
      letGo(sound, end, (end - now) / 4);
    }
    sung = begun;
    clicked = clicked.filter((sound) => sound.at <= now);
    seek(time);
    while (nextNote < notes.length && begun.some((sound) => sound.end > now && sound.note === notes[nextNote])) nextNote++;
    plan();
  };

  // ---- the page ----

  const isOn = (name) => by(name)?.checked ?? true;

  const say = (text) => { by("status").textContent = text; };

  const paces = lines.map((line) => line.tempo);

  const pace = () => {
    const [from, to] = [paces[0], paces[paces.length - 1]].map((each) => +(each * rate).toFixed(1));
    return from === to ? `${from} aksharas a minute` : `${from} to ${to} aksharas a minute`;
  };

  const showTempo = () => {
    by("tempo-says").textContent = `${tempo.value} %, ${pace()}`;
    tempo.setAttribute("aria-valuetext", `${tempo.value} percent, ${pace()}`);
  };

  const nameOf = (line) => loops[line].getAttribute("aria-label").replace("Loop line", "line");

  const light = () => {
    if (!playing) return;
    const now = audio.currentTime - (audio.outputLatency || 0);
    const sounding = sung.find((sound) => sound.at <= now && now < sound.end);
    mark(sounding ? cells[sounding.note.cell] : null);
    const time = timeAt(now);
    const line = now < spans[0].at ? null : sounding?.note.line ?? lines.findIndex((each) => each.start <= time && time < each.end);
    const here = line === null || line < 0 ? null : line;
    markLine(here);
    by("now").textContent = now < spans[0].at ? "Count-in" : here === null ? "" : time >= lines[here].answer ? `Your answer to ${nameOf(here)}` : `Now: ${nameOf(here)}`;
    frame = requestAnimationFrame(light);
  };

  const mark = (cell) => {
    if (cell === lit) return;
    lit?.classList.remove("lit");
    cell?.classList.add("lit");
    lit = cell;
  };

  const markLine = (line) => {
    if (line === litLine) return;
    if (litLine !== null) by(`line-${litLine}`).classList.remove("here");
    litLine = line;
    if (line === null) return;
    by(`line-${line}`).classList.add("here");
    by(`line-${line}`).scrollIntoView({ block: "nearest", behavior: still.matches ? "auto" : "smooth" });
  };

  const finish = (text) => {
    const now = audio.currentTime;
    clearInterval(timer);
    cancelAnimationFrame(frame);
    quieten(now);
    for (const sound of strings) hush(sound, now, 0.4);
    strings = [];
    nextStroke = 0;
    playing = false;
    mark(null);
    markLine(null);
    by("now").textContent = idle;
    play.textContent = "Play";
    say(text);
  };

  const start = async () => {
    if (starting) return;
    starting = true;
    try {
      if (!audio) open();
      await audio.resume();
      begin();
      timer = setInterval(plan, turn);
      play.textContent = "Stop";
      say(`Playing${loop === null ? "" : `, looping ${nameOf(loop)}`}, ${pace()}.`);
      frame = requestAnimationFrame(light);
    } catch {
      say("This browser makes no sound here; the page can still be read and printed.");
    } finally {
      starting = false;
    }
  };

  const toggle = () => playing ? finish("Stopped.") : start();

  const setLoop = (line) => {
    loop = loop === line ? null : line;
    loops.forEach((button, i) => button.setAttribute("aria-pressed", String(i === loop)));
    say(loop === null ? "No loop." : `Looping ${nameOf(loop)}.`);
    if (!playing) return;
    if (loop !== null) {
      begin();
    } else {
      retime();
    }
  };

  play.addEventListener("click", toggle);
  tempo.addEventListener("input", () => {
    rate = tempo.valueAsNumber / 100;
    showTempo();
    retime();
  });
  loops.forEach((button, line) => button.addEventListener("click", () => setLoop(line)));
  for (const name of Object.keys(levels)) {
    by(name)?.addEventListener("change", () => {
      if (!audio) return;
      const gain = parts[name].gain, now = audio.currentTime;
      holdLevel(gain, now);
      gain.linearRampToValueAtTime(isOn(name) ? 1 : 0, now + 0.03);
    });
  }
  document.addEventListener("keydown", (event) => {
    if (event.key === " " && event.target === document.body) {
      event.preventDefault();
      toggle();
    } else if (event.key === "Escape" && playing) {
      finish("Stopped.");
    }
  });
  by("player").hidden = false;
  showTempo();
})();
