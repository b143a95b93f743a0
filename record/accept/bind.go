package accept

import (
	"slices"

	"backleaf/record"
)

// Version is an entry that describes something from a date on.
type Version struct {
	Seq  int64
	From record.When // not known: from when it was written down
}

// Bind fills in which entries describe the materials, makers and studio that
// an entry means, by the date of the act, where the entry does not say so
// itself. Where the date leaves several, it names them all: only what they
// share is known then. A lot was what it was when it came in.
func Bind(e record.Entry, k Known) (record.Entry, error) {
	at := e.At
	e.Body = fillWords(e.Body)
	if a, ok := e.Body.(record.Amended); ok {
		var err error
		if a.Change, err = bindChange(fillChange(a.Change), a.Entry, k); err != nil {
			return e, err
		}
		e.Body = a
	}
	if e.Kind() == "studio" || e.Kind() == "maker" {
		return e, nil
	}
	var err error
	meant := func(kind record.Kind, key record.Key, as []int64) []int64 {
		if as != nil || key == record.Unknown || err != nil {
			return as
		}
		var vs []Version
		if vs, err = k.Versions(kind, key); err != nil {
			return nil
		}
		return InForce(vs, at)
	}
	if e.StudioAs == nil && len(e.Panels) > 0 {
		e.StudioAs = meant("studio", "", nil)
	}
	e.Makers = slices.Clone(e.Makers)
	for i, h := range e.Makers {
		e.Makers[i].As = meant("maker", h.Maker, h.As)
	}
	e.Body = record.Bind(e.Body, func(m record.Mention) []int64 {
		if m.As == nil && m.Lot != "" && m.Lot != record.Unknown && err == nil {
			var l record.Lot
			var ok bool
			if l, ok, err = k.Lot(m.Lot); ok && l.Material == m.Material && l.As != nil {
				return l.As
			}
		}
		return meant("material", m.Material, m.As)
	})
	if c, ok := e.Body.(record.Cut); ok && c.Year == 0 && len(e.Panels) > 0 {
		c.Year = fullYear(e)
		e.Body = c
	}
	return e, err
}

// InForce returns the versions that may have held at a time: all that did not
// certainly begin later, less those that another certainly had replaced.
func InForce(vs []Version, at record.When) []int64 {
	var out []int64
	for i, v := range vs {
		later := i > 0 && at.Before(v.From)
		replaced := slices.ContainsFunc(vs[i+1:], func(w Version) bool { return began(w, at) && !w.From.Before(v.From) })
		replaced = replaced || slices.ContainsFunc(vs[:i], func(w Version) bool { return began(w, at) && v.From.Before(w.From) })
		if !later && !replaced {
			out = append(out, v.Seq)
		}
	}
	slices.Sort(out)
	return out
}

// began reports that a version certainly held at a time.
func began(v Version, at record.When) bool {
	from, ok := v.From.Latest()
	then, ok2 := at.Earliest()
	return ok && ok2 && !from.After(then)
}

// fullYear gives the year in a panel's number its century: that of the
// cutting, where its date has those last two figures, else that in which it is
// written down.
func fullYear(e record.Entry) int64 {
	figures := e.Panels[0].Year()
	if at, ok := e.At.Earliest(); ok && at.Year()%100 == figures {
		return int64(at.Year())
	}
	if at, ok := e.Written.Exact(); ok {
		y := at.Year()/100*100 + figures
		if y > at.Year()+1 {
			y -= 100 // a panel of '98 that is written down today
		}
		return int64(y)
	}
	return 0
}
