package bench

import (
	"context"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
)

// Remove writes down that layers were taken off. Without named layers all that
// stand of that sort, on those faces, are meant, panel by panel; panels of the
// same layers share an entry. Where none is on record it must be said that
// the layer was not.
func Remove(ctx context.Context, v *studio.View, at record.When, r record.Removed, notOnRecord bool) (studio.Written, error) {
	if r.What == "" || r.Extent == "" {
		return studio.Written{}, refuse.Unclearly("removed-what", "what was taken off, and how much of it?")
	}
	if notOnRecord || r.Layers != nil {
		return Do(ctx, v, at, r)
	}
	var shares []share
	var none []record.Number
	for _, n := range v.Panels {
		one := r
		if one.Layers = standing(v.Shop.Panel(n), r); one.Layers == nil {
			none = append(none, n)
			continue
		}
		i := slices.IndexFunc(shares, func(s share) bool { return slices.Equal(s.body.(record.Removed).Layers, one.Layers) })
		if i < 0 {
			i, shares = len(shares), append(shares, share{body: one})
		}
		shares[i].panels = append(shares[i].panels, n)
	}
	if none != nil && slices.ContainsFunc(v.Shop.Panel(none[0]).Layers(), func(l record.Layer) bool { return sought(r, l) }) {
		return studio.Written{}, refuse.Cannot("layer-gone", "the %s of %s was taken off already", r.What, none[0]).With(record.With("panel", none[0]))
	}
	if none != nil {
		return studio.Written{}, refuse.Cannot("no-such-layer", "no %s is on record on %s", r.What, none[0]).With(record.With("panels", none))
	}
	return Act{At: []record.When{at}}.write(ctx, v, shares, nil)
}

// off reports that an entry takes a layer off, as [record.Panel.Layers] tells it.
func off(r record.Removed, l record.Layer) bool {
	return slices.Contains(r.Layers, l.Seq) && (r.Faces == nil || slices.Contains(r.Faces, l.Face)) && (l.Cloth != nil) == (r.What == "cloth")
}

// above names what lay upon layers that were taken off wholly.
func above(v *studio.View, r record.Removed) []record.Said {
	if r.Extent != "whole" {
		return nil
	}
	return v.Each(func(p *record.Panel) (ws []record.Said) {
		for _, what := range record.Words("Stratum") {
			var es []record.EntryRef
			var on []string
			for _, f := range record.Faces {
				under := false
				for _, l := range p.BuildUp(f) {
					if under = under || off(r, l); !under || off(r, l) || l.Purpose == record.Adhesive || string(stratum(l)) != what {
						continue
					}
					if ref := record.EntryRef(l.Seq); !slices.Contains(es, ref) {
						es = append(es, ref)
					}
					if !slices.Contains(on, string(f)) {
						on = append(on, string(f))
					}
				}
			}
			if es != nil {
				ws = append(ws, record.Say("lay-above", record.With("over", record.Stratum(what)), record.With("what", what), record.With("on", strings.Join(on, ",")), record.With("entries", es)))
			}
		}
		return ws
	})
}

// layFaces are the faces on which lies what is taken off.
func layFaces(v *studio.View, r record.Removed) []record.Face {
	return slices.DeleteFunc(slices.Clone(record.Faces), func(f record.Face) bool {
		return v.Which(func(p *record.Panel) bool {
			return slices.ContainsFunc(p.BuildUp(f), func(l record.Layer) bool { return off(r, l) })
		}) == nil
	})
}

// standing lists the entries by which the layers meant were laid.
func standing(p *record.Panel, r record.Removed) (seqs []int64) {
	for _, l := range p.Layers() {
		if l.Stands() && sought(r, l) && !slices.Contains(seqs, l.Seq) {
			seqs = append(seqs, l.Seq)
		}
	}
	return seqs
}

// sought reports that a layer is of the sort and on a face that is meant.
func sought(r record.Removed, l record.Layer) bool {
	return stratum(l) == r.What && (r.Faces == nil || slices.Contains(r.Faces, l.Face))
}

