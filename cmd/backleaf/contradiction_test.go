package main

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/certificate"
	"backleaf/certificate/dossier"
	"backleaf/label"
	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/ask"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

// talePanel is the one panel of a tale.
const talePanel = "KB26-0001-K"

func (s tale) fold(t *testing.T) (*record.Workshop, *record.Panel) {
	t.Helper()
	var es []record.Entry
	for line := range strings.SplitSeq(taleStudio+"\n"+s.history, "\n") {
		kind, fields, _ := strings.Cut(line, " ")
		if rest, of := strings.CutSuffix(fields, ",K"); of {
			fields = rest + `,"panels":["` + talePanel + `"]`
		}
		e, err := accept.Parse(fmt.Appendf(nil, `{"v":1,"seq":%d,"written":"2031-06-02T10:00:00Z","kind":%q,%s}`, len(es)+1, kind, fields))
		if err != nil {
			t.Fatalf("%s: %s: %v", s.name, line, err)
		}
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatalf("%s: %v", s.name, err)
	}
	return w, w.Panels[0]
}

var taleNow = time.Date(2031, 6, 3, 10, 0, 0, 0, time.UTC)

// answers are all that is said of a panel, each answer under its name.
func (s tale) answers(t *testing.T, papers bool) map[string]string {
	t.Helper()
	w, p := s.fold(t)
	out := map[string]string{}
	spoken := func(name string, say func(*app) error) {
		var b bytes.Buffer
		a := &app{out: &b, err: &b, env: func(string) string { return "" }, now: func() time.Time { return taleNow }}
		if err := say(a); err != nil && codeOf(err) != exitFinding {
			t.Fatalf("%s: %s: %v", s.name, name, err)
		}
		out[name] = b.String()
	}
	spoken("show", func(a *app) error { return a.story(w, p) })
	for name, brief := range map[string]bool{"check": true, "check --all": false} {
		spoken(name, func(a *app) error {
			f := &questions.Groups{Brief: brief}
			f.Add(questions.Checking{Words: tell.English(), Now: taleNow, Brief: brief}.Panel(w, p))
			a.sayGroups(f)
			return nil
		})
	}
	for _, topic := range ask.Topics() {
		r := must(ask.Ask(tell.English(), w, p, taleNow, tell.English().Question(topic)))
		for _, x := range r.Answers {
			out["ask "+string(x.Topic)] = strings.Join(x.Lines, "\n")
		}
	}
	out["dossier"] = must(dossier.New(tell.English(), w, p, dossier.Book{}).Text())
	if papers {
		in := must(label.Say(tell.English(), w, p, label.StageAuto, ""))
		var back bytes.Buffer
		must(label.Draw(&back, []label.Input{in}, label.Options{Catalogue: tell.English(), Created: taleNow, Size: label.Large}))
		out["label"] = pdfText(t, back.Bytes())
		out["certificate"] = pdfText(t, must(certificate.Draw(certificate.Input{Workshop: w, Panel: p, Issued: taleNow, Paper: "a4"})).PDF)
	}
	return out
}

// parts are the answers, the dossier by its sections too.
func parts(answers map[string]string) map[string]string {
	out := map[string]string{}
	for name, text := range answers {
		text = strings.Join(strings.Fields(plainly(text)), " ")
		out[name] = text
	}
	section, ruled := "", regexp.MustCompile(`^-+$`)
	lines := strings.Split(plainly(answers["dossier"]), "\n")
	for i, line := range lines {
		if i+1 < len(lines) && ruled.MatchString(lines[i+1]) {
			section = "dossier " + strings.Join(strings.Fields(line), " ")
		} else if section != "" {
			out[section] += " " + strings.Join(strings.Fields(line), " ")
		}
	}
	return out
}

// A saying is a phrase that was met in an answer.
type saying struct {
	phrase
	answer, met string
}

// sayings are what answers say of a statement.
func (s statement) sayings(answers map[string]string) []saying {
	var out []saying
	for _, p := range s.phrases {
		says, in := regexp.MustCompile(p.says), regexp.MustCompile(p.in)
		for name, text := range answers {
			if at := says.FindStringIndex(text); at != nil && in.MatchString(name) {
				out = append(out, saying{p, name, text[max(0, at[0]-40):min(len(text), at[1]+40)]})
			}
		}
	}
	return out
}

// No answer denies what another states, and each is true of the history: what
// all of them say of a thing fits the one world that the tale names. Where a
// thing is due, an answer may not keep silent.
func TestContradictions(t *testing.T) {
	met, read := map[string]bool{}, 0
	ofAnyFace := strings.NewReplacer("front|back|edges", "front|back|edges", "back", "front", "edges", "front")
	for i, s := range tales {
		if !toolcheck.Thorough() && i%8 != 2 {
			continue // all of them, and the papers, where there is time
		}
		t.Run(s.name, func(t *testing.T) {
			read++
			answers := parts(s.answers(t, toolcheck.Thorough()))
			for _, st := range statements {
				world := st.usual
				for pair := range strings.FieldsSeq(s.truth) {
					if name, is, _ := strings.Cut(pair, "="); name == st.name {
						world = is
					}
				}
				said := st.sayings(answers)
				for _, x := range said {
					if met[ofAnyFace.Replace(x.says)] = true; !slices.Contains(strings.Fields(x.worlds), world) {
						t.Errorf("%s is %s, and %s says “%s”", st.name, world, x.answer, x.met)
					}
				}
				for _, d := range due {
					if d.statement != st.name || !slices.Contains(strings.Fields(d.worlds), world) {
						continue
					}
					for name := range strings.SplitSeq(d.answers, ", ") {
						if _, asked := answers[name]; asked && !slices.ContainsFunc(said, func(x saying) bool { return x.answer == name }) {
							t.Errorf("%s is %s, and %s keeps silent: %s", st.name, world, name, answers[name])
						}
					}
				}
			}
		})
	}
	for _, st := range statements {
		for _, p := range st.phrases {
			if read == len(tales) && !met[ofAnyFace.Replace(p.says)] && p.worlds != "may" { // some metals are never doubtful
				t.Errorf("%s: no answer says “%s”", st.name, p.says)
			}
		}
	}
}

// Every world that a tale names is one that a phrase knows, so that nothing is
// compared with nothing.
func TestStatements(t *testing.T) {
	for _, s := range tales {
		for pair := range strings.FieldsSeq(s.truth) {
			name, world, _ := strings.Cut(pair, "=")
			if world != "-" && !slices.ContainsFunc(statements, func(st statement) bool {
				return st.name == name && slices.ContainsFunc(st.phrases, func(p phrase) bool { return slices.Contains(strings.Fields(p.worlds), world) })
			}) {
				t.Errorf("%s: no phrase knows of %s", s.name, pair)
			}
		}
	}
}

func codeOf(err error) int {
	if f, ok := err.(*failure); ok {
		return f.code
	}
	return exitError
}
