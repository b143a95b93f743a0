package pdf

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// strays looks through all that can be reached for files that the list does not
// name: annotations carry such, and other lists (7.11.4, 12.5.6.15).
func (r *attachmentReader) strays() error {
	w := walker{reader: r, seen: map[int]bool{}}
	if err := w.object(r.file.trailer); err != nil {
		return err
	}
	for len(w.queue) > 0 {
		ref := w.queue[0]
		w.queue = w.queue[1:]
		o, err := r.file.referred(ref)
		if err != nil {
			return err
		}
		if err := w.object(o); err != nil {
			return err
		}
	}
	return r.file.sound()
}

// A walker visits every object once.
type walker struct {
	reader *attachmentReader
	seen   map[int]bool
	queue  []Ref
}

func (w *walker) object(o any) error {
	switch o := o.(type) {
	case Ref:
		if !w.seen[o.num] {
			w.seen[o.num] = true
			w.queue = append(w.queue, o)
		}
	case []any:
		for _, v := range o {
			if err := w.object(v); err != nil {
				return err
			}
		}
	case Dict:
		if err := w.specification(o); err != nil {
			return err
		}
		for _, key := range slices.Sorted(maps.Keys(o)) {
			if err := w.object(o[key]); err != nil {
				return err
			}
		}
	case *Stream:
		return w.object(o.Dict)
	}
	return nil
}

// specification notes a file that is not in the list, and one that is but goes
// by another name here.
func (w *walker) specification(spec Dict) error {
	r := w.reader
	if spec["EF"] == nil {
		return nil
	}
	ef, err := r.file.Dict(spec["EF"])
	if err != nil {
		return err
	}
	name, err := r.name(spec)
	if err != nil {
		return err
	}
	for _, form := range forms {
		ref, ok := ef[form].(Ref)
		if listed, same := r.streams[ref]; !ok || same && listed == name {
			continue
		} else if owner, taken := r.owners[name]; taken && owner != ofStray && !same {
			data, err := r.file.Decoded(ref)
			if err != nil {
				return err
			}
			if !bytes.Equal(data, r.found.Files[owner].Data) {
				return fmt.Errorf("%w: %q is attached again elsewhere", ErrAmbiguous, name)
			}
			continue // what a program left behind that replaced a file by itself
		}
		if r.found.Strays = append(r.found.Strays, cut(name)); len(r.found.Strays) > maxAttachments {
			return fmt.Errorf("%w: more than %d attachments", ErrMalformed, maxAttachments)
		}
		return nil
	}
	return nil
}

// cut shortens a name from outside.
func cut(name string) string {
	if len(name) > 100 {
		return strings.ToValidUTF8(name[:97], "") + "…"
	}
	return name
}
