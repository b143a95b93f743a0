// The page works without this script. It counts down by the computer's clock,
// says what changes while a form is filled in, keeps a form that could not be
// sent, and tells when another device wrote something.
"use strict";
(() => {
  const body = document.body, line = document.getElementById("line"), words = body.dataset;
  let skew = Number(words.now) - Date.now(), size = Number(words.size), touched = false;
  const now = () => Date.now() + skew;

  const say = (text, action) => {
    line.textContent = text;
    if (action) {
      const b = document.createElement("button");
      b.type = "button"; b.className = "quiet"; b.textContent = words.show; b.addEventListener("click", action);
      line.append(b);
    }
  };

  const span = ms => {
    const m = Math.round(Math.abs(ms) / 60000), h = Math.floor(m / 60), d = Math.floor(h / 24);
    return d > 1 ? d + " d" : h > 0 ? h + " h " + (m % 60) + " min" : m + " min";
  };
  const tick = () => {
    for (const e of document.querySelectorAll(".count")) {
      const left = Number(e.dataset.at) - now();
      e.textContent = "– " + span(left) + " " + (left < 0 ? words.over : e.closest(".later") ? words.until : words.left);
    }
    for (const e of document.querySelectorAll(".offer")) if (Number(e.dataset.end) < now()) e.hidden = true;
  };

  const look = async () => {
    try {
      const r = await fetch("/now", { cache: "no-store" });
      if (!r.ok) return false;
      const s = await r.json();
      skew = s.now - Date.now();
      if (s.size !== size) {
        size = s.size;
        if (document.querySelector("form.act")) preview(document.querySelector("form.act"));
        else if (!touched) location.reload();
        else say(words.news, () => location.reload());
      }
      return true;
    } catch { return false; }
  };

  const data = (form, go) => {
    const d = new URLSearchParams(new FormData(form));
    d.set("go", go);
    return d;
  };
  const post = (form, go) => fetch(form.getAttribute("action"), { method: "POST", body: data(form, go), redirect: "follow" });
  const take = (form, html) => { // the answer to a form: what is said, not what was typed
    const page = new DOMParser().parseFromString(html, "text/html"), fresh = page.querySelector("#said");
    if (!fresh) return false;
    const held = document.activeElement;
    said().replaceChildren(...fresh.childNodes);
    if (held && !held.isConnected) [...said().querySelectorAll("button")].find(b => b.textContent === held.textContent)?.focus({ preventScroll: true });
    form.elements.seen.value = page.querySelector("input[name=seen]").value;
    return true;
  };

  const said = () => document.getElementById("said");
  const waiting = yes => said().setAttribute("aria-busy", yes);

  let turn = 0;
  const preview = async form => {
    const mine = ++turn;
    waiting(true);
    try {
      const r = await post(form, "look"), html = await r.text();
      if (mine === turn && !r.redirected) take(form, html);
    } catch { /* said when it is sent */ }
    if (mine === turn) waiting(false);
  };

  let busy = false;
  const send = async form => {
    if (busy) return;
    busy = true; turn++;
    waiting(true);
    say(words.sending);
    try {
      const r = await post(form, "write");
      if (r.redirected) { location.assign(r.url); return; }
      const html = await r.text();
      if (!take(form, html)) say(new DOMParser().parseFromString(html, "text/html").body.textContent.trim().slice(0, 300));
      else { say(""); said().scrollIntoView({ block: "nearest" }); }
    } catch {
      say(words.lost);
      waiting(false);
      await back(form);
    }
    busy = false;
    waiting(false);
  };
  const back = async form => { // wait for the computer, then ask whether it was written
    for (;;) {
      await new Promise(done => setTimeout(done, 1500));
      try {
        const r = await fetch("/posted/" + encodeURIComponent(form.elements.token.value), { cache: "no-store" });
        if (!r.ok) continue;
        const s = await r.json();
        if (!s.written) { say(words.back); return; }
        say(words.was, () => form.submit()); // it answers with where it stands
        return;
      } catch { /* still away */ }
    }
  };

  for (const form of document.querySelectorAll("form.act")) {
    let wait;
    form.addEventListener("change", () => { clearTimeout(wait); preview(form); }); // what waits would look a second time, under a finger on its way
    form.addEventListener("input", () => { clearTimeout(wait); waiting(true); wait = setTimeout(() => preview(form), 400); });
    form.addEventListener("submit", e => {
      e.preventDefault();
      clearTimeout(wait);
      if (e.submitter && e.submitter.value === "look") preview(form); else send(form);
    });
    const panels = form.querySelector(".panels");
    if (panels && panels.querySelectorAll("[name=panel]").length > 1) for (const on of [true, false]) {
      const b = document.createElement("button");
      b.type = "button"; b.className = "quiet"; b.textContent = on ? panels.dataset.all : panels.dataset.none;
      b.addEventListener("click", () => {
        for (const box of panels.querySelectorAll("[name=panel]")) box.checked = on;
        preview(form);
      });
      panels.querySelector(".ways").append(b);
    }
  }
  document.documentElement.classList.add("live");
  for (const form of document.querySelectorAll("form.at-once")) form.addEventListener("change", () => { say(words.sending); form.requestSubmit(); });
  document.addEventListener("input", () => { touched = true; });
  setInterval(tick, 1000);
  setInterval(look, 2000);
  tick();
})();
