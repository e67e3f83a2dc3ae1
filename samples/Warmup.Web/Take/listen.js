// Records a take of the drill on the page, or takes one from a file, and shows what was sung. The take stays in this page and goes to the page's own
// program only.
(() => {
  "use strict";
  const section = document.getElementById("take");
  const words = section.dataset;
  const says = document.getElementById("recorded");
  const report = document.getElementById("report");
  const again = document.getElementById("hear");
  const most = Number(words.most);
  let take = null;

  async function hear() {
    if (!take) return;
    if (take.size > most) { says.textContent = words.large; return; }
    const drill = document.querySelector(".files a[href^='/drill.html']");
    if (!drill) { says.textContent = words.nodrill; return; }
    again.disabled = true;
    report.setAttribute("aria-busy", "true");
    says.textContent = words.listening;
    try {
      const answer = await fetch(`/listen${drill.search}`, { method: "POST", headers: { "content-type": take.type || "audio/wav" }, body: take });
      if (!(answer.headers.get("content-type") || "").startsWith("text/html")) throw new Error((await answer.json()).detail);
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      report.replaceChildren(...page.getElementById("report").childNodes);
      says.textContent = "";
      document.getElementById("report-heading").focus();
    } catch (problem) {
      says.textContent = problem instanceof TypeError ? document.getElementById("status").dataset.problem : problem.message;
    } finally {
      again.disabled = false;
      report.removeAttribute("aria-busy");
    }
  }

  const recorder = makeRecorder(
    { button: "record", says: "recorded", level: "level", taken: "taken", sound: "take-sound", save: "save" },
    { record: words.record, stop: words.stop, none: words.none, refused: words.refused, silent: words.silent },
    file => { take = file; hear(); });

  again.addEventListener("click", hear);

  // A recording from a file; what the program cannot read, such as what phones record, the browser turns into WAV first.
  document.getElementById("take-from").addEventListener("change", async event => {
    const file = event.target.files[0];
    event.target.value = "";
    if (!file) return;
    const head = new Uint8Array(await file.slice(0, 12).arrayBuffer());
    const letters = String.fromCharCode(...head);
    if (/^(RIFF|RF64|OggS|ID3|\xff[\xe0-\xff])/.test(letters)) { recorder.take(new Blob([file], { type: "audio/wav" })); return; }
    try {
      const audio = new OfflineAudioContext(1, 1, 48000);
      const sound = await audio.decodeAudioData(await file.arrayBuffer());
      recorder.take(recorder.wav(Array.from({ length: Math.min(2, sound.numberOfChannels) }, (_, c) => sound.getChannelData(c)), sound.sampleRate));
    } catch {
      says.textContent = words.unknown;
    }
  });
})();
