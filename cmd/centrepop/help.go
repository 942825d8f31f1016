package main

import (
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strings"

	"centrepop/layout/words"
	"centrepop/parts/seq"

	"github.com/spf13/pflag"
)

// chapters put the commands in the order of the help, with examples that work
// in any folder one after the other. Every command stands in one of them.
var chapters = []struct {
	title    string
	commands []example
}{
	{"Begin", []example{
		{"start", []string{"centrepop start mill", "centrepop start mill-in --units in --kind all"}},
		{"input", []string{"centrepop input", "centrepop input turned", "centrepop input holes --json"}},
		{"schema", []string{"centrepop schema"}},
	}},
	{"From a job to the shop", []example{
		{"watch", []string{"centrepop watch mill/job.yaml --open"}},
		{"review", []string{"centrepop review mill/job.yaml"}},
		{"sheets", []string{"centrepop sheets mill/job.yaml -o packet.pdf", "centrepop sheets mill/job.yaml --paper Letter -o packet-letter.pdf",
			"centrepop sheets mill/job.yaml --changed-since mill -o changed.pdf"}},
		{"template", []string{"centrepop template mill/job.yaml plate -o plate.pdf", "centrepop template mill/job.yaml plate --face back -o back.pdf"}},
		{"profile", []string{"centrepop profile mill/job.yaml plate -o plate.svg", "centrepop profile mill/job.yaml plate --cut plasma --kerf 1.2 --compensate -o plate-kerf.pdf"}},
		{"preview", []string{"centrepop preview mill/job.yaml --page 2 -o page.png", "centrepop preview mill/job.yaml --part plate --sheet operation -o plate.png"}},
		{"explain", []string{"centrepop explain mill/job.yaml plate", "centrepop explain mill/job.yaml --json"}},
		{"changes", []string{"centrepop changes mill mill", "centrepop changes mill mill --json"}},
		{"printer", []string{"centrepop printer check -o check.pdf", "centrepop printer list"}},
	}},
	{"Checking what others made", []example{
		{"compare", []string{"centrepop compare mill/job.yaml plate plate.svg"}},
		{"flange", []string{"centrepop flange motor.yaml"}},
	}},
	{"Sizes at the bench", []example{
		{"fit", []string{"centrepop fit 90 H7/p6", "centrepop fit 1-1/4in H7"}},
		{"circle", []string{"centrepop circle --pcd 140 --count 6 --first 30"}},
		{"thread", []string{"centrepop thread M10", "centrepop thread 1/2-13 UNC"}},
		{"key", []string{"centrepop key 38"}},
		{"ring", []string{"centrepop ring 30", "centrepop ring 40 --inside"}},
		{"oring", []string{"centrepop oring 20x2.62 --rod 20"}},
		{"undercut", []string{"centrepop undercut 30"}},
		{"seal", []string{"centrepop seal 30"}},
		{"centre", []string{"centrepop centre 30"}},
		{"flats", []string{"centrepop flats --round 30 --across 24"}},
		{"taper", []string{"centrepop taper --large 30 --length 60 --small 24"}},
		{"mitre", []string{"centrepop mitre 40"}},
		{"bend", []string{"centrepop bend --thickness 2 --radius 3"}},
		{"flight", []string{"centrepop flight --shaft 60 --outside 160 --pitch 140"}},
		{"press", []string{"centrepop press --shaft-od 90 --hub-od 160 --length 40 --fit H7/p6"}},
	}},
	{"About centrepop", []example{
		{"completion", []string{"centrepop completion bash"}},
		{"man", []string{"centrepop man"}},
		{"licences", []string{"centrepop licences"}},
	}},
}

// example is a command with lines to type.
type example struct {
	name  string
	lines []string
}

const (
	statusText = "Exit status: 0 done; 1 a review or a comparison has open findings, or anything has changed; 2 bad input, bad use, or no output could be written."
	jsonText   = "Every command takes --json: the answer is one line on standard output that begins with its schema and number, faults the same on standard error; numbers are rounded to 1e-6."
)

func commandNamed(all []command, name string) *command {
	return seq.At(all, func(cmd *command) bool { return cmd.name == name })
}

// commandNames lists the commands in the order of the help.
func commandNames() []string {
	var names []string
	for _, c := range chapters {
		names = append(names, seq.Map(c.commands, func(e example) string { return e.name })...)
	}
	return names
}

func help(all []command) string {
	var b strings.Builder
	b.WriteString("centrepop reads part drawings in YAML and prints the shop packet.\nUse: centrepop COMMAND ..., and centrepop help COMMAND for one of them.\n")
	for _, c := range chapters {
		fmt.Fprintf(&b, "\n%s\n", c.title)
		for _, e := range c.commands {
			fmt.Fprintf(&b, "  %-10s %s\n  %-10s   %s\n", e.name, commandNamed(all, e.name).about, "", e.lines[0])
		}
	}
	fmt.Fprintf(&b,
		"\ncentrepop --version says which one this is. A job is a file, a folder with a job.yaml, or - for standard input; an output after -o may be - for standard output.\n%s\n%s\n",
		jsonText, statusText)
	return b.String()
}

func (cmd *command) writeHelp(w io.Writer, flags *pflag.FlagSet) {
	fmt.Fprintf(w, "centrepop %s %s\n  %s\n\n%s", cmd.name, cmd.args, cmd.about, flags.FlagUsages())
	for _, c := range chapters {
		for _, e := range c.commands {
			if e.name == cmd.name {
				fmt.Fprintf(w, "\nFor example\n  %s\n", strings.Join(e.lines, "\n  "))
			}
		}
	}
	fmt.Fprintf(w, "\n%s\n", statusText)
}

// flagsOf are the flags of a command: it defines them before it does anything.
func (cmd *command) flagsOf() *pflag.FlagSet {
	c := newCall(cmd.name, io.Discard)
	c.args = []string{"--help"}
	// Its only answer is that help is asked for.
	_ = cmd.run(c)
	return c.flags
}

// buildAnswer is which build of the program this is, from the build's own record.
type buildAnswer struct {
	Version  string `json:"version"`
	Revision string `json:"revision,omitempty"`
	Changed  bool   `json:"changed,omitempty"` // built with changes to the revision
	Go       string `json:"go"`
}

func thisBuild() buildAnswer {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return buildAnswer{Version: "built without a record", Go: runtime.Version()}
	}
	out := buildAnswer{Version: info.Main.Version, Go: info.GoVersion}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			out.Revision = s.Value
		case "vcs.modified":
			out.Changed = s.Value == "true"
		}
	}
	return out
}

func writeVersion(w io.Writer, asJSON bool) error {
	b := thisBuild()
	if asJSON {
		return writeAnswer(w, "version", b)
	}
	text := "centrepop " + b.Version
	text += words.When(b.Revision != "", ", revision "+b.Revision)
	text += words.When(b.Changed, " with changes")
	_, err := fmt.Fprintln(w, text+", "+b.Go)
	return err
}
