package paper

import (
	"fmt"
	"slices"

	"backleaf/record/pdf"
)

// Kind is the archive format of a file.
type Kind int

const (
	// A1b is PDF/A-1b (ISO 19005-1:2005): labels and dossiers.
	A1b Kind = iota
	// A3b is PDF/A-3b (ISO 19005-3:2012): certificates, which carry attachments.
	A3b
)

func (k Kind) String() string { return [...]string{"PDF/A-1b", "PDF/A-3b"}[k] }

// version is the PDF version that the format builds on.
func (k Kind) version() string { return [...]string{"1.4", "1.7"}[k] }

// producer is written as the program that made the file.
const producer = "backleaf"

// A file is what the PDF library wrote, on its way to an archive format.
type file struct{ *pdf.File }

// finish reads the file that the PDF library wrote and writes its objects
// again with what the archive formats ask for: an identifier, an output
// intent, metadata, complete font dictionaries, printable annotations, no
// transparency groups, and attachments. contents are those of the pages.
func finish(raw []byte, contents []*pdf.Stream, d *Document, kind Kind, attachments []pdf.Attachment) ([]byte, error) {
	if kind != A1b && kind != A3b {
		return nil, fmt.Errorf("cannot write PDF: no such kind %d", int(kind))
	}
	if kind == A1b && len(attachments) > 0 {
		return nil, fmt.Errorf("cannot write PDF: %v allows no attachments", kind)
	}
	info := d.Info
	if info.Created.IsZero() {
		return nil, fmt.Errorf("cannot write PDF: no date of creation given")
	}
	info = info.clean()
	opened, err := pdf.Open(raw)
	if err != nil {
		return nil, err
	}
	f := &file{opened}
	catalog, err := f.Catalog()
	if err != nil {
		return nil, err
	}
	pages, err := f.finishPages(catalog["Pages"], nil, 0)
	if err != nil {
		return nil, err
	}
	for i, p := range pages {
		page, err := f.Dict(p)
		if err != nil {
			return nil, err
		}
		page["Contents"] = f.Add(contents[i])
	}
	if err := f.finishFonts(kind); err != nil {
		return nil, err
	}
	for k := range catalog {
		if k != "Type" && k != "Pages" {
			delete(catalog, k)
		}
	}
	catalog["Lang"] = pdf.String(info.Language)
	// Paper is measured out: a label fits its sheet at full size only. Programs
	// older than PDF 1.6 pass over the second entry.
	catalog["ViewerPreferences"] = pdf.Dict{"DisplayDocTitle": true, "PrintScaling": pdf.Name("None")}
	f.outline(catalog, pages, d)
	catalog["Metadata"] = f.Add(&pdf.Stream{Dict: pdf.Dict{"Type": pdf.Name("Metadata"), "Subtype": pdf.Name("XML")}, Data: info.xmp(kind)})
	catalog["OutputIntents"] = []any{f.outputIntent()}
	attachments = slices.Clone(attachments)
	for i := range attachments {
		attachments[i].Description = OneLine(attachments[i].Description)
	}
	if err := f.Attach(catalog, attachments, info.Modified); err != nil {
		return nil, err
	}
	return f.Write(kind.version(), catalog, info.dict())
}

// clean makes the texts fit for both places and fills in what may be left out.
func (i Info) clean() Info {
	for _, s := range []*string{&i.Title, &i.Author, &i.Subject, &i.Keywords} {
		*s = OneLine(*s)
	}
	if i.Language == "" {
		i.Language = "en"
	}
	if i.Modified.IsZero() {
		i.Modified = i.Created
	}
	return i
}

// dict is the information dictionary (ISO 32000-1, 14.3.3).
func (i Info) dict() pdf.Dict {
	d := pdf.Dict{
		"Creator":      pdf.String(producer),
		"Producer":     pdf.String(producer),
		"CreationDate": pdf.Date(i.Created),
		"ModDate":      pdf.Date(i.Modified),
	}
	for k, v := range map[pdf.Name]string{"Title": i.Title, "Author": i.Author, "Subject": i.Subject, "Keywords": i.Keywords} {
		if v != "" {
			d[k] = pdf.Text(v)
		}
	}
	return d
}

const maxPageTree = 32 // levels

// finishPages walks the page tree and returns the pages in their order.
func (f *file) finishPages(node any, pages []any, depth int) ([]any, error) {
	if depth > maxPageTree {
		return nil, fmt.Errorf("%w: page tree", pdf.ErrMalformed)
	}
	d, err := f.Dict(node)
	if err != nil {
		return nil, err
	}
	if d["Type"] == any(pdf.Name("Pages")) {
		kids, err := f.Array(d["Kids"])
		if err != nil {
			return nil, err
		}
		for _, kid := range kids {
			if pages, err = f.finishPages(kid, pages, depth+1); err != nil {
				return nil, err
			}
		}
		return pages, nil
	}
	delete(d, "Group") // the pages are opaque, and A-1 forbids transparency
	annots, err := f.Array(d["Annots"])
	if err != nil {
		return nil, err
	}
	for _, a := range annots {
		annot, err := f.Dict(a)
		if err != nil {
			return nil, err
		}
		const printFlag = 4
		annot["F"] = int64(printFlag)
	}
	return append(pages, node), nil
}

func (f *file) outputIntent() pdf.Dict {
	profile := f.Add(&pdf.Stream{Dict: pdf.Dict{"N": int64(3)}, Data: sRGBProfile()})
	return pdf.Dict{
		"Type":                      pdf.Name("OutputIntent"),
		"S":                         pdf.Name("GTS_PDFA1"),
		"OutputConditionIdentifier": pdf.String("sRGB IEC61966-2.1"),
		"RegistryName":              pdf.String("http://www.color.org"),
		"Info":                      pdf.String("sRGB IEC61966-2.1"),
		"DestOutputProfile":         profile,
	}
}
