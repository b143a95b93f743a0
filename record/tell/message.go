package tell

import (
	"reflect"
	"regexp"
	"strconv"
	"strings"
)

// A Message is a printed text with named places in braces: "lot {lot}".
type Message string

// With puts values into the places of a message, named by turns: name, value,
// name, value. A value is never searched for places itself.
func (m Message) With(pairs ...string) string {
	for i := 0; i < len(pairs); i += 2 {
		pairs[i] = "{" + pairs[i] + "}"
	}
	return strings.NewReplacer(pairs...).Replace(string(m))
}

// A Counted is a message in the forms that a language has for numbers, in the
// order of [Catalogue.Form]: in English for one, and for all others. {n} is
// the number.
type Counted []Message

// Count picks the form for a number and puts it in.
func (c *Catalogue) Count(m Counted, n int, pairs ...string) string {
	i := 0
	if c.Form != nil {
		i = c.Form(n)
	}
	return m[min(i, len(m)-1)].With(append([]string{"n", strconv.Itoa(n)}, pairs...)...)
}

var places = regexp.MustCompile(`\{[a-z]+\}|%d`)

// Each returns a copy of the catalogue in which f has rewritten every text
// between the places of every message. The tests mask a catalogue with it.
func (c *Catalogue) Each(f func(string) string) *Catalogue {
	out := reflect.New(reflect.TypeOf(*c)).Elem()
	rewrite(out, reflect.ValueOf(*c), f)
	copied := out.Interface().(Catalogue)
	copied.Language = c.Language
	return &copied
}

func rewrite(to, from reflect.Value, f func(string) string) {
	switch from.Kind() {
	case reflect.String:
		to.SetString(between(from.String(), f))
	case reflect.Struct:
		for i := range from.NumField() {
			rewrite(to.Field(i), from.Field(i), f)
		}
	case reflect.Slice:
		to.Set(reflect.MakeSlice(from.Type(), from.Len(), from.Len()))
		fallthrough
	case reflect.Array:
		for i := range from.Len() {
			rewrite(to.Index(i), from.Index(i), f)
		}
	case reflect.Map:
		to.Set(reflect.MakeMap(from.Type()))
		for _, k := range from.MapKeys() {
			v := reflect.New(from.Type().Elem()).Elem()
			rewrite(v, from.MapIndex(k), f)
			to.SetMapIndex(k, v)
		}
	default:
		to.Set(from)
	}
}

func between(s string, f func(string) string) string {
	var b strings.Builder
	at := 0
	for _, p := range places.FindAllStringIndex(s, -1) {
		b.WriteString(f(s[at:p[0]]) + s[p[0]:p[1]])
		at = p[1]
	}
	return b.String() + f(s[at:])
}
