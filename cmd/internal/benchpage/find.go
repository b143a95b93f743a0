package benchpage

import (
	"net/http"
	"strings"

	"backleaf/record"
	"backleaf/record/studio/questions"
)

// find finds panels, or answers a question about the one that is named first.
func (d *desk) find() error {
	q := strings.TrimSpace(d.r.FormValue("q"))
	var body struct {
		Asked   string
		Panels  []panelLine
		Number  record.Number
		First   string // the panel was discarded, or stolen
		Answers []questions.Answer
		Why     *refusal
		Nothing bool
	}
	body.Asked = q
	if q == "" {
		return d.show("find", d.say("page-find"), body)
	}
	name, rest, _ := strings.Cut(q, " ")
	if n, err := d.roll().Find(name); err == nil {
		if rest == "" {
			http.Redirect(d.w, d.r, "/panel/"+string(n), http.StatusSeeOther)
			return nil
		}
		reply, err := questions.Ask(d.ctx, d.c, d.Studio, string(n), rest)
		body.Number, body.First, body.Answers = n, d.c.Capital(reply.First), reply.Answers
		if err != nil {
			body.Why = d.refusal(err)
		}
		return d.show("find", d.say("page-asked", record.With("panel", n)), body)
	}
	if ns, err := d.roll().Select([]string{q}, nil); err == nil {
		for _, n := range ns {
			body.Panels = append(body.Panels, d.line(d.shop.Panel(n)))
		}
		return d.show("find", d.say("page-find"), body)
	}
	search, err := questions.Filter{Words: q}.Read(d.now)
	if err != nil {
		return err
	}
	if _, err := search.Panels(d.ctx, d.Studio, func(r questions.Row) error {
		body.Panels = append(body.Panels, d.line(d.shop.Panel(r.Number)))
		return nil
	}); err != nil {
		return err
	}
	body.Panels = body.Panels[:min(len(body.Panels), mostFound)]
	body.Nothing = len(body.Panels) == 0
	return d.show("find", d.say("page-find"), body)
}

// mostFound bounds a page of panels.
const mostFound = 200

// panels lists the panels that are here.
func (d *desk) panels() error {
	var body struct {
		Panels  []panelLine
		Batches []batchLine
		More    bool
	}
	body.Batches = d.batches()
	for i := len(d.shop.Panels) - 1; i >= 0 && !body.More; i-- {
		if here(d.shop.Panels[i]) {
			body.Panels = append(body.Panels, d.line(d.shop.Panels[i]))
		}
		body.More = len(body.Panels) >= mostFound
	}
	return d.show("panels", d.say("page-panels"), body)
}
