package pdf

import (
	"bytes"
	"crypto/md5"
	"errors"
	"fmt"
	"strings"
)

// Attached is what a file holds beside its pages.
type Attached struct {
	// Files are in the order of the file's list. Of each, name, media type,
	// description, relation and data are given.
	Files []Attachment
	// Strays names what is attached but does not stand in the list: to a page,
	// say, or has no plain file name. Some programs show it. Text from outside,
	// cut at a hundred bytes; empty if it has no name.
	Strays []string
	// Updates says how many times something was appended to the file, which
	// leaves what was there before in it.
	Updates int
}

// ErrAmbiguous says that attachments are made so that one program takes out
// other bytes than another, under one name.
var ErrAmbiguous = errors.New("attachments that two programs would read differently")

// Attachments reads the files inside a PDF. It takes nothing for granted: names
// that are no plain file names, sums that do not match and anything malformed
// are refused with [ErrMalformed], or with one of the other errors of this
// package.
func Attachments(pdf []byte) (Attached, error) {
	if len(pdf) > MaxBytes {
		return Attached{}, fmt.Errorf("cannot read attachments: %w: larger than %d MB", ErrMalformed, MaxBytes>>20)
	}
	f, err := open(pdf, onStrangers)
	if err != nil {
		return Attached{}, fmt.Errorf("cannot read attachments: %w", err)
	}
	r := &attachmentReader{file: f, owners: map[string]int{}, streams: map[Ref]string{}}
	if err = r.catalog(); err == nil {
		err = r.strays()
	}
	if err != nil {
		return Attached{}, fmt.Errorf("cannot read attachments: %w", err)
	}
	r.found.Updates = f.updates
	return r.found, nil
}

type attachmentReader struct {
	file    *File
	nodes   int
	entries int
	owners  map[string]int // by every name that stands in the list: which file
	streams map[Ref]string // the name that goes with them
	found   Attached
}

func (r *attachmentReader) catalog() error {
	d, err := r.file.Catalog()
	if err != nil {
		return err
	}
	for _, key := range []Name{"Names", "EmbeddedFiles"} {
		if d[key] == nil {
			return nil
		}
		if d, err = r.file.Dict(d[key]); err != nil {
			return err
		}
	}
	return r.node(d)
}

// node reads one node of the name tree (7.9.6).
func (r *attachmentReader) node(d Dict) error {
	if r.nodes++; r.nodes > maxAttachments {
		return fmt.Errorf("%w: name tree", ErrMalformed)
	}
	names, err := r.file.Array(d["Names"])
	if err != nil {
		return err
	}
	if len(names)%2 != 0 {
		return fmt.Errorf("%w: name tree", ErrMalformed)
	}
	for ; len(names) > 0; names = names[2:] {
		if err := r.entry(names[0], names[1]); err != nil {
			return err
		}
	}
	kids, err := r.file.Array(d["Kids"])
	if err != nil {
		return err
	}
	for _, kid := range kids {
		k, err := r.file.Dict(kid)
		if err != nil {
			return err
		}
		if err := r.node(k); err != nil {
			return err
		}
	}
	return nil
}

// entry reads one file of the list. Programs go by the key of the list or by
// the names in the specification; a second file may share none of them, unless
// it is the same.
func (r *attachmentReader) entry(key, o any) error {
	spec, err := r.file.Dict(o)
	if err != nil {
		return err
	}
	a := Attachment{Description: r.text(spec["Desc"])}
	if a.Name, err = r.name(spec); err != nil {
		return err
	}
	if r.entries++; r.entries > maxAttachments {
		return fmt.Errorf("%w: more than %d attachments", ErrMalformed, maxAttachments)
	}
	if strings.ContainsAny(a.Name, `/\`) {
		return fmt.Errorf("%w: %q is a path", ErrMalformed, cut(a.Name))
	}
	if !plainName(a.Name) { // no file of this program's: it is found among the strays
		if _, taken := r.owners[r.text(key)]; taken {
			return fmt.Errorf("%w: %q is attached twice", ErrAmbiguous, cut(r.text(key)))
		}
		r.owners[r.text(key)] = ofStray
		return nil
	}
	if n, ok := spec["AFRelationship"].(Name); ok {
		a.Relation = Relation(n)
	}
	stream, err := r.data(spec, &a)
	if err != nil {
		return fmt.Errorf("%s: %w", a.Name, err)
	}
	again := false
	for _, name := range []string{a.Name, r.text(key)} {
		owner, taken := r.owners[name]
		if taken && owner != len(r.found.Files) {
			// Another program may list a file a second time. Nobody is misled while it is the same.
			if again = owner != ofStray && r.found.Files[owner].Name == a.Name && bytes.Equal(r.found.Files[owner].Data, a.Data); !again {
				return fmt.Errorf("%w: %q is attached twice", ErrAmbiguous, name)
			}
			continue
		}
		r.owners[name] = len(r.found.Files)
	}
	if again {
		return nil
	}
	if n, ok := stream["Subtype"].(Name); ok {
		a.MIME = string(n)
	}
	if err := r.checkSum(stream, a.Data); err != nil {
		return fmt.Errorf("%s: %w", a.Name, err)
	}
	r.found.Files = append(r.found.Files, a)
	return nil
}

// ofStray is the owner of a name in the list under which no plain file stands.
const ofStray = -1

// forms are the keys under which a specification gives names and streams (7.11.3).
var forms = []Name{"UF", "F", "DOS", "Mac", "Unix"}

// name returns the one name of a specification.
func (r *attachmentReader) name(spec Dict) (string, error) {
	name := ""
	for _, form := range forms {
		n := r.text(spec[form])
		if name != "" && n != "" && n != name {
			return "", fmt.Errorf("%w: %q is also called %q", ErrAmbiguous, name, n)
		}
		name = max(name, n)
	}
	return name, nil
}

// data reads the one content of a specification.
func (r *attachmentReader) data(spec Dict, a *Attachment) (Dict, error) {
	ef, err := r.file.Dict(spec["EF"])
	if err != nil {
		return nil, err
	}
	var first Ref
	for _, form := range forms {
		ref, ok := ef[form].(Ref)
		if !ok || ref == first {
			continue
		}
		data, err := r.file.Decoded(ref)
		if err != nil {
			return nil, err
		}
		if first == (Ref{}) {
			first, a.Data = ref, data
		} else if !bytes.Equal(data, a.Data) {
			return nil, fmt.Errorf("%w: it has two contents", ErrAmbiguous)
		}
		r.streams[ref] = a.Name
	}
	return r.file.Dict(first)
}

func (r *attachmentReader) checkSum(stream Dict, data []byte) error {
	if stream["Params"] == nil {
		return nil
	}
	params, err := r.file.Dict(stream["Params"])
	if err != nil {
		return err
	}
	want, err := r.file.resolve(params["CheckSum"])
	if err != nil {
		return err
	}
	sum := md5.Sum(data)
	if s, ok := want.(String); ok && s != String(sum[:]) {
		return fmt.Errorf("%w: its check sum does not match", ErrMalformed)
	}
	return nil
}

func (r *attachmentReader) text(o any) string {
	v, err := r.file.resolve(o)
	if s, ok := v.(String); ok && err == nil {
		return s.text()
	}
	return ""
}
