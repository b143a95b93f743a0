package measure_test

import (
	"fmt"
	"math"
	"math/rand"
	"slices"
	"testing"

	"backleaf/record/measure"
)

func layer(microns, mpa, strain float64) measure.Layer {
	return measure.Layer{ThicknessMicrons: microns, ModulusMPa: mpa, FreeStrain: strain}
}

// bow is the height in millimetres over a span in millimetres.
func bow(spanMM float64) func(float64, error) (float64, error) {
	return func(curvature float64, err error) (float64, error) {
		if err != nil {
			return 0, err
		}
		s, err := measure.BowMicrons(curvature, spanMM*1000)
		return s / 1000, err
	}
}

func TestTwoLayers(t *testing.T) {
	// The front layer shrinks, or expands less: hollow at the front.
	bimetal := [2]measure.Layer{layer(50000, 200e3, 1e-3), layer(50000, 200e3, 2e-3)}
	brass := [2]measure.Layer{layer(500, 205e3, 11e-4), layer(500, 110e3, 19e-4)}
	unequal := [2]measure.Layer{layer(1000, 70e3, 0), layer(500, 200e3, 1e-3)}
	paint := [2]measure.Layer{layer(100, 1000, -0.002), layer(100, 1000, 0)}
	two := func(l [2]measure.Layer) (float64, error) { return measure.TwoLayerCurvature(l[0], l[1]) }

	const computed = "computed from Timoshenko 1925"
	run(t,
		val(two(bimetal)).is("bimetal strip", 0.015, 1e-12, "inputs of a published finite-element validation case, "+computed),
		// The free end of a cantilever of 10 m stands as high as the middle of
		// an arc of 20 m.
		val(bow(20000)(two(bimetal))).is("bimetal strip, end in mm", 750, 1e-6, "from memory of the same validation case, 0.75 m"),
		val(two(brass)).is("steel and brass", 1.17072, 5e-6, computed),
		val(two(unequal)).is("unequal", 0.993691, 5e-7, computed),
		val(two(paint)).is("paint on ground", 15, 1e-9, "formula and strain of Hough and Michalski 2023, note 2: R = 66.667 mm"),
	)
	k, err := two(brass)
	run(t, check{got: 1 / k, err: err}.is("steel and brass, R", 0.85418, 5e-6, computed))
	height, err := measure.ArcHeightMicrons(15, 20000)
	run(t, check{got: height / 1000, err: err}.is("paint on ground, half-width 10 mm", 0.7543, 5e-5, computed))

	// The general stack is the same thing.
	for _, pair := range [][2]measure.Layer{bimetal, brass, unequal, paint} {
		a, err1 := two(pair)
		b, err2 := measure.StackCurvature(pair[:])
		if err1 != nil || err2 != nil || math.Abs(a-b) > 1e-9 {
			t.Errorf("two layers %.12g, stack %.12g, %v, %v", a, b, err1, err2)
		}
	}
}

// Hough and Michalski 2023, note 3: the height of a curl stays within 25 % when
// one layer is three times as thick, or seven times as stiff, as the other.
// The figures are computed.
func TestTwoLayersRobust(t *testing.T) {
	base, err := measure.TwoLayerCurvature(layer(100, 1000, -0.002), layer(100, 1000, 0))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name                    string
		front, back, mpaF, mpaB float64
		want                    float64
	}{
		{"thickness 3", 150, 50, 1000, 1000, 0.750},
		{"thickness 1/3", 50, 150, 1000, 1000, 0.750},
		{"modulus 7", 100, 100, 7000, 1000, 0.7568},
		{"modulus 1/7", 100, 100, 1000, 7000, 0.7568},
	} {
		k, err := measure.TwoLayerCurvature(layer(c.front, c.mpaF, -0.002), layer(c.back, c.mpaB, 0))
		run(t, check{got: k / base, err: err}.is(c.name, c.want, 5e-5, "computed from Timoshenko 1925"))
		if 1-k/base > 0.25+1e-9 {
			t.Errorf("%s: %.4f is not within 25 %%", c.name, k/base)
		}
	}
}

