// Package typed reads what a person types at either door: times, amounts and
// lengths, words of the trade, faces, mixes, prices. It writes nothing.
package typed

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/pattern"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// Reader reads inputs one after the other. It keeps the first that cannot be
// read, and what there is to say of those that can; after a fault every other
// value read is empty.
type Reader struct {
	Units record.LengthUnit // of lengths typed without one; empty: none
	Now   time.Time
	Zone  *time.Location
	Shop  *record.Workshop // the shelf; nil: no names are looked up
	Roll  record.Roll      // the panels there are

	Warnings []record.Said
	err      error
}

// For returns a reader of what is typed for an act.
func For(v *studio.View) *Reader {
	return &Reader{Units: v.Shop.Studio.Units, Now: v.Now, Zone: v.Zone, Shop: v.Shop, Roll: v.Roll}
}

// Err returns the first fault.
func (r *Reader) Err() error { return r.err }

// Fail keeps a fault, if it is one and the first.
func (r *Reader) Fail(err error) {
	if r.err == nil && err != nil {
		r.err = err
	}
}

// Value is what can be read from a text.
type Value interface{ UnmarshalText([]byte) error }

// Text reads a measured value into a field; a length or size without any unit
// is in that of the studio. Ounces may be meant as a volume.
func (r *Reader) Text(field, typed string, into Value) {
	if _, ok := into.(*record.Size); ok {
		r.Fail(twoSizes(field, typed, r.Units))
	}
	r.text(field, inUnit(r.Units, typed, into), into)
	if n, ok := into.(*record.Amount); ok && n.Unit() == "oz" && r.err == nil && !r.warned("oz-as-weight") {
		r.Warnings = append(r.Warnings, record.Say("oz-as-weight", record.With("number", n.Number())))
	}
}

// Each reads measured values of one sort.
func Each[T any, P interface {
	*T
	Value
}](r *Reader, field string, typed []string) []T {
	out := make([]T, len(typed))
	for i, t := range typed {
		r.Text(field, t, P(&out[i]))
	}
	return out
}

func (r *Reader) text(field, typed string, into Value) {
	if typed == "" || r.err != nil {
		return
	}
	if err := twoWays(field, typed, into); err != nil {
		r.Fail(err)
		return
	}
	if err := into.UnmarshalText([]byte(typed)); err != nil {
		e := refuse.Input(field, "not-read", "%w", err)
		if inUnit("cm", typed, into) != typed { // the studio has no unit, either
			e = refuse.Input(field, "no-unit", "%w", err).With(record.With("typed", typed))
		}
		r.Fail(e)
	}
}

func (r *Reader) warned(code string) bool {
	for _, w := range r.Warnings {
		if w.Code == code {
			return true
		}
	}
	return false
}

// figures is a length or size that names no unit at all.
var figures = pattern.Of(`^[0-9.,/+\-xX×*\s\x{2044}\x{a0}\x{202f}½¼¾⅛⅜⅝⅞]*[0-9½¼¾⅛⅜⅝⅞]$`)

// inUnit adds the unit to a length or size that names none.
func inUnit(unit record.LengthUnit, typed string, into any) string {
	switch into.(type) {
	case *record.Length, *record.Size:
		if unit != "" && unit != record.Unknown && figures().MatchString(strings.TrimSpace(typed)) {
			return typed + " " + string(unit)
		}
	}
	return typed
}

// Word reads a word of a closed list into a field, if one was typed. The list
// bears the name of the field's type.
func Word[T ~string](r *Reader, field, typed string, into *T) { r.Into(field, into, typed) }

// Said is the word of a closed list that is told as what was typed: "sold" is
// a sale. Any other text comes back as it is.
func Said(list, typed string) string {
	for code, said := range tell.English().Words[list] {
		if said.Text == typed && slices.Contains(record.Words(list), code) {
			return code
		}
	}
	return typed
}

// word reads a word of a closed list.
func (r *Reader) word(field, list, typed string) string {
	w := strings.ToLower(strings.TrimSpace(typed))
	if list == "GritScale" {
		w = strings.ToUpper(w)
	}
	known := slices.Clone(record.Words(list))
	if record.TakesUnknown(list) {
		known = append(known, record.Unknown)
	}
	if !slices.Contains(known, w) {
		w = Said(list, w)
	}
	several := strings.FieldsFunc(w, func(r rune) bool { return strings.ContainsRune(" ,+&/", r) })
	if len(several) > 1 && !slices.ContainsFunc(several, func(s string) bool { return s != "and" && !slices.Contains(known, s) }) {
		r.Fail(refuse.Input(field, "one-word", "%q is more than one", typed))
		return ""
	}
	if w != "" && !slices.Contains(known, w) {
		r.Fail(NotAmong(field, w, known))
		return ""
	}
	return w
}

