package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// fitHelp makes help fit the terminal: paragraphs are wrapped, lines that begin with a blank
// stay as they are, and what a flag does is hung under itself.
func (a *app) fitHelp(root *cobra.Command) {
	usual := root.HelpFunc()
	root.SetHelpFunc(func(cmd *cobra.Command, args []string) {
		cmd.Long = reflow(cmd.Long, a.ui.width)
		usual(cmd, args)
	})
	flags := fmt.Sprintf("Flags.FlagUsagesWrapped %d", a.ui.width)
	root.SetUsageTemplate(strings.NewReplacer("LocalFlags.FlagUsages", "Local"+flags, "InheritedFlags.FlagUsages", "Inherited"+flags).Replace(root.UsageTemplate()))
}

// reflow wraps the paragraphs of a text.
func reflow(text string, width int) string {
	var out, words []string
	end := func() {
		if len(words) > 0 {
			out = append(out, wrap(strings.Join(words, " "), width)...)
			words = nil
		}
	}
	for line := range strings.SplitSeq(text, "\n") {
		if line == "" || strings.HasPrefix(line, " ") {
			end()
			out = append(out, line)
			continue
		}
		words = append(words, line)
	}
	end()
	return strings.Join(out, "\n")
}
