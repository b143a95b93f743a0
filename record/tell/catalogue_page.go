package tell

// PageWords stand on the page of a panel, beside those of its certificate.
type PageWords struct {
	Panel, Window   Message // {number} {title}
	AsOf            Message // {n} {date}
	Stolen, Missing Message // {date} {contact}
	By              Message // {maker} {painter}: panel and work by two hands
	Faces, Varnish  Message
	NoPhotograph    Message // it is on record and not shown
	Drawn           Message // what a drawing of the build-up shows, for those who cannot see it
	DrawingWords    Message // before the build-up in words

	Certificates                         Message
	NoCertificate                        Message // {until}
	Stands, ReplacedBy, WithdrawnOn      Message // {date} {until} {by} {because}
	RecordDigest                         Message // {digest}
	Studio, Corrected                    Message
	What, NotThis                        Message
	Check, CheckText, ByHand, ByHandText Message // {digest}
	Sheet                                Message // {number} {link}: on paper
	CheckUnsigned                        Message
	Files, LinkedData                    Message

	TakenBack, TakenBackText                         Message // {number} {date} {maker}
	NotFound, NotFoundText, NotFoundHow, NotFoundAsk Message // {sample} {maker} {contact}
	Index, IndexText                                 Message // {maker}

	// Checking is what the script of the page says, by code. Its places are
	// filled by the script, which knows no other part of a message.
	Checking map[string]Message
}

