package ask_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/ask"
	"backleaf/record/tell"
)

// said are ways to put a question, and slips of the finger in it, that change
// nothing in what it asks for.
var said = []func(string) string{
	func(q string) string { return "Hello there, " + q + " Many thanks!" },
	func(q string) string { return "Could you please tell me " + q },
	func(q string) string { return "I'd like to know " + q },
	func(q string) string { return q + " (panel DM26-0007)" },
	func(q string) string { return "I inherited this picture from my aunt. " + q },
	strings.ToUpper,
	func(q string) string { ws := strings.Fields(q); slices.Reverse(ws); return strings.Join(ws, " ") },
	slip(func(b []byte) []byte { b[2], b[3] = b[3], b[2]; return b }),
	slip(func(b []byte) []byte { return slices.Delete(b, 4, 5) }),
	slip(func(b []byte) []byte { return slices.Insert(b, 3, b[3]) }),
}

// slip makes a slip in the first long word that tells of no harm.
func slip(in func([]byte) []byte) func(string) string {
	return func(q string) string {
		ws := strings.Fields(q)
		for i, w := range ws {
			if len(w) >= 7 && !strings.Contains("cadmium arsenic poisonous harmful dangerous formaldehyde hazard", w) {
				ws[i] = string(in([]byte(w)))
				break
			}
		}
		return strings.Join(ws, " ")
	}
}

// TestTopics puts the questions of testdata/topics.txt, as they are and each in
// one of the ways of said: of the first all but two of a hundred find their topic, of the
// others all but four of those that do. What is left is logged.
func TestTopics(t *testing.T) {
	w, p := panel(t, full)
	finds := func(topic, q string) bool {
		r, err := ask.Ask(tell.English(), w, p, now, q)
		found := err == nil && slices.ContainsFunc(r.Answers, func(a ask.Answer) bool { return a.Topic == record.Code(topic) })
		if !found {
			t.Logf("%s: %q: %v, %v", topic, q, r.Answers, err)
		}
		return found
	}
	text, err := os.ReadFile(filepath.Join("testdata", "topics.txt"))
	if err != nil {
		t.Fatal(err)
	}
	var all, right, still int
	for line := range strings.Lines(string(text)) {
		topic, questions, ok := strings.Cut(strings.TrimSpace(line), ": ")
		if !ok || strings.HasPrefix(line, "#") {
			continue
		}
		if !slices.Contains(ask.Topics(), record.Code(topic)) {
			t.Fatalf("no topic %q", topic)
		}
		for q := range strings.SplitSeq(questions, "; ") {
			all++
			if !finds(topic, q) {
				continue
			}
			right++
			if finds(topic, said[all%len(said)](q)) {
				still++
			}
		}
	}
	t.Logf("%d questions, %d right, of these %d put otherwise", all, right, still)
	if all < 500 || right*100 < all*98 || still*100 < right*96 {
		t.Errorf("of %d questions %d are right, and %d put otherwise", all, right, still)
	}
}
