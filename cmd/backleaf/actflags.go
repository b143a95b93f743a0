package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/typed"
)

// actFlags is the flags of one act, each with the field it is read into.
type actFlags struct {
	c     *cobra.Command
	o     moment
	reads []func(*typed.Reader)
	needs []func() error
	terms func(args []string) (panels []string, err error)
}

// onPanels makes a command that writes down an act on panels: fill names its
// flags, what are the panels it asks for.
func onPanels[B record.Body](a *app, c *cobra.Command, what string, body *B, fill func(*actFlags)) *cobra.Command {
	f := newFlags(c)
	if what != "" {
		c.Args = wanted(1, -1, what)
	}
	fill(f)
	f.o.flags(c)
	if (*body).Kind().Traits().Layer {
		f.o.coatFlags(c)
	}
	return f.does(a, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (studio.Written, error) {
		return f.o.perform(ctx, v, r, at, *body)
	})
}

func newFlags(c *cobra.Command) *actFlags {
	return &actFlags{c: c, terms: func(args []string) ([]string, error) { return args, nil }}
}

// does lets the command do something with what its flags were read into.
func (f *actFlags) does(a *app, do doing) *cobra.Command {
	f.c.RunE = func(c *cobra.Command, args []string) error {
		for _, need := range f.needs {
			if err := need(); err != nil {
				return err
			}
		}
		terms, err := f.terms(args)
		if err != nil {
			return err
		}
		return a.atBench(c.Context(), &f.o, terms, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (studio.Written, error) {
			if f.read(r); r.Err() != nil {
				return studio.Written{}, r.Err()
			}
			return do(ctx, v, r, at)
		})
	}
	return f.c
}

// keys takes the words of the command for keys of the shelf; none is a panel.
func (f *actFlags) keys(into ...*record.Key) {
	f.terms = func(args []string) ([]string, error) {
		for i, k := range into {
			*k = record.Key(strings.ToLower(args[i]))
		}
		return nil, nil
	}
}

func (f *actFlags) read(r *typed.Reader) {
	for _, read := range f.reads {
		read(r)
	}
}

// text is a flag of free text.
func (f *actFlags) text(into *string, name, usage string) {
	f.c.Flags().StringVar(into, name, "", usage)
}

// need refuses the command without one of its flags.
func (f *actFlags) need(name, hint, ask string) {
	f.needs = append(f.needs, func() error { return needs(f.c.Flag(name).Value.String(), hint, ask) })
}

// said is a text that is given by --text, or stands last among the words.
func (f *actFlags) said(into *string, what string) {
	f.text(into, "text", what)
	f.terms = func(args []string) ([]string, error) {
		last := len(args) - 1
		switch {
		case *into != "":
			return args, nil
		case last < 1:
			return nil, usage("say it with --text \"…\", or as the last words in quotes", "what was seen or done?")
		}
		*into = args[last]
		return args[:last], nil
	}
}

// value is a flag of a measured value.
func (f *actFlags) value(into typed.Value, name, usage string) {
	t := f.c.Flags().String(name, "", usage)
	f.reads = append(f.reads, func(r *typed.Reader) { r.Text(name, *t, into) })
}

// gauge is a flag of what is measured with a gauge.
func (f *actFlags) gauge(into typed.Value, name, usage string) {
	t := f.c.Flags().String(name, "", usage)
	f.reads = append(f.reads, func(r *typed.Reader) { r.Gauge(name, *t, into) })
}

// when is a flag of a date.
func (f *actFlags) when(into *record.When, name, usage string) {
	t := f.c.Flags().String(name, "", usage)
	f.reads = append(f.reads, func(r *typed.Reader) { r.When(*t, into) })
}

// faces is a flag of faces.
func (f *actFlags) faces(into *[]record.Face, name, usage string, preset ...string) {
	t := f.c.Flags().StringSlice(name, preset, usage)
	f.reads = append(f.reads, func(r *typed.Reader) { *into = r.Faces(name, *t) })
}

// pigments is a flag of pigments.
func (f *actFlags) pigments(into *[]record.Pigment, usage string) {
	t := f.c.Flags().StringArray("pigment", nil, usage)
	f.reads = append(f.reads, func(*typed.Reader) {
		if len(*t) > 0 {
			*into = typed.Pigments(*t)
		}
	})
}

// word is a flag of a closed list of words, which end the help where it asks
// for them by a colon.
func word[T ~string](f *actFlags, into *T, name, usage string) {
	t := f.c.Flags().String(name, string(*into), usage)
	f.reads = append(f.reads, func(r *typed.Reader) { typed.Word(r, name, *t, into) })
}

// words is a flag of several words of a closed list.
func words[T ~string](f *actFlags, into *[]T, name, usage string) {
	t := f.c.Flags().StringSlice(name, nil, usage)
	f.reads = append(f.reads, func(r *typed.Reader) { *into = typed.Words[T](r, name, *t) })
}

// oneOf lists the words of a closed list for the help.
func oneOf(list string) string { return strings.Join(record.Words(list), ", ") }

// coating is the flags of a wet application.
func (f *actFlags) coating(c *record.Coating) {
	t := f.c.Flags().String("with", "", "lot or material, or a mix: \"3 primer + 1 sealer\"")
	f.reads = append(f.reads, func(r *typed.Reader) { c.Mix = r.Mix(*t) })
	f.value(&c.Thinned, "thinned", "water added, as a share of the volume: 10%")
	f.text(&c.Thinner, "thinner", "what it was thinned with, if not water")
	f.text(&c.Tool, "tool", "brush, roller, knife …")
	f.value(&c.WetTotal, "amount", "wet amount for all panels together: \"220 g\" or \"150 mL\"")
	f.value(&c.WetEach, "amount-each", "wet amount for each panel")
	f.value(&c.Temperature, "temp", "temperature of the room: \"21 °C\" or \"70 F\"")
	f.value(&c.Humidity, "rh", "relative humidity of the room: 55%")
	f.gauge(&c.WetFilm, "wet-film", "wet thickness measured with a gauge: \"100 µm\"")
	f.gauge(&c.DryFilm, "dry-film", "dry thickness measured")
	f.text(&c.Note, "note", "remark")
}
