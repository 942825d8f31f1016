package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"
)

// shells are those that have completions.
const shells = "bash zsh fish"

// completion writes the completions of a shell, for its start-up file.
func completion(c *call) error {
	if err := c.parse(1, 1); err != nil {
		return err
	}
	write := map[string]func(w io.Writer, all []command){"bash": completeBash, "zsh": completeZsh, "fish": completeFish}[c.args[0]]
	if write == nil {
		return badUse("the shell %s is not known: bash, zsh or fish", c.args[0])
	}
	if !*c.json {
		write(c.stdout, c.all)
		return nil
	}
	var text strings.Builder
	write(&text, c.all)
	return c.print(map[string]string{"shell": c.args[0], "script": text.String()})
}

// longFlags are the flags of a command as typed, with what each does.
func longFlags(cmd *command) (flags, usages []string) {
	cmd.flagsOf().VisitAll(func(f *pflag.Flag) {
		flags = append(flags, f.Name)
		usage, _, _ := strings.Cut(strings.ReplaceAll(f.Usage, "`", ""), ";")
		usages = append(usages, strings.NewReplacer("'", "’", "[", "(", "]", ")", ":", ",").Replace(usage))
	})
	return flags, usages
}

func completeBash(w io.Writer, all []command) {
	fmt.Fprintf(w, "# centrepop completions for bash: source <(centrepop completion bash)\n_centrepop() {\n  local word=${COMP_WORDS[COMP_CWORD]} flags=\n")
	fmt.Fprintf(w, "  if [ \"$COMP_CWORD\" = 1 ]; then\n    COMPREPLY=($(compgen -W '%s help' -- \"$word\"))\n    return\n  fi\n  case ${COMP_WORDS[1]} in\n", strings.Join(commandNames(), " "))
	for _, name := range commandNames() {
		flags, _ := longFlags(commandNamed(all, name))
		if name != "completion" {
			fmt.Fprintf(w, "    %s) flags='--%s' ;;\n", name, strings.Join(flags, " --"))
		}
	}
	fmt.Fprintf(w, "    help) COMPREPLY=($(compgen -W '%s' -- \"$word\")); return ;;\n    completion) COMPREPLY=($(compgen -W '%s' -- \"$word\")); return ;;\n  esac\n",
		strings.Join(commandNames(), " "), shells)
	fmt.Fprint(w, "  case $word in\n    -*) COMPREPLY=($(compgen -W \"$flags\" -- \"$word\")) ;;\n    *) COMPREPLY=($(compgen -f -- \"$word\")) ;;\n  esac\n}\ncomplete -o filenames -F _centrepop centrepop\n")
}

func completeZsh(w io.Writer, all []command) {
	fmt.Fprint(w, "#compdef centrepop\n# centrepop completions for zsh: centrepop completion zsh > \"${fpath[1]}/_centrepop\"\n_centrepop() {\n  local -a commands\n  commands=(\n")
	for _, name := range commandNames() {
		about := strings.NewReplacer("'", "’", ":", ",").Replace(commandNamed(all, name).about)
		fmt.Fprintf(w, "    '%s:%s'\n", name, about)
	}
	fmt.Fprint(w, "  )\n  if (( CURRENT == 2 )); then\n    _describe command commands\n    return\n  fi\n  case $words[2] in\n")
	for _, name := range commandNames() {
		if name == "completion" {
			continue
		}
		flags, usages := longFlags(commandNamed(all, name))
		fmt.Fprintf(w, "    %s) _arguments", name)
		for i := range flags {
			fmt.Fprintf(w, " '--%s[%s]'", flags[i], usages[i])
		}
		fmt.Fprint(w, " '*:file:_files' ;;\n")
	}
	fmt.Fprintf(w, "    help) _describe command commands ;;\n    completion) compadd %s ;;\n  esac\n}\n_centrepop \"$@\"\n", shells)
}

func completeFish(w io.Writer, all []command) {
	fmt.Fprint(w, "# centrepop completions for fish: centrepop completion fish > ~/.config/fish/completions/centrepop.fish\n")
	for _, name := range commandNames() {
		cmd := commandNamed(all, name)
		fmt.Fprintf(w, "complete -c centrepop -f -n __fish_use_subcommand -a %s -d '%s'\n", name, strings.ReplaceAll(cmd.about, "'", "’"))
		flags, usages := longFlags(cmd)
		for i := range flags {
			fmt.Fprintf(w, "complete -c centrepop -n '__fish_seen_subcommand_from %s' -l %s -d '%s'\n", name, flags[i], usages[i])
		}
	}
	fmt.Fprint(w, "complete -c centrepop -f -n __fish_use_subcommand -a help -d 'the commands, or one of them'\n")
	fmt.Fprintf(w, "complete -c centrepop -f -n '__fish_seen_subcommand_from help' -a '%s'\n", strings.Join(commandNames(), " "))
	fmt.Fprintf(w, "complete -c centrepop -f -n '__fish_seen_subcommand_from completion' -a '%s'\n", shells)
}

func man(c *call) error {
	if err := c.parse(0, 0); err != nil {
		return err
	}
	text := manual(c.all)
	return c.answer(map[string]string{"page": text}, func() { fmt.Fprint(c.stdout, text) })
}

// manual is the manual page in the man macros of troff.
func manual(all []command) string {
	var b strings.Builder
	plain := func(s string) string {
		s = strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(s)
		if strings.HasPrefix(s, ".") || strings.HasPrefix(s, "'") {
			s = `\&` + s
		}
		return s
	}
	b.WriteString(".TH CENTREPOP 1\n.SH NAME\ncentrepop \\- part drawings in YAML to a shop packet\n.SH SYNOPSIS\n.B centrepop\n.I COMMAND\n.RI [ ARGUMENT ...]\n.SH DESCRIPTION\n")
	b.WriteString(plain("centrepop reads a machine's parts as YAML, works out the sizes, checks them and prints what the shop needs: punch templates at full scale, operation sheets, inspection records, and the sequence of pressing, welding and bolting. centrepop input lists every key of the input.") + "\n")
	for _, chapter := range chapters {
		fmt.Fprintf(&b, ".SH %s\n", strings.ToUpper(plain(chapter.title)))
		for _, e := range chapter.commands {
			cmd := commandNamed(all, e.name)
			fmt.Fprintf(&b, ".SS centrepop %s %s\n%s\n", plain(cmd.name), plain(cmd.args), plain(cmd.about))
			cmd.flagsOf().VisitAll(func(f *pflag.Flag) {
				value, usage := pflag.UnquoteUsage(f)
				short := ""
				if f.Shorthand != "" {
					short = "-" + f.Shorthand + ", "
				}
				fmt.Fprintf(&b, ".TP\n.B %s\n%s\n", plain(strings.TrimSpace(short+"--"+f.Name+" "+value)), plain(usage))
			})
			fmt.Fprintf(&b, ".PP\n.nf\n%s\n.fi\n", plain(strings.Join(e.lines, "\n")))
		}
	}
	fmt.Fprintf(&b, ".SH EXIT STATUS\n%s\n.SH JSON\n%s\n", plain(statusText), plain(jsonText))
	return b.String()
}
