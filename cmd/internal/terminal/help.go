package terminal

import (
	"strings"
	"unicode/utf8"

	"github.com/spf13/pflag"
)

// Reflow breaks the paragraphs of a long text at a width; lines that are set in
// stay as they are.
func Reflow(text string, width int) string {
	paragraphs := strings.Split(text, "\n\n")
	for i, p := range paragraphs {
		if !strings.Contains(p, "\n  ") && !strings.HasPrefix(p, "  ") {
			paragraphs[i] = strings.Join(Broken(strings.ReplaceAll(p, "\n", " "), width, 0), "\n")
		}
	}
	return strings.Join(paragraphs, "\n\n")
}

// Folded breaks examples before a flag, as a shell reads them.
func Folded(text string, width int) string {
	var out []string
	for line := range strings.SplitSeq(text, "\n") {
		for utf8.RuneCountInString(line) > width {
			at := strings.LastIndex(string([]rune(line)[:width-1]), " --")
			if at < 10 {
				break
			}
			out, line = append(out, line[:at]+" \\"), "     "+line[at:]
		}
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}

// Flags lists flags and what they are for; what takes a value has a mark.
func Flags(fs *pflag.FlagSet, width int) string {
	t := &Table{Width: width}
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
			t.Row("  "+name, usage)
		}
	})
	return t.Text()
}
