package page

import (
	"bytes"
	_ "embed"
	"html/template"
	"slices"
	"sync"

	"github.com/go-json-experiment/json"

	"backleaf/record/paper"
	"backleaf/record/paper/web"
	"backleaf/record/pattern"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

//go:embed page.html
var pageHTML string

// The templates: a panel's page, and one without a record.
const (
	panelPage = "panel"
	plainPage = "plain"
)

var pages = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").Funcs(template.FuncMap{"clean": web.HTML, "line": paper.OneLine, "mail": mail().MatchString}).Parse(pageHTML))
})

// mail is an address to write to, with nothing in it that has a meaning in a link.
var mail = pattern.Of(`^[A-Za-z0-9._+-]+@[A-Za-z0-9.-]+$`)

func fill(name string, x any) ([]byte, error) {
	var b bytes.Buffer
	err := pages().ExecuteTemplate(&b, name, x)
	return b.Bytes(), err
}

// Version names all that a page is drawn with, beside its record: another one
// means that pages are to be drawn anew.
func Version(c *tell.Catalogue) string {
	words, err := json.Marshal([]any{form, c.Page, c.Certificate, c.Lines, c.Codes, c.Words}, json.Deterministic(true))
	if err != nil {
		panic("page: a catalogue is texts: " + err.Error())
	}
	return seal.DigestOf(slices.Concat(words, style, icon, script, []byte(pageHTML))).String()
}

// form counts the changes of what this package draws that do not show in the
// files embedded here.
const form = 1
