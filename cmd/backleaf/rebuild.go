package main

func newRebuild(a *app) {
	a.writes("rebuild", nil, func(r *run) error {
		err := r.Book.Rebuild(r.ctx)
		if err == nil {
			a.told("tables-rebuilt")
		}
		return err
	})
}
