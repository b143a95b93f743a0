package paper

import (
	"fmt"
	"strings"
)

// xmp writes the metadata packet (ISO 16684-1) with the same values as the
// information dictionary, in the places that ISO 19005-1, 6.7.3 pairs them with.
func (i Info) xmp(kind Kind) []byte {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>")
	line(`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">`)
	line(`<rdf:Description rdf:about="" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">`)
	line(`<pdfaid:part>%d</pdfaid:part><pdfaid:conformance>B</pdfaid:conformance>`, map[Kind]int{A1b: 1, A3b: 3}[kind])
	line(`</rdf:Description>`)
	line(`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">`)
	line(`<dc:format>application/pdf</dc:format>`)
	if i.Title != "" {
		line(`<dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>`, escape(i.Title))
	}
	if i.Author != "" {
		line(`<dc:creator><rdf:Seq><rdf:li>%s</rdf:li></rdf:Seq></dc:creator>`, escape(i.Author))
	}
	if i.Subject != "" {
		line(`<dc:description><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:description>`, escape(i.Subject))
	}
	line(`</rdf:Description>`)
	line(`<rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/">`)
	const date = "2006-01-02T15:04:05-07:00"
	line(`<xmp:CreatorTool>%s</xmp:CreatorTool><xmp:CreateDate>%s</xmp:CreateDate><xmp:ModifyDate>%s</xmp:ModifyDate>`,
		producer, i.Created.Format(date), i.Modified.Format(date))
	line(`</rdf:Description>`)
	line(`<rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">`)
	line(`<pdf:Producer>%s</pdf:Producer>`, producer)
	if i.Keywords != "" {
		line(`<pdf:Keywords>%s</pdf:Keywords>`, escape(i.Keywords))
	}
	line(`</rdf:Description></rdf:RDF></x:xmpmeta>`)
	b.WriteString(`<?xpacket end="r"?>`)
	return []byte(b.String())
}
