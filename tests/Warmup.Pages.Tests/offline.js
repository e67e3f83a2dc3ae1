"use strict";

// Runs in a page before its own script, on top of record.js: the page plays into an audio clock that a test sets, and what it asked for is rendered
// afterwards, sample by sample. Instead of tones the oscillators give a steady 1, so that what is rendered is the page's own envelopes.
(() => {
  let clock = 0, context = null;
  const seconds = 6, rate = 48000;
  Object.defineProperty(OfflineAudioContext.prototype, "currentTime", { get: () => clock });
  Object.defineProperty(OfflineAudioContext.prototype, "state", { get: () => "running" });
  OfflineAudioContext.prototype.resume = () => Promise.resolve();
  window.AudioContext = function () {
    context = new OfflineAudioContext(1, seconds * rate, rate);
    return context;
  };
  const tones = OfflineAudioContext.prototype.createOscillator;
  globalThis.offline = {
    isSteady: true,
    at: (time) => { clock = time; },
    // The greatest step from one sample to the next in a stretch of time, and the greatest height.
    render: async (from, to) => {
      const wave = (await context.startRendering()).getChannelData(0).subarray(from * rate, to * rate);
      let step = 0, peak = 0;
      for (let i = 1; i < wave.length; i++) {
        step = Math.max(step, Math.abs(wave[i] - wave[i - 1]));
        peak = Math.max(peak, Math.abs(wave[i]));
      }
      globalThis.offline.samples = Array.from(wave, (height) => Math.round(height * 32768)).join(" ");
      return { step, peak, end: Math.abs(wave[wave.length - 1]), start: Math.abs(wave[0]) };
    },
  };
  BaseAudioContext.prototype.createOscillator = function () {
    if (!globalThis.offline.isSteady) return tones.call(this);
    const steady = this.createConstantSource();
    steady.setPeriodicWave = () => {};
    steady.frequency = { value: 0 };
    steady.detune = { value: 0, setTargetAtTime: () => {} };
    return steady;
  };
})();
