package paper

import (
	"crypto/md5"
	"fmt"
)

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
