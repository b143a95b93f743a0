package linkedart_test

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/piprate/json-gold/ld"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/linkedart"
	"backleaf/record/toolcheck"
)

func panel(t *testing.T) (*record.Workshop, *record.Panel) {
	t.Helper()
	n, err := record.NewNumber("MR", 26, 1, "")
	if err != nil {
		t.Fatal(err)
	}
	var es []record.Entry
	for _, s := range []string{
		`{"kind":"studio","maker":"Élodie \"Probe\" <b>","mark":"MR","place":"Saltmere","link_base":"HTTPS://MARRENS.EXAMPLE/P/"}`,
		`{"kind":"material","key":"ply","name":"birch plywood","uses":["board"],"board":{"kind":"plywood","plies":3}}`,
		`{"kind":"material","key":"linen","name":"fine linen","uses":["cloth"],"cloth":{"fibre":"linen"}}`,
		`{"kind":"material","key":"sealer","name":"sealer","uses":["sealer"],"binder":"pva-dispersion"}`,
		`{"kind":"cut","at":"2019-21","panels":["N"],"batch":"a","size":"8 x 10 x 1/8 in","board":"ply"}`,
		`{"kind":"coat","at":"2019~","panels":["N"],"purpose":"sealer","faces":["front","back","edges"],"mix":[{"parts":1,"material":"sealer"}]}`,
		`{"kind":"cloth","at":"2026-05-02T14:05:00+02:00","panels":["N"],"faces":["front"],"cloth":"linen"}`,
		`{"kind":"paint","at":"unknown","panels":["N"],"medium":"oil","pigments":[{"name":"titanium white","colour_index":"PW 6"}]}`,
		`{"kind":"described","panels":["N"],"title":"Low water","signed":"lower right","subject":"an estuary"}`,
		`{"kind":"treatment","at":"2040-03","panels":["N"],"by":"a conservator","text":"surface cleaned","with":"water"}`,
		`{"kind":"condition","panels":["N"],"by":"a conservator","text":"sound"}`,
		`{"kind":"handed-over","panels":["N"],"how":"sale","private_sha256":"` + strings.Repeat("ab", 32) + `"}`,
	} {
		e, err := accept.Parse([]byte(strings.ReplaceAll(s, `"N"`, `"`+string(n)+`"`)))
		if err != nil {
			t.Fatalf("%s: %v", s, err)
		}
		e.Seq = int64(len(es) + 1)
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w, w.Panel(n)
}

// localContext answers the published context's address with the terms kept
// here: tests need no network.
type localContext struct{}

func (localContext) LoadDocument(u string) (*ld.RemoteDocument, error) {
	var doc any
	if err := json.Unmarshal(linkedart.Context(), &doc); err != nil {
		return nil, err
	}
	return &ld.RemoteDocument{DocumentURL: u, Document: doc}, nil
}

// TestQuads expands every document with two processors, json-gold (Go) and
// jsonld (npm), to the same canonical quads (URDNA2015).
func TestQuads(t *testing.T) {
	w, p := panel(t)
	docs, err := linkedart.Documents(w, p)
	if err != nil {
		t.Fatal(err)
	}
	if len(docs) != 8 {
		t.Fatalf("%d documents; expected the panel, the board, four layers on the front, one on the back, one on the edges", len(docs))
	}
	dir := t.TempDir()
	want := map[string]string{}
	for _, d := range docs {
		var doc any
		if err := json.Unmarshal(d.JSON, &doc); err != nil {
			t.Fatal(err)
		}
		opts := ld.NewJsonLdOptions("")
		opts.DocumentLoader = localContext{}
		opts.Format = "application/n-quads"
		opts.Algorithm = ld.AlgorithmURDNA2015
		q, err := ld.NewJsonLdProcessor().Normalize(doc, opts)
		if err != nil {
			t.Fatalf("%s: %v", d.Name, err)
		}
		want[d.Name] = q.(string)
		if n := strings.Count(q.(string), "\n"); n < 5 {
			t.Errorf("%s: only %d quads: a term is not in the context", d.Name, n)
		}
		// Every member must have become a quad: no term outside the context.
		for _, term := range []string{"_label", "type"} {
			if strings.Contains(q.(string), "<"+term+">") {
				t.Errorf("%s: %s was not mapped", d.Name, term)
			}
		}
		if err := os.WriteFile(filepath.Join(dir, d.Name), d.JSON, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if all := strings.Join(values(want), ""); strings.Contains(all, "sale") || strings.Contains(all, strings.Repeat("ab", 32)) {
		t.Error("a private matter is in the documents")
	}
	if !strings.Contains(want["panel.json"], "P46i") && !strings.Contains(want["front-01.json"], "P46i_forms_part_of> <HTTPS://MARRENS.EXAMPLE/P/") {
		t.Error("a layer does not say which panel it is part of")
	}
	toolcheck.Long(t) // npm fetches it
	toolcheck.Require(t, "node", "npm")
	secondProcessor(t, dir, want)
}

func values(m map[string]string) (out []string) {
	for _, v := range m {
		out = append(out, v)
	}
	return out
}

const nodeScript = `
const jsonld = require('jsonld'), fs = require('fs');
const ctx = JSON.parse(fs.readFileSync('context.json'));
const documentLoader = async url => ({contextUrl: null, document: ctx, documentUrl: url});
(async () => {
  const out = {};
  for (const f of process.argv.slice(2))
    out[f] = await jsonld.canonize(JSON.parse(fs.readFileSync(f)), {algorithm: 'URDNA2015', format: 'application/n-quads', documentLoader, safe: false});
  process.stdout.write(JSON.stringify(out));
})().catch(e => { console.error(e); process.exit(1); });
`

func secondProcessor(t *testing.T, dir string, want map[string]string) {
	t.Helper()
	for name, data := range map[string]string{"context.json": string(linkedart.Context()), "quads.js": nodeScript, "package.json": `{"private":true}`} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(data), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	run := func(name string, args ...string) []byte {
		c := exec.Command(name, args...)
		c.Dir = dir
		c.Stderr = os.Stderr
		out, err := c.Output()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		return out
	}
	if !toolcheck.Thorough() {
		if err := exec.Command("npm", "view", "jsonld", "version").Run(); err != nil {
			t.Skip("the package jsonld cannot be fetched here")
		}
	}
	run("npm", "install", "--silent", "--no-audit", "--no-fund", "jsonld@8.3.3")
	args := []string{"quads.js"}
	for name := range want {
		args = append(args, name)
	}
	var got map[string]string
	if err := json.Unmarshal(run("node", args...), &got); err != nil {
		t.Fatal(err)
	}
	for name, q := range want {
		if got[name] != q {
			t.Errorf("%s: the two processors differ:\n%s\n---\n%s", name, q, got[name])
		}
	}
}
