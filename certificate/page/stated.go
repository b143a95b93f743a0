package page

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"

	"golang.org/x/net/html"

	"backleaf/record/seal"
)

// Stated is the SHA-256 of what a page states: every element in order with its
// attributes, and every text, as a browser reads the file. What the script
// writes into (id "check"), the data that it reads, and comments are no part of
// it; nor are attributes named style, which the policy of the page forbids, and
// data-…, which browsers and their helpers add.
//
// Each part is written with what it is before it and a zero byte after it:
// "<" and the name of an element, "=" and name, "=" and value of an attribute, by name, "'"
// and a text, ">" at the end of an element. check.js does the same.
func Stated(page []byte) (seal.Digest, error) {
	doc, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		return seal.Digest{}, fmt.Errorf("cannot read the page: %w", err)
	}
	h := sha256.New()
	put := func(parts ...string) {
		for _, s := range parts {
			h.Write([]byte(s))
		}
		h.Write([]byte{0})
	}
	var walk func(*html.Node)
	walk = func(n *html.Node) {
		switch n.Type {
		case html.TextNode:
			put("'", n.Data)
			return
		case html.ElementNode:
			put("<", n.Data)
			skip := false
			var attributes []string
			for _, a := range n.Attr {
				name := a.Key
				if a.Namespace != "" {
					name = a.Namespace + ":" + a.Key
				}
				skip = skip || name == "id" && (a.Val == "check" || a.Val == "data")
				if name != "style" && !strings.HasPrefix(name, "data-") {
					attributes = append(attributes, "="+name+"="+a.Val)
				}
			}
			for _, a := range slices.Sorted(slices.Values(attributes)) { // readers of HTML do not keep their order
				put(a)
			}
			if skip {
				put(">")
				return
			}
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c)
		}
		if n.Type == html.ElementNode {
			put(">")
		}
	}
	walk(doc)
	return seal.Digest(h.Sum(nil)), nil
}
