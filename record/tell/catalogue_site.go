package tell

// englishSite is what is said of a site.
var englishSite = table{
	{"site-written", "{folder}  {shown, plural, one {one panel shown} other {{shown} panels shown}}: {written, plural, one {one page} other {{written} pages}} {dry, select, yes {would be written} other {written}}, {kept} unchanged"},
	{"site-page", "  {panel}  {dry, select, yes {would be written} other {written}}"},
	{"site-list", "  {name}, the list  {dry, select, yes {would be written} other {written}}"},
	{"site-taken-back", "  {panel}  says that it is no longer shown"},
	{"site-removed", "  {name}  {dry, select, yes {would be removed} other {removed}}"},
	{"site-index-removed", "note: the list of the panels (index.html) is kept only where it is asked for: add --index"},
	{"site-status", "  status of {date}, signed"},
	{"site-nothing", `nothing is shown yet: backleaf panel publish NUMBERS, then again`},
	{"site-try", "to look at it: put this folder where {link} leads, and scan a label"},
	{"site-not-signed", `{asked, select, yes {the pages are not signed, as you asked} other {the pages are not signed: the studio has no key ("backleaf studio key new" makes one)}}{earlier, if {; the file {earlier} in the folder stays as an earlier run signed it}}`},
	{"site-without-link", `no symbol leads here: the studio has no link base ("backleaf studio change --link …")`},
	{"site-link-asks", "the link base {link} ends in a question: a plain host cannot serve it as folders; let the host send each number to the folder of that name"},
	{"site-newer", "left as they are, for a later program wrote of them what this one cannot read: {panels}"},
	{"site-photograph", "{panel}: its photograph is not shown: {problem}"},
	{"photograph-not-asked", "sold, and nobody said whether the photograph may be shown, so it is not: {panels}; backleaf panel publish NUMBERS --photograph yes, or no"},
}
