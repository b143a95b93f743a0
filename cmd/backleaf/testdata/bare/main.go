// Command bare is what the start of backleaf is measured against: it says its
// version by the same library, or opens a book and reads the entries of one
// panel by index, and does nothing else.
package main

import (
	"database/sql"
	"fmt"
	"os"

	"github.com/spf13/cobra"
	_ "modernc.org/sqlite"

	"backleaf/record"
	"backleaf/record/form"
)

func main() {
	c := &cobra.Command{Use: "bare", Version: "1", Args: cobra.ExactArgs(2), RunE: func(_ *cobra.Command, args []string) error { return show(args[0], args[1]) }}
	if c.Execute() != nil {
		os.Exit(1)
	}
}

func show(path, panel string) error {
	db, err := sql.Open("sqlite", "file:"+path+"?mode=ro")
	if err != nil {
		return err
	}
	defer db.Close()
	rows, err := db.Query("SELECT bytes FROM entry WHERE seq IN (SELECT seq FROM mention WHERE panel = ?) ORDER BY seq", panel)
	if err != nil {
		return err
	}
	defer rows.Close()
	var es []record.Entry
	for rows.Next() {
		var data []byte
		if err := rows.Scan(&data); err != nil {
			return err
		}
		e, err := form.Decode(data)
		if err != nil {
			return err
		}
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err == nil {
		fmt.Println(w.Panels[0].Number, len(w.Panels[0].Events))
	}
	return err
}
