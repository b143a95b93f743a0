package tell

// CertificateWords are printed on certificates.
type CertificateWords struct {
	Heading           Message // what it certifies
	Page              Message // {page} {pages}
	Preview           Message
	Demo              Message // signed with the demonstration's key
	DemoOnly          Message // of a demonstration's studio, not signed
	Issued, NotIssued Message // {date}
	Replaces          Message // {n} {before} {date}; {n} chooses
	Hazard            Message // before what is dangerous

	// Lines of the front, and the names of what may stand on the reverse instead.
	SignedLine, InscribedLine, OwnerLine Message // {text}
	Unique, Edition                      Message // {text}
	Framed, Unframed                     Message // {line}, either of them or nothing
	Credit                               Message // {who} {when}: below the photograph
	MarkOf                               Message // {maker}: for readers who cannot see it
	Medium, Signed, Inscription, Owner   Message

	Statement                       Message // {hands} {maker} {place}
	Original                        Message // {unique} if there is no other
	StatementApart                  Message // {maker} {painter}
	StatementPanel                  Message // {maker}
	SameNumber                      Message // behind the number
	SignatureLine, PlaceLine, Stamp Message
	PlaceAndDate                    Message // {place} {date}
	SignatureStudio                 Message // of a work of several hands
	SymbolLink, SymbolText          Message // what the small symbol is for
	SeeReverse, KeyLater            Message
	Unsigned, Unissued              Message
	RecordLine                      Message // {digest}

	// The reverse.
	BuildUp, Care, Gaps, Facts, Not, Studio, Verify Message // headings
	DrawingHead                                     Message // on a page of its own
	Type, Subject, Features, OwnNumber, Price       Message
	Size, Date, Pigments, EdgesLine                 Message // {layers} of the edges
	NoFeatures, NoSubject, NoPlace                  Message // what is not recorded
	Drawing, FactsPart, CarePart, GapsPart          Message
	OnPage                                          Message // {parts} {page}
	Corrected                                       Message // {n} corrections
	Photograph                                      Message // {title}: for readers who cannot see it
	Sentence                                        Message // {text}: what has no full stop of its own
	NotText                                         Message
	VerifyPlain, VerifyAsk, VerifyText, VerifyNone  Message // VerifyAsk: where there is somebody to ask
	Symbol                                          Message // below the large one
	Link, Signature, Key, Test                      Message

	FileTitle, FileSubject                              Message // {number} {title}
	RecordFile, SignatureFile, KeyFile, HeadFile, Proof Message // what the files inside are
}

var englishCertificate = CertificateWords{
	Heading:  "Certificate for a painting on panel",
	Page:     "{page} of {pages}",
	Preview:  "Preview, not issued: this page certifies nothing.",
	Demo:     "Demonstration: signed with a practice key that everyone has, for an invented studio. It certifies nothing.",
	DemoOnly: "Demonstration of an invented studio. It certifies nothing.",
	Issued:   "Issued on {date}.", NotIssued: "To be issued on {date}.",
	Replaces: "{n, select, 2 {Second certificate, replaces the first of {date}.} 3 {Third certificate, replaces the second of {date}.} " +
		"4 {Fourth certificate, replaces the third of {date}.} other {Certificate no. {n}, replaces no. {before} of {date}.}}",
	Hazard: "Hazard:",

	SignedLine: "Signed {text}", InscribedLine: "Inscribed {text}", OwnerLine: "Made out to {text}",
	Unique: "One of its kind", Edition: "Edition {text}", Framed: "{line, if {{line}, }}framed; size without frame", Unframed: "{line, if {{line}, }}not framed",
	MarkOf: "Mark of {maker}", Credit: "Photograph{who, if {: {who}}}{when, if {, {when}}}",
	Medium: "Medium", Signed: "Signed", Inscription: "Inscribed", Owner: "Made out to",

	Statement: "{hands, plural, one {I} other {We}}, {maker}{place, if {, of {place}}}, made this panel and painted the work on it " +
		"{hands, plural, one {with my own hand} other {with our own hands}}.",
	Original:       "It is an original{unique, if {, the only one of its kind}}.",
	StatementApart: "Maker of the panel: {maker}. Painter of the work on it: {painter}. So the studio recorded it.",
	StatementPanel: "Maker of the panel: {maker}. So the studio recorded it.",
	SameNumber:     "the same number stands on the back of the panel",
	SignatureLine:  "Signature of the maker", SignatureStudio: "Signature for the studio", PlaceLine: "Place and date of issue", Stamp: "Studio stamp",
	PlaceAndDate: "{place, if {{place}, }}{date}",
	SymbolLink:   "Scan for the record of this painting.", SymbolText: "The symbol holds the number and how to reach the studio.",
	SeeReverse: "Build-up, care and how to check this certificate: page 2.",
	KeyLater:   "printed here when the certificate is issued",
	Unsigned:   "Without a digital signature: the studio had no key on the day of issue.",
	Unissued:   "made when the certificate is issued",
	RecordLine: "SHA-256 of the record: {digest}",

	BuildUp: "Build-up", Care: "Care and display", Gaps: "Not recorded or not known", Facts: "The work", Not: "What this is, and is not",
	Studio: "The studio", Verify: "To check this certificate", DrawingHead: "Build-up, drawn",
	Size: "H × W × D", Date: "Date", Pigments: "Pigments", EdgesLine: "Edges, not drawn: {layers}",
	Type: "Object", Subject: "Subject", Features: "Features", OwnNumber: "Studio’s no.", Price: "Price",
	NoFeatures: "distinguishing features", NoSubject: "subject", NoPlace: "place of the studio",
	Drawing: "drawing of the build-up", FactsPart: "particulars of the work", CarePart: "care and display", GapsPart: "what is not recorded",
	OnPage:     "On page {page}: {parts}.",
	Corrected:  "{n, plural, one {One entry was corrected later; the record tells what and why.} other {{n} entries were corrected later; the record tells what and why.}}",
	Photograph: "Photograph of the front: {title}",
	Sentence:   "{text}.",
	NotText: "The maker’s own statement and record, to be read with the work. It is no appraisal, and by itself no proof of authorship. " +
		"Questions of treatment go to a conservator.",
	VerifyPlain: "The text in the symbol agrees with this page, the number with the panel’s back.", VerifyAsk: "The studio can confirm its key.",
	VerifyText: "For a technician: “pdfdetach -saveall” takes out of the PDF record.json, whose SHA-256 heads this page; record.sig, its Ed25519 signature; " +
		"studio.pem, the key; head.txt and proof.json, its place in the studio’s journal. Then run the test.",
	VerifyNone: "The PDF of this certificate holds record.json, the whole record. Take it out with “pdfdetach -saveall”; “sha256sum record.json” gives the figure at the head of this page.",
	Symbol:     "The main facts, as signed text",
	Link:       "Link", Signature: "Digital signature", Key: "Studio key", Test: "Test",

	FileTitle: "Certificate {number}: {title}", FileSubject: "Certificate of a painting panel, with the record of how it was made",
	RecordFile:    "The record of the panel, canonical JSON (RFC 8785)",
	SignatureFile: "Ed25519 signature over record.json, 64 bytes (RFC 8032)",
	KeyFile:       "Public key of the studio",
	HeadFile:      "Signed head of the studio’s journal",
	Proof:         "Proofs that the entries of the record stand in the journal under that head",
}
