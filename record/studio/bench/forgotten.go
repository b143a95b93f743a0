package bench

import (
	"context"
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/studio"
)

// fewForgotten is how many panels of a batch may be missing from an act before
// it looks meant so (common practice: one or two stand at the end of a rack).
const fewForgotten = 2

// forgotten names the few panels of a batch that an act leaves out though they
// are here, nobody excepted them, and the same was not done on them that day.
func forgotten(ctx context.Context, v *studio.View, at record.When, body record.Body) (ws []record.Said) {
	if k := body.Kind(); !k.Traits().Bench || k == "cut" || k == "paint" || k == "varnish" {
		return nil
	}
	for _, batch := range batches(v) {
		var rest []record.Number
		for _, n := range v.Roll.Batches[batch] {
			if !slices.Contains(v.Panels, n) && !slices.Contains(v.Excepted, n) {
				rest = append(rest, n)
			}
		}
		// Most of a batch left out was meant so.
		if len(rest) == 0 || len(rest) > fewForgotten || len(v.Roll.Batches[batch])-len(rest) < 3*len(rest) {
			continue
		}
		shop, err := v.Shops(ctx, rest...)
		if err != nil {
			continue // it is a remark only
		}
		rest = slices.DeleteFunc(rest, func(n record.Number) bool {
			p := shop.Panel(n)
			return p == nil || wasAway(p, at) || done(p, at, body) || (body.Kind() == "cloth" || body.Kind() == "trimmed") && p.ClothIntended() == record.No
		})
		if len(rest) > 0 {
			ws = append(ws, record.Say("of-batch-not", record.With("batch", batch), record.With("panels", rest)))
		}
	}
	return ws
}

func batches(v *studio.View) (out []record.Key) {
	for _, n := range v.Panels {
		if b := v.Shop.Panel(n).Batch; !slices.Contains(out, b) {
			out = append(out, b)
		}
	}
	return out
}

// done reports that the same was done on a panel within a day.
func done(p *record.Panel, at record.When, body record.Body) bool {
	now, ok := at.Exact()
	return !ok || slices.ContainsFunc(p.Events, func(e record.Event) bool {
		t, ok := e.At.Exact()
		return ok && now.Sub(t).Abs() < 24*time.Hour && sameSort(e.Body, body)
	})
}
