package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/pattern"
)

// maxCoats bounds what one cell may name.
const maxCoats = 40

var (
	coatText = pattern.Of(`(?i)^(.+?)\s+on\s+(.+?)(?:\s+as\s+([a-z-]+))?(?:\s*[x×]\s*([0-9]{1,2}))?$`)
	faceText = pattern.Of(`(?i)\s*(?:,|\+|&|\band\b)\s*`)
)

// layers reads coats and cloth, in the order in which they lie on the board.
func (r *rowReader) layers() {
	before, after, marked, err := r.coats(r.get("coats"))
	if err != nil {
		r.refuse("coats", "%v", err)
		return
	}
	at := r.date("coats_date")
	lay := func(coats []record.Coat) {
		for _, c := range coats {
			r.has["coats"] = true
			r.add(at, c, nil)
		}
	}
	cloth := r.get("cloth")
	if cloth == "" {
		if marked {
			r.refuse("coats", "cloth stands among the coats, but the row names none; write unknown where nobody knows it")
		}
		lay(append(before, after...))
		return
	}
	l := record.ClothLaid{Faces: []record.Face{record.Front}, Run: record.ThreadRun(r.word("threads", "ThreadRun"))}
	if l.Cloth, l.ClothLot, err = r.onShelf(cloth); err != nil {
		r.refuse("cloth", "%v", err)
	}
	if with := r.get("adhesive"); with != "" {
		if l.Mix, err = r.mix(with); err != nil {
			r.refuse("adhesive", "%v", err)
		}
	}
	r.has["cloth"] = true
	if !marked { // cloth lies under the ground
		all := append(before, after...)
		i := slices.IndexFunc(all, func(c record.Coat) bool {
			return c.Purpose == record.Ground && slices.Contains(c.Faces, record.Front)
		})
		if i < 0 {
			i = len(all)
		}
		before, after = all[:i], all[i:]
	}
	lay(before)
	r.add(r.date("cloth_date"), l, nil)
	lay(after)
}

// coats reads "sealer on all; cloth; ground on front x3". Marked says whether
// "cloth" stands among them; what comes after it is in after.
func (r *rowReader) coats(typed string) (before, after []record.Coat, marked bool, err error) {
	for _, one := range strings.FieldsFunc(typed, func(c rune) bool { return c == ';' || c == '\n' }) {
		if one = strings.TrimSpace(one); one == "" {
			continue
		}
		if strings.EqualFold(one, "cloth") {
			if marked {
				return nil, nil, false, fmt.Errorf("cloth stands twice")
			}
			marked = true
			continue
		}
		c, times, err := r.coat(one)
		if err != nil {
			return nil, nil, false, fmt.Errorf("%q: %w", clip(one), err)
		}
		for range times {
			if marked {
				after = append(after, c)
			} else {
				before = append(before, c)
			}
		}
		if len(before)+len(after) > maxCoats {
			return nil, nil, false, fmt.Errorf("more than %d coats", maxCoats)
		}
	}
	return before, after, marked, nil
}

func (r *rowReader) coat(typed string) (c record.Coat, times int, err error) {
	m := coatText().FindStringSubmatch(typed)
	if m == nil {
		return c, 0, fmt.Errorf("expected a material and its faces, like \"sealer on back,edges\" or \"ground on front x3\"")
	}
	what, purpose := m[1], strings.ToLower(m[3])
	for _, f := range faceText().Split(m[2], -1) {
		switch f = strings.ToLower(f); {
		case f == "all":
			c.Faces = append([]record.Face{}, record.Faces...)
		case f == "edge":
			c.Faces = append(c.Faces, record.Edges)
		case slices.Contains(record.Words("Face"), f):
			c.Faces = append(c.Faces, record.Face(f))
		default:
			return c, 0, fmt.Errorf("%q is not %s", clip(f), record.OneOf(f, append(record.Words("Face"), "all")))
		}
	}
	purposes := record.Words("Purpose")
	if c.Mix, err = r.mix(what); err != nil {
		if what = strings.ToLower(what); !slices.Contains(purposes, what) {
			return c, 0, err
		}
		c.Purpose = record.Purpose(what) // nobody recorded of what
	} else {
		c.Purpose = r.Shop.PurposeOf(c.Mix)
	}
	if purpose != "" {
		if !slices.Contains(purposes, purpose) {
			return c, 0, fmt.Errorf("%q is not %s", clip(purpose), record.OneOf(purpose, purposes))
		}
		c.Purpose = record.Purpose(purpose)
	}
	times = 1
	if m[4] != "" {
		times, _ = strconv.Atoi(m[4])
	}
	if times < 1 {
		return c, 0, fmt.Errorf("no coat at all")
	}
	return c, times, nil
}
