package accept

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"backleaf/record"
)

// byKind holds what a kind asks beyond its table of fields.
var byKind = map[record.Kind]func(record.Body) error{
	"material": of(checkMaterial),
	"lot":      of(func(l record.Lot) error { return checkOwnKey(l.Key) }),
	"maker":    of(func(m record.Maker) error { return checkOwnKey(m.Key) }),
	"recipe":   of(func(r record.Recipe) error { return checkOwnKey(r.Key) }),
	"cut":      of(func(c record.Cut) error { return checkSize("size", c.Size) }),
	"coat":     of(checkCoat),
	"cloth":    of(func(c record.ClothLaid) error { return checkCoating(c.Coating) }),
	"paint":    of(func(p record.PaintLayer) error { return checkCoating(p.Coating) }),
	"varnish":  of(func(v record.Varnish) error { return checkCoating(v.Coating) }),
	"sanded":   of(checkSanded),
	"resized":  of(func(r record.Resized) error { return checkSize("size", r.Size) }),
	"climate":  of(checkClimate),
	"amended":  of(checkAmended),
}

func of[B record.Body](check func(B) error) func(record.Body) error {
	return func(b record.Body) error { return check(b.(B)) }
}

func checkMaterial(m record.Material) error {
	if err := checkOwnKey(m.Key); err != nil {
		return err
	}
	if err := cmp.Or(checkShare("solids_by_mass", m.SolidsMass), checkShare("solids_by_volume", m.SolidsVolume)); err != nil {
		return err
	}
	for _, w := range []struct {
		f        string
		from, to record.Duration
	}{{"touch_dry_to", m.TouchDryFrom, m.TouchDryTo}, {"cure_to", m.CureFrom, m.CureTo}} {
		a, ok := w.from.Seconds()
		b, ok2 := w.to.Seconds()
		if ok && ok2 && a > b {
			return refuse(w.f, "ends before it begins")
		}
	}
	return nil
}

// checkOwnKey refuses the one key that other entries use for "not known".
func checkOwnKey(k record.Key) error {
	if k == record.Unknown {
		return refuse("key", "\"unknown\" cannot be the name of a thing on the shelf")
	}
	return nil
}

func checkSize(field string, s record.Size) error {
	if h, ok := s.Height.Micrometers(); ok {
		if w, _ := s.Width.Micrometers(); h > 10e6 || w > 10e6 || h < 5000 || w < 5000 {
			return refuse(field, "a side between 5 mm and 10 m is expected")
		}
	}
	return nil
}

func checkCoat(c record.Coat) error {
	for i, f := range c.Extra {
		if !slices.Contains(c.Faces, f) {
			return refuse("extra/"+strconv.Itoa(i), "%s is not among the faces of this coat", f)
		}
	}
	return checkCoating(c.Coating)
}

func checkCoating(c record.Coating) error {
	for i, p := range c.Mix {
		if p.Parts > 10000 {
			return refuse(fmt.Sprintf("mix/%d/parts", i), "at most 10000 parts")
		}
	}
	if !c.WetTotal.IsZero() && !c.WetEach.IsZero() {
		return refuse("wet_each", "give the wet amount for all together or for each panel, not both")
	}
	for _, w := range []struct {
		f string
		a record.Amount
	}{{"wet_total", c.WetTotal}, {"wet_each", c.WetEach}} {
		_, mass := w.a.Milligrams()
		_, vol := w.a.Microliters()
		if !w.a.IsZero() && !w.a.IsUnknown() && !mass && !vol {
			return refuse(w.f, "%q: expected a mass or a volume, like \"220 g\" or \"150 mL\"", w.a)
		}
		if Nothing(w.a) {
			return refuse(w.f, "a coat of nothing: leave it out if it was not measured")
		}
	}
	return cmp.Or(checkRoom(c.Temperature), checkShare("humidity", c.Humidity))
}

func checkShare(f string, p record.Percent) error {
	if n, ok := p.Millipercent(); ok && n > 100000 {
		return refuse(f, "more than 100 %%")
	}
	return nil
}

func checkClimate(c record.Climate) error {
	if c.Temperature.IsZero() && c.Humidity.IsZero() {
		return refuse("temperature", "missing: a reading has a temperature, a humidity or both")
	}
	return cmp.Or(checkRoom(c.Temperature), checkShare("humidity", c.Humidity))
}

func checkSanded(s record.Sanded) error {
	if (s.Scale == "" || s.Scale == record.Unknown) != (s.Grit == 0) {
		return refuse("scale", "scale and grit belong together, like P and 180")
	}
	return nil
}

func checkAmended(a record.Amended) error {
	if a.Change.Kind() != '{' {
		return refuse("change", "expected the fields to change")
	}
	if err := checkText(a.Change, true); err != nil {
		return under("change", err)
	}
	if c := a.Change.Clone(); c.Canonicalize() != nil || string(c) == "{}" {
		return refuse("change", "expected the fields to change")
	}
	return nil
}

// under puts a field error below a field.
func under(field string, err error) error {
	fe, ok := err.(*record.FieldError)
	if !ok {
		return err
	}
	if fe.Field != "" {
		field += "/" + fe.Field
	}
	return &record.FieldError{Field: field, Why: fe.Why, Offset: fe.Offset}
}
