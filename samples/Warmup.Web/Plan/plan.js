// Marks days of a plan as sung. The marks stay in this browser, and leave it as a log file only when that is asked for.
(() => {
  "use strict";
  const form = document.getElementById("choices");
  const goOn = document.getElementById("go-on");
  const start = form.elements.start;
  const storeName = "warmup.sung";

  // By date: the log's lines without their last field, the teacher's tick, which stands beside them.
  const store = {
    read() { try { return JSON.parse(localStorage.getItem(storeName)) || {}; } catch { return {}; } },
    write() { try { localStorage.setItem(storeName, JSON.stringify(marks)); } catch { /* then they last as long as the page */ } },
  };
  let marks = store.read();

  const log = before => Object.keys(marks).sort().filter(date => date < before)
    .flatMap(date => marks[date].lines.split("\n").map(line => `${line}\t${marks[date].ticked ? "x" : "-"}`));

  // Lines of a file that was chosen; they stay as long as the page.
  let fromFile = [];

  // The last lines are enough: a plan looks at what was sung lately and at the tempi that were ticked.
  const takeLog = () => { form.elements.log.value = [...fromFile, ...(goOn.checked ? log(start.value) : [])].slice(-300).join("\n"); };

  function show() {
    const days = [...document.querySelectorAll("td[data-date]")];
    const words = document.querySelector("table[data-mark]")?.dataset;
    for (const day of days) {
      const mine = marks[day.dataset.date], mark = day.querySelector(".mark") || document.createElement("span");
      if (!mark.isConnected) day.querySelector(".time").after(mark);
      mark.className = "mark";
      mark.hidden = !mine;
      mark.textContent = !mine ? "" : mine.lines !== day.dataset.log ? words.other : mine.ticked ? words.ticked : words.mark;
    }
    const count = document.getElementById("sung-count");
    if (count) count.textContent = count.dataset.count.replace("{0}", days.filter(day => marks[day.dataset.date]).length).replace("{1}", days.length);
    const sung = document.getElementById("sung");
    if (!sung) return;
    const mine = marks[sung.dataset.date], ticked = document.getElementById("ticked");
    sung.checked = Boolean(mine);
    ticked.checked = Boolean(mine?.ticked);
    ticked.disabled = !mine;
  }

  function mark() {
    const sung = document.getElementById("sung");
    marks = store.read(); // another tab may have marked another day
    if (sung.checked) marks[sung.dataset.date] = { lines: sung.dataset.log, ticked: document.getElementById("ticked").checked };
    else delete marks[sung.dataset.date];
    store.write();
    takeLog();
    show();
  }

  document.addEventListener("change", event => { if (event.target.id === "sung" || event.target.id === "ticked") mark(); });
  document.addEventListener("renewed", () => { takeLog(); show(); });
  addEventListener("storage", event => {
    if (event.key !== storeName) return;
    marks = store.read();
    takeLog();
    show();
  });

  // Before the page's own listener, which sends the form.
  form.addEventListener("input", event => { if (event.target === goOn || event.target === start) takeLog(); }, { capture: true });

  const file = document.getElementById("log-from");
  file.addEventListener("change", async () => {
    fromFile = file.files.length === 0 ? [] : (await file.files[0].slice(0, 100000).text()).split(/\r?\n/).filter(line => line.trim() !== "");
    takeLog();
    form.dispatchEvent(new Event("input", { bubbles: true }));
  });

  // Who opens a day is taken to it.
  let isOpening = false;
  document.addEventListener("click", event => { isOpening = isOpening || Boolean(event.target.closest("a.apply[href$='#day']")); });
  document.addEventListener("renewed", () => {
    if (isOpening) document.getElementById("day-heading")?.focus();
    isOpening = false;
  });

  document.addEventListener("click", event => {
    if (event.target.id !== "sung-file") return;
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob(log("9").map(line => `${line}\n`), { type: "text/plain" }));
    link.download = "sung.log";
    link.click();
    URL.revokeObjectURL(link.href);
  });

  // The server reads no clock: a plan without a first day begins today.
  if (start.value === "") {
    const now = new Date();
    start.value = `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}`;
    start.dispatchEvent(new Event("input", { bubbles: true }));
  }
  show();
})();
