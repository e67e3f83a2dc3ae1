// Renews what comes of a page's choices while one types, and keeps the class in this browser only. Without this script the same form works by its button.
// Each renewal ends with the event "renewed" at the document, for the scripts that a page has beside this one.
(() => {
  "use strict";
  const form = document.getElementById("choices");
  const area = form.elements["class"];
  const status = document.getElementById("status");
  const home = form.getAttribute("action");
  const storeName = "warmup.class";
  const store = {
    read() { try { return localStorage.getItem(storeName) || ""; } catch { return ""; } },
    write(text) { try { localStorage.setItem(storeName, text); } catch { /* then it lasts as long as the page */ } },
  };
  let waiting = null;
  let timer = 0;
  let pushes = false; // whether the next answer becomes an entry of its own in the browser's history
  let settled = true;

  // Fields that say nothing of the drill itself: a singer to add, a file to read.
  const isApart = name => /^(add|read-|music$)/.test(name);

  const typed = () => {
    const values = new URLSearchParams(new FormData(form));
    for (const name of [...values.keys()]) { if (isApart(name)) values.delete(name); }
    return values;
  };

  const say = (text, isProblem) => {
    status.textContent = text;
    status.classList.toggle("problem", isProblem);
  };

  // What the server says about values; with takesForm the fields take over what the values mean.
  async function renew(values, how, takesForm) {
    pushes = pushes || how === "push";
    waiting?.abort();
    waiting = new AbortController();
    const mine = waiting;
    const ask = async more => {
      const answer = await fetch(home, { method: "POST", body: new URLSearchParams([...values, ...more]), signal: mine.signal });
      if (!(answer.headers.get("content-type") || "").startsWith("text/html")) throw new Error(answer.status);
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      if (mine !== waiting) throw new DOMException("", "AbortError");
      if (takesForm) takeForm(page);
      takesForm = false;
      takeWrong(page);
      for (const part of document.querySelectorAll(".part")) takePart(part, page.getElementById(part.id));
      const address = page.getElementById("preview").dataset.address;
      if (how !== "stay") history[pushes && address !== location.pathname + location.search ? "pushState" : "replaceState"](null, "", address);
      pushes = false;
      say(document.querySelector("#said [role=alert], #lines-sung > p, #day-heading, .about")?.textContent.trim() || "", false);
      document.dispatchEvent(new Event("renewed"));
    };
    document.body.setAttribute("aria-busy", "true");
    try {
      // With a class, the drill and the findings come first; what would help is searched for, and comes when nothing more is typed.
      if (form.dataset.quick && values.get("class")) {
        await ask([["quick", "1"]]);
        await new Promise(done => setTimeout(done, 300));
        if (mine !== waiting) return;
      }

      await ask([]);
    } catch (problem) {
      if (problem.name !== "AbortError") say(status.dataset.problem, true);
    }

    if (mine === waiting) document.body.removeAttribute("aria-busy");
  }

  function takePart(part, fresh) {
    if (part.innerHTML === fresh.innerHTML) return;
    const open = new Set([...part.querySelectorAll("details[open] > summary")].map(summaryName));
    const hadFocus = part.contains(document.activeElement);
    part.replaceChildren(...fresh.childNodes);
    for (const summary of part.querySelectorAll("details > summary")) { if (open.has(summaryName(summary))) summary.parentElement.open = true; }
    if (hadFocus) document.getElementById("preview").focus({ preventScroll: true });
  }

  const summaryName = summary => (summary.closest("li")?.querySelector("strong")?.textContent || "") + summary.textContent;

  function takeForm(page) {
    const fresh = page.getElementById("choices").elements;
    [...form.elements].forEach((field, i) => {
      if (!field.name || field.name === "log" || !fresh[i] || fresh[i].name !== field.name) return;
      if (field.type === "radio" || field.type === "checkbox") field.checked = fresh[i].checked;
      else if (field.tagName !== "BUTTON" && field.type !== "file") field.value = fresh[i].value;
    });
    const opened = page.querySelectorAll("#choices details.more");
    form.querySelectorAll("details.more").forEach((more, i) => { more.open ||= opened[i]?.open; });
    store.write(area.value);
  }

  // Which fields are wrong.
  function takeWrong(page) {
    const fresh = page.getElementById("choices").elements;
    [...form.elements].forEach((field, i) => {
      if (!field.name || fresh[i]?.name !== field.name) return;
      for (const mark of ["aria-invalid", "aria-describedby"]) {
        if (fresh[i].hasAttribute(mark)) field.setAttribute(mark, fresh[i].getAttribute(mark));
        else field.removeAttribute(mark);
      }
    });
  }

  // Values of an address of the page; the class is the one in this browser unless the address brings one.
  function valuesOf(address) {
    const values = new URL(address, location.href).searchParams;
    if (!values.has("class")) values.set("class", area.value);
    if (form.elements.log && !values.has("log")) values.set("log", form.elements.log.value);
    return values;
  }

  form.addEventListener("input", event => {
    if (isApart(event.target.name) || event.target.id === "file") return;
    if (event.target === area) store.write(area.value);
    pushes = pushes || (settled && event.target !== area);
    settled = false;
    clearTimeout(timer);
    timer = setTimeout(() => renew(typed(), "replace"), 200);
  });

  form.addEventListener("change", event => {
    settled = true;
    if (event.target.id === "file" && event.target.files[0]) {
      event.target.files[0].text().then(text => {
        const values = typed();
        values.set("class", text);
        renew(values, "replace", true);
      });
      event.target.value = "";
    }
  });

  form.addEventListener("submit", async event => {
    const button = event.submitter;
    if (button?.formTarget) return; // opens a page of its own
    event.preventDefault();
    clearTimeout(timer);
    if (button?.hasAttribute("formaction")) {
      const answer = await fetch(button.getAttribute("formaction"), { method: "POST", body: typed() });
      if (!answer.ok) { say((await answer.json()).detail, true); return; }
      const link = document.createElement("a");
      link.href = URL.createObjectURL(await answer.blob());
      link.download = /filename="?([^";]+)/.exec(answer.headers.get("content-disposition"))?.[1] ?? "warmup";
      link.click();
      URL.revokeObjectURL(link.href);
      return;
    }

    // A return key in any field presses the first button; a name to add says which was meant.
    const adds = form.elements["add-alias"].value.trim() !== "";
    await renew(adds ? new URLSearchParams(new FormData(form)) : typed(), "push", adds);
  });

  document.addEventListener("click", event => {
    const link = event.target.closest("a.apply");
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    renew(valuesOf(link.href), "push", true);
  });

  addEventListener("popstate", () => renew(valuesOf(location.href), "stay", true));
  addEventListener("storage", event => {
    if (event.key !== storeName) return;
    area.value = event.newValue || "";
    renew(typed(), "replace");
  });

  document.getElementById("import").hidden = false;
  const showTools = () => { for (const tool of document.querySelectorAll("[data-needs-script]")) tool.hidden = false; };
  document.addEventListener("renewed", showTools);
  showTools();
  if (new URL(location.href).searchParams.has("class")) {
    store.write(area.value);
    renew(valuesOf(location.href), "replace", true);
  } else if (store.read()) {
    area.value = store.read();
    renew(valuesOf(location.href), "replace", true);
  }
})();
