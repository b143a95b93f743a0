package tell

import (
	"fmt"
	"strings"
	"sync"

	"backleaf/record"
)

// A Message is a text with places in braces, in a small part of the syntax of
// ICU MessageFormat:
//
//	{name}        the value of that name
//	{name:form}   the same in a form: of a word ("dat"), of a date ("on"), of a figure ("range")
//	{name, by, choice {text} … other {text}}
//	              the text chosen by the value; texts may hold places and choices
//
// What chooses is one of:
//
//	plural  the plural category of a number in the language (zero, one, two, few, many, other)
//	select  the word, code or text itself; "none" for a value not recorded, "some" for any other
//	gender  masc, fem or neut, of a word or of all words of a list
//	number  sing or plur, of a word, or of a list of more than one
//	kind    of a date: day, month, season, year, decade, years, span, open
//	if      {name, if {text}}: the text where the value is recorded, else nothing
//
// A message of words that depend on one another is written whole for each
// choice. A recorded text is never searched for places and has no forms.
type Message string

// A piece of a message is text, a place, or a choice.
type piece struct {
	text       string
	name, form string
	by         string
	when       []variant
}

type variant struct {
	choice string
	then   []piece
}

var choosers = map[string]bool{"plural": true, "select": true, "gender": true, "number": true, "kind": true}

// pieces reads a message.
func (m Message) pieces() ([]piece, error) {
	r := &messageReader{rest: string(m)}
	ps := r.read(false)
	if r.err != nil {
		return nil, fmt.Errorf("message %q: %w", string(m), r.err)
	}
	return ps, nil
}

type messageReader struct {
	rest string
	err  error
}

func (r *messageReader) fail(format string, a ...any) {
	if r.err == nil {
		r.err = fmt.Errorf(format, a...)
	}
	r.rest = ""
}

// until cuts what stands before the first of some signs and says which it was.
func (r *messageReader) until(signs string) (before string, sign byte) {
	i := strings.IndexAny(r.rest, signs)
	if i < 0 {
		before, r.rest = r.rest, ""
		return before, 0
	}
	before, sign, r.rest = r.rest[:i], r.rest[i], r.rest[i+1:]
	return before, sign
}

// read reads pieces, of a choice up to its closing brace.
func (r *messageReader) read(inside bool) []piece {
	var out []piece
	for {
		text, sign := r.until("{}")
		if text != "" {
			out = append(out, piece{text: text})
		}
		switch {
		case sign == '{':
			out = append(out, r.place())
		case sign == '}' && !inside:
			r.fail("a brace closes what none opened")
			return out
		case sign == 0 && inside:
			r.fail("a choice is not closed")
			return out
		default:
			return out
		}
	}
}

func (r *messageReader) place() piece {
	head, sign := r.until(",}{")
	var p piece
	p.name, p.form, _ = strings.Cut(strings.TrimSpace(head), ":")
	switch {
	case p.name == "":
		r.fail("a place without a name")
	case sign == '}':
	case sign == ',':
		r.choice(&p)
	default:
		r.fail("{%s is not closed", p.name)
	}
	return p
}

// choice reads what chooses and the texts to choose from.
func (r *messageReader) choice(p *piece) {
	by, sign := r.until(",}{")
	switch p.by = strings.TrimSpace(by); {
	case p.by == "if" && sign == '{':
		p.when = []variant{{"", r.read(true)}}
		if rest, sign := r.until("{}"); sign != '}' || rest != "" {
			r.fail("{%s, if has other than one text", p.name)
		}
	case choosers[p.by] && sign == ',':
		p.when = r.variants(p.name)
	default:
		r.fail("{%s} is chosen by %q", p.name, p.by)
	}
}

func (r *messageReader) variants(name string) []variant {
	var out []variant
	for r.err == nil {
		choice, sign := r.until("{}")
		choice = strings.TrimSpace(choice)
		switch {
		case sign == '{' && choice != "":
			out = append(out, variant{choice, r.read(true)})
			continue
		case sign != '}' || choice != "":
			r.fail("the choices of {%s} are not closed", name)
		case len(out) == 0 || out[len(out)-1].choice != "other":
			r.fail("the choices of {%s} do not end with other", name)
		}
		break
	}
	return out
}

