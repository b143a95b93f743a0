package typed

import (
	"fmt"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/pattern"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
)

// Meant reads by which entries is described what an act means: their numbers,
// or "unknown". Where that stays open, it is asked.
func (r *Reader) Meant(field string, typed []string) studio.Meant {
	m := studio.Meant{Asks: true}
	for _, t := range typed {
		if strings.EqualFold(t, record.Unknown) {
			m.Unknown = true
			continue
		}
		n, err := Entry(t)
		if err != nil {
			r.Fail(refuse.Input(field, "no-entry-number", "%w", err))
		}
		m.As = append(m.As, n)
	}
	return m
}

// panelLike is what looks like the number of a panel, or a part of it.
var panelLike = pattern.Of(`(?i)^([a-z]{1,4}[0-9]{2,4}-)?[0-9]{4,}(-[0-9a-z])?$`)

// Entry reads the number of an entry: "27" or "E27".
func Entry(s string) (int64, error) {
	n, err := strconv.ParseInt(strings.TrimPrefix(strings.ToUpper(s), "E"), 10, 64)
	if err != nil || n < 1 || s[0] == '0' { // "0027" is a panel
		panel := ""
		if panelLike().MatchString(s) {
			panel = s
		}
		return 0, refuse.Unclearly("no-entry-number", "%q is not the number of an entry", s).With(record.With("entry", record.EntryRef(max(n, 0))), record.With("panel", panel))
	}
	return n, nil
}

var entryName = pattern.Of(`^[Ee][0-9]+$`)

// AfterEntry takes away the entry that may be named before panels: "E12
// 0015-0018". A bare number before panels with all their figures could be either.
func AfterEntry(words []string) (seq int64, panels []string, err error) {
	first, rest := words[0], words[1:]
	switch n, bad := strconv.Atoi(first); {
	case entryName().MatchString(first):
		if seq, err = Entry(first); err == nil && len(rest) == 0 {
			err = refuse.Unclearly("after-which-entry", "on which panels was it done?")
		}
		return seq, rest, err
	case bad == nil && first[0] != '0' && len(rest) > 0 && strings.HasPrefix(rest[0], "0"):
		return 0, nil, refuse.Unclearly("entry-or-panel", "is %s the entry or a panel?", first).With(record.With("entry", record.EntryRef(n)), record.With("panel", fmt.Sprintf("%04d", n)))
	}
	return 0, words, nil
}
