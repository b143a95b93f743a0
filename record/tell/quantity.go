package tell

import (
	"strings"

	"backleaf/record"
	"backleaf/record/measure"
)

// A Quantity is any measured amount of the record.
type Quantity interface {
	IsZero() bool
	IsUnknown() bool
	Number() string
	Unit() string
}

// Quantity returns an amount as it was measured, or that it is unknown or not
// recorded.
func (t *Teller) Quantity(q Quantity) string {
	switch {
	case q.IsZero():
		return string(t.c.Lines.T("not-recorded"))
	case q.IsUnknown():
		return string(t.c.Lines.T("unknown"))
	}
	return t.c.Measure(q.Number(), q.Unit())
}

// Dimensions returns height × width × depth: the measured spelling and unit,
// then the other system of units in brackets, to eighths of an inch or
// millimetres.
func (t *Teller) Dimensions() string {
	size := t.p.Size()
	if size.IsZero() {
		return string(t.c.Lines.T("no-size"))
	}
	var dims []record.Length
	for _, d := range []record.Length{size.Height, size.Width, size.Depth} {
		if !d.IsZero() && !d.IsUnknown() {
			dims = append(dims, d)
		}
	}
	line := ""
	if len(dims) > 0 {
		line = t.c.Lines.T("size").With("measured", t.c.sides(dims, measured), "other", t.c.sides(dims, converted))
	}
	switch {
	case size.Height.IsUnknown() && line == "":
		return string(t.c.Lines.T("no-sides"))
	case size.Height.IsUnknown():
		return t.c.Join.List.With("a", string(t.c.Lines.T("no-sides")), "b", line)
	case size.Depth.IsZero() || size.Depth.IsUnknown():
		return t.c.Lines.T("no-depth").With("size", line)
	}
	return line
}

// MeasuredSize returns height × width × depth as measured only, for places
// without room for more.
func (t *Teller) MeasuredSize() string {
	size := t.p.Size()
	if size.IsZero() || size.Height.IsUnknown() {
		return t.Dimensions()
	}
	dims := []record.Length{size.Height, size.Width}
	if !size.Depth.IsZero() && !size.Depth.IsUnknown() {
		dims = append(dims, size.Depth)
	}
	return t.c.sides(dims, measured)
}

// sides writes lengths with × between them, each unit once where they share it.
func (c *Catalogue) sides(dims []record.Length, as func(record.Length) (number, unit string)) string {
	var b strings.Builder
	for i, d := range dims {
		if i > 0 {
			b.WriteString(c.Number.Times)
		}
		n, u := as(d)
		b.WriteString(c.Number.Number(n))
		if i+1 < len(dims) {
			if _, next := as(dims[i+1]); next == u {
				continue
			}
		}
		b.WriteString(c.Number.Unit + c.unit(n, u))
	}
	return b.String()
}

func measured(l record.Length) (number, unit string) { return l.Number(), l.Unit() }

// converted gives a metric length in inches and any other in centimetres, with
// a finer fraction where nothing would be left of it. Thicknesses below a
// centimetre are in millimetres.
func converted(l record.Length) (number, unit string) {
	um, ok := l.Micrometers()
	if !ok {
		return l.Number(), l.Unit()
	}
	if u := l.Unit(); u == "in" || u == "ft" || u == "mil" {
		if um < 10_000 {
			n, _ := measure.Millimetres(um)
			return n, "mm"
		}
		n, err := measure.Centimetres(um)
		if err != nil {
			return l.Number(), u
		}
		return n, "cm"
	}
	for den := measure.EighthInch; den <= 64; den *= 2 {
		if n, err := measure.InchFraction(um, den); err != nil {
			break
		} else if n != "0" {
			return n, "in"
		}
	}
	return l.Number(), l.Unit()
}

// Amount returns how much of a coating was used, as it was measured: all of
// it for the panels together, or each.
func (t *Teller) Amount(c *record.Coating, panels int) string {
	var parts []string
	if !c.WetTotal.IsZero() {
		if c.WetTotal.IsUnknown() {
			parts = append(parts, string(t.c.Lines.T("unknown")))
		} else {
			parts = append(parts, t.c.Fill(t.c.Lines.T("shared-by-panels"), record.With("n", panels), record.With("amount", c.WetTotal)))
		}
	}
	if !c.WetEach.IsZero() {
		parts = append(parts, t.c.Lines.T("for-each").With("amount", t.Quantity(c.WetEach)))
	}
	if parts == nil {
		return string(t.c.Lines.T("not-recorded"))
	}
	return t.List(parts)
}
