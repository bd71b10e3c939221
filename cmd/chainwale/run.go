package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/alecthomas/kong"
)

// version is printed in reports. It grows when what scripts hang on grows.
const version = "0.1"

// The exit statuses, the highest that applies.
const (
	statusDone     = 0
	statusFindings = 1
	statusInput    = 2
	statusFault    = 3
)

const description = `Reads a sailboat's refit plan and says, before metal is cut, what fails, what can't be told and what would mend it.

It advises. It is no survey and no approval: a qualified rigger, surveyor, naval architect and local code decide.

Exit status, the highest that applies:
  3  the program, a rule pack or a standard is at fault; the rest is still reported
  2  the plan or the command line is at fault; problems are listed, nothing is judged
  1  there are findings at or above --refuse-from (an unknown counts as a finding of its grade)
  0  otherwise
reckon: 2 the inputs are at fault, 1 the formula or a table does not reach them, 0 done
pack prove: 3 the pack does not load or a change of another's rule does not fit, 1 an example differs,
  a change went unnoticed or makes no difference, 0 proven
fleet: the highest of its boats, 2 if a plan could not be read
standing: as check, for its steps; 1 too where no order is found`

// commands is the command line: one field a verb.
type commands struct {
	Version kong.VersionFlag `help:"Print the version."`

	New      newVerb      `cmd:"" help:"Write a commented starter plan; an existing file is left alone."`
	Check    checkVerb    `cmd:"" help:"Judge a plan: what fails, what can't be told, and what to measure."`
	Workings workingsVerb `cmd:"" help:"Print every number behind one fitting, with formula, inputs and source."`
	Reckon   reckonVerb   `cmd:"" help:"Reckon one formula by itself; without a name, list them."`
	Pack     packVerb     `cmd:"" help:"Write, prove and print rule packs, and list the facts that rules read."`
	Std      standardVerb `cmd:"" name:"standard" help:"List, show, compare and trust design standards."`
	Fleet    fleetVerb    `cmd:"" help:"Judge many plans in one run, and sum up by class, boat and rule."`
	Standing standingVerb `cmd:"" help:"Say what the mast stands in each step while its stays are off, and suggest an order."`
	Pattern  patternVerb  `cmd:"" help:"Draw the flats of the parts that are made: cutting files, drawings and paper templates."`
}

// streams are where a verb reads and writes. Results go to out, all else to err.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// ended carries the status of a verb through kong, which knows only errors.
type ended int

func (e ended) Error() string { return fmt.Sprintf("status %d", int(e)) }

// run is the whole program: it takes the arguments after its name and gives the
// exit status.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) (status int) {
	defer func() {
		switch e := recover().(type) {
		case nil:
		case ended: // kong has printed the help and wants to leave
			status = int(e)
		default:
			panic(e)
		}
	}()
	var cli commands
	parser, err := kong.New(&cli, kong.Name("chainwale"), kong.Vars{"version": "chainwale " + version}, kong.Description(description),
		kong.Writers(stdout, stderr), kong.Exit(func(code int) { panic(ended(code)) }),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true, NoExpandSubcommands: true, WrapUpperBound: 100}))
	if err != nil {
		fmt.Fprintf(stderr, "chainwale: the command line is not built well: %v\n", err)
		return statusFault
	}
	if len(args) == 0 {
		args = []string{"--help"}
	}
	ctx, err := parser.Parse(args)
	if err != nil {
		fmt.Fprintf(stderr, "chainwale: %v\nTry chainwale --help.\n", err)
		return statusInput
	}
	return settle(ctx.Run(streams{stdin, stdout, stderr}), stderr)
}

// settle turns what a verb returned into a status.
func settle(err error, stderr io.Writer) int {
	var e ended
	switch {
	case err == nil:
		return statusDone
	case errors.As(err, &e):
		return int(e)
	default:
		fmt.Fprintf(stderr, "chainwale: %v\n", err)
		return statusFault
	}
}
