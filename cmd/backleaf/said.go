package main

import (
	"cmp"
	"errors"
	"io/fs"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"

	"github.com/spf13/cobra"
)

// warn prints warnings.
func (a *app) warn(v *studio.View, ws []record.Said) {
	c := a.catalogue()
	if v != nil {
		c = c.At(v.Now, v.Zone).For(v.Shop.Studio)
	}
	for _, w := range ws {
		a.talk("%s", tell.Say(c, w))
	}
}

// exitCodes are the exit codes of refusals.
var exitCodes = map[refuse.Class]int{refuse.Failed: exitError, refuse.Unclear: exitUsage, refuse.Broken: exitIntegrity, refuse.NoBook: exitNoBook, refuse.Later: exitNewer}

// ofBook says what to do where a book is not as it should be.
var ofBook = []struct {
	is   error
	exit int
	hint string
}{
	{book.ErrNoBook, exitNoBook, "make one with \"backleaf studio new\", or name it with --book FILE"},
	{book.ErrTwoNames, 0, "make a book of its own: \"backleaf backup COPY\", move this name away, and \"backleaf restore COPY --highest none\""},
	{book.ErrOtherLog, 0, "move that file, whose name ends with -wal, into another folder: it may hold the last entries of the earlier book; then try again"},
	{book.ErrNewer, exitNewer, "use the newer program that wrote this book; nothing was changed"},
	{book.ErrBroken, exitIntegrity, "throw nothing away: keep a copy of it as it is, and make a book of the last backup, elsewhere: \"backleaf --book new.sqlite restore BACKUP --highest NUMBER\""},
}

// asTyped names the flag where a refusal names the field that it is read into.
func asTyped(c *cobra.Command, said string, err error) string {
	f, ok := errors.AsType[*record.FieldError](err)
	if !ok {
		return said
	}
	why, ok := strings.CutPrefix(said, f.Field+": ")
	field, set := strings.CutPrefix(f.Field, "change/")
	flag := typed.FlagOf(field)
	if last := field[strings.LastIndex(field, "/")+1:]; c.Flags().Lookup(last) != nil {
		flag = last
	}
	switch {
	case !ok || f.Field == "":
	case set && c.Flags().Lookup("set") != nil:
		if !strings.Contains(c.Flag("set").Value.String(), field+"=") {
			field = flag // as it was asked for
		}
		return "--set " + field + ": " + why
	case c.Flags().Lookup(flag) != nil:
		return "--" + flag + ": " + why
	case strings.HasPrefix(why, `"`) || strings.HasPrefix(f.Field, "panels"): // what was typed
		return why
	}
	return said
}

// ofFlag is what the help says of the flag that a refusal begins with.
func ofFlag(c *cobra.Command, said string) string {
	name, _, _ := strings.Cut(strings.TrimSuffix(strings.Fields(said)[0], ":"), "=")
	if words := strings.Fields(said); name == "--set" && len(words) > 1 { // it sets a field that has a flag elsewhere
		field := strings.TrimSuffix(words[1], ":")
		if usage := ofProgram()["flags"]().flags[typed.FlagOf(field)]; usage != "" {
			return name + " " + field + ": " + usage
		}
		return ""
	}
	f := c.Flags().Lookup(strings.TrimPrefix(name, "--"))
	if len(name) == 2 {
		f = c.Flags().ShorthandLookup(name[1:])
	}
	if f == nil || f.Usage == "" || name[0] != '-' {
		return ""
	}
	return name + ": " + f.Usage
}

// refused says a refusal in the words of the command line: an input is the
// flag of that name.
func refused(c *tell.Catalogue, err error) (said, hint string, exit int) {
	said, exit = err.Error(), exitError
	if r, ok := errors.AsType[*refuse.Error](err); ok {
		if err == error(r) && r.Field != "" {
			said = "--" + said
		}
		hint, exit = c.Fill(c.Hints[r.Said.Code], r.Said.Values...), exitCodes[r.Class]
	}
	if p, ok := errors.AsType[*fs.PathError](err); ok { // "open FILE: why", where "open" tells a person nothing
		said = strings.Replace(said, p.Error(), p.Path+": "+p.Err.Error(), 1)
	}
	if f, ok := errors.AsType[*failure](err); ok {
		hint, exit = f.hint, f.code
	}
	for _, b := range ofBook {
		if errors.Is(err, b.is) {
			hint, exit = cmp.Or(b.hint, hint), cmp.Or(b.exit, exit)
		}
	}
	if errors.Is(err, book.ErrNotBook) {
		hint = cmp.Or(hint, "name the studio's book with --book FILE")
	}
	if errors.Is(err, fs.ErrNotExist) {
		hint = cmp.Or(hint, "is the name right, and the folder?")
	}
	if errors.Is(err, fs.ErrExist) {
		hint = cmp.Or(hint, "name one that is not there yet; what is there was left as it was")
	}
	return said, hint, exit
}
