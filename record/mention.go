package record

import (
	"reflect"
	"slices"
	"strconv"
)

// Mention is a place where a body names a material, and perhaps a lot of it.
type Mention struct {
	Place    string // RFC 6901 pointer without the first slash
	Material Key
	As       []int64 // entries that describe it as it is meant; see [Part.As]
	Lot      Key
	LotPlace string
}

// Mentions lists the materials and lots that a body names, in the order of its
// fields.
func Mentions(b Body) []Mention {
	var out []Mention
	if isBody(b) {
		mentions(reflect.ValueOf(b), "", b.Kind().Fields(), func(m Mention) []int64 {
			out = append(out, m)
			return nil
		}, false)
	}
	return out
}

// Meant is what an entry names and other entries describe: a material, a maker
// or the studio.
type Meant struct {
	Kind  Kind    // of the entries that describe it
	Key   Key     // empty: the studio
	As    []int64 // entries that describe it as it is meant; see [Part.As]
	Lot   Key     // of a material
	Place string  // RFC 6901 pointer without the first slash
}

// Bind returns an entry in which everything it means names the entries that as
// returns for it. The entry given is left as it was.
func (e Entry) Bind(as func(Meant) []int64) Entry {
	if len(e.Panels) > 0 || e.StudioAs != nil {
		e.StudioAs = as(Meant{Kind: "studio", As: e.StudioAs, Place: "studio"})
	}
	e.Makers = slices.Clone(e.Makers)
	for i, h := range e.Makers {
		e.Makers[i].As = as(Meant{Kind: "maker", Key: h.Maker, As: h.As, Place: "makers/" + strconv.Itoa(i) + "/maker"})
	}
	if !isBody(e.Body) || len(Mentions(e.Body)) == 0 {
		return e
	}
	v := reflect.New(reflect.TypeOf(e.Body)).Elem()
	v.Set(reflect.ValueOf(e.Body))
	mentions(v, "", e.Kind().Fields(), func(m Mention) []int64 {
		return as(Meant{"material", m.Material, m.As, m.Lot, m.Place})
	}, true)
	e.Body = v.Interface().(Body)
	return e
}

func mentions(v reflect.Value, place string, fields []Field, as func(Mention) []int64, set bool) {
	for i := range fields {
		f := &fields[i]
		if !f.refers {
			continue
		}
		x := f.In(v)
		if x.IsZero() {
			continue
		}
		switch {
		case f.List && f.Fields != nil:
			if set {
				clone := reflect.MakeSlice(x.Type(), x.Len(), x.Len())
				reflect.Copy(clone, x)
				x.Set(clone)
			}
			for i := range x.Len() {
				mentions(x.Index(i), place+f.Name+"/"+strconv.Itoa(i)+"/", f.Fields, as, set)
			}
		case f.Fields != nil:
			mentions(x, place+f.Name+"/", f.Fields, as, set)
		case f.Ref == "material":
			m := Mention{Place: place + f.Name, Material: Key(x.String())}
			if f.as != nil {
				m.As = f.as.In(v).Interface().([]int64)
			}
			if f.lot != nil {
				m.Lot, m.LotPlace = Key(f.lot.In(v).String()), place+f.lot.Name
			}
			if to := as(m); set && f.as != nil {
				f.as.In(v).Set(reflect.ValueOf(to))
			}
		}
	}
}

// Shelf lists the materials and lots a body names, each once. Unknown ones are
// left out.
func Shelf(b Body) (materials, lots []Key) {
	add := func(to *[]Key, k Key) {
		if k != "" && k != Unknown && !slices.Contains(*to, k) {
			*to = append(*to, k)
		}
	}
	for _, m := range Mentions(b) {
		add(&materials, m.Material)
		add(&lots, m.Lot)
	}
	return materials, lots
}

// Described lists the entries by which an entry names what it means: of
// materials, makers and the studio.
func (e Entry) Described() []int64 {
	out := slices.Clone(e.StudioAs)
	for _, h := range e.Makers {
		out = append(out, h.As...)
	}
	for _, m := range Mentions(e.Body) {
		out = append(out, m.As...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// Corrects returns the entry that this one amends or withdraws, or 0.
func (e Entry) Corrects() int64 {
	switch b := e.Body.(type) {
	case Amended:
		return b.Entry
	case Withdrawn:
		return b.Entry
	}
	return 0
}

// KeyOf returns the key of what a body puts on the shelf; empty for others.
func KeyOf(b Body) Key {
	if !isBody(b) {
		return ""
	}
	for _, f := range b.Kind().Fields() {
		if f.Name == "key" {
			return Key(f.In(reflect.ValueOf(b)).String())
		}
	}
	return ""
}
