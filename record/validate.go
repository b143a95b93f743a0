package record

import (
	"bytes"
	"encoding"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"
)

// validate checks an entry by itself: required fields, closed words, keys,
// digests, text, and which panels it may name. What it refers to is checked by
// [Entry.Refers].
func validate(e Entry) error {
	info, ok := kinds[e.Kind()]
	if !ok {
		return &FieldError{Field: "kind", Why: fmt.Sprintf("%q is not a kind of entry", clip(string(e.Kind())))}
	}
	if reflect.TypeOf(e.Body) != reflect.TypeOf(info.blank) {
		return &FieldError{Why: fmt.Sprintf("the body is a %T, not a %T", e.Body, info.blank)}
	}
	if e.Seq < 0 || e.Seq >= 1<<53 {
		return &FieldError{Field: "seq", Why: "expected a number from 1"}
	}
	if _, ok := e.Written.Exact(); !ok && !e.Written.IsZero() {
		return &FieldError{Field: "written", Why: "expected an exact time with its offset, like 2026-05-02T14:05:00+02:00"}
	}
	if err := checkPanels(info.panels, e.Panels); err != nil {
		return err
	}
	if err := walk(reflect.ValueOf(e.Body), "", field{required: true}); err != nil {
		return err
	}
	if b, ok := e.Body.(interface{ check() error }); ok {
		return b.check()
	}
	return nil
}

func checkPanels(rule panelRule, panels []Number) error {
	seen := make(map[Number]bool, len(panels))
	for i, n := range panels {
		f := "panels/" + strconv.Itoa(i)
		if !n.WellFormed() {
			return &FieldError{Field: f, Why: fmt.Sprintf("%q is not a panel number: expected something like KB26-0142-1", clip(string(n)))}
		}
		if seen[n] {
			return &FieldError{Field: f, Why: fmt.Sprintf("%s is named twice", n)}
		}
		seen[n] = true
	}
	switch {
	case panels != nil && len(panels) == 0:
		return &FieldError{Field: "panels", Why: "an empty list: leave the field out"}
	case rule == noPanels && len(panels) > 0:
		return &FieldError{Field: "panels", Why: "this kind of entry names no panels"}
	case rule == onePanel && len(panels) != 1:
		return &FieldError{Field: "panels", Why: "this kind of entry names exactly one panel"}
	case rule == somePanels && len(panels) == 0:
		return &FieldError{Field: "panels", Why: "missing: this kind of entry names at least one panel"}
	case len(panels) > maxPanels:
		return &FieldError{Field: "panels", Why: fmt.Sprintf("more than %d panels in one entry", maxPanels)}
	}
	return nil
}

// walk checks what can be seen from the types and tags alone. A field whose
// JSON tag has no omitzero is required.
func walk(v reflect.Value, path string, f field) error {
	fail := func(why string) error { return &FieldError{Field: strings.TrimPrefix(path, "/"), Why: why} }
	t := v.Type()
	isText := t.Implements(textMarshaler)
	if f.required && v.IsZero() && (isText || v.Kind() != reflect.Struct && v.Kind() != reflect.Bool) {
		return fail("missing")
	}
	if isText || t == reflect.TypeFor[jsontext.Value]() {
		return nil
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range t.NumField() {
			sub := fieldOf(t.Field(i))
			p := path
			if sub.name != "" {
				p += "/" + sub.name
			}
			if err := walk(v.Field(i), p, sub); err != nil {
				return err
			}
		}
	case reflect.Slice:
		switch {
		case v.Len() == 0 && f.required:
			return fail("missing")
		case v.Len() == 0 && !v.IsNil():
			return fail("an empty list: leave the field out")
		case v.Len() > maxList:
			return fail(fmt.Sprintf("a list of more than %d", maxList))
		}
		for i := range v.Len() {
			if err := walk(v.Index(i), path+"/"+strconv.Itoa(i), field{required: true}); err != nil {
				return err
			}
			for j := range i {
				if v.Index(i).Kind() == reflect.String && v.Index(i).Equal(v.Index(j)) {
					return fail(fmt.Sprintf("%q stands twice", v.Index(i)))
				}
			}
		}
	case reflect.Int64:
		if n := v.Int(); n < 0 || n >= 1<<53 {
			return fail("expected a whole number from 1")
		}
	case reflect.String:
		if err := checkString(v.String(), t.Name(), f); err != nil {
			return fail(err.Error())
		}
	}
	return nil
}

var textMarshaler = reflect.TypeFor[encoding.TextMarshaler]()

