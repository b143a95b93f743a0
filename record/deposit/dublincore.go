package deposit

import (
	"bytes"
	"encoding/xml"
	"fmt"

	"backleaf/record"
	"backleaf/record/tell"
)

type dcElement struct {
	XMLName xml.Name
	Text    string `xml:",chardata"`
}

type dcMetadata struct {
	XMLName  xml.Name `xml:"metadata"`
	DC       string   `xml:"xmlns:dc,attr"`
	Terms    string   `xml:"xmlns:dcterms,attr"`
	Elements []dcElement
}

// DublinCore returns the description of a panel as Dublin Core in XML.
func DublinCore(c *tell.Catalogue, w *record.Workshop, p *record.Panel) ([]byte, error) {
	t, d := tell.New(c, w, p), p.Description()
	m := dcMetadata{DC: "http://purl.org/dc/elements/1.1/", Terms: "http://purl.org/dc/terms/"}
	say := func(name, text string) {
		if text != "" {
			m.Elements = append(m.Elements, dcElement{xml.Name{Local: name}, text})
		}
	}
	say("dc:identifier", string(p.Number))
	say("dc:identifier", t.Link())
	say("dc:identifier", orElse(d.Owner, p.Cut().Owner))
	say("dc:title", t.Title())
	say("dc:creator", w.Studio.Maker)
	say("dc:type", "PhysicalObject") // DCMI Type Vocabulary
	if t.Painted() || d.Title != "" {
		say("dc:type", orElse(d.Type, "painting"))
	}
	if d.Made.Known() {
		say("dcterms:created", d.Made.String()) // EDTF
	}
	if cut, ok := record.Latest[record.Cut](p); ok && cut.At.Known() {
		say("dc:date", cut.At.String())
	}
	say("dc:subject", d.Subject)
	say("dcterms:medium", t.MediumLine())
	if _, ok := p.Size().AreaSquareMillimeters(); ok {
		say("dcterms:extent", t.Dimensions())
	}
	say("dc:description", t.BuildUpSentence())
	say("dc:description", d.Features)
	say("dcterms:spatial", w.Studio.Place)
	for _, ph := range record.Each[record.Photograph](p) {
		say("dcterms:hasFormat", "data/photographs/"+PhotographName(ph.Body))
	}
	var b bytes.Buffer
	b.WriteString(xml.Header)
	e := xml.NewEncoder(&b)
	e.Indent("", "  ")
	if err := e.Encode(m); err != nil {
		return nil, fmt.Errorf("cannot write the Dublin Core of %s: %w", p.Number, err)
	}
	b.WriteByte('\n')
	return b.Bytes(), nil
}
