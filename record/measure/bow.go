package measure

import (
	"fmt"
	"math"
)

// Layer is one layer of a stack. FreeStrain is the strain it would take by
// itself, negative for shrinking.
type Layer struct {
	ThicknessMicrons float64 // 0.01 to 200000
	ModulusMPa       float64 // 0.01 to 1000000
	Poisson          float64 // 0 to 0.49; 0 for a narrow strip
	FreeStrain       float64 // -0.5 to 0.5
}

// planeMPa is the modulus of a layer that bends both ways at once.
func (l Layer) planeMPa() float64 { return l.ModulusMPa / (1 - l.Poisson) }

func (l Layer) check() error {
	return first(
		within("layer thickness", l.ThicknessMicrons, 0.01, 200000, "µm"),
		checkModulus(l.ModulusMPa),
		checkPoisson(l.Poisson),
		within("free strain", l.FreeStrain, -0.5, 0.5, ""),
	)
}

func checkModulus(mpa float64) error { return within("modulus", mpa, 0.01, 1e6, "MPa") }

func checkPoisson(ratio float64) error { return within("Poisson's ratio", ratio, 0, 0.49, "") }

func checkSpan(what string, microns float64) error { return within(what, microns, 1000, 2e7, "µm") }

// StackCurvature is the curvature, in 1/m, of any number of layers bonded
// together, listed from front to back. With E' = E/(1-ν) and z from the front,
//
//	A = ΣE'(z1-z0), B = ΣE'(z1²-z0²)/2, D = ΣE'(z1³-z0³)/3
//	N = ΣE'ε(z1-z0), M = ΣE'ε(z1²-z0²)/2
//	κ = (A*M - B*N)/(A*D - B²)
//
// One to 1000 layers. Source: from memory of laminate theory; an equivalent
// closed form is Hsueh, Thin Solid Films 418 (2002).
func StackCurvature(layers []Layer) (float64, error) {
	if len(layers) == 0 || len(layers) > 1000 {
		return 0, fmt.Errorf("a stack of %d layers: from 1 to 1000 are needed", len(layers))
	}
	var a, b, z float64
	for _, l := range layers {
		if err := l.check(); err != nil {
			return 0, err
		}
		stiff := l.planeMPa() * l.ThicknessMicrons
		a += stiff
		b += stiff * (z + l.ThicknessMicrons/2)
		z += l.ThicknessMicrons
	}
	// Measured from the centre of stiffness B vanishes, and κ = M/D without
	// the difference of nearly equal numbers in A*D - B².
	centre := b / a
	var d, m float64
	z = 0
	for _, l := range layers {
		t := l.ThicknessMicrons
		stiff := l.planeMPa() * t
		arm := z + t/2 - centre
		d += stiff * (t*t/12 + arm*arm)
		m += stiff * l.FreeStrain * arm
		z += t
	}
	return m / d * 1e6, nil
}

// TwoLayerCurvature is the curvature, in 1/m, of two layers. With m the ratio
// of thicknesses, n that of moduli, h the sum and Δε the free strain of the
// back less that of the front,
//
//	κ = 6Δε(1+m)² / (h*(3(1+m)² + (1+mn)(m² + 1/(mn))))
//
// Ranges as in [Layer]. Source: Timoshenko 1925, as applied to paint on ground
// by Hough and Michalski in Conserving Canvas (Getty 2023), ch. 40, note 2.
func TwoLayerCurvature(front, back Layer) (float64, error) {
	if err := first(front.check(), back.check()); err != nil {
		return 0, err
	}
	m := front.ThicknessMicrons / back.ThicknessMicrons
	n := front.planeMPa() / back.planeMPa()
	h := front.ThicknessMicrons + back.ThicknessMicrons
	s := (1 + m) * (1 + m)
	strain := back.FreeStrain - front.FreeStrain
	return 6 * strain * s / (h * (3*s + (1+m*n)*(m*m+1/(m*n)))) * 1e6, nil
}

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
// pushes. Valid while the layers are thin beside the sheet; beyond that use
// [StackCurvature]. Source: Stoney 1909, with (1-ν) as in Feng, Huang and
// Rosakis 2007; the moments of the two faces subtract.
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

// MoistureCurvature is the curvature, in 1/m, of a sheet whose faces take
// different free strains, linear in between:
//
//	κ = (back - front)/h
//
// No modulus enters. A front drier than the back shrinks and goes hollow.
// Thickness 500 to 100000 µm, strains -0.5 to 0.5. Source: geometry.
func MoistureCurvature(thicknessMicrons, frontStrain, backStrain float64) (float64, error) {
	if err := first(
		checkBoardThickness(thicknessMicrons),
		within("free strain of the front", frontStrain, -0.5, 0.5, ""),
		within("free strain of the back", backStrain, -0.5, 0.5, ""),
	); err != nil {
		return 0, err
	}
	return (backStrain - frontStrain) / thicknessMicrons * 1e6, nil
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

// ArcHeightMicrons is the exact height of a circular arc over its chord,
//
//	s = R - √(R² - (L/2)²), R = 1/κ
//
// with the sign of the curvature. A span wider than the circle is refused.
// Ranges as in [BowMicrons]. Source: geometry.
func ArcHeightMicrons(curvaturePerMetre, spanMicrons float64) (float64, error) {
	if err := checkArc(curvaturePerMetre, spanMicrons); err != nil {
		return 0, err
	}
	half := spanMicrons / 2
	sine := curvaturePerMetre * 1e-6 * half
	if math.Abs(sine) > 1 {
		return 0, fmt.Errorf("a span of %.6g µm does not fit a curvature of %.6g 1/m", spanMicrons, curvaturePerMetre)
	}
	// The same height without the difference of two nearly equal radii.
	return sine * half / (1 + math.Sqrt(1-sine*sine)), nil
}

func checkArc(curvaturePerMetre, spanMicrons float64) error {
	return first(
		within("curvature", curvaturePerMetre, -1e4, 1e4, "1/m"),
		checkSpan("span", spanMicrons),
	)
}
