package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"runtime/debug"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"handtight/pressure/nearest"
)

// version is overwritten by a release's linker flags.
var version = ""

// app is what the commands share.
type app struct {
	in      io.Reader
	lines   *bufio.Reader // of the input, once a question was asked
	ended   bool          // the input has ended: nothing more is asked
	ui      *ui
	json    bool
	outside bool // includes may lie outside the build's folder
	status  int
}

func (a *app) root() *cobra.Command {
	var licences bool
	root := &cobra.Command{
		Use:   "handtight",
		Short: "Check a desalinator's parts list before ordering, and write the shopping list",
		Long: `handtight reads a parts list in TOML, walks it port by port, and says which joints
will not mate, will not seal or will not hold their pressure, what to buy instead,
and what it all costs with spares.

Its result is a check and not a certificate: data sheets, local codes and licensed
practice come first.`,
		Example: `  handtight new my-boat                         a commented build to start from
  handtight check my-boat/build.toml            what does not fit, and what to ask
  handtight order my-boat/build.toml -o list.xlsx
  handtight mate '1/2 NPT male' 'Rc 1/2'        will these two seal?
  handtight thread 'G 3/4 female swivel'        what is this thread?`,
		Version:       versionText(),
		SilenceUsage:  true,
		SilenceErrors: true,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if licences {
				_, err := io.WriteString(a.ui.out, licencesText)
				return err
			}
			return cmd.Help()
		},
	}
	root.SetVersionTemplate("handtight {{.Version}}\n")
	root.PersistentFlags().BoolVar(&a.json, "json", false, "print the facts as JSON")
	root.PersistentFlags().BoolVar(&a.outside, "outside", false, "take includes that lie outside the build's folder")
	root.Flags().BoolVar(&licences, "licences", false, "print the licences of the program and of all that is linked into it")
	root.AddCommand(
		a.checkCommand(), a.auditCommand(), a.orderCommand(), a.receiveCommand(), a.dutyCommand(), a.pageCommand(), a.pictureCommand(),
		a.threadCommand(), a.mateCommand(), a.adaptCommand(), a.identifyCommand(),
		a.cartCommand(), a.draftCommand(), a.chooseCommand(), a.compareCommand(), a.sparesCommand(),
		a.newCommand(), a.schemaCommand(), a.whyCommand(), a.catalogCommand(),
	)
	root.CompletionOptions.HiddenDefaultCmd = false
	root.SetFlagErrorFunc(flagHint)
	a.fitHelp(root)
	return root
}

// exactly asks for a number of arguments and says what they are.
func exactly(n int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) == n {
			return nil
		}
		return fmt.Errorf("`%s` takes %s, and %d were given\n\n%s", cmd.CommandPath(), what, len(args), cmd.Example)
	}
}

// flagHint adds to a flag's error the flag that may be meant, and where all are listed.
func flagHint(cmd *cobra.Command, err error) error {
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
	hint := fmt.Sprintf("`%s --help` lists its flags", cmd.CommandPath())
	if unknown := (*pflag.NotExistError)(nil); errors.As(err, &unknown) {
		if near, ok := nearest.Of("--"+unknown.GetSpecifiedName(), names); ok {
			hint = fmt.Sprintf("did you mean `%s`? %s", near, hint)
		}
	}
	return fmt.Errorf("%w\n  %s", err, hint)
}

func versionText() string {
	if version != "" {
		return version
	}
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		return info.Main.Version
	}
	return "development"
}
