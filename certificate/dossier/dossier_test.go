package dossier_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/xml"
	"errors"
	"fmt"
	"image"
	"image/png"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"backleaf/certificate/dossier"
	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/paper"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
	"backleaf/record/trade"
)

func pdf(t testing.TB, d *dossier.Document) []byte {
	t.Helper()
	out, err := d.PDF()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func text(t testing.TB, d *dossier.Document) string {
	t.Helper()
	out, err := d.Text()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func html(t testing.TB, d *dossier.Document) string {
	t.Helper()
	out, err := d.HTML()
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// stress are dossiers of panels that fill, break or leave empty a page.
func stress(t testing.TB) map[string]*dossier.Document {
	t.Helper()
	out := map[string]*dossier.Document{"afternoon": afternoonDossier(t)}
	add := func(name, history string) {
		w, p := panel(t, history)
		out[name] = dossier.New(tell.English(), w, p, dossier.Book{})
	}
	add("empty", `
"kind":"studio","maker":"Ada Exemple","mark":"DM","paper":"letter"
"kind":"cut","panels":["DM26-0007-B"],"batch":"old","size":"unknown x unknown"`)
	var many strings.Builder
	many.WriteString(strings.TrimSpace(afternoon))
	for i := range 60 {
		fmt.Fprintf(&many, "\n"+`"kind":"coat","at":"2026-05-%02dT%02d:10:00+03:00","panels":["DM26-0007-B"],"purpose":"ground","faces":["front"],"mix":[{"parts":1,"material":"ground","lot":"ground-1"}],"dry_film":"%d µm","humidity":"%d %%","temperature":"19 °C"`,
			5+i/4, 8+i%4*3, 40+i, 45+i%11)
	}
	add("sixty", many.String())
	long := strings.TrimSpace(strings.Repeat("The very long evening of the low tide, ", 7))
	add("long", strings.NewReplacer("Low tide, evening", long, "Ada Exemple", "Maximiliane-Friederike von der Hohen Erfindung zu Beispielsburg", "No lifting.",
		strings.TrimSpace(strings.Repeat("No lifting anywhere; looked at in raking light. ", 60)), "harbour with two boats", strings.Repeat("boat", 70)).Replace(afternoon))
	add("scripts", strings.NewReplacer("Low tide, evening", "Вечер, отлив · Ἄμπωτις", "Ada Exemple", "Юлия Примерова-Παράδειγμα").Replace(afternoon))
	add("hostile", strings.NewReplacer("Low tide, evening", hostile).Replace(afternoon))
	return out
}

// hostile tries markup, PDF operators and places of a message. A right-to-left
// override is refused by the record, and set into the document by the test.
const hostile = `</title><script>alert(1)</script>) Tj ET Q (x\\) <b>&amp; %PDF {n}{title} ${x}`

// PDF/A-1b by Apache PDFBox Preflight, an independent validator.
func TestPreflight(t *testing.T) {
	for name, d := range stress(t) {
		path := save(t, name+".pdf", pdf(t, d))
		if name != "afternoon" && name != "scripts" && name != "empty" {
			continue // the validator takes long, and these use nothing else
		}
		if out, err := toolcheck.Preflight(t, path); err != nil {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
		if out := toolcheck.Run(t, "qpdf", "--check", path); !strings.Contains(out, "No syntax or stream encoding errors found") {
			t.Errorf("%s: %s", name, out)
		}
	}
}

// The same record gives the same bytes, of all three kinds.
func TestSameBytes(t *testing.T) {
	a, b := afternoonDossier(t), afternoonDossier(t)
	if !bytes.Equal(pdf(t, a), pdf(t, b)) || text(t, a) != text(t, b) || html(t, a) != html(t, b) {
		t.Error("the same record gave two dossiers")
	}
}

// Every category of Object ID stands in the dossier of any panel: the
// photographs, nine questions and description of the checklist, and the five
// categories that many use besides (Introduction to Object ID, Getty 1999).
func TestObjectID(t *testing.T) {
	for name, d := range stress(t) {
		got := map[string]string{}
		for _, p := range identification(t, d) {
			got[p.Name] = p.Value
		}
		for _, c := range []string{"Photographs", "Type of object", "Materials and techniques", "Measurements", "Inscriptions and markings", "Distinguishing features", "Title", "Subject",
			"Date or period", "Maker", "Short description", "Inventory number", "Related written material", "Place of origin", "Cross references", "Date documented"} {
			if got[c] == "" {
				t.Errorf("%s: nothing under %q", name, c)
			}
		}
	}
}

func identification(t *testing.T, d *dossier.Document) dossier.Pairs {
	t.Helper()
	for _, i := range d.Sections[0].Items {
		if p, ok := i.(dossier.Pairs); ok {
			return p
		}
	}
	t.Fatal("the first section identifies nothing")
	return nil
}

// What a conservator asks of the one full history, each with where it is said.
func TestAnswers(t *testing.T) {
	flat := strings.Join(strings.Fields(text(t, afternoonDossier(t))), " ")
	for _, want := range []string{
		"oil on linen laid on birch plywood",
		"30 × 40 cm × 3 mm (11 3/4 × 15 3/4 × 1/8 in)",
		"along the width", "E1", "3 d", "P-2206",
		"18 threads/cm × 17 threads/cm (as stated for the product: weaver's sheet, 2025)",
		"lead white (PW", "shellac",
		"Hydrocarbon resin varnish, satin, removable by a conservator with white spirit (typical for this kind; test first)",
		"21.5 °C, 57 %", "Test first; a conservator decides.", "from memory of Horie",
		"contains lead. Do not sand dry", "Usual cautions; local rules come first.",
		"estimate for a flat board", "0.12 %", "local rules come first",
		"E17 changed, faces: back → back and edges (its edges were done too)",
		"root hash was 5a5a5a", "openssl pkeyutl -verify",
	} {
		if !strings.Contains(flat, want) {
			t.Errorf("%q is not in the dossier", want)
		}
	}
}

// A thickness says how it is known wherever it stands.
func TestThicknessIsMarked(t *testing.T) {
	n := 0
	for _, s := range afternoonDossier(t).Sections {
		for _, i := range s.Items {
			tab, ok := i.(dossier.Table)
			for k := range tab.Columns {
				if !ok || tab.Columns[k].Head != "Dry thickness" {
					continue
				}
				for _, row := range tab.Rows {
					for _, one := range strings.Split(row[k], ";") {
						if strings.Contains(one, "µm") {
							n++
							if !strings.Contains(one, "estimate") && !strings.Contains(one, "measured") {
								t.Errorf("%q does not say how it is known", one)
							}
						}
					}
				}
			}
		}
	}
	if n < 5 {
		t.Errorf("only %d thicknesses were looked at", n)
	}
}

// All three renderings say the same: what is text in one is in the others.
func TestRenderingsAgree(t *testing.T) {
	d := afternoonDossier(t)
	page := toolcheck.Run(t, "pdftotext", "-layout", save(t, "d.pdf", pdf(t, d)), "-")
	for _, out := range []string{page, text(t, d), html(t, d)} {
		flat := strings.Join(strings.Fields(out), " ")
		for i, s := range d.Sections {
			// Section titles are set in capitals on the page.
			if !strings.Contains(strings.ToLower(flat), strings.ToLower(fmt.Sprintf("%d %s", i+1, s.Title))) {
				t.Errorf("section %q is missing", s.Title)
			}
		}
		for _, want := range []string{"Quayside ground", "R. Invented", "DM26-0007-", "4471B"} {
			if !strings.Contains(flat, want) {
				t.Errorf("%q is missing", want)
			}
		}
	}
}

// Text from outside stays text.
func TestHostile(t *testing.T) {
	d := stress(t)["hostile"]
	d.Title += " \u202egnirts\x1b[31m"
	page := html(t, d)
	if strings.Contains(page, "<script") || strings.Contains(page, "\u202e") {
		t.Error("markup or an override got into the page")
	}
	if !strings.Contains(page, "&lt;script&gt;") {
		t.Error("the title is not in the page")
	}
	if out := text(t, d); strings.ContainsAny(out, "\u202e\x1b") || !strings.Contains(out, "[U+202E]") {
		t.Error("the text does not show the override for what it is")
	}
	flat := strings.Join(strings.Fields(toolcheck.Run(t, "pdftotext", save(t, "d.pdf", pdf(t, d)), "-")), " ")
	if !strings.Contains(flat, "Tj ET Q (x\\)") || !strings.Contains(flat, "{n}{title}") {
		t.Errorf("the title is not on the page as it was written: %s", flat[:300])
	}
}

// A character that no face has is named with where it was recorded.
func TestMissingGlyph(t *testing.T) {
	w, p := panel(t, strings.ReplaceAll(afternoon, "harbour with two boats", "a ship \u1350"))
	_, err := dossier.New(tell.English(), w, p, head).PDF()
	var g *paper.GlyphError
	if !errors.As(err, &g) || g.Rune != '\u1350' || g.Field != "Subject" {
		t.Errorf("%v", err)
	}
}

// The page is well-formed, refers to nothing outside, and its drawings have
// titles and descriptions.
func TestPage(t *testing.T) {
	for name, d := range stress(t) {
		page := html(t, d)
		x := xml.NewDecoder(strings.NewReader(page))
		x.Strict, x.AutoClose, x.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
		ids := map[string]bool{}
		for {
			tok, err := x.Token()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			e, ok := tok.(xml.StartElement)
			if !ok {
				continue
			}
			switch e.Name.Local {
			case "script", "link", "img", "iframe", "object", "a":
				t.Errorf("%s: a %s on the page", name, e.Name.Local)
			}
			for _, a := range e.Attr {
				if a.Name.Local == "id" && ids[a.Value] {
					t.Errorf("%s: id %q stands twice", name, a.Value)
				}
				if a.Name.Local == "id" {
					ids[a.Value] = true
				}
				if a.Name.Local == "src" || a.Name.Local == "href" && !strings.HasPrefix(a.Value, "#") {
					t.Errorf("%s: %s=%q", name, a.Name.Local, a.Value)
				}
			}
		}
		if n, m := strings.Count(page, "<svg "), strings.Count(page, "<desc "); n == 0 || n != m {
			t.Errorf("%s: %d drawings, %d descriptions", name, n, m)
		}
	}
}

// A masked catalogue leaves no letter but those that people recorded and the
// texts of the rules of thumb.
func TestNoWordOutsideTheCatalogue(t *testing.T) {
	masked := tell.English().Each(func(s string) string {
		return strings.Map(func(r rune) rune {
			if unicode.IsLetter(r) {
				return '#'
			}
			return r
		}, s)
	})
	w, p := panel(t, afternoon)
	other := strings.Builder{}
	other.WriteString(afternoon + string(number(t)) + strings.Join(sources(), " "))
	for _, r := range check.Rules {
		other.WriteString(r.Source)
	}
	allowed := strings.ToLower(other.String()) + " µm mm rh sha " + head.Root + " the plywood association's figure of per as given in"
	allowed += strings.ReplaceAll(allowed, "-", "") // a line ends after a hyphen, and pdftotext takes it away
	d := dossier.New(masked, w, p, head)
	page := toolcheck.Run(t, "pdftotext", save(t, "d.pdf", pdf(t, d)), "-") // with the words in the drawings
	for _, word := range regexp.MustCompile(`\pL+`).FindAllString(text(t, d)+page, -1) {
		if !strings.Contains(allowed, strings.ToLower(word)) {
			t.Errorf("%q is neither in the catalogue nor in the record", word)
		}
	}
}

// sources are the publications behind the effects on aged films.
func sources() []string {
	var out []string
	for _, b := range record.Words("Binder") {
		if _, rests, ok := trade.EffectsOn(record.Binder(b)); ok {
			out = append(out, rests.Works[0].Title())
		}
	}
	return out
}

// No word of the lists of the record is printed raw, whatever is recorded.
func TestExamples(t *testing.T) {
	for _, d := range examples(t, tell.English()) {
		pdf(t, d)
		out := text(t, d)
		for _, list := range []string{"Binder", "BoardKind", "PaintMedium", "Weave", "ThreadRun", "PhotoRole"} {
			for _, word := range record.Words(list) {
				if strings.Contains(word, "-") && regexp.MustCompile(`[^-\w]`+word+`[^-\w]`).MatchString(out) && word != "wet-in-wet" && word != "water-mixable-oil" {
					t.Errorf("%q is printed as it is recorded", word)
				}
			}
		}
	}
}

// Photographs that are at hand are shown, upright and in the order of the
// record; of one that is not, the dossier says so and stands all the same.
func TestPictures(t *testing.T) {
	var file bytes.Buffer
	img := image.NewGray(image.Rect(0, 0, 80, 60))
	for i := range img.Pix {
		img.Pix[i] = byte(i)
	}
	if err := png.Encode(&file, img); err != nil {
		t.Fatal(err)
	}
	const kept = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"
	more := strings.TrimSpace(afternoon)
	for _, role := range []string{"back", "edge"} {
		more += "\n" + `"kind":"photograph","at":"2026-08-12","panels":["DM26-0007-B"],"role":"` + role + `","sha256":"` + kept + `","media_type":"image/png","width_px":80,"height_px":60`
	}
	digest := fmt.Sprintf("%x", sha256.Sum256(file.Bytes()))
	w, p := panel(t, strings.Replace(more, `"role":"front","sha256":"`+kept, `"role":"front","sha256":"`+digest, 1))
	book := head
	book.Photograph = func(ph record.Photograph) ([]byte, error) {
		if ph.Role == "back" {
			return nil, errors.New("gone")
		}
		return file.Bytes(), nil
	}
	d := dossier.New(tell.English(), w, p, book)
	images := toolcheck.Run(t, "pdfimages", "-list", save(t, "d.pdf", pdf(t, d)))
	if n := strings.Count(images, " image "); n != 1 {
		t.Errorf("%d pictures in the file, want 1:\n%s", n, images)
	}
	page := html(t, d)
	if strings.Count(page, "data:image/jpeg;base64,") != 1 || !strings.Contains(page, "Photograph: back (E35). Its file is not at hand.") ||
		!strings.Contains(page, "Photograph: edge (E36). The file at hand is not the one on record.") {
		t.Error("the page does not show one photograph and name the others")
	}
}

// A single reading stands on an axis of two degrees and of ten per cent, in
// whole figures; the first paint, on its ground, is lean and not leaner.
func TestOneReading(t *testing.T) {
	w, p := panel(t, `"kind":"studio","maker":"R. Invented","mark":"DM"
"kind":"cut","at":"2026-05-02T13:40:33+03:00","panels":["DM26-0007-B"],"batch":"b","size":"30 x 40 cm x 3 mm","settled":"1 weeks"
"kind":"coat","at":"2026-05-02T14:05:00+03:00","panels":["DM26-0007-B"],"purpose":"ground","faces":["front"],"temperature":"20 °C","humidity":"98 %"
"kind":"paint","at":"2026-06-25T10:00:00+03:00","panels":["DM26-0007-B"],"medium":"oil","oil_content":"lean"
"kind":"paint","at":"2026-07-25T10:00:00+03:00","panels":["DM26-0007-B"],"medium":"oil","oil_content":"lean"`)
	d := dossier.New(tell.English(), w, p, head)
	page := toolcheck.Run(t, "pdftotext", "-layout", save(t, "d.pdf", pdf(t, d)), "-")
	for _, v := range []string{"19", "20", "21", "90", "95", "100"} {
		if !regexp.MustCompile(`(?m)^\s*(°C|% RH)?\s*` + v + `$`).MatchString(page) {
			t.Errorf("%s is not on an axis", v)
		}
	}
	for _, never := range []string{"19.95", "105", "1 weeks", ":33"} {
		if strings.Contains(page, never) {
			t.Errorf("%q is on the page", never)
		}
	}
	if n := strings.Count(page, "leaner than the layer below"); n != 1 && strings.Count(page, "lean") != 3 {
		t.Errorf("leaner %d times", n)
	}
}

// Measured by programs that did not draw it: type, places, breaks; each section
// has a bookmark.
func TestBookmarks(t *testing.T) {
	toolcheck.Long(t)
	for name, d := range stress(t) {
		path := save(t, name+".pdf", pdf(t, d))
		for _, f := range toolcheck.Findings(t, path, 14) {
			t.Errorf("%s: %s", name, f)
		}
		var titles []string
		for _, o := range regexp.MustCompile(`"/Title": "u:([^"]*)"`).FindAllStringSubmatch(toolcheck.Run(t, "qpdf", "--json=2", path), -1) {
			titles = append(titles, o[1])
		}
		for _, s := range append([]dossier.Section{d.Glance}, d.Sections...) {
			if !slices.Contains(titles, s.Title) {
				t.Errorf("%s: no bookmark for %q", name, s.Title)
			}
		}
	}
}

// What was found at a place stands on the plan by its number, an edge that
// carries something is drawn.
func TestFeaturesAndEdges(t *testing.T) {
	text := afternoon + `"kind":"feature","at":"2026-05-02","panels":["DM26-0007-B"],"what":"knot","face":"back","from_left":"82 mm","from_top":"140 mm","size":"9 x 12 mm"
"kind":"feature","at":"2026-05-03","panels":["DM26-0007-B"],"what":"joint","face":"edges","note":"lower edge"
`
	w, p := panel(t, text)
	d := dossier.New(tell.English(), w, p, dossier.Book{})
	page := toolcheck.Run(t, "pdftotext", "-layout", save(t, "marks.pdf", pdf(t, d)), "-")
	page = strings.Join(strings.Fields(page), " ")
	for _, want := range []string{"1: knot, back, 82 mm from the left and 140 mm from the top, seen on that face, 9 × 12 mm (E", "2: joint, edges, lower edge (E", "An edge cut through, from the outside to the board", "OUTSIDE", "To scale,"} {
		if !strings.Contains(page, want) {
			t.Errorf("%q is not in the dossier", want)
		}
	}
	web := html(t, d)
	if !strings.Contains(web, "1: knot, back, 82") {
		t.Error("a reader who cannot see the plan is not told of the knot")
	}
}