func TestTension(t *testing.T) {
	hardboard := measure.Sheet{ThicknessMicrons: 3200, ModulusMPa: 4500, Poisson: 0.3}
	thick := measure.Sheet{ThicknessMicrons: 6400, ModulusMPa: 4500, Poisson: 0.3}
	plywood := measure.Sheet{ThicknessMicrons: 9200, ModulusMPa: 8750, Poisson: 0.3}
	mdf := measure.Sheet{ThicknessMicrons: 6000, ModulusMPa: 2700, Poisson: 0.3}
	wafer := measure.Sheet{ThicknessMicrons: 500, ModulusMPa: 130e3, Poisson: 0.28}
	pull := measure.TensionCurvature

	const computed = "computed from Stoney 1909"
	const silicon = "silicon constants of a film-stress note, " + computed
	k, err := pull(wafer, 100*1, 0)
	run(t,
		check{got: k, err: err}.is("silicon wafer", 0.0132923, 5e-8, silicon),
		check{got: 1 / k, err: err}.is("silicon wafer, R", 75.231, 0.0005, silicon),
		val(bow(100)(k, err)).is("silicon wafer, bow", 0.016615, 5e-7, silicon),
		val(pull(hardboard, 1*60, 0)).is("coat on hardboard", 0.00546875, 1e-12, computed),
		val(bow(600)(pull(hardboard, 1*60, 0))).is("coat on hardboard, bow", 0.24609, 5e-6, computed),
		val(bow(600)(pull(thick, 1*60, 0))).is("twice as thick: a quarter", 0.24609375/4, 1e-12, computed),
		val(bow(600)(pull(thick, 1*60, 0))).is("twice as thick", 0.06152, 5e-6, computed),
		val(bow(1200)(pull(hardboard, 1*60, 0))).is("twice the span: four times", 4*0.24609375, 1e-9, computed),
		val(bow(600)(pull(hardboard, 1*100, 1*60))).is("two-sided", 0.16406, 5e-6, computed),
		val(pull(hardboard, 200, 0)).is("cloth on hardboard", 0.0182292, 5e-8, computed),
		val(bow(600)(pull(hardboard, 200, 0))).is("cloth on hardboard, bow", 0.8203, 5e-5, computed),
		val(bow(600)(pull(plywood, 200, 0))).is("cloth on plywood, bow", 0.0510, 5e-5, computed),
		val(bow(600)(pull(mdf, 200, 0))).is("cloth on MDF, bow", 0.3889, 5e-5, computed),
	)
	k, err = pull(hardboard, 60, 0)
	run(t, check{got: 1 / k, err: err}.is("coat on hardboard, R", 182.857, 0.0005, computed))
}

func TestStack(t *testing.T) {
	const laminate = "computed from laminate theory"
	// The thinner film faces forward, so the thicker one makes the back hollow.
	three := []measure.Layer{layer(50, 300, -0.001), layer(6000, 2700, 0), layer(150, 300, -0.001)}
	even := []measure.Layer{layer(150, 300, -0.001), layer(6000, 2700, 0), layer(150, 300, -0.001)}
	oil := measure.Layer{ThicknessMicrons: 100, ModulusMPa: 500, Poisson: 0.3, FreeStrain: -0.002}
	board := measure.Layer{ThicknessMicrons: 3200, ModulusMPa: 4500, Poisson: 0.3}
	sheet := measure.Sheet{ThicknessMicrons: 3200, ModulusMPa: 4500, Poisson: 0.3}
	run(t,
		val(measure.StackCurvature(three)).is("three layers", -0.00188471, 5e-9, laminate),
		val(bow(600)(measure.StackCurvature(three))).is("three layers, bow", -0.08481, 5e-6, laminate),
		val(measure.StackCurvature(even)).is("symmetric", 0, 1e-15, laminate),
		val(bow(600)(measure.StackCurvature([]measure.Layer{oil, board}))).is("oil paint, stack", 0.5956, 5e-5, laminate),
		val(bow(600)(measure.TensionCurvature(sheet, 500*0.002/0.7*100, 0))).is("oil paint, thin film", 0.5859, 5e-5, "computed from Stoney 1909"),
	)
	for _, bad := range [][]measure.Layer{
		nil, make([]measure.Layer, 1001), {layer(0, 300, 0)}, {layer(100, 0, 0)}, {layer(100, 300, 1)},
		{{ThicknessMicrons: 100, ModulusMPa: 300, Poisson: 0.5}}, {layer(math.NaN(), 300, 0)}, {layer(100, math.Inf(1), 0)},
	} {
		if k, err := measure.StackCurvature(bad); err == nil || k != 0 {
			t.Errorf("StackCurvature(%v) = %g, %v", bad, k, err)
		}
	}
}

