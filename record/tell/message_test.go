package tell

import (
	"reflect"
	"testing"

	"backleaf/record/edtf"
)

// Every message of the catalogue reads, and is put together again as it was.
func TestEveryMessageReads(t *testing.T) {
	n := 0
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		switch {
		case v.Type() == reflect.TypeFor[Message]():
			n++
			m := v.Interface().(Message)
			if ps, err := m.pieces(); err != nil || write(ps) != string(m) {
				t.Errorf("%q: %v, %q", m, err, write(ps))
			}
		case v.Kind() == reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i))
			}
		case v.Kind() == reflect.Slice, v.Kind() == reflect.Array:
			for i := range v.Len() {
				walk(v.Index(i))
			}
		case v.Kind() == reflect.Map:
			for _, k := range v.MapKeys() {
				walk(v.MapIndex(k))
			}
		}
	}
	walk(reflect.ValueOf(*English()))
	if n < 400 {
		t.Errorf("only %d messages were looked at", n)
	}
}

// Every phrase of a role of dates has its like in role "".
func TestPhrasesOfDates(t *testing.T) {
	for name, l := range map[string]edtf.Lexicon{"English": English().Dates} {
		for role, phrases := range l.Roles {
			for phrase := range phrases {
				if _, ok := l.Roles[""][phrase]; !ok && role != "short" {
					t.Errorf("%s, role %q: there is no phrase %q", name, role, phrase)
				}
			}
		}
	}
}
