package tell

import (
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/edtf"

	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record/pattern"
)

// plainName is a name of a file that a shell takes as it stands.
var plainName = pattern.Of(`^[\pL\pM\pN._/~+@%,:=-]+$`)

// value tells a typed value in a form.
func (c *Catalogue) value(v record.Value, form string) string {
	if len(v.Texts) == 0 {
		return c.missing(v.Type)
	}
	if most, typed := map[string]int{"typed": 6, "runs": len(v.Texts)}[form]; v.Type == "Number" && typed {
		return typedAgain(v.Texts, most)
	}
	if v.Type == "Number" && len(v.Texts) > 2 && form != "each" {
		return c.panels(v.Texts)
	}
	if v.Type == "figure" && c.inches {
		v.Texts = inInches(v.Texts)
	}
	if form == "range" && len(v.Texts) == 2 {
		return c.between(v.Texts[0], v.Texts[1])
	}
	var out []string
	for _, text := range v.Texts {
		out = append(out, c.one(v.Type, text, form))
	}
	return c.List(out)
}

// within tells a value of something said. A code that has a message is told
// by it, with the other values.
func (c *Catalogue) within(v record.Value, form string, s record.Said) string {
	m, ok := c.Codes[v.Text()]
	if v.Type != "code" || !ok {
		return c.value(v, form)
	}
	others := slices.DeleteFunc(slices.Clone(s.Values), func(x record.Value) bool { return x.Name == v.Name })
	return c.fill(m, record.Said{Code: v.Text(), Values: others})
}

// missing tells a value that was not recorded.
func (c *Catalogue) missing(kind string) string {
	switch kind {
	case "When":
		return string(c.Lines.T("no-date"))
	case told:
		return ""
	}
	return string(c.Lines.T("not-recorded"))
}

// one tells one text of a value by its type. What has a type that this program
// does not know, or a word that it does not know, is told as it is recorded.
func (c *Catalogue) one(kind, text, form string) string {
	switch {
	case text == "":
		return c.missing(kind)
	case kind == "When":
		return c.date(text, form)
	case text == record.Unknown && kind != told:
		return string(c.Lines.T("unknown"))
	}
	switch kind {
	case "text", told, "Number", "Key":
		if form == "typed" && !plainName().MatchString(text) {
			return `"` + text + `"`
		}
		return text
	case "change": // the merge patch of an amendment
		return c.change("", jsontext.Value(text))
	case "count":
		return c.Number.Number(text)
	case "entry":
		return c.Lines.T("entry").With("n", text)
	case "Size":
		return c.size(text, form)
	case digest:
		return c.Lines.T("digest").With("first", text[:min(len(text), 8)])
	}
	if w, ok := c.lookUp(kind, text); ok {
		return w.in(form)
	}
	if p := figure().FindStringSubmatch(text); p != nil && c.Words[kind] == nil {
		if p[2] == "" {
			return c.Number.Number(p[1])
		}
		return c.Measure(p[1], p[2])
	}
	return text
}

// between tells a range of two measured or reckoned values; a unit that both
// share is told once.
func (c *Catalogue) between(from, to string) string {
	a, b := figure().FindStringSubmatch(from), figure().FindStringSubmatch(to)
	if a == nil || b == nil || a[2] != b[2] {
		return c.one("figure", from, "") + c.Number.Range + c.one("figure", to, "")
	}
	return c.Number.Number(a[1]) + c.Number.Range + c.one("figure", to, "")
}

// date tells a date: without the time of day, or in form "moment" with it to
// the minute, in form "exact" to the second, in form "near" as told at a
// certain moment; other forms are roles of the language's dates.
func (c *Catalogue) date(text, form string) string {
	w, err := record.ParseWhen(text)
	switch {
	case err != nil:
		return text // a form of date that a newer program writes
	case w.IsUnknown():
		return string(c.Lines.T("unknown-date"))
	}
	at, exact := w.Exact()
	if form == "exact" && exact && !c.now.IsZero() { // as near tells it
		w = record.Moment(at.In(c.now.Location()))
	}
	switch {
	case form == "near" && exact, form == "hour" && exact:
		return c.near(at, form)
	case form == "exact":
		return w.Date().In(c.Dates, "")
	case form == "moment" && exact:
		m, _ := edtf.Parse(at.Format("2006-01-02T15:04:00Z07:00"))
		return m.In(c.Dates, "")
	case form == "moment", form == "near", form == "hour":
		return w.Date().In(c.Dates, "")
	}
	return w.Date().Day().In(c.Dates, form)
}

