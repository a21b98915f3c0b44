package cmd

import (
	"errors"
	"flag"
	"fmt"
	"strings"
)

// options are the flags of a verb and the arguments between them, in any order.
type options struct {
	set  *flag.FlagSet
	rest []string
}

func (t *tool) flags(v string) *options {
	set := flag.NewFlagSet(v, flag.ContinueOnError)
	set.SetOutput(t.err)
	return &options{set: set}
}

// parse reads flags before, between and after the arguments and wants exactly
// n arguments. ok is false when the verb should stop with the code.
func (t *tool) parse(o *options, args []string, n int, takes string) (code int, ok bool) {
	for {
		if err := o.set.Parse(args); err != nil {
			if errors.Is(err, flag.ErrHelp) {
				return exitFine, false
			}
			return exitUnread, false
		}
		args = o.set.Args()
		if len(args) == 0 {
			break
		}
		o.rest = append(o.rest, args[0])
		args = args[1:]
	}
	if len(o.rest) != n {
		fmt.Fprintf(t.err, "slabwright %s takes %s; read: %q\n", o.set.Name(), takes, strings.Join(o.rest, " "))
		return exitUnread, false
	}
	return exitFine, true
}
