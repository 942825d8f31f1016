package atomicfile_test

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/render/atomicfile"
)

func content(s string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, s)
		return err
	}
}

// holds checks that the folder holds these files with this content and no
// others, so no temporary file either.
func holds(t *testing.T, dir string, want map[string]string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != len(want) {
		t.Errorf("the folder holds %v, want %d files", entries, len(want))
	}
	for name, text := range want {
		if got, err := os.ReadFile(filepath.Join(dir, name)); err != nil || string(got) != text {
			t.Errorf("%s holds %q (%v), want %q", name, got, err, text)
		}
	}
}

func mode(t *testing.T, path string) fs.FileMode {
	t.Helper()
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	return info.Mode().Perm()
}

func TestNewFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.pdf")
	if err := atomicfile.Write(path, content("one")); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, map[string]string{"a.pdf": "one"})
	if got := mode(t, path); got != 0o644 {
		t.Errorf("permission %o, want 644", got)
	}
}

func TestReplaceKeepsPermission(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.pdf")
	if err := os.WriteFile(path, []byte("a longer old text"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := atomicfile.Write(path, content("new")); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, map[string]string{"a.pdf": "new"})
	if got := mode(t, path); got != 0o600 {
		t.Errorf("permission %o, want 600", got)
	}
}

func TestFailureKeepsOldFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.pdf")
	if err := atomicfile.Write(path, content("old")); err != nil {
		t.Fatal(err)
	}
	broken := errors.New("broken")
	err := atomicfile.Write(path, func(w io.Writer) error {
		if _, err := io.WriteString(w, "half"); err != nil {
			return err
		}
		return broken
	})
	if !errors.Is(err, broken) {
		t.Errorf("error %v, want the one of the writer", err)
	}
	holds(t, dir, map[string]string{"a.pdf": "old"})

	if err := atomicfile.Write(filepath.Join(dir, "b.pdf"), func(io.Writer) error { return broken }); !errors.Is(err, broken) {
		t.Errorf("error %v, want the one of the writer", err)
	}
	holds(t, dir, map[string]string{"a.pdf": "old"})
}

func TestPanicKeepsOldFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.pdf")
	if err := atomicfile.Write(path, content("old")); err != nil {
		t.Fatal(err)
	}
	func() {
		defer func() {
			if recover() == nil {
				t.Error("the panic was swallowed")
			}
		}()
		_ = atomicfile.Write(path, func(io.Writer) error { panic("bug") })
	}()
	holds(t, dir, map[string]string{"a.pdf": "old"})
}

func TestRefused(t *testing.T) {
	dir := t.TempDir()
	called := false
	write := func(io.Writer) error { called = true; return nil }
	if err := atomicfile.Write(dir, write); err == nil {
		t.Error("a folder was replaced")
	}
	if err := atomicfile.Write(filepath.Join(dir, "none", "a.pdf"), write); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a missing folder gives %v", err)
	}
	if called {
		t.Error("content was asked for in vain")
	}
	holds(t, dir, nil)
}

func TestSymbolicLink(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "real"), []byte("old"), 0o640); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "link")
	if err := os.Symlink("real", link); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	if err := atomicfile.Write(link, content("new")); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, map[string]string{"real": "new", "link": "new"})
	if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Error("the link was replaced by a file")
	}
}

// A link that leads to nothing is followed too, through further links and
// folders, and stays a link.
func TestLinkToNothing(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	if err := os.MkdirAll(filepath.Join(dir, "deep", "deeper"), 0o777); err != nil {
		t.Fatal(err)
	}
	for name, to := range map[string]string{"link": "folder/next", "folder": "deep/deeper", "deep/deeper/next": "../real"} {
		if err := os.Symlink(to, filepath.Join(dir, name)); err != nil {
			t.Skip("no symbolic links here:", err)
		}
	}
	if err := atomicfile.Write(filepath.Join(dir, "link"), content("new")); err != nil {
		t.Fatal(err)
	}
	if got, err := os.ReadFile(filepath.Join(dir, "deep", "real")); err != nil || string(got) != "new" {
		t.Errorf("the file at the end holds %q (%v)", got, err)
	}
	if to, err := os.Readlink(filepath.Join(dir, "link")); err != nil || to != "folder/next" {
		t.Errorf("the link leads to %q (%v)", to, err)
	}
	if err := os.Symlink("none/such", filepath.Join(dir, "lost")); err != nil {
		t.Fatal(err)
	}
	if err := atomicfile.Write(filepath.Join(dir, "lost"), content("new")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a link into a missing folder gives %v", err)
	}
}

// The longest name that a file can have can be written.
func TestLongName(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	name := strings.Repeat("n", 251) + ".pdf"
	if err := atomicfile.Write(filepath.Join(dir, name), content("new")); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, map[string]string{name: "new"})
}

// A message names the file asked for, whatever its writer wrapped.
func TestMessageNamesTheTarget(t *testing.T) {
	t.Parallel()
	path := filepath.Join(t.TempDir(), "a.pdf")
	err := atomicfile.Write(path, func(w io.Writer) error {
		if _, err := w.Write([]byte("half")); err != nil {
			return err
		}
		if err := os.RemoveAll(filepath.Dir(path)); err != nil {
			return err
		}
		return nil
	})
	if err == nil || strings.Count(err.Error(), path) != 1 || strings.Contains(err.Error(), "tmp: ") || strings.Contains(err.Error(), ".centrepop-") {
		t.Errorf("error %v", err)
	}
}

// What a killed run has left is removed by the next; the file of a run that is
// still writing, and what only has such a name, is not.
func TestLeftovers(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	stale := filepath.Join(dir, ".centrepop-123.tmp")
	if err := os.WriteFile(stale, []byte("half"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, ".centrepop-folder.tmp"), 0o777); err != nil {
		t.Fatal(err)
	}
	err := atomicfile.Write(filepath.Join(dir, "slow"), func(w io.Writer) error {
		if _, err := io.WriteString(w, "slow "); err != nil {
			return err
		}
		if _, err := os.Stat(stale); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("the leftover is still there (%v)", err)
		}
		if err := atomicfile.Write(filepath.Join(dir, "quick"), content("quick")); err != nil {
			return err
		}
		_, err := io.WriteString(w, "file")
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(filepath.Join(dir, ".centrepop-folder.tmp")); err != nil {
		t.Error("a folder of such a name was touched")
	}
	holds(t, dir, map[string]string{"slow": "slow file", "quick": "quick"})
}

// An empty content makes an empty file.
func TestEmptyFile(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	if err := atomicfile.Write(filepath.Join(dir, "a"), func(io.Writer) error { return nil }); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, map[string]string{"a": ""})
}
