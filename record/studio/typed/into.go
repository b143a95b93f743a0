package typed

import (
	"reflect"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
)

// gauged are the inputs that are measured with a gauge, whose unit is not that
// of panels.
var gauged = map[string]bool{"wet-film": true, "dry-film": true, "wet_film": true, "dry_film": true, "kerf": true}

// Into reads what was typed into a field, as the field's type wants it. Nothing
// typed leaves it as it is; of a field that holds one thing the first counts.
func (r *Reader) Into(field string, into any, typed ...string) {
	if r.err != nil || len(typed) == 0 || len(typed) == 1 && typed[0] == "" {
		return
	}
	switch p := into.(type) {
	case func(*Reader, ...string):
		p(r, typed...)
	case *string:
		*p = strings.TrimSpace(typed[0])
	case *bool:
		*p = typed[0] == "yes" || typed[0] == "true"
	case *int64:
		n, err := strconv.ParseInt(typed[0], 10, 64)
		if *p = n; err != nil {
			r.Fail(refuse.Input(field, "not-read", "%q is not a whole number", typed[0]))
		}
	case *record.Key:
		*p = record.Key(strings.ToLower(typed[0]))
	case *record.When:
		if field == "expires" { // it lies ahead
			r.Until(field, typed[0], p)
		} else {
			r.When(typed[0], p)
		}
	case *[]record.Face:
		*p = r.Faces(field, typed)
	case *[]record.Part:
		*p = r.Mix(field, typed[0])
	case *[]record.Pigment:
		*p = Pigments(typed)
	case *private.Price:
		*p = r.Price(field, typed[0])
	case Value:
		if gauged[field] && figures().MatchString(strings.TrimSpace(typed[0])) {
			r.Fail(refuse.Input(field, "gauge-without-unit", "%q of what unit?", typed[0]).With(record.With("units", r.Units)))
		} else if gauged[field] {
			r.text(field, typed[0], p)
		} else {
			r.Text(field, typed[0], p)
		}
	default:
		r.words(field, reflect.ValueOf(into).Elem(), typed)
	}
}

// words reads words of the closed list that bears the name of a type.
func (r *Reader) words(field string, into reflect.Value, typed []string) {
	if into.Kind() == reflect.String {
		into.SetString(r.word(field, into.Type().Name(), typed[0]))
		return
	}
	list := reflect.MakeSlice(into.Type(), len(typed), len(typed))
	for i, t := range typed {
		list.Index(i).SetString(r.word(field, into.Type().Elem().Name(), t))
	}
	into.Set(list)
}
