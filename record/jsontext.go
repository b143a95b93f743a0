package record

import (
	"bytes"
	"errors"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// textFrom reads a JSON text.
func textFrom(d *jsontext.Decoder) (string, error) {
	if d.PeekKind() != '"' {
		return "", errors.New("expected a text")
	}
	t, err := d.ReadToken()
	return t.String(), err
}

// Located fills in where in the text the field of an error stands: the field
// itself, or the object that lacks it.
func Located(b []byte, err error) error {
	fe, ok := err.(*FieldError)
	if !ok || fe.Field == "" {
		return err
	}
	d := jsontext.NewDecoder(bytes.NewReader(b))
	want, best := "/"+fe.Field, 0
	for {
		d.PeekKind()
		from := d.InputOffset()
		if tok, err := d.ReadToken(); err != nil {
			break
		} else if k := tok.Kind(); k == '}' || k == ']' {
			continue
		}
		// The pointer of a name is that of its value, which comes next.
		p := string(d.StackPointer())
		if len(p) >= best && (p == want || strings.HasPrefix(want, p+"/")) {
			best, fe.Offset = len(p), from+int64(len(b[from:])-len(bytes.TrimLeft(b[from:], " \t\r\n,:")))
		}
	}
	return fe
}

func jsonError(err error) error {
	var sem *json.SemanticError
	var syn *jsontext.SyntacticError
	var fe *FieldError
	switch {
	case errors.As(err, &fe):
		return fe
	case errors.As(err, &sem):
		why := "expected " + jsonShape(sem)
		isText := sem.GoType != nil && sem.GoType.Implements(textMarshaler)
		if sem.Err != nil && !(isText && sem.JSONKind != '"') {
			why = sem.Err.Error()
		}
		if errors.Is(err, json.ErrUnknownName) {
			why = "there is no such field"
		}
		return &FieldError{Field: pointer(sem.JSONPointer), Why: why}
	case errors.As(err, &syn):
		return &FieldError{Field: pointer(syn.JSONPointer), Why: "not valid JSON: " + syn.Err.Error(), Offset: syn.ByteOffset}
	}
	return &FieldError{Why: err.Error()}
}

func pointer(p jsontext.Pointer) string { return strings.TrimPrefix(string(p), "/") }

func jsonShape(e *json.SemanticError) string {
	if e.GoType == nil {
		return "something else"
	}
	switch s := e.GoType.Kind().String(); {
	case s == "int64":
		return "a whole number"
	case s == "slice":
		return "a list"
	case s == "bool":
		return "true or false"
	case s == "struct" && !e.GoType.Implements(textMarshaler):
		return "an object"
	}
	return "a text"
}

// Patched applies a merge patch (RFC 7396) to an entry's body and time, and
// judges nothing. The error says that the result is no entry of its kind.
func (e Entry) Patched(patch jsontext.Value) (Entry, error) {
	var change map[string]jsontext.Value
	if err := json.Unmarshal(patch, &change); err != nil {
		return Entry{}, jsonError(err)
	}
	fields, err := e.members()
	if err != nil {
		return Entry{}, err
	}
	for name, v := range change {
		switch name {
		case "v", "seq", "kind", "written", "panels", "imported":
			return Entry{}, &FieldError{Field: name, Why: "this field cannot be amended"}
		}
		fields[name] = merge(fields[name], v)
		if len(fields[name]) == 0 || string(fields[name]) == "{}" {
			delete(fields, name) // what holds nothing is left out
		}
	}
	b, err := json.Marshal(fields, json.Deterministic(true))
	if err != nil {
		return Entry{}, err
	}
	now, _, err := assemble(b, json.RejectUnknownMembers(true))
	return now, err
}

// members returns an entry's members as JSON texts.
func (e Entry) members() (map[string]jsontext.Value, error) {
	e.Newer = nil // what is kept as it is can be compared as it is
	b, err := e.Text()
	if err != nil {
		return nil, err
	}
	fields := map[string]jsontext.Value{}
	return fields, json.Unmarshal(b, &fields)
}

// merge is the MergePatch function of RFC 7396, section 2; nil is absence.
func merge(target, patch jsontext.Value) jsontext.Value {
	if patch.Kind() == 'n' {
		return nil
	}
	if patch.Kind() != '{' {
		return patch
	}
	var p, t map[string]jsontext.Value
	json.Unmarshal(patch, &p) // both are values checked before
	if target.Kind() == '{' {
		json.Unmarshal(target, &t)
	}
	if t == nil {
		t = map[string]jsontext.Value{}
	}
	for name, v := range p {
		if m := merge(t[name], v); m == nil {
			delete(t, name)
		} else {
			t[name] = m
		}
	}
	b, _ := json.Marshal(t)
	return b
}
