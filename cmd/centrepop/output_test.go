//go:build unix

package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"centrepop/render/atomicfile"
)

// program runs the program in a process of its own, killed after a minute.
// TestMain put this test binary in the path under its name.
func program(t testing.TB, args ...string) *exec.Cmd {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	t.Cleanup(cancel)
	return exec.CommandContext(ctx, "centrepop", args...)
}

// hidden lists the temporary files in a folder.
func hidden(t testing.TB, dir string) []string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(dir, ".*"))
	if err != nil {
		t.Fatal(err)
	}
	return names
}

// TestEndedHalfWay ends the program at many moments of its run, also while it
// writes. The packet there is then the old one or the new one, whole; after a
// signal that can be caught nothing is left beside it, and what is left of a
// killed run is gone after the next.
func TestEndedHalfWay(t *testing.T) {
	t.Parallel()
	job := filepath.Join(t.TempDir(), "job.yaml")
	write(t, job, "job: Test\nunits: mm\nparts: [plate.yaml]\n")
	write(t, filepath.Join(filepath.Dir(job), "plate.yaml"), fileText(t, "testdata/hostile/good/plate.yaml"))
	want := made(t, "sheets", job)
	start := time.Now()
	if output, err := program(t, "sheets", job, "-o", filepath.Join(t.TempDir(), "p.pdf")).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, output)
	}
	whole := time.Since(start)
	for _, sign := range []syscall.Signal{syscall.SIGKILL, syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		dir := t.TempDir()
		out := filepath.Join(dir, "packet.pdf")
		for i := range 6 {
			write(t, out, "the old packet")
			cmd := program(t, "sheets", job, "-o", out)
			if err := cmd.Start(); err != nil {
				t.Fatal(err)
			}
			time.Sleep(whole * time.Duration(i+1) / 7)
			_ = cmd.Process.Signal(sign) // it may be done already
			err := cmd.Wait()
			var exit *exec.ExitError
			if errors.As(err, &exit) {
				if got := exit.Sys().(syscall.WaitStatus); !got.Signaled() || got.Signal() != sign {
					t.Errorf("%v ended it with %v", sign, err)
				}
			}
			if got := fileText(t, out); got != "the old packet" && got != string(want) {
				t.Fatalf("after %v there are %d bytes that are neither the old packet nor the new one", sign, len(got))
			}
			if left := hidden(t, dir); len(left) > 0 && sign != syscall.SIGKILL {
				t.Errorf("%v left %v", sign, left)
			}
		}
		if output, err := program(t, "sheets", job, "-o", out).CombinedOutput(); err != nil {
			t.Fatalf("the next run: %v\n%s", err, output)
		}
		if left := hidden(t, dir); fileText(t, out) != string(want) || len(left) > 0 {
			t.Errorf("after the next run the packet has %d bytes, want %d, and there are %v", len(fileText(t, out)), len(want), left)
		}
	}
}

// TestEndedWhileWriting holds the program in the middle of writing, with its
// temporary file there, and ends it then.
func TestEndedWhileWriting(t *testing.T) {
	t.Parallel()
	for _, sign := range []syscall.Signal{syscall.SIGKILL, syscall.SIGTERM} {
		dir := t.TempDir()
		out := filepath.Join(dir, "out.pdf")
		cmd := program(t, out)
		cmd.Args[0] = "slow-writer"
		cmd.Path = filepath.Join(filepath.Dir(cmd.Path), "slow-writer")
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		for start := time.Now(); len(hidden(t, dir)) == 0; time.Sleep(time.Millisecond) {
			if time.Since(start) > 20*time.Second {
				t.Fatal("it did not begin to write")
			}
		}
		if err := cmd.Process.Signal(sign); err != nil {
			t.Fatal(err)
		}
		if err := cmd.Wait(); err == nil {
			t.Errorf("%v did not end it", sign)
		}
		if left := hidden(t, dir); (len(left) == 1) != (sign == syscall.SIGKILL) {
			t.Errorf("%v left %v", sign, left)
		}
		if _, err := os.Stat(out); err == nil {
			t.Errorf("%v left half a file", sign)
		}
		if err := atomicfile.Write(out, func(w io.Writer) error { _, err := io.WriteString(w, "next"); return err }); err != nil {
			t.Fatal(err)
		}
		if left := hidden(t, dir); len(left) > 0 || fileText(t, out) != "next" {
			t.Errorf("the next run left %v", left)
		}
	}
}

