package measure_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"backleaf/record"
	"backleaf/record/measure"
)

// birch is the usual build: veneers of 1.4 mm, each face sanded by 0.3.
func birch(plies int) []float64 {
	veneers := slices.Repeat([]float64{1400}, plies)
	veneers[0], veneers[plies-1] = 1100, 1100
	return veneers
}

func TestPlywoodStiffness(t *testing.T) {
	for _, c := range []struct {
		plies                int
		millimetres          float64
		along, across        float64
		handAlong, handCross float64
	}{
		{3, 3.60, 16470.8, 1029.2, 16471, 1029},
		{5, 6.40, 12737.3, 4762.7, 12737, 4763},
		{7, 9.20, 11394.9, 6105.1, 11395, 6105},
		{9, 12.00, 10719.4, 6780.6, 10719, 6781},
		{11, 14.80, 10315.8, 7184.2, 10316, 7184},
		{13, 17.60, 10048.3, 7451.7, 10048, 7452},
		{15, 20.40, 9858.4, 7641.6, 9858, 7642},
	} {
		veneers := birch(c.plies)
		h := 0.0
		for _, v := range veneers {
			h += v / 1000
		}
		got, err := measure.PlywoodStiffness(veneers)
		const hand = "from memory of the Finnish plywood handbook"
		const computed = "computed by lamination, 17 500 N/mm²"
		name := fmt.Sprintf("%d plies ", c.plies)
		run(t,
			check{got: h}.is(name+"thickness", c.millimetres, 1e-9, "birch plywood data sheet, 1.4 mm veneers"),
			check{got: got.AlongMPa, err: err}.is(name+"along", c.along, 0.1, computed),
			check{got: got.AcrossMPa, err: err}.is(name+"across", c.across, 0.1, computed),
			check{got: got.AlongMPa, err: err}.is(name+"along", c.handAlong, 0.6, hand),
			check{got: got.AcrossMPa, err: err}.is(name+"across", c.handCross, 0.6, hand),
		)
		// The product standard's minimum for birch-faced plywood of 9 to 40
		// mm, 6000 along and 3000 across (exterior birch plywood
		// specification), must lie below.
		if h >= 9 && (got.AlongMPa < 6000 || got.AcrossMPa < 3000) {
			t.Errorf("%d plies: %+v is below the product standard's minimum", c.plies, got)
		}
	}

	s, err := measure.PlywoodStiffness(birch(3))
	run(t, check{got: s.AlongMPa / s.AcrossMPa, err: err}.is("3-ply, along to across", 16, 0.05, "computed"))

	// Three equal plies: the core takes (1/3)³ of the cube.
	equal, err := measure.EqualVeneers(3, 3000)
	if err != nil {
		t.Fatal(err)
	}
	s, err = measure.PlywoodStiffness(equal)
	run(t, check{got: s.AcrossMPa, err: err}.is("three equal plies across", 17500.0/27, 1e-6, "computed"))
}

func TestPlywoodRefusals(t *testing.T) {
	for _, n := range []int{-1, 0, 1, 2, 4, 51} {
		if _, err := measure.EqualVeneers(n, 3000); err == nil {
			t.Errorf("EqualVeneers(%d) was taken", n)
		}
	}
	for _, bad := range [][]float64{nil, {1400}, {1100, 1400}, {1100, 0, 1100}, {1100, math.NaN(), 1100}, {1.1, 1.4, 1.1}} {
		if s, err := measure.PlywoodStiffness(bad); err == nil {
			t.Errorf("PlywoodStiffness(%v) = %+v", bad, s)
		}
	}
	if _, err := measure.EqualVeneers(3, 3); err == nil {
		t.Error("EqualVeneers took millimetres for micrometres")
	}
}

