package bag_test

import (
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"backleaf/record/bag"
)

// What a manifest reads as is written and read back the same, and no path of
// it leads out of the bag.
func FuzzManifest(f *testing.F) {
	f.Add(helloSum + "  data/hello.txt\n")
	f.Add(helloSum + " *data/100%25%0a\r\n" + helloSum + "\tbagit.txt\r")
	f.Add(helloSum + "  data/../../x\nx")
	f.Fuzz(func(t *testing.T, text string) {
		m, errs := bag.ParseManifest(text, 128)
		for p := range m {
			if !filepath.IsLocal(p) || strings.Contains(p, `\`) {
				t.Fatalf("path %q", p)
			}
		}
		again, errs2 := bag.ParseManifest(bag.FormatManifest(m), 128)
		if len(errs2) != 0 || !maps.Equal(m, again) {
			t.Fatalf("%q (%v) became %q (%v)", m, errs, again, errs2)
		}
	})
}

func FuzzInfo(f *testing.F) {
	f.Add("Bagging-Date: 2026-05-02\nPayload-Oxum: 6.1\n")
	f.Add("A: b\n  folded\r\n\tmore\rB:\tc")
	f.Add("A: \n \n")
	f.Add(": x\n x\nA : b\nA:")
	f.Fuzz(func(t *testing.T, text string) {
		fields, _ := bag.ParseInfo(text)
		again, errs := bag.ParseInfo(bag.FormatInfo(fields))
		if len(errs) != 0 || !slices.Equal(fields, again) {
			t.Fatalf("%q became %q: %v", fields, again, errs)
		}
	})
}

// Hostile text is refused without panic, and no path leads out of the bag.
func FuzzFetchAndDeclaration(f *testing.F) {
	f.Add("https://example.org/x 5 data/x\n")
	f.Add("u - ../x\nu  7\tdata/a b%25")
	f.Add(declaration)
	f.Fuzz(func(t *testing.T, text string) {
		for _, p := range bag.ParseFetch(text) {
			if !filepath.IsLocal(p) {
				t.Fatalf("path %q", p)
			}
		}
		if err := bag.ParseDeclaration(text); err == nil && strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(strings.TrimRight(text, "\r\n"))+"\n" != declaration {
			t.Fatalf("declaration %q accepted", text)
		}
	})
}