// At returns the catalogue as it speaks at a moment and in a time zone: dates
// in form "near" are told from there.
func (c *Catalogue) At(now time.Time, zone *time.Location) *Catalogue {
	at := *c
	at.now = now.In(zone)
	return &at
}

// near tells a moment in the zone of [Catalogue.At], short where it is near; in
// form "hour" the time alone is of today, and the day alone where it is a week off.
func (c *Catalogue) near(at time.Time, form string) string {
	if c.now.IsZero() {
		return c.date(at.Format(time.RFC3339), "moment")
	}
	at = at.In(c.now.Location())
	clock, day := at.Format(c.Dates.Clock), at.Format(time.DateOnly)
	switch {
	case day == c.now.Format(time.DateOnly) && form == "hour":
		return clock
	case day == c.now.Format(time.DateOnly):
		return c.Lines.T("today").With("time", clock)
	case day == c.now.AddDate(0, 0, 1).Format(time.DateOnly):
		return c.Lines.T("tomorrow").With("time", clock)
	case day == c.now.AddDate(0, 0, -1).Format(time.DateOnly):
		return c.Lines.T("yesterday").With("time", clock)
	case form == "hour" && at.Sub(c.now).Abs() > 7*24*time.Hour:
		return c.date(day, "")
	}
	return c.date(at.Format(time.RFC3339), "moment")
}

// panels names many panels briefly: a run, or the ends and how many.
func (c *Catalogue) panels(texts []string) string {
	first, last := record.Number(texts[0]), record.Number(texts[len(texts)-1])
	m := c.Lines.T("panels")
	if last.Serial()-first.Serial()+1 != len(texts) {
		m = c.Lines.T("panels-among")
	}
	return c.Fill(m, record.With("n", len(texts)), record.With("first", first), record.With("last", last))
}

// size tells height × width × depth as measured.
func (c *Catalogue) size(text, form string) string {
	size, err := record.ParseSize(text)
	if err != nil {
		return text
	}
	var dims []record.Length
	for _, d := range []record.Length{size.Height, size.Width, size.Depth} {
		if d.IsUnknown() {
			return text
		}
		if !d.IsZero() {
			dims = append(dims, d)
		}
	}
	if form == "both" && len(dims) > 0 {
		return c.Lines.T("size").With("measured", c.sides(dims, measured), "other", c.sides(dims, converted))
	}
	return c.sides(dims, measured)
}

// choices are the choices that a value allows, for what chooses.
func (c *Catalogue) choices(v record.Value, by string) []string {
	if len(v.Texts) == 0 {
		return []string{"none"}
	}
	switch by {
	case "if":
		return []string{""}
	case "plural":
		number := v.Texts[0]
		if p := figure().FindStringSubmatch(number); p != nil {
			number = p[1]
		}
		return []string{"=" + number, c.plural(number)}
	case "kind":
		if w, err := record.ParseWhen(v.Text()); err == nil && w.Known() {
			return []string{w.Date().Kind()}
		}
		return []string{v.Text()}
	case "select":
		return append(slices.Clone(v.Texts[:1]), "some")
	case "number":
		if len(v.Texts) > 1 || c.wordOf(v, 0).Plural {
			return []string{"plur"}
		}
		return []string{"sing"}
	}
	g := c.wordOf(v, 0).Gender
	for i := range v.Texts {
		if c.wordOf(v, i).Gender != g {
			return []string{Masculine.String()}
		}
	}
	return []string{g.String()}
}

// wordOf is the word of one text of a value; the zero Word if there is none.
func (c *Catalogue) wordOf(v record.Value, i int) Word {
	if i >= len(v.Texts) {
		return Word{}
	}
	w, _ := c.lookUp(v.Type, v.Texts[i])
	return w
}

// List joins words as a language does: "front, back and edges".
func (c *Catalogue) List(words []string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	last := len(words) - 1
	s := words[0]
	for _, w := range words[1:last] {
		s = c.Join.List.With("a", s, "b", w)
	}
	return c.Join.LastOfList.With("a", s, "b", words[last])
}

// Series joins parts that are no list with a last one: "linen, plain weave".
func (c *Catalogue) Series(parts []string) string {
	line := ""
	for i, p := range parts {
		if i == 0 {
			line = p
			continue
		}
		line = c.Join.List.With("a", line, "b", p)
	}
	return line
}

// Clauses joins parts that may hold commas themselves: "size; sealer, edges".
func (c *Catalogue) Clauses(parts []string) string {
	return strings.Join(parts, string(c.Join.Clauses))
}
