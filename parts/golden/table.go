package golden

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"centrepop/parts/seq"
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

// Tables is the file that holds the smaller tables of the libraries whole, from the folder
// of one of them.
const Tables = "../../testdata/reference/tables.csv"

// Held compares the rows of a table with those that [Tables] has under its name, whole and
// in order: a row that is changed, added or taken out fails. The values of a row stand
// there with blanks between, as fmt prints them.
func Held[R any](t testing.TB, table string, rows []R) {
	t.Helper()
	var want, got []string
	for _, row := range Table(t, Tables, 1) {
		if row["table"] == table {
			want = append(want, row["values"])
		}
	}
	plain := strings.NewReplacer("{", "", "}", "", "[", "", "]", "", "NaN", "-", "+Inf", "over", fmt.Sprint(math.MaxFloat64), "over")
	got = append(got, seq.Map(rows, func(row R) string { return plain.Replace(fmt.Sprint(row)) })...)
	if w, g := strings.Join(want, "\n"), strings.Join(got, "\n"); len(got) == 0 || w != g {
		t.Errorf("%s: %s", table, Diff([]byte(w), []byte(g)))
	}
}

// Pairs are the keys of a table and what stands for them, in order of the keys.
func Pairs[K cmp.Ordered, V any](table map[K]V) []string {
	return seq.Map(slices.Sorted(maps.Keys(table)), func(k K) string { return fmt.Sprint(k, " ", table[k]) })
}
