package main

import "strings"

// A statement is something that a record settles: one of its worlds is true of
// each panel. Phrases are what answers say, each true in some of the worlds only.
type statement struct {
	name, usual string // usual: the world of a tale that says nothing of it
	phrases     []phrase
}

// A phrase is a pattern of what answers say, spaces as one, in small letters.
type phrase struct {
	says, worlds string
	in           string // names of answers, as a pattern; empty: any
}

// due are the answers, parted by commas, that may not keep silent where one of
// the worlds of a statement is true.
var due = []struct{ statement, worlds, answers string }{
	{"harm", "held may", "label, certificate, dossier at a glance, ask lead-and-toxic-pigments, ask hazards, ask sanding, check --all"},
	{"lead", "held may", "label, certificate, dossier at a glance, ask lead-and-toxic-pigments, ask hazards"},
	{"cadmium", "held", "label, certificate, dossier at a glance, ask lead-and-toxic-pigments, ask hazards"},
	{"mercury", "held", "label, certificate, dossier at a glance, ask lead-and-toxic-pigments, ask hazards"},
	{"arsenic", "held", "label, certificate, dossier at a glance, ask lead-and-toxic-pigments, ask hazards"},
	{"chromium-vi", "held", "label, certificate, dossier at a glance, ask lead-and-toxic-pigments, ask hazards"},
	{"barium", "held", "label, certificate, dossier at a glance, ask lead-and-toxic-pigments, ask hazards"},
	{"antimony", "held may", "label, certificate, dossier at a glance, ask lead-and-toxic-pigments, ask hazards"},
	{"front", "sealed coated bare nothing open", "label, certificate, dossier 2 support, ask sealing, ask front"},
	{"back", "sealed coated bare nothing open", "label, certificate, dossier 2 support, ask sealing, ask back"},
	{"edges", "sealed coated bare nothing open", "label, certificate, dossier 2 support, ask sealing, ask edges"},
	{"varnish", "on part off none open", "dossier at a glance, dossier 7 surface coating, ask varnish, ask new-varnish, show"},
	{"varnish", "on part off", "label, certificate"},
	{"removable", "yes no unknown unrecorded", "label, certificate, dossier at a glance, ask cleaning"},
	{"cloth", "off none meant-none open", "ask cloth"},
	{"ground", "off open", "ask ground"},
	{"recorded", "made after", "ask written-down, dossier 2 support"},
	{"size", "30x40 25x40", "label, certificate, dossier 1 identification, ask dimensions, ask size, show"},
	{"date", "2026 1998 unknown unrecorded", "dossier 1 identification"},
	{"signed", "yes unrecorded", "ask signature-and-inscriptions"},
	{"edition", "one", "certificate, ask edition"},
	{"painter", "ada bo", "ask maker"},
	{"condition", "seen", "dossier at a glance, ask condition"},
	{"treated", "yes", "label, dossier at a glance, ask treatment"},
	{"where", "here sale theft discarded", "show, ask whereabouts"},
	{"corrected", "yes no", "dossier 17 corrections, ask changes"},
}

// face is one of the three, with what else may be named beside it.
func face(f string) statement {
	list := `\b` + f + `((, | and )(front|back|edges))*`
	first := "nothing"
	if f == "front" {
		first = "coated"
	}
	return statement{f, first, []phrase{
		{list + ` sealed`, "sealed", ""}, {`\bthe ` + f + ` (is|are) sealed: `, "sealed", ""}, {f + `: (not sealed by glue alone|glue is all)`, "sealed", ""},
		{f + ` not sealed`, "coated bare nothing", ""}, {list + `: nothing that seals`, "coated", ""}, {`no coat that closes the ` + f, "coated", ""},
		{list + ` left bare`, "bare", ""}, {`\bthe ` + f + ` (is|are) bare`, "bare", ""},
		{list + `: nothing laid`, "nothing", ""}, {`\bthe ` + f + ` carr(y|ies) nothing`, "nothing", ""},
		{list + `: no sealing coat recorded`, "open", ""}, {`whether the ` + f + ` (is|are) sealed`, "open", ""}, {`whether a coat seals the ` + f, "open", ""}, {`first coats on the ` + f + ` were for`, "open", ""},
	}}
}

// metal is what a pigment may hold.
func metal(code string) statement {
	m := strings.ReplaceAll(code, "chromium-vi", "chromate")
	return statement{code, "no", []phrase{
		{`\b(?:holds|contains) [^.;]*\b` + m + `\b`, "held", ""}, {`\bin the [a-z ]+(\([a-z0-9, ]+\))?: ` + m + `\b`, "held", ""},
		{`\bmay (?:hold|contain) [^.;]*\b` + m + `\b`, "may", ""},
	}}
}

