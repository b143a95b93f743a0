// Package sitecheck holds no code, only tests that open the pages of a site in
// a browser: the demonstration's, and those that were forged.
package sitecheck
