package main

import (
	"cmp"
	"fmt"
	"runtime/debug"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"backleaf/record"
	"backleaf/record/pattern"
)

// The groups of the help, as a painter thinks.
const (
	groupStudio = "studio"
	groupShelf  = "shelf"
	groupBench  = "bench"
	groupPaper  = "paper"
	groupBack   = "back"
	groupKeep   = "keep"
)

// A command stands in a group of the help, in this order.
type command struct {
	group, name string
	make        func(*app) *cobra.Command
}

func commands() []command {
	return []command{
		{groupStudio, "studio", newStudio}, {groupStudio, "demo", newDemo},
		{groupShelf, "material", newMaterial}, {groupShelf, "lot", newLot}, {groupShelf, "recipe", newRecipe}, {groupShelf, "maker", newMaker},
		{groupBench, "panel", newPanel}, {groupBench, "coat", newCoat}, {groupBench, "cloth", newCloth}, {groupBench, "trim", newTrim},
		{groupBench, "sand", newSand}, {groupBench, "paint", newPaint}, {groupBench, "varnish", newVarnish}, {groupBench, "warm", newWarm},
		{groupBench, "repeat", newRepeat}, {groupBench, "bare", newBare}, {groupBench, "remove", newRemove}, {groupBench, "inspect", newInspect},
		{groupBench, "climate", newClimate}, {groupBench, "note", newNote}, {groupBench, "handover", newHandover}, {groupBench, "amend", newAmend},
		{groupBench, "withdraw", newWithdraw}, {groupBench, "due", newDue}, {groupBench, "plan", newPlan}, {groupBench, "bench", newBench},
		{groupBench, "treat", newTreat}, {groupBench, "condition", newCondition},
		{groupPaper, "label", newLabel}, {groupPaper, "certificate", newCertificate}, {groupPaper, "dossier", newDossier}, {groupPaper, "site", newSite},
		{groupBack, "ask", newAsk}, {groupBack, "show", newShow}, {groupBack, "check", newCheck}, {groupBack, "cost", newCost},
		{groupBack, "find", newFind}, {groupBack, "list", newList}, {groupBack, "journal", newJournal},
		{groupKeep, "deposit", newDeposit}, {groupKeep, "verify", newVerify}, {groupKeep, "rebuild", newRebuild}, {groupKeep, "head", newHead},
		{groupKeep, "backup", newBackup}, {groupKeep, "restore", newRestore}, {groupKeep, "import", newImport}, {groupKeep, "export", newExport},
		{groupKeep, "licences", newLicences},
	}
}

// newRoot makes the command line: the command that args begin with, or all.
func newRoot(a *app, args ...string) *cobra.Command {
	root := &cobra.Command{
		Use:     "backleaf",
		Short:   "the record of a painting panel, from bare board to the buyer's wall",
		Version: version(),
		Long: `backleaf keeps the record of painting panels made by hand, from the bare board
to the buyer's wall, and prints the label for the back and the certificate.

Panels are named by number (KB26-0142-1), by the short end of it (0142), as a
range (0142-0155), as batch:NAME, by title in quotes or by your own older number;
--except takes some out again.

Where the output is a terminal, lines are broken at its width, or at $COLUMNS;
into a file or another program they go whole. With --json errors are JSON too.

Exit codes: 0 done, 1 error, 2 wrong usage, 3 a finding falls short,
4 the book or a paper does not hold, 5 no book here, 6 the book is newer than
this program, 7 nothing of it could be verified.`,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          noSuchCommand,
		RunE:          showHelp,

		SuggestionsMinimumDistance: 2,
	}
	root.SetHelpCommandGroupID(groupKeep)
	root.SetCompletionCommandGroupID(groupKeep)
	root.SetVersionTemplate("backleaf {{.Version}}\n")
	width := cmp.Or(min(a.columns(a.out), 100), usualWidth)
	template := flagUsages().ReplaceAllString(root.UsageTemplate(), fmt.Sprintf("(flags $1 %d)", width))
	root.SetUsageTemplate(strings.ReplaceAll(template, `Use "{{.CommandPath}} [command] --help" for more information about a command.`, `"{{.CommandPath}} COMMAND --help" tells more of each.`))
	root.PersistentFlags().StringVar(&a.bookPath, "book", "", "the studio's book (else $BACKLEAF_BOOK, else studio.sqlite here)")
	root.PersistentFlags().BoolVar(&a.clockIsRight, "clock-is-right", false, "write although the clock is far from the last entry")
	root.SetFlagErrorFunc(func(c *cobra.Command, err error) error {
		hint := "see \"backleaf " + commandPath(c) + " --help\""
		said := err.Error()
		if m := invalid().FindStringSubmatch(said); m != nil {
			said = m[2] + " " + m[1] + ": " + m[3]
		}
		if name, ok := strings.CutPrefix(said, "unknown flag: --"); ok {
			said = "there is no --" + name + " here"
			var names []string
			c.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
			if near := record.Nearest(name, names); near != "" {
				hint = "did you mean --" + near + "? " + hint
			}
		}
		return usage(hint, "%s", said)
	})
	for _, g := range []cobra.Group{
		{ID: groupStudio, Title: "The studio:"},
		{ID: groupShelf, Title: "The shelf:"},
		{ID: groupBench, Title: "At the bench:"},
		{ID: groupPaper, Title: "On paper:"},
		{ID: groupBack, Title: "Looking back:"},
		{ID: groupKeep, Title: "Keeping:"},
	} {
		root.AddGroup(&g)
	}
	all, one := commands(), ""
	if len(args) > 0 {
		one = args[0]
	}
	whole := one != "--version" && !slices.ContainsFunc(all, func(c command) bool { return c.name == one })
	for _, c := range all {
		if whole || c.name == one { // the others would not be asked
			sub := c.make(a)
			sub.GroupID = c.group
			root.AddCommand(sub)
		}
	}
	onlyOnce(root)
	a.complete(root)
	reflow(root, width)
	return root
}

