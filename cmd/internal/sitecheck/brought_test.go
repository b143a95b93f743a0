package sitecheck_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"

	"backleaf/record/toolcheck"
)

// choose chooses files in the field for them.
func (p tab) choose(files ...string) {
	p.Helper()
	p.Do(chromedp.SetUploadFiles("#bring-files", files))
}

// drop drags files from the desk onto the page and lets them go.
func (p tab) drop(files ...string) {
	p.Helper()
	at := value[[]float64](p, `(() => { const box = document.querySelector(".bring"); box.scrollIntoView({ block: "center" });
		const r = box.getBoundingClientRect(); return [r.x + r.width / 2, r.y + 20]; })()`)
	for _, kind := range []input.DispatchDragEventType{input.DispatchDragEventTypeDragEnter, input.DispatchDragEventTypeDragOver, input.DispatchDragEventTypeDrop} {
		drag := input.DispatchDragEventParams{Type: kind, X: at[0], Y: at[1], Data: &input.DragData{Items: []*input.DragDataItem{}, Files: files, DragOperationsMask: 1}}
		if _, err := chromedp.Call(p.Context, input.DispatchDragEvent, drag); err != nil {
			p.Fatal(err)
		}
	}
}

// A certificate that is brought, chosen or dropped, is known or not, and the
// page says which.
func TestBrought(t *testing.T) {
	dir, site := demonstration(t)
	h := serve(t, site)
	p := open(t, 1280, "light")
	five := attached(t, dir)
	write := func(data []byte) string {
		path := filepath.Join(t.TempDir(), "certificate.pdf")
		if err := os.WriteFile(path, data, 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	pdf := filepath.Join(dir, "certificate.pdf")
	changed := filepath.Join(t.TempDir(), "record.json")
	if err := os.WriteFile(changed, bytes.Replace(read(t, five[0]), []byte("plywood"), []byte("Plywood"), 1), 0o644); err != nil {
		t.Fatal(err)
	}
	again := filepath.Join(t.TempDir(), "record (1).json")
	if err := os.WriteFile(again, read(t, five[0]), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what  string
		files []string
		says  []string
		fails bool
	}{
		{"the five files", five, []string{"deed-known", "deed-key", "head", "proof"}, false},
		{"saved twice", append([]string{again}, five[1:]...), []string{"deed-known", "deed-key"}, false},
		{"record without its signature", five[:1], []string{"deed-known"}, false},
		{"the very PDF", []string{pdf}, nil, false},
		{"another PDF", []string{write(append(read(t, pdf), '\n'))}, nil, false},
		{"a changed record", append([]string{changed}, five[1:]...), []string{"deed-unknown"}, true},
		{"a folder", []string{dir}, nil, false},
	} {
		for how, bring := range map[string]func(...string){"chosen": p.choose, "dropped": p.drop} {
			if c.what == "a folder" && how == "chosen" {
				continue // a browser lets nobody choose one
			}
			p.checked(h.page(panel))
			bring(c.files...)
			text := p.brought()
			for _, code := range c.says {
				if !says(text, code) {
					t.Errorf("of %s, %s, it does not say %q but\n%s", c.what, how, words[code], text)
				}
			}
			if strings.Contains(text, string(words["fails"])) != c.fails {
				t.Errorf("of %s, %s, it says\n%s", c.what, how, text)
			}
			want := map[string]string{"the very PDF": "byte for byte, the certificate issued on 2 March 2026", "another PDF": "is not a file that this page knows",
				"a changed record": "the signature does not hold", "a folder": "is none of the files", "record without its signature": "are needed too"}[c.what]
			if !strings.Contains(text, want) {
				t.Errorf("of %s, %s, it says\n%s", c.what, how, text)
			}
		}
	}

	// The text of the large symbol, as a camera reads it.
	scan := filepath.Join(t.TempDir(), "scan")
	toolcheck.Run(t, "pdftoppm", "-r", "200", "-gray", "-png", pdf, scan)
	symbols := toolcheck.Run(t, "zbarimg", "-q", "--raw", scan+"-2.png")
	note := symbols[strings.Index(symbols, "backleaf/"):]
	for _, c := range []struct{ text, code string }{{note, "note"}, {strings.Replace(note, "Low water", "High water", 1), "note-not"}} {
		p.checked(h.page(panel))
		p.Do(chromedp.SetValue("#bring-symbol", c.text), chromedp.Click(".bring button"))
		if text := p.brought(); !says(text, c.code) {
			t.Errorf("of the symbol it says\n%s", text)
		}
	}
	if f := p.Faults(); f != nil {
		t.Errorf("the browser complains: %q", f)
	}
}
