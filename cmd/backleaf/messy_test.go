package main

import (
	"bytes"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
)

// TestMessySheet reads three hundred rows as people make them: dates in three
// languages, prices with signs, names of materials by ear, sizes with and without
// units, empty cells, a quotation mark too many. What is read, what is refused
// and why fits a screen of 40 lines of 80 columns at the first dry run.
func TestMessySheet(t *testing.T) {
	t.Chdir(t.TempDir())
	var out bytes.Buffer
	env := map[string]string{"COLUMNS": "80"}
	a := &app{in: strings.NewReader(""), out: &out, err: &out, env: func(k string) string { return env[k] }, now: func() time.Time { return actsNow }}
	run := func(words ...string) (int, string) {
		out.Reset()
		code := a.run(t.Context(), words)
		return code, out.String()
	}
	data, bad := messy()
	for name, text := range map[string]string{"panels.csv": data, "mapping.json": messyMapping} {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, words := range [][]string{{"studio", "new", "--maker", "Anna", "--mark", "KB", "--currency", "EUR"},
		{"material", "starter", "birch-ply-3mm", "mdf-3mm", "linen-fine", "acrylic-sealer", "acrylic-ground", "hydrocarbon-varnish"}} {
		if code, said := run(words...); code != 0 {
			t.Fatal(words, said)
		}
	}
	sheet := []string{"import", "panels.csv", "--mapping", "mapping.json"}
	code, said := run(append(sheet, "--dry-run")...)
	lines := strings.Count(said, "\n")
	t.Logf("%d lines\n%s", lines, said)
	if code != exitError || lines > 40 || lines < 24 || regexp.MustCompile(".{81}").MatchString(said) {
		t.Errorf("exit code %d, %d lines", code, lines)
	}
	rows, plain := 0, strings.Join(strings.Fields(said), " ")
	for column, n := range bad {
		rows += n
		if !slices.ContainsFunc(strings.Split(plain, "panels.csv, "), func(kind string) bool {
			return strings.Contains(kind, column) && strings.Contains(kind, fmt.Sprintf("(and %d more like it)", n-1))
		}) {
			t.Errorf("%s: %d cells are refused, and it does not say so", column, n)
		}
	}
	if want := fmt.Sprintf(" %d rows refused", rows); !strings.Contains(plain, want) {
		t.Errorf("it does not say%s", want)
	}
	if code, said := run(append(sheet, "--rows-that-pass")...); code != 0 || !strings.Contains(said, fmt.Sprintf("%d panels", 300-rows)) {
		t.Errorf("written: %d\n%s", code, said)
	}
}

const messyMapping = `{"backleaf": "mapping", "v": 1,
 "columns": {"Nr.": "own_reference", "Höhe": "height", "Breite": "width", "Support": "board", "Cloth": "cloth", "Paint": "paint", "Titel": "title",
   "Jahr": "made", "Sold to": "handover_to", "Preis": "handover_price", "Sold on": "handover_date"},
 "constants": {"batch": "old", "depth": "3", "cut": "unknown", "handover": "sale"},
 "shelf": {"ply": "birch-ply-3mm", "Birke": "birch-ply-3mm", "MDF": "mdf-3mm", "linen": "linen-fine", "Leinen": "linen-fine"},
 "words": {"paint": {"öl": "oil", "oils": "oil", "huile": "oil", "acryl": "acrylic"}, "cloth": {"-": "none"}},
 "dates": "DD.MM.YYYY", "unit": "cm", "depth_unit": "mm", "currency": "EUR"}`

// messy makes the sheet, and counts the rows that cannot be read, by column:
// one cell is wrong in each.
func messy() (data string, bad map[string]int) {
	good := [][]string{
		{"30", "30,5", "30 cm", "12 1/2 in", "300 mm", " 40 "}, {"40", "40.5 cm", "16 in", "1,2 m"}, {"ply", "Birke", "MDF", "birch-ply-3mm", ""},
		{"linen", "Leinen", "-", "", "unknown"}, {"oil", "Öl", "oils", "Huile", "acryl", ""}, {"Dune", "Ohne Titel", "Marée basse, le soir", "=Sum(A1)", ""},
		{"1998", "Sommer 1998", "um 1995", "1990er", "été 1999", "Mai 2001", "3. März 2002", "c. 1998", "12.05.1998", "05.1998", "199X", "unknown", ""},
		{"M. Ozola", "", "", "Galerie am Kai"}, {"1.200,00 €", "850,-", "€ 1,200.50", "900", "1 200 EUR"}, {"1999", "Mai 1999", "Herbst 2001", ""}}
	wrong := []struct {
		column string
		at     int
		cells  []string
		every  int
	}{{"Jahr", 6, []string{"98", "vorletztes Jahr", "1998-13"}, 11}, {"Breite", 1, []string{"breit", "4o", "?"}, 13}, {"Höhe", 0, []string{"drei", "n/a"}, 29},
		{"Support", 2, []string{"birch-pyl", "Sperrholz dünn"}, 17}, {"Paint", 4, []string{"Tempura", "mixed"}, 37}, {"Preis", 8, []string{"nach Vereinbarung", "12.34.56"}, 41}, {"Sold on", 9, []string{"letzten Winter"}, 43}}
	bad = map[string]int{}
	var b strings.Builder
	b.WriteString("Nr.;Höhe;Breite;Support;Cloth;Paint;Titel;Jahr;Sold to;Preis;Sold on;Wand\n")
	for i := range 300 {
		cells := make([]string, len(good))
		for c, some := range good {
			cells[c] = some[(i*7+c*3+i/len(some))%len(some)]
		}
		if cells[7] == "" { // nobody bought it
			cells[8], cells[9] = "", ""
		}
		row := fmt.Sprintf("%d", i+1)
		if i%97 == 50 { // its quotation mark is never closed
			b.WriteString(row + `;30;40;ply;linen;oil;"Dune;1998;;;;` + "\n")
			bad["line"]++
			continue
		}
		for _, w := range wrong {
			if i%w.every == 5 && (w.at < 8 || cells[7] != "") {
				cells[w.at] = w.cells[i%len(w.cells)]
				bad[w.column]++
				break
			}
		}
		b.WriteString(row + ";" + strings.Join(cells, ";") + ";links\n")
	}
	return b.String(), bad
}
