package golden

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

// Row is a row of a table of wanted values, by the names of its columns.
type Row map[string]string

// Number returns a cell as a number, 0 for an empty one. A cell that is
// neither ends the test.
func (r Row) Number(t testing.TB, column string) float64 {
	t.Helper()
	cell, ok := r[column]
	if !ok {
		t.Fatalf("there is no column %s", column)
	}
	if cell == "" {
		return 0
	}
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatalf("column %s: %v", column, err)
	}
	return v
}

// Table reads a CSV file of wanted values below its heading; lines that begin
// with # are comments. Fewer rows than least end the test: a table that nobody
// reads must not pass.
func Table(t testing.TB, path string, least int) []Row {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) < least+1 {
		t.Fatalf("%s has %d rows, want %d or more", path, len(lines)-1, least)
	}
	rows := make([]Row, 0, len(lines)-1)
	for _, line := range lines[1:] {
		row := Row{}
		for i, cell := range line {
			row[lines[0][i]] = cell
		}
		rows = append(rows, row)
	}
	return rows
}