// flagUsages is where the help lists the flags of a command.
var flagUsages = pattern.Of(`(\.\w+)\.FlagUsages`)

func init() { cobra.AddTemplateFunc("flags", flagTable) }

// flagTable lists flags and what they are for; what takes a value has a mark.
func flagTable(fs *pflag.FlagSet, width int) string {
	t := &table{}
	fs.VisitAll(func(f *pflag.Flag) {
		name, usage := "    --"+f.Name, f.Usage
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", --" + f.Name
		}
		if f.Value.Type() != "bool" {
			name += " …"
		}
		if set := strings.Trim(f.DefValue, "[]"); set != "" && set != "0" && set != "false" {
			usage += " (default " + set + ")"
		}
		if !f.Hidden {
			t.row("  "+name, usage)
		}
	})
	return t.text(width)
}

// reflow breaks the long texts of the help anew where a line of them is too long;
// lines that are set in stay as they are. An example goes on as a shell reads it.
func reflow(c *cobra.Command, width int) {
	var out []string
	for paragraph := range strings.SplitSeq(c.Long, "\n\n") {
		if !strings.Contains(paragraph, "\n  ") && !strings.HasPrefix(paragraph, "  ") {
			paragraph = strings.Join(broken(strings.ReplaceAll(paragraph, "\n", " "), width, 0), "\n")
		}
		out = append(out, paragraph)
	}
	c.Long = strings.Join(out, "\n\n")
	out = nil
	for line := range strings.SplitSeq(c.Example, "\n") {
		for utf8.RuneCountInString(line) > width {
			at := strings.LastIndex(string([]rune(line)[:width-1]), " --")
			if at < 10 {
				break
			}
			out, line = append(out, line[:at]+" \\"), "     "+line[at:]
		}
		out = append(out, line)
	}
	c.Example = strings.Join(out, "\n")
	for _, sub := range c.Commands() {
		reflow(sub, width)
	}
}

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

func commandPath(c *cobra.Command) string {
	return strings.TrimPrefix(strings.TrimPrefix(c.CommandPath(), "backleaf"), " ")
}

// invalid is how the library says that a value of a flag cannot be taken.
var invalid = pattern.Of(`^invalid argument (".*") for "(?:-., )?(--[a-z-]+)" flag: (.*)$`)

// wanted checks the number of words after a command; where it is wrong, the
// first example shows what was expected.
func wanted(low, high int, what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) < low || high >= 0 && len(args) > high {
			first, _, _ := strings.Cut(strings.ReplaceAll(strings.TrimSpace(c.Example), " \\\n     ", ""), "\n")
			return usage("for example: "+first, "expected %s", what)
		}
		return nil
	}
}

// folder is a command that only holds others.
func folder(use, short string, subs ...*cobra.Command) *cobra.Command {
	c := &cobra.Command{Use: use, Short: short, Args: noSuchCommand, RunE: showHelp}
	c.AddCommand(subs...)
	return c
}

func showHelp(c *cobra.Command, _ []string) error { return c.Help() }

// noSuchCommand refuses words where only the name of a command can stand.
func noSuchCommand(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	hint := "see \"" + c.CommandPath() + " --help\""
	if near := c.SuggestionsFor(args[0]); len(near) > 0 {
		hint = "did you mean \"" + near[0] + "\"?"
	}
	return usage(hint, "there is no command %q", args[0])
}

// jsonFlag adds --json to a command that reads.
func (a *app) jsonFlag(c *cobra.Command) *cobra.Command {
	c.Flags().BoolVar(&a.asJSON, "json", false, "print JSON")
	return c
}

// csvFlag adds --csv to a command that prints a table.
func (a *app) csvFlag(c *cobra.Command) *cobra.Command {
	c.Flags().BoolVar(&a.asCSV, "csv", false, "print CSV for a spreadsheet; a cell that could pass for a formula begins with an apostrophe")
	c.PreRunE = func(*cobra.Command, []string) error {
		if a.asJSON && a.asCSV {
			return usage("", "--json or --csv, not both")
		}
		return nil
	}
	return c
}

// lastWord is the word by which a command is named below its folder.
func lastWord(name string) string { return name[strings.LastIndexByte(name, ' ')+1:] }
