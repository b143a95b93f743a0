package record

// Cut makes the panels named by the entry: boards cut to size, one batch.
type Cut struct {
	Batch     Key      `json:"batch"`
	Size      Size     `json:"size"`
	Board     Key      `json:"board,omitzero" ref:"material"` // material
	BoardAs   []int64  `json:"board_as,omitzero"`             // see Part.As
	Lot       Key      `json:"board_lot,omitzero" ref:"lot of board"`
	Grain     Grain    `json:"grain,omitzero"`      // run of the face grain
	SawLoss   Length   `json:"saw_loss,omitzero"`   // width of board lost at each cut
	Rough     Face     `json:"rough_side,omitzero"` // screen side of a hardboard
	Settled   Duration `json:"settled,omitzero"`    // time the board stood open in the workroom before work
	Degreased Answer   `json:"degreased,omitzero"`
	Keyed     Answer   `json:"keyed,omitzero"`
	Bought    Answer   `json:"bought_ready,omitzero"` // the panel was bought made
	Year      int64    `json:"year,omitzero"`         // all four figures of the year in the number
	Recorded  Recorded `json:"recorded,omitzero"`     // absent: reckoned from how long after the event it was written
	Bow       Length   `json:"bow,omitzero"`          // of the board before the first coat
	BowSpan   Length   `json:"bow_span,omitzero"`     // over which it was measured
	BowToward Toward   `json:"bow_hollow_to,omitzero"`
	BowAlong  Along    `json:"bow_along,omitzero"`
	Owner     string   `json:"own_reference,omitzero"` // the studio's own older number
	Note      string   `json:"note,omitzero" is:"text"`
}

// Part is one lot in a mix.
type Part struct {
	Parts    int64 `json:"parts"`
	Material Key   `json:"material" ref:"material"`
	// As names the entries that describe the material as it is meant here.
	// Several: one of them, and nobody knows which. Filled in when the entry
	// is written, so that no later change of the shelf changes what was done.
	As  []int64 `json:"material_as,omitzero"`
	Lot Key     `json:"lot,omitzero" ref:"lot of material"`
}

// Coating is what every wet application has in common. A mix is normal; an
// amount is either for all panels and faces of the entry together, shared out
// by area, or for each panel.
type Coating struct {
	Mix         []Part      `json:"mix,omitzero"`
	Thinned     Percent     `json:"thinned,omitzero"`      // thinner added, as a share of the undiluted volume
	Thinner     string      `json:"thinned_with,omitzero"` // absent: water
	ThinnerIs   Solvent     `json:"thinned_with_kind,omitzero"`
	Tool        string      `json:"tool,omitzero"`
	ToolIs      Tool        `json:"tool_kind,omitzero"`
	WetTotal    Amount      `json:"wet_total,omitzero"`
	WetEach     Amount      `json:"wet_each,omitzero"`
	WetFilm     Length      `json:"wet_film,omitzero"` // measured with a gauge
	DryFilm     Length      `json:"dry_film,omitzero"` // measured
	Temperature Temperature `json:"temperature,omitzero"`
	Humidity    Percent     `json:"humidity,omitzero"`
	Note        string      `json:"note,omitzero" is:"text"`
}

// Wet is how much was laid on so many panels, in mg or in µL; 0 where it is not
// known.
func (c Coating) Wet(panels int) (milligrams, microliters float64) {
	amount, n := c.WetTotal, 1.0
	if !c.WetEach.IsZero() {
		amount, n = c.WetEach, float64(panels)
	}
	mg, _ := amount.Milligrams()
	ul, _ := amount.Microliters()
	return float64(mg) * n, float64(ul) * n
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
	Cloth        Key       `json:"cloth,omitzero" ref:"material"`
	ClothAs      []int64   `json:"cloth_as,omitzero"` // see Part.As
	ClothLot     Key       `json:"cloth_lot,omitzero" ref:"lot of cloth"`
	AgainOf      int64     `json:"again_of,omitzero" ref:"entry cloth"` // entry by which the same cloth was laid before
	Run          ThreadRun `json:"threads,omitzero"`
	Oversize     Length    `json:"oversize,omitzero"`    // allowance on each side
	WetThrough   Answer    `json:"wet_through,omitzero"` // wetted from above until saturated
	EdgesPressed Answer    `json:"edges_pressed,omitzero"`
	Weighted     Duration  `json:"weighted,omitzero"` // time under weights
	Coating
}

