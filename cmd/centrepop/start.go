package main

import (
	"embed"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"centrepop/parts"
	"centrepop/parts/meant"
	"centrepop/parts/read"
	"centrepop/render/atomicfile"
)

// begin holds the files that start writes. A value that depends on the units
// stands there as <mm|in>.
//
//go:embed begin/*.yaml
var begin embed.FS

var perUnit = regexp.MustCompile(`<([^|>]*)\|([^>]*)>`)

// startFile is one file to begin with, in the units asked for.
func startFile(name string, units parts.Units) (string, error) {
	src, err := begin.ReadFile("begin/" + name)
	if err != nil {
		return "", err
	}
	return perUnit.ReplaceAllString(string(src), parts.By(units, "$1", "$2")), nil
}

func start(c *call) error {
	kind := c.flags.String("kind", string(parts.Plate), "`KIND` of the part, or all")
	unit := c.flags.String("units", string(parts.Millimetres), "`UNIT` of the job: mm or in")
	if err := c.parse(1, 1); err != nil {
		return err
	}
	kinds := read.Kinds()
	known := append(slices.Clone(kinds), "all")
	switch {
	case !slices.Contains(known, *kind):
		return badUse("--kind %s is not known%s; there are %s", *kind, meant.Perhaps(*kind, known), strings.Join(known, ", "))
	case *unit != string(parts.Millimetres) && *unit != string(parts.Inches):
		return badUse("--units %s: mm or in", *unit)
	case *kind != "all":
		kinds = []string{*kind}
	}
	files := map[string]string{}
	job, err := startFile("job.yaml", parts.Units(*unit))
	if err != nil {
		return err
	}
	names := []string{"job.yaml"}
	for _, k := range kinds {
		job += "  - " + k + ".yaml\n"
		names = append(names, k+".yaml")
		if files[k+".yaml"], err = startFile(k+".yaml", parts.Units(*unit)); err != nil {
			return err
		}
	}
	files["job.yaml"] = job
	return c.writeStart(c.args[0], names, files)
}

// writeStart writes the files into a folder that has none of them, the job last.
func (c *call) writeStart(folder string, names []string, files map[string]string) error {
	for _, name := range names {
		if _, err := os.Lstat(filepath.Join(folder, name)); err == nil {
			return badUse("%s is there already: name another folder", filepath.Join(folder, name))
		} else if !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return err
	}
	slices.Reverse(names)
	for i, name := range names {
		names[i] = filepath.Join(folder, name)
		if err := atomicfile.Write(names[i], func(w io.Writer) error { _, err := io.WriteString(w, files[name]); return err }); err != nil {
			return err
		}
	}
	job := filepath.Join(folder, "job.yaml")
	return c.answer(map[string]any{"job": job, "files": names}, func() {
		fmt.Fprintf(c.stdout, "wrote %[1]s\nnow: centrepop watch %[2]s --open\n     centrepop review %[2]s\n     centrepop sheets %[2]s -o packet.pdf\n", strings.Join(names, ", "), job)
	})
}
