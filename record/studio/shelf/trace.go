package shelf

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/tell"
)

// Use is one place a lot went into.
type Use struct {
	Lot   record.Key    `json:"lot"`
	Panel record.Number `json:"panel"`
	Entry int64         `json:"entry"`
	Kind  record.Kind   `json:"kind"`
	At    record.When   `json:"at,omitzero"`
	Where record.Said   `json:"where"` // where the panel is now
	Event record.Event  `json:"-"`
}

// Trace finds every event a lot went into, as it stands after corrections, and
// the panels with a coat or board of the same material whose lot nobody
// recorded: it may be this one.
func Trace(ctx context.Context, b *book.Book, of record.Lot) (uses []Use, open []record.Number, err error) {
	uses = []Use{}
	things := [][]string{{book.Lot(of.Key), book.Material(of.Material)}}
	err = b.Walk(ctx, book.Narrow{Used: things}, func(p *record.Panel) error {
		for _, e := range p.Events {
			for _, m := range record.Mentions(e.Body) {
				switch {
				case m.Lot == of.Key:
					if n := len(uses); n == 0 || uses[n-1].Panel != p.Number || uses[n-1].Entry != e.Seq {
						uses = append(uses, Use{of.Key, p.Number, e.Seq, e.Body.Kind(), e.At, tell.Whereabouts(p), e})
					}
				case m.Material == of.Material && m.Lot == "" && e.Body.Kind() != "lot" && !slices.Contains(open, p.Number):
					open = append(open, p.Number)
				}
			}
		}
		return nil
	})
	return uses, open, err
}

// Rows tells every use of its own: panel, entry, what it was, when, where the
// panel is now, and the lot.
func Rows(c *tell.Catalogue, uses []Use) (rows [][]string) {
	for _, u := range uses {
		rows = append(rows, []string{string(u.Panel), entry(c, u), c.Event(u.Event), u.At.String(), tell.Say(c, u.Where), string(u.Lot)})
	}
	return rows
}

// Acts tells a use once for all panels of which the same is told: entry, when,
// what it was, the panels.
func Acts(c *tell.Catalogue, uses []Use) [][]string {
	return together(c, uses, func(u Use) []string {
		return []string{entry(c, u), c.Fill("{at:near}", record.With("at", u.At)), c.Event(u.Event)}
	})
}

// Places tells where the panels are now.
func Places(c *tell.Catalogue, uses []Use) [][]string {
	return together(c, uses, func(u Use) []string { return []string{tell.Say(c, u.Where)} })
}

func entry(c *tell.Catalogue, u Use) string {
	return c.Fill("{entry}", record.With("entry", record.EntryRef(u.Entry)))
}

// together gathers uses of which the same is told, in the order of their entries.
func together(c *tell.Catalogue, uses []Use, told func(Use) []string) (rows [][]string) {
	at, panels := map[string]int{}, [][]record.Number{}
	for _, u := range slices.SortedStableFunc(slices.Values(uses), func(a, b Use) int { return cmp.Compare(a.Entry, b.Entry) }) {
		cells := told(u)
		all := strings.Join(cells, "\n")
		if _, ok := at[all]; !ok {
			at[all] = len(rows)
			rows, panels = append(rows, cells), append(panels, nil)
		}
		panels[at[all]] = append(panels[at[all]], u.Panel)
	}
	for i, ns := range panels {
		slices.Sort(ns)
		rows[i] = append(rows[i], c.Fill("{panels:runs}", record.With("panels", slices.Compact(ns))))
	}
	return rows
}
