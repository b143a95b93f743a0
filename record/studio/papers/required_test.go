package papers_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/certificate"
	"backleaf/certificate/dossier"
	"backleaf/label"
	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

const (
	requiredStudio = `"kind":"studio","maker":"Ada Example","mark":"KB","place":"Riga, Latvia","contact":"studio@example.org","link_base":"https://example.org/P/"`
	requiredPly    = `"kind":"material","key":"b","name":"birch plywood","uses":["board"],"board":{"kind":"plywood","species":"birch"}`
	requiredCut    = `"kind":"cut","batch":"may","size":"30 x 40 cm x 3 mm","board":"b","at":"2026-05-02","panels":["KB26-0001-K"]`
	requiredPaint  = `"kind":"paint","medium":"oil","at":"2026-05-20","panels":["KB26-0001-K"]`
	requiredTitle  = `"kind":"described","title":"Low tide","made":"2026","panels":["KB26-0001-K"]`
)

// A required record is a panel with one thing that its papers must say, and
// must not. What stands in "all" is on label, certificate and dossier.
type requiredRecord struct {
	name                             string
	swap                             map[string]string // of the plain history
	more                             []string
	all, label, certificate, dossier []string
	none                             []string
}

func pigment(fields string) []string {
	return []string{`"kind":"paint","medium":"oil","at":"2026-05-21","pigments":[{` + fields + `}],"panels":["KB26-0001-K"]`}
}

func described(fields string) []string {
	return []string{`"kind":"described",` + fields + `,"panels":["KB26-0001-K"]`}
}

func onBoard(fields string) map[string]string {
	return map[string]string{requiredPly: `"kind":"material","key":"b","name":"the board","uses":["board"],"board":{` + fields + `}`}
}

func sized(size string) map[string]string {
	return map[string]string{requiredCut: strings.Replace(requiredCut, "30 x 40 cm x 3 mm", size, 1)}
}

func varnished(material, fields string) []string {
	return []string{`"kind":"material","key":"v","name":"the varnish","uses":["varnish"],"binder":"hydrocarbon-resin"` + material,
		`"kind":"varnish","at":"2026-06-01","mix":[{"parts":1,"material":"v"}]` + fields + `,"panels":["KB26-0001-K"]`}
}

func coated(fields string) []string {
	return []string{`"kind":"material","key":"s","name":"the sealer","uses":["sealer"],"binder":"acrylic-dispersion"`,
		`"kind":"coat","purpose":"sealer",` + fields + `,"mix":[{"parts":1,"material":"s"}],"at":"2026-05-03","panels":["KB26-0001-K"]`}
}

const never = "Do not sand, do not burn."

