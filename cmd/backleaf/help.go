package main

import (
	"backleaf/record/pattern"
	"embed"
	"strings"
	"sync"
	"unicode"

	"backleaf/record"
	"backleaf/record/ask"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"

	"github.com/spf13/cobra"
	"golang.org/x/tools/txtar"
)

// helpFiles hold what every command says of itself, a file for each group of
// commands: its use and a short line, what words follow it, what is asked where
// a flag is missing, more at length, examples, and what its flags are for.
//
//go:embed help
var helpFiles embed.FS

// help is what one command says of itself.
type help struct {
	group, use, short, words, long, example string
	missing, flags                          map[string]string
}

// helps are those of the commands by their names, ofProgram what the program
// says of itself and, as "flags", the flags that mean the same in several.
var helps, ofProgram = helpOf(groups...), helpOf(cobra.Group{ID: "program"})

func helpOf(groups ...cobra.Group) func() map[string]func() *help {
	return sync.OnceValue(func() map[string]func() *help {
		out := map[string]func() *help{}
		for _, g := range groups {
			data, _ := helpFiles.ReadFile("help/" + g.ID + ".txt")
			for _, section := range txtar.Parse(data).Files {
				name := strings.TrimSpace(strings.FieldsFunc(section.Name, unnamed)[0])
				out[name] = sync.OnceValue(func() *help { // of one command only that is read
					h := readHelp(lists().ReplaceAllStringFunc(string(section.Data), listed))
					h.use, h.group = section.Name[strings.LastIndexByte(name, ' ')+1:], g.ID
					return h
				})
			}
		}
		return out
	})
}

// unnamed is what stands in no name of a command.
func unnamed(r rune) bool { return r != ' ' && r != '-' && !unicode.IsLower(r) }

var lists = pattern.Of(`\{\w+\}`)

// listed is a list of words that stands in the help by its name.
func listed(name string) string {
	var words []string
	switch name = strings.Trim(name, "{}"); name {
	case "orders":
		words = questions.Orders()
	case "places":
		words = questions.Places()
	case "topics":
		for _, t := range ask.Topics() {
			words = append(words, tell.English().Question(t))
		}
	default:
		words = record.Words(name)
	}
	return strings.Join(words, ", ")
}

func readHelp(text string) *help {
	h := &help{missing: map[string]string{}, flags: map[string]string{}}
	text, flags, _ := strings.Cut(text, "\nFlags:\n")
	text, example, _ := strings.Cut(text, "\nFor example:\n")
	head, long, _ := strings.Cut(text, "\n\n")
	h.long, h.example = strings.TrimSpace(long), strings.TrimRight(example, "\n")
	for line := range strings.Lines(head) {
		what, rest, _ := strings.Cut(strings.TrimSpace(line), ": ")
		if flag, ok := strings.CutPrefix(what, "without --"); ok {
			h.missing[flag] = rest
		} else if what == "words" {
			h.words = rest
		} else {
			h.short = strings.TrimSpace(line)
		}
	}
	for line := range strings.Lines(flags) {
		if name, usage, _ := strings.Cut(strings.TrimSpace(line), " "); name != "" {
			h.flags[strings.TrimPrefix(name, "--")] = strings.TrimSpace(usage)
		}
	}
	return h
}

var word = pattern.Of(`\[[^\]]*\]…?|\S+`)

// takes is how many words its use asks for, at least and at most; -1: any number.
func (h *help) takes() (least, most int) {
	for _, w := range word().FindAllString(h.use, -1)[1:] {
		if strings.HasPrefix(w, "-") {
			break
		}
		if !strings.HasPrefix(w, "[") {
			least++
		}
		if strings.Contains(w, "…") || most < 0 {
			most = -1
		} else {
			most++
		}
	}
	return least, most
}
