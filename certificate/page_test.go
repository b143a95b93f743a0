package certificate_test

import (
	"encoding/xml"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"backleaf/record/seal"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

// The categories of Object ID stand on the page, or are said not to be
// recorded: with a full record and with an empty one. Inventory number and
// place of origin are two of the further ones that many use.
func TestObjectID(t *testing.T) {
	full := finished(t, `{"kind":"described","inscription":"on the back: for M.","distinguishing_features":"a knot at the upper left","type_of_object":"painting","panels":["KB26-0001-K"]}`)
	full.photo(jpegFile(t, shore(40, 30)))
	empty := stress()["nothing-known"](t)
	pages := map[string]string{}
	for name, k := range map[string]*bench{"full": full, "empty": empty} {
		pages[name] = text(t, save(t, name+".pdf", drawn(t, k.input(nil))))
	}
	_, missing, _ := strings.Cut(pages["empty"], "NOT RECORDED")
	missing, _, _ = strings.Cut(missing, "WHAT THIS IS")
	for _, c := range []struct{ category, full, empty string }{
		{"photographs", "", "photograph of the front"},
		{"type of object", "Object painting", ""},
		{"materials and techniques", "Oil on linen laid on birch plywood", "medium"},
		{"measurements", "30 × 40 cm × 3 mm", "size"},
		{"inscriptions and markings", "Inscribed on the back: for M.", "inscription or signature"},
		{"distinguishing features", "Features a knot", "istinguishing features"},
		{"title", "Low tide, evening", "title"},
		{"subject", "Subject tidal flats", "subject"},
		{"date or period", "Ada Example, 2026", "date of the work"},
		{"maker", "Ada Example", ""},
		{"inventory number", "KB26-0001-K", ""},
		{"place of origin", "THE STUDIO Ada Example Riga, Latvia", "place of the studio"},
		{"date documented", "Issued on 1 June 2026.", ""},
	} {
		if !strings.Contains(pages["full"], c.full) {
			t.Errorf("%s: %q is not on the page of a full record:\n%s", c.category, c.full, pages["full"])
		}
		if !strings.Contains(missing, c.empty) {
			t.Errorf("%s: %q is not said to be missing: %s", c.category, c.empty, missing)
		}
	}
	if _, lacks, _ := strings.Cut(pages["full"], "NOT RECORDED OR NOT KNOWN "); !strings.HasPrefix(lacks, "Thickness varnish, paint and cloth WHAT THIS IS") {
		t.Errorf("a full record lacks something but what nobody measures:\n%s", pages["full"])
	}
}

// Dimensions as Cataloging Cultural Objects 3.2.1 prints them (198 × 233 × 82
// cm), and published examples of museum cataloguing (26.6 × 19.1 cm, 17 × 13 cm).
func TestPublishedDimensions(t *testing.T) {
	for _, c := range []struct{ size, want string }{
		{"198 x 233 x 82 cm", "198 × 233 × 82 cm (78 × 91 3⁄4 × 32 1⁄4 in)"},
		{"26.6 x 19.1 cm", "26.6 × 19.1 cm (10 1⁄2 × 7 1⁄2 in)"},
		{"17 x 13 cm", "17 × 13 cm (6 3⁄4 × 5 1⁄8 in)"},
		{"8 1/2 x 11 x 1/8 in", "8 1⁄2 × 11 × 1⁄8 in (21.6 × 27.9 cm × 3.2 mm)"},
	} {
		k := newBench(t, all([]string{studio}, shelf, []string{strings.Replace(work[0], "30 x 40 cm x 3 mm", c.size, 1)}, work[1:])...)
		page := text(t, save(t, "c.pdf", drawn(t, k.input(nil))))
		if !strings.Contains(page, c.want) {
			t.Errorf("%s: %q is not on the page:\n%s", c.size, c.want, page)
		}
	}
}

// With every word of the catalogue masked, no letter is left on the page but
// those of the record, of figures and files, and of the command.
func TestNoWordOutsideTheCatalogue(t *testing.T) {
	for name, k := range map[string]*bench{"finished": finished(t), "missing": stress()["much-missing"](t), "layers": stress()["sixty-layers"](t)} {
		in := k.input(k.key())
		in.Catalogue = tell.English().Each(func(s string) string {
			return strings.Map(func(r rune) rune {
				if unicode.IsLetter(r) {
					return '#'
				}
				return r
			}, s)
		})
		var known strings.Builder
		known.Write(in.Deed.Record)
		d := in.Deed
		known.WriteString(strings.ToLower(fmt.Sprint(seal.DigestOf(d.Record), d.Key.Fingerprint(), " HTTPS://EXAMPLE.ORG/P/KB260001K openssl pkeyutl -verify -pubin -inkey studio.pem -rawin -in record.json -sigfile record.sig")) + " µm") // a symbol of the SI is the same in all languages
		recorded := strings.ToLower(known.String())
		page := text(t, save(t, name+".pdf", drawn(t, in)))
		for _, word := range strings.Fields(page) {
			letters := strings.ToLower(strings.TrimFunc(word, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }))
			if !strings.ContainsFunc(letters, unicode.IsLetter) || len(word) >= 44 && !strings.Contains(word, "#") { // the signature
				continue
			}
			if !strings.Contains(recorded, letters) {
				t.Errorf("%s: %q is neither in the catalogue nor in the record", name, word)
			}
		}
	}
}

