package bench

import (
	"math"
	"slices"
	"strconv"

	"backleaf/record"
	"backleaf/record/studio"
)

// A wet coat of less or more than this on one square metre is most often a
// slip of the unit or of a face (common practice: a thin seal takes some 60, a
// heavy ground some 400).
const (
	leastSpread, mostSpread = 5.0, 1000.0 // g or mL per m²
)

// shared is an amount as it counts: of the panel that took the least and of that
// which took the most, and of each square metre.
type shared struct {
	unit                string // "g" or "mL"
	least, most, spread float64
}

// spreadOf reckons what an amount comes to; false where sizes or amount are open.
func spreadOf(v *studio.View, body record.Body) (s shared, ok bool) {
	c, faces, _ := record.Entry{Body: body}.Wet()
	if c == nil || len(v.Panels) == 0 || slices.Contains(faces, record.Unknown) {
		return s, false
	}
	amount, each := c.WetEach, true
	if amount.IsZero() {
		amount, each = c.WetTotal, false
	}
	mg, mass := amount.Milligrams()
	ul, volume := amount.Microliters()
	if !mass && !volume {
		return s, false
	}
	if s.unit = "mL"; mass {
		s.unit = "g"
	}
	sum := float64(mg+ul) / 1000
	all, least, most := 0.0, math.Inf(1), 0.0
	for _, n := range v.Panels {
		p := v.Shop.Panel(n)
		if p == nil {
			return s, false
		}
		a := v.Shop.Spread(p, body)
		if a == 0 {
			return s, false
		}
		all, least, most = all+a, min(least, a), max(most, a)
	}
	s.least, s.most = sum/all*least, sum/all*most
	if each {
		s.least, s.most, sum = sum, sum, sum*float64(len(v.Panels))
	}
	s.spread = sum / all * 1e6
	return s, true
}

// recoat changes what is wet in an act; others stay as they are.
func recoat(body record.Body, change func(*record.Coating)) record.Body {
	switch b := body.(type) {
	case record.Coat:
		change(&b.Coating)
		return b
	case record.ClothLaid:
		change(&b.Coating)
		return b
	case record.PaintLayer:
		change(&b.Coating)
		return b
	case record.Varnish:
		change(&b.Coating)
		return b
	}
	return body
}

func amounts(v *studio.View, body record.Body) []record.Said {
	s, ok := spreadOf(v, body)
	if !ok || s.spread >= leastSpread && s.spread <= mostSpread {
		return nil
	}
	return []record.Said{record.Say("unlikely-amount", record.With("spread", s.figure(s.spread, "/m²")))}
}

// mean says an amount as it counts, and the face where none was named.
func mean(v *studio.View, body record.Body) (said []record.Said) {
	switch b := body.(type) {
	case record.PaintLayer:
		said = onFaces(b.Faces, record.Front)
	case record.Varnish:
		said = onFaces(b.Faces, record.Front)
	case record.Removed:
		said = onFaces(b.Faces, layFaces(v, b)...)
	}
	s, ok := spreadOf(v, body)
	if !ok {
		return said
	}
	least, most := s.figure(s.least, ""), s.figure(s.most, "")
	if least == most {
		most = ""
	}
	return append(said, record.Say("amount-comes-to", record.With("each", least), record.With("most", most), record.With("spread", s.figure(s.spread, "/m²"))))
}

// onFaces says on which faces an act was of which none was named.
func onFaces(named []record.Face, lie ...record.Face) []record.Said {
	if named != nil || len(lie) == 0 {
		return nil
	}
	return []record.Said{record.Say("on-faces", record.With("faces", lie))}
}

// figure rounds to three figures at most: an amount is no finer than that.
func (s shared) figure(n float64, per string) record.Figure {
	places := max(0, 2-int(math.Floor(math.Log10(math.Max(n, 1e-9)))))
	return record.Figure(strconv.FormatFloat(n, 'f', min(places, 1), 64) + " " + s.unit + per)
}
