package deposit

import (
	"bytes"
	"fmt"
	"html/template"
	"sync"

	"backleaf/record"
	"backleaf/record/tell"
)

// Index returns a web page that lists the panels and leads to the page of each.
// It needs nothing else: no script, and no style or picture from elsewhere.
func Index(c *tell.Catalogue, w *record.Workshop) ([]byte, error) {
	type row struct{ Number, Title, Size, Medium, Where string }
	page := struct {
		Language string
		Studio   record.Studio
		Rows     []row
	}{Language: c.Tag.String(), Studio: w.Studio}
	for _, p := range w.Panels {
		t := tell.New(c, w, p)
		page.Rows = append(page.Rows, row{string(p.Number), t.Title(), t.Dimensions(), t.MediumLine(), tell.Say(c, tell.Whereabouts(p))})
	}
	var b bytes.Buffer
	if err := indexTemplate().Execute(&b, page); err != nil {
		return nil, fmt.Errorf("cannot write the list of panels: %w", err)
	}
	return b.Bytes(), nil
}

var indexTemplate = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("index").Parse(`<!DOCTYPE html>
<html lang="{{.Language}}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>The panels of {{.Studio.Maker}}</title>
<style>
body { font: 1rem/1.5 "Liberation Serif", "Times New Roman", serif; color: #000; background: #fff; max-width: 60rem; margin: 2.5rem auto; padding: 0 1.2rem; }
h1 { font-weight: normal; font-size: 2rem; line-height: 1.2; overflow-wrap: anywhere; }
table { border-collapse: collapse; width: 100%; font-size: .9rem; line-height: 1.35; border-bottom: 1px solid #000; }
th { text-align: left; font-style: italic; font-weight: normal; border-bottom: 1px solid #000; }
th, td { vertical-align: top; padding: .3rem .8rem .3rem 0; overflow-wrap: anywhere; }
td:first-child { white-space: nowrap; }
a { color: #000; }
</style>
</head>
<body>
<main>
<h1>The panels of {{.Studio.Maker}}</h1>
{{if .Studio.Demo}}<p>A demonstration: studio, panels and products are invented.</p>
{{end}}<p>Each number leads to all that is recorded of the panel. What this folder is and how it is checked is told in README.txt.</p>
<table>
<thead><tr><th scope="col">Number</th><th scope="col">Title</th><th scope="col">Size</th><th scope="col">Medium and support</th><th scope="col">Where</th></tr></thead>
<tbody>
{{range .Rows}}<tr><td><a href="panels/{{.Number}}/page.html">{{.Number}}</a></td><td>{{.Title}}</td><td>{{.Size}}</td><td>{{.Medium}}</td><td>{{.Where}}</td></tr>
{{end}}</tbody>
</table>
</main>
</body>
</html>
`))
})
