package atomicfile_test

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"centrepop/render/atomicfile"
)

// A write that fails leaves the old file.
func ExampleWrite() {
	dir, err := os.MkdirTemp("", "example")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "packet.txt")
	put := func(text string, fail error) error {
		return atomicfile.Write(path, func(w io.Writer) error {
			if _, err := io.WriteString(w, text); err != nil {
				return err
			}
			return fail
		})
	}
	fmt.Println(put("the first", nil))
	fmt.Println(put("half of the sec", errors.New("out of paper")) != nil)
	data, err := os.ReadFile(path)
	fmt.Println(string(data), err)
	// Output:
	// <nil>
	// true
	// the first <nil>
}