func TestMoistureCurvature(t *testing.T) {
	damp, err1 := measure.EMC(20, 55)
	dry, err2 := measure.EMC(20, 45)
	run(t,
		check{got: damp - dry, err: err1}.is("MC between 45 and 55 % RH", 1.616, 0.001, "computed from Wood Handbook eq. 4-5"),
		check{got: dry, err: err2}.is("MC at 45 % RH", 8.485, 0.001, "computed from Wood Handbook eq. 4-5"),
		val(bow(600)(measure.MoistureCurvature(6000, dry*measure.MDFStrainPerMC, damp*measure.MDFStrainPerMC))).is(
			"MDF, dry front", 6.06, 0.005, "computed, 0.05 % per 1 % MC"),
		val(bow(600)(measure.MoistureCurvature(9200, 0, 2e-4))).is("plywood, dry front", 0.978, 0.0005, "computed, 0.02 % per 10 % RH"),
		val(bow(600)(measure.MoistureCurvature(9200, 2e-4, 0))).is("plywood, damp front", -0.978, 0.0005, "computed, 0.02 % per 10 % RH"),
	)
}

func TestArc(t *testing.T) {
	run(t,
		val(measure.ArcHeightMicrons(0.1, 6e5)).is("R 10 m, exact", 4501.01, 0.005, "computed from geometry"),
		val(measure.BowMicrons(0.1, 6e5)).is("R 10 m, approximate", 4500.00, 1e-6, "computed from geometry"),
		val(measure.ArcHeightMicrons(-0.1, 6e5)).is("hollow at the back", -4501.01, 0.005, "computed from geometry"),
		val(measure.ArcHeightMicrons(2, 1e6)).is("half a circle", 5e5, 1e-6, "geometry"),
		val(measure.ArcHeightMicrons(0, 6e5)).is("flat", 0, 0, "geometry"),
	)
	refuse(t, "ArcHeightMicrons", func(v float64) (float64, error) { return measure.ArcHeightMicrons(v, 1e6) }, 2.1, -2.1)
	refuse(t, "BowMicrons", func(v float64) (float64, error) { return measure.BowMicrons(0.1, v) }, 0, -1, 600)
	refuse(t, "MoistureCurvature", func(v float64) (float64, error) { return measure.MoistureCurvature(v, 0, 0) }, 0, 3.2)
	refuse(t, "TensionCurvature", func(v float64) (float64, error) {
		return measure.TensionCurvature(measure.Sheet{ThicknessMicrons: v, ModulusMPa: 4500}, 1, 0)
	}, 0, -1)
}

func someLayers(r *rand.Rand) []measure.Layer {
	layers := make([]measure.Layer, 1+r.Intn(8))
	for i := range layers {
		layers[i] = measure.Layer{ThicknessMicrons: logBetween(r, 0.01, 2e5), ModulusMPa: logBetween(r, 0.01, 1e6),
			Poisson: between(r, 0, 0.49), FreeStrain: between(r, -0.5, 0.5)}
	}
	return layers
}

