package bench

import (
	"context"
	"fmt"
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
)

// measured is a value with the bounds beyond which it is most often a slip of
// the unit or of a decimal point (common practice), in its base unit.
type measured struct {
	what      record.Code
	value     record.Value
	base      int64
	known     bool
	low, high int64
}

// Bounds of lengths in µm, of temperatures in 1/1000 °C, of shares in 1/1000 %,
// of weights in mg/m², of threads per metre, of densities in mg/mL.
const (
	millimeter = 1000
	degree     = 1000
	percent    = 1000
	mostBow    = 30 * millimeter
)

func length(what record.Code, l record.Length, low, high int64) measured {
	um, ok := l.Micrometers()
	return measured{what, record.With("value", l), um, ok, low, high}
}

// Unlikely doubts values that are out of any usual range.
func Unlikely(body record.Body) (ws []record.Said) {
	var ms []measured
	switch b := body.(type) {
	case record.Cut:
		ms = append(size(b.Size), length("bow", b.Bow, 0, mostBow), length("saw", b.SawLoss, 300, 8*millimeter))
	case record.Resized:
		ms = size(b.Size)
	case record.Inspection:
		ms = []measured{length("bow", b.Bow, 0, mostBow), length("span", b.Span, 50*millimeter, 3000*millimeter)}
	case record.Climate:
		ms = air(b.Temperature, b.Humidity)
	case record.ClothLaid:
		ms = []measured{length("oversize", b.Oversize, millimeter, 100*millimeter)}
	case record.Material:
		t := b.Board
		kg, ok := b.Density.MilligramsPerMilliliter()
		ms = []measured{length("thickness", t.Thickness, millimeter, 25*millimeter), length("width", b.Cloth.Width, 300*millimeter, 6000*millimeter),
			{"density", record.With("value", b.Density), kg, ok, 600, 3500}}
		if mg, ok := b.Cloth.Mass.MilligramsPerSquareMeter(); ok {
			ms = append(ms, measured{"weight", record.With("value", b.Cloth.Mass), mg, true, 30_000, 1_200_000})
		}
	case record.Lot:
		ms = []measured{length("sheet", b.Sheet.Height, 50*millimeter, 4000*millimeter), length("sheet", b.Sheet.Width, 50*millimeter, 4000*millimeter)}
		mg, mass := b.Quantity.Milligrams()
		ul, volume := b.Quantity.Microliters()
		ms = append(ms, measured{"quantity", record.With("value", b.Quantity), mg + ul, mass || volume, 5_000, 60_000_000})
	}
	if c, _, _ := (record.Entry{Body: body}).Wet(); c != nil {
		ms = append(ms, length("wet-film", c.WetFilm, 5, 3*millimeter), length("dry-film", c.DryFilm, 2, 3*millimeter))
		ms = append(ms, air(c.Temperature, c.Humidity)...)
		if n, ok := c.Thinned.Millipercent(); ok {
			ms = append(ms, measured{"thinned", record.With("value", c.Thinned), n, true, percent, 100 * percent})
		}
	}
	for _, m := range ms {
		if m.known && (m.base < m.low || m.base > m.high) {
			ws = append(ws, record.Say("unlikely-value", record.With("what", m.what), m.value))
		}
	}
	return once(ws)
}

func size(s record.Size) []measured {
	return []measured{length("side", s.Height, 50*millimeter, 2500*millimeter), length("side", s.Width, 50*millimeter, 2500*millimeter),
		length("thickness", s.Depth, millimeter, 25*millimeter)}
}

func air(t record.Temperature, h record.Percent) []measured {
	mc, ok := t.Millicelsius()
	mp, ok2 := h.Millipercent()
	return []measured{{"temperature", record.With("value", t), mc, ok, 5 * degree, 40 * degree}, {"humidity", record.With("value", h), mp, ok2, 15 * percent, 95 * percent}}
}

// Offcuts are the lots that what is left of a sheet will be, each named after
// its lot with the next free figure.
func Offcuts(w *record.Workshop, of record.Key, sizes []record.Size) ([]record.Lot, error) {
	l, ok := w.Lot(of)
	if !ok && len(sizes) > 0 {
		return nil, refuse.Input("offcut", "offcut-of-what", "an offcut is of a lot, and no lot of the board is named")
	}
	var out []record.Lot
	n := 1
	for _, s := range sizes {
		o := record.Lot{Material: l.Material, Offcut: of, Sheet: s}
		for ; o.Key == ""; n++ {
			if k := record.Key(fmt.Sprintf("%s-%d", of, n)); !taken(w, k) {
				o.Key = k
			}
		}
		// What is written here can be read: a figure and a unit.
		_ = o.Quantity.UnmarshalText([]byte("1 sheets"))
		out = append(out, o)
	}
	return out, nil
}

func taken(w *record.Workshop, k record.Key) bool { _, ok := w.Lot(k); return ok }

// doubtCuts says what is unlikely of panels to be numbered.
func doubtCuts(ctx context.Context, v *studio.View, at record.When, batch record.Key, cuts []record.Cut) (ws []record.Said) {
	for _, c := range cuts {
		ws = append(append(ws, Unlikely(c)...), calledSo(v, c.Owner)...)
		_, now := at.Exact() // of older panels it often is not known
		ws = append(ws, gap("board", now && c.Board == "" && c.Recorded != "afterwards")...)
		m, _ := v.Shop.MaterialNow(c.Board)
		ws = slices.Concat(ws, misused(m, "", "board"), thickness(v, c))
		if c.Recorded != "afterwards" {
			ws = append(ws, ofLots(v, at, c)...)
		}
	}
	return append(once(ws), cutTwice(ctx, v, at, batch, len(cuts))...)
}

// thickness doubts a panel that is not as thick as its board.
func thickness(v *studio.View, body record.Body) []record.Said {
	c, _ := body.(record.Cut)
	m, _ := v.Shop.MaterialNow(c.Board)
	is, ok := c.Size.Depth.Micrometers()
	of, ok2 := m.Board.Thickness.Micrometers()
	if d := is - of; !ok || !ok2 || max(d, -d) <= max(of/8, 300) {
		return nil
	}
	return []record.Said{record.Say("other-thickness", record.With("is", c.Size.Depth), record.With("material", m.Key), record.With("of", m.Board.Thickness))}
}

// batchOld is how long after its first panels nobody adds to a batch unremarked.
const batchOld = 30 * 24 * time.Hour

// cutTwice doubts as many panels of a batch as were numbered for it within the
// hour, and panels that go into a batch of long ago.
func cutTwice(ctx context.Context, v *studio.View, at record.When, batch record.Key, count int) []record.Said {
	there := v.Roll.Batches[batch]
	if len(there) == 0 {
		return nil
	}
	shop, err := v.Shops(ctx, there[0])
	if err != nil {
		return nil // it is a remark only
	}
	c, _ := record.Latest[record.Cut](shop.Panel(there[0]))
	said := func(code string) []record.Said {
		return []record.Said{record.Say(code, record.With("batch", batch), record.With("panels", there), record.With("at", c.At), record.With("entry", record.EntryRef(c.Seq)))}
	}
	cut, known := c.At.Latest()
	begin, dated := at.Earliest()
	written, _ := c.Written.Exact()
	switch now, exact := at.Exact(); {
	case exact && len(there) == count && v.Now.Sub(written) <= within && now.Sub(written).Abs() <= 24*time.Hour:
		return said("cut-twice")
	case known && dated && begin.Sub(cut) > batchOld:
		return said("batch-old")
	}
	return nil
}
