package read

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"centrepop/parts/golden"
)

// schema compiles the schema with a library that checks it against draft
// 2020-12 first.
func schema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(SchemaID, doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(SchemaID)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// check validates YAML; the error is the library's, or that of YAML.
func check(s *jsonschema.Schema, src []byte) error {
	var doc any
	if err := yaml.Unmarshal(src, &doc); err != nil {
		return err
	}
	text, err := json.Marshal(doc)
	if err != nil {
		return err
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		return err
	}
	return s.Validate(value)
}

func TestSchemaTakesTheDemos(t *testing.T) {
	t.Parallel()
	s := schema(t)
	files, err := filepath.Glob("../../testdata/*/*.yaml")
	if err != nil || len(files) < 30 {
		t.Fatalf("%d files: %v", len(files), err)
	}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if err := check(s, src); err != nil {
			t.Errorf("%s: %v", file, err)
		}
	}
}

// TestSchemaOnBadInputs writes down which of the bad inputs the schema refuses.
// Those that it takes contradict themselves or name what is not there, which is
// for the program.
func TestSchemaOnBadInputs(t *testing.T) {
	t.Parallel()
	s := schema(t)
	files, err := filepath.Glob("testdata/bad/*.yaml")
	if err != nil || len(files) < 50 {
		t.Fatalf("%d files: %v", len(files), err)
	}
	var b strings.Builder
	refused := 0
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		says := "taken"
		if check(s, src) != nil {
			says = "refused"
			refused++
		}
		fmt.Fprintf(&b, "%s %s\n", strings.TrimSuffix(filepath.Base(file), ".yaml"), says)
	}
	if refused < len(files)/2 {
		t.Errorf("only %d of %d refused", refused, len(files))
	}
	golden.Compare(t, "testdata/schema.txt", []byte(b.String()))
}

// TestSchemaRefuses: one fault each in a file that the schema takes.
func TestSchemaRefuses(t *testing.T) {
	t.Parallel()
	s := schema(t)
	const good = "part: a\nkind: plate\nstock: {plate: 8 mm}\noutline: {circle: 90}\nholes: [{name: h, at: [[0, 1/2 in]], size: M8 tap}]\n"
	if err := check(s, []byte(good)); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ old, new string }{
		{"part: a", "part: A b"}, {"part: a\n", ""}, {"kind: plate", "kind: plaet"}, {"kind: plate", "kind: tube"}, {"8 mm", "8 cm"}, {"8 mm", "-8 mm"}, {"8 mm", "0"},
		{"circle: 90", "circle: 90, square: 5"}, {"circle: 90", "cirle: 90"}, {"circle: 90", "circle: 10001"}, {"[[0, 1/2 in]]", "[[0]]"}, {"[[0, 1/2 in]]", "[]"},
		{"M8 tap", "M8 tapped"}, {"M8 tap", "M8"}, {"size", "sise"}, {"at:", "grid:"}, {"name: h, ", ""}, {good, "job: a\nunits: mm\n"}, {good, "job: a\nunits: cm\nparts: [a.yaml]\n"},
	} {
		if check(s, []byte(strings.Replace(good, c.old, c.new, 1))) == nil {
			t.Errorf("%s => %s is taken", c.old, c.new)
		}
	}
}
