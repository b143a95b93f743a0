package ask

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"sync"

	"backleaf/record"
)

// shortest is the length from which a word may be misspelt.
const shortest = 5

// slips are words that people who write by ear, or come from another language,
// spell so often so that no distance need be measured (from memory). Hazards are
// not among them.
var slips = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for _, pair := range strings.Split(`wich which, whitch which, whith with, wiht with, wen when, wher where, wy why, whos who, wat what, wot what, hwo who, hwat what,
		thik thick, thikness thickness, thicknes thickness, hevy heavy, hight height, widht width, lenght length, weigth weight, wieght weight, bord board, fram frame, redy ready,
		foto photo, fotograf photograph, glew glue, gluw glue, colur colour, collor colour, rong wrong, stil still, hous house, peice piece, bak back, bakside back, backside back, edje edge, egde edge, syde side,
		gramm gram, gramme gram, centimeter centimetre, writed written, writen written, wrote written, bended bent, selled sold, selling sold, sell sold, payed paid, steeled stolen, stealed stolen, lended loan,
		glewed glued, sticked stuck, sticking stuck, teared torn, breaked broken, hanged hung, drawed drawn, holded held, keeped kept, builded built, choosed chosen, tooked taken, taked taken, goed gone, cutted cut,
		vernish varnish, varnisch varnish, lak lacquer, holz wood, leim glue, rahmen frame, titel title, kunstler artist, cartel label, toile canvas, vernis varnish, bois wood, cadre frame`, ",") {
		w := strings.Fields(pair)
		out[stem(w[0])] = stem(w[1])
	}
	return out
})

// vocabulary are all words that a topic knows, with those of the table of
// empty words and of what lies outside, and the topics that know each.
var vocabulary = sync.OnceValues(func() (words map[string]bool, topicsOf map[string]string) {
	words, topicsOf = map[string]bool{}, map[string]string{}
	for _, t := range topics() {
		for _, p := range slices.Concat(t.phrases, t.about) {
			for _, w := range p {
				words[w] = true
				if !strings.HasSuffix(topicsOf[w], " "+string(t.code)) {
					topicsOf[w] += " " + string(t.code)
				}
			}
		}
	}
	for _, s := range []map[string]bool{empty(), interrogative(), outside()} {
		maps.Copy(words, s)
	}
	for w, meant := range same() {
		words[w], topicsOf[w] = true, topicsOf[meant]
	}
	return words, topicsOf
})

// spelt returns the one word of topics or of the record that a misspelt word, of so many letters as typed, is nearest to: one slip of
// the finger, in long words two, and none in its first letter. Of words that are as near, one that a topic knows
// counts before one that only fills, then that which begins alike for longer; where topics are still as near, it is
// left as it is.
func spelt(w string, typed int, recorded map[string]bool) string {
	known, topicsOf := vocabulary()
	if meant, ok := slips()[w]; ok && !recorded[w] && topicsOf[w] == "" {
		return meant
	}
	if known[w] || recorded[w] {
		return w
	}
	if typed < shortest {
		return cmp.Or(baseOf(w), w)
	}
	if likeHazard(w) {
		return w
	}
	allowed := slipsIn(w)
	near := map[int][]string{}
	for _, words := range []map[string]bool{known, recorded} {
		for x := range words {
			d := record.Slips(w, x)
			if d > allowed || slices.Contains(near[d], x) {
				continue
			}
			if len(x) >= shortest && !outside()[x] && x[0] == w[0] {
				near[d] = append(near[d], x)
			}
		}
	}
	for d := 1; d <= allowed; d++ {
		if near[d] == nil {
			continue
		}
		slices.SortFunc(near[d], func(a, b string) int {
			return cmp.Or(cmp.Compare(min(1, len(topicsOf[b])), min(1, len(topicsOf[a]))), cmp.Compare(begun(w, b), begun(w, a)), cmp.Compare(a, b))
		})
		first := near[d][0]
		if slices.ContainsFunc(near[d][1:], func(x string) bool {
			return topicsOf[x] != "" && topicsOf[x] != topicsOf[first] && begun(w, x) == begun(w, first)
		}) {
			break
		}
		return first
	}
	return cmp.Or(baseOf(w), w)
}

// slipsIn is how often a word may be misspelt.
func slipsIn(w string) int {
	if len(w) >= 8 {
		return 2
	}
	return 1
}

// likeHazard reports a word that may be a misspelt word of what harms.
func likeHazard(w string) bool {
	if len(w) < shortest || hazard()[w] {
		return false
	}
	for x := range hazard() {
		if record.Slips(w, x) <= slipsIn(w) {
			return true
		}
	}
	return false
}

// begun counts the letters with which two words both begin.
func begun(a, b string) (n int) {
	for n < min(len(a), len(b)) && a[n] == b[n] {
		n++
	}
	return n
}

// baseOf is the word of a topic of which a word is another form: "measuring",
// "glueing", "repaired"; empty: there is none.
func baseOf(w string) string {
	_, topicsOf := vocabulary()
	for _, suffix := range []string{"ing", "ed", "er", "ment", "ly", "ation", "able", "y"} {
		stem, ok := strings.CutSuffix(w, suffix)
		if !ok || len(stem) < 3 {
			continue
		}
		for _, base := range []string{stem, stem + "e", stem[:len(stem)-1]} {
			if len(base) > 3 && topicsOf[base] != "" && !hazard()[base] {
				return base
			}
		}
	}
	return ""
}

// apart splits two words that were written as one, and joins one that was
// written as two: "policereport", "ply wood".
func apart(words []string, recorded map[string]bool) (out []string) {
	all, topicsOf := vocabulary()
	known := func(w string) bool { return all[w] || recorded[w] }
	for i, w := range words {
		if i+1 < len(words) && topicsOf[w+words[i+1]] != "" && !(known(w) && known(words[i+1])) {
			out = append(out, w+words[i+1])
		}
		if len(w) < 6 || known(w) || known(stem(w)) || spelt(stem(w), len(w), recorded) != stem(w) {
			out = append(out, w)
			continue
		}
		at := 0
		for n := 2; n <= len(w)-2; n++ {
			if a, b := stem(w[:n]), stem(w[n:]); known(a) && known(b) && (len(a) > 3 && topicsOf[a] != "" || len(b) > 3 && topicsOf[b] != "") && !hazard()[a] && !hazard()[b] {
				at = n
			}
		}
		if at > 0 {
			out = append(out, w[:at], w[at:])
		} else {
			out = append(out, w)
		}
	}
	return out
}
