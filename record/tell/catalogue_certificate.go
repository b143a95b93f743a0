package tell

// englishCertificate is printed on certificates.
var englishCertificate = table{
	{"heading", "Certificate for a painting on panel"},
	{"page", "{page} of {pages}"},
	{"preview", "Preview, not issued: this page certifies nothing."},
	{"demo", "Demonstration: signed with a practice key that everyone has, for an invented studio. It certifies nothing."},
	{"demo-only", "Demonstration of an invented studio. It certifies nothing."},
	{"issued", "Issued on {date}."}, {"not-issued", "To be issued on {date}."},
	{"replaces", "{n, select, 2 {Second certificate, replaces the first of {date}.} 3 {Third certificate, replaces the second of {date}.} " +
		"4 {Fourth certificate, replaces the third of {date}.} other {Certificate no. {n}, replaces no. {before} of {date}.}}"},
	{"hazard", "Hazard:"},

	{"signed-line", "Signed {text}"}, {"inscribed-line", "Inscribed {text}"}, {"owner-line", "Made out to {text}"},
	{"unique", "One of its kind"}, {"edition", "Edition {text}"}, {"framed", "{line, if {{line}, }}framed; size without frame"}, {"unframed", "{line, if {{line}, }}not framed"},
	{"mark-of", "Mark of {maker}"}, {"credit", "Photograph{who, if {: {who}}}{when, if {, {when}}}"},
	{"medium", "Medium"}, {"signed", "Signed"}, {"inscription", "Inscribed"}, {"owner", "Made out to"},

	{"statement", "{hands, plural, one {I} other {We}}, {maker}{place, if {, of {place}}}, made this panel and painted the work on it " +
		"{hands, plural, one {with my own hand} other {with our own hands}}."},
	{"original", "It is an original{unique, if {, the only one of its kind}}."},
	{"statement-apart", "Maker of the panel: {maker}. Painter of the work on it: {painter}. So the studio recorded it."},
	{"statement-panel", "Maker of the panel: {maker}. So the studio recorded it."},
	{"same-number", "the same number stands on the back of the panel"},
	{"signature-line", "Signature of the maker"}, {"signature-studio", "Signature for the studio"}, {"place-line", "Place and date of issue"}, {"stamp", "Studio stamp"},
	{"place-and-date", "{place, if {{place}, }}{date}"},
	{"symbol-link", "Scan for the record of this painting."}, {"symbol-text", "The symbol holds the number and how to reach the studio."},
	{"see-reverse", "Build-up, care and how to check this certificate: page 2."},
	{"key-later", "printed here when the certificate is issued"},
	{"unsigned", "Without a digital signature: the studio had no key on the day of issue."},
	{"unissued", "made when the certificate is issued"},
	{"record-line", "SHA-256 of the record: {digest}"},

	{"build-up", "Build-up"}, {"care", "Care and display"}, {"gaps", "Not recorded or not known"}, {"facts", "The work"}, {"not", "What this is, and is not"},
	{"studio", "The studio"}, {"verify", "To check this certificate"}, {"drawing-head", "Build-up, drawn"},
	{"size", "H × W × D"}, {"date", "Date"}, {"pigments", "Pigments"}, {"edges-line", "Edges, not drawn: {layers}"},
	{"type", "Object"}, {"subject", "Subject"}, {"features", "Features"}, {"own-number", "Studio’s no."}, {"price", "Price"},
	{"no-features", "distinguishing features"}, {"no-subject", "subject"}, {"no-place", "place of the studio"},
	{"drawing", "drawing of the build-up"}, {"facts-part", "particulars of the work"}, {"care-part", "care and display"}, {"gaps-part", "what is not recorded"},
	{"on-page", "On page {page}: {parts}."},
	{"corrected", "{n, plural, one {One entry was corrected later; the record tells what and why.} other {{n} entries were corrected later; the record tells what and why.}}"},
	{"photograph", "Photograph of the front: {title}"},
	{"sentence", "{text}."},
	{"not-text", "The maker’s own statement and record, to be read with the work. It is no appraisal, and by itself no proof of authorship. " +
		"Questions of treatment go to a conservator."},
	{"verify-plain", "The text in the symbol agrees with this page, the number with the panel’s back."}, {"verify-ask", "The studio can confirm its key."},
	{"verify-text", "For a technician: “pdfdetach -saveall” takes out of the PDF record.json, whose SHA-256 heads this page; record.sig, its Ed25519 signature; " +
		"studio.pem, the key; head.txt and proof.json, its place in the studio’s journal. Then run the test."},
	{"verify-none", "The PDF of this certificate holds record.json, the whole record. Take it out with “pdfdetach -saveall”; “sha256sum record.json” gives the figure at the head of this page."},
	{"symbol", "The main facts, as signed text"},
	{"link", "Link"}, {"signature", "Digital signature"}, {"key", "Studio key"}, {"test", "Test"},

	{"file-title", "Certificate {number}: {title}"}, {"file-subject", "Certificate of a painting panel, with the record of how it was made"},
	{"record-file", "The record of the panel, canonical JSON (RFC 8785)"},
	{"signature-file", "Ed25519 signature over record.json, 64 bytes (RFC 8032)"},
	{"key-file", "Public key of the studio"},
	{"head-file", "Signed head of the studio’s journal"},
	{"proof", "Proofs that the entries of the record stand in the journal under that head"},
}
