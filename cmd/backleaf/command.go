package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/typed"
)

// flags are the flags of a command by name, each with what it is read into; what
// that holds before is the default. A field of an entry, or a function, is read
// when the book is open.
type flags map[string]any

// texts are what one flag says when it is given several times, commas and all.
type texts []string

// needed is a flag without which a command does nothing; the help says what to ask.
type needed struct{ into any }

// asked is a command with its flags.
type asked struct {
	*cobra.Command
	help  *help
	reads []func(*typed.Reader)
	needs []string
}

// run is one run of a command: the words after it, and the book once it is open.
type run struct {
	*app
	*studio.Session
	ctx  context.Context
	args []string
	form *asked
	key  seal.Key // of commands that sign with it
}

// command adds a command that opens no book by itself.
func (a *app) command(name string, fs flags, do func(*run) error) {
	if first, _, _ := strings.Cut(name, " "); a.only != "" && a.only != first {
		return // it would not be asked
	}
	f := a.form(name, fs)
	f.RunE = func(c *cobra.Command, args []string) error {
		for _, n := range f.needs {
			if strings.TrimSpace(c.Flag(n).Value.String()) == "" {
				return usage("", "%s", f.help.missing[n])
			}
		}
		if a.asJSON && a.asCSV {
			return usage("", "--json or --csv, not both")
		}
		if a.passphraseFile != "" {
			var err error
			if a.passphrase, err = keys.PassphraseIn(a.passphraseFile); err != nil {
				return err
			}
		}
		return do(&run{app: a, ctx: c.Context(), args: args, form: f})
	}
}

// reads adds a command that reads the book.
func (a *app) reads(name string, fs flags, do func(*run) error) {
	a.command(name, fs, func(r *run) error { return r.reading(do) })
}

// writes adds a command that writes to the book.
func (a *app) writes(name string, fs flags, do func(*run) error) {
	a.command(name, fs, func(r *run) error { return r.writing(do) })
}

func (r *run) reading(do func(*run) error) error { return r.app.read(r.ctx, r.with(do)) }
func (r *run) writing(do func(*run) error) error { return r.app.write(r.ctx, r.with(do)) }

func (r *run) with(do func(*run) error) func(*studio.Session) error {
	return func(s *studio.Session) error { r.Session = s; return do(r) }
}

// words puts the words after a command together.
func words(args []string) string { return strings.Join(args, " ") }

// read reads what the flags say of an entry.
func (f *asked) read(r *typed.Reader) {
	for _, read := range f.reads {
		read(r)
	}
}

// form makes a command of what the help says of it, below the command or folder
// that its name begins with.
func (a *app) form(name string, fs flags) *asked {
	h := helps()[name]()
	f := &asked{Command: &cobra.Command{Use: h.use, Short: h.short, Long: terminal.Reflow(h.long, a.width), Example: terminal.Folded(h.example, a.width)}, help: h}
	if least, most := h.takes(); most >= 0 || least > 0 {
		f.Args = func(_ *cobra.Command, args []string) error {
			if len(args) < least || most >= 0 && len(args) > most {
				first, _, _ := strings.Cut(strings.TrimSpace(h.example), "\n")
				if i := slices.Index(a.typed, words(args[max(0, len(args)-1):])); most >= 0 && len(args) > most && i > 1 && strings.HasPrefix(a.typed[i-2], "--") {
					return usage("put what belongs together in quotes: "+a.typed[i-2]+" \""+a.typed[i-1]+" "+a.typed[i]+"\"", "%q belongs to nothing", a.typed[i])
				}
				return usage("for example: "+first, "expected %s", cmp.Or(h.words, "no words"))
			}
			return nil
		}
	}
	for _, n := range slices.Sorted(maps.Keys(fs)) {
		f.declare(f.Flags(), n, fs[n])
	}
	parent, _, below := cutLast(name)
	if !below {
		f.GroupID = h.group
	}
	a.under(parent).AddCommand(f.Command)
	a.tree[name] = f.Command
	return f
}

// under finds a command, or makes a folder that only holds others.
func (a *app) under(name string) *cobra.Command {
	c, ok := a.tree[name]
	if !ok {
		c = a.form(name, nil).Command
		c.Args, c.RunE = noSuchCommand, showHelp
	}
	return c
}

// cutLast parts the name of a command from those it stands below.
func cutLast(name string) (before, last string, below bool) {
	i := strings.LastIndexByte(name, ' ')
	return name[:max(i, 0)], name[i+1:], i >= 0
}

// declare adds a flag. Only a list may be given twice: of two values one would
// silently count for nothing. A flag without a word of help is not shown.
func (f *asked) declare(to *pflag.FlagSet, name string, into any) {
	if m, ok := into.(needed); ok {
		f.needs, into = append(f.needs, name), m.into
	}
	usage, own := f.help.flags[name]
	if !own {
		usage = ofProgram()["flags"]().flags[name]
	}
	var set pflag.FlagSet
	switch p := into.(type) {
	case *bool:
		set.BoolVar(p, name, *p, usage)
	case *int:
		set.IntVar(p, name, *p, usage)
	case *int64:
		set.Int64Var(p, name, *p, usage)
	case *string:
		set.StringVar(p, name, *p, usage)
	case *[]string:
		set.StringSliceVar(p, name, *p, usage)
	case *texts:
		set.StringArrayVar((*[]string)(p), name, *p, usage)
	case *[]record.Pigment:
		t := set.StringArray(name, nil, usage)
		f.reads = append(f.reads, func(r *typed.Reader) { r.Into(name, into, *t...) })
	case *[]record.Face, *[]record.Means, *[]record.Use:
		t := set.StringSlice(name, strings.Fields(strings.Trim(fmt.Sprint(reflect.ValueOf(p).Elem()), "[]")), usage)
		f.reads = append(f.reads, func(r *typed.Reader) { r.Into(name, into, *t...) })
	default:
		preset := ""
		if v := reflect.Indirect(reflect.ValueOf(into)); v.Kind() != reflect.Func && !v.IsZero() {
			preset = fmt.Sprint(v.Interface())
		}
		t := set.String(name, preset, usage)
		f.reads = append(f.reads, func(r *typed.Reader) { r.Into(name, into, *t) })
	}
	d := set.Lookup(name)
	d.Hidden = usage == ""
	if name == "output" {
		d.Shorthand = "o"
	}
	if _, list := d.Value.(pflag.SliceValue); !list && d.Value.Type() != "bool" {
		d.Value = &once{Value: d.Value}
	}
	to.AddFlag(d)
}

// once is a flag that is given at most once.
type once struct {
	pflag.Value
	given bool
}

func (o *once) Set(s string) error {
	if o.given {
		return errors.New("given twice: which of the two is meant?")
	}
	o.given = true
	return o.Value.Set(s)
}
