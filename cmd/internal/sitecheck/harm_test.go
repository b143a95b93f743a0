package sitecheck_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"backleaf/cmd/internal/browsertest"
	"backleaf/record/toolcheck"

	"github.com/chromedp/chromedp"
)

// data splits a page around the data that its script reads.
func data(t testing.TB, page []byte) (before, data, after string) {
	t.Helper()
	before, rest, ok := strings.Cut(string(page), `id="data">`)
	data, after, ok2 := strings.Cut(rest, "</script>")
	if !ok || !ok2 {
		t.Fatal("no data")
	}
	return before + `id="data">`, data, "</script>" + after
}

// Whatever is changed in what a host serves, the page says which part does not hold.
func TestChangedPages(t *testing.T) {
	_, site := demonstration(t)
	h := serve(t, site)
	p := open(t, 1280, "light")
	page := read(t, filepath.Join(site, panel, "index.html"))
	before, carried, after := data(t, page)
	inData := func(name, change string) map[string][]byte {
		at := strings.Index(carried, `"`+name+`":`) + len(name) + 3
		value := carried[at : at+strings.IndexAny(carried[at:], ",}")]
		if name == "nodes" || name == "key" || name == "signature" || name == "record" { // another figure of base64, and no more
			i := len(value) / 2
			change = value[:i] + map[bool]string{true: "B", false: "A"}[value[i] == 'A'] + value[i+1:]
		} else if old, new, ok := strings.Cut(change, " → "); ok {
			if change = strings.Replace(value, old, new, 1); change == value {
				t.Fatalf("%s does not hold %q", name, old)
			}
		}
		return map[string][]byte{panel + "/": []byte(before + carried[:at] + change + carried[at+len(value):] + after)}
	}
	inPage := func(old, new string) map[string][]byte {
		if !strings.Contains(before, old) {
			t.Fatalf("the page does not hold %q", old)
		}
		return map[string][]byte{panel + "/": []byte(strings.Replace(before, old, new, 1) + carried + after)}
	}
	files := func(pattern string, at int) map[string][]byte {
		out := map[string][]byte{}
		names, err := filepath.Glob(filepath.Join(site, pattern))
		if err != nil || names == nil {
			t.Fatalf("nothing is named %s", pattern)
		}
		for _, n := range names {
			rel, _ := filepath.Rel(site, n)
			b := read(t, n)
			b[len(b)-at] ^= 1
			out[filepath.ToSlash(rel)] = b
		}
		return out
	}
	for _, c := range []struct {
		what   string
		forged map[string][]byte
		codes  []string
	}{
		{"record", inData("record", ""), []string{"record-not"}},
		{"signature", inData("signature", ""), []string{"signature-not"}},
		{"key", inData("key", ""), []string{"signature-not", "page-not", "head-not", "keys-not", "status-not"}},
		{"key, its form", inData("key", "MCo → MCp"), []string{"signature-not"}},
		{"key that is none", map[string][]byte{panel + "/": []byte(before + strings.Replace(carried, `"key":"MCow`, `"key":"MCox`, 1) + after)}, []string{"key-not"}},
		{"head", inData("head", `\n64\n → \n65\n`), []string{"head-not"}},
		{"proof", inData("nodes", ""), []string{"proof-not"}},
		{"word for the page", inData("page", "number: MR25 → number: MR26"), []string{"page-not"}},
		{"data that is none", map[string][]byte{panel + "/": []byte(before + "(" + carried + after)}, []string{"data-not"}},
		{"title on the page", inPage(">Low water, Saltmere</h1>", ">Low water, Saltmera</h1>"), []string{"text-not"}},
		{"a link on the page", inPage(`download="record.json"`, `download="record.jsom"`), []string{"text-not"}},
		{"a drawing", inPage(`viewBox="0 0 76 `, `viewBox="0 0 77 `), []string{"text-not"}},
		{"more text behind the page", map[string][]byte{panel + "/": append(bytes.Clone(page), "<p>Sold by us</p>"...)}, []string{"text-not"}},
		{"a title shown over the title", inPage(">Low water, Saltmere</h1>", `><template shadowrootmode="open">Nocturne</template>Low water, Saltmere</h1>`), []string{"text-not"}},
		{"a title that scripts do not see", inPage(">Low water, Saltmere</h1>", `><template shadowrootmode="closed">Nocturne</template>Low water, Saltmere</h1>`), []string{"text-not"}},
		{"a page over the page", inPage("<main>", `<main><template shadowrootmode="closed"><h1>Nocturne</h1></template>`), []string{"text-not"}},
		{"photograph", files("a/*.jpeg", 100), []string{"picture-not"}},
		{"style", files("a/*.css", 3), []string{"picture-not"}},
		{"status", files("status", 200), []string{"status-not"}},
		{"status, its signature", files("status", 20), []string{"status-not"}},
	} {
		h.put(c.forged)
		text := p.checked(h.page(panel))
		if !says(text, "altered") {
			t.Errorf("%s: the page says\n%s", c.what, text)
		}
		for _, code := range c.codes {
			if !says(text, code) {
				t.Errorf("%s: it does not say %q but\n%s", c.what, words[code], text)
			}
		}
	}
}

