package page

import (
	"bytes"
	"compress/gzip"
	"html/template"
	"math/bits"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

// carried is the data that the script reads. The record is packed, which takes a
// third of the room; it stands beside the page as it is. Of the proof there are
// the hashes that the entries of the record do not give themselves.
type carried struct {
	Record    []byte      `json:"record"`              // gzip (RFC 1952), in base64
	Signature []byte      `json:"signature,omitempty"` // base64
	Key       string      `json:"key,omitempty"`       // the middle line of studio.pem
	Head      string      `json:"head,omitempty"`
	Nodes     []seal.Hash `json:"nodes,omitempty"` // see [between]
	Page      string      `json:"page,omitempty"`
	Demo      bool        `json:"demo,omitempty"`
}

func data(d deed.Deed, word []byte) (template.JS, error) {
	c := carried{Record: packed(d.Record), Page: string(word), Demo: d.Demo}
	if len(d.Signature) > 0 {
		c.Signature, c.Key = d.Signature, strings.Split(string(d.Key.PEM()), "\n")[1]
		c.Head = string(d.Head)
		proof, err := seal.ParseProof(d.Proof)
		if err != nil {
			return "", err
		}
		c.Nodes = between(proof.Entries, 0, proof.Size, 0)
	}
	return inScript(c)
}

// between lists the hashes of the largest subtrees (RFC 6962 section 2.1) over the
// entries from, …, to-1 of the journal that hold none of some entries, from left
// to right; the path of a neighbour has each. depth is how far below the root we are.
func between(entries []seal.EntryProof, from, to int64, depth int) []seal.Hash {
	if to-from < 2 {
		return nil
	}
	half := int64(1) << (bits.Len64(uint64(to-from-1)) - 1)
	at := slices.IndexFunc(entries, func(e seal.EntryProof) bool { return e.Seq >= from+half })
	if at < 0 {
		at = len(entries)
	}
	side := func(own, other []seal.EntryProof, from, to int64) []seal.Hash {
		if len(own) == 0 {
			path := other[0].Path
			return []seal.Hash{path[len(path)-1-depth]}
		}
		return between(own, from, to, depth+1)
	}
	return append(side(entries[:at], entries[at:], from, from+half), side(entries[at:], entries[:at], from+half, to)...)
}

func packed(data []byte) []byte {
	var b bytes.Buffer
	w, _ := gzip.NewWriterLevel(&b, gzip.BestCompression) // a level that there is
	w.Write(data)                                         // a bytes.Buffer does not fail
	w.Close()
	return b.Bytes()
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
