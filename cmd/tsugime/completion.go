package main

import (
	"context"
	"fmt"
	"strings"
)

// runCompletion prints a script for a shell, made from the table of commands.
func runCompletion(_ context.Context, p program, c command, args []string) error {
	words, err := p.parse(c, newFlags(c), args, 1, 1)
	if err != nil {
		return err
	}
	script, ok := map[string]func() string{
		"bash": bashCompletion, "zsh": zshCompletion, "fish": fishCompletion, "powershell": powershellCompletion,
	}[words[0]]
	if !ok {
		return wrongUse("completion: %q is no shell that is known; use bash, zsh, fish or powershell", words[0])
	}
	_, err = fmt.Fprint(p.out, script())
	return err
}

func commandNames() string {
	var names []string
	for _, c := range commands() {
		names = append(names, c.name)
	}
	return strings.Join(names, " ")
}

func (c command) flagWords() string {
	var words []string
	for _, f := range c.flags {
		words = append(words, f.dashed())
	}
	return strings.Join(words, " ")
}

func bashCompletion() string {
	var b strings.Builder
	b.WriteString("_tsugime() {\n  local word=${COMP_WORDS[COMP_CWORD]}\n" +
		"  if [ \"$COMP_CWORD\" -eq 1 ]; then\n    COMPREPLY=($(compgen -W '" + commandNames() + "' -- \"$word\"))\n    return\n  fi\n" +
		"  case \"${COMP_WORDS[1]}:$word\" in\n")
	for _, c := range commands() {
		if len(c.flags) > 0 {
			fmt.Fprintf(&b, "    %s:-*) COMPREPLY=($(compgen -W '%s' -- \"$word\")) ;;\n", c.name, c.flagWords())
		}
	}
	b.WriteString("    *) COMPREPLY=($(compgen -f -- \"$word\")) ;;\n  esac\n}\ncomplete -o filenames -F _tsugime tsugime\n")
	return b.String()
}

func zshCompletion() string {
	var b strings.Builder
	b.WriteString("#compdef tsugime\n_tsugime() {\n  if (( CURRENT == 2 )); then\n    local -a commands=(\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "      '%s:%s'\n", c.name, quoteless(c.about))
	}
	b.WriteString("    )\n    _describe command commands\n    return\n  fi\n  case $words[2] in\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "    %s) _arguments", c.name)
		for _, f := range c.flags {
			fmt.Fprintf(&b, " '%s[%s]'", f.dashed(), quoteless(f.about))
		}
		b.WriteString(" '*:file:_files' ;;\n")
	}
	b.WriteString("  esac\n}\n_tsugime \"$@\"\n")
	return b.String()
}

func fishCompletion() string {
	var b strings.Builder
	for _, c := range commands() {
		fmt.Fprintf(&b, "complete -c tsugime -n __fish_use_subcommand -a %s -d '%s'\n", c.name, quoteless(c.about))
		for _, f := range c.flags {
			long := "-l " + f.name
			if len(f.name) == 1 {
				long = "-s " + f.name
			}
			fmt.Fprintf(&b, "complete -c tsugime -n '__fish_seen_subcommand_from %s' %s -d '%s'\n", c.name, long, quoteless(f.about))
		}
	}
	return b.String()
}

func powershellCompletion() string {
	var b strings.Builder
	b.WriteString("Register-ArgumentCompleter -Native -CommandName tsugime -ScriptBlock {\n" +
		"  param($word, $ast, $position)\n  $flags = @{\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "    '%s' = '%s'\n", c.name, c.flagWords())
	}
	b.WriteString("  }\n  $first = if ($ast.CommandElements.Count -gt 1) { \"$($ast.CommandElements[1])\" } else { '' }\n" +
		"  $list = if ($flags.ContainsKey($first) -and $word -like '-*') { $flags[$first] } else { '" + commandNames() + "' }\n" +
		"  $list -split ' ' | Where-Object { $_ -like \"$word*\" } | ForEach-Object { [System.Management.Automation.CompletionResult]::new($_) }\n}\n")
	return b.String()
}

// quoteless drops what would end a quoted word or a description of a shell.
func quoteless(s string) string {
	return strings.NewReplacer("'", "", "[", "(", "]", ")", ":", ",").Replace(s)
}
