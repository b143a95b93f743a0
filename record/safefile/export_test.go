package safefile

// SetFault puts f before every step until the test calls the returned func.
func SetFault(f func(step, path string) error) (restore func()) {
	old := fault
	fault = f
	return func() { fault = old }
}