var statements = []statement{
	{"harm", "open", []phrase{
		{`\b(?:holds|contains) [^.]*\. do not sand, do not burn`, "held", ""}, {`recorded as harmful when sanded`, "held", ""}, {`the [a-z ]+ is harmful when sanded`, "held", ""},
		{`the [a-z ]+ holds (lead|cadmium|mercury|arsenic|chromate|barium|antimony)`, "held", ""}, {`falls short, warning toxic-layers`, "held", ""},
		{`\bmay (?:hold|contain) [^.]*\. do not sand, do not burn`, "may", ""}, {`none: every colour is known`, "none", ""}, {`(^| )holds toxic-layers`, "none", "check"},
		{`none that the record names`, "none open", "dossier"}, {`not recorded: it cannot be ruled out`, "open may", ""}, {`more cannot be ruled out`, "held", ""},
		{`is harmful when dry`, "held may open", ""}, {`not recorded toxic-layers`, "may open", "check"}, {`never dry-sand`, "held may", ""},
	}},
	metal("lead"), metal("cadmium"), metal("mercury"), metal("arsenic"), metal("chromium-vi"), metal("barium"), metal("antimony"),
	face("front"), face("back"), face("edges"),
	{"varnish", "none", []phrase{
		{`no varnish recorded`, "none open", ""}, {`no varnish is on record; the panel was recorded as it was made`, "none", ""}, {`whether there is any varnish`, "open", ""},
		{`no varnish today: what was on record was taken off`, "off", ""}, {`no varnish on it, as far as recorded`, "none off open", ""}, {`varnish \(taken off, `, "off", ""},
		{`varnish \((taken off in part|reduced|perhaps taken off), `, "part", ""}, {`varnish( \([a-z0-9, ]+\))?, (not )?(removable|known|recorded)`, "on part", ""},
		{`the varnish (is named|cannot be)`, "on part", ""}, {`whether the varnish can`, "on part", ""}, {`varnish: (resin and )?whether it can be removed`, "on part", ""},
		{`stage varnished`, "on part", "show"}, {`stage (bare board|sealed|cloth laid|ground laid|painted)`, "none off open", "show"},
	}},
	{"removable", "-", []phrase{
		{`varnish( \([a-z0-9, ]+\))?, removable`, "yes", ""}, {`varnish( \([a-z0-9, ]+\))?, not removable`, "no", ""}, {`not known whether removable`, "unknown", ""}, {`not recorded whether removable`, "unrecorded", ""},
		{`the varnish is named and can be removed`, "yes", ""}, {`the varnish cannot be removed`, "no", ""}, {`whether the varnish can be removed`, "unknown unrecorded", ""},
		{`varnish: whether it can be removed`, "unknown unrecorded", ""}, {`whether it can be removed \(recorded as unknown`, "unknown", ""},
	}},
	{"cloth", "none", []phrase{
		{`\bon (linen|cloth) laid on`, "laid", ""}, {`no cloth on it, as far as recorded`, "none off meant-none open", ""}, {`meant to carry no(ne| cloth)`, "meant-none", ""},
		{`no cloth is on record; the panel was recorded`, "none", ""}, {`no cloth today`, "off", ""}, {`plain weave \(taken off, 1 may 2030`, "off", ""}, {`whether there is any cloth`, "open", ""},
		{`cloth lies under the ground`, "laid", ""}, {`ground lies on bare veneer`, "none off meant-none", ""}, {`nothing recorded`, "none open", "^dossier 3 cloth"},
		{`whether the cloth was`, "laid off", "check"},
	}},
	{"ground", "none", []phrase{
		{`no ground is on record; the panel was recorded`, "none", ""}, {`no ground today`, "off", ""}, {`ground \(taken off`, "off", ""}, {`whether there is any ground`, "open", ""},
		{`nothing recorded`, "none open", "^dossier 5 ground"}, {`the ground was laid`, "laid off", "check"},
	}},
	{"paint", "laid", []phrase{
		{`no paint is on record`, "off none", ""}, {`no paint today`, "off", ""}, {`paint \(taken off`, "off laid", ""}, {`not finished as a painting`, "off none", ""}, {`\boil on\b`, "laid", "^(label|certificate|dossier 1 )"},
		{`stage (bare board|sealed|cloth laid|ground laid)`, "off none", "show"}, {`stage (painted|varnished)`, "laid", "show"}, {`painted the work on it`, "laid", ""},
	}},
	{"recorded", "made", []phrase{
		{`recorded as (it was )?made`, "made", ""}, {`recorded afterwards`, "after", ""}, {`so none was laid as far as the record goes`, "made", ""}, {`what is absent is only not recorded`, "after", ""},
		{`without any coat there`, "made", ""},
	}},
	{"size", "30x40", []phrase{
		{`^(dimensions: )?30 [x×] 40 cm`, "30x40", "^ask (dimensions|size)"}, {`30 [x×] 40 cm`, "30x40", "^(label|certificate)"}, {`25 [x×] 40 cm`, "25x40", ""}, {`measurements 30 [x×] 40`, "30x40", "^dossier 1 "}, {`\(height × width × depth\) 30 [x×] 40`, "30x40", "show"},
		{`height and width (unknown|not known)|unknown [x×] unknown`, "unknown", ""}, {`support: size`, "unknown", ""}, {`how large (and how thick )?the`, "unknown", ""},
	}},
	{"board", "plywood", []phrase{
		{`on birch plywood|birch plywood,`, "plywood", ""}, {`kind of board`, "open", ""}, {`board of a kind not recorded`, "open", ""}, {`what kind of board it is`, "open", ""},
	}},
	{"date", "2026", []phrase{
		{`ada example, 2026|low tide, 2026`, "2026", ""}, {`about 1998`, "1998", ""}, {`date or period painted 20`, "unknown unrecorded", ""},
		{`date or period 2026`, "2026", ""}, {`date of the work 2026`, "2026", "show"},
	}},
	{"signed", "unrecorded", []phrase{
		{`lower right`, "yes", ""}, {`inscription or signature`, "unrecorded unknown", ""}, {`^not recorded`, "unrecorded", "^ask signature"}, {`inscription or signature \(recorded as unknown`, "unknown", ""},
	}},
	{"edition", "one", []phrase{
		{`one of its kind`, "one", ""}, {`edition 2 of 3|2 of 3`, "some", "^(certificate 1|dossier|ask|show)"}, {`recorded as unknown|not known`, "unknown", "^ask edition"},
	}},
	{"framed", "no", []phrase{
		{`, framed|framed: yes|framed yes`, "yes", ""}, {`not framed|framed: no|framed no`, "no", ""}, {`^framed`, "yes", "ask framed"}, {`^not recorded`, "unrecorded", "ask framed"},
	}},
	{"medium", "oil", []phrase{
		{`\boil (on|paint)\b`, "oil", ""}, {`\balkyd (on|paint)\b`, "alkyd", ""}, {`medium not (recorded|known)|of unknown medium`, "unknown", "^(label|certificate|dossier)"}, {`paint: [a-z ,]*medium`, "unknown", ""},
	}},
	{"painter", "ada", []phrase{
		{`bo other`, "bo", ""}, {`painted by ada`, "ada", ""}, {`painted the work on it with my own hand`, "ada", ""},
	}},
	{"sanded", "none", []phrase{
		{`no sanding is (recorded|on record)`, "none open", ""}, {`sanded (front )?with p 180|sanded, p 180`, "yes", ""}, {`whether (it|anything) was sanded`, "open yes", ""},
	}},
	{"condition", "never", []phrase{
		{`nobody looked`, "never", ""}, {`not recorded`, "never", "^ask condition"}, {`but for a scratch`, "seen", ""}, {`edges sound|adhesion sound`, "seen", ""},
	}},
	{"treated", "no", []phrase{
		{`no treatment`, "no", ""}, {`loose corner laid down`, "yes", ""}, {`treated once`, "yes", ""}, {`not recorded`, "no", "^ask treatment"},
	}},
	{"where", "here", []phrase{
		{`in the studio: nothing is recorded of its leaving`, "here", ""}, {`never sold or lent`, "here", ""}, {`, in the studio`, "here", "show"}, {`sold 1 january|sold on 1 january|, sold|e\d+ sold`, "sale", "^(show|ask whereabouts|dossier)"},
		{`stolen|theft`, "theft", ""}, {`discarded on|discarded 1|, discarded`, "discarded", ""}, {`came back`, "here", ""},
	}},
	{"corrected", "no", []phrase{
		{`nothing was amended or withdrawn`, "no", ""}, {`no entry corrected`, "no", ""}, {`no entry was amended`, "no", ""}, {`misread`, "yes", ""}, {`one entry was corrected`, "yes", ""}, {`one entry corrected`, "yes", ""},
	}},
}