// Trimmed is cloth cut flush with the board.
type Trimmed struct {
	Tool   string `json:"tool,omitzero"`
	ToolIs Tool   `json:"tool_kind,omitzero"`
	Eased  Answer `json:"edges_eased,omitzero"` // edges eased with sandpaper
	Note   string `json:"note,omitzero" is:"text"`
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
	Faces       []Face  `json:"faces,omitzero"` // absent: front
	Resin       string  `json:"resin,omitzero"` // resin class
	ResinIs     Resin   `json:"resin_kind,omitzero"`
	Removable   Answer  `json:"removable,omitzero"`
	RemovedWith string  `json:"removed_with,omitzero"`
	RemoverIs   Solvent `json:"removed_with_kind,omitzero"`
	Gloss       Gloss   `json:"gloss,omitzero"`
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
	Along    Along  `json:"along,omitzero"` // the direction in which the bow was measured
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

// LeftBare says that faces were left without any coat.
type LeftBare struct {
	Faces   []Face `json:"faces"`
	Because string `json:"because,omitzero"`
}

// Intended is what a panel is meant to become.
type Intended struct {
	Cloth Answer `json:"cloth"` // no: it is meant to carry none
	Note  string `json:"note,omitzero" is:"text"`
}

// Removed says that layers were taken off, wholly or in part. The record keeps
// them; the build-up of today does not.
type Removed struct {
	Layers  []int64 `json:"layers,omitzero" ref:"entry layer"` // entries by which they were laid; absent: not on record
	What    Stratum `json:"what"`
	Faces   []Face  `json:"faces,omitzero"` // absent: all on which they lie
	Extent  Extent  `json:"extent"`
	Where   string  `json:"where,omitzero"` // of a removal in part
	Means   []Means `json:"means,omitzero"`
	With    string  `json:"with,omitzero"` // the product, in the words of who did it
	By      string  `json:"by,omitzero"`
	Because string  `json:"because,omitzero"`
	Note    string  `json:"note,omitzero" is:"text"`
}

// Resized is a panel cut down or enlarged.
type Resized struct {
	How     Resizing `json:"how"`
	Before  Size     `json:"size_before,omitzero"`
	Size    Size     `json:"size"`
	By      string   `json:"by,omitzero"`
	Because string   `json:"because,omitzero"`
	Note    string   `json:"note,omitzero" is:"text"`
}

// UsedAgain begins another work on a panel that carried one before. What was
// described before is of the earlier work.
type UsedAgain struct {
	Over    Answer `json:"over_earlier_paint,omitzero"` // the earlier paint is still below
	Earlier string `json:"earlier_work,omitzero"`
	Note    string `json:"note,omitzero" is:"text"`
}

// Feature is something at one place of the board: a knot, a joint, a repair.
type Feature struct {
	What Mark   `json:"what"`
	Face Face   `json:"face"`
	Left Length `json:"from_left,omitzero"` // seen on that face
	Top  Length `json:"from_top,omitzero"`
	Size Size   `json:"size,omitzero"`
	Note string `json:"note,omitzero" is:"text"`
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
func (LeftBare) Kind() Kind   { return "left-bare" }
func (Intended) Kind() Kind   { return "intended" }
func (Removed) Kind() Kind    { return "removed" }
func (Resized) Kind() Kind    { return "resized" }
func (UsedAgain) Kind() Kind  { return "used-again" }
func (Feature) Kind() Kind    { return "feature" }