// TestFullDisk has the system refuse the file half-way, as it does when a disk
// is full or a quota used up.
func TestFullDisk(t *testing.T) {
	t.Parallel()
	shell, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("no shell to limit the size of files with")
	}
	job := plateJob(t)
	for _, old := range []bool{true, false} {
		dir := t.TempDir()
		out := filepath.Join(dir, "packet.pdf")
		if old {
			write(t, out, "the old packet")
		}
		cmd := program(t)
		cmd.Path, cmd.Args = shell, []string{"sh", "-c", `ulimit -f 8 && exec centrepop sheets "$1" -o "$2"`, "sh", job, out}
		failed(t, cmd, "file too large")
		if old && fileText(t, out) != "the old packet" {
			t.Error("the old packet has changed")
		}
		if _, err := os.Stat(out); !old && err == nil {
			t.Error("half a packet was left")
		}
		if left := hidden(t, dir); len(left) > 0 {
			t.Errorf("it left %v", left)
		}
	}
}

// failed runs a command that must say why it stops, in one line, with status 2.
func failed(t *testing.T, cmd *exec.Cmd, want string) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	if cmd.Stdout == nil {
		cmd.Stdout = &stdout
	}
	cmd.Stderr = &stderr
	err := cmd.Run()
	var exit *exec.ExitError
	if !errors.As(err, &exit) || exit.ExitCode() != statusBad {
		t.Fatalf("%v, want exit status %d\n%s", err, statusBad, &stderr)
	}
	text := stderr.String()
	if testing.CoverMode() != "" { // the measuring of coverage cannot write either, and says so
		text, _, _ = strings.Cut(text, "error: coverage ")
	}
	if !strings.Contains(text, want) || strings.Count(text, "\n") > 2 {
		t.Errorf("the message is %q, want one line with %q", text, want)
	}
	if stdout.Len() > 0 {
		t.Errorf("standard output: %q", &stdout)
	}
}

// TestReadOnlyFolder runs as another user if this one may write everywhere.
func TestReadOnlyFolder(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	out := filepath.Join(dir, "packet.pdf")
	write(t, out, "the old packet")
	chmod(t, dir, 0o555)
	defer chmod(t, dir, 0o755)
	cmd := program(t, "sheets", plateJob(t), "-o", out)
	unprivileged(t, cmd, dir)
	failed(t, cmd, "permission denied")
	if fileText(t, out) != "the old packet" {
		t.Error("the old packet has changed")
	}
	if entries, err := os.ReadDir(dir); err != nil || len(entries) != 1 {
		t.Errorf("the folder holds %v (%v)", entries, err)
	}
}

// TestUnreadableInput does the same with files that may not be read.
func TestUnreadableInput(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	job, part := filepath.Join(dir, "job.yaml"), filepath.Join(dir, "plate.yaml")
	write(t, job, "job: Test\nunits: mm\nparts: [plate.yaml]\n")
	write(t, part, fileText(t, "testdata/hostile/good/plate.yaml"))
	out := filepath.Join(dir, "out.pdf")
	for _, c := range []struct{ file, want string }{{part, "job.yaml:3:9: the file \"plate.yaml\" may not be read"}, {job, "job file job.yaml: "}} {
		chmod(t, c.file, 0)
		cmd := program(t, "explain", job, "plate", "--json")
		unprivileged(t, cmd, dir)
		cmd.Args[len(cmd.Args)-1] = "--json=false"
		var stderr bytes.Buffer
		cmd.Stderr = &stderr
		err := cmd.Run()
		var exit *exec.ExitError
		if !errors.As(err, &exit) || exit.ExitCode() != statusBad || !strings.Contains(stderr.String(), c.want) {
			t.Errorf("%v, want exit status %d and %q:\n%s", err, statusBad, c.want, &stderr)
		}
	}
	if _, err := os.Stat(out); err == nil {
		t.Error("there is an output")
	}
}

