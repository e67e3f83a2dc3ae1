// Records from the microphone into a WAV file: one channel of 16 bits at the browser's own rate. What the browser does to speech (echo, noise, gain) is
// turned off, since it bends pitches. "ids" name the controls, "words" say what is shown; "taken" gets the file. The take stays in the page.
const makeRecorder = (ids, words, taken) => {
  const longest = 30 * 60, longestWait = 3000, block = 4096;
  let audio = null, stream = null, node = null, parts = [], frames = 0, peak = 0, rate = 0, address = null;

  const at = (name) => document.getElementById(ids[name]);
  const clock = () => `${Math.floor(frames / rate / 60)}:${String(Math.floor(frames / rate) % 60).padStart(2, "0")}`;
  const show = (text) => { at("says").textContent = text; };

  // A file of samples that are turned into bytes already; of several channels one sample each in turn.
  const fileOf = (bytes, count, samplesPerSecond, channels) => {
    const view = new DataView(new ArrayBuffer(44)), size = count * channels * 2;
    const letters = (offset, text) => [...text].forEach((letter, i) => view.setUint8(offset + i, letter.charCodeAt(0)));
    const numbers = (...all) => all.forEach(([offset, length, value]) => length === 4 ? view.setUint32(offset, value, true) : view.setUint16(offset, value, true));
    letters(0, "RIFF");
    letters(8, "WAVEfmt ");
    letters(36, "data");
    numbers([4, 4, 36 + size], [16, 4, 16], [20, 2, 1], [22, 2, channels], [24, 4, samplesPerSecond], [28, 4, samplesPerSecond * channels * 2], [32, 2, channels * 2], [34, 2, 16], [40, 4, size]);
    return new Blob([view.buffer, ...bytes], { type: "audio/wav" });
  };

  // Samples are little-endian in the file, whatever the machine.
  const samplesOf = (wave) => {
    const view = new DataView(new ArrayBuffer(wave.length * 2));
    wave.forEach((height, i) => view.setInt16(i * 2, Math.round(Math.max(-1, Math.min(1, height)) * 32767), true));
    return view.buffer;
  };

  const hear = ({ inputBuffer }) => {
    const wave = inputBuffer.getChannelData(0), height = wave.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
    parts.push(samplesOf(wave));
    frames += wave.length;
    peak = Math.max(peak, height);
    at("level").value = height;
    show(clock());
    if (frames >= longest * rate) end();
  };

  const letGo = () => {
    node?.disconnect();
    stream?.getTracks().forEach((track) => track.stop());
    audio?.close();
    audio = stream = node = null;
    at("level").value = 0;
    at("button").textContent = words.record;
  };

  const begin = async () => {
    if (!navigator.mediaDevices) throw new Error(words.none);
    try {
      stream = await navigator.mediaDevices.getUserMedia({ audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false } });
    } catch {
      throw new Error(words.refused);
    }
    audio = new (window.AudioContext || window.webkitAudioContext)();
    await Promise.race([audio.resume(), new Promise((done) => setTimeout(done, longestWait))]);
    if (audio.state !== "running") throw new Error(words.none);
    parts = [];
    frames = peak = 0;
    rate = audio.sampleRate;

    // The newer worklet loads its code from an address, which a page in one file does not have.
    node = audio.createScriptProcessor(block, 1, 1);
    node.onaudioprocess = hear;
    audio.createMediaStreamSource(stream).connect(node);
    node.connect(audio.destination);
    at("button").textContent = words.stop;
    show(clock());
  };

  const end = () => {
    letGo();
    take(fileOf(parts, frames, rate, 1));
    show(peak < 0.002 ? words.silent : clock());
  };

  // A take, recorded or from a file, to hear again and to save.
  const take = (file) => {
    if (address) URL.revokeObjectURL(address);
    address = URL.createObjectURL(file);
    at("sound").src = at("save").href = address;
    at("taken").hidden = false;
    taken(file);
  };

  at("button").addEventListener("click", async () => {
    if (node) {
      end();
      return;
    }
    at("button").disabled = true;
    try {
      await begin();
    } catch (problem) {
      letGo();
      show(problem.message);
    } finally {
      at("button").disabled = false;
    }
  });

  // A file of sound that the browser has decoded.
  const wav = (channels, samplesPerSecond) => {
    const wave = new Float32Array(channels.length * channels[0].length);
    channels.forEach((channel, c) => channel.forEach((height, i) => { wave[i * channels.length + c] = height; }));
    return fileOf([samplesOf(wave)], channels[0].length, samplesPerSecond, channels.length);
  };

  return { take, wav };
};