// harms changes one byte of each part after the other, as the script reads them,
// and lists those of which it does not say what it should.
const harms = `(async (step) => {
  const true_ = document.getElementById("data").textContent, files = new Map(), get = fetched, wrong = [];
  let count = 0, status;
  window.fetched = async (address) => {
    if (!files.has(address)) files.set(address, await get(address));
    return address.endsWith("/status") && status || files.get(address);
  };
  const packed = async (data) => base64(new Uint8Array(await new Response(new Blob([data]).stream().pipeThrough(new CompressionStream("gzip"))).arrayBuffer()));
  const text = (data) => new TextDecoder().decode(data);
  const part = async (name, data, put, codes, from = 0) => {
    for (let at = from; at < data.length; at += step) {
      const bytes = data.slice(), d = JSON.parse(true_);
      bytes[at] ^= 1 << (at % 7);
      await put(d, bytes);
      count++;
      const { key, lines } = await checkPage(d);
      if (summary(lines, true) !== words.altered || !lines.some((l) => l.verdict === "fails" && codes.some((c) => l.text === say(c, { n: d.record?.entries?.length })))) wrong.push(name + " " + at + ": " + lines.map((l) => l.verdict + " " + l.text).join("; "));
    }
    status = undefined;
  };
  const d = JSON.parse(true_);
  await part("record", await unpacked(unbase64(d.record)), async (d, b) => { d.record = await packed(b); }, ["signature-not", "record-not"]);
  const head = 14; // figures of base64: what gzip says of time and system (RFC 1952, 2.3.1) is no part of the record
  await part("packed record", utf8(d.record), (d, b) => { d.record = text(b); }, ["signature-not", "record-not"], head);
  await part("signature", utf8(d.signature), (d, b) => { d.signature = text(b); }, ["signature-not"]);
  await part("key", utf8(d.key), (d, b) => { d.key = text(b); }, ["signature-not", "key-not"]);
  await part("head", utf8(d.head), (d, b) => { d.head = text(b); }, ["head-not"]);
  await part("proof", utf8(d.nodes.join("")), (d, b) => { d.nodes = text(b).match(/.{44}/gs); }, ["proof-not"]);
  await part("word for the page", utf8(d.page), (d, b) => { d.page = text(b); }, ["page-not"]);
  await part("status", await fetched("../status"), (d, b) => { status = b; }, ["status-not"]);
  window.harmed = { count, wrong };
})(STEP); undefined`

// One byte changed anywhere: it says which part. Every byte is tried where the
// tests are asked to do all they can.
func TestEachByte(t *testing.T) {
	step := 61
	if toolcheck.Thorough() {
		step = 5
	}
	_, site := demonstration(t)
	p := open(t, 1280, "light")
	p.checked(serve(t, site).page(panel))
	p.Do(chromedp.Evaluate[chromedp.Void](strings.Replace(harms, "STEP", fmt.Sprint(step), 1)))
	p.Until("!!window.harmed")
	for _, w := range value[[]string](p, "harmed.wrong") {
		t.Error(w)
	}
	n := value[int](p, "harmed.count")
	if t.Logf("%d bytes changed", n); n < 100 {
		t.Errorf("only %d", n)
	}
}