// removable refuses layers that were named and are of another sort, or were
// taken off wholly before. What a panel does not carry is no matter of this.
func removable(v *studio.View, r record.Removed) error {
	for _, n := range v.Panels {
		for _, seq := range r.Layers {
			var is []record.Layer
			for _, l := range v.Shop.Panel(n).Layers() {
				if l.Seq == seq {
					is = append(is, l)
				}
			}
			sort := func(l record.Layer) bool { return stratum(l) == r.What }
			switch {
			case is == nil || r.What == "other" || r.What == "retouching":
			case !slices.ContainsFunc(is, sort):
				return refuse.Input("layer", "layer-of-other-sort", "E%d laid %s on %s, no %s", seq, stratum(is[0]), n, r.What).With(record.With("panel", n))
			case !slices.ContainsFunc(is, func(l record.Layer) bool { return sort(l) && l.Stands() }):
				return refuse.Input("layer", "layer-gone", "the %s of E%d was taken off %s already", r.What, seq, n).With(record.With("panel", n))
			}
		}
	}
	return nil
}

// stratum is what sort of layer one is. Retouching is never recorded as laid.
func stratum(l record.Layer) record.Stratum {
	switch {
	case l.Cloth != nil:
		return "cloth"
	case l.Paint != nil:
		return "paint"
	case l.Varnish != nil:
		return "varnish"
	case slices.Contains(record.Words("Stratum"), string(l.Purpose)):
		return record.Stratum(l.Purpose)
	}
	return "other"
}

// Again finds the cloth that was laid before and is now laid again, and takes
// over which cloth it is.
func Again(v *studio.View, c record.ClothLaid) (record.ClothLaid, error) {
	for i, n := range v.Panels {
		laid := record.Done[record.ClothLaid]{}
		for _, d := range record.Each[record.ClothLaid](v.Shop.Panel(n)) {
			if slices.ContainsFunc(c.Faces, func(f record.Face) bool { return slices.Contains(d.Body.Faces, f) }) {
				laid = d
			}
		}
		switch {
		case laid.Seq == 0:
			return c, refuse.Cannot("no-cloth-before", "no cloth is on record on %s, where this one is laid", n)
		case i > 0 && laid.Seq != c.AgainOf:
			return c, refuse.Cannot("several-cloths", "the cloth of %s was laid by another entry than that of %s", n, v.Panels[0])
		}
		c.AgainOf = laid.Seq
		if c.Cloth == "" {
			c.Cloth, c.ClothAs, c.ClothLot = laid.Body.Cloth, laid.Body.ClothAs, laid.Body.ClothLot
		}
	}
	return c, nil
}

// Resize writes down a new size, and the one before it where all panels share
// one. Without a word for it the sides tell whether it was cut down.
func Resize(ctx context.Context, v *studio.View, at record.When, r record.Resized) (studio.Written, error) {
	if r.Size.IsZero() {
		return studio.Written{}, refuse.Unclearly("resized-to", "which size is it now?")
	}
	was := v.Shop.Panel(v.Panels[0]).Size()
	for _, n := range v.Panels {
		if v.Shop.Panel(n).Size() != was {
			was = record.Size{}
		}
	}
	if r.Before.IsZero() {
		r.Before = was
	}
	if h, w := resizing(r.Before, r.Size), r.Before; h == "" && w.Height == r.Size.Height && w.Width == r.Size.Width {
		return studio.Written{}, refuse.Cannot("same-size", "it is %s already", r.Before)
	}
	if r.How == "" {
		if r.How = resizing(r.Before, r.Size); r.How == "" {
			return studio.Written{}, refuse.Unclearly("resized-how", "was it cut down or enlarged?")
		}
	}
	w, err := Do(ctx, v, at, r)
	w.Means = append(w.Means, record.Say("size-comes-to", record.With("size", r.Size)))
	return w, err
}

func resizing(from, to record.Size) record.Resizing {
	h, ok := from.Height.Micrometers()
	w, ok2 := from.Width.Micrometers()
	h2, ok3 := to.Height.Micrometers()
	w2, ok4 := to.Width.Micrometers()
	switch {
	case !ok || !ok2 || !ok3 || !ok4:
	case h2 <= h && w2 <= w && h2+w2 < h+w:
		return "cut-down"
	case h2 >= h && w2 >= w && h2+w2 > h+w:
		return "enlarged"
	}
	return ""
}
