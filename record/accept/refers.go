package accept

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
)

// Known answers what a book already holds. An entry may only refer to what is
// there before it.
type Known interface {
	// StudioNow returns the studio as it stands; false before the first entry.
	StudioNow() (record.Studio, bool)
	// HasPanel reports that a panel of this number was cut.
	HasPanel(record.Number) (bool, error)
	// Versions returns the entries of a kind that describe the thing of this
	// key, in the order of the journal; for a studio the key is empty.
	Versions(kind record.Kind, key record.Key) ([]Version, error)
	// Lot returns a lot as it stands and the entry that describes it; false
	// if there is none.
	Lot(record.Key) (record.Lot, bool, error)
	// History returns an entry as first written and, oldest first, the
	// amendments made to it.
	History(seq int64) (record.Entry, []record.Entry, bool, error)
}

// Refers checks everything an entry points at: the studio, panels, makers,
// materials, lots, earlier entries. Errors are of type [*record.FieldError],
// or those of k.
func Refers(e record.Entry, k Known) error {
	studio, open := k.StudioNow()
	if s, ok := e.Body.(record.Studio); !ok && !open {
		return refuse("kind", "the first entry of a book opens the studio")
	} else if err := checkStudio(s, studio, open); ok && err != nil {
		return err
	}
	if err := checkNumbers(e, k, studio.NAAN); err != nil {
		return err
	}
	if err := checkDescribed("studio_as", "studio", "", e.StudioAs, k); err != nil {
		return err
	}
	for i, h := range e.Makers {
		at := fmt.Sprintf("makers/%d/maker", i)
		if h.Maker == record.Unknown {
			continue
		}
		if err := checkKey(at, "maker", h.Maker, h.As, k); err != nil {
			return err
		}
	}
	if err := checkShelf(e.Body, k); err != nil {
		return err
	}
	switch b := e.Body.(type) {
	case record.Lot:
		if _, taken, err := k.Lot(b.Key); err != nil {
			return err
		} else if taken {
			return refuse("key", "lot %s is on the shelf already", b.Key)
		}
	case record.Amended:
		return checkAmendment(k, b, e.Panels)
	case record.Withdrawn:
		return checkWithdrawal(k, b, e.Panels)
	case record.Forgotten:
		return refersTo(k, "entry", b.Entry, nil, func(t record.Kind) bool { return t == "handed-over" || t == "lot" })
	case record.LabelPrinted:
		if b.AsOf != 0 {
			return refersTo(k, "as_of", b.AsOf, nil, nil)
		}
	}
	return checkEntries(e, k)
}

func checkStudio(s, now record.Studio, open bool) error {
	switch {
	case !open:
		return nil
	case s.Mark != now.Mark:
		return refuse("mark", "the mark stays as it is: it is part of every number given so far")
	case s.NAAN != now.NAAN:
		return refuse("naan", "the prefix stays as it is: the last character of every number was reckoned with it")
	case s.Journal != "" && s.Journal != now.Journal:
		return refuse("journal", "the journal has its name from its first entry")
	}
	return nil
}

func checkNumbers(e record.Entry, k Known, naan string) error {
	_, cut := e.Body.(record.Cut)
	for i, n := range e.Panels {
		f := "panels/" + strconv.Itoa(i)
		if _, err := record.ParseNumber(string(n), naan); err != nil {
			return refuse(f, "%v", err)
		}
		has, err := k.HasPanel(n)
		switch {
		case err != nil:
			return err
		case cut && has:
			return refuse(f, "%s is taken by another panel", n)
		case !cut && !has:
			return refuse(f, "there is no panel %s", n)
		}
	}
	return nil
}

// checkKey wants a thing of the shelf to be there, and the entries named to
// be among those that describe it.
func checkKey(at string, kind record.Kind, key record.Key, as []int64, k Known) error {
	vs, err := k.Versions(kind, key)
	if err != nil {
		return err
	}
	if len(vs) == 0 {
		place := " on the shelf"
		if kind == "maker" {
			place = " in this studio"
		}
		return refuse(at, "there is no %s %s%s", kind, key, place)
	}
	return among(at+"_as", as, vs)
}

func checkDescribed(at string, kind record.Kind, key record.Key, as []int64, k Known) error {
	if len(as) == 0 {
		return nil
	}
	vs, err := k.Versions(kind, key)
	if err != nil {
		return err
	}
	return among(at, as, vs)
}

func among(at string, as []int64, vs []Version) error {
	for _, seq := range as {
		if !slices.ContainsFunc(vs, func(v Version) bool { return v.Seq == seq }) {
			return refuse(at, "E%d does not describe it", seq)
		}
	}
	return nil
}

func checkShelf(b record.Body, k Known) error {
	for _, m := range record.Mentions(b) {
		if m.Material != "" && m.Material != record.Unknown {
			if err := checkKey(m.Place, "material", m.Material, m.As, k); err != nil {
				return err
			}
		}
		if m.Lot == "" || m.Lot == record.Unknown {
			continue
		}
		l, ok, err := k.Lot(m.Lot)
		switch {
		case err != nil:
			return err
		case !ok:
			return refuse(m.LotPlace, "there is no lot %s on the shelf", m.Lot)
		case m.Material != "" && l.Material != m.Material:
			return refuse(m.LotPlace, "lot %s is a lot of %s, not of %s", m.Lot, l.Material, m.Material)
		}
	}
	if l, ok := b.(record.Lot); ok && l.Offcut != "" {
		if of, ok, err := k.Lot(l.Offcut); err != nil {
			return err
		} else if !ok || of.Material != l.Material {
			return refuse("offcut_of", "there is no lot %s of %s on the shelf", l.Offcut, l.Material)
		}
	}
	return nil
}

// checkEntries looks at the fields that name earlier entries.
func checkEntries(e record.Entry, k Known) error {
	var err error
	record.Walk(e.Body, func(at string, f record.Field, v reflect.Value) {
		want, names := strings.CutPrefix(f.Ref, "entry ")
		if !names || err != nil {
			return
		}
		err = refersTo(k, at, v.Int(), e.Panels, func(k record.Kind) bool {
			return string(k) == want || want == "layer" && k.Traits().Layer
		})
	})
	return err
}

func refersTo(k Known, field string, seq int64, panels []record.Number, fits func(record.Kind) bool) error {
	old, _, ok, err := k.History(seq)
	if err != nil {
		return err
	}
	if !ok {
		return refuse(field, "there is no entry E%d", seq)
	}
	if fits != nil && !fits(old.Kind()) {
		return refuse(field, "E%d is of kind %s", seq, old.Kind())
	}
	for i, n := range panels {
		if !slices.Contains(old.Panels, n) {
			return refuse("panels/"+strconv.Itoa(i), "E%d is not about %s", seq, n)
		}
	}
	return nil
}
