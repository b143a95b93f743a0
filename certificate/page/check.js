
// Checks the page it stands on, and certificates that are brought to it.
// Before it stand its words. It asks for files of this site only, sends
// nothing, and writes text, never markup.

const utf8 = (text) => new TextEncoder().encode(text);
const base64 = (data) => btoa(Array.from(data, (b) => String.fromCharCode(b)).join(""));
// unbase64 takes the one spelling of its bytes, as the papers do.
function unbase64(text) {
  const data = Uint8Array.from(atob(text), (c) => c.charCodeAt(0));
  if (base64(data) !== text) throw new Error("base64");
  return data;
}
const hex = (data) => Array.from(data, (b) => b.toString(16).padStart(2, "0")).join("");
const sha256 = async (data) => new Uint8Array(await crypto.subtle.digest("SHA-256", data));
const unpacked = async (data) => new Uint8Array(await new Response(new Blob([data]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer());
const digest = async (data) => hex(await sha256(data));
const join = (...parts) => Uint8Array.from(parts.flatMap((p) => Array.from(p)));
const groups = (sum) => sum.match(/.{4}/g).join(" ");
const say = (code, values = {}) => words[code].replace(/\{(\w+)\}/g, (all, name) => values[name] ?? all);
const date = (text) => new Date(text.slice(0, 10) + "T12:00:00Z").toLocaleDateString(words.locale, { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });

// canonical writes JSON as RFC 8785 does: the very bytes of an entry that the journal hashes.
const canonical = (v) =>
  Array.isArray(v) ? "[" + v.map(canonical).join(",") + "]"
  : v && typeof v === "object" ? "{" + Object.keys(v).sort().map((k) => JSON.stringify(k) + ":" + canonical(v[k])).join(",") + "}"
  : JSON.stringify(v);

// ---- keys and notes

const spki = "302a300506032b6570032100"; // what stands before an Ed25519 key in SPKI form (RFC 8410)

// readKey reads the middle line of studio.pem.
async function readKey(line) {
  const der = unbase64(line);
  if (hex(der.slice(0, 12)) !== spki || der.length !== 44) throw new Error("key");
  const raw = der.slice(12);
  return { line, raw, print: await digest(der), crypto: await crypto.subtle.importKey("raw", raw, "Ed25519", false, ["verify"]) };
}

const verify = (key, signature, data) => crypto.subtle.verify("Ed25519", key.crypto, signature, data);

// readNote returns the lines of a signed note (C2SP signed-note) if the key
// signed it under the name that it begins with; else it throws.
async function readNote(text, key) {
  const at = text.indexOf("\n\n");
  const body = text.slice(0, at + 1);
  const name = body.split(/[ \n]/, 1)[0];
  const line = /^\u2014 (\S+) (\S+)\n$/.exec(text.slice(at + 2));
  if (at < 0 || !line || line[1] !== name) throw new Error("note");
  const raw = unbase64(line[2]);
  const id = (await sha256(join(utf8(name + "\n"), [1], key.raw))).slice(0, 4);
  if (hex(raw.slice(0, 4)) !== hex(id) || !(await verify(key, raw.slice(4), utf8(body)))) throw new Error("note");
  return body.trimEnd().split("\n");
}

// fields returns the lines "name: value" of a note: all values of each name.
function fields(lines) {
  const out = {};
  for (const line of lines.slice(1)) {
    const at = line.indexOf(": ");
    (out[line.slice(0, at)] ??= []).push(line.slice(at + 2));
  }
  return out;
}

// keyInNote is the key that a text names itself.
const keyInNote = (text) => readKey(/^key: (\S+)$/m.exec(text)?.[1] ?? "");

// ---- what is checked; each check gives lines {verdict, text}

const line = (verdict, code, values) => ({ verdict, text: say(code, values) });

// attempt turns whatever goes wrong in a check into a line.
const attempt = async (check, code, values) => {
  try { return await check(); } catch { return [line("fails", code, values)]; }
};

async function checkHead(d, key) {
  const lines = await readNote(d.head, key);
  const head = d.record.head;
  if (lines[1] !== String(head.size) || lines[2] !== head.root) return [line("fails", "head-other")];
  return [line("holds", "head", { n: head.size })];
}

const leaf = (entry) => sha256(join([0], utf8(canonical(entry))));
const above = (left, right) => sha256(join([1], left, right));

// checkTree makes the root of the journal (RFC 6962 section 2.1) from the entries
// of the record and the hashes of all that stands between them.
async function checkTree(d) {
  const { head, entries } = d.record, between = (d.nodes ?? []).values();
  const tree = async (from, to) => {
    const inside = entries.filter((e) => e.seq > from && e.seq <= to);
    if (!inside.length) return unbase64(between.next().value);
    if (to - from === 1) return leaf(inside[0]);
    let half = 1;
    while (half * 2 < to - from) half *= 2;
    return above(await tree(from, from + half), await tree(from + half, to));
  };
  const same = base64(await tree(0, head.size)) === head.root;
  return [line(same ? "holds" : "fails", same ? "proof" : "proof-not", { n: entries.length })];
}

// checkProof follows the path of each entry in a proof.json to the root (RFC 6962
// section 2.1.1).
async function checkProof(d) {
  const { record, proof } = d;
  if (proof.size !== record.head.size || proof.root !== record.head.root || proof.entries.length !== record.entries.length) return [line("fails", "proof-form")];
  for (const [i, entry] of record.entries.entries()) {
    const p = proof.entries[i];
    let at = p.seq, last = proof.size - 1;
    let node = await leaf(entry);
    const own = p.leaf === base64(node) && entry.seq === p.seq + 1;
    for (const other of p.path.map(unbase64)) {
      if (at % 2 || at === last) {
        node = await above(other, node);
        while (at && at % 2 === 0) { at = Math.floor(at / 2); last = Math.floor(last / 2); }
      } else {
        node = await above(node, other);
      }
      at = Math.floor(at / 2); last = Math.floor(last / 2);
    }
    if (!own || last !== 0 || base64(node) !== proof.root) return [line("fails", "proof-entry", { n: entry.seq })];
  }
  return [line("holds", "proof", { n: record.entries.length })];
}

// checkKeys follows the life of the keys that the journal tells. Whoever has a
// key can make another: an older one counts only where it named its successor.
async function checkKeys(d, key) {
  const ring = {}, heirs = {}, lost = {};
  for (const e of d.record.entries) {
    if (e.kind === "key-made") {
      const k = await readKey(e.public_key);
      if (k.print !== e.fingerprint || ring[k.print]) throw new Error("key");
      ring[k.print] = k;
    } else if (e.kind === "key-retired") {
      const said = fields(await readNote(e.statement + "\n", ring[e.fingerprint]));
      if (said.new[0] !== ring[e.successor].line) throw new Error("key");
      heirs[e.fingerprint] = e.successor;
    } else if (e.kind === "key-lost") lost[e.fingerprint] = true;
  }
  if (!ring[key.print] || heirs[key.print] || lost[key.print]) return [line("fails", "keys-not")];
  const leads = (print, steps = 100) => print === key.print || (steps && heirs[print] && !lost[print] && leads(heirs[print], steps - 1));
  const alone = Object.keys(ring).filter((print) => !leads(print));
  d.older = Object.keys(ring).filter((print) => print !== key.print && leads(print));
  return [line("holds", alone.length ? "keys-now" : "keys"), ...alone.map((print) => line("since", lost[print] ? "key-lost" : "key-alone", { key: groups(print) }))];
}

// solid refuses an element whose shadow tree shows something else than stands
// in it, also one that scripts cannot see: where there is none, one can be put,
// which shows what stands there.
function solid(n) {
  if (!/-|^(article|aside|blockquote|body|div|footer|h\d|header|main|nav|p|section|span)$/.test(n.localName)) return;
  if (n.shadowRoot) throw new Error("shadow");
  n.attachShadow({ mode: "open" }).append(element("slot"));
}

// stated is what the page states, as package page hashes it.
function stated() {
  const parts = [];
  const walk = (n) => {
    if (n.nodeType === Node.TEXT_NODE) { // browsers cut long texts
      if (parts.at(-1)[0] === "'") parts[parts.length - 1] += n.data; else parts.push("'" + n.data);
    }
    if (n.nodeType !== Node.ELEMENT_NODE) return;
    solid(n);
    parts.push("<" + n.localName);
    const named = Array.from(n.attributes).filter((a) => a.name !== "style" && !a.name.startsWith("data-"));
    parts.push(...named.map((a) => "=" + a.name + "=" + a.value).sort());
    if (n.id !== "check" && n.id !== "data") n.childNodes.forEach(walk);
    parts.push(">");
  };
  walk(document.documentElement);
  return utf8(parts.map((p) => p + "\0").join(""));
}

async function checkText(d, key) {
  const said = fields(await readNote(d.page, key));
  if (said.number[0] !== d.record.number || said.record[0] !== (await digest(d.bytes))) return [line("fails", "page-other")];
  const same = said.text[0] === pageText;
  return [line(same ? "holds" : "fails", same ? "text" : "text-not")];
}

const fromFolder = location.protocol === "file:";

// fetched is a file of this site.
async function fetched(address) {
  const answer = await fetch(address, { cache: "no-store", credentials: "omit" });
  if (!answer.ok) throw new Error("not there");
  return new Uint8Array(await answer.arrayBuffer());
}

// checkPictures reads again what the page shows and compares it with its name,
// and the names of pictures with those that were signed.
async function checkPictures(d, key) {
  if (fromFolder) return [line("unknown", "pictures-here")];
  const signed = fields(await readNote(d.page, key)).pictures?.[0].split(" ") ?? [];
  const shown = Array.from(document.querySelectorAll("main img"), (i) => i.currentSrc || i.src);
  for (const address of [...shown, document.querySelector("link[rel=stylesheet]").href]) {
    const name = address.split("/").pop();
    const sum = await fetched(address).then(digest, () => "");
    if (!name.startsWith(sum + ".") || (shown.includes(address) && !signed.includes(sum))) return [line("fails", "picture-not", { name })];
  }
  return [line("holds", "pictures")];
}

// checkStatus reads the studio's status, which is the only thing here that
// knows what happened since the page was made.
async function checkStatus(d, key) {
  if (fromFolder) return [line("unknown", "status-here")];
  let text;
  try { text = new TextDecoder().decode(await fetched("../status")); } catch { return [line("unknown", "status-none")]; }
  const said = fields(await readNote(text, key));
  if (said.key[0] !== key.line) return [line("fails", "status-not")];
  d.status = said;
  const on = date(said.date[0]);
  const days = Math.floor((Date.now() - Date.parse(said.date[0])) / 86400000);
  const age = days < -1 ? say("age-ahead") : days < 1 ? say("age-today") : say("age-days", { n: days });
  const own = ["retired", "lost"].filter((n) => said[n]?.includes(key.print)).map((n) => words[n]).join(", ");
  const named = said.page?.includes(await digest(d.bytes));
  return [line("holds", "status", { date: on, age }),
    ...(own ? [line("fails", "status-key", { date: on, standing: own })] : []),
    named ? line("holds", "status-page", { date: on }) : line("since", "status-older", { date: on }),
    ...d.record.entries.filter((e) => e.kind === "certificate-issued" && e.panels.includes(d.record.number)).map((e) => became(d, e))];
}

// became says what became of a certificate, by the studio's status and by the
// record of this page.
function became(d, e) {
  const told = { withdrawn: (o) => o.kind === "certificate-withdrawn" && o.certificate === e.seq, replaced: (o) => o.replaces === e.seq };
  const standing = ["issued", "replaced", "withdrawn", "stolen", "missing"].filter((n) => d.status?.[n]?.includes(e.record_sha256) || told[n] && d.record.entries.some(told[n])).map((n) => words[n]).join(", ");
  const values = { digest: groups(e.record_sha256).slice(0, 19), date: d.status && date(d.status.date[0]), standing };
  if (!d.status) return standing ? line("since", "paper-record", values) : line("unknown", "status-none");
  const issued = standing === words.issued;
  return { ...line(issued ? "holds" : "since", standing ? "paper-status" : "paper-none", values), standing: !issued && standing };
}

// checkSignature says whether the key signed the record.
const checkSignature = async (d, key) => {
  const good = await verify(key, unbase64(d.signature), d.bytes);
  return [line(good ? "holds" : "fails", good ? "signature" : "signature-not")];
};

async function checkPage(d) {
  let key;
  if (!d.record) return { key: null, lines: [line("fails", "data-not")] };
  try { key = await readKey(d.key); } catch { return { key: null, lines: [line("fails", "key-not")] }; }
  try {
    d.bytes = await unpacked(unbase64(d.record));
    d.record = JSON.parse(new TextDecoder().decode(d.bytes));
  } catch { return { key: null, lines: [line("fails", "record-not")] }; }
  const lines = [
    ...(await attempt(() => checkSignature(d, key), "signature-not")),
    ...(await attempt(() => checkText(d, key), "page-not")),
    ...(await attempt(() => checkPictures(d, key), "page-not")),
    ...(await attempt(() => checkHead(d, key), "head-not")),
    ...(await attempt(() => checkTree(d), "proof-not")),
    ...(await attempt(() => checkKeys(d, key), "keys-not")),
    ...(await attempt(() => checkStatus(d, key), "status-not")),
  ];
  return { key, lines };
}

// ---- what a person brings

async function checkBrought(d, files) {
  const out = [];
  const record = files["record.json"];
  for (const [name, data] of Object.entries(files)) {
    const start = new TextDecoder().decode(data.slice(0, 9));
    if (start.startsWith("%PDF-")) out.push(...(await checkPDF(d, name, data)));
    else if (start === "backleaf/" && name !== "head.txt") out.push(...(await checkStatement(d, new TextDecoder().decode(data))));
    else if (!["record.json", "record.sig", "studio.pem", "head.txt", "proof.json"].includes(name)) out.push(line("unknown", "file-unknown", { name }));
  }
  if (!record) return out;
  const name = "record.json", text = new TextDecoder().decode(record);
  if (!files["record.sig"] || !files["studio.pem"]) out.push(line("unknown", "deed-lacks", { name }));
  else out.push(...(await attempt(async () => {
    const key = await readKey(new TextDecoder().decode(files["studio.pem"]).split("\n")[1]);
    if (!(await verify(key, files["record.sig"], record))) return [line("fails", "deed-not", { name })];
    const brought = { record: JSON.parse(text), head: files["head.txt"] && new TextDecoder().decode(files["head.txt"]), proof: files["proof.json"] && JSON.parse(new TextDecoder().decode(files["proof.json"])) };
    return [line("holds", "deed", { name, key: groups(key.print) }), key.line === d.key ? line("holds", "deed-key") : line("fails", "deed-otherkey"),
      ...(brought.head ? await attempt(() => checkHead(brought, key), "head-not") : []),
      ...(brought.proof ? await attempt(() => checkProof(brought), "proof-form") : [])];
  }, "deed-not", { name })));
  return [...out, ...known(d, await digest(record))];
}

// known says whether the page knows a record as that of a certificate.
function known(d, sum) {
  const e = d.record.entries.find((e) => e.kind === "certificate-issued" && e.record_sha256 === sum);
  return e ? [line("holds", "deed-known", { date: date(e.at ?? e.written) }), became(d, e)] : [line("unknown", "deed-unknown")];
}

// checkPDF compares a file with those that left the studio; it reads nothing in it.
async function checkPDF(d, name, data) {
  const sum = await digest(data);
  const e = d.record.entries.find((e) => e.pdf_sha256 === sum);
  if (!e) return [line("unknown", "pdf-other", { name })];
  const values = { name, date: date(e.at ?? e.written) };
  return e.kind === "label-printed" ? [line("holds", "pdf-label", values)] : [line("holds", "pdf-issued", values), became(d, e)];
}

// checkStatement reads the text of a certificate's large symbol.
async function checkStatement(d, typed) {
  const text = typed.replaceAll("\r", "").replace(/^[\s\ufeff]+|\s+$/g, "") + "\n";
  return attempt(async () => {
    const key = await keyInNote(text);
    const said = await readNote(text, key);
    return [line("holds", "note", { text: said.slice(1).filter((l) => !/^(record|key): /.test(l)).join("; ") }), key.line === d.key ? line("holds", "deed-key") : line("fails", "deed-otherkey"),
      ...known(d, fields(said).record?.[0] ?? "")];
  }, "note-not");
}

// ---- what is shown

// element makes an element with a text; text is never markup.
function element(name, text = "", of = "", ...inside) {
  const e = document.createElement(name);
  e.textContent = text;
  if (of) e.className = of;
  e.append(...inside);
  return e;
}

const list = (lines) => element("ul", "", "results", ...lines.map((l) => element("li", "", l.verdict, element("b", words[l.verdict]), element("span", l.text))));

// summary is the worst of all that was found.
function summary(lines, papers) {
  const any = (verdict) => lines.some((l) => l.verdict === verdict);
  if (any("fails")) return say("altered");
  const standing = lines.find((l) => l.standing)?.standing;
  if (standing) return say("not-in-force", { standing: say("of-a-paper", { standing }) });
  return say(any("since") ? "outdated" : any("unknown") ? "whole-here" : papers ? "whole" : "whole-none");
}

const verdicts = ["fails", "since", "unknown", "holds"]; // the worst first

// showChecks shows the verdict, the key that it is about, and each line.
function showChecks(at, d, key, lines) {
  const papers = d.bytes && d.record.entries.some((e) => e.kind === "certificate-issued");
  at.replaceChildren(element("p", summary(lines, papers), "verdict"));
  const figures = (print) => element("pre", groups(print).replace(/((?:\w+ ){3}\w+) /g, "$1\n"), "key");
  if (key) at.append(figures(key.print));
  if (key && papers) at.append(element("p", words.compare));
  if (papers && d.older?.length) at.append(element("p", words["compare-older"]), ...d.older.map(figures));
  if (d.demo) at.append(element("p", words.demo));
  at.append(list(lines.toSorted((a, b) => verdicts.indexOf(a.verdict) - verdicts.indexOf(b.verdict))));
}

function showBring(at, d) {
  const results = element("div");
  results.setAttribute("aria-live", "polite");
  const show = async (files) => results.replaceChildren(list(await checkBrought(d, files)));
  const take = async (chosen) => {
    const files = {};
    for (const f of chosen) { // saved twice, a file is "record (1).json"; a folder has no bytes
      files[f.name.replace(/ ?\(\d+\)(?=\.\w+$)/, "")] = new Uint8Array(await f.arrayBuffer().catch(() => []));
    }
    show(files);
  };
  const input = element("input"), text = element("textarea"), button = element("button", words["bring-check"]);
  Object.assign(input, { type: "file", multiple: true, id: "bring-files" });
  Object.assign(text, { id: "bring-symbol", spellcheck: false });
  button.type = "button";
  input.addEventListener("change", () => take(input.files));
  button.addEventListener("click", async () => results.replaceChildren(list(await checkStatement(d, text.value))));
  const labels = [["bring-files", input], ["bring-symbol", text]].map(([code, to]) => Object.assign(element("label", words[code]), { htmlFor: to.id }));
  const box = element("div", "", "bring", element("h3", words.bring), element("p", words["bring-text"]), labels[0], input, labels[1], text, button, results);
  box.addEventListener("dragover", (e) => e.preventDefault());
  box.addEventListener("drop", (e) => { e.preventDefault(); take(e.dataTransfer.files); });
  at.append(box);
}

// guarded gives a file only if it is the one that its name was made of, which
// the studio signed with the page.
async function guarded(e) {
  const a = e.currentTarget;
  if (a.protocol === "blob:" || fromFolder) return;
  e.preventDefault();
  const data = await fetched(a.href).catch(() => new Uint8Array());
  if (!a.pathname.split("/").pop().startsWith((await digest(data)) + ".")) return a.after(element("b", say("picture-not", { name: a.download })));
  a.href = URL.createObjectURL(new Blob([data]));
  a.click();
}

let pageText = "";

async function main() {
  const at = document.getElementById("check"), carried = document.getElementById("data");
  if (!at || !carried) return;
  at.replaceChildren(element("p", words.checking, "verdict"));
  if (!globalThis.crypto?.subtle) return at.replaceChildren(element("p", say("cannot", { why: words["why-insecure"] }), "verdict"));
  const point = Uint8Array.from({ length: 32 }, (_, i) => (i ? 0x66 : 0x58)); // the base point of RFC 8032, a key like any other
  try { new DecompressionStream("gzip"); await crypto.subtle.importKey("raw", point, "Ed25519", false, ["verify"]); } catch {
    return at.replaceChildren(element("p", say("cannot", { why: words["why-old"] }), "verdict"));
  }
  try { pageText = await digest(stated()); } catch { /* it states what nobody signed */ }
  let d;
  try { d = Object(JSON.parse(carried.textContent)); } catch { d = {}; }
  const { key, lines } = await checkPage(d);
  showChecks(at, d, key, lines);
  if (d.bytes) showBring(at, d);
  document.querySelectorAll("a[download]").forEach((a) => a.addEventListener("click", guarded));
  at.dataset.done = "yes";
}

main();