// Source: birch plywood data sheet, plies by thickness.
func TestBirchPlies(t *testing.T) {
	for microns, want := range map[float64]int{3500: 3, 4100: 3, 6500: 5, 9000: 7, 12000: 9, 15000: 11, 18000: 13} {
		if got, err := measure.BirchPlies(microns); err != nil || got != want {
			t.Errorf("BirchPlies(%g) = %d, %v; want %d", microns, got, err, want)
		}
	}
	for _, microns := range []float64{3000, 5000, 25000} {
		if _, err := measure.BirchPlies(microns); !errors.Is(err, measure.ErrNoFigure) {
			t.Errorf("BirchPlies(%g): %v", microns, err)
		}
	}
	for n, microns := range map[int]float64{3: 3600, 5: 6400, 7: 9200, 9: 12000, 11: 14800, 13: 17600} {
		if got, err := measure.BirchPlies(microns); err != nil || got != n {
			t.Errorf("the build of %d plies is %g µm, which the data sheet calls %d, %v", n, microns, got, err)
		}
	}
}

func TestFibreboardStiffness(t *testing.T) {
	const memory, sheet = "from memory of EN 622-5", "MDF data sheet to EN 622-5"
	for _, c := range []struct {
		board   record.BoardKind
		microns float64
		mpa     float64
		low     bool
		source  string
	}{
		{record.MDF, 3000, 2700, true, "no modulus set up to 4 mm, " + memory},
		{record.MDF, 4000, 2700, true, "no modulus set up to 4 mm, " + memory},
		{record.MDF, 6000, 2700, false, memory},
		{record.MDF, 9000, 2700, false, sheet},
		{record.MDF, 9100, 2500, false, sheet},
		{record.MDF, 12000, 2500, false, sheet},
		{record.MDF, 19000, 2200, false, sheet},
		{record.MDF, 30000, 2100, false, sheet},
		{record.MDF, 45000, 1900, false, sheet},
		{record.Hardboard, 3200, 4500, false, "from memory of Wood Handbook table 12-1, mid-range of 3.10 to 5.52 GPa"},
	} {
		got, err := measure.FibreboardStiffness(c.board, c.microns)
		if err != nil || got.AlongMPa != c.mpa || got.AcrossMPa != c.mpa || got.Poisson != 0.3 || got.LowConfidence != c.low {
			t.Errorf("%s %g µm: %+v, %v; want %g (source: %s)", c.board, c.microns, got, err, c.mpa, c.source)
		}
	}
	for _, c := range []struct {
		board   record.BoardKind
		microns float64
	}{{record.MDF, 50000}, {record.Plywood, 6500}, {"oak", 20000}} {
		if _, err := measure.FibreboardStiffness(c.board, c.microns); !errors.Is(err, measure.ErrNoFigure) {
			t.Errorf("FibreboardStiffness(%s, %g): %v", c.board, c.microns, err)
		}
	}
	if _, err := measure.FibreboardStiffness(record.MDF, 3); err == nil {
		t.Error("3 µm taken for a board")
	}
}

// However the veneers are cut, along and across share out the veneer's own
// modulus, and turning the board over changes nothing.
func TestPlywoodProperties(t *testing.T) {
	r := fixed()
	for range 2000 {
		veneers := make([]float64, 3+2*r.Intn(24))
		for i := range veneers {
			veneers[i] = logBetween(r, 100, 10000)
		}
		s, err := measure.PlywoodStiffness(veneers)
		finite(t, "along", s.AlongMPa, err)
		finite(t, "across", s.AcrossMPa, err)
		if s.AlongMPa <= 0 || s.AcrossMPa <= 0 || math.Abs(s.AlongMPa+s.AcrossMPa-17500) > 1e-6 {
			t.Fatalf("%v: %+v", veneers, s)
		}
		slices.Reverse(veneers)
		turned, err := measure.PlywoodStiffness(veneers)
		if err != nil || math.Abs(turned.AlongMPa-s.AlongMPa) > 1e-6 {
			t.Fatalf("turned over: %+v, %+v, %v", s, turned, err)
		}
	}
}
