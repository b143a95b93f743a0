package questions

import (
	"backleaf/record"
	"backleaf/record/tell"
)

// Story is all that is recorded of a panel.
type Story struct {
	Number      record.Number           `json:"number"`
	Batch       record.Key              `json:"batch"`
	Size        record.Size             `json:"size"`
	Stage       record.Stage            `json:"stage"`
	Where       record.Said             `json:"where"`
	Makers      []record.Maker          `json:"made_by"`
	Painters    []record.Maker          `json:"painted_by,omitzero"`
	Description record.Described        `json:"description"`
	Events      []Event                 `json:"events"`
	BuildUp     map[record.Face][]Layer `json:"build_up"`
	Gaps        []Gap                   `json:"gaps"`
	Corrections []record.Correction     `json:"corrections"`
}

// Event is one thing that happened to a panel.
type Event struct {
	Entry   int64       `json:"entry"`
	At      record.When `json:"at"`
	Written record.When `json:"written"`
	Kind    record.Kind `json:"kind"`
	Body    record.Body `json:"body"`
}

// Layer is one layer of a face, from the board outwards.
type Layer struct {
	Entry int64       `json:"entry"`
	Name  string      `json:"name"` // a purpose, or cloth, paint, varnish, coat
	At    record.When `json:"at,omitzero"`
}

// Gap is what a reader would need and nobody recorded.
type Gap struct {
	Topic   record.Topic   `json:"topic"`
	What    string         `json:"what"` // a code
	Values  []record.Value `json:"values,omitzero"`
	Entry   int64          `json:"entry,omitzero"`
	Unknown bool           `json:"recorded_as_unknown,omitzero"`
}

// StoryOf tells a panel.
func StoryOf(w *record.Workshop, p *record.Panel) Story {
	s := Story{Number: p.Number, Batch: p.Batch, Size: p.Size(), Stage: p.Stage(), Where: tell.Whereabouts(p), Makers: w.MadeBy(p), Painters: w.PaintedBy(p),
		Description: p.Description(), BuildUp: map[record.Face][]Layer{}, Gaps: []Gap{}, Corrections: p.Corrections}
	for _, e := range p.Events {
		s.Events = append(s.Events, Event{e.Seq, e.At, e.Written, e.Body.Kind(), e.Body})
	}
	for _, f := range record.Faces {
		for _, l := range p.BuildUp(f) {
			s.BuildUp[f] = append(s.BuildUp[f], Layer{l.Seq, l.Name(), l.At})
		}
	}
	for _, g := range w.Gaps(p) {
		s.Gaps = append(s.Gaps, Gap{g.Topic, g.Said.Code, g.Said.Values, g.Seq, g.Unknown})
	}
	return s
}
