package main

import (
	"backleaf/cmd/internal/terminal"
	"backleaf/record/pattern"
	"cmp"
	"fmt"
	"maps"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"backleaf/record"
	"backleaf/record/tell"
)

// groups are those of the help, as a painter thinks; each has a file of help.
var groups = []cobra.Group{{ID: "studio", Title: "The studio:"}, {ID: "shelf", Title: "The shelf:"}, {ID: "bench", Title: "At the bench:"},
	{ID: "paper", Title: "On paper:"}, {ID: "back", Title: "Looking back:"}, {ID: "keep", Title: "Keeping:"}}

// commands are all of them; what stands below another comes after it.
func commands() []func(*app) {
	return []func(*app){
		studioNew, studioShow, studioChange, keyNew, keyShow, keyPassphrase, keyRetire, keyLost, keySheet, keyRecover, newDemo,
		materialAdd, materialStarter, materialList, materialShow, lotAdd, lotList, lotTrace, recipeFrom, recipeList, recipeCompare, makerAdd, makerList,
		panelAdd, panelDescribe, panelPhoto, panelBrace, panelMark, panelIntend, panelResize, panelReuse, panelPublish, panelDiscard,
		newCoat, newCloth, newTrim, newSand, newPaint, newVarnish, newWarm, newRepeat, newBare, newRemove, newInspect, newClimate, newNote,
		newHandover, handoverShow, handoverForget, newAmend, newWithdraw, newDue, newPlan, newBench, newTreat, newCondition,
		newLabel, newCertificate, certificateWithdraw, newDossier, newSite,
		newAsk, newShow, newCheck, newCost, newFind, newList, newJournal,
		newDeposit, newVerify, newRebuild, headShow, headCompare, newBackup, newRestore, newImport, newExport, newLicences,
	}
}

// newRoot makes the command line: the command that args begin with, or all.
func newRoot(a *app, args ...string) *cobra.Command {
	a.width = cmp.Or(min(a.columns(a.out), 100), terminal.Usual)
	h := ofProgram()["backleaf"]()
	f := &asked{Command: &cobra.Command{
		Use: h.use, Short: h.short, Long: terminal.Reflow(h.long, a.width), Version: version(), SilenceErrors: true, SilenceUsage: true,
		Args: noSuchCommand, RunE: showHelp}, help: h}
	root := f.Command
	flagsOf := func(which string) string { return fmt.Sprintf("(flags .%s %d)", which, a.width) }
	root.SetUsageTemplate(strings.NewReplacer(".LocalFlags.FlagUsages", flagsOf("LocalFlags"), ".InheritedFlags.FlagUsages", flagsOf("InheritedFlags"),
		`Use "{{.CommandPath}} [command] --help" for more information about a command.`, `"{{.CommandPath}} COMMAND --help" tells more of each.`).Replace(root.UsageTemplate()))
	for name, into := range (flags{"book": &a.bookPath, "clock-is-right": &a.clockIsRight}) {
		f.declare(root.PersistentFlags(), name, into)
	}
	root.SetFlagErrorFunc(wrongFlag)
	for _, g := range groups {
		root.AddGroup(&g)
	}
	root.SetHelpCommandGroupID("keep")
	root.SetCompletionCommandGroupID("keep")
	for len(args) > 2 && args[0] == "--book" {
		args = args[2:]
	}
	if len(args) > 0 && args[0] == "--version" {
		return root
	}
	if len(args) > 0 && helps()[args[0]] != nil {
		a.only = args[0]
	}
	a.tree = map[string]*cobra.Command{"": root}
	for _, add := range commands() {
		add(a)
	}
	if a.only != "" {
		return root
	}
	a.complete(root)
	root.InitDefaultHelpCmd() // the library's own, in our words
	root.CompletionOptions.DisableNoDescFlag = true
	root.InitDefaultCompletionCmd(args...)
	for name, short := range map[string]string{"help": "more of a command: backleaf help coat", "completion": "let the terminal complete what you begin to type"} {
		if c, _, err := root.Find([]string{name}); err == nil && c != root {
			c.Short, c.Long = short, ""
			of := root
			if name == "completion" {
				of, c.RunE = c, showHelp
			}
			c.Args = func(_ *cobra.Command, args []string) error { return noSuchCommand(of, args) }
			for _, shell := range c.Commands() {
				where, line, _ := strings.Cut(ofProgram()["flags"]().flags[shell.Name()], ": ")
				shell.Short, shell.Long = "for "+shell.Name(), terminal.Reflow(where+":", a.width)+"\n\n  "+line
			}
		}
	}
	return root
}

// wrongFlag says what is wrong with a flag, and which is near.
func wrongFlag(c *cobra.Command, err error) error {
	if c.HasSubCommands() && c.Flags().NArg() > 0 {
		if err := c.Args(c, c.Flags().Args()); err != nil { // it is not the flag that is wrong
			return err
		}
	}
	hint := "see \"" + c.CommandPath() + " --help\""
	said := err.Error()
	if m := invalid().FindStringSubmatch(said); m != nil {
		said, hint = m[2]+" "+m[1]+": "+strings.Replace(m[3], "an integer", "a whole number", 1), ""
	}
	if name, ok := strings.CutPrefix(said, "flag needs an argument: "); ok {
		said, hint = name[strings.LastIndex(name, " ")+1:]+": what should follow it is missing", ""
	}
	if m := noFlag().FindStringSubmatch(said); m != nil {
		said = "there is no " + cmp.Or(m[1], "-"+m[2]) + " here"
		name := cmp.Or(strings.TrimPrefix(m[1], "--"), strings.ToLower(m[2]))
		near := strings.TrimPrefix(tell.English().Meant["--"+name], "--")
		if near == "" || c.Flags().Lookup(near) == nil {
			var names []string
			c.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
			near = record.Nearest(name, names)
		}
		if near != "" {
			hint = "did you mean --" + near + "? " + hint
		}
	}
	return usage(hint, "%s", said)
}

func init() { cobra.AddTemplateFunc("flags", terminal.Flags) }

// version says which build this is.
func version() string {
	out := "(unknown build)"
	b, ok := debug.ReadBuildInfo()
	if !ok {
		return out
	}
	out = b.Main.Version
	for _, s := range b.Settings {
		if s.Key == "vcs.revision" || s.Key == "vcs.time" {
			out += ", " + s.Value
		}
	}
	return out + ", " + b.GoVersion
}

// invalid is how the library says that a value of a flag cannot be taken.
var invalid = pattern.Of(`^invalid argument (".*") for "(?:-., )?(--[a-z-]+)" flag: (.*)$`)

// noFlag is how it says that there is none of that name, or letter.
var noFlag = pattern.Of(`^unknown (?:flag: (--.*)|shorthand flag: '(.)')`)

func showHelp(c *cobra.Command, _ []string) error { return c.Help() }

// noSuchCommand refuses words where only the name of a command can stand.
func noSuchCommand(c *cobra.Command, args []string) error {
	if c, args, _ = c.Find(args); len(args) == 0 {
		return nil
	}
	hint, path := "see \""+c.CommandPath()+" --help\"", strings.TrimPrefix(c.CommandPath()+" ", "backleaf ")
	if near := terminal.Meant(c, tell.English().Meant, path, strings.ToLower(args[0]), maps.Keys(helps())); near != "" {
		hint = "did you mean \"" + near + "\"?"
	}
	return usage(hint, "there is no command %q", args[0])
}
