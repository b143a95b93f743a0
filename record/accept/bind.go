package accept

import (
	"cmp"
	"slices"

	"backleaf/record"
)

// Version is an entry that describes something from a date on.
type Version struct {
	Seq     int64
	From    record.When // not known: from when it was written down
	Written record.When
}

// Choice says which entries describe what an act means: of are those that its
// date leaves, of all vs that describe it.
type Choice func(m record.Meant, vs []Version, of []int64) []int64

// Bind fills in which entries describe the materials, makers and studio that
// an entry means, by the date of the act, where the entry does not say so
// itself. Where the date leaves several, choose may choose; else all are named,
// and only what they share is known then. A lot was what it was when it came in.
func Bind(e record.Entry, k Known, choose Choice) (record.Entry, error) {
	b := binder{k: k, choose: choose}
	e.Body = FillWords(e.Body)
	if a, ok := e.Body.(record.Amended); ok {
		var err error
		if a.Change, err = b.change(fillChange(a.Change), a.Entry); err != nil {
			return e, err
		}
		e.Body = a
	}
	if e.Kind() == "studio" || e.Kind() == "maker" {
		return e, nil
	}
	e = e.Bind(func(m record.Meant) []int64 { return b.meant(m, e.At) })
	if c, ok := e.Body.(record.Cut); ok && c.Year == 0 && len(e.Panels) > 0 {
		c.Year = fullYear(e)
		e.Body = c
	}
	return e, b.err
}

// binder finds what is meant, and keeps the first fault of the book.
type binder struct {
	k      Known
	choose Choice
	err    error
}

// meant returns the entries that describe what is meant at a time.
func (b *binder) meant(m record.Meant, at record.When) []int64 {
	if m.As != nil || m.Key == record.Unknown || b.err != nil {
		return m.As
	}
	if m.Lot != "" && m.Lot != record.Unknown {
		l, ok, err := b.k.Lot(m.Lot)
		if b.err = err; ok && l.Material == m.Key && l.As != nil {
			return l.As
		}
	}
	vs, err := b.k.Versions(m.Kind, m.Key)
	if b.err = cmp.Or(b.err, err); b.err != nil {
		return nil
	}
	of := InForce(vs, at)
	if b.choose != nil {
		of = b.choose(m, vs, of)
	}
	return of
}

// InForce returns the versions that may have held at a time: all that did not
// certainly begin later, less those that another certainly had replaced. The
// first held before its date too; one that is dated by when it was written, as
// a studio is when its book is opened, held since nobody knows when.
func InForce(vs []Version, at record.When) []int64 {
	var out []int64
	if len(vs) > 0 && vs[0].From.String() == vs[0].Written.String() {
		vs = slices.Clone(vs)
		vs[0].From = record.When{}
	}
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

// began reports that a version certainly held at a time. One that holds from
// "this year" held, at the latest, when it was written down.
func began(v Version, at record.When) bool {
	from, ok := v.From.Latest()
	if w, exact := v.Written.Exact(); exact && ok && w.Before(from) && !v.Written.Before(v.From) {
		from = w
	}
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
