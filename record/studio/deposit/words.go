package deposit

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"
	"time"

	"backleaf/record"
	"backleaf/record/form"
	"backleaf/record/seal"
	"backleaf/record/studio/exchange"
	"backleaf/record/tell"
	"backleaf/schema"
)

// Fields of bag-info.txt by which a deposit can be derived again.
const (
	infoMade  = "Record-Made"   // the moment at which rules and gaps were judged
	infoWords = "Words-Version" // see wordsOf
)

// wordsOf names what a program says of a journal: two programs of one version
// make the same pages, tables and papers of it. It is the digest of every word
// of the catalogue, and of all that is made of the published example, in which
// each kind of entry stands.
func wordsOf(c *tell.Catalogue) (string, error) {
	if c == tell.English() {
		return english()
	}
	return version(c)
}

var english = sync.OnceValues(func() (string, error) { return version(tell.English()) })

func version(c *tell.Catalogue) (string, error) {
	fail := func(err error) (string, error) {
		return "", fmt.Errorf("cannot tell the version of the words: %w", err)
	}
	stored, _, err := exchange.ReadJournal("example", schema.Example())
	if err != nil {
		return fail(err)
	}
	h := sha256.New()
	texts(reflect.ValueOf(*c), func(s string) { fmt.Fprintf(h, "%d:%s", len(s), s) })
	d := &depositor{words: c, stored: example(stored), now: time.Date(2026, 6, 1, 12, 0, 0, 0, time.UTC), put: func(path string, data []byte) error {
		_, err := fmt.Fprintf(h, "%s %x\n", path, sha256.Sum256(data))
		return err
	}}
	if d.shop, err = record.Fold(form.Entries(stored)); err == nil {
		err = d.journal(stored)
	}
	for i, p := range d.shop.Panels {
		d.undrawn = i > 0 // one drawn paper of each sort shows how they are drawn
		if err == nil {
			err = d.panel(context.Background(), p)
		}
	}
	if err != nil {
		return fail(err)
	}
	for _, s := range d.leftOut {
		fmt.Fprintln(h, s)
	}
	return hex.EncodeToString(h.Sum(nil)[:8]), nil
}

// texts calls do with every text in a value, in a fixed order.
func texts(v reflect.Value, do func(string)) {
	switch v.Kind() {
	case reflect.String:
		do(v.String())
	case reflect.Struct:
		for i := range v.NumField() {
			texts(v.Field(i), do)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			texts(v.Index(i), do)
		}
	case reflect.Map:
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(fmt.Sprint(a), fmt.Sprint(b)) })
		for _, k := range keys {
			texts(k, do)
			texts(v.MapIndex(k), do)
		}
	}
}

// example is a journal in memory. It is a [deed.Journal].
type example []form.Stored

func (e example) Needed(context.Context, record.Number, int64) ([]form.Stored, error) { return e, nil }

func (e example) Tree(context.Context) (int64, seal.Hash, error) {
	var t seal.Tree
	for _, s := range e {
		if err := t.Append(s.Bytes); err != nil {
			return 0, seal.Hash{}, err
		}
	}
	root, err := seal.Root(t.Size(), &t)
	return t.Size(), root, err
}

// HashReader has nothing to prove: nothing is signed.
func (e example) HashReader(context.Context) seal.HashReader { return &seal.Tree{} }
