package record

import (
	"cmp"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// Roll is the list of numbers a book knows, against which typed numbers are
// read.
type Roll struct {
	Numbers []Number // in order of full year, then serial
	Batches map[Key][]Number
	Called  map[string][]Number // by [CalledAs] of title and of the studio's own reference
	Written map[string]string   // how it is written, by [CalledAs] of it
	NAAN    string
}

// CalledAs is a title or a reference of the studio's own as it is looked up:
// without quotes, in lower case.
func CalledAs(text string) string {
	return strings.ToLower(strings.Join(strings.Fields(strings.Trim(text, "\"'“”„«»‘’ ")), " "))
}

// Unnamed is why what was typed names no panels.
type Unnamed struct {
	Is       Code // "unknown", "mistyped", "mark", "name", "empty", "batch", "backwards", "several" or "none-left"
	Why      string
	Marks    []string // those of this book, of "mark"
	Excepted bool     // it was typed of what is left out
}

func (u *Unnamed) Error() string { return u.Why }

func unnamed(is Code, format string, args ...any) error {
	return &Unnamed{Is: is, Why: fmt.Sprintf(format, args...)}
}

// maxRange bounds what one typed range may name.
const maxRange = 5000

// Find reads what names one panel: its number, whole ("KB26-0142-1"), without
// check character ("KB26-0142"), as a small label has it ("0142-1") or only the
// serial ("142"), in any case, with or without hyphens; or its title or the
// studio's own reference, whole. What is short, or a name, must fit exactly one
// panel. The error of what was mistyped offers the nearest real ones.
func (r Roll) Find(typed string) (Number, error) {
	n, err := r.number(typed)
	called := r.Called[CalledAs(typed)]
	_, _, several := rangeEnds(typed)
	several = several || typed == "all" || strings.HasPrefix(typed, "batch:")
	switch {
	case len(called) == 0 && err != nil && several:
		ns, why := r.term(typed)
		if why == nil {
			why = unnamed("several", "one panel is taken here, and %s names %d: %s", clip(typed), len(ns), list(ns))
		}
		return "", why
	case len(called) == 0 && err != nil && !isDigits(bare(typed)):
		if u, ok := errors.AsType[*Unnamed](err); ok {
			u.Why += r.nearestCalled(typed)
		}
		return "", err
	case len(called) == 0 || err == nil && (n.Bare() == bare(typed) || slices.Contains(called, n)):
		return n, err
	case err == nil:
		return "", unnamed("several", "%q could be the number %s, or %s by its title or own reference: type the whole number", clip(typed), n, list(called))
	case len(called) > 1:
		return "", unnamed("several", "%q fits %s: type the number", clip(typed), list(called))
	}
	return called[0], nil
}

// nearestCalled offers the title or reference that is nearest to what was typed.
func (r Roll) nearestCalled(typed string) string {
	near := Nearest(CalledAs(typed), slices.Sorted(maps.Keys(r.Called)))
	if near == "" {
		return ""
	}
	return fmt.Sprintf("; nearest: %s, called %q", r.Called[near][0], clip(cmp.Or(r.Written[near], near)))
}

func (r Roll) number(typed string) (Number, error) {
	bare := bare(typed)
	if bare == "" || len(bare) > 40 {
		return "", unnamed("unknown", "%q is not a panel number", clip(typed))
	}
	serial := 0
	if isDigits(bare) {
		serial, _ = strconv.Atoi(bare)
	}
	var fits []Number
	for _, n := range r.Numbers {
		b := n.Bare()
		switch {
		case b == bare:
			return n, nil
		case b[:len(b)-1] == bare, serial > 0 && n.Serial() == serial, onLabel(n) == bare:
			fits = append(fits, n)
		}
	}
	switch len(fits) {
	case 1:
		return fits[0], nil
	case 0:
		if len(r.Numbers) == 0 {
			return "", unnamed("empty", "there is no panel %q: none is numbered yet", clip(typed))
		}
		if marks := r.marks(); markOf(bare) != "" && !slices.Contains(marks, markOf(bare)) {
			return "", &Unnamed{Is: "mark", Why: fmt.Sprintf("there is no panel %q%s", clip(typed), r.nearest(bare)), Marks: marks}
		}
		if n, err := ParseNumber(typed, r.NAAN); err == nil {
			return "", unnamed("unknown", "there is no panel %s in this book%s", n, r.nearest(bare))
		}
		if _, _, _, _, ok := scan(bare); ok {
			return "", unnamed("mistyped", "the last character of %q does not fit the number%s", clip(typed), r.nearest(bare))
		}
		if b := Key(strings.ToLower(typed)); r.Batches[b] != nil {
			return "", unnamed("unknown", "there is no panel %q, but a batch of that name: batch:%s", clip(typed), b)
		}
		is := Code("unknown")
		if !strings.ContainsAny(typed, "0123456789") {
			is = "name"
		}
		return "", unnamed(is, "there is no panel %q%s", clip(typed), r.nearest(bare))
	}
	return "", unnamed("several", "%q fits %s: type more of the number", clip(typed), list(fits))
}

// markOf is the mark that what looks like the beginning of a number begins with.
func markOf(bare string) string {
	m := strings.IndexAny(bare, capitals[:10])
	if m < 0 || len(bare) < m+6 || !isMark(bare[:m]) || !consists(bare[m:len(bare)-1], capitals[:10]) {
		return ""
	}
	return bare[:m]
}

// marks are those with which the numbers of the book begin.
func (r Roll) marks() (out []string) {
	for _, n := range r.Numbers {
		if m := markOf(n.Bare()); !slices.Contains(out, m) {
			out = append(out, m)
		}
	}
	return out
}

// onLabel is the serial with its check character, "0006-D", as a small label
// prints it.
func onLabel(n Number) string {
	s := string(n)
	if _, after, ok := strings.Cut(s, "-"); ok {
		s = after
	}
	return bare(s)
}

func list(ns []Number) string {
	var s []string
	for i, n := range ns {
		if i == 3 && len(ns) > 4 {
			return strings.Join(s, ", ") + fmt.Sprintf(" and %d more", len(ns)-3)
		}
		s = append(s, string(n))
	}
	return strings.Join(s, ", ")
}

// nearest names up to three known numbers with the fewest slips of the finger,
// at most two.
func (r Roll) nearest(bare string) string {
	least := 2
	var out []string
	for _, n := range r.Numbers {
		d := Slips(bare, n.Bare())
		if len(bare) > 3 {
			d = min(d, Slips(bare, onLabel(n)))
		}
		if d < least {
			least, out = d, nil
		}
		if d == least && len(out) < 3 {
			out = append(out, string(n))
		}
	}
	if out == nil {
		return ""
	}
	return "; nearest: " + strings.Join(out, ", ")
}

// Slips counts wrong, missing, extra and swapped characters (restricted
// Damerau-Levenshtein distance).
func Slips(a, b string) int {
	if d := len(a) - len(b); d > 2 || d < -2 {
		return 3
	}
	before, prev, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			c := 1
			if a[i-1] == b[j-1] {
				c = 0
			}
			row[j] = min(prev[j]+1, row[j-1]+1, prev[j-1]+c)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, prev, row = prev, row, before
	}
	return prev[len(b)]
}

