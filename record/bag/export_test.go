package bag

// What the fuzz targets reach for.

func ParseManifest(text string, digits int) (map[string]string, []error) {
	m, errs := parseManifest(text, digits)
	return m, errs
}

func FormatManifest(m map[string]string) string { return manifest(m).String() }

var (
	ParseInfo        = parseInfo
	FormatInfo       = formatInfo
	ParseFetch       = parseFetch
	ParseDeclaration = parseDeclaration
)
