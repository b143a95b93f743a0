package tell

// englishFields name the fields of all kinds of entry, those of objects within
// a field too. A name that is another one in one kind stands under the kind
// and the field: "studio.mark".
var englishFields = table{
	// of any entry
	{"at", "when"}, {"written", "written down"}, {"panels", "panels"}, {"makers", "done by"}, {"imported", "imported"}, {"because", "because"}, {"note", "note"}, {"text", "text"},
	{"entry", "entry"}, {"change", "change"}, {"faces", "faces"}, {"face", "face"}, {"by", "by"}, {"with", "with"}, {"reason", "reason"}, {"purpose", "purpose"},

	// the shelf
	{"key", "key"}, {"name", "name"}, {"uses", "uses"}, {"producer", "producer"}, {"basis", "values from"}, {"binder", "binder"}, {"waterborne", "water-borne"},
	{"solids_by_mass", "solids by mass"}, {"solids_by_volume", "solids by volume"}, {"density", "density"}, {"touch_dry_from", "touch-dry from"}, {"touch_dry_to", "touch-dry to"},
	{"cure_from", "cured from"}, {"cure_to", "cured to"}, {"film_forms_above", "film forms above"}, {"thinner", "thinner"}, {"removable", "removable"}, {"removed_with", "removed with"},
	{"resin", "resin"}, {"gloss", "sheen"}, {"pigments", "pigments"}, {"colour_index", "Colour Index name"}, {"hazard", "hazard"}, {"toxic_dry", "harmful when sanded"},
	{"board", "board"}, {"cloth", "cloth"}, {"kind", "kind"}, {"species", "wood"}, {"plies", "plies"}, {"thickness", "thickness"}, {"core_veneer", "core veneer"},
	{"formaldehyde_class", "formaldehyde class"}, {"fibre", "fibre"}, {"weave", "weave"}, {"warp", "warp"}, {"weft", "weft"}, {"mass", "mass"}, {"width", "width"},
	{"sized", "came sized or primed"}, {"material", "material"}, {"material_as", "material as described in"}, {"producer_lot", "producer’s lot number"}, {"supplier", "supplier"},
	{"quantity", "quantity"}, {"sheet", "sheet"}, {"offcut_of", "offcut of"}, {"expires", "expires"}, {"opened", "opened"}, {"private_sha256", "name and price, SHA-256"},
	{"lot", "lot"}, {"parts", "parts"}, {"steps", "steps"}, {"what", "what"}, {"spread", "spread"},

	// words of a closed list beside a text
	{"thinner_kind", "kind of thinner"}, {"thinned_with_kind", "kind of thinner"}, {"removed_with_kind", "kind of solvent"}, {"resin_kind", "class of resin"}, {"species_kind", "kind of wood"},
	{"tool_kind", "kind of tool"}, {"basis_kind", "kind of source"},

	// the making
	{"batch", "batch"}, {"size", "size"}, {"board_as", "board as described in"}, {"board_lot", "lot of the board"}, {"grain", "grain"}, {"saw_loss", "saw loss"},
	{"rough_side", "rough side"}, {"settled", "stood in the room"}, {"degreased", "degreased"}, {"keyed", "surface keyed"}, {"bought_ready", "bought ready"}, {"year", "year"},
	{"recorded", "recorded"}, {"bow", "bow"}, {"bow_span", "bow measured over"}, {"bow_hollow_to", "hollow at"}, {"bow_along", "bow measured"}, {"own_reference", "own reference"},
	{"extra", "more on"}, {"mix", "with"}, {"thinned", "thinned"}, {"thinned_with", "thinned with"}, {"tool", "tool"}, {"wet_total", "wet amount in all"}, {"wet_each", "wet amount each"},
	{"wet_film", "wet film"}, {"dry_film", "dry film"}, {"temperature", "temperature"}, {"humidity", "humidity"}, {"cloth_as", "cloth as described in"}, {"cloth_lot", "lot of the cloth"},
	{"again_of", "laid again after"}, {"threads", "warp runs"}, {"oversize", "oversize"}, {"wet_through", "wet through"}, {"edges_pressed", "edges pressed"}, {"weighted", "under weights"},
	{"edges_eased", "edges eased"}, {"scale", "scale"}, {"grit", "grit"}, {"wet", "sanded wet"}, {"sanded_through", "sanded through"}, {"dust_removed", "dust removed"},
	{"medium", "medium"}, {"technique", "technique"}, {"underdrawing", "underdrawing"}, {"oil_content", "against the layer below"}, {"film", "film"}, {"bracing", "bracing"},
	{"fixing", "fixing"}, {"run", "run"}, {"for", "for"}, {"layers", "layers"}, {"extent", "how much"}, {"where", "where"}, {"means", "means"}, {"how", "how"}, {"size_before", "size before"},
	{"over_earlier_paint", "over earlier paint"}, {"earlier_work", "earlier work"}, {"from_left", "from the left"}, {"from_top", "from the top"}, {"span", "measured over"},
	{"hollow_to", "hollow at"}, {"along", "measured"}, {"edges", "edges"}, {"adhesion", "adhesion"}, {"remarks", "remarks"}, {"place", "place"},

	// the work, its papers and whereabouts
	{"title", "title"}, {"made", "made"}, {"subject", "subject"}, {"inscription", "inscription"}, {"signed", "signed"}, {"distinguishing_features", "distinguishing features"},
	{"title_romanised", "title in Latin letters"}, {"type_of_object", "type of object"}, {"medium_line", "medium, in the maker’s words"}, {"meant_for_humidity", "meant for a humidity of"}, {"framed", "framed"}, {"edition", "edition"},
	{"summary", "short description"}, {"role", "shows"}, {"sha256", "SHA-256"}, {"media_type", "media type"}, {"width_px", "width in pixels"}, {"height_px", "height in pixels"},
	{"caption", "caption"}, {"credit", "credit"}, {"taken", "taken"}, {"layout", "layout"}, {"record_sha256", "record, SHA-256"}, {"as_of", "as of"}, {"pdf_sha256", "PDF, SHA-256"},
	{"private_printed", "printed on it, of what is private"}, {"replaces", "replaces"}, {"certificate", "certificate"}, {"shown", "shown"}, {"photograph", "photograph"},

	// the studio and its keys
	{"maker", "maker"}, {"voice", "speaks as"}, {"journal", "journal"}, {"mark_picture", "picture of the mark"}, {"mark", "mark"}, {"contact", "contact"}, {"link_base", "base of links"},
	{"naan", "ARK prefix"}, {"time_zone", "time zone"}, {"units", "units"}, {"paper", "paper"}, {"label_sheet", "label sheet"}, {"currency", "currency"},
	{"demonstration", "demonstration"}, {"page", "page"}, {"label", "label"}, {"rows", "rows"}, {"columns", "columns"}, {"left", "left"}, {"top", "top"}, {"pitch_across", "pitch across"},
	{"pitch_down", "pitch down"}, {"fingerprint", "fingerprint"}, {"public_key", "public key"}, {"successor", "successor"}, {"statement", "statement"},
}
