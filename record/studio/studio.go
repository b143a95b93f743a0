// Package studio is what a studio's acts have in common: the open book with
// the clock it is worked by, the panels that were named, and how an act is
// written. Each noun has a room of its own below it: the bench, the shelf,
// handovers, papers, keys, copies, deposits, exchange and questions.
//
// Nothing here or below prints, ends the program, or keeps anything between
// two calls. What is to be said comes back as typed results; warnings are codes
// with typed values ([record.Said]); a refusal is a [refuse.Error]. Clock and
// randomness are handed in.
package studio

import (
	"cmp"
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"
	_ "time/tzdata" // a studio's time zone must be known on any machine

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/pattern"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// Session is an open book with the clock and the randomness it is worked with.
type Session struct {
	Book   *book.Book
	Clock  func() time.Time
	Random io.Reader       // of salts; nil: the system's
	Words  *tell.Catalogue // of the papers; nil: English
	// ClockIsRight says that the clock is right, however far it is from the
	// last entry; see Believable.
	ClockIsRight bool
}

// Catalogue returns the words that papers are drawn with.
func (s *Session) Catalogue() *tell.Catalogue { return cmp.Or(s.Words, tell.English()) }

// Chance returns the source of randomness.
func (s *Session) Chance() io.Reader {
	if s.Random == nil {
		return rand.Reader
	}
	return s.Random
}

// Progress is told how far long work has come, by the code of the stage. A nil
// Progress is told nothing.
type Progress func(stage string, done, total int64)

// Of returns the progress of one stage, as lower rooms take it.
func (p Progress) Of(stage string) func(done, total int64) {
	if p == nil {
		return nil
	}
	return func(done, total int64) { p(stage, done, total) }
}

// Busy tells of a stage that cannot say how far it has come, with how much
// there is, or 0; the function it returns tells of its end.
func (p Progress) Busy(stage string, total int64) (end func()) {
	if p == nil {
		return func() {}
	}
	p(stage, 0, total)
	return func() { p(stage, max(total, 1), max(total, 1)) }
}

// View is the book as an act sees it: the studio and the shelf, and of panels
// only those that were named.
type View struct {
	*Session
	Roll     record.Roll
	Shop     *record.Workshop
	Panels   []record.Number
	Alone    []record.Number // of these, those named one by one
	Excepted []record.Number // those that were left out by name
	Now      time.Time
	Zone     *time.Location
	AlsoAway bool          // panels that are not here are meant too
	Hands    []record.Hand // who does it; none: the studio's own maker
	Meant    Meant
	// Shops folds other panels than those that were named.
	Shops func(context.Context, ...record.Number) (*record.Workshop, error)
}

// fileLike is the name of a file, where a panel is named.
var fileLike = pattern.Of(`[^.]\.[A-Za-z]{3,4}$`)

// Look reads what an act on the named panels needs to know. Without terms no
// panels are looked up.
func (s *Session) Look(ctx context.Context, terms, except []string) (*View, error) {
	return s.look(ctx, terms, except, s.Book.AtBench)
}

// LookWhole is [Session.Look] with all that names no panel, such as every
// reading of the room: papers say by which entry they were made.
func (s *Session) LookWhole(ctx context.Context, terms, except []string) (*View, error) {
	return s.look(ctx, terms, except, s.Book.WorkshopOf)
}

func (s *Session) look(ctx context.Context, terms, except []string, fold func(context.Context, ...record.Number) (*record.Workshop, error)) (*View, error) {
	v := &View{Session: s, Now: s.Clock(), Shops: s.Book.AtBench}
	var err error
	if v.Roll, err = s.Book.Roll(ctx, slices.Concat(terms, except)...); err != nil {
		return nil, err
	}
	if len(terms) > 0 {
		v.Panels, err = v.Roll.Select(terms, except)
		if err != nil {
			err := NoPanel(err)
			if e, ok := errors.AsType[*refuse.Error](err); ok {
				_ = e.With(record.With("file", strings.Join(slices.DeleteFunc(slices.Clone(terms), func(t string) bool { return !fileLike().MatchString(t) }), " ")))
			}
			return nil, err
		}
		if len(except) > 0 {
			if v.Excepted, err = v.Roll.Select(except, nil); err != nil {
				return nil, NoPanel(err)
			}
		}
		for _, t := range terms {
			for _, one := range v.Roll.Terms(t) {
				if n, err := v.Roll.Find(one); err == nil {
					v.Alone = append(v.Alone, n)
				}
			}
		}
	}
	if v.Shop, err = fold(ctx, v.Panels...); err != nil {
		return nil, err
	}
	v.Zone = Zone(v.Shop.Studio)
	return v, nil
}

// NoPanel refuses what names no panels; nil stays nil.
func NoPanel(err error) error {
	u, ok := errors.AsType[*record.Unnamed](err)
	if !ok {
		return err
	}
	e := refuse.Cannot("no-such-panel", "%w", err)
	switch u.Is {
	case "empty":
		e = refuse.Cannot("no-panel-yet", "%w", err)
	case "name":
		e = refuse.Cannot("no-panel-called-so", "%w", err)
	case "mistyped":
		e = refuse.Cannot("number-mistyped", "%w", err)
	case "mark":
		e = refuse.Cannot("mark-of-others", "%w", err).With(record.With("marks", u.Marks))
	case "backwards":
		e = refuse.Cannot("range-backwards", "%w", err)
	case "none-left":
		e = refuse.Cannot("none-left", "%w", err)
	}
	if u.Excepted {
		e.Field = "except"
	}
	return e
}

// Which names the panels of which something is true.
func (v *View) Which(is func(*record.Panel) bool) (ns []record.Number) {
	for _, n := range v.Panels {
		if is(v.Shop.Panel(n)) {
			ns = append(ns, n)
		}
	}
	return ns
}

// Each says what there is to say of each panel: what is alike of several, once
// of all these panels.
func (v *View) Each(say func(*record.Panel) []record.Said) (ws []record.Said) {
	at := map[string]int{}
	of := map[int][]record.Number{}
	for _, n := range v.Panels {
		for _, s := range say(v.Shop.Panel(n)) {
			k := fmt.Sprint(s)
			if _, ok := at[k]; !ok {
				at[k], ws = len(ws), append(ws, s)
			}
			of[at[k]] = append(of[at[k]], n)
		}
	}
	for i, s := range ws {
		ws[i] = record.Say(s.Code, append(slices.Clip(s.Values), record.With("panels", of[i]))...)
	}
	return ws
}

// Local is the moment of the view in the studio's time zone.
func (v *View) Local() time.Time { return v.Now.In(v.Zone) }

// Zone returns the studio's time zone, or the computer's own.
func Zone(s record.Studio) *time.Location {
	if s.Zone != "" {
		if l, err := time.LoadLocation(s.Zone); err == nil {
			return l
		}
	}
	return time.Local
}
