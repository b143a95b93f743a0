package benchpage_test

import (
	"context"
	"html"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"backleaf/cmd/internal/benchpage"
	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio/keys"
)

// noPassphrase holds a key that needs none.
type noPassphrase struct{}

func (noPassphrase) Passphrase(string) ([]byte, error) { return nil, nil }
func (noPassphrase) NewPassphrase() ([]byte, error)    { return nil, nil }
func (noPassphrase) Warn(record.Said)                  {}

// fills opens a form, fills it, looks at what it will write, and writes it: all
// that it said it would, once.
func (p *place) fills(path string, f url.Values, says ...string) (token string) {
	p.Helper()
	before := p.size()
	f = p.form(path, f)
	action, _, _ := strings.Cut(path, "?")
	_, _, page := p.post(action, f)
	for _, s := range says {
		if !strings.Contains(page, s) {
			p.Errorf("%s does not say %q before it writes:\n%s", path, s, page)
		}
	}
	if status, _, page := p.post(action, write(f)); status != http.StatusSeeOther || p.size() == before {
		p.Fatalf("%s: %d\n%s", path, status, page)
	}
	return f.Get("token")
}

// A work is finished on the page: painted, described, labelled, certified,
// handed over; a wrong value is put right, with a reason.
func TestFinish(t *testing.T) {
	p := in(t, 2, func(s *benchpage.Server) {
		s.Key = func(ctx context.Context) (*seal.Key, error) { return keys.Current(ctx, s.Studio.Book, noPassphrase{}) }
	})
	if _, err := keys.Make(context.Background(), p.session, noPassphrase{}, false); err != nil {
		t.Fatal(err)
	}
	one := func(more url.Values) url.Values {
		more["panel"], more["ticks"] = []string{"1"}, []string{"1"}
		return more
	}
	p.fills("/act/paint?panel=1", one(url.Values{"medium": {"oil"}, "technique": {"one layer"}}), "one layer")
	p.fills("/act/describe?panel=1", one(url.Values{"title": {"Low water"}, "made": {"2026"}}), "Low water")

	token := p.fills("/act/label?panel=1", one(url.Values{}), "The label of MR26-0001-F")
	for _, paper := range []string{"label", "certificate"} {
		if status, pdf := p.get("/preview/" + paper + "?panel=1"); status != http.StatusOK || !strings.HasPrefix(pdf, "%PDF-") {
			t.Errorf("preview of the %s: %d", paper, status)
		}
	}
	label := p.paper(token)
	token = p.fills("/act/certificate?panel=1", one(url.Values{"buyer": {"A. Reader"}}), "signed", "A. Reader")
	if certificate := p.paper(token); len(certificate) < 10_000 || certificate == label {
		t.Error("the certificate is not handed out")
	}
	seq := p.size()
	p.fills("/act/handover?panel=1", one(url.Values{"how": {"sale"}, "to": {"A. Reader"}, "price": {"850 EUR"}}), "A. Reader (private", "850 EUR (private")
	page := ""
	if _, page = p.get("/panel/MR26-0001-F"); strings.Contains(page, "A. Reader") || strings.Contains(page, "850") {
		t.Error("what is private is shown unasked")
	}
	if _, page = p.get("/panel/MR26-0001-F?private=yes"); !strings.Contains(page, "A. Reader") || !strings.Contains(page, "850") {
		t.Error("what is private is not shown when asked for")
	}

	p.fills("/act/amend?entry="+itoa(seq+1), url.Values{"entry": {itoa(seq + 1)}, "set-how": {"loan"}, "because": {"it comes back"}}, "lent")
	for _, path := range []string{"/panel/MR26-0001-F", "/entry/" + itoa(p.size())} {
		if _, page = p.get(path); !strings.Contains(page, "lent") || !strings.Contains(page, "it comes back") {
			t.Errorf("the correction is not told by %s:\n%s", path, page)
		}
	}
	before := p.size()
	f := p.form("/act/amend?entry="+itoa(seq+1), url.Values{"entry": {itoa(seq + 1)}, "set-how": {"gift"}})
	if status, _, page := p.post("/act/amend", write(f)); status != http.StatusOK || !strings.Contains(page, "refused") || p.size() != before {
		t.Errorf("put right without a reason: %d", status)
	}
}

// paper is the PDF that came of a form, handed out again.
func (p *place) paper(token string) string {
	p.Helper()
	_, page := p.get("/?w=" + token)
	_, rest, ok := strings.Cut(page, `href="/paper/`)
	if !ok {
		p.Fatalf("no paper is handed out:\n%s", page)
	}
	sum, _, _ := strings.Cut(rest, `"`)
	status, pdf := p.get("/paper/" + sum)
	if status != http.StatusOK || !strings.HasPrefix(pdf, "%PDF-") {
		p.Errorf("the paper: %d", status)
	}
	return pdf
}

// A new tin is put on the shelf from the last one: another name, the same
// material and amount; what it cost is private.
func TestNextLot(t *testing.T) {
	p := in(t, 1, nil)
	p.fills("/act/lot", url.Values{"key": {"sealer-1"}, "material": {"acrylic-sealer"}, "quantity": {"2.5 L"}, "price": {"38.50 EUR"}}, "38.50 EUR (private")
	_, page := p.get("/shelf")
	at := strings.Index(page, `href="/act/lot?back=%2Fshelf&amp;key=`)
	if at < 0 || !strings.Contains(page, "about 2.5") {
		t.Fatalf("no next one is offered, or what is left not said:\n%s", page)
	}
	link, _, _ := strings.Cut(page[at+6:], `"`)
	link = html.UnescapeString(link)
	u, err := url.Parse(link)
	if err != nil {
		t.Fatal(err)
	}
	p.fills(link, u.Query(), "sealer-2", "2.5")
	if _, page = p.get("/shelf"); !strings.Contains(page, "<b>sealer-2</b>") || strings.Contains(page, "38.50") {
		t.Errorf("the shelf:\n%s", page)
	}
}