// write puts a message together again.
func write(ps []piece) string {
	var b strings.Builder
	for _, p := range ps {
		switch {
		case p.name == "":
			b.WriteString(p.text)
		case p.by == "if":
			fmt.Fprintf(&b, "{%s, if {%s}}", p.name, write(p.when[0].then))
		case p.by != "":
			fmt.Fprintf(&b, "{%s, %s,", p.name, p.by)
			for _, v := range p.when {
				fmt.Fprintf(&b, " %s {%s}", v.choice, write(v.then))
			}
			b.WriteString("}")
		case p.form != "":
			b.WriteString("{" + p.name + ":" + p.form + "}")
		default:
			b.WriteString("{" + p.name + "}")
		}
	}
	return b.String()
}

// With puts texts that are said already into the places of a message, named by
// turns: name, value, name, value.
func (m Message) With(pairs ...string) string {
	values := make([]record.Value, 0, len(pairs)/2)
	for i := 0; i+1 < len(pairs); i += 2 {
		v := record.Value{Name: pairs[i], Type: told}
		if pairs[i+1] != "" {
			v.Texts = pairs[i+1 : i+2]
		}
		values = append(values, v)
	}
	return wordless.Fill(m, values...)
}

// wordless puts texts in their places and has no words of its own.
var wordless = &Catalogue{}

// Fill puts typed values into a message: those of [record.With], and [Told].
func (c *Catalogue) Fill(m Message, values ...record.Value) string {
	return c.fill(m, record.Said{Values: values})
}

// Told makes a value of words that are already said, such as the name of a
// layer; no words are nothing. Like a recorded text it has no forms.
func Told(name, words string) record.Value {
	if words == "" {
		return record.Value{Name: name, Type: told}
	}
	return record.Value{Name: name, Type: told, Texts: []string{words}}
}

const told = "told"

func (c *Catalogue) fill(m Message, s record.Said) string {
	f := filling{c: c, said: s}
	return f.of(m)
}

// read holds the pieces of messages that were told: a catalogue has some
// thousands, and some are told for every panel.
var read sync.Map

// telling fills a message and says which values are told by it.
func (c *Catalogue) telling(m Message, s record.Said) (string, map[string]bool) {
	f := filling{c: c, said: s, told: map[string]bool{}}
	return f.of(m), f.told
}

// filling is a message being filled.
type filling struct {
	c    *Catalogue
	said record.Said
	text strings.Builder
	told map[string]bool // nil: nobody asks
}

func (f *filling) of(m Message) string {
	ps, ok := read.Load(m)
	if !ok {
		p, err := m.pieces()
		if err != nil {
			return string(m)
		}
		ps, _ = read.LoadOrStore(m, p)
	}
	f.text.Grow(len(m))
	f.put(ps.([]piece))
	return f.text.String()
}

func (f *filling) put(ps []piece) {
	for _, p := range ps {
		v := f.said.Value(p.name)
		switch {
		case p.name == "":
			f.text.WriteString(p.text)
		case v.Name == "" && p.by != "if":
			f.text.WriteString(write([]piece{p})) // nothing is dropped in silence
		case p.by == "":
			f.tells(v.Name, true)
			f.text.WriteString(f.c.within(v, p.form, f.said))
		default:
			f.tells(v.Name, p.by == "select" || p.by == "plural")
			f.put(choose(p.when, f.c.choices(v, p.by)))
		}
	}
}

func (f *filling) tells(name string, is bool) {
	if is && f.told != nil {
		f.told[name] = true
	}
}

// choose returns the first variant, in the order written, that is among the
// choices a value allows.
func choose(when []variant, allowed []string) []piece {
	for _, v := range when {
		if v.choice == "other" {
			return v.then
		}
		for _, a := range allowed {
			if a == v.choice {
				return v.then
			}
		}
	}
	return nil
}
