package record

// Cut makes the panels named by the entry: boards cut to size, one batch.
type Cut struct {
	Batch     Key      `json:"batch"`
	Size      Size     `json:"size"`
	Board     Key      `json:"board,omitzero"` // material
	Lot       Key      `json:"board_lot,omitzero"`
	Grain     Grain    `json:"grain,omitzero"`      // run of the face grain
	SawLoss   Length   `json:"saw_loss,omitzero"`   // width of board lost at each cut
	Rough     Face     `json:"rough_side,omitzero"` // screen side of a hardboard
	Settled   Duration `json:"settled,omitzero"`    // time the board stood open in the workroom before work
	Degreased Answer   `json:"degreased,omitzero"`
	Keyed     Answer   `json:"keyed,omitzero"`
	Owner     string   `json:"own_reference,omitzero"` // the studio's own older number
	Note      string   `json:"note,omitzero" is:"text"`
}

// Part is one lot in a mix.
type Part struct {
	Parts    int64 `json:"parts"`
	Material Key   `json:"material"`
	Lot      Key   `json:"lot,omitzero"`
}

// Coating is what every wet application has in common. A mix is normal; an
// amount is either for all panels and faces of the entry together, shared out
// by area, or for each panel.
type Coating struct {
	Mix         []Part      `json:"mix,omitzero"`
	Thinned     Percent     `json:"thinned,omitzero"`      // thinner added, as a share of the undiluted volume
	Thinner     string      `json:"thinned_with,omitzero"` // absent: water
	Tool        string      `json:"tool,omitzero"`
	WetTotal    Amount      `json:"wet_total,omitzero"`
	WetEach     Amount      `json:"wet_each,omitzero"`
	WetFilm     Length      `json:"wet_film,omitzero"` // measured with a gauge
	DryFilm     Length      `json:"dry_film,omitzero"` // measured
	Temperature Temperature `json:"temperature,omitzero"`
	Humidity    Percent     `json:"humidity,omitzero"`
	Note        string      `json:"note,omitzero" is:"text"`
}

// Coat is one application on one or more faces.
type Coat struct {
	Purpose Purpose `json:"purpose,omitzero"`
	Faces   []Face  `json:"faces"`
	Extra   []Face  `json:"extra,omitzero"` // faces that were given more, e.g. the edges
	Coating
}

// ClothLaid is an adhesive coat and a cloth laid into it.
type ClothLaid struct {
	Faces        []Face    `json:"faces"`
	Cloth        Key       `json:"cloth,omitzero"`
	ClothLot     Key       `json:"cloth_lot,omitzero"`
	Run          ThreadRun `json:"threads,omitzero"`
	Oversize     Length    `json:"oversize,omitzero"`    // allowance on each side
	WetThrough   Answer    `json:"wet_through,omitzero"` // wetted from above until saturated
	EdgesPressed Answer    `json:"edges_pressed,omitzero"`
	Weighted     Duration  `json:"weighted,omitzero"` // time under weights
	Coating
}

// Trimmed is cloth cut flush with the board.
type Trimmed struct {
	Tool  string `json:"tool,omitzero"`
	Eased Answer `json:"edges_eased,omitzero"` // edges eased with sandpaper
	Note  string `json:"note,omitzero" is:"text"`
}

// Sanded is an abrasion of faces. Scale and grit belong together.
type Sanded struct {
	Faces   []Face    `json:"faces"`
	Scale   GritScale `json:"scale,omitzero"`
	Grit    int64     `json:"grit,omitzero"`
	Wet     Answer    `json:"wet,omitzero"`
	Through Answer    `json:"sanded_through,omitzero"` // through to fibre or board
	Dusted  Answer    `json:"dust_removed,omitzero"`
	Note    string    `json:"note,omitzero" is:"text"`
}

// PaintLayer is a paint layer, or a painting campaign told as one.
type PaintLayer struct {
	Faces        []Face      `json:"faces,omitzero"` // absent: front
	Medium       PaintMedium `json:"medium,omitzero"`
	Technique    string      `json:"technique,omitzero"`
	Pigments     []Pigment   `json:"pigments,omitzero"`
	Underdrawing string      `json:"underdrawing,omitzero"`
	Oil          OilContent  `json:"oil_content,omitzero"` // against the layer below
	Film         Film        `json:"film,omitzero"`
	Gloss        Gloss       `json:"gloss,omitzero"`
	Coating
}

// Varnish is a final or interim varnish.
type Varnish struct {
	Faces       []Face `json:"faces,omitzero"` // absent: front
	Resin       string `json:"resin,omitzero"` // resin class
	Removable   Answer `json:"removable,omitzero"`
	RemovedWith string `json:"removed_with,omitzero"`
	Gloss       Gloss  `json:"gloss,omitzero"`
	Coating
}

// Braced is a cradle, battens or a strainer fixed to the back.
type Braced struct {
	Bracing Bracing `json:"bracing,omitzero"`
	Fixing  Fixing  `json:"fixing,omitzero"`
	Run     Moving  `json:"run,omitzero"` // against the face grain
	Note    string  `json:"note,omitzero" is:"text"`
}

// WarmAir is drying helped by warm air. It drives water out and hardens nothing.
type WarmAir struct {
	Faces []Face   `json:"faces,omitzero"`
	For   Duration `json:"for,omitzero"`
	Note  string   `json:"note,omitzero" is:"text"`
}

// Inspection is a look at a panel: bow over a span, edges, adhesion.
type Inspection struct {
	Bow      Length `json:"bow,omitzero"`
	Span     Length `json:"span,omitzero"`
	Toward   Toward `json:"hollow_to,omitzero"`
	Edges    Sound  `json:"edges,omitzero"`
	Adhesion Sound  `json:"adhesion,omitzero"` // by tapping
	By       string `json:"by,omitzero"`
	Remarks  string `json:"remarks,omitzero" is:"text"`
}

// Climate is a reading of the air. Without panels it is of the workroom.
type Climate struct {
	Temperature Temperature `json:"temperature,omitzero"`
	Humidity    Percent     `json:"humidity,omitzero"`
	Place       string      `json:"place,omitzero"`
}

func (Cut) Kind() Kind        { return "cut" }
func (Coat) Kind() Kind       { return "coat" }
func (ClothLaid) Kind() Kind  { return "cloth" }
func (Trimmed) Kind() Kind    { return "trimmed" }
func (Sanded) Kind() Kind     { return "sanded" }
func (PaintLayer) Kind() Kind { return "paint" }
func (Varnish) Kind() Kind    { return "varnish" }
func (Braced) Kind() Kind     { return "braced" }
func (WarmAir) Kind() Kind    { return "warm-air" }
func (Inspection) Kind() Kind { return "inspection" }
func (Climate) Kind() Kind    { return "climate" }
