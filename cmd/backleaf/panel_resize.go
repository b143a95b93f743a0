package main

import (
	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
)

func panelResize(a *app) {
	var t record.Resized
	var o moment
	a.acts("panel resize", &o, func(d *doing) (studio.Written, error) { return bench.Resize(d.ctx, d.v, d.at, t) }, o.flags(),
		flags{"to": &t.Size, "from": &t.Before, "how": &t.How, "done-by": &t.By, "because": &t.Because, "note": &t.Note})
}
