package certificate_test

import (
	"fmt"
	"strings"
	"testing"

	"backleaf/record/toolcheck"
)

// gallery are certificates of every kind: proportions of the photograph, titles
// of 1 and 160 characters, 3 and 15 layers, scripts, units, hazards, signed or not.
func gallery() map[string]func(t testing.TB) *bench {
	gallery := stress()
	described := func(title string) string {
		return fmt.Sprintf(`{"kind":"described","title":%q,"panels":["KB26-0001-K"]}`, title)
	}
	pictured := func(w, h int, more ...string) func(t testing.TB) *bench {
		return func(t testing.TB) *bench { k := finished(t, more...); k.photo(jpegFile(t, shore(w, h))); return k }
	}
	gallery["portrait"], gallery["landscape"], gallery["panorama"], gallery["square"] = pictured(600, 800), pictured(800, 600), pictured(1200, 400), pictured(500, 500)
	gallery["no photograph"] = func(t testing.TB) *bench { return finished(t) }
	gallery["title of 1"] = pictured(800, 600, described("X"))
	gallery["title of 160"] = pictured(800, 600, described(strings.Repeat("The long way round the lake in November ", 4)[:159]))
	toxic := `{"kind":"paint","medium":"oil","pigments":[{"name":"lead white","colour_index":"PW 1"},{"name":"cadmium red","colour_index":"PR 108"},{"name":"emerald green"}],"at":"2026-05-21","panels":["KB26-0001-K"]}`
	gallery["hazards"] = pictured(800, 600, toxic)
	var coats []string
	for i := range 9 {
		coats = append(coats, fmt.Sprintf(`{"kind":"paint","medium":"oil","at":"2026-05-%02d","panels":["KB26-0001-K"]}`, 21+i))
	}
	gallery["fifteen layers"] = pictured(800, 600, coats...)
	gallery["three layers"] = func(t testing.TB) *bench {
		return newBench(t, all([]string{studio}, shelf, []string{work[0], work[7], work[9]})...)
	}
	gallery["inches"] = func(t testing.TB) *bench {
		return newBench(t, all([]string{studio}, shelf, []string{strings.Replace(work[0], "30 x 40 cm x 3 mm", "8 1/2 x 11 x 1/8 in", 1)}, work[1:])...)
	}
	return gallery
}

// The gallery is measured by programs that did not draw it, and every line that
// a certificate must have is on it. With BACKLEAF_REQUIRE_TOOLS=1 it is all of
// them on both papers, else a few.
func TestGallery(t *testing.T) {
	toolcheck.Require(t, "qpdf", "pdftotext")
	n := 0
	for name, make := range gallery() {
		for _, paper := range []string{"a4", "letter"} {
			full := toolcheck.Thorough()
			if !full && (paper == "letter" || name != "hazards" && name != "inches") || full && paper == "letter" && len(name)%3 != 0 {
				continue
			}
			n++
			k := make(t)
			in := k.input(k.key())
			in.Paper = paper
			path := save(t, strings.ReplaceAll(name, " ", "-")+"-"+paper+".pdf", drawn(t, in))
			for _, f := range toolcheck.Findings(t, path, 13) {
				t.Errorf("%s, %s: %s", name, paper, f)
			}
			page := text(t, path)
			for _, want := range []string{"CERTIFICATE FOR A PAINTING", in.Workshop.Studio.Maker, "the same number stands on the back of the panel", "Signature of the maker", "Studio stamp",
				"Issued on 1 June 2026.", "SHA-256 of the record", "CARE AND DISPLAY", "WHAT THIS IS, AND IS NOT", "TO CHECK THIS CERTIFICATE", "openssl pkeyutl", "BUILD-UP"} {
				if !strings.Contains(strings.ReplaceAll(page, " ", ""), strings.ReplaceAll(want, " ", "")) {
					t.Errorf("%s, %s: %q is missing", name, paper, want)
				}
			}
			if name == "hazards" && !strings.Contains(page, "Hazard: Contains lead and cadmium. May contain") {
				t.Errorf("%s: the hazards are missing:\n%s", paper, page[:900])
			}
		}
	}
	t.Logf("%d certificates measured", n)
}
