package measure

func checkModulus(mpa float64) error { return within("modulus", mpa, 0.01, 1e6, "MPa") }

func checkPoisson(ratio float64) error { return within("Poisson's ratio", ratio, 0, 0.49, "") }

func checkSpan(what string, microns float64) error { return within(what, microns, 1000, 2e7, "µm") }

// Sheet is the board that films and cloth pull at.
type Sheet struct {
	ThicknessMicrons float64 // 1 to 200000
	ModulusMPa       float64 // in the direction of the span, 0.01 to 1000000
	Poisson          float64 // 0 to 0.49
}

func (s Sheet) check() error {
	return first(
		within("sheet thickness", s.ThicknessMicrons, 1, 200000, "µm"),
		checkModulus(s.ModulusMPa),
		checkPoisson(s.Poisson),
	)
}

// TensionCurvature is the curvature, in 1/m, of a sheet under tension in thin
// layers on its faces:
//
//	κ = 6(1-ν)(front - back)/(E*h²)
//
// Tension is in N/m: for a film its stress in MPa times its dry thickness in
// µm, for cloth its line tension. -1e6 to 1e6 N/m, negative for a layer that
// pushes. Valid while the layers are thin beside the sheet. Source: Stoney
// 1909, with (1-ν) as in Feng, Huang and Rosakis 2007; the moments of the two
// faces subtract.
func TensionCurvature(sheet Sheet, frontNewtonsPerMetre, backNewtonsPerMetre float64) (float64, error) {
	if err := first(
		sheet.check(),
		within("tension at the front", frontNewtonsPerMetre, -1e6, 1e6, "N/m"),
		within("tension at the back", backNewtonsPerMetre, -1e6, 1e6, "N/m"),
	); err != nil {
		return 0, err
	}
	hMetres := sheet.ThicknessMicrons * 1e-6
	net := frontNewtonsPerMetre - backNewtonsPerMetre
	return 6 * (1 - sheet.Poisson) * net / (sheet.ModulusMPa * 1e6 * hMetres * hMetres), nil
}

// BowMicrons is the height of the arc over a span, with the sign of the
// curvature, for a gently curved panel:
//
//	s = κL²/8
//
// Curvature -1e4 to 1e4 1/m, span 1000 to 2e7 µm. Source: geometry; 0.04 %
// low where the bow is 1 % of the span.
func BowMicrons(curvaturePerMetre, spanMicrons float64) (float64, error) {
	if err := checkArc(curvaturePerMetre, spanMicrons); err != nil {
		return 0, err
	}
	return curvaturePerMetre * 1e-6 * spanMicrons * spanMicrons / 8, nil
}

func checkArc(curvaturePerMetre, spanMicrons float64) error {
	return first(
		within("curvature", curvaturePerMetre, -1e4, 1e4, "1/m"),
		checkSpan("span", spanMicrons),
	)
}
