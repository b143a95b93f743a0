package deposit

import (
	"bytes"
	_ "embed"
	"fmt"
	"sync"
	"text/template"
	"time"
)

// About is what a README says of one deposit.
type About struct {
	Maker, Mark, Place string
	Demo               bool
	Date               time.Time
	Panels             int
	Example            string // number of one panel; empty if there is none
	Entries            int64
	Root               string // hex
	Key                string // fingerprint of the key that signed; empty: nothing is signed
	KeyOnRecord        bool   // the studio has a key, whether or not it signed this
	Photographs        int
	Missing            []string // names of photographs that were not at hand
}

//go:embed text/readme.txt
var readme string

var readmeTemplate = sync.OnceValue(func() *template.Template { return template.Must(template.New("readme").Parse(readme)) })

// Readme tells a stranger what a deposit is, how each part is read, and how all
// of it is checked with general tools.
func Readme(a About) ([]byte, error) {
	var b bytes.Buffer
	if err := readmeTemplate().Execute(&b, a); err != nil {
		return nil, fmt.Errorf("cannot write the README: %w", err)
	}
	return b.Bytes(), nil
}