func checkString(s, typ string, f field) error {
	if s == "" {
		return nil
	}
	if words, ok := closed[typ]; ok {
		if slices.Contains(words, s) || s == Unknown && TakesUnknown(typ) {
			return nil
		}
		return fmt.Errorf("%q is not one of %s", clip(s), strings.Join(words, ", "))
	}
	if typ == "Key" {
		f.is = "key"
	}
	if sh, ok := shapes[f.is]; ok {
		if !sh.matches.MatchString(s) {
			return fmt.Errorf("%q: expected %s", clip(s), sh.Meaning)
		}
		return nil
	}
	limit := MaxLine
	if f.is == "text" {
		limit = MaxText
	} else if strings.ContainsRune(s, '\n') {
		return errors.New("a line break is not allowed here")
	}
	if n := utf8.RuneCountInString(s); n > limit {
		return fmt.Errorf("%d characters; at most %d are allowed", n, limit)
	}
	if err := CheckLine(strings.ReplaceAll(s, "\n", "")); err != nil {
		return err
	}
	if s != strings.TrimSpace(s) {
		return errors.New("it begins or ends with a space")
	}
	return nil
}

// CheckLine says why a text from outside cannot be recorded: control
// characters, line breaks, and characters that turn the direction of reading
// or cannot be seen. Such text could pass for something else in print.
func CheckLine(s string) error {
	if !utf8.ValidString(s) {
		return fmt.Errorf("the text is not valid UTF-8")
	}
	for _, r := range s {
		switch {
		case unicode.IsControl(r):
			return fmt.Errorf("a control character (U+%04X) is not allowed", r)
		case invisible(r):
			return fmt.Errorf("an invisible character (U+%04X) is not allowed", r)
		case r == utf8.RuneError:
			return fmt.Errorf("a replacement character (U+FFFD) is not allowed")
		}
	}
	return nil
}

// invisible reports characters that turn the direction of reading, are not
// seen at all or are no characters. The joiners U+200C and U+200D and the
// variation selectors stay: scripts need them.
func invisible(r rune) bool {
	return r == 0x00AD || r == 0x061C || r == 0x180E || r == 0x200B || r == 0x200E || r == 0x200F ||
		r >= 0x2028 && r <= 0x202E || r >= 0x2060 && r <= 0x206F || r == 0xFEFF ||
		r >= 0xFFF9 && r <= 0xFFFC || r == 0xFFFE || r == 0xFFFF || r >= 0xE0000 && r <= 0xE007F
}

// checkText reads the whole JSON text once: one object, no duplicate names,
// valid UTF-8, whole numbers only, no control characters in any text. What
// was not recorded is left out, so that an entry has one spelling: there is no
// null (but in a change, where it takes a field away), no empty text, list or
// object, and no nought.
func checkText(b []byte, change bool) error {
	d := jsontext.NewDecoder(bytes.NewReader(b))
	if k := d.PeekKind(); k != '{' {
		if _, err := d.ReadToken(); err != nil && err != io.EOF {
			return jsonError(err)
		}
		return &FieldError{Why: "expected a JSON object"}
	}
	at := func(why string) error {
		return &FieldError{Field: pointer(d.StackPointer()), Why: why}
	}
	for last := byte(0); ; {
		tok, err := d.ReadToken()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return jsonError(err)
		}
		kind := byte(tok.Kind())
		_, n := d.StackIndex(d.StackDepth())
		isName := d.StackDepth() > 0 && n%2 == 1 && topIsObject(d)
		switch kind {
		case '0':
			n, err := strconv.ParseInt(tok.String(), 10, 64)
			if err != nil || n >= 1<<53 || n <= -1<<53 {
				return at("expected a whole number; decimals are written as text, like \"3.2 mm\"")
			}
			if n < 1 {
				return at("expected a whole number from 1; leave the field out where nothing was recorded")
			}
		case '"':
			s := tok.String()
			if s == "" && !isName {
				return at("an empty text: leave the field out where nothing was recorded")
			}
			if err := CheckLine(strings.ReplaceAll(s, "\n", "")); err != nil {
				return at(err.Error())
			}
		case 'n':
			if !change && !strings.HasPrefix(string(d.StackPointer()), "/change/") {
				return at("there is no null: leave the field out where nothing was recorded")
			}
		case '}':
			if last == '{' && d.StackDepth() > 0 {
				return at("an empty object: leave the field out")
			}
		case ']':
			if last == '[' {
				return at("an empty list: leave the field out")
			}
		}
		if d.StackDepth() > 8 {
			return at("nested too deeply")
		}
		last = kind
	}
}