// NotAmong refuses a word that is none of a list.
func NotAmong(field, word string, list []string) error {
	return refuse.Input(field, "no-such-word", "%q is not understood", word).With(record.With("near", quoted(record.Nearest(word, list))[0]), record.With("word", word), record.With("words", quoted(list...)))
}

// quoted puts words that stand apart into quotes, as they have to be typed.
func quoted(words ...string) []string {
	words = slices.Clone(words)
	for i, w := range words {
		if strings.Contains(w, " ") {
			words[i] = strconv.Quote(w)
		}
	}
	return words
}

// Faces reads "front", "back", "edges" or "all"; "unknown" stands alone.
func (r *Reader) Faces(field string, typed []string) []record.Face {
	var out []record.Face
	for _, t := range strings.FieldsFunc(strings.ReplaceAll(strings.Join(typed, ","), " and ", ","), func(r rune) bool { return strings.ContainsRune(" ,+&/", r) }) {
		t = strings.ToLower(t)
		if t == "all" {
			return append([]record.Face{}, record.Faces...)
		}
		if t == "edge" {
			t = "edges"
		}
		var f record.Face
		one := Reader{}
		Word(&one, field, t, &f)
		if one.err != nil || f == record.Unknown && len(typed) > 1 {
			r.Fail(NotAmong(field, t, append(record.Words("Face"), "all")))
			return nil
		}
		out = append(out, f)
	}
	if out == nil && len(typed) > 0 {
		r.Fail(NotAmong(field, "", append(record.Words("Face"), "all")))
	}
	return out
}

// Hands reads the keys or the names of makers.
func (r *Reader) Hands(field string, typed []string) []record.Hand {
	var out []record.Hand
	for _, t := range typed {
		t = strings.TrimSpace(t)
		i := slices.IndexFunc(r.Shop.Makers, func(m record.Done[record.Maker]) bool {
			return strings.EqualFold(string(m.Body.Key), t) || strings.EqualFold(m.Body.Name, t)
		})
		switch {
		case strings.EqualFold(t, record.Unknown):
			out = append(out, record.Hand{Maker: record.Unknown})
		case i < 0 && strings.EqualFold(r.Shop.Studio.Maker, t):
			if len(typed) > 1 { // alone it is the studio's own without a word
				r.Fail(refuse.Input(field, "own-maker", "%q is the studio's own maker", t))
			}
		case i < 0:
			r.Fail(refuse.Input(field, "no-such-maker", "there is no maker %q in this studio", t))
		default:
			out = append(out, record.Hand{Maker: r.Shop.Makers[i].Body.Key})
		}
	}
	return out
}

// Some is what is said of some of the panels.
type Some struct {
	Panels []record.Number
	Text   string
}

// Some reads what is said of some of the panels: "0005=dent", "0010-0014=tin-2".
func (r *Reader) Some(field string, typed []string) []Some {
	var out []Some
	for _, t := range typed {
		panels, text, ok := strings.Cut(t, "=")
		if text = strings.TrimSpace(text); !ok || text == "" {
			r.Fail(refuse.Input(field, "some-panels", "%q says nothing of a panel", t))
			return nil
		}
		ns, err := r.Roll.Select([]string{panels}, nil)
		if e, ok := studio.NoPanel(err).(*refuse.Error); ok {
			e.Field = field
			r.Fail(e)
		}
		out = append(out, Some{ns, text})
	}
	return out
}

// Pigments reads "titanium white=PW 6", and several that stand together.
func Pigments(typed []string) []record.Pigment {
	var out []record.Pigment
	for _, t := range typed {
		for t != "" {
			one := t
			if strings.Count(t, "=") > 1 {
				one = firstOf().FindString(t)
			}
			t = t[len(one):]
			name, index, _ := strings.Cut(strings.Trim(one, ",;+ "), "=")
			out = append(out, record.Pigment{Name: strings.TrimSpace(name), Index: strings.TrimSpace(index)})
		}
	}
	return out
}

// firstOf is the first of several pigments: its name, its index, and a mark.
var firstOf = pattern.Of(`^[^=]*=[^=,;+]*[,;+]?`)

var spanText = pattern.Of(`^\s*([0-9.,/]+)\s*([A-Za-z]*)\s*(?:-|–|to)\s*([0-9.,/]+)\s*([A-Za-z]+)\s*$`)

// Span splits "20 min..30 min" and "20-30 min"; one figure is both ends.
func Span(s string) (from, to string) {
	if m := spanText().FindStringSubmatch(s); m != nil {
		return m[1] + " " + cmp.Or(m[2], m[4]), m[3] + " " + m[4]
	}
	from, to, ok := strings.Cut(s, "..")
	if !ok {
		return s, s
	}
	return strings.TrimSpace(from), strings.TrimSpace(to)
}
