package tell

// CertificateWords are printed on certificates.
type CertificateWords struct {
	Heading  Message
	Page     Message // {page} {pages}
	Preview  Message
	Demo     Message // signed with the demonstration's key
	DemoOnly Message // of a demonstration's studio, not signed
	Issued   Message // {date}
	Replaces Message // {date}

	// Names of the facts, and of the parts that may go to page 2.
	Date, Medium, Size, Signed, Inscription, Features, Subject, Type, Place, OwnNumber Message
	Owner, Price                                                                       Message // only when asked for
	Painting                                                                           Message // type of object if none was recorded
	NoFeatures, NoSubject, NoPlace                                                     Message // what is not recorded
	Facts, Drawing, InWords, CarePart, GapsPart                                        Message
	OnPage                                                                             Message // {parts} {page}

	BuildUp, Care, Gaps Message // headings
	CareSources, Cold   Message // in short, with the marks of [CareWords]
	Corrected           Message // {n} corrections
	Photograph          Message // {title}: for readers who cannot see it
	Sentence            Message // {text}: what has no full stop of its own

	Statement, StatementText, StatementPlace Message // {maker} {place}
	Not, NotText                             Message
	SignatureLine, PlaceLine, Stamp          Message
	Verify, VerifyText, VerifyNone           Message
	Link, Record, Signature, Key, Test       Message
	Unsigned, Unissued                       Message
	Symbol                                   Message // beside the large symbol

	FileTitle, FileSubject                              Message // {number} {title}
	RecordFile, SignatureFile, KeyFile, HeadFile, Proof Message // what the files inside are
}

var englishCertificate = CertificateWords{
	Heading:  "Certificate",
	Page:     "{page} of {pages}",
	Preview:  "Preview, not issued: this page certifies nothing.",
	Demo:     "Demonstration: signed with a public key that anyone can use, for an invented studio. It certifies nothing.",
	DemoOnly: "Demonstration of an invented studio. It certifies nothing.",
	Issued:   "Issued on {date}.",
	Replaces: "Replaces the certificate of {date}.",

	Date: "Date", Medium: "Medium", Size: "Size", Signed: "Signed", Inscription: "Inscription", Features: "Features", Subject: "Subject",
	Type: "Object", Place: "Studio", OwnNumber: "Studio’s own no.", Owner: "Made out to", Price: "Price",
	Painting: "painting on panel", NoFeatures: "distinguishing features", NoSubject: "subject", NoPlace: "place of the studio",
	Facts: "particulars of the work", Drawing: "drawing of the build-up", InWords: "build-up in words", CarePart: "care and display", GapsPart: "what is not recorded",
	OnPage: "On page {page}: {parts}.",

	BuildUp: "Build-up", Care: "Care and display", Gaps: "Not recorded",
	CareSources: "¹ Bizot Green Protocol 2023. ² Canadian Conservation Institute. ³ Museum association, MITRA. ⁴ MITRA. ⁵ Common practice.",
	Cold:        "⁶ Erlebacher et al. 1992.",
	Corrected:   "{n, plural, one {One entry was corrected later; the record tells what and why.} other {{n} entries were corrected later; the record tells what and why.}}",
	Sentence:    "{text}.",
	Photograph:  "Photograph of the front: {title}",

	Statement:      "Statement by the maker",
	StatementText:  "I, {maker}, made this panel and the work on it. This page says what I recorded of them; where I recorded nothing, it says so.",
	StatementPlace: "I, {maker}, of {place}, made this panel and the work on it. This page says what I recorded of them; where I recorded nothing, it says so.",
	Not:            "What this is not",
	NotText:        "Not an appraisal, and not by itself a proof of authorship: it is the maker’s own record, to be read with the work. Questions of treatment go to a conservator.",
	SignatureLine:  "Signature of the maker", PlaceLine: "Place and date", Stamp: "Studio stamp",
	Verify:     "To check this certificate",
	VerifyText: "The PDF of this page holds five files: record.json is the whole record, the others prove it unchanged. Take them out with “pdfdetach -saveall”, type the test, and compare the key with the studio’s.",
	VerifyNone: "The PDF of this page holds record.json, the whole record. Take it out with “pdfdetach -saveall”; “sha256sum record.json” gives the figure above.",
	Link:       "Link", Record: "Record, SHA-256", Signature: "Signature", Key: "Key, SHA-256", Test: "Test",
	Unsigned: "none: the studio had no signing key on the day of issue",
	Unissued: "made when the certificate is issued",
	Symbol:   "The large symbol holds the main facts as signed text; to read it takes no network.",

	FileTitle: "Certificate {number}: {title}", FileSubject: "Certificate of a painting panel, with the record of how it was made",
	RecordFile:    "The record of the panel, canonical JSON (RFC 8785)",
	SignatureFile: "Ed25519 signature over record.json, 64 bytes (RFC 8032)",
	KeyFile:       "Public key of the studio",
	HeadFile:      "Signed head of the studio’s journal",
	Proof:         "Proofs that the entries of the record stand in the journal under that head",
}
