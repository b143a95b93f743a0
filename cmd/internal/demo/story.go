// Package demo is an invented studio: what its painter types and when, and the
// pictures. Its clock and its salts are fixed, so that every run gives the same.
package demo

import (
	"backleaf/record/studio/refuse"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"
	_ "time/tzdata" // the zone of the story must be known on any machine
)

// Step is one thing that the painter types, and when.
type Step struct {
	At   string // local time
	Args []string
}

// String writes a step so that it can be pasted into a shell.
func (s Step) String() string {
	var out []string
	for _, w := range s.Args {
		if w == "" || strings.ContainsAny(w, " \"'%$&|<>()*;") {
			w = `"` + strings.NewReplacer(`"`, `\"`, "$", `\$`).Replace(w) + `"`
		}
		out = append(out, w)
	}
	return strings.Join(out, " ")
}

// Play paints the pictures into a folder, which must hold nothing yet, and runs
// each step of the story at its time.
func Play(dir string, run func(Step, time.Time) error) error {
	if old, err := os.ReadDir(dir); err == nil && len(old) > 0 {
		return refuse.Cannot("demo-there", "%s is not empty", dir)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("cannot make the folder: %w", err)
	}
	if err := Pictures(dir); err != nil {
		return err
	}
	for _, s := range Story(dir) {
		at, err := time.ParseInLocation("2006-01-02 15:04", s.At, Zone())
		if err == nil {
			err = run(s, at)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// Zone is where the story happens.
func Zone() *time.Location {
	l, err := time.LoadLocation("Europe/Dublin")
	if err != nil {
		panic("backleaf: time zones are part of the program: " + err.Error())
	}
	return l
}

// Story is what the invented painter Odile Marrens of Saltmere types, from
// an empty shelf to a panel sold. Everything in it is invented.
func Story(dir string) []Step {
	in := func(name string) string { return filepath.Join(dir, name) }
	w := func(at string, args ...string) Step { return Step{at, args} }
	return []Step{
		w("2025-04-28 09:30", "studio", "new", "--maker", "Odile Marrens", "--mark", "MR", "--place", "Saltmere", "--contact", "studio@marrens.example",
			"--link", "HTTPS://MARRENS.EXAMPLE/P/", "--zone", "Europe/Dublin", "--units", "cm", "--currency", "EUR", "--paper", "a4", "--demonstration"),
		w("2025-04-28 09:31", "studio", "key", "new", "--demonstration"),

		// The shelf.
		w("2025-04-28 09:40", "material", "add", "ply3", "--like", "birch-ply-3mm", "--name", "birch plywood, 3 plies", "--thickness", "3 mm", "--formaldehyde", "E1"),
		w("2025-04-28 09:42", "material", "add", "mdf6", "--like", "mdf-6mm", "--name", "MDF, standard", "--formaldehyde", "E1"),
		w("2025-04-28 09:45", "material", "add", "linen", "--like", "linen-fine", "--name", "Saltmere fine linen, loom state", "--width", "150 cm", "--sized", "no"),
		w("2025-04-28 09:50", "material", "add", "sealer", "--like", "acrylic-sealer", "--name", "Tidewrack sealer and adhesive, matt", "--toxic-dry", "no"),
		w("2025-04-28 09:52", "material", "add", "ground", "--like", "acrylic-ground", "--name", "Marram white ground", "--toxic-dry", "no"),
		w("2025-04-28 09:55", "material", "add", "varnish", "--like", "hydrocarbon-varnish", "--name", "Curlew picture varnish, satin", "--gloss", "satin"),
		w("2025-04-28 10:05", "lot", "add", "ply-1", "ply3", "--sheet", "122 x 244 cm", "--quantity", "2 sheets", "--price", "64.00 EUR", "--supplier", "the yard at Saltmere"),
		w("2025-04-28 10:06", "lot", "add", "mdf-1", "mdf6", "--sheet", "122 x 244 cm", "--quantity", "1 sheet", "--price", "27.50 EUR", "--supplier", "the yard at Saltmere"),
		w("2025-04-28 10:07", "lot", "add", "linen-1", "linen", "--quantity", "6 m", "--number", "B 7-114", "--price", "132.00 EUR"),
		w("2025-04-28 10:08", "lot", "add", "sealer-1", "sealer", "--quantity", "2.5 L", "--number", "TW 2504-31", "--price", "41.00 EUR", "--expires", "2027-04"),
		w("2025-04-28 10:09", "lot", "add", "ground-1", "ground", "--quantity", "1 L", "--number", "MW 118", "--price", "23.80 EUR", "--expires", "2027-02"),
		w("2025-04-28 10:10", "lot", "add", "varnish-1", "varnish", "--quantity", "250 mL", "--number", "CV 9", "--price", "18.20 EUR"),

		// Fourteen thin plywood panels with linen.
		w("2025-05-02 13:30", "climate", "--temp", "19.5 °C", "--rh", "54%", "--place", "workroom"),
		w("2025-05-02 13:40", "panel", "add", "--count", "14", "--batch", "linen", "--size", "30 x 40 cm x 3 mm", "--board", "ply-1", "--grain", "width", "--saw-loss", "3 mm", "--settled", "4 d"),
		w("2025-05-02 14:10", "coat", "batch:linen", "--with", "sealer-1", "--as", "sealer", "--on", "all", "--extra", "edges", "--amount", "430 g", "--tool", "foam roller", "--temp", "19.5 °C", "--rh", "54%", "--at", "14:00"),
		w("2025-05-02 15:12", "cloth", "batch:linen", "--cloth", "linen-1", "--with", "sealer-1", "--amount", "390 g", "--threads", "along-grain", "--oversize", "8 mm", "--wet-through", "yes", "--edges-pressed", "yes", "--tool", "flat brush", "--at", "14:45"),
		w("2025-05-02 15:25", "warm", "batch:linen", "--for", "5 min"),
		w("2025-05-02 15:50", "trim", "batch:linen", "--tool", "fresh blade", "--eased", "yes", "--at", "15:35"),
		// One is forgotten: it stood at the end of the rack.
		w("2025-05-02 16:30", "coat", "batch:linen", "--except", "0007", "--with", "sealer-1", "--as", "sealer", "--on", "back", "--amount", "290 g", "--tool", "foam roller", "--temp", "20 °C", "--rh", "56%", "--at", "16:15"),
		w("2025-05-04 10:15", "inspect", "batch:linen", "--edges", "sound", "--adhesion", "sound", "--by", "Odile Marrens", "--except", "0011"),
		w("2025-05-04 10:20", "panel", "discard", "0011", "--because", "cloth lifted along the lower edge; board split when it was taken off"),
		w("2025-05-04 11:00", "sand", "batch:linen", "--except", "0011", "--on", "front", "--grit", "P180", "--through", "no", "--dusted", "yes"),
		w("2025-05-04 11:40", "coat", "batch:linen", "--except", "0011", "--with", "ground-1", "--as", "ground", "--on", "front", "--thinned", "10%", "--amount", "240 g", "--tool", "flat brush", "--temp", "20.5 °C", "--rh", "52%"),
		w("2025-05-04 15:30", "coat", "batch:linen", "--except", "0011,0007", "--with", "ground-1", "--as", "ground", "--on", "back", "--thinned", "10%", "--amount", "220 g", "--tool", "foam roller", "--temp", "20.5 °C", "--rh", "52%"),
		w("2025-05-04 15:40", "amend", "25", "--set", "wet_total=260 g", "--because", "misread the scale"),

		// Six MDF panels, painted on directly.
		w("2025-05-06 09:00", "panel", "add", "--count", "6", "--batch", "mdf", "--size", "20 x 25 cm x 6 mm", "--board", "mdf-1", "--saw-loss", "3 mm", "--settled", "2 weeks"),
		w("2025-05-06 09:40", "coat", "batch:mdf", "--with", "sealer-1", "--as", "sealer", "--on", "all", "--extra", "edges", "--amount", "95 g", "--tool", "foam roller", "--temp", "18 °C", "--rh", "50%"),
		w("2025-05-08 09:30", "sand", "batch:mdf", "--on", "front", "--grit", "P220", "--through", "no", "--dusted", "yes"),
		w("2025-05-08 10:00", "coat", "batch:mdf", "--with", "ground-1", "--as", "ground", "--on", "front,back", "--amount", "110 g", "--tool", "foam roller", "--temp", "18.5 °C", "--rh", "51%"),

		// One of them becomes a painting.
		w("2025-05-26 10:00", "climate", "--temp", "21 °C", "--rh", "49%", "--place", "workroom"),
		w("2025-05-26 10:30", "paint", "0003", "--medium", "oil", "--technique", "thin first layer, lean", "--underdrawing", "charcoal, dusted off", "--oil-content", "lean", "--film", "thin",
			"--pigment", "burnt umber=PBr 7", "--pigment", "ultramarine=PB 29"),
		w("2025-06-09 11:00", "paint", "0003", "--medium", "oil", "--technique", "body colour, wet in wet", "--oil-content", "fat", "--film", "thin",
			"--pigment", "titanium white=PW 6", "--pigment", "ultramarine=PB 29", "--pigment", "yellow ochre=PY 43", "--pigment", "burnt umber=PBr 7"),
		w("2025-07-04 15:00", "paint", "0003", "--medium", "oil", "--technique", "glazes and last touches", "--oil-content", "fat", "--film", "thin", "--pigment", "transparent iron oxide=PR 101"),
		w("2025-07-06 12:00", "panel", "describe", "0003", "--title", "Low water, Saltmere", "--made", "2025", "--subject", "an estuary at low water with two moored boats, evening",
			"--signed", "lower right, in oil: O. Marrens", "--inscription", "on the back, in pencil: Low water", "--features", "small knot in the plywood showing at the upper left of the back", "--meant-for-rh", "50%"),
		w("2025-07-06 12:20", "panel", "photo", "0003", in("pictures/low-water.jpg"), "--role", "front"),
		w("2025-07-06 12:22", "panel", "photo", "0003", in("pictures/weave.jpg"), "--role", "weave-detail", "--caption", "cloth before the ground, about 25 mm across"),
		w("2025-11-30 14:00", "inspect", "0007", "--bow", "1.5 mm", "--span", "30 cm", "--along", "height", "--hollow-to", "front", "--edges", "sound", "--adhesion", "sound", "--by", "Odile Marrens", "--remarks", "the one without its back coat"),
		w("2026-02-10 10:00", "climate", "0003", "--temp", "19 °C", "--rh", "47%"),
		w("2026-02-10 10:20", "inspect", "0003", "--bow", "0.3 mm", "--span", "30 cm", "--along", "height", "--hollow-to", "front", "--edges", "sound", "--adhesion", "sound", "--by", "Odile Marrens"),
		w("2026-02-10 11:00", "varnish", "0003", "--with", "varnish-1", "--resin", "hydrocarbon resin", "--removable", "yes", "--removed-with", "white spirit", "--gloss", "satin", "--amount-each", "5 g", "--tool", "flat brush", "--temp", "19 °C", "--rh", "47%"),

		// On paper.
		w("2026-03-02 09:30", "label", "batch:linen", "batch:mdf", "--except", "0011", "-o", in("labels.pdf")),
		w("2026-03-02 10:00", "certificate", "0003", "-o", in("certificate.pdf")),
		w("2026-03-07 16:00", "handover", "0003", "--how", "sale", "--to", "M. Invented, Harbour Road 1, Saltmere", "--price", "1400 EUR"),

		// Those who scan a label are to meet a page: the work sold, a blank, and the one that bends.
		w("2026-03-09 11:00", "panel", "publish", "0003", "--photograph", "yes"),
		w("2026-03-09 11:02", "panel", "publish", "0001", "0007"),
		w("2026-03-09 11:10", "site", in("site"), "--index"),
	}
}

// Salts are the salts of the demonstration.
type Salts struct{ made int }

// Read gives the next salt.
func (d *Salts) Read(p []byte) (int, error) {
	d.made++
	s := sha256.Sum256(fmt.Appendf(nil, "demonstration %d", d.made))
	return copy(p, s[:16]), nil
}