// A page made whole by another key vouches for itself, and says that this means
// little; a page of an older record is true, and says that it is old.
func TestForgedAndOldPages(t *testing.T) {
	dir, site, command := copied(t)
	h := serve(t, site)
	p := open(t, 1280, "light")

	forger := filepath.Join(t.TempDir(), "forged.sqlite")
	f := func(args ...string) { browsertest.Command(t, append([]string{"--book", forger}, args...)...) }
	f("studio", "new", "--maker", "Odile Marrens", "--mark", "MR", "--place", "Saltmere", "--link", "https://marrens.example/P/")
	f("studio", "key", "new")
	f("panel", "add", "--size", "30 x 40 cm x 3 mm")
	f("paint", "0001", "--medium", "oil")
	f("panel", "describe", "0001", "--title", "Low water, Saltmere")
	f("panel", "publish", "0001")
	fake := filepath.Join(t.TempDir(), "fake")
	f("site", fake)
	pages, _ := filepath.Glob(filepath.Join(fake, "MR*"))
	if len(pages) != 1 {
		t.Fatal(pages)
	}
	text := p.checked(serve(t, fake).page(filepath.Base(pages[0])))
	if !says(text, "whole-none") || !strings.Contains(p.Text(), "vouches for itself") || strings.Contains(text, "9b3c 08fc") {
		t.Errorf("a page under another key says\n%s", text)
	}
	// Brought to it, the true certificate tells the two keys apart.
	p.drop(attached(t, dir)...)
	if text := p.brought(); !says(text, "deed-otherkey") || !says(text, "deed-unknown") {
		t.Errorf("of the true certificate the forged page says\n%s", text)
	}

	// Withdrawn, and reported stolen: the page of before is old by the status.
	old := read(t, filepath.Join(site, panel, "index.html"))
	command("certificate", "withdraw", "0003", "--because", "stolen with the work")
	command("handover", "0003", "--how", "theft")
	command("site", site)
	text = p.checked(h.page(panel))
	if !says(text, "not-in-force") || !strings.Contains(text, "a certificate of this panel is issued, withdrawn, reported stolen") {
		t.Errorf("of a work reported stolen the page says\n%s", text)
	}
	if all := p.Text(); !strings.Contains(all, "reported this work stolen on") || !strings.Contains(all[:200], "Do not buy") || !strings.Contains(all, "stolen with the work") {
		t.Error("the page does not tell the theft")
	}
	h.put(map[string][]byte{panel + "/": old})
	text = p.checked(h.page(panel))
	if !says(text, "not-in-force") || !strings.Contains(text, "does not name this page") || strings.Contains(text, string(words["fails"])) {
		t.Errorf("an older page says\n%s", text)
	}
}

// attached are the five files of the certificate.
func attached(t testing.TB, dir string) (five []string) {
	t.Helper()
	to := filepath.Join(t.TempDir(), "attached")
	if err := os.Mkdir(to, 0o755); err != nil {
		t.Fatal(err)
	}
	toolcheck.Run(t, "pdfdetach", "-saveall", "-o", to, filepath.Join(dir, "certificate.pdf"))
	for _, n := range []string{"record.json", "record.sig", "studio.pem", "head.txt", "proof.json"} {
		five = append(five, filepath.Join(to, n))
	}
	return five
}

