package check

import (
	"slices"

	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/balance"
	"backleaf/record/trade"
)

// isPaint, isVarnish, isCloth and isCoat tell the layers of a face apart. The
// adhesive that a cloth is laid into is a coat.
func isPaint(f film) bool   { return f.Layer.Paint != nil }
func isVarnish(f film) bool { return f.Layer.Varnish != nil }
func isCloth(f film) bool   { return f.Layer.Cloth != nil }
func isCoat(f film) bool    { return !isPaint(f) && !isVarnish(f) && !isCloth(f) }

// laidAs answers whether a layer is a coat for one of some purposes.
func laidAs(f film, purposes ...record.Purpose) record.Answer {
	if !isCoat(f) {
		return record.No
	}
	return word(f.Layer.Purpose, purposes...)
}

func isGround(f film) record.Answer { return laidAs(f, record.Ground) }

// word answers whether a word of a closed list is one of some.
func word[W ~string](w W, want ...W) record.Answer {
	if w == "" || w == record.Unknown {
		return record.Unknown
	}
	return is(slices.Contains(want, w))
}

func filter(films []film, keep func(film) bool) []film {
	var out []film
	for _, f := range films {
		if keep(f) {
			out = append(out, f)
		}
	}
	return out
}

// laidBefore answers whether one layer was laid before another, and so lies under
// it. Those of one entry lie as they are listed: the adhesive under its cloth. A
// cloth that was laid again lies where it lay before.
func laidBefore(a, b film) record.Answer {
	if a.Layer.Seq == b.Layer.Seq {
		return is(isCoat(a) && isCloth(b))
	}
	return before(a.Layer.Place, b.Layer.Place)
}

// inOrder is unknown where the dates of some layers do not tell their order.
func inOrder(films []film) record.Answer {
	for i := range films {
		for j := range i {
			if films[i].Layer.Seq != films[j].Layer.Seq && before(films[j].Layer.Place, films[i].Layer.Place) == record.Unknown {
				return record.Unknown
			}
		}
	}
	return record.Yes
}

// film is a layer with the thickness of its film, and what it was made of. All
// rules look at the same ones, and what they ask of it is reckoned once.
type film = *filmed

type filmed struct {
	amount.Film
	made   trade.Made
	named  once[record.Value]
	strata once[trade.Strata]
	fusing once[record.Answer]
	closes once[record.Answer]
	oily   once[record.Answer]
	harm   once[trade.Dangers]
	layer  once[balance.Layer]
}

// once is what is reckoned when it is first asked for.
type once[T any] struct {
	known bool
	is    T
}

func (o *once[T]) of(reckon func() T) T {
	if !o.known {
		o.is, o.known = reckon(), true
	}
	return o.is
}

// newFilm is a layer whose thickness nobody has reckoned.
func newFilm(w *record.Workshop, l record.Layer) film {
	return &filmed{Film: amount.Film{Layer: l, Wet: amount.Unknown, Dry: amount.Unknown}, made: trade.Of(w, l)}
}

// seals answers whether a layer is a coat that closes the face it lies on.
func (f film) seals() record.Answer {
	return f.closes.of(func() record.Answer { return f.made.Seals() })
}

// strataOf is what a layer may be.
func (f film) strataOf() trade.Strata {
	return f.strata.of(func() trade.Strata { return f.made.StrataOf() })
}

// dangers are those of the layer alone.
func (f film) dangers() trade.Dangers {
	return f.harm.of(func() trade.Dangers { return trade.DangersOf([]trade.Made{f.made}) })
}

// materials returns what a layer was made of, and whether that is all of it.
func (f film) materials() ([]*record.Material, bool) { return f.made.Materials, f.made.All }

// fuses answers whether the film of a layer forms from particles in water, and
// so needs a least temperature: if one of its binders does.
func (f film) fuses() record.Answer { return f.fusing.of(f.fusesAs) }

func (f film) fusesAs() record.Answer {
	bs, known := f.made.Binders()
	var answers []record.Answer
	for _, b := range bs {
		answers = append(answers, trade.Fuses(b))
	}
	if !known {
		answers = append(answers, record.Unknown)
	}
	return some(answers...)
}

// removable answers for a varnish: as recorded with it, or with its materials,
// of which one that stays makes all stay.
func (f film) removable() record.Answer {
	if r := f.Layer.Varnish.Removable; r != "" {
		return r
	}
	ms, known := f.materials()
	var answers []record.Answer
	for _, m := range ms {
		answers = append(answers, m.Removable)
	}
	if !known {
		answers = append(answers, record.Unknown)
	}
	return all(answers...)
}

// what is what a finding calls a layer.
func what(f film) record.Value {
	return f.named.of(func() record.Value { return amount.What(f.Layer) })
}

func isOil(f film) record.Answer     { return f.oily.of(func() record.Answer { return f.made.IsOil() }) }
func isAcrylic(f film) record.Answer { return f.made.Contains(record.Acrylic) }
