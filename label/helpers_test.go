package label_test

import (
	"bytes"
	"fmt"
	"image"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/label"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

var day = time.Date(2026, 5, 9, 18, 30, 0, 0, time.FixedZone("", 3*3600))

// finished is the label of a painting as most will be.
func finished() label.Input {
	return label.Input{
		Number: "KB26-0142-1", Back: label.Area{WidthMM: 300, HeightMM: 400},
		Title: "Low Tide, Evening", Date: "2026", Maker: "Ilze Kārkla", Place: "Riga, Latvia",
		Medium: "Oil on linen laid on birch plywood", Dimensions: "400\u00a0×\u00a0300\u00a0×\u00a03\u202fmm", OtherUnits: "400\u00a0×\u00a0300\u00a0×\u00a03\u202fmm (15\u202f3⁄4\u00a0×\u00a011\u202f3⁄4\u00a0×\u00a01⁄8\u202fin)",
		BuildUp: []string{"Ketone resin varnish", "Oil paint", "Acrylic dispersion ground, 3 coats", "Linen, plain weave", "Acrylic dispersion adhesive",
			"Birch plywood, 3 mm", "Back: acrylic dispersion sealer, 2 coats", "Edges: acrylic dispersion sealer, laid on thicker"},
		BuildUpShort: "9 layers: see the record", Sealed: "Front, back and edges sealed",
		Varnish: "Ketone resin varnish, satin, removable by a conservator with white spirit",
		Care:    "35–65\u202f% relative humidity, no quick swings; no sun, no heat; no water; no frost; brittle below 10\u202f°C (50\u202f°F); heat from 50\u202f°C (122\u202f°F) loosens the cloth.",
		Link:    "HTTPS://EXAMPLE.ORG/P/KB2601421", Where: "Record: HTTPS://EXAMPLE.ORG/P/KB2601421",
		Issue:       "Label of 9 May 2026, record as of entry 44",
		Fingerprint: "SHA-256 of the record: 3f2a 91bc 22d0 1c9e …",
	}
}

func blank() label.Input {
	in := finished()
	in.Number, in.Blank, in.Title, in.Date, in.Made = "KB26-0143-4", true, "Blank panel", "", "Made between 2 May 2026 and 9 May 2026"
	in.Medium, in.Varnish, in.BuildUp = "Linen laid on birch plywood", "", in.BuildUp[2:]
	in.Link, in.Where = "HTTPS://EXAMPLE.ORG/P/KB2601434", "Record: HTTPS://EXAMPLE.ORG/P/KB2601434"
	return in
}

func changed() label.Input {
	in := finished()
	in.Changed = "Treated 12 March 2031: loose corner laid down with wheat-starch paste"
	return in
}

// kinds are one label of every kind, by name.
func kinds() map[string]label.Input {
	greek, cyrillic, plain, demo := finished(), finished(), finished(), finished()
	greek.Maker, greek.Title, greek.Place = "Ελένη Παπαδοπούλου", "Ἑσπέρα στὸ λιμάνι", "Αθήνα, Ελλάδα"
	cyrillic.Maker, cyrillic.Title, cyrillic.Place = "Юрий Ковальчук", "Вечер на реке", "Київ, Україна"
	plain.Link, plain.Plain = "", "KB26-0142-1\nIlze Kārkla\nstudio@example.org"
	plain.Where = "The record of this panel is kept by its maker: studio@example.org"
	demo.Notice = "Demonstration: an invented studio"
	return map[string]label.Input{"finished": finished(), "blank": blank(), "changed": changed(), "greek": greek, "cyrillic": cyrillic,
		"without a link": plain, "hazards": hazards(), "demonstration": demo, "longest": longest(), "sixty layers": sixtyLayers(), "hostile": hostile()}
}

// longest has every field as long as a painter may well make it.
func longest() label.Input {
	in := changed()
	in.Number = "KBCD26-1234567-X"
	in.Maker = strings.TrimSpace(strings.Repeat("Wilhelmina Konstantinopolska ", 3))[:80]
	in.Title = strings.TrimSpace(strings.Repeat("The long way round the lake in late November ", 6))
	in.Place = "Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch, Wales"
	in.Medium = "Oil, egg tempera and water-mixable oil with metal leaf on linen and cotton cloth laid on tempered hardboard"
	in.Link = "HTTPS://PANELS.A-STUDIO-WITH-A-LONG-NAME.EXAMPLE.ORG/RECORDS/KBCD261234567X"
	in.Where = "Record: " + in.Link
	return in
}

func hazards() label.Input {
	in := finished()
	in.Hazards = []string{"Contains lead and cadmium.", "May contain arsenic.", "Do not sand, do not burn."}
	return in
}

func sixtyLayers() label.Input {
	in := finished()
	in.BuildUp = nil
	for range 20 {
		in.BuildUp = append(in.BuildUp, "Oil paint", "Alkyd isolation coat", "Back: acrylic dispersion sealer")
	}
	in.BuildUpShort = "60 layers: see the record"
	return in
}

const hostileTitle = `) Tj ET endstream <</S/JavaScript/JS(app.alert(1))>> <script>x</script>`

func hostile() label.Input {
	in := finished()
	in.Title = hostileTitle + "\u202Egnirts"
	return in
}

func options(size label.Size) label.Options {
	return label.Options{Catalogue: tell.English(), Size: size, Created: day, Author: "Ilze Kārkla"}
}

func draw(t testing.TB, o label.Options, labels ...label.Input) []byte {
	t.Helper()
	var b bytes.Buffer
	if _, err := label.Draw(&b, labels, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// save writes a file for outside programs. BACKLEAF_KEEP names a folder that
// keeps a copy, for pages to be looked at.
func save(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	if dir := os.Getenv("BACKLEAF_KEEP"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, strings.NewReplacer("/", "-", " ", "-").Replace(t.Name())+"-"+name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

// pdfText is the text of a file in the order of its content, with one space
// between words.
func pdfText(t testing.TB, pdf []byte) string {
	t.Helper()
	return strings.Join(strings.Fields(toolcheck.Run(t, "pdftotext", "-raw", save(t, "text.pdf", pdf), "-")), " ")
}

// render turns the pages of a file into pictures.
func render(t testing.TB, pdf []byte, dpi string) []string {
	t.Helper()
	path := save(t, "labels.pdf", pdf)
	base := filepath.Join(filepath.Dir(path), "page")
	toolcheck.Run(t, "pdftoppm", "-r", dpi, "-gray", path, base)
	pages, err := filepath.Glob(base + "-*.pgm")
	if err != nil || len(pages) == 0 {
		t.Fatalf("no pages: %v", err)
	}
	return pages
}

// picture reads a grey picture as pdftoppm writes it (PGM, binary).
func picture(t testing.TB, path string) *image.Gray {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var w, h, most int
	if _, err := fmt.Sscanf(string(data[:min(len(data), 40)]), "P5\n%d %d\n%d\n", &w, &h, &most); err != nil || most != 255 || len(data) < w*h {
		t.Fatalf("%s is no grey picture: %v", path, err)
	}
	return &image.Gray{Pix: data[len(data)-w*h:], Stride: w, Rect: image.Rect(0, 0, w, h)}
}
