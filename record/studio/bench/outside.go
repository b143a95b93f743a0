package bench

import (
	"slices"

	"backleaf/record"
	"backleaf/record/studio"
)

// painted reports that a panel carries paint, as far as recorded.
func painted(p *record.Panel) bool {
	return slices.ContainsFunc(record.Faces, func(f record.Face) bool {
		return slices.ContainsFunc(p.BuildUp(f), func(l record.Layer) bool { return l.Paint != nil })
	})
}

// outside doubts a place that is not on the panel: most often a slip of the
// unit. Along an edge it may be as far as the longer side.
func outside(v *studio.View, face record.Face, left, top record.Length) (ws []record.Said) {
	for _, l := range []struct {
		away record.Length
		down bool
	}{{left, false}, {top, true}} {
		ws = append(ws, beyond(v, l.away, func(h, w int64) int64 {
			switch {
			case face == record.Edges:
				return max(h, w)
			case l.down:
				return h
			}
			return w
		})...)
	}
	return ws
}

// tooLong doubts a span that lies on no panel, not even from corner to corner.
func tooLong(v *studio.View, span record.Length) []record.Said {
	um, _ := span.Micrometers()
	return beyond(v, span, func(h, w int64) int64 {
		if um*um > h*h+w*w {
			return 0
		}
		return um
	})
}

// beyond doubts a length that is longer than a panel has room for; where its
// size is not known nothing is said.
func beyond(v *studio.View, l record.Length, room func(height, width int64) int64) []record.Said {
	return v.Each(func(p *record.Panel) []record.Said {
		size := p.Size()
		um, ok := l.Micrometers()
		h, ok2 := size.Height.Micrometers()
		w, ok3 := size.Width.Micrometers()
		if !ok || !ok2 || !ok3 || um <= room(h, w) {
			return nil
		}
		return []record.Said{record.Say("outside-panel", record.With("value", l), record.With("size", size))}
	})
}