// Select reads what stands on the command line: what [Roll.Find] reads, ranges
// ("0142-0155"), "batch:NAME" and "all", less the exceptions. The result is
// sorted and each panel stands once.
func (r Roll) Select(terms, except []string) ([]Number, error) {
	in, err := r.union(terms)
	if err != nil {
		return nil, err
	}
	if len(in) == 0 {
		return nil, unnamed("name", "no panel was named")
	}
	for _, t := range except {
		out, err := r.union([]string{t})
		for _, n := range out {
			i := slices.Index(in, n)
			if i < 0 {
				err = unnamed("none-left", "%q: %s was not named, so it cannot be left out", clip(t), n)
				break
			}
			in = slices.Delete(in, i, i+1)
		}
		if len(in) == 0 && err == nil {
			err = unnamed("none-left", "no panel is left: all that were named are left out again")
		}
		if u, ok := errors.AsType[*Unnamed](err); ok {
			u.Excepted = true
			return nil, u
		}
	}
	return in, nil
}

func (r Roll) union(terms []string) ([]Number, error) {
	var out []Number
	for _, t := range terms {
		for _, one := range r.Terms(t) {
			ns, err := r.term(one)
			if err != nil {
				return nil, err
			}
			out = append(out, ns...)
		}
	}
	return r.inOrder(out), nil
}