func englishPage() PageWords {
	return PageWords{
		Panel: "Panel {number}", Window: "{title}, {number}",
		AsOf:    "As recorded in the studio’s journal up to entry {n}, {date}.",
		Stolen:  "The maker reported this work stolen on {date}. Do not buy or sell it. Whoever knows where it is, please write to the maker{contact, if {: {contact}}}.",
		Missing: "The maker reported this work missing on {date}. Before you buy or sell it, and if you know where it is, please write to the maker{contact, if {: {contact}}}.",
		By:      "{painter}; panel made by {maker}",
		Faces:   "Sealing", Varnish: "Varnish",
		NoPhotograph: "A photograph is on record. It is not shown here.",
		Drawn:        "The layers, from the front to the back; the list below names them.",
		DrawingWords: "The same in words",

		Certificates:  "Certificates",
		NoCertificate: "No certificate is on record up to {until}. Whoever is shown one should ask the studio.",
		Stands:        "Issued on {date}; not withdrawn up to {until}.",
		ReplacedBy:    "Issued on {date}; replaced by that of {by}.",
		WithdrawnOn:   "Issued on {date}; withdrawn on {by}{because, if {: {because}}}.",
		RecordDigest:  "Record, SHA-256: {digest}",
		Studio:        "The studio",
		Corrected:     "Corrected",
		What:          "What this page is",
		NotThis:       "The maker’s own record of the panel, as it stood on the day named below. What happened since, the studio’s status tells, which the check below reads.",

		Check: "Check this page",
		CheckText: "This page carries the record of the panel, the studio’s signature over it, and the proof that its entries stand in the studio’s journal. " +
			"A browser of today checks all of that here, and asks nobody. Anybody can make a page and sign it with a key of their own: such a page vouches for itself too.",
		ByHand: "By hand, without this page",
		ByHandText: "Save record.json, record.sig and studio.pem, and type the three lines. The first figure must be {digest}, the second that of the key on your certificate; " +
			"the third line must say that the signature is verified.",
		Sheet:         "This sheet proves nothing, whatever it says: anybody can print one. The page of panel {number} checks itself in a browser{link, if {: {link}}}.",
		CheckUnsigned: "This page carries the record of the panel. It is not signed: the studio had no key. Nobody can check who wrote it.",
		Files:         "The files", LinkedData: "For a museum’s system (Linked Art, JSON-LD)",

		TakenBack: "No longer shown",
		TakenBackText: "The maker no longer shows this page, since {date}. That says nothing for or against the panel, its label or its certificate. " +
			"Before you rely on any of them, ask {maker}{contact, if {, {contact}}}.",
		NotFound:     "No such panel here",
		NotFoundText: "There is no page under this address: the number is mistyped, or the maker does not show the panel. If you came here from a label, do not rely on that label.",
		NotFoundHow:  "Numbers look like {sample}; in the address they stand without hyphens and in capitals.",
		NotFoundAsk:  "Whoever holds a panel with another number may ask {maker}{contact, if {, {contact}}}.",
		Index:        "Panels by {maker}", IndexText: "Each leads to what its maker recorded of it.",

		Checking: map[string]Message{
			"locale":        "en-GB", // of dates
			"checking":      "Checking …",
			"whole":         "Complete and unaltered under this key:",
			"whole-none":    "Complete and unaltered under this key. There is no certificate to compare it with: only the studio can tell you whether it is its own.",
			"whole-here":    "Unaltered under this key, as far as it can be checked here; what could not be is named below.",
			"altered":       "Altered. What is named first below does not hold.",
			"outdated":      "Unaltered under this key, but not the studio’s newest word: see below.",
			"not-in-force":  "Take care: by the studio’s status, {standing}. The page itself is unaltered under this key:",
			"compare":       "Your certificate must print the same. If it does not, this is not the studio’s page: a forger’s page vouches for itself too.",
			"compare-older": "An older certificate may print this one instead, which named its successor:",
			"cannot":        "This browser cannot check here: {why}. The lines below do it by hand.",
			"why-insecure":  "the page did not come over https",
			"why-old":       "it does not know Ed25519 signatures",
			"demo":          "This is a demonstration; anybody can sign with its key.",
			"holds":         "holds",
			"fails":         "does not hold",
			"unknown":       "not checked here",
			"since":         "since then",
			"signature":     "The signature over the record is that of the key.",
			"signature-not": "The signature over the record is not that of the key, or the record was changed.",
			"record-not":    "The record that this page carries cannot be read: it was changed.",
			"data-not":      "The data that this page carries cannot be read: it was changed.",
			"key-not":       "The key is not in its form.",
			"text":          "What this page states is what the studio signed.",
			"text-not":      "What this page states is not what the studio signed.",
			"page-not":      "The studio’s word for this page is not signed with the key, or was changed.",
			"page-other":    "The studio’s word for this page is about another record or panel.",
			"pictures":      "The pictures and the style are those the studio signed.",
			"picture-not":   "The file {name} is not the one the studio signed.",
			"pictures-here": "The pictures: a page opened from a folder cannot read them.",
			"head":          "The head of the journal, over {n} entries, is signed with the key.",
			"head-not":      "The head of the journal is not signed with the key, or was changed.",
			"head-other":    "The head of the journal is not the one that the record names.",
			"proof":         "Each of the {n} entries of the record stands in that journal, unchanged.",
			"proof-not":     "The entries of the record do not all stand in that journal as they are, or the proof was changed.",
			"proof-entry":   "Entry {n} of the record does not stand in that journal.",
			"proof-form":    "The proof is not that of these entries.",
			"keys":          "The key is the one that the journal names; each earlier one named its successor.",
			"keys-now":      "The key is the one that the journal names.",
			"key-lost":      "An earlier key of this journal was declared lost and named no successor. Older certificates print it; ask the studio: {key}",
			"key-alone":     "Another key of this journal named no successor. Ask the studio, whose it is: {key}",
			"keys-not":      "The journal does not name this key as the studio’s present one.",
			"status":        "Status of {date} ({age}): signed with the key.",
			"status-not":    "The status of the studio is not signed with this key, or was changed.",
			"status-here":   "The status of the studio: a page opened from a folder cannot read it.",
			"status-none":   "The status of the studio: it is not there.",
			"status-page":   "The studio’s status of {date} names this page.",
			"status-older":  "The studio’s status of {date} does not name this page: it is older than that, or was taken back.",
			"status-key":    "The studio’s status of {date} says that its key was {standing}.",
			"paper-status":  "The certificate with the record {digest} …, by the status of {date}: {standing}.",
			"paper-record":  "The certificate with the record {digest} …, by the record of this page: {standing}.",
			"of-a-paper":    "a certificate of this panel is {standing}",
			"paper-none":    "The certificate with the record {digest} …: the status of {date} does not know it.",
			"age-today":     "of today", "age-days": "{n} days old", "age-ahead": "dated ahead of this computer’s clock",
			"issued": "issued", "replaced": "replaced", "withdrawn": "withdrawn", "stolen": "reported stolen", "missing": "reported missing", "page": "shown",
			"retired": "retired", "lost": "declared lost",
			"bring":         "Check your certificate here",
			"bring-text":    "Choose the PDF of a certificate, or the five files in it, or drop them here. Nothing leaves your telephone or computer.",
			"bring-files":   "Choose files",
			"bring-symbol":  "Or paste the text of its large symbol, as a camera reads it:",
			"bring-check":   "Check the text",
			"pdf-issued":    "{name} is, byte for byte, the certificate issued on {date}.",
			"pdf-label":     "{name} is, byte for byte, the file of labels printed on {date}.",
			"pdf-other":     "{name} is not a file that this page knows as issued. It may have been saved again: take out the five files in it and bring these.",
			"deed":          "{name}: the signature is that of the key {key}.",
			"deed-not":      "{name}: the signature does not hold.",
			"deed-lacks":    "{name}: its signature (record.sig) and key (studio.pem) are needed too.",
			"deed-known":    "It is the record of the certificate issued on {date}.",
			"deed-unknown":  "This page knows no certificate with this record.",
			"deed-key":      "Its key is that of this page.",
			"deed-otherkey": "Its key is another than that of this page.",
			"note":          "The text is signed with the key that it names: {text}.",
			"note-not":      "The text is not signed as it says, or was changed.",
			"file-unknown":  "{name} is none of the files of a certificate.",
		},
	}
}
