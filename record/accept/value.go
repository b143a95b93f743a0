package accept

import (
	"cmp"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"backleaf/record"
)

// Check looks at an entry by itself: required fields, closed words, keys,
// digests, text, and which panels it may name. What it refers to is for
// [Refers].
func Check(e record.Entry) error {
	switch {
	case e.Body == nil:
		return refuse("", "an entry without a body")
	case len(e.Newer) > 0:
		return refuse(e.Newer[0], "a later program wrote this")
	}
	blank, ok := record.Blank(e.Kind())
	if !ok {
		return refuse("kind", "%q is not a kind of entry", e.Kind())
	}
	if reflect.TypeOf(e.Body) != reflect.TypeOf(blank) {
		return refuse("", "the body is a %T, not a %T", e.Body, blank)
	}
	if e.Seq < 0 || e.Seq >= 1<<53 {
		return refuse("seq", "expected a number from 1")
	}
	if _, ok := e.Written.Exact(); !ok && !e.Written.IsZero() {
		return refuse("written", "expected an exact time with its offset, like 2026-05-02T14:05:00+02:00")
	}
	if written, ok := e.Written.Exact(); ok && Ahead(e.At, written) {
		return refuse("at", "%s is later than now", e.At)
	}
	err := cmp.Or(checkPanels(e.Kind().Traits(), e.Panels), checkHands(e), fields(reflect.ValueOf(e.Body), "", e.Kind().Fields()))
	if check, ok := byKind[e.Kind()]; ok && err == nil {
		return check(e.Body)
	}
	return err
}

func refuse(field, format string, args ...any) error {
	return &record.FieldError{Field: field, Why: fmt.Sprintf(format, args...)}
}

// checkHands looks at who is said to have done it and where.
func checkHands(e record.Entry) error {
	for i, h := range e.Makers {
		f := fmt.Sprintf("makers/%d", i)
		if err := checkString(string(h.Maker), record.Field{Name: "maker", Type: reflect.TypeFor[record.Key](), Required: true}); err != nil {
			return refuse(f+"/maker", "%v", err)
		}
		for j := range i {
			if e.Makers[j].Maker == h.Maker {
				return refuse(f+"/maker", "%s stands twice", h.Maker)
			}
		}
		if err := checkSeqs(f+"/maker_as", h.As); err != nil {
			return err
		}
	}
	if e.Imported.From != "" {
		if err := checkString(e.Imported.From, record.Field{Type: reflect.TypeFor[string]()}); err != nil {
			return refuse("imported/from", "%v", err)
		}
	}
	return checkSeqs("studio_as", e.StudioAs)
}

// checkSeqs wants entry numbers in order, each once.
func checkSeqs(field string, seqs []int64) error {
	for i, n := range seqs {
		if n < 1 || n >= 1<<53 || i > 0 && n <= seqs[i-1] {
			return refuse(field, "expected numbers of entries, the smallest first, each once")
		}
	}
	return nil
}

func checkPanels(t record.Traits, panels []record.Number) error {
	seen := make(map[record.Number]bool, len(panels))
	for i, n := range panels {
		f := "panels/" + strconv.Itoa(i)
		if !n.WellFormed() {
			return refuse(f, "%q is not a panel number: expected something like KB26-0142-1", clip(string(n)))
		}
		if seen[n] {
			return refuse(f, "%s is named twice", n)
		}
		seen[n] = true
	}
	switch {
	case panels != nil && len(panels) == 0:
		return refuse("panels", "an empty list: leave the field out")
	case t.Most == 0 && len(panels) > 0:
		return refuse("panels", "this kind of entry names no panels")
	case t.Least == 1 && t.Most == 1 && len(panels) != 1:
		return refuse("panels", "exactly one panel can be named here, not %d", len(panels))
	case t.Least > len(panels):
		return refuse("panels", "missing: this kind of entry names at least one panel")
	case len(panels) > t.Most:
		return refuse("panels", "more than %d panels in one entry", t.Most)
	}
	return nil
}

// maxList bounds the items of one list.
const maxList = 200

// fields checks what can be seen from the table of fields alone.
func fields(v reflect.Value, place string, fs []record.Field) error {
	for _, f := range fs {
		x, at := f.In(v), place+f.Name
		switch {
		case !f.List:
			if err := value(x, at, f); err != nil {
				return err
			}
			continue
		case x.Len() == 0 && f.Required:
			return refuse(at, "missing")
		case x.Len() == 0 && !x.IsNil():
			return refuse(at, "an empty list: leave the field out")
		case x.Len() > maxList:
			return refuse(at, "a list of more than %d", maxList)
		}
		item := f
		item.Required = true
		for i := range x.Len() {
			if err := value(x.Index(i), at+"/"+strconv.Itoa(i), item); err != nil {
				return err
			}
			for j := range i {
				if x.Index(i).Comparable() && f.Fields == nil && x.Index(i).Equal(x.Index(j)) {
					return refuse(at, "%v stands twice", quoted(x.Index(i)))
				}
			}
		}
	}
	return nil
}

func quoted(v reflect.Value) string {
	if v.Kind() == reflect.String {
		return strconv.Quote(v.String())
	}
	return fmt.Sprint(v.Interface())
}

func value(v reflect.Value, at string, f record.Field) error {
	if f.Required && v.IsZero() && f.Fields == nil && v.Kind() != reflect.Bool {
		return refuse(at, "missing")
	}
	if v.IsZero() {
		return nil
	}
	if x, ok := v.Interface().(interface{ Fault() error }); ok {
		if err := x.Fault(); err != nil {
			return refuse(at, "%v", err)
		}
		return nil
	}
	switch {
	case f.Fields != nil:
		return fields(v, at+"/", f.Fields)
	case v.Kind() == reflect.Int64:
		if n := v.Int(); n < 0 || n >= 1<<53 {
			return refuse(at, "expected a whole number from 1")
		}
	case v.Kind() == reflect.String:
		if err := checkString(v.String(), f); err != nil {
			return refuse(at, "%v", err)
		}
	}
	return nil
}

func checkString(s string, f record.Field) error {
	if words := f.Words(); words != nil {
		if slices.Contains(words, s) || s == record.Unknown && record.TakesUnknown(f.Type.Name()) {
			return nil
		}
		return fmt.Errorf("%q is not %s", clip(s), record.OneOf(s, words))
	}
	is := f.Is
	if f.Type == reflect.TypeFor[record.Key]() {
		is = "key"
	}
	if is == "zone" {
		return checkZone(s)
	}
	if sh, ok := shapes[is]; ok {
		if sh.matches().MatchString(s) {
			return nil
		}
		like := strings.NewReplacer(" ", "-", "_", "-").Replace(strings.ToLower(s))
		if is == "key" && sh.matches().MatchString(like) {
			return fmt.Errorf("%q: expected %s, like %s", clip(s), sh.Meaning, like)
		}
		return fmt.Errorf("%q: expected %s", clip(s), sh.Meaning)
	}
	limit := MaxLine
	if is == "text" {
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

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
