// Package site writes the pages behind the symbols into a folder that any file
// host serves: a folder a panel, named as in its link.
//
//	a/…                  assets, named by their SHA-256
//	KB2601421/index.html the page of KB26-0142-1
//	404.html             for an address without a panel
//	index.html           a list, only if asked for
//	status               the studio's signed word of today (seal.Status)
//
// A visitor at any moment meets whole pages: each file is written beside its
// place and takes its name in one step, assets before the pages that name them,
// the status after all pages, and nothing is deleted before that. What a run
// that was cut off left undone, the next one does. A page whose record did not
// change stays as it is, to the byte and to its date: TestKilled and
// TestOneOfMany hold the room to this.
//
// A page carries the record as it stood when it last changed, so that entries
// about other panels leave it alone.
package site

import (
	"cmp"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// Order says what is to be written.
type Order struct {
	Dir       string
	Index     bool      // a list of the panels
	Anew      bool      // draw all pages again, also those that did not change
	DryRun    bool      // only say what would be done
	Key       *seal.Key // the studio's current key; nil if it has none
	Unsigned  bool      // without it, as was asked
	Catalogue *tell.Catalogue
	Progress  studio.Progress
}

// Result says what was done, or would be.
type Result struct {
	Shown     int             `json:"shown"`                // panels
	Written   []record.Number `json:"written,omitempty"`    // their pages
	TakenBack []record.Number `json:"taken_back,omitempty"` // pages that say so
	Removed   []string        `json:"removed,omitempty"`    // folders
	Files     int             `json:"files"`                // written in all
	Status    time.Time       `json:"status,omitzero"`
	Warnings  []record.Said   `json:"-"`
	Means     []record.Said   `json:"-"` // the same for a reader
	Next      []record.Said   `json:"-"` // what to do now
}

// tell says what was done, and what to do next.
func (r *Result) tell(o Order, link string, list bool) {
	say := func(code string, values ...record.Value) { r.Means = append(r.Means, record.Say(code, values...)) }
	dry := record.With("dry", record.No)
	if o.DryRun {
		dry = record.With("dry", record.Yes)
	}
	say("site-written", record.With("folder", o.Dir), record.With("shown", r.Shown), record.With("written", len(r.Written)), record.With("kept", r.Shown-len(r.Written)), dry)
	for _, n := range r.Written {
		say("site-page", record.With("panel", n), dry)
	}
	if list {
		say("site-list", record.With("name", index), dry)
	}
	for _, n := range r.TakenBack {
		say("site-taken-back", record.With("panel", n))
	}
	for _, name := range r.Removed {
		say("site-removed", record.With("name", name), dry)
	}
	if !r.Status.IsZero() && !o.DryRun {
		say("site-status", record.With("date", record.Moment(r.Status)))
	}
	switch {
	case r.Shown == 0:
		r.Next = []record.Said{record.Say("site-nothing")}
	case link != "" && !o.DryRun:
		r.Next = []record.Said{record.Say("site-try", record.With("link", tell.InLetters(link)))}
	}
}

// Write brings the folder up to the book.
func Write(ctx context.Context, s *studio.Session, o Order) (Result, error) {
	o.Catalogue = cmp.Or(o.Catalogue, tell.English())
	if err := studio.Known(s.Book); err != nil {
		return Result{}, err
	}
	f, err := open(o.Dir)
	if err != nil {
		return Result{}, err
	}
	j, err := openJournal(ctx, s.Book)
	if err != nil {
		return Result{}, err
	}
	w := &writer{Order: o, folder: f, journal: j, session: s}
	if o.DryRun {
		err = w.write(ctx)
	} else if err = os.MkdirAll(o.Dir, 0o755); err == nil {
		err = safefile.Alone(o.Dir, func() error {
			// One place for all unfinished files: a folder of ten thousand is not looked through for each.
			return safefile.Scratch(filepath.Join(o.Dir, status), func(dir string) error { f.scratch = dir; return w.write(ctx) })
		})
	}
	if err == nil {
		w.result.tell(o, j.shop.Studio.LinkBase, w.files[index])
	}
	return w.result, err
}

// open looks at the folder, which must be a site of ours, empty, or not there.
func open(dir string) (*folder, error) {
	names, err := os.ReadDir(dir)
	if errors.Is(err, os.ErrNotExist) {
		return newFolder(dir), nil
	}
	if errors.Is(err, syscall.ENOTDIR) {
		return nil, refuse.Cannot("no-site-there", "%s: a site is a folder, and a file stands there", dir)
	}
	if err != nil {
		return nil, refuse.Because("site-folder", err)
	}
	f := newFolder(dir)
	begun := true // nothing but what a first run writes first
	for _, n := range names {
		begun = begun && (n.Name() == assets || strings.HasPrefix(n.Name(), safefile.Prefix))
	}
	if _, ok := f.mark(notFound); !ok && !begun {
		return nil, refuse.Cannot("no-site-there", "%s holds other files, and is no site of a studio", dir).With(record.With("folder", dir))
	}
	return f, f.readAssets()
}