// A language whose words are half as long again still fits, on two sides and two further pages.
func TestLongerLanguage(t *testing.T) {
	k := finished(t)
	k.photo(jpegFile(t, shore(400, 300)))
	in := k.input(k.key())
	word := regexp.MustCompile(`\pL{2,}`)
	in.Catalogue = tell.English().Each(func(s string) string {
		return word.ReplaceAllStringFunc(s, func(w string) string { return w + w[:len(w)/2] })
	})
	path := save(t, "c.pdf", drawn(t, in))
	if n := toolcheck.Run(t, "pdfinfo", path); !regexp.MustCompile(`Pages: +[234]\n`).MatchString(n) {
		t.Error(n)
	}
}

type box struct {
	XMin, YMin, XMax, YMax float64
	Text                   string
}

// boxes returns where each word stands on each page, in points.
func boxes(t testing.TB, path string) (pages [][]box, width, height float64) {
	t.Helper()
	var doc struct {
		Pages []struct {
			Width  float64 `xml:"width,attr"`
			Height float64 `xml:"height,attr"`
			Words  []struct {
				XMin float64 `xml:"xMin,attr"`
				YMin float64 `xml:"yMin,attr"`
				XMax float64 `xml:"xMax,attr"`
				YMax float64 `xml:"yMax,attr"`
				Text string  `xml:",chardata"`
			} `xml:"word"`
		} `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal([]byte(toolcheck.Run(t, "pdftotext", "-bbox", path, "-")), &doc); err != nil {
		t.Fatal(err)
	}
	for _, p := range doc.Pages {
		var words []box
		for _, w := range p.Words {
			words = append(words, box{w.XMin, w.YMin, w.XMax, w.YMax, w.Text})
		}
		pages, width, height = append(pages, words), p.Width, p.Height
	}
	return pages, width, height
}

// overlap reports that two words stand on each other. A box is as high as its
// face; a quarter above and below is what no letter of ours fills.
func (a box) overlap(b box) bool {
	da, db := (a.YMax-a.YMin)/4, (b.YMax-b.YMin)/4
	return a.XMin < b.XMax-0.5 && b.XMin < a.XMax-0.5 && a.YMin+da < b.YMax-db && b.YMin+db < a.YMax-da
}

// Whatever is asked of the page: nothing leaves its margins, no two words
// stand on each other, none stands on the photograph, and no word is lost.
func TestStress(t *testing.T) {
	for name, make := range stress() {
		for _, paper := range []string{"a4", "letter"} {
			if !toolcheck.Thorough() && (paper == "letter" || name != "longest" && name != "much-missing") {
				continue // all of them where there is time
			}
			t.Run(name+"-"+paper, func(t *testing.T) {
				k := make(t)
				in := k.input(k.key())
				in.Paper = paper
				path := save(t, "c.pdf", drawn(t, in))
				pages, width, height := boxes(t, path)
				side, ends := 24.0*72/25.4, 13.0*72/25.4
				for n, words := range pages {
					if len(words) == 0 {
						t.Errorf("page %d is empty", n+1)
					}
					picture := ink(t, path, n+1, width)
					for i, a := range words {
						if a.XMin < side-1 || a.XMax > width-side+1 || a.YMin < ends-1 || a.YMax > height-ends+1 {
							t.Errorf("page %d: %q leaves the margins: %+v", n+1, a.Text, a)
						}
						for _, b := range words[:i] {
							if a.overlap(b) {
								t.Errorf("page %d: %q and %q stand on each other: %+v %+v", n+1, b.Text, a.Text, b, a)
							}
						}
						if a.overlap(picture) {
							t.Errorf("page %d: %q stands on the photograph", n+1, a.Text)
						}
					}
				}
				if raw := toolcheck.Run(t, "pdftotext", "-raw", path, "-"); !strings.Contains(raw, "openssl pkeyutl -verify -pubin -inkey studio.pem \\\n-rawin -in record.json -sigfile record.sig\n") {
					t.Error("the command is not in its two lines")
				}
				page := strings.ReplaceAll(text(t, path), " ", "")
				d := in.Panel.Description()
				for _, s := range []string{d.Title, d.Signed, d.Inscription, d.Features, d.Subject, in.Workshop.Studio.Maker} {
					if s != "unknown" && !strings.Contains(page, strings.ReplaceAll(s, " ", "")) {
						t.Errorf("%q is not on the pages", s)
					}
				}
				for n := 2; n <= len(pages); n++ {
					if !strings.Contains(page, fmt.Sprintf("%dof%d", n, len(pages))) {
						t.Errorf("page %d of %d does not say so", n, len(pages))
					}
				}
			})
		}
	}
}

// ink renders a page and demands white margins; it returns the box of what is
// in colour, which only the photograph is, in points.
func ink(t testing.TB, path string, page int, width float64) box {
	t.Helper()
	const dpi = 72
	root := filepath.Join(t.TempDir(), "page")
	toolcheck.Run(t, "pdftoppm", "-r", fmt.Sprint(dpi), "-png", "-f", fmt.Sprint(page), "-l", fmt.Sprint(page), "-singlefile", path, root)
	f, err := os.Open(root + ".png")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	b := img.Bounds()
	const side, ends = 59, 34 // 21 mm and 12 mm
	inner := image.Rect(side, ends, b.Max.X-side, b.Max.Y-ends)
	colour := image.Rectangle{}
	for y := range b.Max.Y {
		for x := range b.Max.X {
			r, g, bl, _ := img.At(x, y).RGBA()
			if !(image.Point{X: x, Y: y}).In(inner) && min(r, g, bl) < 0xf000 {
				t.Fatalf("page %d: ink in the margin at %d, %d", page, x, y)
			}
			if max(r, g, bl)-min(r, g, bl) > 0x1000 {
				colour = colour.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return box{XMin: float64(colour.Min.X), YMin: float64(colour.Min.Y), XMax: float64(colour.Max.X), YMax: float64(colour.Max.Y)}
}
