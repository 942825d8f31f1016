package golden

import (
	"strings"
	"testing"
)

// TestCaseFaults: a table that says nothing must not pass for one.
func TestCaseFaults(t *testing.T) {
	for table, want := range map[string]string{
		"base nothing\n":                            "1: open",
		"base plate\n\na\n\tkind => x":              "the case a has no wanted line",
		"base plate\n\na\n\tplate => x\n\t! 1:1: x": `"plate" stands 2 times`,
		"base plate\n\na\n\tgear => x\n\t! 1:1: x":  `"gear" stands 0 times`,
		"a\n\tkind\n\t! 1:1: x":                     "is no edit",
		"a\n\t= \"x\n\t! 1:1: x":                    "2: ",
		"a\n\t= \"x\"*y\n\t! 1:1: x":                "2: ",
		"a\n\tfile\n\t! 1:1: x":                     "2: open",
		"\t= x\n":                                   "1: a case",
		"a\nb\n":                                    "2: a case",
	} {
		if cases, err := readCases("../../cmd/centrepop/testdata/hostile", table); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, %v, want an error with %q", table, cases, err, want)
		}
	}
	text, err := unquoted(`"a\n" + "b"*3 + "\xff"`)
	if err != nil || text != "a\nbbb\xff" {
		t.Errorf("%q, %v", text, err)
	}
}
