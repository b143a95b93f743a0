package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/certificate"
	"backleaf/certificate/dossier"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/form"
	"backleaf/record/studio/exchange"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

// freeWords are the free texts of what is about panels, each of which stands in
// one field only, by that field.
func freeWords(objects []object, panels bool) map[string]told {
	out := map[string]told{}
	for _, f := range fieldsOf(objects) {
		o := objects[f.index]
		if _, about := o["panels"]; about != panels {
			continue
		}
		each(o, "", f.kind.Fields(), func(path string, field record.Field, in object) {
			if s, ok := in[field.Name].(string); ok && path == f.path && field.Free() && s != record.Unknown {
				out[s] = f
			}
		})
	}
	return out
}

// What the dossier says as text it says as a page and as a PDF too; a
// certificate has what a cataloguer asks for.
func TestTracesOnPaper(t *testing.T) {
	toolcheck.Require(t, "pdftotext")
	objects := exampleObjects(t)
	_, w, err := fold(t, objects)
	if err != nil {
		t.Fatal(err)
	}
	var text, html, pdf, cert strings.Builder
	for _, p := range w.Panels {
		d := dossier.New(tell.English(), w, p, dossier.Book{})
		text.WriteString(must(d.Text()))
		html.Write(must(d.HTML()))
		pdf.WriteString(pdfText(t, must(d.PDF())))
		plain := p.With(slices.DeleteFunc(slices.Clone(p.Events), func(e record.Event) bool { return e.Body.Kind() == "photograph" })) // no file is at hand
		drawn := must(certificate.Draw(certificate.Input{Workshop: w, Panel: plain, Issued: time.Date(2033, 1, 1, 0, 0, 0, 0, time.UTC), Paper: "a4", Buyer: "the buyer"}))
		cert.WriteString(pdfText(t, drawn.PDF))
	}
	for mark, f := range freeWords(objects, true) {
		for name, said := range map[string]string{"page": html.String(), "PDF": pdf.String()} {
			if strings.Contains(text.String(), mark) && !strings.Contains(said, mark) {
				t.Errorf("dossier as %s: no trace of %s", name, f)
			}
		}
		if names("described.title described.inscription described.signed described.subject described.distinguishing_features described.medium_line described.own_reference described.type_of_object", f) &&
			!strings.Contains(strings.ToLower(cert.String()), mark) {
			t.Errorf("certificate: no trace of %s", f)
		}
	}
}

func pdfText(t *testing.T, pdf []byte) string {
	path := filepath.Join(t.TempDir(), "paper.pdf")
	if err := os.WriteFile(path, pdf, 0o666); err != nil {
		t.Fatal(err)
	}
	return toolcheck.Run(t, "pdftotext", path, "-")
}

// Whatever was written freely of a panel is found by its words, and all entries
// come out of an export as they went in.
func TestTracesInBook(t *testing.T) {
	ctx := context.Background()
	objects := exampleObjects(t)
	es, _, err := fold(t, objects)
	if err != nil {
		t.Fatal(err)
	}
	b := must(book.Create(ctx, filepath.Join(t.TempDir(), "book.sqlite")))
	defer b.Close()
	if _, err := b.Append(ctx, time.Date(2033, 1, 1, 0, 0, 0, 0, time.UTC), es...); err != nil {
		t.Fatal(err)
	}
	for mark, f := range freeWords(objects, true) {
		if slices.Contains([]record.Kind{"amended", "withdrawn"}, f.kind) {
			continue // told as a correction of what they change
		}
		found := 0
		if err := b.Panels(ctx, book.Narrow{Words: []book.Word{{Text: mark}}}, func(book.Present) error { found++; return nil }); err != nil || found == 0 {
			t.Errorf("find: no trace of %s: %v", f, err)
		}
	}
	var stored []form.Stored
	for _, e := range es {
		stored = append(stored, form.Stored{Seq: e.Seq, Entry: e, Bytes: must(e.Text())})
	}
	var out bytes.Buffer
	if err := exchange.Write(&out, stored); err != nil {
		t.Fatal(err)
	}
	i := 0
	for e, err := range exchange.Read("export", &out) {
		if err != nil {
			t.Fatal(err)
		}
		if got := must(e.Text()); !bytes.Equal(got, stored[i].Bytes) {
			t.Errorf("import: %s\nexport: %s", got, stored[i].Bytes)
		}
		i++
	}
	if i != len(stored) {
		t.Errorf("%d of %d entries", i, len(stored))
	}
}
