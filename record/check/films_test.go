package check_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/measure"
)

// lines reads entries in the form of the histories, without a shelf.
func lines(t testing.TB, text string) []record.Entry {
	t.Helper()
	var es []record.Entry
	for _, l := range strings.Split(strings.TrimSpace(text), "\n") {
		es = append(es, entry(t, strings.TrimSpace(l), len(es)+1, 0))
	}
	return es
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
		wetBy       check.Certainty
		dryBy       check.Certainty
		why         string
	}{
		{"100 g over half a square metre, spreading arithmetic: 153.85 µm", `
			cut - batch=b size=500_x_1000_x_3_mm
			coat - faces=front mix=paint wet_each=100_g`, 0, 153.846, 61.538, check.Estimated, check.Estimated, ""},
		{"thinned by 20 %, gauge at 100 µm, 40 % solids: 33.33 µm, a published example", `
			cut - batch=b size=500_x_1000_x_3_mm
			coat - faces=front mix=paint thinned=20_% wet_film=100_µm`, 0, 100, 33.333, check.Measured, check.Estimated, ""},
		{"volume solids from mass solids, 50 % at 1.05 g/mL: 47.39 %", `
			cut - batch=b size=500_x_1000_x_3_mm
			coat - faces=front mix=thin wet_film=100_µm`, 0, 100, 47.395, check.Measured, check.Estimated, ""},
		{"a dry gauge comes before everything", `
			cut - batch=b size=500_x_1000_x_3_mm
			coat - faces=front mix=bare wet_each=100_g dry_film=40_µm`, 0, 0, 40, check.Unknown, check.Measured, "density"},
		{"half a litre over front and back, each a square metre: 250 µm", `
			cut - batch=b size=1000_x_1000_x_3_mm
			coat - faces=front,back mix=paint wet_each=500_mL`, 1, 250, 100, check.Estimated, check.Estimated, ""},
		{"edges given extra count twice: 4 x 1000 x 10 mm is 0.04 m²", `
			cut - batch=b size=1000_x_1000_x_10_mm
			coat - faces=front,edges extra=edges mix=paint wet_each=108_mL`, 1, 200, 80, check.Estimated, check.Estimated, ""},
		{"three panels, the second twice as large: a quarter of 100 g", `
			cut - batch=b size=500_x_500_x_3_mm panels=KB26-0140-D,KB26-0142-C
			cut - batch=b size=1000_x_500_x_3_mm panels=KB26-0141-W
			coat - faces=front mix=paint wet_total=130_g panels=KB26-0140-D,KB26-0141-W,KB26-0142-C`, 0, 100, 40, check.Estimated, check.Estimated, ""},
		{"a panel for which the coat was withdrawn has no share", `
			cut - batch=b size=500_x_500_x_3_mm panels=KB26-0140-D,KB26-0141-W
			coat - faces=front mix=paint wet_total=130_g panels=KB26-0140-D,KB26-0141-W
			withdrawn - entry=@5 because=not_that_one panels=KB26-0141-W`, 0, 400, 160, check.Estimated, check.Estimated, ""},
		{"the other panel is not at hand", `
			cut - batch=b size=500_x_500_x_3_mm
			coat - faces=front mix=paint wet_total=130_g panels=KB26-0140-D,KB26-0141-W`, 0, 0, 0, check.Unknown, check.Unknown, "KB26-0141-W"},
		{"the other panel has no size", `
			cut - batch=b size=500_x_500_x_3_mm
			cut - batch=b size=unknown_x_unknown panels=KB26-0141-W
			coat - faces=front mix=paint wet_total=130_g panels=KB26-0140-D,KB26-0141-W`, 0, 0, 0, check.Unknown, check.Unknown, "size"},
		{"no amount", `
			cut - batch=b size=500_x_500_x_3_mm
			coat - faces=front mix=paint`, 0, 0, 0, check.Unknown, check.Unknown, "amount"},
		{"thinned, nobody knows how far", `
			cut - batch=b size=500_x_500_x_3_mm
			coat - faces=front mix=paint wet_film=100_µm thinned=unknown`, 0, 100, 0, check.Measured, check.Unknown, "thinned"},
		{"solids not stated", `
			cut - batch=b size=500_x_500_x_3_mm
			coat - faces=front mix=bare wet_film=100_µm`, 0, 100, 0, check.Measured, check.Unknown, "solids"},
		{"a cloth is no film", `
			cut - batch=b size=500_x_500_x_3_mm
			cloth - faces=front mix=paint wet_film=100_µm`, 1, 0, 0, check.Unknown, check.Unknown, "cloth"},
		{"its adhesive is", `
			cut - batch=b size=500_x_500_x_3_mm
			cloth - faces=front mix=paint wet_film=100_µm`, 0, 100, 40, check.Measured, check.Estimated, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			w, p := fold(t, lines(t, strings.TrimSpace(shelf)+"\n"+strings.TrimSpace(c.story)))
			f := check.Films(w, p)[c.layer]
			if math.Abs(f.WetMicrons-c.wet) > 0.01 || math.Abs(f.DryMicrons-c.dry) > 0.01 || f.Wet != c.wetBy || f.Dry != c.dryBy || !strings.Contains(f.Why, c.why) {
				t.Errorf("wet %.3f %s, dry %.3f %s, %q; want %.3f %s, %.3f %s, %q", f.WetMicrons, f.Wet, f.DryMicrons, f.Dry, f.Why, c.wet, c.wetBy, c.dry, c.dryBy, c.why)
			}
		})
	}
}

