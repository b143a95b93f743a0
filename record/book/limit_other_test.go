//go:build !unix

package book_test

func limitFileSize(uint64) {} // only TestDiskFull asks for it, on Unix
