package ask

import (
	"reflect"
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/tell"
)

// reader answers topics from one panel.
type reader struct {
	*tell.Teller
	w     *record.Workshop
	p     *record.Panel
	now   time.Time
	asked []string // the words of the question
}

// asks reports whether the question holds one of some words.
func (r *reader) asks(words ...string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(r.asked, w) })
}

// say is one line of an answer.
func (r *reader) say(code string, values ...record.Value) string {
	return tell.Say(r.Catalogue(), record.Say(code, values...))
}

// open answers what nobody wrote down, with why that is so.
func open(entries []int64, lines ...string) Answer {
	a := recorded(entries, lines...)
	a.Recorded = false
	return a
}

// none is the honest answer to what nobody wrote down.
func (r *reader) none(entries ...int64) Answer { return open(entries, r.say("ask-not-recorded")) }

func recorded(entries []int64, lines ...string) Answer {
	return Answer{Lines: slices.DeleteFunc(lines, func(l string) bool { return l == "" }), Entries: entries, Recorded: true}
}

// and adds another answer to one.
func (a Answer) and(b Answer) Answer {
	return Answer{a.Topic, once(a.Lines, b.Lines...), once(a.Entries, b.Entries...), a.Recorded || b.Recorded}
}

// andRecorded adds another answer if there is anything recorded in it.
func (a Answer) andRecorded(b Answer) Answer {
	if !b.Recorded {
		return a
	}
	return a.and(b)
}

// said answers with a recorded text, which may be "unknown" or absent.
func (r *reader) said(text string, entries ...int64) Answer {
	switch text {
	case "":
		return r.none(entries...)
	case record.Unknown:
		return recorded(entries, r.say("ask-unknown"))
	}
	return recorded(entries, text)
}

func known(s string) bool { return s != "" && s != record.Unknown }

// list joins texts for one line. None is left out: the last may be the answer.
func (r *reader) list(texts []string) string { return r.Catalogue().Clauses(texts) }

// found is what was found on a topic, each thing once.
type found struct {
	lines   []string
	entries []int64
}

// add adds a line with the entries that it rests on; an empty one says nothing.
func (f *found) add(line string, entries ...int64) {
	if line != "" {
		f.lines, f.entries = once(f.lines, line), once(f.entries, entries...)
	}
}

// all answers with all that was found, in one line, or that nothing was recorded.
func (r *reader) all(f found, more ...string) Answer {
	if f.lines == nil {
		return r.none()
	}
	return recorded(f.entries, append([]string{r.list(f.lines)}, more...)...)
}

// once adds to a list what is not in it yet.
func once[E comparable](list []E, more ...E) []E {
	for _, x := range more {
		if !slices.Contains(list, x) {
			list = append(list, x)
		}
	}
	return list
}

func (r *reader) layer(l record.Layer) record.Value { return tell.Told("layer", r.Layer(l)) }

// event tells an entry with its date.
func (r *reader) event(e record.Event) string {
	return r.say("ask-at", tell.Told("what", r.Catalogue().WholeEvent(e)), record.With("date", e.At))
}

// happened answers with the entries of which something is true.
func (r *reader) happened(is func(record.Event) bool) Answer {
	var f found
	for _, e := range r.p.Events {
		if is(e) {
			f.add(r.event(e), e.Seq)
		}
	}
	return r.all(f)
}

// events answers with all entries of one kind.
func events[B record.Body](r *reader) Answer {
	return r.happened(func(e record.Event) bool { _, ok := e.Body.(B); return ok })
}

// mentions answers with the entries in whose recorded text one of some words
// begins a word.
func (r *reader) mentions(words ...string) Answer {
	return r.happened(func(e record.Event) bool {
		texts := record.FreeText(e.Body)
		for _, m := range record.Mentions(e.Body) {
			mat, _ := r.w.Material(m.Material, m.As)
			lot, _ := r.w.Lot(m.Lot)
			texts = append(texts, mat.Name, string(m.Lot), lot.MakerLot)
		}
		return speaksOf(strings.Join(texts, " "), words)
	})
}

// speaksOf reports whether one of some words begins a word of a text.
func speaksOf(text string, words []string) bool {
	return slices.ContainsFunc(split(text), func(w string) bool {
		return slices.ContainsFunc(words, func(x string) bool { return strings.HasPrefix(w, x) })
	})
}

// remarks answers with the remarks of notes, inspections and descriptions that
// speak of something; they are never part of what an act itself says.
func (r *reader) remarks(words ...string) Answer {
	var f found
	for _, e := range r.p.Events {
		for _, text := range remarkOf(e.Body) {
			if speaksOf(text, words) {
				f.add(r.say("ask-remark", record.With("text", text), record.With("date", e.At)), e.Seq)
			}
		}
	}
	return r.all(f)
}

// remarkOf are the remarks of an entry: fields in which anything may stand.
func remarkOf(b record.Body) []string {
	var out []string
	record.Walk(b, func(_ string, f record.Field, v reflect.Value) {
		if f.Free() && f.Is == "text" {
			out = append(out, v.String())
		}
	})
	return out
}
