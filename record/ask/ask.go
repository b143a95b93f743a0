package ask

import (
	"fmt"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/tell"
)

// Answer is what the record says on one topic.
type Answer struct {
	Topic    record.Code
	Lines    []string
	Entries  []int64 // on which it rests
	Recorded bool    // false: nobody wrote it down
}

// Reading is how a question was read, with the answers.
type Reading struct {
	Answers []Answer
	Taken   [][2]string // words that were misspelt, and what they were read as
	Passed  []string    // words that were passed over
	First   string      // what anyone who asks should hear first: the panel was discarded, or stolen
}

// NotUnderstood says which words of a question are in no list, and which topics
// are nearest to it.
type NotUnderstood struct {
	Words   []string
	Nearest [2]record.Code
}

func (e *NotUnderstood) Error() string {
	if len(e.Words) == 0 {
		return "the question holds no word of the trade"
	}
	return fmt.Sprintf("not understood: %s", strings.Join(e.Words, ", "))
}

// Topics lists what can be asked.
func Topics() []record.Code {
	var out []record.Code
	for _, l := range allListed() {
		out = append(out, l.code)
	}
	return out
}

// Ask answers a question about a panel at a moment, in the words of a
// catalogue. A question on several topics has several answers. The workshop
// should hold the panels of the same batch too. The error is a
// [*NotUnderstood].
func Ask(c *tell.Catalogue, w *record.Workshop, p *record.Panel, now time.Time, question string) (Reading, error) {
	u, err := understand(question, recordedWords(w, p))
	if err != nil {
		return Reading{}, err
	}
	r := &reader{Teller: tell.New(c, w, p), w: w, p: p, now: now, asked: u.words}
	out := Reading{Taken: u.taken, Passed: u.passed, First: r.first()}
	for _, t := range u.topics {
		a := t.answer(r)
		a.Topic = t.code
		out.Answers = append(out.Answers, a)
	}
	if u.recorded != nil {
		a := r.mentions(u.recorded...)
		a.Topic = "what-mentions-it"
		out.Answers = append(out.Answers, a)
	}
	return out, nil
}
