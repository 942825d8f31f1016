package templates

import (
	"path/filepath"
	"testing"

	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/templates/sheettest"
)

// TestRecordedPacket: a packet has the pages and bookmarks that are recorded, and is the
// same when drawn again. CENTREPOP_UPDATE=1 writes testdata anew: read the difference.
func TestRecordedPacket(t *testing.T) {
	plan := sheettest.JobOf("Pug mill", parts.Millimetres, sheettest.FlangePart())
	doc, err := Packet(plan, Options{Paper: sheettest.A4})
	if err != nil {
		t.Fatal(err)
	}
	got := sheettest.Record(t, doc)
	again, err := Packet(plan, Options{Paper: sheettest.A4})
	if err != nil {
		t.Fatal(err)
	}
	if sheettest.Record(t, again) != got {
		t.Error("a second drawing differs from the first")
	}
	golden.Compare(t, filepath.Join("testdata", "flange-a4.txt"), []byte(sheettest.Outline(t, doc)))
}
