package papers

import (
	"math"
	"strconv"

	"backleaf/certificate"
	"backleaf/record"
)

// What a photograph should have, common practice: pixels an inch of the page
// for an even look, and the proportions of the panel within one part of 20.
const (
	leastPPI  = 150
	mostAskew = 0.05
)

// photographSaid says how a photograph prints, and what may be wrong with it.
func photographSaid(p certificate.Photo) (said, warnings []record.Said) {
	if p.PixelsWide == 0 {
		return nil, nil
	}
	whole := func(f float64) string { return strconv.Itoa(int(math.Round(f))) }
	ppi := record.With("ppi", whole(p.PixelsPerInch))
	colours := record.Code("as-srgb")
	switch {
	case p.Converted:
		colours = "converted"
	case p.Profile != "":
		colours = "not-converted"
	}
	said = append(said, record.Say("photograph-prints", record.With("width", p.PixelsWide), record.With("height", p.PixelsHigh), ppi,
		record.With("colours", colours), record.With("profile", p.Profile)))
	if p.PixelsPerInch < leastPPI {
		warnings = append(warnings, record.Say("photograph-coarse", ppi, record.With("least", leastPPI)))
	}
	switch off := math.Max(p.Ratio, 1/p.Ratio) - 1; {
	case p.Ratio == 0:
	case p.Turned:
		warnings = append(warnings, record.Say("photograph-turned"))
	case off > mostAskew:
		code := record.Code("wider")
		if p.Ratio < 1 {
			code = "narrower"
		}
		warnings = append(warnings, record.Say("photograph-askew", record.With("share", whole(off*100)), record.With("which", code)))
	}
	return said, warnings
}

// noAddress says what it means that a paper tells nobody where to ask.
func noAddress(s record.Studio) []record.Said {
	if s.LinkBase != "" || s.Contact != "" {
		return nil
	}
	return []record.Said{record.Say("no-address")}
}
