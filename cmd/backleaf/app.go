package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"time"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"

	"github.com/go-json-experiment/json"
	"github.com/spf13/cobra"
)

// app is one run of the program: where it reads and writes, and its clock.
type app struct {
	in       io.Reader
	out, err io.Writer
	env      func(string) string
	now      func() time.Time
	random   io.Reader       // of salts; nil: the system's
	lang     *tell.Catalogue // words of what is said; nil: English

	bookPath     string
	clockIsRight bool // however far it is from the last entry
	asJSON       bool
	asCSV        bool
	typed        []string // the words of the command line

	passphraseFile string // of --passphrase-file
	passphrase     []byte // which was in it

	width int                       // of the help
	only  string                    // the command that alone is made; empty: all
	tree  map[string]*cobra.Command // the commands by name

	interrupted <-chan struct{} // closed when the run is to end; nil: never
	clear       func()          // takes the picture of progress off the terminal; nil: there is none
}

// Exit codes, printed in the help of the root command.
const (
	exitDone      = 0
	exitError     = 1
	exitUsage     = 2
	exitFinding   = 3
	exitIntegrity = 4
	exitNoBook    = 5
	exitNewer     = 6

	exitUnverified = 7
)

// failure is an error with its exit code and one hint for what to do next.
type failure struct {
	err  error
	hint string
	code int
}

func (f *failure) Error() string { return f.err.Error() }
func (f *failure) Unwrap() error { return f.err }

// usage is a mistake in the words of the command line.
func usage(hint, format string, args ...any) error {
	return &failure{fmt.Errorf(format, args...), hint, exitUsage}
}

// run executes one command line and returns the exit code.
func (a *app) run(parent context.Context, args []string) int {
	ctx, stop := context.WithCancel(context.WithoutCancel(parent)) // canceled is all that is said of a signal
	defer context.AfterFunc(parent, stop)()
	a.interrupted = ctx.Done()
	out := &outlet{Writer: a.out}
	a.out = out
	args = typed.Unquoted(args)
	a.typed = args
	root := newRoot(a, args...)
	a.asJSON = slices.Contains(args, "--json") // also where the words are wrong
	root.SetArgs(args)
	root.SetIn(a.in)
	root.SetOut(a.out)
	root.SetErr(a.err)
	asked, err := root.ExecuteContextC(ctx)
	if err == nil && out.err != nil {
		err = fmt.Errorf("it is done, but not all of it could be said: %w", out.err)
	}
	if err == nil {
		return exitDone
	}
	said, hint, exit := refused(a.catalogue(), err)
	if errors.Is(err, errQuiet) {
		return exit
	}
	said = asTyped(asked, said, err)
	hint = cmp.Or(hint, ofFlag(asked, said))
	if _, field := errors.AsType[*record.FieldError](err); hint == "" && (field || exit == exitUsage) {
		hint = "see \"" + asked.CommandPath() + " --help\""
	}
	if errors.Is(err, context.Canceled) {
		said, hint = "stopped: nothing was recorded", ""
	}
	if a.asJSON {
		code := ""
		if r, ok := errors.AsType[*refuse.Error](err); ok {
			code = r.Said.Code
		}
		a.problem(struct {
			Error   string `json:"error"`
			Hint    string `json:"hint,omitzero"`
			Refused string `json:"refused,omitzero"`
			Exit    int    `json:"exit_code"`
		}{said, hint, code, exit})
		return exit
	}
	a.talk("backleaf: %s", said)
	if hint != "" {
		a.talk("hint: %s", hint)
	}
	return exit
}

// outlet remembers why something could not be said.
type outlet struct {
	io.Writer
	err error
}

func (o *outlet) Write(b []byte) (int, error) {
	n, err := o.Writer.Write(b)
	o.err = cmp.Or(o.err, err)
	return n, err
}

// Unwrap is the terminal itself, if it is one.
func (o *outlet) Unwrap() io.Writer { return o.Writer }

// errQuiet ends a command with its exit code when everything has been said.
var errQuiet = errors.New("said already")

// quiet ends a command with an exit code and no further word.
func quiet(code int) error { return &failure{errQuiet, "", code} }

// say prints data for the reader.
func (a *app) say(format string, args ...any) {
	a.cleared()
	fmt.Fprint(a.out, terminal.Wrap(fmt.Sprintf(format, args...), a.columns(a.out)), "\n")
}

// talk prints a remark that is not data.
func (a *app) talk(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if a.asJSON {
		a.problem(struct {
			Remark string `json:"remark"`
		}{terminal.Wrap(text, 0)})
		return
	}
	a.cleared()
	fmt.Fprint(a.err, terminal.Wrap(text, a.columns(a.err)), "\n")
}

// problem prints what is not data where programs read.
func (a *app) problem(v any) {
	if b, err := json.Marshal(v); err == nil {
		a.cleared()
		fmt.Fprintf(a.err, "%s\n", b)
	}
}

// words returns the words to speak with, as they are said now in a studio's
// time zone and units.
func (a *app) words(s record.Studio) *tell.Catalogue {
	return a.catalogue().At(a.now(), studio.Zone(s)).For(s)
}

func (a *app) catalogue() *tell.Catalogue { return cmp.Or(a.lang, tell.English()) }

// path returns the file of the book.
func (a *app) path() string {
	path := cmp.Or(a.bookPath, a.env("BACKLEAF_BOOK"), "studio.sqlite")
	if real, err := filepath.EvalSymlinks(path); err == nil {
		return real // photographs, papers and key stand beside the real file
	}
	return path
}

// session is a book with the clock and randomness of this run.
func (a *app) session(b *book.Book) *studio.Session {
	return &studio.Session{Book: b, Clock: a.now, Random: a.random, Words: a.lang, ClockIsRight: a.clockIsRight}
}

// read opens the book for reading and hands it to do.
func (a *app) read(ctx context.Context, do func(*studio.Session) error) error {
	b, err := book.OpenReadOnly(ctx, a.path())
	if err != nil {
		return err
	}
	defer b.Close()
	if b.Newer() {
		a.talk("newer: may be out of date; a later program wrote this book")
	}
	return do(a.session(b))
}

// write opens the book for writing and hands it to do.
func (a *app) write(ctx context.Context, do func(*studio.Session) error) error {
	b, err := book.Open(ctx, a.path())
	if err != nil {
		return err
	}
	s := a.session(b)
	last, err := b.Entries(ctx, book.Filter{Last: 1})
	if err == nil && len(last) > 0 {
		err = s.Believable(last[0].Entry.Written, a.now().Location())
	}
	if err == nil {
		err = do(s)
	}
	if cerr := b.Close(); err == nil {
		err = cerr
	}
	return err
}

// columns is how wide what is written there may be; 0: as wide as it comes.
func (a *app) columns(w io.Writer) int { return terminal.Columns(w, a.env("COLUMNS")) }

func (a *app) table() *terminal.Table { return &terminal.Table{Out: a.out, Width: a.columns(a.out)} }
