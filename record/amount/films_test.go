package amount_test

import (
	"math"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/invented"
	"backleaf/record/tell"
)

func fold(t *testing.T, es []record.Entry) (*record.Workshop, *record.Panel) {
	t.Helper()
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w, w.Panel(invented.Panel)
}

// Film thickness from the record, against figures worked out beside each case.
func TestFilms(t *testing.T) {
	const shelf = `
		material - key=paint name=a_primer uses=ground binder=acrylic-dispersion waterborne=yes solids_by_volume=40_% density=1.3_g/mL
		material - key=thin name=a_size uses=size binder=pva-dispersion waterborne=yes solids_by_mass=50_% density=1.05_g/mL
		material - key=bare name=unstated uses=size
		`
	for _, c := range []struct {
		name, story string
		layer       int
		wet, dry    float64
		wetBy       amount.Certainty
		dryBy       amount.Certainty
		why         string
	}{
		{"100 g over half a square metre, spreading arithmetic: 153.85 µm", `
			cut - batch=b size=500_x_1000_x_3_mm
			coat - faces=front mix=paint wet_each=100_g`, 0, 153.846, 61.538, amount.Estimated, amount.Estimated, ""},
		{"thinned by 20 %, gauge at 100 µm, 40 % solids: 33.33 µm, a published example", `
			cut - batch=b size=500_x_1000_x_3_mm
			coat - faces=front mix=paint thinned=20_% wet_film=100_µm`, 0, 100, 33.333, amount.Measured, amount.Estimated, ""},
		{"volume solids from mass solids, 50 % at 1.05 g/mL: 47.39 %", `
			cut - batch=b size=500_x_1000_x_3_mm
			coat - faces=front mix=thin wet_film=100_µm`, 0, 100, 47.395, amount.Measured, amount.Estimated, ""},
		{"a dry gauge comes before everything", `
			cut - batch=b size=500_x_1000_x_3_mm
			coat - faces=front mix=bare wet_each=100_g dry_film=40_µm`, 0, 0, 40, amount.Unknown, amount.Measured, "density"},
		{"half a litre over front and back, each a square metre: 250 µm", `
			cut - batch=b size=1000_x_1000_x_3_mm
			coat - faces=front,back mix=paint wet_each=500_mL`, 1, 250, 100, amount.Estimated, amount.Estimated, ""},
		{"edges given extra count twice: 4 x 1000 x 10 mm is 0.04 m²", `
			cut - batch=b size=1000_x_1000_x_10_mm
			coat - faces=front,edges extra=edges mix=paint wet_each=108_mL`, 1, 200, 80, amount.Estimated, amount.Estimated, ""},
		{"three panels, the second twice as large: a quarter of 100 g", `
			cut - batch=b size=500_x_500_x_3_mm panels=KB26-0140-D,KB26-0142-C
			cut - batch=b size=1000_x_500_x_3_mm panels=KB26-0141-W
			coat - faces=front mix=paint wet_total=130_g panels=KB26-0140-D,KB26-0141-W,KB26-0142-C`, 0, 100, 40, amount.Estimated, amount.Estimated, ""},
		{"a panel for which the coat was withdrawn has no share", `
			cut - batch=b size=500_x_500_x_3_mm panels=KB26-0140-D,KB26-0141-W
			coat - faces=front mix=paint wet_total=130_g panels=KB26-0140-D,KB26-0141-W
			withdrawn - entry=@5 because=not_that_one panels=KB26-0141-W`, 0, 400, 160, amount.Estimated, amount.Estimated, ""},
		{"the other panel is not at hand", `
			cut - batch=b size=500_x_500_x_3_mm
			coat - faces=front mix=paint wet_total=130_g panels=KB26-0140-D,KB26-0141-W`, 0, 0, 0, amount.Unknown, amount.Unknown, "KB26-0141-W"},
		{"the other panel has no size", `
			cut - batch=b size=500_x_500_x_3_mm
			cut - batch=b size=unknown_x_unknown panels=KB26-0141-W
			coat - faces=front mix=paint wet_total=130_g panels=KB26-0140-D,KB26-0141-W`, 0, 0, 0, amount.Unknown, amount.Unknown, "size"},
		{"no amount", `
			cut - batch=b size=500_x_500_x_3_mm
			coat - faces=front mix=paint`, 0, 0, 0, amount.Unknown, amount.Unknown, "amount"},
		{"thinned, nobody knows how far", `
			cut - batch=b size=500_x_500_x_3_mm
			coat - faces=front mix=paint wet_film=100_µm thinned=unknown`, 0, 100, 0, amount.Measured, amount.Unknown, "thinned"},
		{"solids not stated", `
			cut - batch=b size=500_x_500_x_3_mm
			coat - faces=front mix=bare wet_film=100_µm`, 0, 100, 0, amount.Measured, amount.Unknown, "solids"},
		{"a cloth is no film", `
			cut - batch=b size=500_x_500_x_3_mm
			cloth - faces=front mix=paint wet_film=100_µm`, 1, 0, 0, amount.Unknown, amount.Unknown, "cloth"},
		{"its adhesive is", `
			cut - batch=b size=500_x_500_x_3_mm
			cloth - faces=front mix=paint wet_film=100_µm`, 0, 100, 40, amount.Measured, amount.Estimated, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			w, p := fold(t, invented.Lines(strings.TrimSpace(shelf)+"\n"+strings.TrimSpace(c.story)))
			f := amount.Films(w, p)[c.layer]
			if math.Abs(f.WetMicrons-c.wet) > 0.01 || math.Abs(f.DryMicrons-c.dry) > 0.01 || f.Wet != c.wetBy || f.Dry != c.dryBy || !strings.Contains(why(f), c.why) {
				t.Errorf("wet %.3f %s, dry %.3f %s, %q; want %.3f %s, %.3f %s, %q", f.WetMicrons, f.Wet, f.DryMicrons, f.Dry, why(f), c.wet, c.wetBy, c.dry, c.dryBy, c.why)
			}
		})
	}
}

// why says in words why something of a film is not known.
func why(f amount.Film) string {
	if f.Why.Code == "" {
		return ""
	}
	return tell.Say(tell.English(), f.Why)
}