func TestBowProperties(t *testing.T) {
	r := fixed()
	for range 5000 {
		layers := someLayers(r)
		k, err := measure.StackCurvature(layers)
		finite(t, "StackCurvature", k, err)

		// What cancels in a moment sum leaves rounding in proportion to the
		// greatest curvature those strains could give.
		h := 0.0
		for _, l := range layers {
			h += l.ThicknessMicrons
		}
		tiny := 1e-9 * (math.Abs(k) + 1e6/h)

		// Turned round, the same panel bows the other way.
		turned := slices.Clone(layers)
		slices.Reverse(turned)
		mirrored, err := measure.StackCurvature(turned)
		finite(t, "StackCurvature turned", mirrored, err)
		if math.Abs(k+mirrored) > tiny {
			t.Fatalf("turned round: %g and %g for %+v", k, mirrored, layers)
		}

		// Laid back to back with its mirror image it stays flat.
		flat, err := measure.StackCurvature(append(slices.Clone(layers), turned...))
		finite(t, "StackCurvature symmetric", flat, err)
		if math.Abs(flat) > tiny {
			t.Fatalf("symmetric stack bows %g for %+v", flat, layers)
		}

		if len(layers) == 2 {
			two, err := measure.TwoLayerCurvature(layers[0], layers[1])
			finite(t, "TwoLayerCurvature", two, err)
			if math.Abs(k-two) > 1e-6*math.Max(math.Abs(two), 1e6/h*1e-3) {
				t.Fatalf("two layers %g, stack %g for %+v", two, k, layers)
			}
		}

		sheet := measure.Sheet{ThicknessMicrons: logBetween(r, 500, 1e5), ModulusMPa: logBetween(r, 500, 2e4), Poisson: between(r, 0, 0.49)}
		front, back := between(r, -1000, 1000), between(r, -1000, 1000)
		tk, err := measure.TensionCurvature(sheet, front, back)
		finite(t, "TensionCurvature", tk, err)
		swapped, err := measure.TensionCurvature(sheet, back, front)
		finite(t, "TensionCurvature swapped", swapped, err)
		if tk != -swapped {
			t.Fatalf("faces swapped: %g and %g", tk, swapped)
		}

		span := logBetween(r, 1000, 1e7)
		s1, err := measure.BowMicrons(tk/1e3, span)
		finite(t, "BowMicrons", s1, err)
		s2, err := measure.BowMicrons(tk/1e3, 2*span)
		finite(t, "BowMicrons doubled", s2, err)
		if math.Abs(s2-4*s1) > 1e-12*math.Abs(s2) {
			t.Fatalf("span doubled: %g and %g", s1, s2)
		}
	}
}

func BenchmarkStackCurvature(b *testing.B) {
	for _, n := range []int{3, 60} {
		layers := make([]measure.Layer, n)
		for i := range layers {
			layers[i] = layer(60, 300, -0.001)
		}
		layers[n/2] = layer(6000, 2700, 0)
		b.Run(fmt.Sprintf("%d-layers", n), func(b *testing.B) {
			for b.Loop() {
				if _, err := measure.StackCurvature(layers); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// The approximation is never above the exact height, and close to it for any
// panel that could still be called flat.
func TestArcProperties(t *testing.T) {
	r := fixed()
	for range 3000 {
		span := logBetween(r, 1000, 2e7)
		curvature := between(r, -1, 1) * 2e6 / span
		exact, err := measure.ArcHeightMicrons(curvature, span)
		finite(t, "ArcHeightMicrons", exact, err)
		near, err := measure.BowMicrons(curvature, span)
		finite(t, "BowMicrons", near, err)
		if math.Abs(near) > math.Abs(exact)*(1+1e-12) {
			t.Fatalf("κ %g, L %g: approximation %g above %g", curvature, span, near, exact)
		}
		if math.Abs(exact) < 0.01*span && math.Abs(exact-near) > 0.00041*math.Abs(exact) {
			t.Fatalf("κ %g, L %g: approximation %g, exact %g", curvature, span, near, exact)
		}
		k, err := measure.MoistureCurvature(logBetween(r, 500, 1e5), between(r, -0.5, 0.5), between(r, -0.5, 0.5))
		finite(t, "MoistureCurvature", k, err)
	}
}