func chmod(t testing.TB, path string, mode os.FileMode) {
	t.Helper()
	if err := os.Chmod(path, mode); err != nil {
		t.Fatal(err)
	}
}

// unprivileged makes the command heed permissions: the superuser may write
// everywhere, so for it the command runs as a user that owns nothing, from a
// copy of the program that user can reach.
func unprivileged(t *testing.T, cmd *exec.Cmd, dir string) {
	t.Helper()
	if os.Geteuid() != 0 {
		return
	}
	for d := dir; len(d) > len(os.TempDir()); d = filepath.Dir(d) {
		if info, err := os.Stat(d); err == nil && info.Mode().Perm()&0o055 != 0o055 {
			chmod(t, d, info.Mode().Perm()|0o055)
		}
	}
	binary, err := os.ReadFile(cmd.Path)
	if err != nil {
		t.Fatal(err)
	}
	own := t.TempDir()
	chmod(t, filepath.Dir(own), 0o755)
	cmd.Path = filepath.Join(own, "centrepop")
	syscall.ForkLock.RLock() // a process forked now would hold it open for writing, and it could not run
	err = os.WriteFile(cmd.Path, binary, 0o755)
	syscall.ForkLock.RUnlock()
	if err != nil {
		t.Fatal(err)
	}
	cmd.Dir = own
	cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
	try := exec.Command("/bin/sh", "-c", "exit 0")
	try.Dir, try.SysProcAttr = own, cmd.SysProcAttr
	if err := try.Run(); err != nil {
		t.Skip("the superuser may write everywhere, and cannot become another user here:", err)
	}
}

// TestOutputIsNoFile: a folder, a device and what a link leads to there are
// not replaced.
func TestOutputIsNoFile(t *testing.T) {
	t.Parallel()
	job := plateJob(t)
	dir := t.TempDir()
	for name, err := range map[string]error{
		"folder.pdf":  os.Mkdir(filepath.Join(dir, "folder.pdf"), 0o777),
		"device.pdf":  os.Symlink("/dev/full", filepath.Join(dir, "device.pdf")),
		"pipe.pdf":    syscall.Mkfifo(filepath.Join(dir, "pipe.pdf"), 0o666),
		"circle.pdf":  os.Symlink("circle.pdf", filepath.Join(dir, "circle.pdf")),
		"no/such.pdf": nil,
	} {
		if err != nil {
			t.Fatal(err)
		}
		var stdout, stderr bytes.Buffer
		if status := run([]string{"sheets", job, "-o", filepath.Join(dir, name)}, &stdout, &stderr); status != statusBad || stdout.Len() > 0 {
			t.Errorf("%s: exit status %d, output %q", name, status, &stdout)
		}
		if text := stderr.String(); strings.Count(text, "\n") != 1 || !strings.Contains(text, name) {
			t.Errorf("%s: the message is %q", name, text)
		}
	}
	if entries, err := os.ReadDir(dir); err != nil || len(entries) != 4 {
		t.Errorf("the folder holds %v (%v)", entries, err)
	}
}

