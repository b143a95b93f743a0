package sitecheck_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"backleaf/record/toolcheck"
)

// spoken is what a screen reader has to say of a page, in order: roles that a
// person moves by, with their names, and the texts between them.
func (p tab) spoken() (out []string) {
	p.Helper()
	tree, err := chromedp.Call(p.Context, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	if err != nil {
		p.Fatal(err)
	}
	nodes := map[accessibility.NodeID]*accessibility.Node{}
	for _, n := range tree.Nodes {
		nodes[n.NodeID] = n
	}
	said := func(v *accessibility.Value) (s string) {
		if v != nil {
			json.Unmarshal(v.Value, &s)
		}
		return s
	}
	var walk func(*accessibility.Node)
	walk = func(n *accessibility.Node) {
		role := said(n.Role)
		switch {
		case n.Ignored:
		case role == "StaticText":
			out = append(out, said(n.Name))
		case role == "heading":
			level := ""
			for _, x := range n.Properties {
				if x.Name == "level" {
					level = string(x.Value.Value)
				}
			}
			out = append(out, "heading "+level+": "+said(n.Name))
			return
		case slices.Contains([]string{"image", "link", "button", "textbox"}, role):
			out = append(out, role+": "+said(n.Name))
			return
		}
		for _, id := range n.ChildIDs {
			if c := nodes[id]; c != nil {
				walk(c)
			}
		}
	}
	walk(tree.Nodes[0])
	return out
}

// A screen reader reads the page in its order: what it is before what it says,
// levels of headings one below the other, everything with a name, nothing twice.
// Without script it reads the same, but for the check.
func TestReadAloud(t *testing.T) {
	_, site := demonstration(t)
	h := serve(t, site)
	p := open(t, 320, "light")
	p.checked(h.page(panel))
	spoken := p.spoken()
	begins := []string{"Panel ", "MR25-0003-V", "heading 1: Low water, Saltmere", "Odile Marrens, 2025", "oil on linen laid on birch plywood"}
	if len(spoken) < 20 || !slices.Equal(spoken[:5], begins) {
		t.Fatalf("it begins %q", spoken[:min(len(spoken), 8)])
	}
	var headings []string
	level := 0
	for _, s := range spoken {
		role, name, named := strings.Cut(s, ": ")
		if strings.HasPrefix(role, "heading ") {
			next := int(role[len(role)-1] - '0')
			if next > level+1 {
				t.Errorf("%q comes after a heading of level %d", s, level)
			}
			level = next
			headings = append(headings, name)
		}
		if named && name == "" {
			t.Errorf("a %s has no name", role)
		}
	}
	want := []string{"Low water, Saltmere", "Certificates", "The studio", "Build-up", "The same in words", "Care and display", "Not recorded or not known", "Corrected", "What this page is", "Check this page", "Check your certificate here", "By hand, without this page"}
	if !slices.EqualFunc(headings, want, strings.EqualFold) { // in capitals, as the style sets them
		t.Errorf("headings: %q", headings)
	}
	all := strings.Join(spoken, "\n")
	for _, s := range []string{"image: Photograph of the front: Low water, Saltmere", "image: Build-up of MR25-0003-V, cut through", "button: Choose files", "textbox: Or paste the text", "link: record.json", "link: studio@marrens.example", string(words["signature"])} {
		if strings.Count(all, s) != 1 {
			t.Errorf("%q is read %d times", s, strings.Count(all, s))
		}
	}
	if strings.Count(all, "Hydrocarbon resin varnish") != 2 { // among the facts and in the list
		t.Errorf("the layers are read more than once:\n%s", all)
	}
	if live := value[string](p, `document.querySelector("#check").getAttribute("aria-live")`); live != "polite" {
		t.Error("nobody hears what the check says")
	}

	q := open(t, 320, "light")
	if _, err := chromedp.Call(q.Context, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
		t.Fatal(err)
	}
	q.Do(chromedp.Navigate(h.page(panel)))
	without := q.spoken()
	rest := slices.DeleteFunc(slices.Clone(spoken), func(s string) bool { return slices.Contains(without, s) })
	for _, s := range without {
		if !slices.Contains(spoken, s) {
			t.Errorf("read without script only: %q", s)
		}
	}
	checks := value[string](p, `document.querySelector("#check").innerText`)
	for _, s := range rest {
		if _, name, ok := strings.Cut(s, ": "); !strings.Contains(checks, strings.TrimSpace(s)) && !(ok && strings.Contains(checks, name)) {
			t.Errorf("not read without script, and no part of the check: %q", s)
		}
	}
	if len(without) < len(spoken)/2 {
		t.Errorf("without script only %d of %d are read", len(without), len(spoken))
	}
}

// On paper stands what the page says, but nothing of the check: a sheet proves nothing.
func TestPrinted(t *testing.T) {
	toolcheck.Require(t, "pdftotext")
	_, site := demonstration(t)
	p := open(t, 1280, "dark")
	p.checked(serve(t, site).page(panel))
	pdf, err := chromedp.Run(p.Context, chromedp.PrintToPDF())
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(printed(t, pdf)), " ")
	for _, s := range []string{"Low water, Saltmere", "Hydrocarbon resin varnish", "Care and display", "openssl pkeyutl", "This sheet proves nothing", "HTTPS://MARRENS.EXAMPLE/P/MR250003V", "1/"} {
		if !strings.Contains(strings.ToLower(text), strings.ToLower(s)) {
			t.Errorf("%q is not on paper:\n%s", s, text)
		}
	}
	for _, code := range []string{"bring-check", "whole", "signature"} {
		if says(text, code) {
			t.Errorf("%q is on paper", words[code])
		}
	}
}

// light bounds what a browser loads of a page beside its photograph, in bytes.
const light = 60_000

// All that a browser loads of a page, its style and its script with it, is light.
func TestLight(t *testing.T) {
	_, site := demonstration(t)
	h := serve(t, site)
	for _, n := range []string{panel, "MR2500019", "MR250007Z"} {
		p := open(t, 1280, "light")
		p.checked(h.page(n))
		loaded, all := map[string]bool{}, 0
		for _, a := range p.Asked() {
			path := strings.TrimPrefix(a, h.URL+prefix)
			if strings.HasSuffix(path, "/") {
				path += "index.html"
			}
			if !loaded[path] && !strings.HasSuffix(path, ".jpeg") {
				loaded[path] = true
				all += len(read(t, site+"/"+strings.ReplaceAll(path, "//", "/")))
			}
		}
		if t.Logf("%s: %d bytes in %d files", n, all, len(loaded)); all > light || len(loaded) < 4 {
			t.Errorf("%s: %d bytes: %s", n, all, fmt.Sprint(loaded))
		}
	}
}
