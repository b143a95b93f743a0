package accept

import (
	"reflect"
	"strings"
	"sync"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
)

// Beside some free texts stands the word of a closed list: "tool_kind" beside
// "tool". Rules read the word, people the text. Where only the text is given,
// the word is looked up when the entry is written.
const kindSuffix = "_kind"

// FillWords gives each such text its word, where the list has it.
func FillWords(b record.Body) record.Body {
	if blank, ok := record.Blank(b.Kind()); !ok || reflect.TypeOf(b) != reflect.TypeOf(blank) {
		return b
	}
	v := reflect.New(reflect.TypeOf(b)).Elem()
	v.Set(reflect.ValueOf(b))
	fillIn(v, b.Kind().Fields())
	return v.Interface().(record.Body)
}

func fillIn(v reflect.Value, fs []record.Field) {
	for i := range fs {
		f := &fs[i]
		x := f.In(v)
		text, paired := strings.CutSuffix(f.Name, kindSuffix)
		switch {
		case f.Fields != nil && !f.List:
			fillIn(x, f.Fields)
		case paired && x.IsZero():
			for _, g := range fs {
				if g.Name == text && g.Free() {
					x.SetString(record.WordIn(f.Type.Name(), g.In(v).String()))
				}
			}
		}
	}
}

// wordLists are the lists of the words beside texts, by the name of the text.
var wordLists = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	var take func([]record.Field)
	take = func(fs []record.Field) {
		for _, f := range fs {
			if text, ok := strings.CutSuffix(f.Name, kindSuffix); ok {
				out[text] = f.Type.Name()
			}
			take(f.Fields)
		}
	}
	for _, k := range record.Kinds() {
		take(k.Fields())
	}
	return out
})

// fillChange does for the change of an amendment what FillWords does for an
// entry: a text that is changed takes its word with it.
func fillChange(change jsontext.Value) jsontext.Value {
	var m map[string]jsontext.Value
	if json.Unmarshal(change, &m) != nil {
		return change
	}
	for name, v := range m {
		list, paired := wordLists()[name]
		_, said := m[name+kindSuffix]
		switch {
		case v.Kind() == '{':
			m[name] = fillChange(v)
		case paired && !said && v.Kind() == '"':
			var text string
			json.Unmarshal(v, &text) // it is a JSON text
			word := jsontext.Value("null")
			if w := record.WordIn(list, text); w != "" {
				word, _ = json.Marshal(w)
			}
			m[name+kindSuffix] = word
		case paired && !said && v.Kind() == 'n':
			m[name+kindSuffix] = jsontext.Value("null")
		}
	}
	out, err := json.Marshal(m, json.Deterministic(true))
	if err != nil {
		return change
	}
	return out
}
