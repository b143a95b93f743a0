package record

import (
	"bytes"
	"fmt"
	"io"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"
)

// Limits of text, in characters.
const (
	maxLine = 300  // names, titles, single lines
	maxText = 4000 // notes and reports
)

var (
	keyPattern  = regexp.MustCompile(`^[a-z0-9][a-z0-9.-]{0,39}$`)
	hexPattern  = regexp.MustCompile(`^[0-9a-f]{64}$`)
	linkPattern = regexp.MustCompile(`^HTTPS?://[0-9A-Z$%*+\-./:]+$`)
	naanPattern = regexp.MustCompile(`^[0-9bcdfghjkmnpqrstvwxz]{5}$`)
	currency    = regexp.MustCompile(`^[A-Z]{3}$`)
)

// validate checks an entry by itself: required fields, closed words, keys,
// digests, text, and which panels it may name. What it refers to is checked by
// [Entry.Refers].
func validate(e Entry) error {
	info, ok := kinds[e.Kind()]
	if !ok {
		return &FieldError{Field: "kind", Why: fmt.Sprintf("%q is not a kind of entry", clip(string(e.Kind())))}
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
	if err := walk(reflect.ValueOf(e.Body), "", true); err != nil {
		return err
	}
	if b, ok := e.Body.(interface{ check() error }); ok {
		return b.check()
	}
	return nil
}

func checkPanels(rule panelRule, panels []Number) error {
	seen := map[Number]bool{}
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
	case rule == noPanels && len(panels) > 0:
		return &FieldError{Field: "panels", Why: "this kind of entry names no panels"}
	case rule == onePanel && len(panels) != 1:
		return &FieldError{Field: "panels", Why: "this kind of entry names exactly one panel"}
	case rule == somePanels && len(panels) == 0:
		return &FieldError{Field: "panels", Why: "missing: this kind of entry names at least one panel"}
	case len(panels) > 5000:
		return &FieldError{Field: "panels", Why: "more than 5000 panels in one entry"}
	}
	return nil
}

// walk checks what can be seen from the types alone. A field whose JSON tag
// has no omitzero is required.
func walk(v reflect.Value, path string, required bool) error {
	fail := func(why string) error { return &FieldError{Field: strings.TrimPrefix(path, "/"), Why: why} }
	if required && v.IsZero() && v.Kind() != reflect.Struct && v.Kind() != reflect.Bool {
		return fail("missing")
	}
	t := v.Type()
	if t == reflect.TypeFor[jsontext.Value]() {
		return nil
	}
	if _, ok := v.Interface().(interface{ MarshalText() ([]byte, error) }); ok && v.Kind() == reflect.Struct {
		if required && v.IsZero() {
			return fail("missing")
		}
		return nil
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range t.NumField() {
			name, opts, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
			p := path
			if name != "" {
				p += "/" + name
			}
			if err := walk(v.Field(i), p, !strings.Contains(opts, "omitzero")); err != nil {
				return err
			}
		}
	case reflect.Slice:
		if required && v.Len() == 0 {
			return fail("missing")
		}
		if v.Len() > 200 {
			return fail("a list of more than 200")
		}
		for i := range v.Len() {
			if err := walk(v.Index(i), path+"/"+strconv.Itoa(i), true); err != nil {
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
			return fail("expected a whole number that is not negative")
		}
	case reflect.String:
		s := v.String()
		if words, ok := closed[t.Name()]; ok && s != "" && !slices.Contains(words, s) && (s != Unknown || t.Name() == "Face") {
			return fail(fmt.Sprintf("%q is not one of %s", clip(s), strings.Join(words, ", ")))
		}
		if t.Name() == "Key" && s != "" && s != Unknown && !keyPattern.MatchString(s) {
			return fail(fmt.Sprintf("%q: expected lower-case letters, digits, points and hyphens, at most 40", clip(s)))
		}
		limit := maxLine
		if strings.HasSuffix(path, "/text") || strings.HasSuffix(path, "/note") || strings.HasSuffix(path, "/remarks") || strings.HasSuffix(path, "/hazard") || strings.HasSuffix(path, "/statement") {
			limit = maxText
		} else if strings.ContainsRune(s, '\n') {
			return fail("a line break is not allowed here")
		}
		if n := utf8.RuneCountInString(s); n > limit {
			return fail(fmt.Sprintf("%d characters; at most %d are allowed", n, limit))
		}
		if err := CheckLine(strings.ReplaceAll(s, "\n", "")); err != nil {
			return fail(err.Error())
		}
		if s != strings.TrimSpace(s) {
			return fail("it begins or ends with a space")
		}
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
		case r >= 0x202A && r <= 0x202E, r >= 0x2066 && r <= 0x2069, r == 0x200E, r == 0x200F, r == 0x061C,
			r == 0x2028, r == 0x2029, r == 0xFEFF, r >= 0xFFF9 && r <= 0xFFFB, r >= 0xE0000 && r <= 0xE007F:
			return fmt.Errorf("an invisible character (U+%04X) is not allowed", r)
		case r == utf8.RuneError:
			return fmt.Errorf("a replacement character (U+FFFD) is not allowed")
		}
	}
	return nil
}