const boards = `
material - key=hard name=hardboard uses=board board={"kind":"hardboard"}
material - key=ply name=plywood uses=board board={"kind":"plywood","species":"birch","plies":3}
material - key=poplar name=plywood uses=board board={"kind":"plywood","species":"poplar","plies":3}
material - key=sealer name=sealer uses=sealer binder=acrylic-dispersion
material - key=pva name=size uses=size binder=pva-dispersion
`

func bowOf(t testing.TB, story string) (check.BowEstimate, error) {
	t.Helper()
	return check.Bow(fold(t, lines(t, strings.TrimSpace(boards)+"\n"+strings.TrimSpace(story))))
}

// The bow of a record against cases worked out by Stoney's formula: films of 1
// MPa on hardboard of 4.5 GPa, Poisson 0.3, 3.2 mm, over 600 mm.
func TestBow(t *testing.T) {
	for _, c := range []struct {
		name, story string
		low, high   float64 // mm
		toward      record.Toward
		missing     int
	}{
		{"60 µm on the front", `
			cut - batch=b size=60_x_40_cm_x_3.2_mm board=hard
			coat - faces=front mix=sealer dry_film=60_µm`, 0.024609, 0.24609, "front", 0},
		{"100 µm on the front, 60 on the back", `
			cut - batch=b size=60_x_40_cm_x_3.2_mm board=hard
			coat - faces=front mix=sealer dry_film=100_µm
			coat - faces=back mix=sealer dry_film=60_µm`, 0.016406, 0.16406, "front", 0},
		{"the same on a board twice as thick", `
			cut - batch=b size=60_x_40_cm_x_6.4_mm board=hard
			coat - faces=back mix=sealer dry_film=60_µm`, -0.061523, -0.0061523, "back", 0},
		{"cloth on the front, 100 to 300 N/m", `
			cut - batch=b size=60_x_40_cm_x_3.2_mm board=hard
			cloth - faces=front`, 0.41016, 1.23047, "front", 1},
		{"equal films need no figure for their pull", `
			cut - batch=b size=60_x_40_cm_x_3.2_mm board=hard
			coat - faces=front,back mix=pva dry_film=60_µm`, 0, 0, "flat", 0},
		{"unequal films of a kind without a figure", `
			cut - batch=b size=60_x_40_cm_x_3.2_mm board=hard
			coat - faces=front mix=pva dry_film=60_µm`, 0, 0, "flat", 1},
		{"coats on the edges do not bow", `
			cut - batch=b size=60_x_40_cm_x_3.2_mm board=hard
			coat - faces=edges mix=sealer dry_film=60_µm`, 0, 0, "flat", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, err := bowOf(t, c.story)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(b.LowMicrons/1000-c.low) > 1e-5 || math.Abs(b.HighMicrons/1000-c.high) > 1e-5 || b.HollowTo() != c.toward || len(b.Missing) != c.missing {
				t.Errorf("%.6f to %.6f mm, hollow to %s, without %q", b.LowMicrons/1000, b.HighMicrons/1000, b.HollowTo(), b.Missing)
			}
			if s := b.String(); !strings.Contains(s, "estimate") {
				t.Errorf("%q does not say that it is an estimate", s)
			}
		})
	}
}

