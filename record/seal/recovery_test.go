package seal_test

import (
	"strings"
	"testing"

	"backleaf/record/seal"
)

const test1Recovery = "TVQ3 DHPP 7VNG BOUE JL2J F3BM YRCE TRLJ PMZG SGLQ HOWA GHFO P5QA MRGV"

func TestRecovery(t *testing.T) {
	k := key1(t)
	text := k.RecoveryText()
	// The seed of RFC 8032 TEST 1 through coreutils base32; the check group from the first bytes of its sha256sum.
	if text != test1Recovery {
		t.Errorf("recovery text %s, want %s", text, test1Recovery)
	}
	for _, typed := range []string{text, strings.ToLower(text), strings.ReplaceAll(text, " ", ""), strings.ReplaceAll(text, " ", "-"),
		strings.ReplaceAll(text, " ", "\r\n"), strings.NewReplacer("O", "0", "I", "1", "B", "8").Replace(text)} {
		if got, err := seal.KeyFromRecovery(typed); err != nil || got.Public() != k.Public() {
			t.Errorf("%q: %v", typed, err)
		}
	}
	for name, typed := range map[string]string{
		"nothing":      "",
		"one missing":  text[1:],
		"one more":     text + "A",
		"far too long": strings.Repeat("A", 5000),
	} {
		if _, err := seal.KeyFromRecovery(typed); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
	if _, err := seal.KeyFromRecovery(strings.Replace(text, text[10:14], "A9AA", 1)); err == nil || !strings.Contains(err.Error(), "group 3") {
		t.Errorf("wrong character in group 3: %v", err)
	}
}

// Each character replaced by each other, and each neighbouring pair swapped: refused, or (once in 2²⁰ by chance) not met here.
func TestRecoverySlips(t *testing.T) {
	text := strings.ReplaceAll(key1(t).RecoveryText(), " ", "")
	const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"
	for i := range text {
		for _, c := range alphabet {
			changed := text[:i] + string(c) + text[i+1:]
			if _, err := seal.KeyFromRecovery(changed); (err == nil) != (changed == text) {
				t.Errorf("character %d as %c: %v", i, c, err)
			}
		}
		if i > 0 {
			changed := text[:i-1] + text[i:i+1] + text[i-1:i] + text[i+1:]
			if _, err := seal.KeyFromRecovery(changed); (err == nil) != (changed == text) {
				t.Errorf("characters %d and %d swapped: %v", i-1, i, err)
			}
		}
	}
}
