package dossier

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"

	"backleaf/record/paper"
	"backleaf/record/paper/web"
)

// HTML writes the dossier as one page that needs nothing else: no script, no
// style, font or picture from elsewhere. Drawings are SVG with a title and a
// description.
func (d *Document) HTML() ([]byte, error) {
	var out bytes.Buffer
	figure := 0
	page := template.Must(template.New("page").Funcs(template.FuncMap{
		"clean": web.HTML,
		"lines": func(s string) (out []template.HTML) {
			for l := range strings.SplitSeq(paper.Clean(s), "\n") {
				out = append(out, web.HTML(l))
			}
			return out
		},
		"plain": paper.OneLine,
		"draw": func(f *Figure) (template.HTML, error) {
			all, err := f.Draw(163, 240)
			if err != nil {
				return "", err
			}
			var b strings.Builder
			for i, one := range all {
				one.ID = fmt.Sprintf("figure-%d-%d", figure, i)
				b.Write(one.SVG()) // escaped by its writer
			}
			figure++
			return template.HTML(b.String()), nil
		},
		"text":   func(i Item) (t Text) { t, _ = i.(Text); return t },
		"pairs":  func(i Item) (p Pairs) { p, _ = i.(Pairs); return p },
		"table":  func(i Item) *Table { return as[Table](i) },
		"figure": func(i Item) *Figure { return as[Figure](i) },
		"widths": widths,
		"all":    func(d *Document) []Section { return append([]Section{d.Glance}, d.Sections...) },
	}).Parse(pageHTML))
	if err := page.Execute(&out, d); err != nil {
		return nil, fmt.Errorf("cannot write the dossier: %w", err)
	}
	return out.Bytes(), nil
}

// widths gives the share of each column in per cent.
func widths(t *Table) []int {
	total := 0.0
	for _, c := range t.Columns {
		total += c.Share
	}
	var out []int
	for _, c := range t.Columns {
		out = append(out, int(c.Share/total*100))
	}
	return out
}

func as[T Item](i Item) *T {
	if t, ok := i.(T); ok {
		return &t
	}
	return nil
}

const pageHTML = `<!DOCTYPE html>
<html lang="{{.Language}}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<title>{{plain .Running}}</title>
<style>
body { font: 1rem/1.5 "Liberation Serif", "Times New Roman", serif; color: #000; background: #fff; max-width: 46rem; margin: 2.5rem auto; padding: 0 1.2rem; }
h1 { font-weight: normal; font-size: 2rem; line-height: 1.2; margin: .4rem 0; overflow-wrap: anywhere; }
h2 { font-weight: normal; font-size: .95rem; letter-spacing: .09em; text-transform: uppercase; margin: 2.6rem 0 .7rem; }
h3 { font-size: 1rem; margin: 1.2rem 0 .3rem; }
.kind { font-size: .9rem; letter-spacing: .09em; text-transform: uppercase; }
.maker, dt, th, figcaption { font-style: italic; font-weight: normal; }
.small, table, figcaption { font-size: .85rem; line-height: 1.35; }
dl { display: grid; grid-template-columns: 11rem 1fr; gap: .2rem 1rem; margin: .5rem 0; }
dd { margin: 0; overflow-wrap: anywhere; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; border-bottom: 1px solid #000; margin: .5rem 0; }
th { text-align: left; border-bottom: 1px solid #000; }
th, td { vertical-align: top; padding: .2rem .7rem .2rem 0; overflow-wrap: break-word; }
figure { margin: 1.2rem 0; }
svg { max-width: 100%; height: auto; }
p { margin: .5rem 0; overflow-wrap: anywhere; }
@media (max-width: 34rem) { dl { grid-template-columns: 1fr; } dd { margin-bottom: .5rem; } }
sup, sub { font-size: .64em; line-height: 1; }
sup { vertical-align: .45em; } sub { vertical-align: 0; }
caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
@page { margin: 22mm 20mm 20mm; @top-left { content: "{{plain .Running}}"; font: italic 9pt serif; } @top-right { content: counter(page) " / " counter(pages); font: 9pt serif; } }
@media print { body { margin: 0; max-width: none; } h2, h3 { break-after: avoid; } tr, figure { break-inside: avoid; } }
</style>
</head>
<body>
<main>
<header>
<p class="kind">{{clean .Kind}}</p>
<h1>{{clean .Title}}</h1>
<p class="maker">{{clean .By}}</p>
{{range .Lead}}<p>{{clean .}}</p>
{{end}}</header>
{{range $n, $s := all .}}<section aria-labelledby="s{{$n}}">
<h2 id="s{{$n}}">{{if $n}}{{$n}} {{end}}{{clean $s.Title}}</h2>
{{range $s.Items}}{{with text .}}{{if .Text}}{{if .Strong}}<h3>{{clean .Text}}</h3>{{else if .Small}}<p class="small">{{clean .Text}}</p>{{else}}<p>{{clean .Text}}</p>{{end}}{{end}}{{end}}{{with pairs .}}<dl>
{{range .}}<dt>{{clean .Name}}</dt><dd>{{range $i, $l := lines .Value}}{{if $i}}<br>{{end}}{{$l}}{{end}}</dd>
{{end}}</dl>{{end}}{{with table .}}<div class="wide" tabindex="0" role="group" aria-labelledby="s{{$n}}"><table>
<caption>{{clean $s.Title}}</caption>
<colgroup>{{range widths .}}<col style="width: {{.}}%">{{end}}</colgroup>
<thead><tr>{{range .Columns}}<th scope="col">{{clean .Head}}</th>{{end}}</tr></thead>
<tbody>{{range .Rows}}<tr>{{range .}}<td>{{clean .}}</td>{{end}}</tr>
{{end}}</tbody></table></div>{{end}}{{with figure .}}<figure>
{{draw .}}<figcaption>{{clean .Caption}}</figcaption>
</figure>{{end}}
{{end}}</section>
{{end}}</main>
</body>
</html>
`