func topIsObject(d *jsontext.Decoder) bool {
	k, _ := d.StackIndex(d.StackDepth())
	return k == '{'
}

func (m Material) check() error {
	if err := checkOwnKey(m.Key); err != nil {
		return err
	}
	for _, p := range []struct {
		f string
		d Percent
	}{{"solids_by_mass", m.SolidsMass}, {"solids_by_volume", m.SolidsVolume}} {
		if n, ok := p.d.Millipercent(); ok && n > 100000 {
			return &FieldError{Field: p.f, Why: "more than 100 %"}
		}
	}
	for _, w := range []struct {
		f        string
		from, to Duration
	}{{"touch_dry_to", m.TouchDryFrom, m.TouchDryTo}, {"cure_to", m.CureFrom, m.CureTo}} {
		a, ok := w.from.Seconds()
		b, ok2 := w.to.Seconds()
		if ok && ok2 && a > b {
			return &FieldError{Field: w.f, Why: "ends before it begins"}
		}
	}
	return nil
}

func (l Lot) check() error { return checkOwnKey(l.Key) }

// checkOwnKey refuses the one key that other entries use for "not known".
func checkOwnKey(k Key) error {
	if k == Unknown {
		return &FieldError{Field: "key", Why: "\"unknown\" cannot be the name of a thing on the shelf"}
	}
	return nil
}

func (c Cut) check() error {
	if h, ok := c.Size.Height.Micrometers(); ok {
		if w, _ := c.Size.Width.Micrometers(); h > 10e6 || w > 10e6 || h < 5000 || w < 5000 {
			return &FieldError{Field: "size", Why: "a side between 5 mm and 10 m is expected"}
		}
	}
	return nil
}

func (c Coat) check() error {
	for i, f := range c.Extra {
		if !slices.Contains(c.Faces, f) {
			return &FieldError{Field: "extra/" + strconv.Itoa(i), Why: fmt.Sprintf("%s is not among the faces of this coat", f)}
		}
	}
	return c.Coating.check()
}

func (c Coating) check() error {
	for i, p := range c.Mix {
		if p.Parts > 10000 {
			return &FieldError{Field: fmt.Sprintf("mix/%d/parts", i), Why: "at most 10000 parts"}
		}
	}
	if !c.WetTotal.IsZero() && !c.WetEach.IsZero() {
		return &FieldError{Field: "wet_each", Why: "give the wet amount for all together or for each panel, not both"}
	}
	for _, w := range []struct {
		f string
		a Amount
	}{{"wet_total", c.WetTotal}, {"wet_each", c.WetEach}} {
		_, mass := w.a.Milligrams()
		_, vol := w.a.Microliters()
		if !w.a.IsZero() && !w.a.IsUnknown() && !mass && !vol {
			return &FieldError{Field: w.f, Why: fmt.Sprintf("%q: expected a mass or a volume, like \"220 g\" or \"150 mL\"", w.a)}
		}
	}
	return checkHumidity("humidity", c.Humidity)
}

func checkHumidity(f string, p Percent) error {
	if n, ok := p.Millipercent(); ok && n > 100000 {
		return &FieldError{Field: f, Why: "more than 100 %"}
	}
	return nil
}

func (c Climate) check() error {
	if c.Temperature.IsZero() && c.Humidity.IsZero() {
		return &FieldError{Field: "temperature", Why: "missing: a reading has a temperature, a humidity or both"}
	}
	return checkHumidity("humidity", c.Humidity)
}

func (s Sanded) check() error {
	if (s.Scale == "" || s.Scale == Unknown) != (s.Grit == 0) {
		return &FieldError{Field: "scale", Why: "scale and grit belong together, like P and 180"}
	}
	return nil
}

func (a Amended) check() error {
	if a.Change.Kind() != '{' {
		return &FieldError{Field: "change", Why: "expected the fields to change"}
	}
	if err := checkText(a.Change, true); err != nil {
		return under("change", err)
	}
	if c := a.Change.Clone(); c.Canonicalize() != nil || string(c) == "{}" {
		return &FieldError{Field: "change", Why: "expected the fields to change"}
	}
	return nil
}

// under puts a field error below a field.
func under(field string, err error) error {
	fe, ok := err.(*FieldError)
	if !ok {
		return err
	}
	if fe.Field != "" {
		field += "/" + fe.Field
	}
	return &FieldError{Field: field, Why: fe.Why, Offset: fe.Offset}
}
