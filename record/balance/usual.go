package balance

import "backleaf/record"

// What one coat leaves, in µm dry, where no amount is recorded. All of it is
// common practice.
var (
	usualCoats = map[record.Purpose]Spread{
		record.Sizing: {5, 10, 20}, record.Sealer: {20, 40, 60}, record.Adhesive: {50, 90, 130}, record.StainBlock: {20, 35, 60},
		record.Isolation: {15, 30, 50}, record.Ground: {25, 45, 80}, record.Barrier: {15, 30, 50},
	}
	usualOilGround = Spread{40, 80, 150}
	usualAnyCoat   = Spread{5, 40, 150} // its purpose is not recorded either
	usualThin      = Spread{15, 40, 80}
	usualThick     = Spread{100, 300, 1000}
	usualAnyPaint  = Spread{15, 40, 1000}
)

// UsualVarnish is what one coat of varnish leaves, in µm dry.
var UsualVarnish = Spread{8, 20, 40}

// UsualCoat is what one coat leaves, in µm dry, by what it is for.
func UsualCoat(p record.Purpose, k Kind) Spread {
	if p == record.Ground && (k == Kind(record.DryingOil) || k == Kind(record.Alkyd)) {
		return usualOilGround
	}
	if s, ok := usualCoats[p]; ok {
		return s
	}
	return usualAnyCoat
}

// UsualPaint is what one layer of paint leaves, in µm dry.
func UsualPaint(f record.Film) Spread {
	switch f {
	case "thin":
		return usualThin
	case "thick":
		return usualThick
	}
	return usualAnyPaint
}
