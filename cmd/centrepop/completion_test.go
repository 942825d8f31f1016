package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestCompletionInShells asks the shells that are there for what they complete.
func TestCompletionInShells(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	for name, at := range map[string]string{"bash": "c.bash", "zsh": "_centrepop", "fish": "c.fish"} {
		var script strings.Builder
		if status := run([]string{"completion", name}, &script, io.Discard); status != statusDone {
			t.Fatalf("%s: status %d", name, status)
		}
		write(t, filepath.Join(folder, at), script.String())
	}
	for _, shell := range []struct{ name, ask string }{
		{"bash", `source "$1/c.bash"; read -ra COMP_WORDS <<< "$2"; [ "${2% }" = "$2" ] || COMP_WORDS+=(""); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _centrepop; printf '%s\n' "${COMPREPLY[@]}"`},
		{"fish", `source $argv[1]/c.fish; complete -C $argv[2] | string replace -r '\t.*' ''; true`},
	} {
		path, err := exec.LookPath(shell.name)
		if err != nil {
			t.Logf("no %s", shell.name)
			continue
		}
		for _, c := range []struct {
			line string
			want []string
		}{
			{"centrepop shee", []string{"sheets"}}, {"centrepop sheets --fo", []string{"--for"}}, {"centrepop help fli", []string{"flight"}},
			{"centrepop completion ", []string{"bash", "fish", "zsh"}}, {"centrepop start --ki", []string{"--kind"}},
		} {
			args := []string{"-c", shell.ask, folder, c.line}
			if shell.name == "bash" {
				args = slices.Insert(args, 2, "bash") // its own name
			}
			cmd := exec.Command(path, args...)
			cmd.Dir = folder
			cmd.Env = append(os.Environ(), "HOME="+folder)
			out, err := cmd.Output()
			got := strings.Fields(string(out))
			slices.Sort(got)
			if err != nil || !slices.Equal(got, c.want) {
				t.Errorf("%s completes %q by %q: %v", shell.name, c.line, got, err)
			}
		}
	}
	if path, err := exec.LookPath("zsh"); err == nil { // it completes at a keyboard only
		cmd := exec.Command(path, "-f", "-c", `fpath=($1 $fpath); autoload -Uz compinit && compinit -u -D && autoload +X _centrepop && print $_comps[centrepop]`, "zsh", folder)
		if out, err := cmd.CombinedOutput(); err != nil || strings.TrimSpace(string(out)) != "_centrepop" {
			t.Errorf("zsh: %s, %v", out, err)
		}
	}
}
