package paper

import (
	"crypto/md5"
	"fmt"
	"mime"
	"slices"
	"strings"
	"time"
)

// An Attachment is a file inside a PDF/A-3 file.
type Attachment struct {
	Name        string // a plain file name in ASCII, such as "record.json"
	MIME        string // media type, such as "application/json"
	Description string
	Relation    Relation
	Modified    time.Time // of the document if zero
	Data        []byte
}

// A Relation says what an attachment is to the page (ISO 19005-3, Annex E).
type Relation string

// The relations.
const (
	RelationSource      Relation = "Source"
	RelationData        Relation = "Data"
	RelationAlternative Relation = "Alternative"
	RelationSupplement  Relation = "Supplement"
	RelationUnspecified Relation = "Unspecified"
)

var relations = []Relation{RelationSource, RelationData, RelationAlternative, RelationSupplement, RelationUnspecified}

const maxAttachments = 256

// attach adds associated files: the stream, its specification, the name tree
// and the /AF array (ISO 19005-3, 6.8; ISO 32000-1, 7.11).
func (f *pdfFile) attach(catalog pdfDict, attachments []Attachment, modified time.Time) error {
	if len(attachments) == 0 {
		return nil
	}
	if len(attachments) > maxAttachments {
		return fmt.Errorf("cannot attach %d files: more than %d", len(attachments), maxAttachments)
	}
	// The order of the caller is kept in /AF; a name tree is in order of names.
	refs := map[string]pdfRef{}
	var order []any
	var names []string
	for _, a := range attachments {
		if err := a.check(); err != nil {
			return err
		}
		if _, twice := refs[a.Name]; twice {
			return fmt.Errorf("cannot attach %s: attached twice", a.Name)
		}
		ref := f.add(f.fileSpec(a, modified))
		refs[a.Name] = ref
		order = append(order, ref)
		names = append(names, a.Name)
	}
	slices.Sort(names)
	var tree []any
	for _, n := range names {
		tree = append(tree, pdfString(n), refs[n])
	}
	catalog["AF"] = order
	catalog["Names"] = pdfDict{"EmbeddedFiles": pdfDict{"Names": tree}}
	return nil
}

func (a Attachment) check() error {
	if !plainName(a.Name) {
		return fmt.Errorf("cannot attach %q: not a plain file name", a.Name)
	}
	if t, _, err := mime.ParseMediaType(a.MIME); err != nil || !strings.Contains(t, "/") {
		return fmt.Errorf("cannot attach %s: %q is no media type", a.Name, a.MIME)
	}
	if !slices.Contains(relations, a.Relation) {
		return fmt.Errorf("cannot attach %s: %q is no relation", a.Name, a.Relation)
	}
	return nil
}

// plainName reports whether a name can be a file on any system, and no path.
func plainName(s string) bool {
	for _, r := range s {
		if r <= ' ' || r > '~' || strings.ContainsRune(`/\:*?"<>|`, r) {
			return false
		}
	}
	return s != "" && len(s) <= 100 && !strings.HasPrefix(s, ".") && !strings.HasSuffix(s, ".")
}

func (f *pdfFile) fileSpec(a Attachment, modified time.Time) pdfDict {
	if !a.Modified.IsZero() {
		modified = a.Modified
	}
	sum := md5.Sum(a.Data) // what the format asks for; trust rests on signatures
	stream := deflated(a.Data)
	stream.dict["Type"] = pdfName("EmbeddedFile")
	stream.dict["Subtype"] = pdfName(a.MIME)
	stream.dict["Params"] = pdfDict{
		"Size":     int64(len(a.Data)),
		"CheckSum": pdfString(sum[:]),
		"ModDate":  pdfString(pdfDate(modified)),
	}
	ref := f.add(stream)
	spec := pdfDict{
		"Type":           pdfName("Filespec"),
		"F":              pdfString(a.Name),
		"UF":             textString(a.Name),
		"AFRelationship": pdfName(a.Relation),
		"EF":             pdfDict{"F": ref, "UF": ref},
	}
	if d := OneLine(a.Description); d != "" {
		spec["Desc"] = textString(d)
	}
	return spec
}
