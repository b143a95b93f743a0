package tell

// DossierWords are printed in dossiers.
type DossierWords struct{}

var englishDossier = DossierWords{}
