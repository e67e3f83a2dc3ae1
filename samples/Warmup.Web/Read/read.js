// Reads a file that is dropped on the page or chosen, and shows what was read. Text that is dropped is read as well.
(() => {
  "use strict";
  const form = document.getElementById("choices");
  const area = document.getElementById("read");
  const input = document.getElementById("music");
  const status = document.getElementById("status");
  const most = Number(input.dataset.most);

  const say = (text, isProblem) => {
    status.textContent = text;
    status.classList.toggle("problem", isProblem);
  };

  async function read(file) {
    if (file.size > most) {
      say(input.dataset.large, true);
      return;
    }
    const values = new FormData(form);
    for (const name of [...values.keys()]) { if (["music", "class", "log"].includes(name) || name.startsWith("add")) values.delete(name); }
    values.set("music", file, file.name || "lines.txt");
    try {
      const answer = await fetch("/read", { method: "POST", body: values });
      if (!(answer.headers.get("content-type") || "").startsWith("text/html")) throw new Error((await answer.json()).detail);
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      area.replaceChildren(...page.getElementById("read").childNodes);
      say(area.querySelector("[role=alert], h3").textContent, false);
      (document.getElementById("read-heading") ?? area).focus();
      area.scrollIntoView({ block: "nearest" });
    } catch (problem) {
      say(problem instanceof TypeError ? status.dataset.problem : problem.message, true);
    }
  }

  input.addEventListener("change", () => { if (input.files[0]) read(input.files[0]); });
  form.addEventListener("submit", event => {
    if (event.submitter?.id !== "read-file") return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (input.files[0]) read(input.files[0]);
  }, { capture: true });

  const holds = event => event.dataTransfer && [...event.dataTransfer.types].some(type => type === "Files" || type === "text/plain") && !event.target.closest?.("input, textarea");
  document.addEventListener("dragover", event => {
    if (!holds(event)) return;
    event.preventDefault();
    document.body.classList.add("dropping");
  });
  document.addEventListener("dragleave", event => { if (!event.relatedTarget) document.body.classList.remove("dropping"); });
  document.addEventListener("drop", event => {
    document.body.classList.remove("dropping");
    if (!holds(event)) return;
    event.preventDefault();
    const text = event.dataTransfer.getData("text/plain");
    if (event.dataTransfer.files[0]) read(event.dataTransfer.files[0]);
    else if (text) read(new File([text], "lines.txt", { type: "text/plain" }));
  });
})();
