package benchpage

import (
	"net/url"
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

// step is what is due, as a button.
type step struct {
	State, StateWords string
	What, Window      string
	Batch             string
	Panels            []record.Number
	Do, Brief         string // what its button says, and the one of another step
	Counts            int64  // until or from when, in milliseconds since 1970
	Or                []step // what else is due on these panels

	link string // to the form, but for the panels; empty: nothing is to be written
}

// tasks are the acts by which what is due is done.
var tasks = map[check.Task]string{
	check.TaskSeal: "coat", check.TaskLay: "cloth", check.TaskPress: "coat", check.TaskTrim: "trim", check.TaskAnswer: "coat", check.TaskSand: "sand",
	check.TaskPrime: "coat", check.TaskPaint: "paint", check.TaskVarnish: "varnish", check.TaskLabel: "label",
}

// steps are the next steps of some panels, or of all.
func (d *desk) steps(ps []*record.Panel) (out []step) {
	due, _ := questions.Due(d.c, d.shop, ps, d.now)
	for s := range due {
		x := step{State: string(s.State), StateWords: d.c.State(s.State), What: d.c.Capital(s.Text), Batch: string(s.Batch), Panels: s.Panels,
			Window: d.c.Window(s.From, s.Safe, s.Until), Counts: milli(s.Until)}
		if s.State == check.Later {
			x.Counts = milli(s.From)
		}
		name := tasks[s.Task]
		task, face := string(s.Task), s.Said.Value("face").Text()
		if s.Task == check.TaskLay && s.Said.Code == "due-ground" { // no cloth is meant
			name, task = "coat", string(check.TaskPrime)
		}
		q := url.Values{"batch": {string(s.Batch)}, "task": {task}}
		if face != "" {
			q.Set("face", face)
		}
		if s.Entry > 0 {
			q.Set("of", itoa(s.Entry))
		}
		again := strings.HasSuffix(s.Said.Code, "-again") // or paint in acrylic
		x.Do, x.Brief = d.say("act-"+name), x.What
		if again {
			x.Brief = x.Do
		}
		if !d.ReadOnly {
			x.link = "/act/" + name + "?" + q.Encode()
		}
		out = joined(out, x)
		if again && !d.ReadOnly {
			x.Brief, x.link = d.say("page-paint-acrylic"), "/act/paint?"+url.Values{"batch": {string(s.Batch)}, "task": {string(check.TaskPaint)}, "medium": {"acrylic"}}.Encode()
			out = joined(out, x)
		}
	}
	return out
}

// joined adds a step: by itself, or, where earlier ones are for each of its
// panels, to those, each with its own panels.
func joined(all []step, x step) []step {
	shared := make([][]record.Number, len(all))
	for _, n := range x.Panels {
		there := false
		for i, o := range all {
			if o.now() == x.now() && slices.Contains(o.Panels, n) {
				shared[i], there = append(shared[i], n), true
			}
		}
		if !there {
			return append(all, x)
		}
	}
	for i, both := range shared {
		if both != nil {
			x.Panels = both
			all[i].Or = append(all[i].Or, x)
		}
	}
	return all
}

// Link leads to the form.
func (s step) Link() string {
	if s.link == "" {
		return ""
	}
	return s.link + "&panel=" + url.QueryEscape(terms(s.Panels))
}

// now reports that a step can be done now.
func (s step) now() bool { return s.State == string(check.Overdue) || s.State == string(check.Now) }

func milli(t time.Time) int64 {
	if t.IsZero() {
		return 0
	}
	return t.UnixMilli()
}

// today shows what is due now, and what comes later.
func (d *desk) today() error {
	steps := d.steps(d.shop.Panels)
	var body struct {
		Now, Later []step
		AskAir     bool
		Air        string
		Batches    []batchLine
		Empty      bool
	}
	for _, s := range steps {
		if s.now() {
			body.Now = append(body.Now, s)
		} else {
			body.Later = append(body.Later, s)
		}
	}
	body.AskAir = !d.ReadOnly && questions.AirWanted(d.shop, d.now)
	if n := len(d.shop.Climate); n > 0 {
		last := d.shop.Climate[n-1]
		body.Air = d.c.Capital(d.c.Event(record.Event{Seq: last.Seq, At: last.At, Body: last.Body})) + ", " + d.c.Fill("{at:near}", record.With("at", last.At))
	}
	body.Batches = d.batches()
	body.Empty = len(d.shop.Panels) == 0
	return d.show("today", d.say("page-today"), body)
}

// batchLine is a batch in a list.
type batchLine struct {
	Name   string
	Panels int
	Stages string
}

// batches lists those of which a panel is still here, the latest first.
func (d *desk) batches() (out []batchLine) {
	at := map[record.Key]int{}
	stages := map[record.Key]map[record.Stage]bool{}
	for _, p := range slices.Backward(d.shop.Panels) {
		if !here(p) {
			continue
		}
		i, ok := at[p.Batch]
		if !ok {
			i = len(out)
			at[p.Batch], stages[p.Batch] = i, map[record.Stage]bool{}
			out = append(out, batchLine{Name: string(p.Batch)})
		}
		out[i].Panels++
		stages[p.Batch][p.Stage()] = true
	}
	out = out[:min(len(out), mostBatches)]
	for i := range out {
		var words []string
		for _, s := range record.Stages {
			if stages[record.Key(out[i].Name)][s] {
				words = append(words, d.c.Word(s))
			}
		}
		out[i].Stages = d.c.Series(words)
	}
	return out
}

// mostBatches bounds the list of batches; the others are found.
const mostBatches = 12

// here reports that a panel is in the studio.
func here(p *record.Panel) bool {
	_, away := p.Away()
	_, gone := p.Discarded()
	return !away && !gone
}

// batch shows the panels worked together: what is next, what else can be done,
// what was done.
func (d *desk) batch() error {
	name := record.Key(d.r.PathValue("batch"))
	ps := d.shop.Batch(name)
	if len(ps) == 0 {
		return noPage("there is no batch %q", name)
	}
	var body struct {
		Name   string
		Steps  []step
		Panels []panelLine
		Acts   []actGroup
		Done   []done
	}
	body.Name = string(name)
	var in []record.Number
	var events []record.Event
	seen := map[int64]bool{}
	for _, p := range ps {
		body.Panels = append(body.Panels, d.line(p))
		if here(p) {
			in = append(in, p.Number)
		}
		for _, e := range p.Events {
			if !seen[e.Seq] {
				seen[e.Seq] = true
				events = append(events, e)
			}
		}
	}
	slices.SortStableFunc(events, func(a, b record.Event) int { return int(b.Seq - a.Seq) })
	body.Done = d.dones(d.c.Event, events)
	body.Done = body.Done[:min(len(body.Done), mostDone)]
	body.Steps = d.steps(ps)
	if !d.ReadOnly && len(in) > 0 {
		body.Acts = d.groups(url.Values{"panel": {terms(in)}, "batch": {string(name)}}, true)
	}
	return d.show("batch", d.say("page-batch", record.With("batch", name)), body)
}

// mostDone bounds what was done on the page of a batch; the rest stands with
// each panel.
const mostDone = 20

type actLink struct{ Name, Link, Words string }

// actGroup is what is done at one time of the work.
type actGroup struct {
	Name string
	Acts []actLink
}

// groups are the acts on some panels; those that are away are only looked at.
func (d *desk) groups(q url.Values, here bool) (out []actGroup) {
	for _, g := range []struct {
		name string
		here bool // only done in the studio
		acts []string
	}{
		{"prepare", true, []string{"coat", "cloth", "trim", "warm", "sand", "bare", "no-cloth"}},
		{"paint", true, []string{"paint", "varnish"}},
		{"look", false, []string{"inspect", "note"}},
		{"leave", false, []string{"label", "handover"}},
		{"discard", true, []string{"discard"}},
	} {
		if here || !g.here {
			out = append(out, actGroup{d.say("page-group-" + g.name), d.links(q, g.acts...)})
		}
	}
	return out
}

func (d *desk) links(q url.Values, names ...string) (out []actLink) {
	for _, n := range names {
		out = append(out, actLink{n, "/act/" + n + "?" + q.Encode(), d.say("act-" + n)})
	}
	return out
}

// panelLine is a panel in a list.
type panelLine struct {
	Number             record.Number
	Title, Size, State string
	Here               bool
}

func (d *desk) line(p *record.Panel) panelLine {
	l := panelLine{Number: p.Number, Title: p.Description().Title, Size: d.c.Fill("{size}", record.With("size", p.Size())), State: d.c.Word(p.Stage()), Here: here(p)}
	if !l.Here {
		l.State = tell.Say(d.c, tell.Whereabouts(p))
	}
	return l
}

// done is what happened, in a list.
type done struct {
	Entry       int64
	What, Where string
	When        string
	Panel       record.Number // on whose page it stands
}

// dones lists events in the words of what, those that are alike but for their panels as one.
func (d *desk) dones(what func(record.Event) string, events []record.Event) (out []done) {
	var panels []record.Number
	for _, e := range events {
		x := done{Entry: e.Seq, What: d.c.Capital(what(e)), When: d.c.Fill("{at:near}", record.With("at", e.At))}
		if n := len(out) - 1; n >= 0 && out[n].What == x.What && out[n].When == x.When {
			panels = append(panels, e.Panels...)
			slices.Sort(panels)
			out[n].Where = d.c.Fill("{panels}", record.With("panels", slices.Compact(panels)))
			continue
		}
		if panels = slices.Clone(e.Panels); len(panels) > 0 {
			x.Where = d.c.Fill("{panels}", record.With("panels", panels))
		}
		out = append(out, x)
	}
	return out
}