// TestOutputIsInput: no command replaces a file it reads, under whatever name.
func TestOutputIsInput(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	plate := fileText(t, "testdata/hostile/good/plate.yaml")
	const text = "job: Test\nunits: mm\nparts: [plate.pdf, other.png]\n"
	job := filepath.Join(dir, "job.pdf")
	for name, content := range map[string]string{"job.pdf": text, "plate.pdf": plate, "other.png": strings.Replace(plate, "part: plate", "part: other", 1)} {
		write(t, filepath.Join(dir, name), content)
	}
	for _, err := range []error{
		os.Symlink("plate.pdf", filepath.Join(dir, "soft.pdf")), os.Link(filepath.Join(dir, "plate.pdf"), filepath.Join(dir, "hard.pdf")),
		os.Symlink("job.pdf", filepath.Join(dir, "job.png")),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, args := range [][]string{
		{"sheets", job, "-o", job},
		{"sheets", job, "-o", filepath.Join(dir, "plate.pdf")},
		{"sheets", job, "-o", filepath.Join(dir, ".", "soft.pdf")},
		{"sheets", job, "-o", filepath.Join(dir, "hard.pdf")},
		{"template", job, "plate", "-o", filepath.Join(dir, "plate.pdf")},
		{"profile", job, "plate", "-o", filepath.Join(dir, "plate.pdf")},
		{"preview", job, "-o", filepath.Join(dir, "other.png")},
		{"preview", job, "-o", filepath.Join(dir, "job.png")},
	} {
		var stdout, stderr bytes.Buffer
		if status := run(args, &stdout, &stderr); status != statusBad || !strings.Contains(stderr.String(), "is an input of the job") {
			t.Errorf("%v: exit status %d: %s%s", args, status, &stdout, &stderr)
		}
	}
	if fileText(t, job) != text || fileText(t, filepath.Join(dir, "plate.pdf")) != plate {
		t.Error("an input has changed")
	}
}

// TestTenAtOnce: ten runs on one job at the same time agree byte for byte,
// also the five of them that write the same file.
func TestTenAtOnce(t *testing.T) {
	t.Parallel()
	job := plateJob(t)
	want := made(t, "sheets", job)
	dir := t.TempDir()
	own, same := filepath.Join(dir, "own"), filepath.Join(dir, "same")
	for _, d := range []string{own, same} {
		if err := os.Mkdir(d, 0o777); err != nil {
			t.Fatal(err)
		}
	}
	var all sync.WaitGroup
	for i := range 10 {
		out := filepath.Join(own, string(rune('a'+i))+".pdf")
		if i%2 == 1 {
			out = filepath.Join(same, "packet.pdf")
		}
		cmd := program(t, "sheets", job, "-o", out)
		all.Go(func() {
			if output, err := cmd.CombinedOutput(); err != nil {
				t.Errorf("%s: %v\n%s", out, err, output)
			}
		})
	}
	all.Wait()
	files, _ := filepath.Glob(filepath.Join(dir, "*", "*.pdf"))
	if len(files) != 6 {
		t.Errorf("there are %d files, want 6", len(files))
	}
	for _, file := range files {
		if data := fileText(t, file); data != string(want) {
			t.Errorf("%s differs from the other runs", file)
		}
	}
	if left := append(hidden(t, own), hidden(t, same)...); len(left) > 0 {
		t.Errorf("they left %v", left)
	}
}

// TestStandardOutput: an answer that cannot be written is a failure, a closed
// output is not, and a reader that goes away ends the program.
func TestStandardOutput(t *testing.T) {
	t.Parallel()
	shell, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("no shell to redirect with")
	}
	job := plateJob(t)
	inShell := func(script string) *exec.Cmd {
		cmd := program(t)
		cmd.Path, cmd.Args = shell, []string{"sh", "-c", script, "sh", job, filepath.Join(t.TempDir(), "out.pdf")}
		return cmd
	}
	if _, err := os.Stat("/dev/full"); err == nil {
		for _, args := range []string{"fit 90 H7/p6", "fit 90 H7 --json", "thread M10", "circle --pcd 140 --count 6", `explain "$1" plate`, "help", "fit --help", `sheets "$1" -o "$2"`} {
			failed(t, inShell("centrepop "+args+" >/dev/full"), "no space left")
		}
	}
	for _, script := range []string{"centrepop fit 90 H7 >&-", `centrepop sheets "$1" -o "$2" >&- <&- 2>&- && test -s "$2"`, "centrepop help | true"} {
		if output, err := inShell(script).CombinedOutput(); err != nil || len(output) > 0 {
			t.Errorf("%s: %v\n%s", script, err, output)
		}
	}
}
