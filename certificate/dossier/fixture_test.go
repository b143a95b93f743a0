package dossier_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/certificate/dossier"
	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/tell"
)

// fold reads one entry a line; each gets its number, and "written" if it has
// none.
func fold(t testing.TB, text string) *record.Workshop {
	t.Helper()
	var es []record.Entry
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		line = fmt.Sprintf(`{"v":1,"seq":%d,"written":"2031-03-01T10:00:00+02:00",%s}`, len(es)+1, line)
		e, err := accept.Parse([]byte(line))
		if err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// afternoon is one invented panel from the board to a treatment years later.
const afternoon = `
"kind":"studio","maker":"Ada Exemple","mark":"DM","place":"Riga, Latvia","contact":"studio@example.org","link_base":"HTTPS://EXAMPLE.ORG/P/","demonstration":true
"kind":"material","key":"ply","name":"thin birch plywood","uses":["board"],"producer":"Northern Invention Mill","board":{"kind":"plywood","species":"birch","plies":3,"thickness":"3 mm","density":"680 kg/m3","formaldehyde_class":"E1"},"basis":"data sheet, January 2026"
"kind":"lot","key":"ply-1","material":"ply","producer_lot":"P-2206","supplier":"a timber yard in Riga"
"kind":"material","key":"linen","name":"fine linen","uses":["cloth"],"cloth":{"fibre":"linen","weave":"plain","warp":"18 /cm","weft":"17 /cm","mass":"185 g/m2","sized":"no"},"basis":"weaver's sheet, 2025"
"kind":"lot","key":"linen-1","material":"linen","producer_lot":"bolt 41"
"kind":"material","key":"sealer","name":"Quayside sealer","uses":["sealer","adhesive"],"binder":"acrylic-dispersion","waterborne":"yes","solids_by_volume":"42 %","density":"1.04 g/mL","removable":"no","hazard":"Preservatives can sensitise skin: wear gloves.","basis":"data sheet of March 2026"
"kind":"lot","key":"sealer-3","material":"sealer","producer_lot":"4471B","supplier":"a paint shop in Riga","opened":"2026-04-28","expires":"2028-04"
"kind":"material","key":"ground","name":"Quayside ground, white","uses":["ground"],"binder":"acrylic-dispersion","waterborne":"yes","solids_by_volume":"38 %","density":"1.35 g/mL","pigments":[{"name":"titanium white","colour_index":"PW 6"}],"hazard":"Sanding dust: wear a mask.","basis":"data sheet of March 2026"
"kind":"lot","key":"ground-1","material":"ground","producer_lot":"G-119"
"kind":"material","key":"gloss","name":"Quayside varnish","uses":["varnish"],"binder":"hydrocarbon-resin","resin":"hydrocarbon resin","gloss":"satin","removable":"yes","removed_with":"white spirit","hazard":"Solvent: ventilate, wear gloves.","basis":"typical, common practice","basis_kind":"typical"
"kind":"lot","key":"gloss-1","material":"gloss","producer_lot":"V-9"
"kind":"cut","at":"2026-05-02T13:30:00+03:00","panels":["DM26-0007-B"],"batch":"may","size":"30 x 40 cm x 3 mm","board":"ply","board_lot":"ply-1","grain":"width","settled":"3 d"
"kind":"climate","at":"2026-05-02T13:45:00+03:00","temperature":"20.5 °C","humidity":"52 %","place":"workroom"
"kind":"coat","at":"2026-05-02T14:05:00+03:00","panels":["DM26-0007-B"],"purpose":"sealer","faces":["front","back","edges"],"extra":["edges"],"mix":[{"parts":1,"material":"sealer","lot":"sealer-3"}],"wet_total":"24 g","tool":"roller","temperature":"21 °C","humidity":"54 %"
"kind":"cloth","at":"2026-05-02T14:40:00+03:00","panels":["DM26-0007-B"],"faces":["front"],"cloth":"linen","cloth_lot":"linen-1","threads":"along-grain","oversize":"15 mm","wet_through":"yes","edges_pressed":"yes","mix":[{"parts":1,"material":"sealer","lot":"sealer-3"}],"wet_total":"30 g","temperature":"21 °C","humidity":"55 %"
"kind":"trimmed","at":"2026-05-02T15:05:00+03:00","panels":["DM26-0007-B"],"tool":"fresh blade","edges_eased":"yes"
"kind":"coat","at":"2026-05-02T15:30:00+03:00","panels":["DM26-0007-B"],"purpose":"sealer","faces":["back"],"mix":[{"parts":1,"material":"sealer","lot":"sealer-3"}],"wet_total":"11 g","humidity":"57 %","temperature":"21.5 °C"
"kind":"warm-air","at":"2026-05-02T15:50:00+03:00","panels":["DM26-0007-B"],"faces":["back"],"for":"5 min"
"kind":"sanded","at":"2026-05-04T09:30:00+03:00","panels":["DM26-0007-B"],"faces":["front"],"scale":"P","grit":180,"dust_removed":"yes","sanded_through":"no"
"kind":"coat","at":"2026-05-04T10:00:00+03:00","panels":["DM26-0007-B"],"purpose":"ground","faces":["front","edges"],"mix":[{"parts":3,"material":"ground","lot":"ground-1"},{"parts":1,"material":"sealer","lot":"sealer-3"}],"thinned":"10 %","wet_total":"14 g","temperature":"19 °C","humidity":"48 %","tool":"wide brush"
"kind":"coat","at":"2026-05-04T16:00:00+03:00","panels":["DM26-0007-B"],"purpose":"ground","faces":["front"],"mix":[{"parts":1,"material":"ground","lot":"ground-1"}],"dry_film":"60 µm","temperature":"20 °C","humidity":"47 %","tool":"wide brush"
"kind":"inspection","at":"2026-05-06T09:00:00+03:00","panels":["DM26-0007-B"],"bow":"0.8 mm","span":"40 cm","hollow_to":"front","edges":"sound","adhesion":"sound"
"kind":"inspection","at":"2026-06-20","panels":["DM26-0007-B"],"bow":"0.3 mm","span":"40 cm","hollow_to":"front"
"kind":"paint","at":"2026-06-25/2026-08-10","panels":["DM26-0007-B"],"medium":"oil","technique":"thin underpainting, then wet in wet","pigments":[{"name":"lead white","colour_index":"PW 1"},{"name":"red ochre","colour_index":"PR 102"}],"underdrawing":"charcoal, fixed with shellac","oil_content":"fat"
"kind":"described","at":"2026-08-12","panels":["DM26-0007-B"],"title":"Low tide, evening","made":"2026-08","subject":"harbour with two boats","signed":"lower right, in paint","distinguishing_features":"a thumb mark in the sky, upper left","inscription":"on the back: for M."
"kind":"photograph","at":"2026-08-12","panels":["DM26-0007-B"],"role":"front","sha256":"9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08","media_type":"image/jpeg","width_px":4000,"height_px":3000,"caption":"with scale and grey card"
"kind":"varnish","at":"2027-04-12","panels":["DM26-0007-B"],"mix":[{"parts":1,"material":"gloss","lot":"gloss-1"}],"wet_total":"9 mL","gloss":"satin","temperature":"19 °C","humidity":"44 %"
"kind":"label-printed","at":"2027-04-15T10:00:00+03:00","panels":["DM26-0007-B"],"layout":"medium"
"kind":"certificate-issued","at":"2027-04-15T10:05:00+03:00","panels":["DM26-0007-B"],"record_sha256":"9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"
"kind":"handed-over","at":"2027-05-01","panels":["DM26-0007-B"],"how":"sale"
"kind":"amended","entry":17,"because":"its edges were done too","change":{"faces":["back","edges"]}
"kind":"condition","at":"2031-02-20","panels":["DM26-0007-B"],"by":"R. Invented, paintings conservator","text":"Varnish yellowed slightly; one scratch in the sky, 12 mm, through the varnish only. No lifting.","purpose":"before a loan"
"kind":"inspection","at":"2031-02-20","panels":["DM26-0007-B"],"bow":"0.5 mm","span":"40 cm","hollow_to":"back","by":"R. Invented"
"kind":"treatment","at":"2031-02-24","panels":["DM26-0007-B"],"by":"R. Invented, paintings conservator","text":"Surface cleaned dry; scratch toned.","with":"soft brush; watercolour over the varnish","because":"loan","faces":["front"]
`

func number(t testing.TB) record.Number {
	t.Helper()
	n, err := record.NewNumber("DM", 2026, 7, "")
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// panel folds a history in which the number is written DM26-0007-B.
func panel(t testing.TB, text string) (*record.Workshop, *record.Panel) {
	t.Helper()
	w := fold(t, strings.ReplaceAll(text, "DM26-0007-B", string(number(t))))
	return w, w.Panels[0]
}

var head = dossier.Book{Entries: 33, Root: strings.Repeat("5a", 32)}

func afternoonDossier(t testing.TB) *dossier.Document {
	t.Helper()
	w, p := panel(t, afternoon)
	return dossier.New(tell.English(), w, p, head)
}

// examples are the dossiers of the published examples.
func examples(t testing.TB, c *tell.Catalogue) []*dossier.Document {
	t.Helper()
	b, err := os.ReadFile("../../schema/examples/entries.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Entries []jsontext.Value `json:"entries"`
	}
	if err := json.Unmarshal(b, &file); err != nil {
		t.Fatal(err)
	}
	var es []record.Entry
	for _, text := range file.Entries {
		e, err := accept.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	var out []*dossier.Document
	for _, p := range w.Panels {
		out = append(out, dossier.New(c, w, p, head))
	}
	return out
}

func save(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	// Pages to be looked at: BACKLEAF_KEEP names a folder that keeps them.
	if dir := os.Getenv("BACKLEAF_KEEP"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, strings.ReplaceAll(t.Name(), "/", "-")+"-"+name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return path
}
