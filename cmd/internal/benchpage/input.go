package benchpage

import (
	"net/url"
	"reflect"
	"slices"

	"backleaf/record"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

// input is one thing a form asks for.
type input struct {
	Name, Label, Hint string
	Sort              string // line, number, lines, one, many, yes, long
	Options           []option
	Values            []string
	More              bool // asked for under "more"
	Secret            bool // goes outside the journal
}

type option struct {
	Value, Words string
	On           bool
}

// Value is what stands in an input of one value.
func (i input) Value() string {
	if len(i.Values) == 0 {
		return ""
	}
	return i.Values[0]
}

// Chosen reports that any option is taken.
func (i input) Chosen() bool {
	return slices.ContainsFunc(i.Options, func(o option) bool { return o.On })
}

// ask goes through the fields of an act: it makes the inputs, and says what
// they are called; it reads what was typed into an entry, or says how an entry
// would be typed.
type ask struct {
	d    *desk
	all  []input
	r    *typed.Reader // nil: nothing is read
	f    url.Values    // what was typed
	said url.Values    // how it would be typed; nil: that is not asked
}

func (a *ask) add(name, sort string, options ...option) *input {
	i := input{Name: name, Label: a.d.say("in-" + name), Sort: sort, Options: options}
	if _, ok := a.d.c.Codes["eg-"+name]; ok {
		i.Hint = a.d.say("page-for-example", tell.Told("example", a.d.say("eg-"+name)))
	}
	a.all = append(a.all, i)
	return &a.all[len(a.all)-1]
}

func words[T ~string](a *ask, some []T) (out []option) {
	list := reflect.TypeFor[T]().Name()
	if some == nil {
		for _, w := range record.Words(list) {
			some = append(some, T(w))
		}
	}
	for _, w := range some {
		out = append(out, option{Value: string(w), Words: a.d.c.Word(w)})
	}
	return out
}

// stuff asks for a lot of the shelf that serves one of some uses, or for a
// material of which there is no lot: newest first.
func (a *ask) stuff(name string, uses ...record.Use) {
	var out []option
	lots := map[record.Key]bool{}
	for _, l := range slices.Backward(a.d.shop.Lots) {
		m, _ := a.d.shop.MaterialNow(l.Body.Material)
		lots[l.Body.Material] = true
		if serves(m, uses) {
			out = append(out, option{Value: string(l.Body.Key), Words: a.d.say("page-lot", record.With("lot", l.Body.Key), record.With("name", m.Name))})
		}
	}
	for _, m := range a.d.shop.Materials {
		if !lots[m.Body.Key] && serves(m.Body, uses) {
			out = append(out, option{Value: string(m.Body.Key), Words: m.Body.Name})
		}
	}
	a.add(name, "one", out...)
}

func serves(m record.Material, uses []record.Use) bool {
	return len(m.Uses) == 0 || slices.ContainsFunc(m.Uses, func(u record.Use) bool { return slices.Contains(uses, u) })
}

// fill puts values into inputs. A value that is none of the options is one
// more: what was done last time can be done again.
func fill(all []input, f url.Values) []input {
	for k := range all {
		i := &all[k]
		i.Values = f[i.Name]
		if i.Options == nil {
			continue
		}
		for _, v := range i.Values {
			at := slices.IndexFunc(i.Options, func(o option) bool { return o.Value == v })
			if at >= 0 {
				i.Options[at].On = true
			} else if v != "" {
				i.Options = append(i.Options, option{v, v, true})
			}
		}
	}
	return all
}

// mixText is a mix as it would be typed.
func mixText(mix []record.Part) string {
	s := ""
	for _, p := range mix {
		name := p.Lot
		if name == "" || name == record.Unknown {
			name = p.Material
		}
		if len(mix) == 1 && p.Parts <= 1 {
			return string(name)
		}
		if s != "" {
			s += " + "
		}
		s += tell.Message("{n} {name}").With("n", itoa(p.Parts), "name", string(name))
	}
	return s
}
