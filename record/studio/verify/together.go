package verify

import (
	"bytes"

	"backleaf/record/studio/refuse"
)

// Together lays single files to the one record that they can belong to.
func Together(all []Evidence) ([]Evidence, error) {
	var out []Evidence
	into := -1
	for _, e := range all {
		if (e.Kind == Certificate || e.Kind == Folder) && e.Unread == nil {
			if into >= 0 { // more than one: single files stay by themselves
				into = -2
			}
			if into == -1 {
				into = len(out)
			}
		}
		if e.Kind != File {
			out = append(out, e)
		}
	}
	if into < 0 {
		into = -1
	}
	for _, e := range all {
		if e.Kind != File {
			continue
		}
		if into < 0 {
			into = len(out)
			out = append(out, e)
			continue
		}
		to := &out[into]
		if to.Kind == File && to.Name != e.Name {
			to.Name += ", " + e.Name
		}
		to.Remarks = append(to.Remarks, e.Remarks...)
		for _, n := range Names {
			place, data := to.Files.Named(n), *e.Files.Named(n)
			if data != nil && *place != nil && !bytes.Equal(*place, data) {
				return nil, refuse.Unclearly("two-of-a-sort", "there are two different files of the sort of %s", n)
			}
			if data != nil {
				*place = data
			}
		}
	}
	return out, nil
}
