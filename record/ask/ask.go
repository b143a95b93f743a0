package ask

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"backleaf/record"
	"backleaf/record/tell"
)

// Answer is what the record says on one topic, in one or two lines.
type Answer struct {
	Topic    record.Code
	Lines    []string
	Entries  []int64 // on which it rests
	Recorded bool    // false: nobody wrote it down
}

// NotUnderstood says which words of a question are in no list.
type NotUnderstood struct{ Words []string }

func (e *NotUnderstood) Error() string {
	if len(e.Words) == 0 {
		return "the question holds no word of the trade"
	}
	return fmt.Sprintf("not understood: %s", strings.Join(e.Words, ", "))
}

// Topics lists what can be asked.
func Topics() []record.Code {
	var out []record.Code
	for _, t := range topics {
		out = append(out, t.code)
	}
	return out
}

// Ask answers a question about a panel in the words of a catalogue. A question
// on several topics has several answers. The error is a [*NotUnderstood].
func Ask(c *tell.Catalogue, w *record.Workshop, p *record.Panel, question string) ([]Answer, error) {
	found, err := understand(question)
	if err != nil {
		return nil, err
	}
	r := &reader{Teller: tell.New(c, w, p), w: w, p: p}
	var out []Answer
	for _, t := range found {
		a := t.answer(r)
		a.Topic = t.code
		out = append(out, a)
	}
	return out, nil
}

// understand finds the topics of a question. The longest phrase wins, then the
// topic that stands first; words that only say what a topic is about go with
// it. A word left over belongs to another topic, or the question is not
// understood.
func understand(question string) ([]topic, error) {
	words := content(question)
	if len(words) == 0 {
		return nil, &NotUnderstood{}
	}
	var found []topic
	for len(words) > 0 {
		best, length := -1, 0
		var phrase []string
		for i, t := range topics {
			for _, p := range t.phrases {
				if ws := content(p); len(ws) > length && holds(words, ws) {
					best, length, phrase = i, len(ws), ws
				}
			}
		}
		if best < 0 {
			return nil, &NotUnderstood{words}
		}
		t := topics[best]
		words = without(words, phrase)
		for _, also := range slices.Concat(t.phrases, t.about) {
			if ws := content(also); holds(words, ws) {
				words = without(words, ws)
			}
		}
		found = append(found, t)
	}
	return found, nil
}

func holds(words, all []string) bool {
	for _, w := range all {
		if !slices.Contains(words, w) {
			return false
		}
	}
	return len(all) > 0
}

func without(words, gone []string) []string {
	return slices.DeleteFunc(slices.Clone(words), func(w string) bool { return slices.Contains(gone, w) })
}

// content returns the words of a text that mean something, in one form.
func content(s string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		if w = stem(w); !empty[w] && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// stem takes off the plural.
func stem(w string) string {
	switch {
	case strings.HasSuffix(w, "shes"), strings.HasSuffix(w, "ches"), strings.HasSuffix(w, "xes"):
		return w[:len(w)-2]
	case len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") && !strings.HasSuffix(w, "us") && !strings.HasSuffix(w, "is"):
		return w[:len(w)-1]
	}
	return w
}

// empty are words that carry no question by themselves.
var empty = map[string]bool{}

func init() {
	for _, w := range strings.Fields(`a an the this that these it its is are was were be been being has have had do does did can could may might should would will
		what which how many much there any some on of in at by for from to with and or used use uses using kind type sort tell me about please i we you my our
		put get got give given into onto under over as if s not painting picture panel work object piece they them so far exactly`) {
		empty[stem(w)] = true
	}
}
