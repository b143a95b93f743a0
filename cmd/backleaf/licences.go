package main

import _ "embed"

// notices are the licences of everything that the program is linked with;
// TestNotices makes them.
//
//go:embed notices.txt
var notices string

func newLicences(a *app) {
	a.command("licences", nil, func(*run) error {
		_, err := a.out.Write([]byte(notices))
		return err
	})
}
