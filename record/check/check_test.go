package check_test

import (
	"slices"
	"strings"
	"testing"

	"backleaf/record/check"
	"backleaf/record/tell"
)

// Every history says what it lists, and nothing that it does not: a rule that
// is not listed neither holds nor falls short.
func TestHistories(t *testing.T) {
	all := histories(t)
	if len(all) < 60 {
		t.Errorf("%d histories, at least 60 are wanted", len(all))
	}
	for _, h := range all {
		t.Run(h.name, func(t *testing.T) {
			found := judge(t, h.entries, h.now)
			for _, r := range check.Rules {
				f, want := found[r.Name], h.want[r.Name]
				silent := f.Outcome == check.NotRecorded || f.Outcome == check.NotApplicable
				if f.Outcome != want && !(want == "" && silent) {
					t.Errorf("%s %s, want %q: %s", r.Name, f.Outcome, want, codes(f))
				}
			}
		})
	}
}

// never are the outcomes that a rule cannot have, by its nature.
var never = map[string][]check.Outcome{
	"gaps": {check.FallsShort, check.NotApplicable}, // a gap is what is not recorded
}

// Each rule has a history for each outcome it can have, and no history gives
// an outcome that it cannot have.
func TestEveryOutcome(t *testing.T) {
	seen := map[string]map[check.Outcome]string{}
	for _, r := range check.Rules {
		seen[r.Name] = map[check.Outcome]string{}
	}
	for _, h := range histories(t) {
		for rule, o := range h.want {
			seen[rule][o] = h.name
		}
		for rule, f := range judge(t, h.entries, h.now) {
			if slices.Contains(never[rule], f.Outcome) {
				t.Errorf("%s: %s %s, which it cannot", h.name, rule, f.Outcome)
			}
		}
	}
	for _, r := range check.Rules {
		for _, o := range outcomes {
			if seen[r.Name][o] == "" && !slices.Contains(never[r.Name], o) {
				t.Errorf("no history in which %s %s", r.Name, o)
			}
		}
	}
}

// Each rule can be explained.
func TestRulesExplained(t *testing.T) {
	names := map[string]bool{}
	for _, r := range check.Rules {
		if names[r.Name] {
			t.Errorf("%s stands twice", r.Name)
		}
		names[r.Name] = true
		if strings.Trim(r.Name, "abcdefghijklmnopqrstuvwxyz-") != "" {
			t.Errorf("%s is not a name in plain words", r.Name)
		}
		for what, s := range map[string]string{"source": r.Source, "title": string(tell.English().Rule(r.Name).Title), "reason": string(tell.English().Rule(r.Name).Reason), "how it is judged": string(tell.English().Rule(r.Name).Judged), "what to watch": string(tell.English().Rule(r.Name).Watch)} {
			if strings.TrimSpace(s) == "" {
				t.Errorf("%s: no %s", r.Name, what)
			}
		}
		if !slices.Contains([]check.Severity{check.Warning, check.Advice, check.Information}, r.Severity) {
			t.Errorf("%s: severity %q", r.Name, r.Severity)
		}
	}
}

// Findings come worst first, each with its words; a finding that falls short
// says what can still be done.
func TestFindingsInOrder(t *testing.T) {
	rank := map[check.Outcome]int{check.FallsShort: 0, check.NotRecorded: 1, check.Holds: 2, check.NotApplicable: 3}
	weight := map[check.Severity]int{check.Warning: 0, check.Advice: 1, check.Information: 2}
	for _, h := range histories(t) {
		w, p := fold(t, h.entries)
		fs := check.Panel(w, p, h.now)
		if len(fs) != len(check.Rules) {
			t.Fatalf("%d findings of %d rules", len(fs), len(check.Rules))
		}
		for i, f := range fs {
			if len(f.Said) == 0 {
				t.Errorf("%s: %s says nothing", h.name, f.Rule)
			}
			if f.Outcome == check.FallsShort && f.Remedy.Code == "" {
				t.Errorf("%s: %s falls short without a remedy", h.name, f.Rule)
			}
			for _, e := range f.Entries {
				if e < 1 || e > int64(len(h.entries)) {
					t.Errorf("%s: %s rests on entry %d, which is not there", h.name, f.Rule, e)
				}
			}
			if i > 0 && (rank[fs[i-1].Outcome] > rank[f.Outcome] || rank[fs[i-1].Outcome] == rank[f.Outcome] && f.Outcome != check.NotRecorded && weight[fs[i-1].Severity] > weight[f.Severity]) {
				t.Errorf("%s: %s stands before %s", h.name, fs[i-1].Rule, f.Rule)
			}
		}
	}
}
