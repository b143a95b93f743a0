package ask

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/pattern"
)

// understood is a question as it was read.
type understood struct {
	topics   []topic
	recorded []string // words of the record, where no topic was found
	taken    [][2]string
	passed   []string
	weak     bool // it was chosen by interrogatives alone
}

// most topics that one question is taken to ask for.
const most = 5

// preamble is who asks, or why, where that is said before the question.
var preamble = pattern.Of(`(?i)\b(?:i am|i['’]?m|we are|we['’]?re|as|i work as) (?:an?|the|your|doing|writing|making|planning)\b[^.,:;?!]*?(?:[.,:;]| and (?:i |we |you )?(?:need|want|would|should|ask|must|have)\w*)`)

// slack is how many words more than those understood may be passed over: people
// say more than they ask.
const slack = 1

// parts are what may stand between the clauses of a question.
var parts = pattern.Of(`(?i),| and | or | but `)

// clauses are the parts of a sentence that may ask for something each, where
// there are several.
func clauses(sentence string) []string {
	if all := parts().Split(sentence, -1); len(all) > 1 {
		return all
	}
	return nil
}

// understand finds the topics of a question. The longest phrase wins, then the
// topic that stands first; words that only say what a topic is about go with
// it. Interrogatives choose a topic only where nothing else does. In each
// sentence, words in no list may be passed over if they are not many more than those
// that are understood; a sentence without any word of a topic is passed over
// beside another that has one. What lies outside of any record counts three
// times among them. Clauses that can be read by themselves may ask for something else.
func understand(question string, recorded map[string]bool) (understood, error) {
	if bare := preamble().ReplaceAllString(question, ""); bare != question {
		if u, err := understand(bare, recorded); err == nil {
			return u, nil
		}
	}
	var u understood
	var lost []string
	for sentence := range strings.FieldsFuncSeq(question, func(r rune) bool { return strings.ContainsRune(".?!;:\n", r) }) {
		s, ok := read(sentence, recorded)
		for _, clause := range clauses(sentence) {
			if c, whole := read(clause, recorded); whole && !c.weak {
				s.topics, ok = append(s.topics, c.topics...), true
			}
		}
		if !ok {
			lost = append(lost, content(sentence)...)
			continue
		}
		u.taken = append(u.taken, s.taken...)
		u.passed = append(u.passed, s.passed...)
		u.recorded = append(u.recorded, s.recorded...)
		for _, t := range s.topics {
			if !slices.ContainsFunc(u.topics, func(o topic) bool { return o.code == t.code }) {
				u.topics = append(u.topics, t)
			}
		}
	}
	if u.topics != nil {
		u.recorded = nil
	}
	u.topics = u.topics[:min(len(u.topics), most)]
	if u.topics == nil && u.recorded == nil {
		return u, &NotUnderstood{strange(lost, recorded), nearest(lost)}
	}
	u.passed = append(u.passed, lost...)
	return u, nil
}

// read reads one sentence; false where too little of it is understood.
func read(sentence string, recorded map[string]bool) (u understood, ok bool) {
	var words []string
	for _, w := range content(strings.Join(apart(split(sentence), recorded), " ")) {
		if meant := spelt(w, recorded); meant != w {
			u.taken = append(u.taken, [2]string{w, meant})
			w = stem(meant)
		}
		if !empty[w] && !slices.Contains(words, w) {
			words = append(words, w)
		}
	}
	known, beside := 0, 0
	for rest := words; ; {
		t, phrase := longest(rest, u.topics == nil)
		if phrase == nil {
			for _, w := range rest {
				switch {
				case outside[w]:
					beside += 3
				case recorded[w]:
					u.recorded = append(u.recorded, w)
				case !interrogative[w] && !isNumber(w):
					u.passed = append(u.passed, w)
				}
			}
			break
		}
		before := len(rest)
		rest = without(rest, phrase)
		for _, also := range slices.Concat(t.phrases, t.about) {
			if holds(rest, also) {
				rest = without(rest, also)
			}
		}
		known += before - len(rest)
		u.topics = append(u.topics, t)
		u.weak = isWeak(phrase)
	}
	beside += len(u.passed)
	if u.topics == nil {
		return u, u.recorded != nil && beside == 0
	}
	if u.weak {
		known = 0
	}
	return u, beside <= known+slack
}

// longest returns the topic with the longest phrase that the words hold.
// Phrases of interrogatives alone count where nothing else is found.
func longest(words []string, alone bool) (topic, []string) {
	var best topic
	var phrase []string
	for _, weak := range []bool{false, true} {
		if phrase != nil || weak && !alone {
			break
		}
		for _, t := range topics() {
			for _, p := range t.phrases {
				if len(p) > len(phrase) && isWeak(p) == weak && holds(words, p) {
					best, phrase = t, p
				}
			}
		}
	}
	return best, phrase
}

func isWeak(phrase []string) bool {
	return !slices.ContainsFunc(phrase, func(w string) bool { return !interrogative[w] })
}

func isNumber(w string) bool { return strings.Trim(w, "0123456789") == "" }

func holds(words, all []string) bool {
	return len(all) > 0 && !slices.ContainsFunc(all, func(w string) bool { return !slices.Contains(words, w) })
}

func without(words, gone []string) []string {
	return slices.DeleteFunc(slices.Clone(words), func(w string) bool { return slices.Contains(gone, w) })
}

// strange are the words that no topic and no record knows; all of them, if
// none is strange by itself.
func strange(words []string, recorded map[string]bool) []string {
	known, _ := vocabulary()
	out := slices.DeleteFunc(slices.Clone(words), func(w string) bool {
		return known[w] || recorded[w] || interrogative[w]
	})
	if len(out) == 0 {
		return words
	}
	return out
}

// nearest names the two topics whose words are most like those of a question.
func nearest(words []string) [2]record.Code {
	var out [2]record.Code
	var far [2]int
	for i := range far {
		far[i] = 1 << 30
	}
	for _, t := range topics() {
		d := 1 << 20
		for _, p := range slices.Concat(t.phrases, t.about) {
			for _, w := range words {
				for _, x := range p {
					if !interrogative[x] {
						d = min(d, 100*record.Slips(w, x)/max(len(w), len(x)))
					}
				}
			}
		}
		switch {
		case d < far[0]:
			out, far = [2]record.Code{t.code, out[0]}, [2]int{d, far[0]}
		case d < far[1]:
			out[1], far[1] = t.code, d
		}
	}
	return out
}
