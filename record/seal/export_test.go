package seal

// The parsers of unsigned texts, for tests of their one spelling and for the published example of a signed note.
var (
	CheckNote     = checkNote
	UnsignedText  = unsignedText
	OpenNote      = openNote
	SignNote      = Key.signNote
	ParseHeadText = func(s string) (string, error) { h, err := parseHead(s); return h.text(), err }
)

func ParseStatementText(s string) (string, error)  { return statements.again(s) }
func ParseSuccessionText(s string) (string, error) { return successions.again(s) }
func ParsePageText(s string) (string, error)       { return pages.again(s) }

func (d word[W]) again(s string) (string, error) {
	w, err := d.parse(s)
	if err != nil {
		return "", err
	}
	return d.text(w)
}

func ParseStatusText(s string) (string, error) {
	st, err := parseStatus(s)
	return st.text(), err
}

// OpenPage reads a page's statement, as a browser does with the page's own script.
func OpenPage(msg []byte) (Page, error) {
	return pages.open(msg, func(p Page) PublicKey { return p.Key })
}