// A span twice as long bows four times as far; the grain counts; what the
// record does not tell gives no estimate.
func TestBowOfBoards(t *testing.T) {
	const coat = "\ncoat - faces=front mix=sealer dry_film=60_µm"
	one, err1 := bowOf(t, "cut - batch=b size=30_x_20_cm_x_3.2_mm board=hard"+coat)
	two, err2 := bowOf(t, "cut - batch=b size=60_x_40_cm_x_3.2_mm board=hard"+coat)
	if err1 != nil || err2 != nil || math.Abs(two.HighMicrons/one.HighMicrons-4) > 1e-9 {
		t.Errorf("%v (%v), twice as long %v (%v)", one, err1, two, err2)
	}
	along, _ := bowOf(t, "cut - batch=b size=60_x_40_cm_x_3.6_mm board=ply grain=height"+coat)
	across, _ := bowOf(t, "cut - batch=b size=60_x_40_cm_x_3.6_mm board=ply grain=width"+coat)
	unsaid, _ := bowOf(t, "cut - batch=b size=60_x_40_cm_x_3.6_mm board=ply"+coat)
	// Three equal veneers: 26/27 of the stiffness along, 1/27 across.
	if r := across.HighMicrons / along.HighMicrons; math.Abs(r-26) > 1e-6 {
		t.Errorf("across the grain %.3f times the bow along it, want 26", r)
	}
	if unsaid.HighMicrons != across.HighMicrons || len(unsaid.Notes) == 0 {
		t.Errorf("an unknown grain must be reckoned across, with a note: %v %q", unsaid, unsaid.Notes)
	}
	for _, story := range []string{
		"cut - batch=b size=unknown_x_unknown_x_3_mm board=hard",
		"cut - batch=b size=60_x_40_cm board=hard",
		"cut - batch=b size=60_x_40_cm_x_3_mm",
		"cut - batch=b size=60_x_40_cm_x_3_mm board=poplar",
	} {
		if b, err := bowOf(t, story+coat); !errors.Is(err, check.ErrNoBow) {
			t.Errorf("%s: %v, %v; want no estimate", story, b, err)
		}
	}
}

// What one layer makes of the bow can be asked by itself.
func TestBowOf(t *testing.T) {
	w, p := fold(t, lines(t, strings.TrimSpace(boards)+`
cut - batch=b size=60_x_40_cm_x_3.2_mm board=hard
coat - faces=front mix=sealer dry_film=60_µm
coat - faces=front mix=sealer dry_film=60_µm`))
	whole, err1 := check.Bow(w, p)
	half, err2 := check.BowOf(w, p, func(l record.Layer) bool { return l.Seq == 7 })
	if err1 != nil || err2 != nil || math.Abs(whole.HighMicrons-2*half.HighMicrons) > 1e-9 || len(half.Entries) != 1 || half.Grade != measure.BowSlight {
		t.Errorf("whole %v (%v), one coat %v (%v)", whole, err1, half, err2)
	}
}