// checkText reads the whole JSON text once: one value, no duplicate names,
// valid UTF-8, whole numbers only, no control characters in any string.
func checkText(b []byte) error {
	d := jsontext.NewDecoder(bytes.NewReader(b))
	if d.PeekKind() != '{' {
		if _, err := d.ReadToken(); err != nil && err != io.EOF {
			return jsonError(err)
		}
		return &FieldError{Why: "expected a JSON object"}
	}
	for {
		tok, err := d.ReadToken()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return jsonError(err)
		}
		at := func(why string) error {
			return &FieldError{Field: pointer(d.StackPointer()), Why: why, Offset: d.InputOffset()}
		}
		switch tok.Kind() {
		case '0':
			n, err := strconv.ParseInt(tok.String(), 10, 64)
			if err != nil || n >= 1<<53 || n <= -1<<53 {
				return at("expected a whole number; decimals are written as text, like \"3.2 mm\"")
			}
		case '"':
			if err := CheckLine(strings.ReplaceAll(tok.String(), "\n", "")); err != nil {
				return at(err.Error())
			}
		}
		if d.StackDepth() > 8 {
			return at("nested too deeply")
		}
	}
}

func (s Studio) check() error {
	if err := ValidMark(s.Mark); err != nil {
		return &FieldError{Field: "mark", Why: err.Error()}
	}
	if s.LinkBase != "" && (!linkPattern.MatchString(s.LinkBase) || len(s.LinkBase) > 120) {
		return &FieldError{Field: "link_base", Why: "expected an upper-case web address, like HTTPS://EXAMPLE.ORG/P/"}
	}
	if s.NAAN != "" && !naanPattern.MatchString(s.NAAN) {
		return &FieldError{Field: "naan", Why: "expected five characters of the ARK set"}
	}
	if s.Zone != "" {
		if _, err := time.LoadLocation(s.Zone); err != nil {
			return &FieldError{Field: "time_zone", Why: "expected a name like Europe/Riga"}
		}
	}
	if s.Paper != "" && s.Paper != "a4" && s.Paper != "letter" {
		return &FieldError{Field: "paper", Why: "expected a4 or letter"}
	}
	if s.Currency != "" && !currency.MatchString(s.Currency) {
		return &FieldError{Field: "currency", Why: "expected three capitals, like EUR"}
	}
	return nil
}

func (m Material) check() error {
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

func (c Cut) check() error {
	if h, ok := c.Size.Height.Micrometers(); ok {
		if w, _ := c.Size.Width.Micrometers(); h > 10e6 || w > 10e6 || h < 5000 || w < 5000 {
			return &FieldError{Field: "size", Why: "a side between 5 mm and 10 m is expected"}
		}
	}
	return nil
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

func (p Photograph) check() error {
	if p.Type != "image/jpeg" && p.Type != "image/png" {
		return &FieldError{Field: "media_type", Why: "expected image/jpeg or image/png"}
	}
	return checkHex("sha256", p.SHA256)
}

func checkHex(f, s string) error {
	if s != "" && !hexPattern.MatchString(s) {
		return &FieldError{Field: f, Why: "expected a SHA-256 digest in 64 lower-case hex figures"}
	}
	return nil
}

func (l LabelPrinted) check() error { return checkHex("record_sha256", l.Record) }
func (c Issued) check() error       { return checkHex("record_sha256", c.Record) }
func (h HandedOver) check() error   { return checkHex("private_sha256", h.Private) }
func (k KeyMade) check() error      { return checkHex("fingerprint", k.Fingerprint) }
func (k KeyLost) check() error      { return checkHex("fingerprint", k.Fingerprint) }
func (l Lot) check() error          { return checkHex("private_sha256", l.Private) }

func (k KeyRetired) check() error {
	if err := checkHex("successor", k.Successor); err != nil {
		return err
	}
	return checkHex("fingerprint", k.Fingerprint)
}

func (a Amended) check() error {
	if a.Change.Kind() != '{' || string(a.Change) == "{}" {
		return &FieldError{Field: "change", Why: "expected the fields to change"}
	}
	return nil
}
