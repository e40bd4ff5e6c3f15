package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom/file"
	"handtight/bom/starter"
)

func (a *app) newCommand() *cobra.Command {
	said := map[string]*string{}
	var ask bool
	cmd := &cobra.Command{
		Use:   "new DIR",
		Short: "Write a commented starter build of your sort of plant",
		Long: `Makes the folder if it is not there, and writes build.toml into it: a small plant from
the sea to the tank with every section explained, which checks without a stop. Its
figures are not data sheets; those that the maker must be asked for say so. A file that
is there already is never overwritten.

--volts, --elements, --drive and --country say what sort of plant; --ask asks for them.
The threads and the money are those of the first country; a second shop sells in the
second.`,
		Example: `  handtight new my-boat
  handtight new my-boat --volts 12 --drive recovery --country NZ,US
  handtight new my-boat --ask
  handtight check my-boat/build.toml`,
		Args: exactly(1, "one folder"),
		RunE: func(cmd *cobra.Command, args []string) error {
			answers := starter.Usual()
			for _, q := range starter.Questions() {
				if cmd.Flags().Changed(q.Name) {
					if err := answers.Take(q.Name, *said[q.Name]); err != nil {
						return fmt.Errorf("--%w", err)
					}
				} else if ask {
					if err := a.askStarter(q, &answers); err != nil {
						return err
					}
				}
			}
			text, err := starter.Write(answers)
			if err != nil {
				return err
			}
			path := filepath.Join(args[0], "build.toml")
			if err := writeNew(args[0], path, text); err != nil {
				return err
			}
			if a.json {
				return a.ui.printJSON(map[string]string{"written": path})
			}
			a.ui.line("Written: %s", path)
			a.ui.line("Next: handtight check %s", path)
			return nil
		},
	}
	for _, q := range starter.Questions() {
		said[q.Name] = cmd.Flags().String(q.Name, q.Usual, plainly(q.Ask)+" ("+strings.Join(q.Choices, ", ")+")")
	}
	cmd.Flags().BoolVar(&ask, "ask", false, "ask for what no flag says")
	return cmd
}

// plainly is a question as the words of a flag.
func plainly(ask string) string {
	ask = strings.TrimSuffix(ask, "?")
	return strings.ToLower(ask[:1]) + ask[1:]
}

// askStarter asks one question until the answer can be taken; an empty one takes what is
// usual, and so does the end of the input, for this question and all behind it: at a terminal
// a further read would wait for a person who has ended the talk. `?` says how to answer.
func (a *app) askStarter(q starter.Question, answers *starter.Answers) error {
	if a.lines == nil {
		a.lines = bufio.NewReader(a.in)
	}
	if a.ended {
		return answers.Take(q.Name, q.Usual)
	}
	for {
		a.ui.prompt(q.Ask + "\n")
		for _, c := range q.Choices {
			a.ui.prompt(fmt.Sprintf("  %s\n", strings.TrimSpace(fmt.Sprintf("%-9s %s", c, q.Meaning(c)))))
		}
		a.ui.prompt("[" + q.Usual + "] ")
		line, err := a.lines.ReadString('\n')
		if err != nil && !errors.Is(err, io.EOF) {
			return fmt.Errorf("the answer cannot be read: %w", err)
		}
		ended := errors.Is(err, io.EOF)
		if ended {
			a.ended = true
			a.ui.prompt("\n")
		}
		if line = strings.TrimSpace(line); line == "" {
			return answers.Take(q.Name, q.Usual)
		}
		if line == "?" && !ended {
			a.ui.prompt("Answer with a word of the left column; Enter takes " + q.Usual + ", and the end of the input takes what is usual for all that is left.\n")
			continue
		}
		if err := answers.Take(q.Name, line); err == nil {
			return nil
		} else if ended {
			return err
		} else {
			a.ui.prompt(err.Error() + "\n")
		}
	}
}

// writeNew writes the starter where nothing stands yet.
func writeNew(dir, path string, text []byte) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("the folder %s cannot be made: %s", dir, file.Cause(err))
	}
	out, err := file.To(path)
	if err != nil {
		return err
	}
	if out.Exists() {
		return fmt.Errorf("%s is there already and is kept: name another folder", path)
	}
	return out.Write(func(w io.Writer) error {
		_, err := w.Write(text)
		return err
	})
}
