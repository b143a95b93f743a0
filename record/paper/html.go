package paper

import (
	"html/template"
	"regexp"
)

var builtFraction = regexp.MustCompile(`(\d+)\x{2044}(\d+)`)

// HTML makes text from outside safe to stand in a web page (see [Clean]), and
// sets what stands around a fraction slash as figures above and below it.
func HTML(s string) template.HTML {
	safe := template.HTMLEscapeString(Clean(s))
	return template.HTML(builtFraction.ReplaceAllString(safe, `<span class="fraction"><sup>$1</sup>&frasl;<sub>$2</sub></span>`))
}
