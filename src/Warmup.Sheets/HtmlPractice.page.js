// The page: its controls, its letters, and what is said of it all.
const score = readScore();
const { lines } = score;
const by = (id) => document.getElementById(id);
const cells = document.querySelectorAll(".rows .n");
const loops = document.querySelectorAll("button.loop");
const names = [...loops].map((button) => button.getAttribute("aria-label").replace("Loop line", "line"));
const letters = [...cells].map((cell) => cell.textContent);
const still = window.matchMedia("(prefers-reduced-motion: reduce)");
const idle = by("now").textContent;

// The ranges and boxes whose state is kept; those that this drill has no use for are not on the page.
const kept = ["guide", "drone", "beat", "letters", "sounds", "after-me", "count-in", "tempo"].map(by).filter(Boolean);
const usual = new Map(kept.map((control) => [control, control.type === "checkbox" ? control.checked : control.value]));

const choices = { loop: null, afterMe: false, sounds: "all", countIn: false, rate: 1, tonic: 0 };
const settings = makeSettings(score.title);

// How loud a part is, from 0 to 1: the slider's square, which the ear takes as even steps.
const volumeOf = (name) => by(name) ? (by(name).valueAsNumber / 100) ** 2 : 0;

const sound = makeSound(score, volumeOf);
const player = makePlayer(score, sound, choices, () => finish("The end."));
const picture = makePicture(by("picture"), score, letters, still);

const say = (text) => { by("status").textContent = text; };

// ---- what is shown ----

const pace = () => {
  const [from, to] = [lines[0].tempo, lines[lines.length - 1].tempo].map((each) => +(each * choices.rate).toFixed(1));
  return from === to ? `${from} ${score.beatName} a minute` : `${from} to ${to} ${score.beatName} a minute`;
};

const tonicText = () => score.tonics.get(choices.tonic);

const loopText = () => {
  if (!choices.loop) return "";
  const [from, to] = choices.loop;
  return from === to ? names[from] : `${names[from].replace("line", "lines")} to ${names[to].replace("line ", "")}`;
};

const showChoices = () => {
  by("tempo-says").textContent = `${by("tempo").value} %, ${pace()}`;
  by("tempo").setAttribute("aria-valuetext", `${by("tempo").value} percent, ${pace()}`);
  by("tonic").textContent = tonicText();
  for (const button of document.querySelectorAll("button.shift")) {
    button.disabled = !score.tonics.has(choices.tonic + Number(button.value));
  }
  loops.forEach((button, i) => button.setAttribute("aria-pressed", String(choices.loop !== null && choices.loop[0] <= i && i <= choices.loop[1])));
  by("loop-from").value = String(choices.loop?.[0] ?? "");
  by("loop-to").value = String(choices.loop?.[1] ?? "");
  by("loop-to").disabled = choices.loop === null;
  document.documentElement.style.setProperty("--letters", by("letters").valueAsNumber / 100);
};

let lit = null, litRow = null, litLine = null, frame = 0;

const mark = (cell) => {
  if (cell === lit) return;
  lit?.classList.remove("lit");
  cell?.classList.add("lit");
  lit = cell;
  const row = cell?.closest(".row") ?? null;
  if (row && row !== litRow) {
    litRow?.classList.remove("here");
    row.classList.add("here");
    row.scrollIntoView({ block: "nearest", behavior: still.matches ? "auto" : "smooth" });
    litRow = row;
  }
};

const markLine = (line) => {
  if (line === litLine) return;
  loops[litLine]?.classList.remove("here");
  loops[line]?.classList.add("here");
  litLine = line;
};

const light = () => {
  if (!player.isPlaying()) return;
  const moment = player.moment();
  mark(moment?.note ? cells[moment.note.cell] : null);
  markLine(moment ? moment.line : null);
  by("now").textContent = !moment ? "Count-in" : `${moment.isMine ? "Your turn" : "Now"}: ${names[moment.line]}`;
  if (moment) picture.show(moment);
  frame = requestAnimationFrame(light);
};

const showBeginning = () => {
  const way = makeWay(score, choices);
  picture.show({ time: way.pass(0).start, note: null, k: 0, way });
};

// ---- playing ----

let isStarting = false;

const finish = (text) => {
  if (player.isPlaying()) player.stop();
  cancelAnimationFrame(frame);
  mark(null);
  markLine(null);
  litRow?.classList.remove("here");
  litRow = null;
  by("now").textContent = idle;
  by("play").textContent = "Play";
  showBeginning();
  say(text);
};

