package worksheet_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"backleaf/record/plan"
	"backleaf/record/plan/worksheet"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

func um(mm float64) int64 { return int64(mm*1000 + 0.5) }

func piece(height, width int64, grain plan.Grain, n int) plan.Piece {
	return plan.Piece{Height: height, Width: width, Grain: grain, Count: n}
}

// job is an order like those of a painter, on plywood with its grain along.
func job(t testing.TB, inches bool) worksheet.Job {
	t.Helper()
	o := plan.Order{Kerf: um(2.5), Sheets: []plan.Sheet{
		{Name: "ply-7", Length: um(2440), Width: um(1220), Trim: um(5), Grain: plan.First, Count: plan.Unlimited},
		{Name: "offcut-3", Length: um(820), Width: um(610), Grain: plan.First, Offcut: true, Count: 1}},
		Pieces: []plan.Piece{piece(um(400), um(500), plan.First, 5), piece(um(500), um(400), plan.First, 5), piece(um(300), um(600), plan.First, 6), piece(um(300), um(250), plan.First, 8), piece(um(150), um(100), plan.Free, 6)}}
	if inches {
		o.Pieces = []plan.Piece{piece(um(203.2), um(254), plan.First, 10), piece(um(279.4), um(355.6), plan.Free, 8), piece(um(304.8), um(406.4), plan.First, 8)}
	}
	p, err := plan.Sheets(o)
	if err != nil {
		t.Fatal(err)
	}
	cloth, err := plan.Bolt([]plan.Piece{piece(um(400), um(500), plan.First, 5), piece(um(500), um(400), plan.First, 5), piece(um(300), um(600), plan.First, 6)},
		plan.Cloth{BoltWidth: um(1500), Selvedge: um(15), Squaring: um(50), Oversize: um(25)})
	if err != nil {
		t.Fatal(err)
	}
	return worksheet.Job{Words: tell.English(), Title: "may", Maker: "Ada Exemple", Made: time.Date(2026, 5, 4, 9, 0, 0, 0, time.UTC), Plan: p, Board: "birch plywood", Inches: inches,
		Letter: inches, Cloth: &cloth, ClothName: "fine linen, bolt of 1500"}
}

func pdf(t testing.TB, j worksheet.Job) string {
	t.Helper()
	b, err := j.PDF()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "plan.pdf")
	if dir := os.Getenv("BACKLEAF_LOOK"); dir != "" { // to look at it
		path = filepath.Join(dir, filepath.Base(t.Name())+".pdf")
	}
	if err := os.WriteFile(path, b, 0o666); err != nil {
		t.Fatal(err)
	}
	return path
}

// PDF/A-1b by Apache PDFBox Preflight, an independent validator.
func TestPreflight(t *testing.T) {
	for name, inches := range map[string]bool{"mm": false, "inches": true} {
		t.Run(name, func(t *testing.T) {
			if out, err := toolcheck.Preflight(t, pdf(t, job(t, inches))); err != nil || !strings.Contains(out, "is a valid PDF/A-1b file") {
				t.Errorf("%v\n%s", err, out)
			}
		})
	}
}

// A page a sheet, on it the numbers of its panels and nobody else's.
func TestPages(t *testing.T) {
	j := job(t, false)
	for i := range 30 {
		j.Names = append(j.Names, "P"+string(rune('A'+i/10))+string(rune('0'+i%10))+"x")
	}
	path := pdf(t, j)
	for sheet := range j.Plan.Sheets {
		text := toolcheck.Run(t, "pdftotext", "-f", string(rune('2'+sheet)), "-l", string(rune('2'+sheet)), path, "-")
		on := map[string]bool{}
		for _, n := range regexp.MustCompile(`\bP[A-C][0-9]x\b`).FindAllString(text, -1) {
			if on[n] {
				t.Errorf("sheet %d: %s twice", sheet+1, n)
			}
			on[n] = true
		}
		n := 0
		for _, part := range j.Plan.Parts(sheet) {
			if part.Number > 0 {
				if n++; !on[j.Names[part.Number-1]] {
					t.Errorf("sheet %d: no %s", sheet+1, j.Names[part.Number-1])
				}
			}
		}
		if n != len(on) {
			t.Errorf("sheet %d: %d panels, %d named", sheet+1, n, len(on))
		}
	}
	if out := toolcheck.Run(t, "pdfinfo", path); !strings.Contains(out, "Pages:           5") {
		t.Errorf("summary, three sheets and the cloth are:\n%s", out)
	}
}

