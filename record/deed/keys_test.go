package deed_test

import (
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/seal"
)

// retired is the entry by which a key names its successor.
func retired(t testing.TB, old, heir seal.Key) record.KeyRetired {
	t.Helper()
	r, err := deed.KeyRetired("KB", "", old, heir.Public(), "2026-06-01", "ten years old")
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func events(bodies ...record.Body) []record.Event {
	var out []record.Event
	for i, b := range bodies {
		out = append(out, record.Event{Seq: int64(i + 1), Body: b})
	}
	return out
}

func TestKeys(t *testing.T) {
	a, b := testKey(t, 1), testKey(t, 2)
	made := func(k seal.Key) record.Body { return deed.KeyMade(k.Public()) }
	lost := func(k seal.Key) record.Body {
		return record.KeyLost{Fingerprint: k.Public().Fingerprint().String(), Because: "burnt"}
	}
	for name, tt := range map[string]struct {
		life       []record.Body
		a, b       deed.Standing
		now, heirs bool
	}{
		"none":             {nil, deed.Unrecorded, deed.Unrecorded, false, false},
		"one":              {[]record.Body{made(a)}, deed.Current, deed.Unrecorded, true, false},
		"lost":             {[]record.Body{made(a), lost(a)}, deed.Lost, deed.Unrecorded, false, false},
		"lost, a new one":  {[]record.Body{made(a), lost(a), made(b)}, deed.Lost, deed.Current, true, false},
		"retired":          {[]record.Body{made(a), made(b), retired(t, a, b)}, deed.Retired, deed.Current, true, true},
		"retired and lost": {[]record.Body{made(a), made(b), retired(t, a, b), lost(a)}, deed.Lost, deed.Current, true, true},
	} {
		r, err := deed.Keys(events(tt.life...))
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		_, now := r.Current()
		_, heirs := r.Heir(a.Public())
		if r.Standing(a.Public()) != tt.a || r.Standing(b.Public()) != tt.b || now != tt.now || heirs != tt.heirs {
			t.Errorf("%s: %s, %s, current %t, heir %t", name, r.Standing(a.Public()), r.Standing(b.Public()), now, heirs)
		}
	}
	bad := retired(t, a, b)
	bad.Statement = strings.Replace(bad.Statement, "2026-06-01", "2027-06-01", 1)
	swapped := deed.KeyMade(a.Public())
	swapped.Fingerprint = b.Public().Fingerprint().String()
	for name, life := range map[string][]record.Body{
		"a successor signed by another": {made(a), made(b), record.KeyRetired{Fingerprint: a.Public().Fingerprint().String(),
			Successor: b.Public().Fingerprint().String(), Statement: retired(t, b, a).Statement}},
		"a changed succession":        {made(a), made(b), bad},
		"a successor not on record":   {made(a), retired(t, a, b)},
		"a key lost before it was":    {lost(a)},
		"the fingerprint of another":  {swapped},
		"a key that was made twice":   {made(a), made(a)},
		"a lost key brought back":     {made(a), lost(a), made(a)},
		"something that is not a key": {record.KeyMade{Fingerprint: bad.Fingerprint, PublicKey: "AAAA"}},
	} {
		if _, err := deed.Keys(events(life...)); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}

// After a succession the record carries the older key's word for the new one.
func TestSuccession(t *testing.T) {
	a, b := testKey(t, 1), testKey(t, 2)
	bk := newBook(t, a)
	put(t, bk, record.Entry{Body: deed.KeyMade(b.Public())}, record.Entry{Body: retired(t, a, b)})
	r := deed.Verify(made(t, bk, first, &b).Files())
	if !r.Holds() || !strings.Contains(texts(r, deed.Holds), "named its successor") {
		t.Error(r.Results)
	}
}

// A key that was only put beside another does not sign unseen.
func TestKeyBeside(t *testing.T) {
	a, b := testKey(t, 1), testKey(t, 2)
	bk := newBook(t, a)
	put(t, bk, record.Entry{Body: deed.KeyMade(b.Public())})
	r := deed.Verify(made(t, bk, first, &b).Files())
	if !strings.Contains(texts(r, deed.Unknown), a.Public().Fingerprint().Groups()) {
		t.Error(r.Results)
	}
}