const start = async () => {
  if (isStarting) return;
  isStarting = true;
  try {
    await sound.open();
    player.begin();
    by("play").textContent = "Stop";
    say(`Playing${choices.loop ? `, looping ${loopText()}` : ""}, ${pace()}.`);
    frame = requestAnimationFrame(light);
  } catch {
    say("This browser makes no sound here; the page can still be read and printed.");
  } finally {
    isStarting = false;
  }
};

const toggle = () => player.isPlaying() ? finish("Stopped.") : start();

const setLoop = (loop) => {
  choices.loop = loop;
  showChoices();
  say(loop ? `Looping ${loopText()}.` : "No loop.");
  if (!player.isPlaying()) showBeginning(); else if (loop) player.begin(); else player.replan(true);
};

// ---- the controls ----

const keep = () => {
  const all = Object.fromEntries(kept.map((control) => [control.id, control.type === "checkbox" ? control.checked : control.value]));
  const { tempo, ...others } = all;
  settings.keep(others, { tempo, tonic: choices.tonic });
};

// Takes over what the controls say; "replan" where it changes what is planned.
const readControls = () => {
  choices.rate = by("tempo").valueAsNumber / 100;
  choices.sounds = by("sounds").value;
  choices.afterMe = by("after-me")?.checked ?? false;
  choices.countIn = by("count-in")?.checked ?? false;
};

const setTonic = (semitones) => {
  if (!score.tonics.has(semitones)) return;
  choices.tonic = semitones;
  sound.setTonic(semitones);
};

const takeKept = () => {
  for (const control of kept) {
    const value = settings.all[control.id];
    if (control.type === "checkbox") {
      if (typeof value === "boolean") control.checked = value;
    } else if (typeof value === "string" && (control.type === "range" ? Number.isFinite(Number(value)) : Object.hasOwn(guides, value))) {
      control.value = value;
    }
  }
  setTonic(settings.all.tonic ?? 0);
};

const changed = () => {
  readControls();
  showChoices();
  keep();
};

by("play").addEventListener("click", toggle);
for (const name of Object.keys(levels)) by(name)?.addEventListener("input", () => { changed(); sound.setVolume(name); });
for (const id of ["tempo", "sounds"]) by(id).addEventListener("input", () => { changed(); player.replan(); });
by("letters").addEventListener("input", changed);
by("count-in")?.addEventListener("input", changed);
by("after-me")?.addEventListener("input", () => {
  changed();
  if (player.isPlaying()) player.replan(true); else showBeginning();
});
for (const button of document.querySelectorAll("button.shift")) {
  button.addEventListener("click", () => {
    setTonic(choices.tonic + Number(button.value));
    changed();
    say(`Tonic: ${tonicText()}.`);
  });
}
for (const select of [by("loop-from"), by("loop-to")]) {
  names.forEach((name, i) => select.append(new Option(name, String(i))));
  select.addEventListener("input", () => {
    const [from, to] = [by("loop-from").value, by("loop-to").value];
    if (from === "") setLoop(null); else setLoop(select.id === "loop-from" ? [+from, Math.max(+from, +to)] : [Math.min(+from, +to), +to]);
  });
}
loops.forEach((button, line) => button.addEventListener("click", (event) => {
  const { loop } = choices;
  if (event.shiftKey && loop) setLoop([Math.min(loop[0], line), Math.max(loop[1], line)]);
  else setLoop(loop && loop[0] === line && loop[1] === line ? null : [line, line]);
}));
by("reset").addEventListener("click", () => {
  for (const [control, value] of usual) if (control.type === "checkbox") control.checked = value; else control.value = value;
  setTonic(0);
  readControls();
  setLoop(null);
  for (const name of Object.keys(levels)) sound.setVolume(name);
  settings.clear();
  say("All is as at first.");
});
document.addEventListener("keydown", (event) => {
  if (event.key === " " && event.target === document.body) {
    event.preventDefault();
    toggle();
  } else if (event.key === "Escape" && player.isPlaying()) {
    finish("Stopped.");
  }
});
window.addEventListener("resize", () => { if (!player.isPlaying()) showBeginning(); });

takeKept();
by("player").hidden = by("choices").hidden = false;
readControls();
showChoices();
showBeginning();
