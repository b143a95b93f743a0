package benchpage

import (
	"cmp"
	"net/url"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/studio/private"
	"backleaf/record/studio/typed"
)

// coating is how a wet application is asked for, but for what it was done with.
func (a *ask) coating(c *record.Coating) {
	a.value(&c.WetTotal, "amount")
	a.add("mix", "line").More = true
	if a.said != nil && len(c.Mix) > 1 {
		a.said.Set("mix", mixText(c.Mix))
	}
	a.value(&c.WetEach, "amount-each").More = true
	a.value(&c.Thinned, "thinned").More = true
	a.text(&c.Tool, "tool").More = true
	a.readOff(&c.Temperature, "temp", "°C").More = true
	a.readOff(&c.Humidity, "rh", "%").More = true
	a.text(&c.Note, "note").More = true
}

// mix is what was applied: one thing off the shelf, or what is typed as a mix.
func (a *ask) mix(into *[]record.Part, uses ...record.Use) {
	a.stuff("with", uses...)
	if a.r != nil {
		*into = a.r.Mix("with", first(a.f, "mix", "with"))
	} else if a.said != nil && len(*into) == 1 {
		a.said.Set("with", mixText(*into))
	}
}

// shelf is one thing off the shelf, a lot if there is one.
func (a *ask) shelf(material, lot *record.Key, name string, uses ...record.Use) {
	a.field(name, func(s string) { *material, *lot = a.r.OnShelf(s) }, func() string { return cmp.Or(string(*lot), string(*material)) })
	a.stuff(name, uses...)
}

// field reads what was typed in a field, or says how it would be typed.
func (a *ask) field(name string, read func(string), say func() string) {
	if a.r != nil {
		read(strings.TrimSpace(a.f.Get(name)))
	} else if a.said != nil && say != nil {
		a.said.Set(name, say())
	}
}

func (a *ask) text(into *string, name string) *input {
	a.field(name, func(s string) { *into = s }, func() string { return *into })
	return a.add(name, "line")
}

type measured interface {
	typed.Value
	String() string
}

// value is a measured value with its unit.
func (a *ask) value(into measured, name string) *input {
	a.field(name, func(s string) { a.r.Text(name, s, into) }, into.String)
	return a.add(name, "line")
}

// readOff is read off an instrument: its unit stands beside the input, and it is another
// each time.
func (a *ask) readOff(into typed.Value, name, unit string) *input {
	a.field(name, func(s string) { a.r.Text(name, inUnit(s, unit), into) }, nil)
	return a.add(name, "line")
}

func (a *ask) when(into *record.When, name string) *input {
	a.field(name, func(s string) { a.r.When(s, into) }, into.String)
	return a.add(name, "line")
}

// price is kept outside the journal.
func (a *ask) price(into *private.Price) *input {
	a.field("price", func(s string) { *into = a.r.Price("price", s) }, nil)
	in := a.add("price", "line")
	in.Secret = true
	return in
}

func (a *ask) faces(into *[]record.Face, name string) {
	if a.r != nil {
		*into = a.r.Faces(name, a.f[name])
	} else if a.said != nil {
		a.said[name] = texts(*into)
	}
	a.add(name, "many", words[record.Face](a, nil)...)
}

// word is one word of a closed list, of all of it or of some.
func word[T ~string](a *ask, into *T, name string, some ...T) *input {
	a.field(name, func(string) {}, func() string { return string(*into) })
	return fact(a, into, name, some...)
}

// fact is a word that is seen anew each time, and never filled in.
func fact[T ~string](a *ask, into *T, name string, some ...T) *input {
	a.field(name, func(s string) { typed.Word(a.r, name, s, into) }, nil)
	return a.add(name, "one", words(a, some)...)
}

// grit is one of the usual grits of coated abrasives, or another that is typed.
func (a *ask) grit(scale *record.GritScale, grit *int64) {
	if a.r != nil {
		*scale, *grit = a.r.Grit("grit", first(a.f, "grit-other", "grit"))
	} else if a.said != nil && *grit > 0 {
		a.said.Set("grit", map[bool]string{true: "P", false: string(*scale) + " "}[*scale == "P"]+itoa(*grit))
	}
	var usual []option
	for _, g := range []string{"P150", "P180", "P220", "P320"} {
		usual = append(usual, option{Value: g, Words: g})
	}
	a.add("grit", "one", usual...)
	a.add("grit-other", "line").More = true
}

// first returns the first field in which something stands.
func first(f url.Values, names ...string) string {
	for _, n := range names {
		if s := strings.TrimSpace(f.Get(n)); s != "" {
			return s
		}
	}
	return ""
}

// inUnit adds the unit that stands beside the input to a bare number.
func inUnit(s, unit string) string {
	s = strings.TrimSpace(s)
	if s != "" && strings.Trim(s, "0123456789.,-−") == "" {
		return s + " " + unit
	}
	return s
}

func texts[T ~string](ws []T) (out []string) {
	for _, w := range ws {
		out = append(out, string(w))
	}
	return out
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }
