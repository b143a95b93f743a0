package main

import (
	_ "embed"

	"github.com/spf13/cobra"
)

// notices are the licences of everything that the program is linked with;
// TestNotices makes them.
//
//go:embed notices.txt
var notices string

func newLicences(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "licences", Short: "print the licences of this program, its libraries and its faces",
		Example: `  backleaf licences
  backleaf licences > licences.txt`,
		Args: wanted(0, 0, "no words"),
		RunE: func(*cobra.Command, []string) error {
			_, err := a.out.Write([]byte(notices))
			return err
		},
	}
}
