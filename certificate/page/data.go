package page

import (
	"bytes"
	"html/template"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

// carried is the data that the script reads. The record is canonical JSON, so
// that its bytes can be made again from what was read. The paths of the proof
// share most of their hashes: each stands once, and a path is a list of places.
type carried struct {
	Record    jsontext.Value `json:"record"`
	Signature []byte         `json:"signature,omitempty"` // base64
	Key       string         `json:"key,omitempty"`       // the middle line of studio.pem
	Head      string         `json:"head,omitempty"`
	Nodes     []seal.Hash    `json:"nodes,omitempty"`
	Paths     [][]int        `json:"paths,omitempty"` // of each entry of the record
	Page      string         `json:"page,omitempty"`
	Demo      bool           `json:"demo,omitempty"`
}

func data(d deed.Deed, word []byte) (template.JS, error) {
	c := carried{Record: d.Record, Page: string(word), Demo: d.Demo}
	if len(d.Signature) > 0 {
		c.Signature, c.Key = d.Signature, strings.Split(string(d.Key.PEM()), "\n")[1]
		c.Head = string(d.Head)
		proof, err := seal.ParseProof(d.Proof)
		if err != nil {
			return "", err
		}
		place := map[seal.Hash]int{}
		for _, e := range proof.Entries {
			path := []int{}
			for _, h := range e.Path {
				at, ok := place[h]
				if !ok {
					at = len(c.Nodes)
					place[h], c.Nodes = at, append(c.Nodes, h)
				}
				path = append(path, at)
			}
			c.Paths = append(c.Paths, path)
		}
	}
	return inScript(c)
}

// inScript writes a value so that it can stand in an element of script: no
// text in it can end the element or begin a comment.
func inScript(v any) (template.JS, error) {
	b, err := json.Marshal(v, json.Deterministic(true))
	if err != nil {
		return "", err
	}
	return template.JS(bytes.ReplaceAll(b, []byte("<"), []byte(`\u003c`))), nil // a "<" stands only inside of texts
}

// structured says the work in schema.org terms (VisualArtwork).
func structured(t *tell.Teller, p *record.Panel, image string) (template.JS, error) {
	d := p.Description()
	artist := t.Painter()
	if artist == "" {
		artist = t.Maker()
	}
	work := map[string]any{"@context": "https://schema.org", "@type": "VisualArtwork", "name": t.Title(), "identifier": t.Number(),
		"creator": map[string]any{"@type": "Person", "name": artist}, "artMedium": t.MediumLine(), "artworkSurface": t.SupportLine()}
	if day := d.Made.String(); d.Made.Known() && plainDate(day) {
		work["dateCreated"] = day
	}
	if d.Subject != "" && d.Subject != record.Unknown {
		work["description"] = d.Subject
	}
	if image != "" {
		work["image"] = image
	}
	size := p.Size()
	for name, l := range map[string]record.Length{"height": size.Height, "width": size.Width, "depth": size.Depth} {
		if um, ok := l.Micrometers(); ok {
			work[name] = map[string]any{"@type": "QuantitativeValue", "value": float64(um) / 1000, "unitCode": "MMT"}
		}
	}
	return inScript(work)
}

// plainDate reports a date that ISO 8601 has without its extensions.
func plainDate(s string) bool {
	for i, r := range s {
		if want := "0000-00-00"; i >= len(want) || (want[i] == '-') != (r == '-') || r != '-' && (r < '0' || r > '9') {
			return false
		}
	}
	return len(s) == 4 || len(s) == 7 || len(s) == 10
}
