package check_test

import (
	"slices"
	"strings"
	"testing"

	"backleaf/record/check"
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
					t.Errorf("%s %s, want %q: %s", r.Name, f.Outcome, want, f.Text)
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
		for what, s := range map[string]string{"title": r.Title, "reason": r.Reason, "source": r.Source, "how it is judged": r.Judged, "remedy": r.Remedy} {
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
			if f.Text == "" {
				t.Errorf("%s: %s says nothing", h.name, f.Rule)
			}
			if f.Outcome == check.FallsShort && f.Remedy == "" {
				t.Errorf("%s: %s falls short without a remedy", h.name, f.Rule)
			}
			for _, e := range f.Entries {
				if e < 1 || e > int64(len(h.entries)) {
					t.Errorf("%s: %s rests on entry %d, which is not there", h.name, f.Rule, e)
				}
			}
			if i > 0 && (rank[fs[i-1].Outcome] > rank[f.Outcome] || rank[fs[i-1].Outcome] == rank[f.Outcome] && weight[fs[i-1].Severity] > weight[f.Severity]) {
				t.Errorf("%s: %s stands before %s", h.name, fs[i-1].Rule, f.Rule)
			}
		}
	}
}

// The forgotten coat on the back of one of three panels is found, with the bow
// that it could cause and what moisture could add; the others hold. Figures:
// Stoney's formula for films of 0.1 to 1 MPa and cloth of 100 to 300 N/m on
// 3.2 mm hardboard of 4.5 GPa over 600 mm (0.025 to 0.25 mm, 0.41 to 1.23 mm);
// moisture 1e-3 / 3.2 mm * L²/8 = 14 mm.
func TestForgottenBack(t *testing.T) {
	w, p := fold(t, lines(t, `material - key=hard name=hardboard uses=board board={"kind":"hardboard"}
material - key=sealer name=sealer uses=sealer binder=acrylic-dispersion
cut - batch=b size=60_x_40_cm_x_3.2_mm board=hard panels=KB26-0140-D,KB26-0141-W,KB26-0142-C
cloth - faces=front mix=sealer dry_film=60_µm panels=KB26-0140-D,KB26-0141-W,KB26-0142-C
coat - faces=back purpose=sealer mix=sealer dry_film=60_µm panels=KB26-0141-W,KB26-0142-C`))
	for _, q := range w.Panels {
		for _, f := range check.Panel(w, q, moment) {
			if f.Rule != "answered-coats" {
				continue
			}
			if q != p {
				if f.Outcome != check.Holds {
					t.Errorf("%s: %s", q.Number, f.Text)
				}
				continue
			}
			if f.Outcome != check.FallsShort || f.Severity != check.Advice ||
				!strings.Contains(f.Text, "the back lacks 1 coat") || !strings.Contains(f.Text, "a bow of 0.4 to 1.5 mm over 600 mm, up to 0.25 % of the span, hollow at the front (estimate, upper bound") ||
				!strings.Contains(f.Text, "up to 14 mm more") {
				t.Errorf("%s %s: %s", f.Outcome, f.Severity, f.Text)
			}
		}
	}
}

// A pull that could bow the board over 0.5 % of its span is a warning: 3 mm of
// three plies across the grain give way to a cloth.
func TestStrongBowWarns(t *testing.T) {
	w, p := fold(t, lines(t, `material - key=ply name=plywood uses=board board={"kind":"plywood","plies":3}
material - key=sealer name=sealer uses=sealer binder=acrylic-dispersion
cut - batch=b size=60_x_40_cm_x_3_mm board=ply grain=width
cloth - faces=front mix=sealer dry_film=60_µm`))
	for _, f := range check.Panel(w, p, moment) {
		if (f.Rule == "answered-coats" || f.Rule == "cloth-tension") && (f.Outcome != check.FallsShort || f.Severity != check.Warning) {
			t.Errorf("%s %s %s: %s", f.Rule, f.Outcome, f.Severity, f.Text)
		}
	}
}
