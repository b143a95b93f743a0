package tell

import (
	"slices"

	"backleaf/record"
)

// Maker names who made the panel, as they were then: what the studio is called
// today does not count. It is empty where that is not known.
func (t *Teller) Maker() string { return t.names(t.madeBy()) }

// Painter names who painted on the panel; nothing if no paint was recorded.
func (t *Teller) Painter() string { return t.names(t.w.PaintedBy(t.p)) }

// OwnHands reports that whoever made the panel also painted on it, and nobody else.
func (t *Teller) OwnHands() bool {
	made, painted := t.madeBy(), t.w.PaintedBy(t.p)
	same := func(a record.Maker) func(record.Maker) bool {
		return func(b record.Maker) bool { return a.Name == b.Name && a.Key == b.Key }
	}
	for _, m := range made {
		if !slices.ContainsFunc(painted, same(m)) {
			return false
		}
	}
	return len(made) == len(painted)
}

// OneHand reports that one person, who speaks as one, both made the panel and
// painted on it.
func (t *Teller) OneHand() bool {
	made := t.madeBy()
	return len(made) == 1 && made[0].Voice != "we" && t.OwnHands()
}

// MakerPlace returns the town and country in which the panel was made, or
// nothing.
func (t *Teller) MakerPlace() string {
	return t.each(t.madeBy(), func(m record.Maker) string { return m.Place })
}

// madeBy returns who made the panel; of one whose making is not on record, the
// studio.
func (t *Teller) madeBy() []record.Maker {
	if ms := t.w.MadeBy(t.p); len(ms) > 0 {
		return ms
	}
	return []record.Maker{{Name: t.w.Studio.Maker, Place: t.w.Studio.Place}}
}

func (t *Teller) names(ms []record.Maker) string {
	return t.each(ms, func(m record.Maker) string {
		if m.Name == "" {
			return string(m.Key)
		}
		return m.Name
	})
}

// each lists what is said of each maker, each thing once.
func (t *Teller) each(ms []record.Maker, what func(record.Maker) string) string {
	var out []string
	for _, m := range ms {
		if s := what(m); s != "" && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return t.c.List(out)
}
