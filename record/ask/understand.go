package ask

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"backleaf/record"
	"backleaf/record/pattern"
)

// understood is a question as it was read.
type understood struct {
	topics   []topic
	recorded []string // words of the record, where no topic was found
	taken    [][2]string
	passed   []string
	words    []string // all that mean something, each in its one form
	weak     bool     // it was chosen by interrogatives alone
}

// most topics that one question is taken to ask for.
const most = 5

// preamble is who asks, or why, where that is said before the question.
var preamble = pattern.Of(`(?i)\b(?:i am|i['’]?m|we are|we['’]?re|as|i work as) (?:an?|the|your|doing|writing|making|planning)\b[^.,:;?!]*?(?:[.,:;]| and (?:i |we |you )?(?:need|want|would|should|ask|must|have)\w*)`)

// polite is what is said around a question without asking for anything, in
// words that would ask for something if they stood alone.
var polite = pattern.Of(`(?i)\b(?:(?:can|could|would|will|may|might|do|must|should) (?:you|i|we|someone|anyone)(?: all| please| just| kindly| possibly| perhaps| even| happen to| be able to)* (?:tell|say|ask|know|explain|show|let|confirm|check|help|inform|find out|look up|see|give)\b|(?:i|we)(?:['’]d|['’]m| would| am| do| really| just)* (?:need|have|want|like|love|wish|trying|keen|wonder\w*|do(?:n['’]t| not) know)(?: to)?(?: know| ask| see| hear| learn| find out| understand| check)?\b|what(?: else)? (?:can|could) (?:you|it|the record) (?:tell|say)\b|(?:that|this) is all|for (?:an?|the|my|our) (?:insurance|catalogue|exhibition|customs|auction|tax|press|archive|inventory)(?: \w+)?)`)

// advice is how somebody asks what to do.
var advice = pattern.Of(`(?i)\bhow (?:to|do|does|would|best to)(?: (?:i|you|we|one|they))?\b|\b(?:best|right|good|safe) (?:way|method|place|manner) (?:to|for|of)\b`)

// consists is how somebody asks what something is made of.
var consists = pattern.Of(`(?i)\b(?:made|built|put together) (?:up |out )?(?:of|from)\b`)

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
// times among them; what looks like a word of what harms is never passed over. Clauses that can be read by themselves may ask for something else.
func understand(question string, recorded map[string]bool) (understood, error) {
	if bare := preamble().ReplaceAllString(question, ""); bare != question {
		if u, err := understand(bare, recorded); err == nil {
			return u, nil
		}
	}
	if bare := polite().ReplaceAllString(question, ""); len(content(bare)) > 0 {
		question = bare
	}
	question = consists().ReplaceAllString(advice().ReplaceAllString(question, "how should"), "composition")
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
		u.words = append(u.words, s.words...)
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
	for _, typed := range apart(split(sentence), recorded) {
		w := stem(typed)
		if empty()[w] {
			continue
		}
		if near := spelt(w, len(typed), recorded); near != w {
			u.taken = append(u.taken, [2]string{w, near})
			w = stem(near)
		}
		w = meant(w)
		if !empty()[w] && !slices.Contains(words, w) {
			words = append(words, w)
		}
	}
	u.words = words
	known, beside, far := 0, 0, false
	for rest := words; ; {
		t, phrase := longest(rest, u.topics == nil)
		if phrase == nil {
			for _, w := range rest {
				switch {
				case outside()[w]:
					beside, far = beside+3, true
				case recorded[w]:
					u.recorded = append(u.recorded, w)
				case !interrogative()[w] && !isNumber(w):
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
		u.weak = strong(phrase) == 0
	}
	beside += len(u.passed)
	if u.topics == nil {
		return u, u.recorded != nil && beside == 0
	}
	if u.weak {
		known = 0
	}
	if !far {
		known += slack
	}
	return u, beside <= known && !slices.ContainsFunc(u.passed, likeHazard)
}

// longest returns the topic with the longest phrase that the words hold: that
// with the most words beside interrogatives.
// Phrases of interrogatives alone count where nothing else is found.
func longest(words []string, alone bool) (topic, []string) {
	var best spoken
	for _, w := range words {
		for _, s := range spokenBy()[w] {
			if (alone || s.strong > 0) && s.before(best) && holds(words, s.phrase) {
				best = s
			}
		}
	}
	return best.topic, best.phrase
}

// spoken is a phrase of a topic.
type spoken struct {
	topic
	phrase []string
	strong int // words that are more than interrogatives
	nth    int // of all phrases
}

// before reports whether a phrase chooses its topic before another.
func (s spoken) before(o spoken) bool {
	return cmp.Or(cmp.Compare(o.strong, s.strong), cmp.Compare(len(o.phrase), len(s.phrase)), cmp.Compare(s.nth, o.nth)) < 0
}

// spokenBy are the phrases by the first of their words.
var spokenBy = sync.OnceValue(func() map[string][]spoken {
	out := map[string][]spoken{}
	nth := 0
	for _, t := range topics() {
		for _, p := range t.phrases {
			nth++
			out[p[0]] = append(out[p[0]], spoken{t, p, strong(p), nth})
		}
	}
	return out
})

// strong counts the words of a phrase that are more than interrogatives.
func strong(phrase []string) (n int) {
	for _, w := range phrase {
		if !interrogative()[w] {
			n++
		}
	}
	return n
}

// isNumber reports what names a panel, an entry or an amount.
func isNumber(w string) bool { return numbered().MatchString(w) }

var numbered = pattern.Of(`^\pL{0,3}[0-9]+$`)

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
		return known[w] || recorded[w] || interrogative()[w]
	})
	if len(out) == 0 {
		return words
	}
	return out
}

// nearest names the two topics that a word of a question asks for by itself, or
// else a word spelt most like it; where none is like, what is there and what is not recorded.
func nearest(words []string) [2]record.Code {
	type near struct {
		topic record.Code
		away  int // slips in a hundred letters
	}
	all := []near{{"build-up", 34}, {"what-is-not-recorded", 34}}
	for _, t := range topics() {
		x := near{t.code, 100}
		for _, p := range t.phrases {
			for _, w := range words {
				if slips := record.Slips(meant(w), p[0]); len(p) == 1 && !interrogative()[p[0]] && slips < 3 {
					x.away = min(x.away, 100*slips/len(p[0]))
				}
			}
		}
		all = append(all, x)
	}
	slices.SortStableFunc(all, func(a, b near) int { return cmp.Compare(a.away, b.away) })
	second := slices.IndexFunc(all, func(x near) bool { return x.topic != all[0].topic })
	return [2]record.Code{all[0].topic, all[second].topic}
}