var requiredRecords = []requiredRecord{
	{name: "plain", none: []string{"Hazard: Contains"}},
	{name: "lead white", more: pigment(`"name":"lead white","colour_index":"PW 1"`), all: []string{"Contains lead", never}},
	{name: "Naples yellow", more: pigment(`"name":"Naples yellow","colour_index":"PY 41"`), all: []string{"lead", never}},
	{name: "cadmium red", more: pigment(`"name":"cadmium red","colour_index":"PR 108"`), all: []string{"Contains cadmium", never}},
	{name: "vermilion", more: pigment(`"name":"vermilion","colour_index":"PR 106"`), all: []string{"Contains mercury", never}},
	{name: "chrome yellow", more: pigment(`"name":"chrome yellow","colour_index":"PY 34"`), all: []string{"lead", "chromate", never}},
	{name: "emerald green", more: pigment(`"name":"emerald green","colour_index":"PG 21"`), all: []string{"arsenic", never}},
	{name: "an index alone", more: pigment(`"name":"PW 1"`), all: []string{"lead", never}},
	{name: "titanium white", more: pigment(`"name":"titanium white","colour_index":"PW 6"`), none: []string{"Contains lead", never}},
	{name: "acrylic", swap: map[string]string{requiredPaint: strings.Replace(requiredPaint, "oil", "acrylic", 1)}, all: []string{"crylic on birch plywood"}},
	{name: "tempera", swap: map[string]string{requiredPaint: strings.Replace(requiredPaint, "oil", "egg-tempera", 1)}, all: []string{"gg tempera on birch plywood"}, label: []string{"scratches easily"}},
	{name: "encaustic", swap: map[string]string{requiredPaint: strings.Replace(requiredPaint, "oil", "encaustic", 1)}, all: []string{"ncaustic on birch plywood"}, label: []string{"wax: 5 °C (41 °F) to 40 °C (104 °F)"}},
	{name: "medium in own words", more: described(`"medium_line":"oil and gold leaf on panel"`), all: []string{"il and gold leaf on panel"}},
	{name: "fibreboard", swap: onBoard(`"kind":"mdf"`), all: []string{"fibreboard"}, label: []string{"never wet"}},
	{name: "hardboard", swap: onBoard(`"kind":"hardboard"`), all: []string{"ardboard"}},
	{name: "solid wood", swap: onBoard(`"kind":"solid-wood","species":"oak"`), all: []string{"oak"}, label: []string{"free to move"}},
	{name: "inches", swap: sized("8 1/2 x 11 x 1/8 in"), all: []string{"8 1⁄2 × 11 × 1⁄8 in (21.6 × 27.9 cm × 3.2 mm)"}},
	{name: "no depth", swap: sized("30 x 40 cm"), all: []string{"30 × 40 cm"}},
	{name: "sides unknown", swap: sized("unknown x unknown"), all: []string{"unknown"}},
	{name: "about 1998", more: described(`"made":"1998~"`), all: []string{"about 1998"}},
	{name: "two years", more: described(`"made":"2025/2026"`), all: []string{"between 2025 and 2026"}},
	{name: "date unknown", swap: map[string]string{requiredPaint: strings.Replace(requiredPaint, `"at":"2026-05-20",`, "", 1)}, more: described(`"made":"unknown"`), dossier: []string{"date unknown"}},
	{name: "date of the paint", more: described(`"made":"unknown"`), all: []string{"ainted 20 May 2026"}, none: []string{"date of the work"}},
	{name: "signed", more: described(`"signed":"lower right, in paint"`), certificate: []string{"Signed lower right, in paint"}, dossier: []string{"signed lower right, in paint"}},
	{name: "inscribed", more: described(`"inscription":"verso: for M."`), certificate: []string{"Inscribed verso: for M."}, dossier: []string{"verso: for M."}},
	{name: "edition", more: described(`"edition":"2 of 3"`), certificate: []string{"Edition 2 of 3"}},
	{name: "framed", more: described(`"framed":"yes"`), certificate: []string{"Framed"}},
	{name: "not framed", more: described(`"framed":"no"`), certificate: []string{"Not framed"}},
	{name: "title in Greek", more: described(`"title":"Χαμηλά νερά","title_romanised":"Chamila nera"`), all: []string{"Χαμηλά νερά (Chamila nera)"}},
	{name: "title beyond the faces", more: described(`"title":"干潮","title_romanised":"Kanchō"`), all: []string{"Kanchō"}},
	{name: "varnish that comes off", more: varnished("", `,"removable":"yes","removed_with":"white spirit"`), all: []string{"removable by a conservator with white spirit"}},
	{name: "varnish that stays", more: varnished("", `,"removable":"no"`), all: []string{"not removable"}},
	{name: "varnish not known", more: varnished("", `,"removable":"unknown"`), all: []string{"not known whether removable"}},
	{name: "varnish not recorded", more: varnished("", ""), all: []string{"not recorded whether removable"}},
	{name: "varnish of a kind", more: varnished(`,"removable":"yes","removed_with":"white spirit","basis_kind":"typical","basis":"typical, common practice"`, ""),
		all: []string{"removable by a conservator with white spirit (typical for this kind; test first)"}, none: []string{"as stated for the product: typical"}},
	{name: "varnish taken off", more: append(varnished("", ""), `"kind":"removed","layers":[7],"what":"varnish","extent":"whole","at":"2030-05-01","panels":["KB26-0001-K"]`), all: []string{"ydrocarbon resin varnish (taken off, 1 May 2030)"}, none: []string{"not recorded whether removable"}},
	{name: "sealed all round", more: coated(`"faces":["front","back","edges"]`), all: []string{"Front, back and edges sealed"}},
	{name: "sealed in front", more: coated(`"faces":["front"]`), all: []string{"Front sealed"}},
	{name: "treated", more: []string{`"kind":"treatment","by":"R. Invented","text":"loose corner laid down","at":"2031-03-12","panels":["KB26-0001-K"]`}, label: []string{"Treated 12 March 2031: loose corner laid down"}, dossier: []string{"loose corner laid down"}},
	{name: "another painter", swap: map[string]string{requiredPaint: `"kind":"maker","key":"bo","name":"Bo Other"` + "\n" + strings.Replace(requiredPaint, `"panels"`, `"makers":[{"maker":"bo"}],"panels"`, 1)},
		certificate: []string{"Maker of the panel: Ada Example. Painter of the work on it: Bo Other."}, none: []string{"with my own hand"}},
	{name: "a workshop", swap: map[string]string{requiredStudio: strings.Replace(requiredStudio, `"mark"`, `"voice":"we","mark"`, 1)}, certificate: []string{"We, Ada Example"}, none: []string{"with my own hand"}},
	{name: "no link", swap: map[string]string{requiredStudio: strings.Replace(requiredStudio, `,"link_base":"https://example.org/P/"`, "", 1)}, label: []string{"kept by its maker: studio@example.org"}, certificate: []string{"studio@example.org"}, none: []string{"https://example.org"}},
	{name: "neither link nor contact", swap: map[string]string{requiredStudio: `"kind":"studio","maker":"Ada Example","mark":"KB"`}, label: []string{"kept by its maker."}},
}

