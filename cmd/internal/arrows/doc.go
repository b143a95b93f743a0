// Package arrows holds no code, only the test that keeps the rooms in order:
// which package may import which, and that each library that could die is
// imported by one file.
package arrows