// The same job gives the same bytes, and markup in names stays text.
func TestSVG(t *testing.T) {
	j := job(t, false)
	j.Names = []string{"<script>alert(1)</script>", "&amp;"}
	for sheet := range j.Plan.Sheets {
		d, err := j.Drawing(sheet, 260, 120)
		if err != nil {
			t.Fatal(err)
		}
		svg := d.SVG()
		again, err := j.Drawing(sheet, 260, 120)
		if err != nil || !bytes.Equal(svg, again.SVG()) {
			t.Errorf("sheet %d is drawn in two ways", sheet+1)
		}
		for dec := xml.NewDecoder(bytes.NewReader(svg)); ; {
			tok, err := dec.Token()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			if e, ok := tok.(xml.StartElement); ok && e.Name.Local == "script" {
				t.Error("a name became markup")
			}
		}
		if d.WidthMM > 260 || d.HeightMM > 120 {
			t.Errorf("sheet %d is %v x %v", sheet+1, d.WidthMM, d.HeightMM)
		}
	}
}

// No word stands outside the catalogue and what people gave; single letters
// name cuts and offcuts.
func TestNoWordOutsideTheCatalogue(t *testing.T) {
	for _, inches := range []bool{false, true} {
		j := job(t, inches)
		j.Words = tell.English().Each(func(s string) string {
			return strings.Map(func(r rune) rune {
				if r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' {
					return '¤'
				}
				return r
			}, s)
		})
		j.Title, j.Maker, j.Board, j.ClothName = "1", "2", "3", "4"
		for i := range j.Plan.Order.Sheets {
			j.Plan.Order.Sheets[i].Name = "5"
		}
		for _, text := range []string{j.Text(), toolcheck.Run(t, "pdftotext", pdf(t, j), "-")} {
			if w := regexp.MustCompile(`[A-Za-z]{2,}.*`).FindString(text); w != "" {
				t.Errorf("a word outside the catalogue: %.60q", w)
			}
		}
	}
}

