"use strict";

// Runs in a page before its own script. It writes down what the page asks of Web Audio, lets a test make the audio clock run faster, and
// listens to what reaches the loudspeakers.
(() => {
  const sounds = [];
  const errors = [];
  let listener = null, from = null, speed = null;
  addEventListener("error", (event) => errors.push(String(event.message)));
  addEventListener("unhandledrejection", (event) => errors.push(String(event.reason)));
  addEventListener("securitypolicyviolation", (event) => errors.push(`${event.violatedDirective}: ${event.blockedURI}`));

  // Each page begins with what its address says was kept before it, and with nothing else: what a browser itself keeps from one page of a file to the
  // next can come late or not at all.
  // A page of a server keeps what it keeps.
  try {
    if (window.location.protocol !== "file:") throw new Error("served");
    window.localStorage.clear();
    for (const [key, value] of Object.entries(JSON.parse(new URLSearchParams(window.location.search).get("kept") ?? "{}"))) window.localStorage.setItem(key, value);
  } catch {
    // Nothing is kept here.
  }

  // Without a loudspeaker some browsers leave the audio clock standing for ever; what a page asks for can be written down all the same.
  const resume = AudioContext.prototype.resume;
  const state = Object.getOwnPropertyDescriptor(BaseAudioContext.prototype, "state").get;
  AudioContext.prototype.resume = function () {
    return speed === null ? resume.call(this) : Promise.resolve();
  };
  Object.defineProperty(BaseAudioContext.prototype, "state", { get() { return speed === null ? state.call(this) : "running"; } });

  const targets = new WeakMap();
  const connect = AudioNode.prototype.connect;
  AudioNode.prototype.connect = function (target, ...rest) {
    targets.set(this, target);
    if (target === this.context.destination) {
      if (!listener) {
        listener = this.context.createAnalyser();
        listener.fftSize = 4096;
      }
      connect.call(this, listener);
    }
    return connect.call(this, target, ...rest);
  };

  const partOf = (node) => {
    for (let at = node; at; at = targets.get(at)) if (at.part) return at.part;
    return null;
  };

  const start = OscillatorNode.prototype.start;
  OscillatorNode.prototype.start = function (when) {
    this.record = { part: partOf(this), hz: this.frequency.value * 2 ** (this.detune.value / 1200), start: when, stop: null, slides: this.frequency.slides = [] };
    sounds.push(this.record);
    return start.call(this, when);
  };
  const stop = OscillatorNode.prototype.stop;
  OscillatorNode.prototype.stop = function (when) {
    this.record.stop = when;
    return stop.call(this, when);
  };

  const ramp = AudioParam.prototype.exponentialRampToValueAtTime;
  AudioParam.prototype.exponentialRampToValueAtTime = function (value, when) {
    this.slides?.push([this.from, value, when]);
    return ramp.call(this, value, when);
  };
  const set = AudioParam.prototype.setValueAtTime;
  AudioParam.prototype.setValueAtTime = function (value, when) {
    this.from = when;
    return set.call(this, value, when);
  };

  const clock = Object.getOwnPropertyDescriptor(BaseAudioContext.prototype, "currentTime").get;
  Object.defineProperty(BaseAudioContext.prototype, "currentTime", {
    get() {
      if (speed === null) return clock.call(this);
      from ??= performance.now();
      return (performance.now() - from) / 1000 * speed;
    },
  });

  globalThis.test = {
    hurry: (times) => { speed = times; },
    // What still sounds or will: a sound that was called off before it began is none.
    sounds: () => JSON.stringify(sounds.filter((sound) => sound.stop === null || sound.stop > sound.start)),
    forget: () => { sounds.length = 0; },
    errors: () => JSON.stringify(errors),
    peak: () => {
      const wave = new Float32Array(listener.fftSize);
      listener.getFloatTimeDomainData(wave);
      return wave.reduce((most, height) => Math.max(most, Math.abs(height)), 0);
    },
  };
})();
