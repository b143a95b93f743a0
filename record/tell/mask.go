package tell

import (
	"reflect"

	"golang.org/x/text/language"
)

// Each returns a copy of the catalogue in which f has rewritten every text
// between the places of every message. The tests mask a catalogue with it.
func (c *Catalogue) Each(f func(string) string) *Catalogue {
	out := reflect.New(reflect.TypeOf(*c)).Elem()
	rewrite(out, reflect.ValueOf(*c), f)
	copied := out.Interface().(Catalogue)
	copied.Number = c.Number // signs, no words
	copied.Dates.Clock, copied.Dates.Seconds = c.Dates.Clock, c.Dates.Seconds
	return &copied
}

func rewrite(to, from reflect.Value, f func(string) string) {
	to.Set(from)
	switch from.Kind() {
	case reflect.String:
		to.SetString(between(from.String(), f))
	case reflect.Struct:
		if from.Type() == reflect.TypeFor[language.Tag]() {
			return
		}
		for i := range from.NumField() {
			if !from.Type().Field(i).IsExported() {
				continue
			}
			rewrite(to.Field(i), from.Field(i), f)
		}
	case reflect.Slice:
		to.Set(reflect.MakeSlice(from.Type(), from.Len(), from.Len()))
		for i := range from.Len() {
			rewrite(to.Index(i), from.Index(i), f)
		}
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
	}
}

// between rewrites what stands between the places of a message.
func between(s string, f func(string) string) string {
	ps, err := Message(s).pieces()
	if err != nil {
		return f(s)
	}
	each(ps, f)
	return write(ps)
}

func each(ps []piece, f func(string) string) {
	for i := range ps {
		if ps[i].name == "" {
			ps[i].text = f(ps[i].text)
		}
		for _, v := range ps[i].when {
			each(v.then, f)
		}
	}
}