// What a person reads of an order of one sheet, typed by hand.
func TestText(t *testing.T) {
	p, err := plan.Sheets(plan.Order{Kerf: um(3), Pieces: []plan.Piece{piece(um(300), um(300), plan.Free, 20)},
		Sheets: []plan.Sheet{{Name: "full", Length: um(2440), Width: um(1220), Trim: um(5), Count: plan.Unlimited}}})
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(worksheet.Job{Words: tell.English(), Plan: p}.Text())
	for _, want := range []string{
		"20 of 300 × 300",
		"1 sheet full, 2440 × 1220. No cheaper set of sheets will do: that is proven.",
		"Board used up 1.838 m²; 97 % of it becomes panels.",
		"No better cutting is possible: that is proven, of cuts edge to edge that leave the rest in one strip.",
		"Fence or stop is set 2 times; 25 cuts, kerf 3 mm.",
		"1. True two edges that meet, 5 off each: the reference edges.",
		"2. First cuts, fence or rule at 300: 5 strips 300 × 1210, each from the edge just sawn; check: 300, 603, 906, 1209 and 1512 from the reference edge.",
		"3. Keep the rest A, 915 × 1210:",
		"4. a  Second cuts, stop or rule at 300: 4 from strip 1; 4 from strip 2; 4 from strip 3; 4 from strip 4; 4 from strip 5.",
		"5. Count: 20 × 300 × 300.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}

// A sum is said to be whole only if all that is laid has an amount, and all
// that has an amount a price.
func TestCostsIncomplete(t *testing.T) {
	price := plan.Price{Minor: 1250, Currency: "EUR"}
	board := plan.CostLine{Use: plan.Use{What: "board", Lot: "ply-1"}, Price: price, Priced: true}
	for _, x := range []struct {
		name  string
		wet   *plan.Wet
		lines []plan.CostLine
		whole bool
	}{
		{"no coats", nil, []plan.CostLine{board}, true},
		{"all known", &plan.Wet{Coats: []plan.CoatNeed{{}}}, []plan.CostLine{board}, true},
		{"some stays in the tray", &plan.Wet{Loss: plan.UsualLoss, Coats: []plan.CoatNeed{{}}}, []plan.CostLine{board}, true},
		{"a price is missing", nil, []plan.CostLine{board, {Use: plan.Use{What: "ground"}}}, false},
		{"an amount is missing", &plan.Wet{Coats: []plan.CoatNeed{{}, {Why: plan.NoAmount}}}, []plan.CostLine{board}, false},
		{"a material is missing", &plan.Wet{Coats: []plan.CoatNeed{{Why: plan.NoMix}}}, []plan.CostLine{board}, false},
	} {
		j := job(t, false)
		j.Acts, j.Wet, j.Costs, j.Sums = []plan.Act{{Name: "ground"}, {Name: "cloth"}}, x.wet, x.lines, []plan.Price{price}
		text := j.Text()
		if whole := strings.Contains(text, "Together 12.50"); whole != x.whole || strings.Contains(text, "incomplete") == x.whole {
			t.Errorf("%s: whole %v\n%s", x.name, whole, text)
		}
		if !strings.Contains(text, "Counted is what the panels take") {
			t.Errorf("%s: what is not counted is not said\n%s", x.name, text)
		}
	}
}

// Sheets that are cut alike are said once, with the same letters, and a page
// each; offcuts are lettered as they are named; in inches nothing is metric but
// the thickness of a board, and no usual length is crooked.
func TestAlike(t *testing.T) {
	p, err := plan.Sheets(plan.Order{Kerf: 3_175, Pieces: []plan.Piece{piece(um(406.4), um(508), plan.Free, 40)},
		Sheets: []plan.Sheet{{Name: "full", Length: um(2438.4), Width: um(1219.2), Trim: um(4.762), Grain: plan.First, Count: plan.Unlimited}}})
	if err != nil {
		t.Fatal(err)
	}
	j := job(t, true)
	j.Plan, j.Cloth = p, nil
	text := strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(j.Text())
	titles := 0
	for _, l := range strings.Split(text, "\n") {
		if strings.HasPrefix(l, "Sheet") {
			titles++
		}
	}
	if alike := regexp.MustCompile(`(?m)^Sheets \d to \d of \d, all alike: full`).MatchString(text); titles >= len(p.Sheets) || !alike {
		t.Errorf("%d sheets under %d titles\n%s", len(p.Sheets), titles, text)
	}
	letters := regexp.MustCompile(`(?:Keep the rest |Keep |, | and )([A-Z])(?:,| \()`).FindAllStringSubmatch(text, -1)
	for i, l := range letters {
		if want := string(rune('A' + i)); l[1] != want {
			t.Errorf("%s is named where %s is next", l[1], want)
		}
	}
	if len(letters) == 0 {
		t.Errorf("no offcut is named\n%s", text)
	}
	if m := regexp.MustCompile(`[0-9] (?:mm|cm|m|m²)\b`).FindString(text); m != "" || !strings.Contains(text, "sq ft") || !strings.Contains(text, "lengths in inches") {
		t.Errorf("%q in a plan in inches\n%s", m, text)
	}
}
