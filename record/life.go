package record

// Described is what a cataloguer asks of the work. A later description
// replaces the fields it gives.
type Described struct {
	Title       string  `json:"title,omitzero"`
	Romanised   string  `json:"title_romanised,omitzero"` // the title in Latin letters, for papers
	Made        When    `json:"made,omitzero"`            // date of the work
	Subject     string  `json:"subject,omitzero"`
	Inscription string  `json:"inscription,omitzero"`
	Signed      string  `json:"signed,omitzero"` // where and how it is signed
	Features    string  `json:"distinguishing_features,omitzero"`
	Type        string  `json:"type_of_object,omitzero"`     // absent: painting
	Medium      string  `json:"medium_line,omitzero"`        // in a cataloguer's words, if the maker wants their own
	MeantFor    Percent `json:"meant_for_humidity,omitzero"` // of the room it is to hang in
	Owner       string  `json:"own_reference,omitzero"`
	Framed      Answer  `json:"framed,omitzero"`
	Edition     string  `json:"edition,omitzero"` // absent: one of its kind
	Summary     string  `json:"summary,omitzero" is:"text"`
	Note        string  `json:"note,omitzero" is:"text"`
}

// Photograph names a kept picture by its digest. The file itself lies in a
// folder beside the book.
type Photograph struct {
	Role    PhotoRole `json:"role"`
	SHA256  string    `json:"sha256" is:"sha256"` // of the file, lower-case hex
	Type    string    `json:"media_type" is:"media"`
	Width   int64     `json:"width_px"`
	Height  int64     `json:"height_px"`
	Caption string    `json:"caption,omitzero"`
	Credit  string    `json:"credit,omitzero"` // who took it
	Taken   When      `json:"taken,omitzero"`
}

// LabelPrinted says that a label was made, with the digest of the record it
// speaks of.
type LabelPrinted struct {
	Layout string `json:"layout,omitzero"` // small, medium, large
	Record string `json:"record_sha256,omitzero" is:"sha256"`
	AsOf   int64  `json:"as_of,omitzero"`                  // last entry of the record that it shows
	PDF    string `json:"pdf_sha256,omitzero" is:"sha256"` // of the file, which may hold other labels too
	Reason string `json:"reason,omitzero"`
}

// Issued is a certificate made out for one panel.
type Issued struct {
	Record   string `json:"record_sha256" is:"sha256"`
	PDF      string `json:"pdf_sha256,omitzero" is:"sha256"`                  // of the file that left the studio
	Private  Answer `json:"private_printed,omitzero"`                         // it prints the owner's name or a price
	Replaces int64  `json:"replaces,omitzero" ref:"entry certificate-issued"` // entry of the certificate it replaces
	Reason   string `json:"reason,omitzero"`
}

// Revoked takes an issued certificate back: lost, stolen, wrong.
type Revoked struct {
	Certificate int64  `json:"certificate" ref:"entry certificate-issued"` // entry by which it was issued
	Because     string `json:"because"`
}

// HandedOver says that a panel left or came back. To whom and for how much
// stand outside the journal; here is only a salted digest of them.
type HandedOver struct {
	How     Parting `json:"how"`
	Private string  `json:"private_sha256,omitzero" is:"sha256"`
	Note    string  `json:"note,omitzero" is:"text"`
}

// Published says whether a panel has a page for those who scan its label, and
// whether the photograph of a sold work may be shown there.
type Published struct {
	Shown      Answer `json:"shown"`
	Photograph Answer `json:"photograph,omitzero"`
	Because    string `json:"because,omitzero"`
}

// Forgotten says that the private part of an entry was erased.
type Forgotten struct {
	Entry   int64  `json:"entry"`
	Because string `json:"because"`
}

// Note is anything else worth keeping.
type Note struct {
	Text string `json:"text" is:"text"`
}

// Condition is a condition report by whoever examined the panel.
type Condition struct {
	By   string `json:"by"`
	Text string `json:"text" is:"text"`
	Why  string `json:"purpose,omitzero"`
}

// Treatment is what was done to the panel after it was finished.
type Treatment struct {
	By    string `json:"by"`
	Text  string `json:"text" is:"text"`
	With  string `json:"with,omitzero"`
	Why   string `json:"because,omitzero"`
	Faces []Face `json:"faces,omitzero"`
}

// Discarded is a panel given up, with the reason.
type Discarded struct {
	Because string `json:"because"`
}

// KeyMade, KeyRetired and KeyLost tell the life of the studio's signing key.
type KeyMade struct {
	Fingerprint string `json:"fingerprint" is:"sha256"` // SHA-256 of the SPKI DER, lower-case hex
	PublicKey   string `json:"public_key" is:"base64"`  // SPKI DER in base64
}

// KeyRetired names the successor, signed by the retired key.
type KeyRetired struct {
	Fingerprint string `json:"fingerprint" is:"sha256"`
	Successor   string `json:"successor" is:"sha256"`
	Statement   string `json:"statement" is:"text"` // signed note by which the old key names the new
	Because     string `json:"because"`
}

// KeyLost declares a key lost: what it signs from then on is not the studio's.
type KeyLost struct {
	Fingerprint string `json:"fingerprint" is:"sha256"`
	Because     string `json:"because"`
}

func (Described) Kind() Kind    { return "described" }
func (Photograph) Kind() Kind   { return "photograph" }
func (LabelPrinted) Kind() Kind { return "label-printed" }
func (Issued) Kind() Kind       { return "certificate-issued" }
func (Revoked) Kind() Kind      { return "certificate-withdrawn" }
func (HandedOver) Kind() Kind   { return "handed-over" }
func (Forgotten) Kind() Kind    { return "private-erased" }
func (Note) Kind() Kind         { return "note" }
func (Condition) Kind() Kind    { return "condition" }
func (Treatment) Kind() Kind    { return "treatment" }
func (Discarded) Kind() Kind    { return "discarded" }
func (KeyMade) Kind() Kind      { return "key-made" }
func (KeyRetired) Kind() Kind   { return "key-retired" }
func (KeyLost) Kind() Kind      { return "key-lost" }
func (Published) Kind() Kind    { return "published" }
