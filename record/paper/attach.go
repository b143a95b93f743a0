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

// Attachments reads the files inside a PDF, in the order of its name tree. It
// takes nothing for granted: names that are no plain file names, files twice
// the same, sums that do not match and anything malformed are refused, and no
// more than 64 MB are unpacked. Of each file, name, media type, description,
// relation and data are returned.
func Attachments(pdf []byte) ([]Attachment, error) {
	f, err := openPDF(pdf)
	if err != nil {
		return nil, fmt.Errorf("cannot read attachments: %w", err)
	}
	r := &attachmentReader{file: f, left: maxDecodedBytes, seen: map[string]bool{}}
	if err := r.catalog(); err != nil {
		return nil, fmt.Errorf("cannot read attachments: %w", err)
	}
	return r.found, nil
}

type attachmentReader struct {
	file  *pdfFile
	left  int // bytes that may still be unpacked
	nodes int
	seen  map[string]bool
	found []Attachment
}

func (r *attachmentReader) catalog() error {
	d, err := r.file.dict(r.file.trailer["Root"])
	if err != nil {
		return err
	}
	for _, key := range []pdfName{"Names", "EmbeddedFiles"} {
		if d[key] == nil {
			return nil
		}
		if d, err = r.file.dict(d[key]); err != nil {
			return err
		}
	}
	return r.node(d)
}

// node reads one node of the name tree (7.9.6).
func (r *attachmentReader) node(d pdfDict) error {
	if r.nodes++; r.nodes > maxAttachments {
		return fmt.Errorf("%w: name tree", errPDF)
	}
	names, err := r.file.array(d["Names"])
	if err != nil {
		return err
	}
	for i := 1; i < len(names); i += 2 {
		if err := r.entry(names[i]); err != nil {
			return err
		}
	}
	kids, err := r.file.array(d["Kids"])
	if err != nil {
		return err
	}
	for _, kid := range kids {
		k, err := r.file.dict(kid)
		if err != nil {
			return err
		}
		if err := r.node(k); err != nil {
			return err
		}
	}
	return nil
}

func (r *attachmentReader) entry(o any) error {
	spec, err := r.file.dict(o)
	if err != nil {
		return err
	}
	a := Attachment{Name: r.text(spec["UF"]), Description: r.text(spec["Desc"])}
	if a.Name == "" {
		a.Name = r.text(spec["F"])
	}
	if !plainName(a.Name) {
		return fmt.Errorf("%q is not a plain file name", a.Name)
	}
	if r.seen[a.Name] || len(r.found) >= maxAttachments {
		return fmt.Errorf("%w: %s is attached twice, or too many files are", errPDF, a.Name)
	}
	r.seen[a.Name] = true
	if n, ok := spec["AFRelationship"].(pdfName); ok {
		a.Relation = Relation(n)
	}
	ef, err := r.file.dict(spec["EF"])
	if err != nil {
		return err
	}
	stream, err := r.file.dict(ef["F"])
	if err != nil {
		return err
	}
	if n, ok := stream["Subtype"].(pdfName); ok {
		a.MIME = string(n)
	}
	if a.Data, err = r.file.decoded(ef["F"], r.left); err != nil {
		return fmt.Errorf("%s: %w", a.Name, err)
	}
	r.left -= len(a.Data)
	if err := r.checkSum(stream, a.Data); err != nil {
		return fmt.Errorf("%s: %w", a.Name, err)
	}
	r.found = append(r.found, a)
	return nil
}

func (r *attachmentReader) checkSum(stream pdfDict, data []byte) error {
	if stream["Params"] == nil {
		return nil
	}
	params, err := r.file.dict(stream["Params"])
	if err != nil {
		return err
	}
	want, err := r.file.resolve(params["CheckSum"])
	if err != nil {
		return err
	}
	sum := md5.Sum(data)
	if s, ok := want.(pdfString); ok && s != pdfString(sum[:]) {
		return fmt.Errorf("its check sum does not match")
	}
	return nil
}

func (r *attachmentReader) text(o any) string {
	v, err := r.file.resolve(o)
	if s, ok := v.(pdfString); ok && err == nil {
		return s.text()
	}
	return ""
}