// What must be said of a panel stands on each of its papers, in text that a
// reader can copy; what would deny it stands on none. The lines are typed from
// what a reader needs, not taken from the program.
func TestRequiredLines(t *testing.T) {
	toolcheck.Require(t, "pdftotext")
	for i, c := range requiredRecords {
		if !toolcheck.Thorough() && i%9 != 1 {
			continue // all of them where there is time
		}
		t.Run(c.name, func(t *testing.T) { c.check(t) })
	}
}

func (c requiredRecord) check(t *testing.T) {
	pages := requiredPages(t, c)
	link := "https://example.org/P/KB260001K"
	plain := []string{"KB26-0001-K", "Ada Example"}
	for paper, want := range map[string][]string{
		"label":       append(c.label, "TOP", "Label of 2 June 2031, record as of entry"),
		"certificate": append(c.certificate, "the same number stands on the back of the panel", "Issued on 2 June 2031.", "WHAT THIS IS, AND IS NOT", "CARE AND DISPLAY", "BUILD-UP"),
		"dossier":     append(c.dossier, "What it is", "Hazards", "Varnish", "Condition", "Not recorded", "Changed"),
	} {
		if c.name != "no link" && c.name != "neither link nor contact" && paper != "dossier" {
			want = append(want, link)
		}
		for _, s := range append(append(want, c.all...), plain...) {
			if !strings.Contains(pages[paper], squeezed(s)) {
				t.Errorf("%q is not on the %s", s, paper)
			}
		}
		for _, s := range c.none {
			if strings.Contains(pages[paper], squeezed(s)) {
				t.Errorf("%q is on the %s", s, paper)
			}
		}
	}
}

// requiredPages draws the papers of a record and reads their text, spaces left out.
func requiredPages(t *testing.T, c requiredRecord) map[string]string {
	t.Helper()
	written := time.Date(2031, 6, 2, 10, 0, 0, 0, time.UTC)
	var es []record.Entry
	var lines []string
	for _, line := range append([]string{requiredStudio, requiredPly, requiredCut, requiredPaint, requiredTitle}, c.more...) {
		if other, ok := c.swap[line]; ok {
			line = other
		}
		lines = append(lines, strings.Split(line, "\n")...)
	}
	for _, line := range lines {
		e, err := accept.Parse(fmt.Appendf(nil, `{"v":1,"seq":%d,"written":"2031-06-02T10:00:00Z",%s}`, len(es)+1, line))
		if err != nil {
			t.Fatalf("%s: %s: %v", c.name, line, err)
		}
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatalf("%s: %v", c.name, err)
	}
	p := w.Panels[0]
	in, err := label.Say(tell.English(), w, p, label.StageAuto, "")
	if err != nil {
		t.Fatal(err)
	}
	var back bytes.Buffer
	if _, err := label.Draw(&back, []label.Input{in}, label.Options{Catalogue: tell.English(), Created: written, Size: label.Large}); err != nil {
		t.Fatalf("%s: %v", c.name, err)
	}
	front, err := certificate.Draw(certificate.Input{Workshop: w, Panel: p, Issued: written, Paper: "a4"})
	if err != nil {
		t.Fatalf("%s: %v", c.name, err)
	}
	all, err := dossier.New(tell.English(), w, p, dossier.Book{}).PDF()
	if err != nil {
		t.Fatalf("%s: %v", c.name, err)
	}
	out := map[string]string{}
	for name, data := range map[string][]byte{"label": back.Bytes(), "certificate": front.PDF, "dossier": all} {
		path := filepath.Join(t.TempDir(), name+".pdf")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		out[name] = squeezed(toolcheck.Run(t, "pdftotext", "-raw", path, "-"))
	}
	return out
}

func squeezed(s string) string {
	return strings.NewReplacer(" ", "", "\n", "", "\f", "", "\u00a0", "", "\u202f", "").Replace(s)
}
