package seal

// The parsers of unsigned texts, for tests of their one spelling and for the published example of a signed note.
var (
	CheckNote     = checkNote
	UnsignedText  = unsignedText
	OpenNote      = openNote
	SignNote      = Key.signNote
	ParseHeadText = func(s string) (string, error) { h, err := parseHead(s); return h.text(), err }
)

func ParseStatementText(s string) (string, error) {
	st, err := parseStatement(s)
	if err != nil {
		return "", err
	}
	return st.text()
}

func ParseSuccessionText(s string) (string, error) {
	su, err := parseSuccession(s)
	if err != nil {
		return "", err
	}
	return su.text()
}

func ParsePageText(s string) (string, error) {
	p, err := parsePage(s)
	if err != nil {
		return "", err
	}
	return p.text()
}

func ParseStatusText(s string) (string, error) {
	st, err := parseStatus(s)
	return st.text(), err
}
