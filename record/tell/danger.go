package tell

import (
	"slices"

	"backleaf/record"
	"backleaf/record/trade"
)

// DangerWords name what harms whoever sands, heats or burns a panel.
type DangerWords struct {
	Holds, May, Recorded Message // {names}
	Never                Message
}

// Warnings says what on the panel harms whoever sands or burns it, for the
// places where nobody may miss it: what it holds, what it may hold, what was
// recorded as harmful, and what not to do. Nothing if nothing is known.
func (t *Teller) Warnings() []string {
	var holds, may, recorded []string
	words := t.c.Danger
	add := func(to *[]string, name string) {
		if !slices.Contains(*to, name) {
			*to = append(*to, name)
		}
	}
	for _, d := range trade.PanelDangers(t.w, t.p).Found {
		name, named := t.c.Word(record.Code(d.Risk)), slices.Contains(trade.Hazards, trade.Hazard(d.Risk))
		switch {
		case !d.Grave:
		case d.Risk == trade.Stated:
			add(&recorded, d.Product)
		case named && d.Sure:
			add(&holds, name)
		case named:
			add(&may, name)
		}
	}
	may = slices.DeleteFunc(may, func(s string) bool { return slices.Contains(holds, s) })
	var out []string
	for _, x := range []struct {
		line  Message
		names []string
	}{{words.Holds, holds}, {words.May, may}, {words.Recorded, recorded}} {
		if x.names != nil {
			out = append(out, x.line.With("names", t.List(x.names)))
		}
	}
	if out == nil {
		return nil
	}
	return append(out, string(words.Never))
}
