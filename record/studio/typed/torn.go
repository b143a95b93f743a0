package typed

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/studio/refuse"
)

// Torn refuses a word among those that name panels which, with the word typed
// before it, also names a lot, a material or a batch whose hyphen was
// forgotten, as in "--with sealer 1": both could be meant.
func (r *Reader) Torn(words, panels []string) {
	if r.Shop == nil {
		return
	}
	keys := keysOf(r.Shop)
	for k := range r.Roll.Batches {
		keys = append(keys, string(k))
	}
	for i := 1; i < len(words); i++ {
		one, word := words[i-1], words[i]
		if !slices.Contains(panels, word) || slices.Contains(panels, one) && !strings.HasPrefix(one, "batch:") {
			continue
		}
		if _, value, given := strings.Cut(one, "="); given && strings.HasPrefix(one, "--") {
			one = value
		}
		one = one[strings.LastIndexAny(one, ":, ")+1:] // the last of a mix, or a batch
		for _, k := range keys {
			if whole := strings.ToLower(one + word); one != "" && strings.EqualFold(joined(k), joined(whole)) {
				e := refuse.Unclearly("torn-word", "is %q a panel, or part of %q?", word, one+" "+word)
				r.Fail(e.With(record.With("key", record.Key(k))))
			}
		}
	}
}

// joined is a key without what may be forgotten in it.
func joined(s string) string { return strings.NewReplacer("-", "", "_", "", ".", "").Replace(s) }