// Keys of which the journal tells, each made in the browser: A, B, C.
const keyring = `(async () => {
  const make = async () => {
    const pair = await crypto.subtle.generateKey("Ed25519", true, ["sign", "verify"]);
    const line = base64(new Uint8Array(await crypto.subtle.exportKey("spki", pair.publicKey)));
    return { ...(await readKey(line)), sign: pair.privateKey };
  };
  const [a, b, c] = [await make(), await make(), await make()];
  const made = (k) => ({ kind: "key-made", fingerprint: k.print, public_key: k.line });
  const lost = (k) => ({ kind: "key-lost", fingerprint: k.print });
  const retired = async (k, heir) => {
    const body = "backleaf/KB key succession\nold: " + k.print + "\nnew: " + heir.line + "\n", name = body.split(" ", 1)[0];
    const id = (await sha256(join(utf8(name + "\n"), [1], k.raw))).slice(0, 4);
    const signature = new Uint8Array(await crypto.subtle.sign("Ed25519", k.sign, utf8(body)));
    return { kind: "key-retired", fingerprint: k.print, successor: heir.line && heir.print, statement: body + "\n\u2014 " + name + " " + base64(join(id, signature)) };
  };
  const out = {};
  for (const [name, entries, key] of [
    ["one", [made(a)], a], ["none", [made(a)], b], ["retired", [made(a), made(b), await retired(a, b)], b], ["the retired one", [made(a), made(b), await retired(a, b)], a],
    ["twice over", [made(a), made(b), await retired(a, b), made(c), await retired(b, c)], c], ["lost", [made(a), lost(a), made(b)], b], ["the lost one", [made(a), lost(a), made(b)], a],
    ["two at once", [made(a), made(b)], b], ["another's heir", [made(a), made(b), made(c), await retired(a, b)], c], ["retired, then lost", [made(a), made(b), await retired(a, b), lost(a)], b],
  ]) {
    const d = { record: { entries } }, lines = await checkKeys(d, key);
    out[name] = [...lines.map((l) => ["keys", "keys-now", "keys-not", "key-lost", "key-alone"].find((w) => l.text.startsWith(words[w].split("{")[0]))), ...(d.older ?? []).map(() => "older")].join(" ");
  }
  const d = JSON.parse(document.getElementById("data").textContent);
  await checkPage(d);
  const issued = d.record.entries.find((e) => e.kind === "certificate-issued"), own = d.status;
  const brought = (status) => { d.status = status; return known(d, issued.record_sha256).map((l) => l.verdict).join(" "); };
  out["issued"] = brought({ ...own, issued: [issued.record_sha256] });
  out["withdrawn since"] = brought({ ...own, withdrawn: [issued.record_sha256] });
  out["stolen since"] = brought({ ...own, issued: [issued.record_sha256], stolen: [issued.record_sha256] });
  out["not listed"] = brought({ date: own.date });
  out["no status"] = brought(undefined);
  d.record.entries.push({ kind: "certificate-withdrawn", certificate: issued.seq });
  out["withdrawn on record"] = brought(undefined);
  window.told = out;
})(); undefined`

// Of each other key that did not name this one it is said, and of a certificate
// that is brought what became of it.
func TestKeysAndStandings(t *testing.T) {
	_, site := demonstration(t)
	h := serve(t, site)
	p := open(t, 1280, "light")
	p.checked(h.page(panel))
	p.Do(chromedp.Evaluate[chromedp.Void](keyring))
	p.Until("!!window.told")
	got := value[map[string]string](p, "window.told")
	for name, want := range map[string]string{
		"one": "keys", "none": "keys-not", "retired": "keys older", "the retired one": "keys-not", "twice over": "keys older older", "lost": "keys-now key-lost",
		"the lost one": "keys-not", "two at once": "keys-now key-alone", "another's heir": "keys-now key-alone key-alone", "retired, then lost": "keys-now key-lost",
		"issued": "holds holds", "withdrawn since": "holds since", "stolen since": "holds since", "not listed": "holds since", "no status": "holds unknown", "withdrawn on record": "holds since",
	} {
		if got[name] != want {
			t.Errorf("%s: the page says %q, want %q", name, got[name], want)
		}
	}
	// A file that is not the one its name was made of is not given out.
	files := map[string][]byte{}
	for _, at := range value[[]string](p, `Array.from(document.querySelectorAll("a[download]"), (a) => a.pathname)`) {
		files[strings.TrimPrefix(at, prefix)] = []byte("forged")
	}
	h.put(files)
	p.checked(h.page(panel))
	p.Do(chromedp.Evaluate[chromedp.Void](`document.querySelector("a[download='record.json']").click()`))
	p.Until(`!!document.querySelector("a[download='record.json'] + b")`)
}
