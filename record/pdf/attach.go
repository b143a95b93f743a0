package pdf

import (
	"compress/zlib"
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
	Modified    time.Time // that of the document if zero; not read back
	Data        []byte
}

// A Relation says what an attachment is to the page (ISO 19005-3, Annex E).
type Relation string

// The relations that are written: what the page was made from, and what else
// helps to read or check it.
const (
	Source     Relation = "Source"
	Supplement Relation = "Supplement"
)

const maxAttachments = 256

// Attach adds associated files: the stream, its specification, the name tree
// and the /AF array (ISO 19005-3, 6.8; ISO 32000-1, 7.11). modified is the date
// of those that give none.
func (f *File) Attach(catalog Dict, attachments []Attachment, modified time.Time) error {
	if len(attachments) == 0 {
		return nil
	}
	if len(attachments) > maxAttachments {
		return fmt.Errorf("cannot attach %d files: more than %d", len(attachments), maxAttachments)
	}
	// The order of the caller is kept in /AF; a name tree is in order of names.
	refs := map[string]Ref{}
	var order []any
	var names []string
	for _, a := range attachments {
		if err := a.check(); err != nil {
			return err
		}
		if _, twice := refs[a.Name]; twice {
			return fmt.Errorf("cannot attach %s: attached twice", a.Name)
		}
		ref := f.Add(f.fileSpec(a, modified))
		refs[a.Name] = ref
		order = append(order, ref)
		names = append(names, a.Name)
	}
	slices.Sort(names)
	var tree []any
	for _, n := range names {
		tree = append(tree, String(n), refs[n])
	}
	catalog["AF"] = order
	catalog["Names"] = Dict{"EmbeddedFiles": Dict{"Names": tree}}
	return nil
}

func (a Attachment) check() error {
	if !plainName(a.Name) {
		return fmt.Errorf("cannot attach %q: not a plain file name", a.Name)
	}
	if t, _, err := mime.ParseMediaType(a.MIME); err != nil || !strings.Contains(t, "/") {
		return fmt.Errorf("cannot attach %s: %q is no media type", a.Name, a.MIME)
	}
	if a.Relation != Source && a.Relation != Supplement {
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

func (f *File) fileSpec(a Attachment, modified time.Time) Dict {
	if !a.Modified.IsZero() {
		modified = a.Modified
	}
	sum := md5.Sum(a.Data) // what the format asks for; trust rests on signatures
	stream := Deflated(zlib.DefaultCompression, a.Data)
	stream.Dict["Type"] = Name("EmbeddedFile")
	stream.Dict["Subtype"] = Name(a.MIME)
	stream.Dict["Params"] = Dict{
		"Size":     int64(len(a.Data)),
		"CheckSum": String(sum[:]),
		"ModDate":  Date(modified),
	}
	ref := f.Add(stream)
	spec := Dict{
		"Type":           Name("Filespec"),
		"F":              String(a.Name),
		"UF":             Text(a.Name),
		"AFRelationship": Name(a.Relation),
		"EF":             Dict{"F": ref, "UF": ref},
	}
	if d := a.Description; d != "" {
		spec["Desc"] = Text(d)
	}
	return spec
}

// Date writes a moment with its offset (7.9.4).
func Date(t time.Time) String {
	return String("D:" + t.Format("20060102150405") + strings.Replace(t.Format("-07:00"), ":", "'", 1) + "'")
}