// Terms splits what was typed in one word at its commas, unless a panel bears
// all of it as its name.
func (r Roll) Terms(typed string) (out []string) {
	if len(r.Called[CalledAs(typed)]) > 0 {
		return []string{typed}
	}
	for one := range strings.SplitSeq(typed, ",") {
		if one = strings.TrimSpace(one); one != "" {
			out = append(out, one)
		}
	}
	return out
}

// inOrder returns numbers in the order of the roll, each once.
func (r Roll) inOrder(ns []Number) []Number {
	in := make(map[Number]bool, len(ns))
	for _, n := range ns {
		in[n] = true
	}
	return slices.DeleteFunc(slices.Clone(r.Numbers), func(n Number) bool { return !in[n] })
}

func (r Roll) term(t string) ([]Number, error) {
	if t == "all" {
		return slices.Clone(r.Numbers), nil
	}
	if b, ok := strings.CutPrefix(t, "batch:"); ok {
		ns := r.Batches[Key(strings.ToLower(b))]
		if len(ns) == 0 {
			near, there := Nearest(b, keysOf(r.Batches)), slices.Sorted(maps.Keys(r.Batches))
			switch {
			case near != "":
				near = "; nearest: batch:" + near
			case len(there) > 6:
				near = fmt.Sprintf("; there are %d others", len(there))
			case len(there) > 0:
				near = fmt.Sprintf("; there are %s", strings.Trim(strings.ReplaceAll(fmt.Sprint(there), " ", ", "), "[]"))
			}
			return nil, unnamed("batch", "there is no batch %q%s", clip(b), near)
		}
		return slices.Clone(ns), nil
	}
	from, to, isRange := rangeEnds(t)
	if !isRange || len(r.Called[CalledAs(t)]) > 0 {
		n, err := r.Find(t)
		return []Number{n}, err
	}
	a, err := r.Find(from)
	if err != nil {
		return nil, err
	}
	b, err := r.Find(to)
	if err != nil {
		return nil, err
	}
	first, last := slices.Index(r.Numbers, a), slices.Index(r.Numbers, b)
	if n, err := r.number(t); first > last && err == nil { // "0142-1" as a label has it
		return []Number{n}, nil
	}
	if first > last || a.Year() != b.Year() {
		return nil, unnamed("backwards", "the range %q runs backwards or over a year's end", clip(t))
	}
	out := slices.Clone(r.Numbers[first : last+1])
	if len(out) > maxRange {
		return nil, unnamed("several", "the range %q names more than %d panels", clip(t), maxRange)
	}
	return out, nil
}

func keysOf(batches map[Key][]Number) (out []string) {
	for k := range batches {
		out = append(out, string(k))
	}
	slices.Sort(out)
	return out
}

// rangeEnds splits "0142-0155", "KB26-0142..KB26-0155" or "142..155". A
// hyphen alone separates only two bare serials, since numbers hold hyphens.
func rangeEnds(t string) (from, to string, ok bool) {
	if from, to, ok = strings.Cut(t, ".."); ok {
		return from, to, true
	}
	from, to, ok = strings.Cut(t, "-")
	return from, to, ok && isDigits(from) && isDigits(to)
}
