// Package web sets texts for web pages as package paper sets them for print.
package web

import (
	"html/template"

	"backleaf/record/paper"
	"backleaf/record/pattern"
)

var (
	builtFraction = pattern.Of(`(\d+)\x{2044}(\d+)`)
	panelNumber   = pattern.Of(`\b[A-Z0-9]{2,8}-\d{4,}-[0-9A-Z]\b`)
)

// HTML makes text from outside safe to stand in a web page (see [paper.Clean]), and
// sets what stands around a fraction slash as figures above and below it. The number of
// a panel is of class number, so that a page can keep it in one line.
func HTML(s string) template.HTML {
	safe := template.HTMLEscapeString(paper.Clean(s))
	safe = panelNumber().ReplaceAllString(safe, `<span class="number">$0</span>`)
	return template.HTML(builtFraction().ReplaceAllString(safe, `<span class="fraction"><sup>$1</sup>&frasl;<sub>$2</sub></span>`))
}
